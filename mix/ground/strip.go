package ground

import (
	"slices"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Strip is a bed of one width along a line: beside a fence, around a house.
type Strip struct {
	doc.AsTyped

	Along   []units.Length // the straight runs, one after the other
	Width   units.Length
	Corners *int64 // right angles; nil for one between every two runs
	Edge    string // where Along was measured: "centre" (also ""), "outer" or "inner"
	Gaps    []units.Length
}

// The types of fields that hold a strip, and the line along which its runs are
// measured.
var (
	strip = doc.Type{Takes: "object", Form: "object", Of: func() *doc.Object { return StripObject }, Read: doc.ReadOne}
	edge  = doc.Type{Form: "choice", Words: []string{"centre", "outer", "inner"}, Read: doc.ReadChoice}
)

// StripObject describes a strip in a document.
var StripObject = &doc.Object{ID: "strip", Name: "a strip", Maybe: doc.MaybeOf[Strip], Tables: []doc.Fields{{
	{Name: "along", Type: &doc.Lengths, About: "the straight runs, one after the other", At: func(s any) any { return &s.(*Strip).Along }},
	{Name: "width", Type: &doc.Length, About: "across the strip", At: func(s any) any { return &s.(*Strip).Width }},
	{Name: "corners", Type: &doc.MaybeCount, About: "right angles; one fewer than the runs when left out", At: func(s any) any { return &s.(*Strip).Corners }},
	{Name: "edge", Type: &edge, About: "the line along which the runs are measured; centre when left out", At: func(s any) any { return &s.(*Strip).Edge }},
	{Name: "gaps", Type: &doc.Lengths, About: "runs left out: a gate, a door", At: func(s any) any { return &s.(*Strip).Gaps }},
}}}

// measure multiplies length by width. Measured along the centre line, the
// corners come out right by themselves. Along the outer edge each square corner
// is counted twice, along the inner edge not at all.
func (s *Strip) measure(r *doc.Reader) units.Fixed {
	r.Enter("strip")
	defer r.Leave()
	if len(s.Along) > 0 && slices.Min(s.Along) < 0 || len(s.Gaps) > 0 && slices.Min(s.Gaps) < 0 {
		r.ProblemAt("along", units.QuantityNegative, "every run and gap is more than zero")
	}
	if s.Width <= 0 {
		r.ProblemAt("width", doc.FieldMissing, `how wide is the strip? such as "3 ft"`)
	}
	if len(s.Along) == 0 {
		r.ProblemAt("along", doc.FieldMissing, `give its runs, such as ["20 ft", "15 ft"]`)
	}
	if !r.Sound() {
		return units.Fixed{}
	}
	if sum(s.Gaps) >= sum(s.Along) {
		r.ProblemAt("gaps", doc.AreaGaps, "the gaps are as long as the strip itself")
		return units.Fixed{}
	}
	width, corners := s.FixedLength("width", s.Width), s.bends()
	ground, ok := s.fixedSum("along", s.Along).Minus(s.fixedSum("gaps", s.Gaps)).By(width)
	square, ok2 := width.By(width)
	if !ok || !ok2 || sum(s.Along) > units.MaxLength || square.Round() > int64(units.MaxArea)/max(corners, 1) {
		return tooLarge(r)
	}
	switch s.Edge {
	case "outer":
		ground = ground.Minus(square.MulDiv(corners, 1))
	case "inner":
		ground = ground.Plus(square.MulDiv(corners, 1))
	}
	if ground.Round() <= 0 || large(ground) {
		r.Problem(doc.AreaStrip, "the corners leave nothing of the strip: are the runs longer than it is wide?")
		return units.Fixed{}
	}
	return ground
}

// straightened returns how long the strip is when its corners are pulled straight:
// the length that has the strip's area at its width, or 0 or less where there is
// none.
func (s *Strip) straightened() units.Length {
	run := sum(s.Along) - sum(s.Gaps)
	corners := units.Length(s.bends())
	switch s.Edge {
	case "outer":
		return run - corners*s.Width
	case "inner":
		return run + corners*s.Width
	}
	return run
}

// bends returns how many right angles the strip has: as given, or one between
// every two runs.
func (s *Strip) bends() int64 {
	if s.Corners != nil {
		return max(*s.Corners, 0)
	}
	return int64(max(len(s.Along)-1, 0))
}

// sum adds lengths. It stops just past the longest a strip can be, so that it
// cannot overflow.
func sum(list []units.Length) (total units.Length) {
	for _, l := range list {
		if total += l; total > units.MaxLength {
			return units.MaxLength + 1
		}
	}
	return total
}

// fixedSum adds the lengths of a field before rounding. Past the longest a strip can
// be it may be wrong; sum tells.
func (s *Strip) fixedSum(field string, list []units.Length) (total units.Fixed) {
	for i, l := range list {
		total = total.Plus(s.FixedLength(json.PathIndex(field, i), l))
	}
	return total
}
