package sure

import "math"

// Factor is a figure known only as a range. It is triangular: between Low and
// High, likeliest at Mode, less likely in straight lines on both sides. A Flat
// factor is uniform: every figure between Low and High is equally likely, and
// Mode is not read. When Low equals High the figure is certain. The zero value
// is a certain 0. Figures have no unit: a factor multiplies litres, or is a
// share lost from them.
type Factor struct {
	Name            string
	Low, Mode, High float64
	Flat            bool
}

// Certain reports whether the figure is known exactly.
func (f Factor) Certain() bool { return f.Low == f.High }

// Typical returns the figure at which to hold a factor while another moves: the
// mode, or the middle of a flat factor.
func (f Factor) Typical() float64 {
	if f.Flat {
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
// vanish.
type law struct {
	low, high, width, split float64
	flat                    bool
}

// law prepares the factor.
func (f Factor) law() law {
	l := law{low: f.Low, high: f.High, width: f.High - f.Low, flat: f.Flat}
	if !l.flat && l.width > 0 {
		l.split = (f.Mode - f.Low) / l.width
	}
	return l
}

// at inverts the distribution. It needs only a square root, which every
// platform rounds alike. The limits keep a rounded sum from leaving the range,
// where a loss could reach 1.
func (l law) at(u float64) float64 {
	switch {
	case l.flat:
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
