package sure

import (
	"math"
	"slices"
	"testing"
)

// find builds the generators component by component: each is the odd number
// below half that, with those before it, has the least shift-averaged
// worst-case error; the least of equals, and none twice.
func find(dims int) []uint16 {
	kernel := make([]float64, points)
	for k := range kernel {
		x := float64(k) / points
		kernel[k] = float64(x*x) - x + 1.0/6
	}
	prod := make([]float64, points)
	for k := range prod {
		prod[k] = 1
	}
	var out []uint16
	for j := range dims {
		weight := 12 / float64(j+1)
		best, least := 0, math.Inf(1)
		for z := 1; z < points/2; z += 2 {
			if slices.Contains(out, uint16(z)) {
				continue
			}
			var sum float64
			for k, at := 0, 0; k < points; k, at = k+1, (at+z)%points {
				sum += float64(prod[k] * (1 + float64(weight*kernel[at])))
			}
			if sum < least*(1-1e-12) {
				best, least = z, sum
			}
		}
		for k, at := 0, 0; k < points; k, at = k+1, (at+best)%points {
			prod[k] *= 1 + float64(weight*kernel[at])
		}
		out = append(out, uint16(best))
	}
	return out
}

// TestGenerators checks that the table of generators is what its comment says.
func TestGenerators(t *testing.T) {
	if got := find(len(generators)); !slices.Equal(got, generators[:]) {
		t.Errorf("generators = %v, want %v", generators, got)
	}
}
