package sure

import "math"

// Factor is a figure known only as a range. It is triangular: between Low and
// High, likeliest at Mode, less likely in straight lines on both sides. A Flat
// factor is uniform: every figure between Low and High is equally likely, and
// Mode is not read. When Low equals High the figure is certain. The zero value
// is a certain 0. Figures have no unit: a factor multiplies litres, or is a
// share lost from them.
//
// With Pieces above 0 the figure is a mean: of so many pieces, such as bags,
// each drawn by itself between Low and High and likeliest halfway between them,
// or Flat. Mode is not read. The more pieces there are, the closer their mean is
// to the middle; a term with the litres of all pieces is multiplied by it. With
// 0, all that the factor enters has one and the same figure.
type Factor struct {
	Name            string
	Low, Mode, High float64
	Flat            bool
	Pieces          int64
}

// Certain reports whether the figure is known exactly.
func (f Factor) Certain() bool { return f.Low == f.High }

// Typical returns the figure at which to hold a factor while another moves: the
// mode, or the middle of a flat factor and of pieces.
func (f Factor) Typical() float64 {
	if f.Flat || f.Pieces > 0 {
		return f.Low + float64((f.High-f.Low)/2)
	}
	return f.Mode
}

// At returns the figure that the factor does not exceed with probability p. A p
// below 0 counts as 0, and one above 1 as 1.
func (f Factor) At(p float64) float64 {
	l := f.law()
	return l.at(min(max(p, 0), 1))
}

// Below returns the probability that the factor is at most x.
func (f Factor) Below(x float64) float64 {
	l := f.law()
	return l.below(x)
}

// law is a factor prepared for many draws. split is the position of the mode as
// a share of the width. Scaled like that, no product of widths can overflow or
// vanish. The mean of pieces has a sum instead, of uniform parts of that width.
type law struct {
	low, high, width, split float64
	flat                    bool
	sum                     *sum
	part                    float64
}

// law prepares the factor.
func (f Factor) law() law {
	l := law{low: f.Low, high: f.High, width: f.High - f.Low, flat: f.Flat}
	parts := float64(f.Pieces)
	if !f.Flat {
		parts *= 2 // a triangle is two uniform parts
	}
	switch {
	case l.width == 0:
	case f.Pieces == 0 && !f.Flat:
		l.split = (f.Mode - f.Low) / l.width
	case parts == 2:
		l.flat, l.split = false, 0.5
	case parts > 2:
		l.sum = newSum(int(min(parts, mostParts)))
		l.part = l.width / math.Sqrt(float64(parts*float64(l.sum.parts)))
	}
	return l
}

// at inverts the distribution. It needs only a square root, which every
// platform rounds alike. The limits keep a rounded sum from leaving the range,
// where a loss could reach 1.
func (l law) at(u float64) float64 {
	switch {
	case l.sum != nil && u > 0 && u < 1:
		off := float64(l.part * (l.sum.at(u) - l.sum.middle()))
		return min(max(l.low+float64(l.width/2)+off, l.low), l.high)
	case l.flat || l.sum != nil:
		return min(l.low+float64(u*l.width), l.high)
	case u < l.split:
		return min(l.low+float64(l.width*math.Sqrt(u*l.split)), l.high)
	default:
		return max(l.high-float64(l.width*math.Sqrt((1-u)*(1-l.split))), l.low)
	}
}

// below is the distribution: the probability that the factor is at most x.
func (l law) below(x float64) float64 {
	if x < l.low {
		return 0
	}
	if x >= l.high {
		return 1
	}
	if l.sum != nil {
		return l.sum.below(l.sum.middle() + (x-l.low-float64(l.width/2))/l.part)
	}
	z := (x - l.low) / l.width
	switch {
	case l.flat:
		return z
	case z < l.split:
		return z * z / l.split
	case l.split < 1:
		return 1 - float64((1-z)*(1-z)/(1-l.split))
	default:
		return 1
	}
}
