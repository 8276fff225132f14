package ground_test

import (
	"math"
	"testing"

	"example.org/barrow/mix/ground"
	"example.org/barrow/units"
)

// TestPointed adds up what stands in cones and pyramids slice by slice, from the point
// to the fill line.
func TestPointed(t *testing.T) {
	for _, tt := range []struct {
		litres     float64
		rim, below units.Length
		square     bool
	}{
		{3, 165 * units.Millimetre, 25 * units.Millimetre, false},
		{3, 165 * units.Millimetre, 25 * units.Millimetre, true},
		{0.05, 40 * units.Millimetre, 6 * units.Millimetre, false},
		{60, 450 * units.Millimetre, 50 * units.Millimetre, true},
		{60, 450 * units.Millimetre, 0, true},
	} {
		wide, all := float64(tt.rim)/1e8, tt.litres
		mouth := wide * wide
		if !tt.square {
			mouth *= math.Pi / 4
		}
		height := 3 * all / mouth
		to := height - float64(tt.below)/1e8
		const slices = 100_000
		want := 0.0
		for i := range slices {
			h := (float64(i) + 0.5) / slices * to
			want += mouth * (h / height) * (h / height) * to / slices
		}
		v, _ := units.VolumeOfLitres(all)
		if got := ground.Pointed(v, tt.rim, tt.below, tt.square).Litres(); math.Abs(got-want) > 1e-8*want {
			t.Errorf("%+v: %.9f L, want %.9f", tt, got, want)
		}
	}
	if got := ground.Pointed(units.Litre, units.Metre, units.Metre, false); got != 0 {
		t.Errorf("a fill line under the base: %v, want nothing", got)
	}
}
