package mix_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/task"
)

// TestSure: an order of what is certain is certain; one of a class of pots is
// enough as often as its pots are small enough, by the triangle's own formula;
// the surer order is surer and dearer.
func TestSure(t *testing.T) {
	certain := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", ` +
		`"containers": [{"count": 10, "holds": "1 L"}]}], "on_hand": {"sand": "9 L"}, ` +
		`"offers": [{"material": "sand", "pack": "2 L", "price": "1"}]}`
	p, err := mix.PlanDocument([]byte(certain))
	require.NoError(t, err)
	if s := p.Sure(); s.Chance != 1 || s.Odds(p.Printer()) != "for certain" || len(s.Enough) > 0 {
		t.Errorf("2 L for a need of 1: %+v", s)
	}
	// A hundred #1 pots of 152 to 251 cu in, 172.8 the likeliest, against what
	// is on hand and a bag of next to nothing: P(size <= x) of the triangle.
	onHand := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", ` +
		`"containers": [{"count": 100, "size": "#1"}]}], "on_hand": {"sand": "17270 cu in"}, ` +
		`"offers": [{"material": "sand", "pack": "10 cu in", "price": "1"}]}`
	p, err = mix.PlanDocument([]byte(onHand))
	require.NoError(t, err)
	s := p.Sure()
	low, mode, high, x := 152.0, 172.8, 251.0, 172.8 // 17270 + 10 over 100
	want := (x - low) * (x - low) / ((high - low) * (mode - low))
	if s.Chance < want-0.01 || s.Chance > want+0.01 {
		t.Errorf("chance %v, want %v", s.Chance, want)
	}
	if s.At < mix.NineInTen || s.Bill.Total <= p.Bill.Total || len(s.Matters) == 0 ||
		s.Matters[0].Name != "the size of #1" {
		t.Errorf("%+v", s)
	}
	// A hundred pots of 183 cu in to the brim, of which 85 to 96 % is mix, 94 % the
	// likeliest, against 172.02 cu in each.
	brim := strings.NewReplacer(`"size": "#1"`, `"brim": "183 cu in"`, "17270 cu in", "17192 cu in").Replace(onHand)
	full, err := mix.PlanDocument([]byte(brim))
	require.NoError(t, err)
	odds := full.Sure()
	if want := (94.0 - 85) / (96 - 85); odds.Chance < want-0.01 || odds.Chance > want+0.01 ||
		len(odds.Matters) == 0 || odds.Matters[0].Name != "how full the pots are filled" {
		t.Errorf("chance %v of %+v, want %v", odds.Chance, odds.Matters, want)
	}
	if again := p.Sure(); again.Chance != s.Chance || again.At != s.At {
		t.Error("the answer differs from time to time")
	}
}

// bagsOf is a plan of bags of 2 cu ft for a need in cubic feet.
func bagsOf(t *testing.T, feet string) *mix.Plan {
	t.Helper()
	p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "` + feet + ` sq ft", ` +
		`"layer": "1 ft", "material": "bark-mulch"}], "offers": [{"material": "bark-mulch", "pack": "2 cu ft", "price": "4"}]}`))
	require.NoError(t, err)
	return p
}

// TestSureOfBags checks how full bags are against what can be read of the law, and
// holds orders of bags to draws bag by bag about the average of a lot. Thirty bags for
// exactly what their labels say are enough half the time.
func TestSureOfBags(t *testing.T) {
	bags := catalog.BagFullness()
	lot, bag := bags.Lot, bags.Each
	// One bag may be short by 5% of its label, says the Ohio Department of Agriculture
	// (read), and the average of a shipment by nothing, 16 CFR 500.25(c) (read): the
	// middle of both ranges is the label.
	if bag[0].Float() != 0.95 || bag[1].Float() != 1.05 || math.Abs(lot[0].Float()+lot[1].Float()-2) > 1e-12 {
		t.Errorf("a bag %+v of a lot %+v", bag, lot)
	}
	// What a sample of twelve cannot tell: 2.201 is Student's t at 0.975 with 11 degrees.
	if want := 2.201 / math.Sqrt(12) * 0.05 / math.Sqrt(6); math.Abs(lot[1].Float()-1-want) > 0.0001 {
		t.Errorf("a lot is within %v of its label, want %v", lot[1], want)
	}
	for _, c := range []struct{ feet, odds string }{
		{"60", "50 times in 100"}, {"2", "50 times in 100"}, {"20000", "50 times in 100"},
		{"59.6", "84 times in 100"}, {"58.5", "more than 99 times in 100"}, {"1.8", "for certain"},
	} {
		p := bagsOf(t, c.feet)
		s := p.Sure()
		if got := s.Odds(p.Printer()); got != c.odds {
			t.Errorf("%d bags for %s cu ft are enough %s, want %s", p.Lines[0].Count, c.feet, got, c.odds)
		}
		if want := drawBags(p.Lines[0].Count, p.Needs[0].Buy.Plan.Litres()); math.Abs(s.Chance-want) > 4*math.Hypot(s.Error, 0.005)+0.0014 {
			t.Errorf("%d bags for %s cu ft: chance %v, drawn %v", p.Lines[0].Count, c.feet, s.Chance, want)
		}
		if len(s.Assumes) != 1 || !strings.Contains(s.Assumes[0], "what their label says on average") {
			t.Errorf("it assumes %v", s.Assumes)
		}
	}
}

// drawBags draws 10,000 orders of so many bags of 2 cu ft, each bag by itself about the
// average of its lot, and returns how many of them are enough.
func drawBags(bags int64, litres float64) float64 {
	const draws = 10_000
	r := rand.New(rand.NewPCG(1, uint64(bags)))
	triangle := func(half float64) float64 { return half * (r.Float64() + r.Float64() - 1) }
	enough := 0
	for range draws {
		lot, sum := 1+triangle(0.013), 0.0
		for range min(bags, 1000) { // of more, the rest is as these are
			sum += 1 + triangle(0.05)
		}
		if 56.633693184*lot*sum*float64(bags)/float64(min(bags, 1000)) >= litres-0.001 {
			enough++
		}
	}
	return float64(enough) / draws
}

// TestSureAssumes checks what is said of each kind of pack, once.
func TestSureAssumes(t *testing.T) {
	p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [
		{"kind": "cover", "area": "58 sq ft", "layer": "1 ft", "material": "bark-mulch"},
		{"kind": "cover", "area": "58 sq ft", "layer": "1 ft", "material": "compost"},
		{"kind": "cover", "area": "28 sq ft", "layer": "1 ft", "material": "peat"}], "offers": [
		{"material": "bark-mulch", "pack": "2 cu ft", "price": "4"}, {"material": "compost", "bulk": "1/2 cu yd", "price": "9"},
		{"material": "peat", "pack": "3.8 cu ft", "price": "20"}]}`))
	require.NoError(t, err)
	s := p.Sure()
	want := []string{"Packs are taken", "Buckets of bulk are taken", "Bales of one material are taken"}
	if len(s.Assumes) != len(want) {
		t.Fatalf("%q", s.Assumes)
	}
	for i, start := range want {
		if !strings.HasPrefix(s.Assumes[i], start) {
			t.Errorf("%q, want %q", s.Assumes[i], start)
		}
	}
	for _, m := range s.Matters {
		if m.Measure == "" {
			t.Errorf("%+v cannot be measured", m)
		}
	}
}

// BenchmarkSure is how sure a job of twenty tasks is, from the plan.
func BenchmarkSure(b *testing.B) {
	p, err := mix.PlanDocument(manyTasks(20))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if p.Sure() == nil {
			b.Fatal("no answer")
		}
	}
}

// TestTooUncertain: where more is uncertain than is worked out, there is no answer and
// a note says so; a job just below that has one.
func TestTooUncertain(t *testing.T) {
	job := func(n int) []byte {
		var sizes, lines strings.Builder
		for i := range n {
			if i > 0 {
				sizes.WriteString(",")
				lines.WriteString(",")
			}
			fmt.Fprintf(&sizes, `{"id": "p%d", "holds": "2 L", "low": "1.8 L", "high": "2.3 L"}`, i)
			fmt.Fprintf(&lines, `{"count": 1, "size": "p%d"}`, i)
		}
		return []byte(`{"schema": 1, "containers": [` + sizes.String() + `], "tasks": [{"kind": "fill", "mix": "bark-fines 1",
			"containers": [` + lines.String() + `]}], "offers": [{"material": "bark-fines", "pack": "50 L", "price": "4"}]}`)
	}
	for n, want := range map[int]bool{100: true, 300: false} {
		p, err := mix.PlanDocument(job(n))
		if err != nil {
			t.Fatal(err)
		}
		said := slices.ContainsFunc(p.Notes, func(n task.Note) bool { return n.Code == "sure.large" })
		if got := p.Sure() != nil; got != want || said == want {
			t.Errorf("%d sizes: an answer %v, want %v; said that there is none: %v", n, got, want, said)
		}
	}
}
