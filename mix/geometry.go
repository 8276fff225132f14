package mix

import (
	"math"

	"example.org/barrow/units"
)

// Shapes of pots. The round ones go through floating point, in decimetres, and
// are rounded once to the nanolitre; the conversions to float64 keep every
// product apart, so that no processor fuses two and every one gets the same.

// RoundTaper returns the volume of a round pot that widens evenly from bottom
// to top, both straight across: pi h (t^2 + t b + b^2) / 12. ok is false past
// [units.MaxVolume].
func RoundTaper(top, bottom, height units.Length) (v units.Volume, ok bool) {
	t, b, h := decimetres(top), decimetres(bottom), decimetres(height)
	return units.VolumeOfLitres(float64(math.Pi/12*h) * squares(t, b))
}

// SquareTaper returns the volume of a square pot that widens evenly from
// bottom to top, side to side: h (t^2 + t b + b^2) / 3, which is the mean of
// the two ends and of their geometric mean. ok as for [RoundTaper].
func SquareTaper(top, bottom, height units.Length) (v units.Volume, ok bool) {
	if top == bottom {
		return Box(top, top, height)
	}
	t, b, h := decimetres(top), decimetres(bottom), decimetres(height)
	return units.VolumeOfLitres(float64(h/3) * squares(t, b))
}

// Cylinder returns the volume of a straight round pot. ok as for [RoundTaper].
func Cylinder(across, height units.Length) (v units.Volume, ok bool) {
	return RoundTaper(across, across, height)
}

// Box returns length times width times depth, exact to a nanolitre. ok is
// false past [units.MaxVolume].
func Box(length, width, depth units.Length) (v units.Volume, ok bool) {
	floor, ok := length.By(width)
	if !ok {
		return 0, false
	}
	return floor.Deep(depth)
}

func squares(t, b float64) float64 { return float64(t*t) + float64(t*b) + float64(b*b) }

func decimetres(l units.Length) float64 { return float64(l) / 1e8 }

// between is the width at height h of a pot of the given height.
func between(top, bottom, h, height units.Length) units.Length {
	return bottom + units.Length(math.Round(float64(top-bottom)*(float64(h)/float64(height))))
}
