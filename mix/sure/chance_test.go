package sure_test

import (
	"go/parser"
	"go/token"
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/barrow/mix/sure"
)

// TestMoreSupply checks that raising a supply never lowers the chance. With
// certain supplies the points and the pivot stay the same, so it holds to the
// last bit; with uncertain ones the pivot may change, so it holds within the
// error.
func TestMoreSupply(t *testing.T) {
	for seed := range uint64(30) {
		m := random(seed)
		before := m.Chance()
		for i := range m.Supplies {
			m.Supplies[i].Amount *= 1.02
			after := m.Chance()
			if after.All < before.All-4*math.Hypot(before.Error, after.Error) {
				t.Errorf("model %d: more of supply %d lowers %+v to %+v", seed, i, before, after)
			}
			before = after
		}
	}
	m := nursery()
	m.Supplies = exactly(m.Enough(0.5)...)
	before := m.Chance().All
	for i := range 60 {
		m.Supplies[i%6].Amount *= 1.003
		after := m.Chance().All
		if after < before {
			t.Errorf("step %d lowers %v to %v", i, before, after)
		}
		before = after
	}
}

// TestMoreNeed checks that raising a need never raises the chance.
func TestMoreNeed(t *testing.T) {
	for seed := range uint64(30) {
		m := random(seed)
		before := m.Chance()
		for i := range m.Needs {
			m.Needs[i].Amount *= 1.02
		}
		if after := m.Chance(); after.All > before.All+4*math.Hypot(before.Error, after.Error) {
			t.Errorf("model %d: more need raises %+v to %+v", seed, before, after)
		}
	}
}

// TestBounds checks that all items are never surer than the least sure one, nor
// less sure than the sum of misses allows.
func TestBounds(t *testing.T) {
	for seed := range uint64(60) {
		got := random(seed).Chance()
		slack, misses := got.Error, 0.0
		for i, p := range got.Item {
			slack += got.ItemError[i]
			misses += 1 - p
		}
		if got.All > slices.Min(got.Item)+1e-12 || got.All < 1-misses-4*slack-1e-12 {
			t.Errorf("model %d: %+v", seed, got)
		}
	}
}

// TestSame checks that an answer does not depend on what should not matter:
// certain figures, factors that nothing uses, and a term written as two.
func TestSame(t *testing.T) {
	m := nursery()
	want := m.Chance()
	m.Factors = append(m.Factors, sure.Factor{Low: 2, Mode: 2, High: 2}, sure.Factor{High: 1, Flat: true})
	last := len(m.Factors) - 2
	for i := range m.Needs {
		n := &m.Needs[i]
		n.Amount /= 2
		n.Uses = append(slices.Clone(n.Uses), sure.Use{Factor: last})
	}
	if got := m.Chance(); math.Abs(got.All-want.All) > 1e-12 {
		t.Errorf("with a certain figure %v, want %v", got, want)
	}
	m.Needs[0].Amount /= 2
	m.Needs = append(m.Needs, m.Needs[0])
	if got := m.Chance(); math.Abs(got.All-want.All) > 1e-12 {
		t.Errorf("with a term in two %v, want %v", got, want)
	}
}

// TestCertain checks that a model without uncertainty answers 0 or 1, allowing
// for the slack.
func TestCertain(t *testing.T) {
	m := &sure.Model{Items: 2, Needs: exactly(100, 50), Supplies: exactly(99.9991, 60)}
	if got := m.Chance(); got.All != 1 || got.Error != 0 {
		t.Errorf("within the slack: %+v", got)
	}
	m.Supplies[0].Amount = 99.99
	if got := m.Chance(); got.All != 0 || got.Item[0] != 0 || got.Item[1] != 1 || got.Error != 0 {
		t.Errorf("a centilitre short: %+v", got)
	}
	if got := m.Enough(0.9); got[0] != 100 || got[1] != 50 {
		t.Errorf("Enough(0.9) = %v", got)
	}
	if got := m.Matters(5); len(got) != 0 {
		t.Errorf("Matters(5) = %v", got)
	}
	if got := new(sure.Model).Chance(); got.All != 1 {
		t.Errorf("no items: %+v", got)
	}
}

// TestWorstCase checks that nothing is sampled where the extremes decide.
func TestWorstCase(t *testing.T) {
	m := &sure.Model{Items: 1, Factors: flat(3, 0, 1), Needs: []sure.Term{{0, 10, uses(0)}, {0, 10, uses(1, 2)}}}
	for supply, want := range map[float64]float64{20: 1, 25: 1} {
		m.Supplies = exactly(supply)
		if got := m.Chance(); got.All != want || got.Error != 0 {
			t.Errorf("%v litres: %+v, want exactly %v", supply, got, want)
		}
	}
	m.Needs = append(m.Needs, sure.Term{Amount: 30})
	if got := m.Chance(); got.All != 0 || got.Error != 0 {
		t.Errorf("never enough: %+v", got)
	}
}

// TestParallel checks, with the race detector, that no method changes the
// model.
func TestParallel(t *testing.T) {
	m := nursery()
	want := m.Chance().All
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			if got := m.Chance().All; got != want {
				t.Errorf("Chance() = %v, want %v", got, want)
			}
			m.Matters(3)
			m.Quantile(0, 0.5)
		})
	}
	wg.Wait()
}

// TestImports checks that the package imports little: it is compiled for
// browsers and knows only numbers.
func TestImports(t *testing.T) {
	may := []string{`"math"`, `"math/bits"`, `"slices"`, `"cmp"`, `"example.org/barrow/mix/stable"`}
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, f := range files {
		if !strings.HasSuffix(f.Name(), ".go") || strings.HasSuffix(f.Name(), "_test.go") {
			continue
		}
		seen++
		tree, err := parser.ParseFile(token.NewFileSet(), f.Name(), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range tree.Imports {
			if !slices.Contains(may, i.Path.Value) {
				t.Errorf("%s imports %s", f.Name(), i.Path.Value)
			}
		}
	}
	if seen < 5 {
		t.Errorf("saw only %d files", seen)
	}
}
