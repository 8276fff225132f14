package sure_test

import (
	"math"
	"runtime"
	"slices"
	"testing"

	"example.org/barrow/mix/sure"
)

var levels = []float64{0.3, 0.5, 0.8, 0.9, 0.95, 0.99, 0.999}

// models is how many random models to try: fewer where all is slower.
func models() uint64 {
	if racing || runtime.GOOS == "js" {
		return 6
	}
	return 30
}

// TestEnoughIsEnough checks that with exactly what Enough returns the chance is
// at least the one asked for, apart from rounding where both use the same
// points; and that nothing is wasted: with 2 % less of everything the chance is
// lower.
func TestEnoughIsEnough(t *testing.T) {
	for seed := range models() {
		m := random(seed)
		for _, p := range levels {
			v := m.Enough(p)
			back := &sure.Model{Items: m.Items, Factors: m.Factors, Needs: m.Needs, Supplies: exactly(v...)}
			if got := back.Chance(); got.All < p-1e-9-got.Error {
				t.Errorf("model %d: Enough(%v) = %v has the chance %+v", seed, p, v, got)
			}
			for i := range v {
				v[i] *= 0.98
			}
			back.Supplies = exactly(v...)
			if got := back.Chance(); got.All >= p && slices.Max(v) > 0 {
				t.Errorf("model %d: 2 %% less than Enough(%v) still has the chance %+v", seed, p, got)
			}
		}
	}
}

// TestEnoughSimulated checks with a plain simulation that Enough(0.9) is enough
// in 0.9 of all draws, and in no more where needs are smooth.
func TestEnoughSimulated(t *testing.T) {
	m := nursery()
	m.Supplies = exactly(m.Enough(0.9)...)
	if got, _ := simulated(m, 200_000, 3); math.Abs(got-0.9) > 4*math.Hypot(0.0005, math.Sqrt(0.09/200_000)) {
		t.Errorf("the simulated chance is %v, want 0.9", got)
	}
}

// TestEnoughLevel checks that all items are planned at one level, between p and
// what the sum of misses allows, also where a need has a certain part.
func TestEnoughLevel(t *testing.T) {
	for name, m := range map[string]*sure.Model{"nursery": nursery(), "pots": pots()} {
		for i := range m.Items {
			m.Needs = append(m.Needs, sure.Term{Item: i, Amount: 100})
		}
		m.Supplies = exactly(m.Enough(0.8)...)
		_, item := simulated(m, 200_000, 4)
		low, high := slices.Min(item), slices.Max(item)
		if high-low > 0.007 || low < 0.8-0.004 || high > 1-0.2/float64(m.Items)+0.004 {
			t.Errorf("%s: the items of Enough(0.8) have the chances %v", name, item)
		}
	}
}

// TestEnoughRises checks that a higher level never plans less of an item.
func TestEnoughRises(t *testing.T) {
	for seed := range uint64(10) {
		m := random(seed)
		last := m.Enough(0)
		for _, p := range append(levels, 1) {
			v := m.Enough(p)
			for i := range v {
				if v[i] < last[i] {
					t.Errorf("model %d: item %d falls from %v to %v at %v", seed, i, last[i], v[i], p)
				}
			}
			last = v
		}
	}
}

// TestEnoughIndependent checks that two independent uniform needs are each
// planned at the root of p, and two needs with one factor at p itself.
func TestEnoughIndependent(t *testing.T) {
	m := &sure.Model{Items: 2, Factors: flat(2, 0, 1), Needs: []sure.Term{{0, 1000, uses(0)}, {1, 500, uses(1)}}}
	root := math.Sqrt(0.81)
	if v := m.Enough(0.81); math.Abs(v[0]/1000-root) > 5e-4 || math.Abs(v[1]/500-root) > 5e-4 {
		t.Errorf("apart: Enough(0.81) = %v, want 900, 450", v)
	}
	m.Needs[1].Uses = uses(0)
	if v := m.Enough(0.81); math.Abs(v[0]-810) > 1e-9 || math.Abs(v[1]-405) > 1e-9 {
		t.Errorf("shared: Enough(0.81) = %v, want 810, 405", v)
	}
}

// TestExtremes checks that the quantiles 0 and 1, and anything beyond, are the
// least and the most a need can be.
func TestExtremes(t *testing.T) {
	m := &sure.Model{Items: 2, Factors: []sure.Factor{{Low: 1, Mode: 2, High: 4}, {Low: 0.2, Mode: 0.2, High: 0.5}}}
	m.Needs = []sure.Term{
		{0, 100, []sure.Use{{Factor: 0}, {Factor: 1, Kind: sure.Loss}}},
		{0, 10, nil},
		{1, 7, nil},
	}
	for p, want := range map[float64]float64{0: 135, -1: 135, 1: 810, 2: 810, math.Inf(1): 810} {
		if got := m.Quantile(0, p); math.Abs(got-want) > 1e-9 {
			t.Errorf("Quantile(0, %v) = %v, want %v", p, got, want)
		}
		if got := m.Enough(p); math.Abs(got[0]-want) > 1e-9 || got[1] != 7 {
			t.Errorf("Enough(%v) = %v, want %v, 7", p, got, want)
		}
	}
	if got := m.Quantile(0, math.NaN()); math.Abs(got-810) > 1e-9 {
		t.Errorf("Quantile(0, NaN) = %v, want the most", got)
	}
	if got := m.Quantile(1, 0.5); got != 7 {
		t.Errorf("Quantile(1, 0.5) = %v, want 7", got)
	}
}

// TestQuantileIsChance checks that an item's chance with exactly its quantile
// is the level of that quantile, and that quantiles rise with the level.
func TestQuantileIsChance(t *testing.T) {
	for seed := range models() {
		m := random(seed)
		last := m.Quantile(0, 0)
		for _, p := range levels {
			v := m.Quantile(0, p)
			one := &sure.Model{Items: m.Items, Factors: m.Factors, Needs: m.Needs,
				Supplies: exactly(max(v-sure.Slack, 0))}
			if got := one.Chance(); v > m.Quantile(0, 0) && math.Abs(got.Item[0]-p) > 4*got.ItemError[0]+1e-6 {
				t.Errorf("model %d: the chance of Quantile(0, %v) = %v is %v", seed, p, v, got.Item[0])
			}
			if v < last {
				t.Errorf("model %d: Quantile(0, %v) = %v, below %v", seed, p, v, last)
			}
			last = v
		}
	}
}
