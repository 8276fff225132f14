package units

// Range is a volume that is not known exactly. Plan is the figure to plan with;
// the true one is between Low and High. The zero value is exactly no volume.
type Range struct{ Low, Plan, High Volume }

// Exactly returns the range of a volume that is known: all three figures are v.
func Exactly(v Volume) Range { return Range{v, v, v} }

// Certain reports whether the volume is known.
func (r Range) Certain() bool { return r.Low == r.High }

// Plus adds two ranges. ok is false when the sum is more than [MaxVolume].
func (r Range) Plus(s Range) (sum Range, ok bool) {
	sum = Range{r.Low + s.Low, r.Plan + s.Plan, r.High + s.High}
	return sum, sum.High <= MaxVolume
}

// Minus subtracts s: the low bound less the high one of s, and the high bound
// less the low one. A bound below zero becomes zero; ok is false when Plan
// itself would be below zero.
func (r Range) Minus(s Range) (rest Range, ok bool) {
	rest = Range{max(r.Low-s.High, 0), r.Plan - s.Plan, max(r.High-s.Low, 0)}
	return rest, rest.Plan >= 0
}

// Times multiplies r by n. ok is false when the result is more than
// [MaxVolume].
func (r Range) Times(n int64) (t Range, ok bool) {
	high, ok := r.High.Times(n)
	if !ok {
		return Range{}, false
	}
	return Range{r.Low * Volume(n), r.Plan * Volume(n), high}, true
}

// MulDiv multiplies r by n/d, each figure rounded once, halves up. ok is false
// when the result is more than [MaxVolume].
func (r Range) MulDiv(n, d int64) (t Range, ok bool) {
	if n == d {
		return r, true
	}
	high, ok := r.High.MulDiv(n, d)
	if !ok {
		return Range{}, false
	}
	low, _ := r.Low.MulDiv(n, d)
	plan, _ := r.Plan.MulDiv(n, d)
	return Range{low, plan, high}, true
}
