package sure_test

import (
	"math"
	"runtime"
	"strconv"
	"sync/atomic"
	"testing"
)

// TestSimulated compares 36 random models with a plain simulation, all items
// together and each by itself, to four combined standard errors.
func TestSimulated(t *testing.T) {
	draws := 1_000_000
	if racing || runtime.GOOS == "js" {
		draws = 50_000 // several times slower there; the plain run has the rest
	}
	var between atomic.Int32
	t.Run("models", func(t *testing.T) {
		for seed := range uint64(36) {
			t.Run(strconv.FormatUint(seed, 10), func(t *testing.T) {
				t.Parallel()
				if simulateOne(t, seed, draws) {
					between.Add(1)
				}
			})
		}
	})
	if between.Load() < 20 {
		t.Errorf("only %d models have a chance worth sampling", between.Load())
	}
}

// simulateOne holds one random model to its simulation, and reports whether its
// chance is far from never and from always.
func simulateOne(t *testing.T, seed uint64, draws int) (between bool) {
	m := random(seed)
	got := m.Chance()
	all, item := simulated(m, draws, seed)
	far := func(what string, got, sampled, want float64) {
		// Where no draw failed, the simulation's own error is not 0 either.
		p := min(max(want, 1/float64(draws)), 1-1/float64(draws))
		if e := math.Hypot(sampled, math.Sqrt(p*(1-p)/float64(draws))); math.Abs(got-want) > 4*e {
			t.Errorf("model %d: %s %.6f, simulated %.6f: %.1f standard errors",
				seed, what, got, want, math.Abs(got-want)/e)
		}
	}
	far("all", got.All, got.Error, all)
	for i := range item {
		far("an item", got.Item[i], got.ItemError[i], item[i])
	}
	t.Logf("model %d: %.5f +- %.5f, simulated %.5f, items %.4f", seed, got.All, got.Error, all, got.Item)
	return 0.01 < got.All && got.All < 0.99
}
