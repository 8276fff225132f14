package ground

import (
	"math"

	"example.org/barrow/units"
)

// The shapes of pots. Round and tapered ones use floating point, in decimetres,
// and are rounded once to the nanolitre. The conversions to float64 keep every
// product apart, so that no processor fuses one with a sum and all get the same
// result.

// RoundTaper returns the volume of a round pot that widens evenly from bottom
// to top; both are diameters. It is pi h (t^2 + t b + b^2) / 12, rounded to the
// nanolitre. ok is false when the result is more than [units.MaxVolume].
func RoundTaper(top, bottom, height units.Length) (v units.Volume, ok bool) {
	return roundTaper(decimetres(top), decimetres(bottom), decimetres(height))
}

// SquareTaper returns the volume of a square pot that widens evenly from bottom
// to top, both measured from side to side. It is h (t^2 + t b + b^2) / 3, the
// height times the mean of the two ends and of their geometric mean. ok is as
// for [RoundTaper].
func SquareTaper(top, bottom, height units.Length) (v units.Volume, ok bool) {
	if top == bottom {
		return Box(top, top, height)
	}
	return squareTaper(decimetres(top), decimetres(bottom), decimetres(height))
}

// Cylinder returns the volume of a straight round pot. ok is as for
// [RoundTaper].
func Cylinder(across, height units.Length) (v units.Volume, ok bool) {
	return RoundTaper(across, across, height)
}

// Box returns length times width times depth, exact to a nanolitre. ok is false
// when the result is more than [units.MaxVolume].
func Box(length, width, depth units.Length) (v units.Volume, ok bool) {
	box, ok := FixedBox(units.FixedOf(length), units.FixedOf(width), units.FixedOf(depth))
	return units.Volume(box.Round()), ok
}

// FixedBox is Box before rounding: nanometres in, nanolitres out.
func FixedBox(length, width, depth units.Fixed) (v units.Fixed, ok bool) {
	floor, ok := length.By(width)
	if !ok {
		return units.Fixed{}, false
	}
	return floor.Deep(depth)
}

// roundTaper takes decimetres, so that the result is litres.
func roundTaper(t, b, h float64) (units.Volume, bool) {
	return units.VolumeOfLitres(float64(math.Pi/12*h) * squares(t, b))
}

// squareTaper takes decimetres, so that the result is litres.
func squareTaper(t, b, h float64) (units.Volume, bool) {
	return units.VolumeOfLitres(float64(h/3) * squares(t, b))
}

// squares returns t^2 + t b + b^2, each product rounded before it is added.
func squares(t, b float64) float64 { return float64(t*t) + float64(t*b) + float64(b*b) }

// decimetres returns l for the formulas above: a cubic decimetre is a litre.
func decimetres(l units.Length) float64 { return float64(l) / 1e8 }

// fillLine returns the width, in decimetres, at depth above the base of a pot
// of that height. It is not rounded to a length, because the pot's volume is
// rounded instead.
func fillLine(top, bottom, depth, height units.Length) float64 {
	return decimetres(bottom) + float64(decimetres(top-bottom)*(float64(depth)/float64(height)))
}

// Pointed returns what stands in a pot of volume v up to below under its rim, when it
// comes to a point at the base, as a cone or a pyramid does: v (1 - below / height)^3,
// where the height is 3 v over the area of the rim. It is rounded to the nanolitre, and
// 0 for a pot that is not so deep.
func Pointed(v units.Volume, rim, below units.Length, square bool) units.Volume {
	area := float64(decimetres(rim) * decimetres(rim))
	if !square {
		area = float64(math.Pi / 4 * area)
	}
	left := 1 - float64(decimetres(below)*area)/float64(3*v.Litres())
	if left <= 0 {
		return 0
	}
	rest, _ := units.VolumeOfLitres(v.Litres() * float64(left*float64(left*left)))
	return rest
}

// Filled returns the volume of mix that stands depth high in a pot that widens
// evenly from bottom to top, round or square. ok is as for [RoundTaper].
func Filled(top, bottom, height, depth units.Length, square bool) (v units.Volume, ok bool) {
	line := fillLine(top, bottom, depth, height)
	if square {
		return squareTaper(line, decimetres(bottom), decimetres(depth))
	}
	return roundTaper(line, decimetres(bottom), decimetres(depth))
}
