package mix

import "example.org/barrow/units"

// Span is a volume that is not known exactly: Plan is the figure to plan with,
// and it lies from Low to High. The zero value is no volume, exactly.
type Span struct{ Low, Plan, High units.Volume }

// Exactly returns the span of a volume that is known.
func Exactly(v units.Volume) Span { return Span{v, v, v} }

// Certain reports whether the volume is known.
func (s Span) Certain() bool { return s.Low == s.High }

// plus adds two spans; ok is false past [units.MaxVolume].
func (s Span) plus(t Span) (sum Span, ok bool) {
	sum = Span{s.Low + t.Low, s.Plan + t.Plan, s.High + t.High}
	return sum, sum.High <= units.MaxVolume
}

// minus takes t away, the least where the most may be there and the other way
// round. A bound that would fall below nothing is nothing; ok is false when
// the plan itself would.
func (s Span) minus(t Span) (rest Span, ok bool) {
	rest = Span{max(s.Low-t.High, 0), s.Plan - t.Plan, max(s.High-t.Low, 0)}
	return rest, rest.Plan >= 0
}

// times takes s n times; ok is false past [units.MaxVolume].
func (s Span) times(n int64) (t Span, ok bool) {
	high, ok := s.High.Times(n)
	if !ok {
		return Span{}, false
	}
	return Span{s.Low * units.Volume(n), s.Plan * units.Volume(n), high}, true
}

// mulDiv multiplies by n/d, each bound rounded once; ok is false past
// [units.MaxVolume].
func (s Span) mulDiv(n, d int64) (t Span, ok bool) {
	if n == d {
		return s, true
	}
	high, ok := s.High.MulDiv(n, d)
	if !ok {
		return Span{}, false
	}
	low, _ := s.Low.MulDiv(n, d)
	plan, _ := s.Plan.MulDiv(n, d)
	return Span{low, plan, high}, true
}
