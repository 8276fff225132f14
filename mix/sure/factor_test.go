package sure_test

import (
	"math"
	"testing"

	"example.org/barrow/mix/sure"
)

// TestFactor checks that the distribution and its inverse agree, stay within
// the range and have the quartiles that geometry gives.
func TestFactor(t *testing.T) {
	// Widths too narrow to tell the inverse from its neighbours.
	coarse := map[string]bool{"hair": true, "vanishing": true}
	factors := map[string]sure.Factor{
		"inner":     {Low: 1, Mode: 2, High: 5},
		"rising":    {Low: 0, Mode: 1, High: 1},
		"falling":   {Low: 3, Mode: 3, High: 4},
		"flat":      {Low: 0.2, High: 0.7, Flat: true},
		"near 1":    {Low: 0.9, Mode: math.Nextafter(1, 0), High: math.Nextafter(1, 0)},
		"hair":      {Low: 1, Mode: 1, High: math.Nextafter(1, 2)},
		"vanishing": {Low: 0, Mode: 1e-310, High: 2e-310},
		"huge":      {Low: 0, Mode: 1, High: sure.MaxFigure},
		"one piece": {Low: 0.9, High: 1.1, Pieces: 1},
		"pieces":    {Low: 0.9, High: 1.1, Pieces: 7},
		"many":      {Low: 0.9, High: 1.1, Pieces: 1_000_000},
		"two flat":  {Low: 0.9, High: 1.1, Flat: true, Pieces: 2},
	}
	for name, f := range factors {
		last := f.Low
		for i := range 1001 {
			p := float64(i) / 1000
			x := f.At(p)
			if x < last || x > f.High {
				t.Errorf("%s: At(%v) = %v, after %v", name, p, x, last)
			}
			if back := f.Below(x); !coarse[name] && math.Abs(back-p) > 1e-9 {
				t.Errorf("%s: Below(At(%v)) = %v", name, p, back)
			}
			last = x
		}
		if f.At(0) != f.Low || f.At(1) != f.High || f.At(-1) != f.Low || f.At(2) != f.High {
			t.Errorf("%s: ends at %v, %v", name, f.At(0), f.At(1))
		}
		if f.Below(f.Low-1) != 0 || f.Below(f.High) != 1 {
			t.Errorf("%s: Below its ends is %v, %v", name, f.Below(f.Low-1), f.Below(f.High))
		}
	}
	// A right triangle over (0, 1): the median cuts it in halves.
	if got := (sure.Factor{Mode: 1, High: 1}).At(0.5); got != math.Sqrt(0.5) {
		t.Errorf("median of the rising triangle %v", got)
	}
	if got := (sure.Factor{Low: 7, Mode: 7, High: 7}).At(0.3); got != 7 {
		t.Errorf("a certain figure is %v", got)
	}
	if got := (sure.Factor{Low: 1, High: 2, Flat: true}).Typical(); got != 1.5 {
		t.Errorf("Typical() = %v", got)
	}
}
