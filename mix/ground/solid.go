package ground

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
	return roundTaper(decimetres(top), decimetres(bottom), decimetres(height))
}

// SquareTaper returns the volume of a square pot that widens evenly from
// bottom to top, side to side: h (t^2 + t b + b^2) / 3, which is the mean of
// the two ends and of their geometric mean. ok as for [RoundTaper].
func SquareTaper(top, bottom, height units.Length) (v units.Volume, ok bool) {
	if top == bottom {
		return Box(top, top, height)
	}
	return squareTaper(decimetres(top), decimetres(bottom), decimetres(height))
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

func roundTaper(t, b, h float64) (units.Volume, bool) {
	return units.VolumeOfLitres(float64(math.Pi/12*h) * squares(t, b))
}

func squareTaper(t, b, h float64) (units.Volume, bool) {
	return units.VolumeOfLitres(float64(h/3) * squares(t, b))
}

func squares(t, b float64) float64 { return float64(t*t) + float64(t*b) + float64(b*b) }

func decimetres(l units.Length) float64 { return float64(l) / 1e8 }

// fillLine is the width, in decimetres, at depth above the base of a pot that
// is so high. It is not rounded to a length: the pot's volume is what is.
func fillLine(top, bottom, depth, height units.Length) float64 {
	return decimetres(bottom) + float64(decimetres(top-bottom)*(float64(depth)/float64(height)))
}

// Filled returns the volume that stands depth high in a pot that widens evenly
// from bottom to top, round or square. ok as for [RoundTaper].
func Filled(top, bottom, height, depth units.Length, square bool) (v units.Volume, ok bool) {
	line := fillLine(top, bottom, depth, height)
	if square {
		return squareTaper(line, decimetres(bottom), decimetres(depth))
	}
	return roundTaper(line, decimetres(bottom), decimetres(depth))
}
