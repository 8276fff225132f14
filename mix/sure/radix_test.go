package sure

import (
	"math"
	"slices"
	"testing"
)

// TestSortVolumes compares the order with sorting by comparison.
func TestSortVolumes(t *testing.T) {
	for n, top := range map[int]float64{0: 1, 1: 1, 2: 1, 100: 1e-300, 1000: 3, 5000: 1e300} {
		v := make([]float64, n)
		for i := range v {
			v[i] = top * unit(scramble(uint64(i%700)))
		}
		if n > 10 {
			v[3], v[7] = 0, math.SmallestNonzeroFloat64
		}
		want := slices.Clone(v)
		slices.Sort(want)
		if sortVolumes(v); !slices.Equal(v, want) {
			t.Errorf("%d numbers to %v are out of order", n, top)
		}
	}
}
