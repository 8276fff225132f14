package sure_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/barrow/mix/sure"
)

// sumBelow is the probability that the sum of n uniform figures is at most x
// hundredths, by the formula of Irwin and Hall, in whole numbers: its terms
// cancel too much for floating point.
func sumBelow(n, x int64) float64 {
	total, power := new(big.Int), big.NewInt(n)
	for k := int64(0); k <= n && 100*k < x; k++ {
		term := new(big.Int).Exp(big.NewInt(x-100*k), power, nil)
		term.Mul(term, new(big.Int).Binomial(n, k))
		if k%2 == 1 {
			term.Neg(term)
		}
		total.Add(total, term)
	}
	all := new(big.Int).Exp(big.NewInt(100), power, nil)
	all.Mul(all, new(big.Int).MulRange(1, n))
	p, _ := new(big.Rat).SetFrac(total, all).Float64()
	return p
}

// TestPiecesExact compares the mean of pieces with the closed form of Irwin and
// Hall: a triangle is two uniform parts.
func TestPiecesExact(t *testing.T) {
	for _, flat := range []bool{false, true} {
		for _, n := range []int64{1, 2, 3, 5, 8, 16, 24, 50} {
			f := sure.Factor{Low: 0.9, High: 1.1, Flat: flat, Pieces: n}
			parts, off := n, 0.0005
			if !flat {
				parts *= 2
			}
			if parts > 32 {
				off = 0.0014
			}
			worst := 0.0
			for i := range 101 {
				x := 0.9 + 0.2*float64(i)/100
				worst = max(worst, math.Abs(f.Below(x)-sumBelow(parts, parts*int64(i))))
			}
			if worst > off {
				t.Errorf("the mean of %d pieces, flat %v: Below is %.5f wrong", n, flat, worst)
			}
			t.Logf("%d pieces, flat %v: at most %.5f wrong", n, flat, worst)
		}
	}
}

// TestPiecesConvolved compares the mean of pieces with a convolution on a fine
// grid, one piece added after another.
func TestPiecesConvolved(t *testing.T) {
	const cells = 200
	piece := make([]float64, cells+1) // a triangle from 0 to cells
	var all float64
	for i := range piece {
		piece[i] = float64(min(i, cells-i))
		all += piece[i]
	}
	for i := range piece {
		piece[i] /= all
	}
	sum := []float64{1}
	for n := int64(1); n <= 12; n++ {
		next := make([]float64, len(sum)+cells)
		for i, a := range sum {
			for j, b := range piece {
				next[i+j] += a * b
			}
		}
		sum = next
		f := sure.Factor{Low: 0, High: 1, Pieces: n}
		under := 0.0
		for i, mass := range sum {
			x := (float64(i) + 0.5) / float64(cells) / float64(n)
			if under += mass; math.Abs(f.Below(x)-under) > 0.001 {
				t.Fatalf("%d pieces: Below(%v) = %v, convolved %v", n, x, f.Below(x), under)
			}
		}
	}
}

// TestPiecesNormal compares the mean of very many pieces with the normal
// distribution that it comes close to.
func TestPiecesNormal(t *testing.T) {
	for _, n := range []int64{1000, 1_000_000, 1_000_000_000} {
		f := sure.Factor{Low: 0.95, High: 1.05, Pieces: n}
		sd := 0.05 / math.Sqrt(6*float64(n))
		for z := -4.0; z <= 4; z += 0.25 {
			want := math.Erfc(-z/math.Sqrt2) / 2
			if got := f.Below(1 + z*sd); math.Abs(got-want) > 0.0014 {
				t.Errorf("%d pieces: Below %v deviations is %v, want %v", n, z, got, want)
			}
		}
	}
}

// lots is an order of so many bags of 2, of one lot, for a need.
func lots(bags int64, need float64) *sure.Model {
	return &sure.Model{
		Items: 1,
		Factors: []sure.Factor{
			{Name: "lot", Low: 0.98, Mode: 1, High: 1.02},
			{Name: "each bag", Low: 0.95, High: 1.05, Pieces: bags},
		},
		Needs:    []sure.Term{{Amount: need}},
		Supplies: []sure.Term{{Amount: 2 * float64(bags), Uses: uses(0, 1)}},
	}
}

// TestPiecesSimulated draws orders bag by bag, each bag about the mean of its
// lot, and compares how often they are enough.
func TestPiecesSimulated(t *testing.T) {
	const draws = 40_000
	for _, c := range []struct {
		bags int64
		need float64
	}{{1, 2}, {1, 1.94}, {2, 3.95}, {5, 10.05}, {30, 60}, {30, 59.6}, {200, 401}} {
		r := rand.New(rand.NewPCG(uint64(c.bags), 5))
		m := lots(c.bags, c.need)
		good := 0
		for range draws {
			var have float64
			lot := inverse(m.Factors[0], r.Float64())
			bag := sure.Factor{Low: 0.95 * lot, Mode: lot, High: 1.05 * lot}
			for range c.bags {
				have += 2 * inverse(bag, r.Float64())
			}
			if have >= c.need-sure.Slack {
				good++
			}
		}
		got, want := m.Chance(), float64(good)/draws
		if off := math.Hypot(got.Error, math.Sqrt(want*(1-want)/draws)); math.Abs(got.All-want) > 4*off+0.0014 {
			t.Errorf("%d bags for %v: %+v, simulated %v", c.bags, c.need, got, want)
		}
	}
}

// TestPiecesEven checks that an order of just the need is enough half the time
// when lots and bags are as often over as under, whatever the number of bags.
// It is a little less, since 1 % over a lot that is 1 % under is still under.
// Bags that vary apart are surer together than one bag.
func TestPiecesEven(t *testing.T) {
	var less []float64
	for _, n := range []int64{1, 2, 30, 1_000_000} {
		need := 2*float64(n) + sure.Slack
		if got := lots(n, need).Chance(); math.Abs(got.All-0.5) > 0.003 {
			t.Errorf("%d bags for as much: %+v, want even odds", n, got)
		}
		less = append(less, lots(n, 0.99*need).Chance().All)
	}
	if !slices.IsSorted(less) || less[3] < less[0]+0.1 {
		t.Errorf("with 1 %% less needed the chances are %v", less)
	}
}
