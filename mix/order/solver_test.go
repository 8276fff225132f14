package order_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/barrow/mix/order"
)

var compared = flag.Int("solver", 0,
	"instances to run through both Search and glpsol, for the table of TestSolverTable")

// program writes the request as an integer program: counts by offer, vehicle
// and price, one binary for each price in use, and whole trips and loads. It
// holds where packs fill vehicles without a gap.
func program(r *order.Request) string {
	var cost, rows, bounds, whole, binary strings.Builder
	cover := make([]strings.Builder, len(r.Needs))
	var haul, drop strings.Builder
	for i := range r.Offers {
		o := &r.Offers[i]
		var parts, picks []string
		froms, prices := []int64{max(1, o.Least)}, []int64{int64(o.Price)}
		for _, b := range o.Breaks {
			froms, prices = append(froms, max(b.From, o.Least)), append(prices, int64(b.Price))
		}
		for k, from := range froms {
			x, y := fmt.Sprintf("x%d_%d", i, k), fmt.Sprintf("y%d_%d", i, k)
			most := int64(400)
			if o.Limited {
				most = o.Stock
			}
			fmt.Fprintf(&cost, " + %d %s", prices[k], x)
			fmt.Fprintf(&rows, " %s - %d %s <= 0\n %s - %d %s >= 0\n", x, most, y, x, from, y)
			fmt.Fprintf(&whole, " %s", x)
			fmt.Fprintf(&binary, " %s", y)
			parts, picks = append(parts, x), append(picks, y)
		}
		if r.Delivery != nil && o.CanDeliver {
			fmt.Fprintf(&rows, " h%d + d%d - %s = 0\n", i, i, strings.Join(parts, " - "))
			fmt.Fprintf(&whole, " d%d", i)
			fmt.Fprintf(&drop, " + %d d%d", o.Mass/1e9, i)
		} else {
			fmt.Fprintf(&rows, " h%d - %s = 0\n", i, strings.Join(parts, " - "))
		}
		fmt.Fprintf(&whole, " h%d", i)
		fmt.Fprintf(&haul, " + %d h%d", o.Mass/1e9, i)
		fmt.Fprintf(&rows, " %s <= 1\n", strings.Join(picks, " + "))
		for _, x := range parts {
			fmt.Fprintf(&cover[o.Material], " + %d %s", o.Yield/decilitre, x)
		}
	}
	for m, need := range r.Needs {
		fmt.Fprintf(&rows, "%s >= %d.5\n", cover[m].String(), need/decilitre)
	}
	fmt.Fprintf(&cost, " + %d t", r.TripCost)
	fmt.Fprintf(&rows, "%s - %d t <= 0\n", haul.String(), r.Payload/1e9)
	fmt.Fprintf(&whole, " t")
	if drop.Len() > 0 {
		fmt.Fprintf(&cost, " + %d l", r.Delivery.Fee)
		fmt.Fprintf(&rows, "%s - %d l <= 0\n", drop.String(), r.Delivery.Payload/1e9)
		fmt.Fprintf(&whole, " l")
	}
	return "Minimize\n obj:" + cost.String() + "\nSubject To\n" + rows.String() + bounds.String() +
		"General\n" + whole.String() + "\nBinary\n" + binary.String() + "\nEnd\n"
}

// solve runs the program through glpsol; ok is false when it gave no optimum
// within its time.
func solve(t testing.TB, r *order.Request, seconds int) (cost int64, took time.Duration, ok bool) {
	t.Helper()
	cmd := exec.Command("glpsol", "--tmlim", strconv.Itoa(seconds), "--lp", "/dev/stdin", "-o", "/dev/stdout")
	cmd.Stdin = strings.NewReader(program(r))
	start := time.Now()
	out, err := cmd.Output()
	took = time.Since(start)
	if err != nil {
		t.Fatalf("glpsol: %v\n%s", err, out)
	}
	if !bytes.Contains(out, []byte("INTEGER OPTIMAL")) {
		return 0, took, false
	}
	_, rest, _ := bytes.Cut(out, []byte("Objective:  obj ="))
	f, err := strconv.ParseFloat(string(bytes.Fields(rest)[0]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return int64(math.Round(f)), took, true
}

// needSolver skips the test without glpsol, except where the solver is
// required.
func needSolver(t testing.TB) {
	if runtime.GOOS == "js" {
		t.Skip("no processes here")
	}
	if _, err := exec.LookPath("glpsol"); err == nil {
		return
	}
	if os.Getenv("CI") == "true" {
		t.Fatal("glpsol is missing: apt-get install glpk-utils")
	}
	t.Skip("glpsol is missing: apt-get install glpk-utils")
}

// result is one instance through both.
type result struct {
	took   time.Duration // by glpsol
	solved bool
}

// compare runs instances from the seed through both, on every processor, and
// fails where they differ.
func compare(t testing.TB, seed uint64, instances, least, most, seconds int) []result {
	results := make([]result, instances)
	var wait sync.WaitGroup
	next := make(chan int)
	for range min(runtime.NumCPU(), 2) {
		wait.Go(func() {
			for i := range next {
				r := instance(seed, i, least, most)
				results[i] = both(t, &r, fmt.Sprintf("seed %d, instance %d", seed, i), seconds)
			}
		})
	}
	for i := range instances {
		next <- i
	}
	close(next)
	wait.Wait()
	return results
}

func instance(seed uint64, i, least, most int) order.Request {
	rng := rand.New(rand.NewPCG(seed, uint64(i)))
	return randomYard(rng, least+rng.IntN(most-least+1), 3)
}

func both(t testing.TB, r *order.Request, name string, seconds int) (res result) {
	o, err := order.Search(*r)
	if err != nil || !o.Proven {
		t.Errorf("%s: Search = %+v, %v, want it proven", name, o, err)
		return res
	}
	var cost int64
	if cost, res.took, res.solved = solve(t, r, seconds); res.solved && cost != int64(o.Cost) {
		t.Errorf("%s: Search costs %d, glpsol %d\n%+v", name, o.Cost, cost, *r)
	}
	return res
}

// TestSolver compares Search with the optimum of an integer-programming solver,
// on instances that are new in every run.
func TestSolver(t *testing.T) {
	needSolver(t)
	const instances = 520
	seed := rand.Uint64()
	solved := 0
	for _, r := range compare(t, seed, instances, 1, 5, 5) {
		if r.solved {
			solved++
		}
	}
	if t.Logf("seed %d: %d of %d solved by both", seed, solved, instances); solved < 500 {
		t.Errorf("glpsol solved %d, want 500", solved)
	}
}

// TestSolverTable prints the comparison; see the flag -solver. Search runs alone,
// over all instances; glpsol has two seconds for each.
func TestSolverTable(t *testing.T) {
	if *compared == 0 {
		t.Skip("run with -solver 10000")
	}
	needSolver(t)
	const seed, least, most = 1, 3, 12
	var ours, solvers []time.Duration
	for i := range *compared {
		r := instance(seed, i, least, most)
		start := time.Now()
		if _, err := order.Search(r); err != nil {
			t.Fatal(err)
		}
		ours = append(ours, time.Since(start))
	}
	solved := 0
	for _, r := range compare(t, seed, *compared, least, most, 2) {
		solvers = append(solvers, r.took)
		if r.solved {
			solved++
		}
	}
	slices.Sort(ours)
	slices.Sort(solvers)
	n := len(ours)
	t.Logf("instances %d, solved by glpsol %d, other optimum %v", n, solved, t.Failed())
	t.Logf("Search  median %v  worst %v", ours[n/2], ours[n-1])
	t.Logf("glpsol  median %v  worst %v", solvers[n/2], solvers[n-1])
	t.Logf("ratio of medians %.0f", float64(solvers[n/2])/float64(ours[n/2]))
}
