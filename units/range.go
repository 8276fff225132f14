package units

// Range is a volume that is not known exactly. Plan is the figure to plan with;
// the true one is between Low and High. The zero value is exactly no volume.
//
// The figures are whole counts, for people to read. A Range also keeps what
// rounding has left out of Plan, so that a count of packs can be decided without
// it; see [Range.FixedPlan]. A bound that is Plan has the same left out; any other
// bound is an estimate, and as it is. In a Range that is put together from its
// figures nothing is left out.
type Range struct {
	Low, Plan, High Volume

	left Fixed // what rounding has left out of Plan, may be negative
}

// Exactly returns the range of a volume that is known: all three figures are v.
func Exactly(v Volume) Range { return Range{Low: v, Plan: v, High: v} }

// Known returns the range of a volume that is known before rounding.
func Known(v Fixed) Range {
	r := Exactly(Volume(v.Round()))
	r.left = v.Minus(FixedOf(r.Plan))
	return r
}

// Between returns the range of a volume that is planned as one and may be as
// little or as much as two others are planned.
func Between(low, plan, high Range) Range {
	return Range{low.Plan, plan.Plan, high.Plan, plan.left}
}

// Planned returns the range of a volume that is known to be Plan.
func (r Range) Planned() Range { return Range{r.Plan, r.Plan, r.Plan, r.left} }

// FixedLow returns Low before it was rounded, in nanolitres.
func (r Range) FixedLow() Fixed { return r.fixed(r.Low) }

// FixedPlan returns Plan before it was rounded, in nanolitres.
func (r Range) FixedPlan() Fixed { return r.fixed(r.Plan) }

// FixedHigh returns High before it was rounded, in nanolitres.
func (r Range) FixedHigh() Fixed { return r.fixed(r.High) }

// fixed returns one of the figures before it was rounded.
func (r *Range) fixed(v Volume) Fixed {
	if v != r.Plan {
		return FixedOf(v)
	}
	return FixedOf(v).Plus(r.left)
}

// Certain reports whether the volume is known.
func (r Range) Certain() bool { return r.Low == r.High }

// Plus adds two ranges. ok is false when the sum is more than [MaxVolume].
func (r Range) Plus(s Range) (sum Range, ok bool) {
	sum = Range{r.Low + s.Low, r.Plan + s.Plan, r.High + s.High, r.left.Plus(s.left)}
	return sum, sum.High <= MaxVolume
}

// Minus subtracts s: the low bound less the high one of s, and the high bound
// less the low one. A figure below zero becomes zero; ok is false when that is
// Plan.
func (r Range) Minus(s Range) (rest Range, ok bool) {
	if left := r.FixedPlan().Minus(s.FixedPlan()); !left.Negative() {
		rest = Exactly(max(r.Plan-s.Plan, 0))
		rest.left = left.Minus(FixedOf(rest.Plan))
	}
	if !r.Certain() || !s.Certain() {
		rest.Low = min(max(r.Low-s.High, 0), rest.Plan)
		rest.High = max(r.High-s.Low, rest.Plan)
	}
	return rest, r.Plan >= s.Plan
}

// Times multiplies r by n, each figure rounded once. ok is false when the result is
// more than [MaxVolume].
func (r Range) Times(n int64) (t Range, ok bool) {
	if _, ok := r.High.Times(n); !ok {
		return Range{}, false
	}
	left := r.left.MulDiv(n, 1)
	more := Volume(left.Round())
	times := func(v Volume) Volume {
		if v != r.Plan {
			return v * Volume(n)
		}
		return v*Volume(n) + more
	}
	return Range{times(r.Low), times(r.Plan), times(r.High), left.Minus(FixedOf(more))}, true
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
	return r.Part(low, plan, high, n, d), true
}

// Part returns n/d of r, with the figures that it was given by a rounding of the
// caller's own, such as a split whose parts add up.
func (r Range) Part(low, plan, high Volume, n, d int64) Range {
	return Range{low, plan, high, r.FixedPlan().MulDiv(n, d).Minus(FixedOf(plan))}
}
