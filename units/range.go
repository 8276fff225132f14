package units

// Range is a volume that is not known exactly: Plan is the figure to plan with,
// and it lies from Low to High. The zero value is no volume, exactly.
type Range struct{ Low, Plan, High Volume }

// Exactly returns the range of a volume that is known.
func Exactly(v Volume) Range { return Range{v, v, v} }

// Certain reports whether the volume is known.
func (r Range) Certain() bool { return r.Low == r.High }

// Plus adds two ranges; ok is false past [MaxVolume].
func (r Range) Plus(s Range) (sum Range, ok bool) {
	sum = Range{r.Low + s.Low, r.Plan + s.Plan, r.High + s.High}
	return sum, sum.High <= MaxVolume
}

// Minus takes s away, the least where the most may be there and the other way
// round. A bound that would fall below nothing is nothing; ok is false when
// the plan itself would.
func (r Range) Minus(s Range) (rest Range, ok bool) {
	rest = Range{max(r.Low-s.High, 0), r.Plan - s.Plan, max(r.High-s.Low, 0)}
	return rest, rest.Plan >= 0
}

// Times takes r n times; ok is false past [MaxVolume].
func (r Range) Times(n int64) (t Range, ok bool) {
	high, ok := r.High.Times(n)
	if !ok {
		return Range{}, false
	}
	return Range{r.Low * Volume(n), r.Plan * Volume(n), high}, true
}

// MulDiv multiplies by n/d, each bound rounded once; ok is false past
// [MaxVolume].
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
