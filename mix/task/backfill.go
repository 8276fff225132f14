package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Backfill is the work of filling planting holes around their root balls, with the
// soil dug from them and, where Share is given, with material mixed in. The zero
// value is a backfill task with nothing filled in, which planning reports.
type Backfill struct {
	Holes      int64        // how many, all alike
	Width      units.Length // the diameter of a hole with straight sides
	Depth      units.Length
	Ball       *Ball        // of each plant; nil is a problem
	AboveGrade units.Length // how far the ball stands above the ground
	Share      units.Ratio  // of the backfill that is material, by volume in place; zero for soil alone
	Soil       string       // "clay", "loam" or "sandy", or "" when not given
}

var backfill = &Kind{
	Name:    "backfill",
	Object:  &doc.Object{ID: "backfill", Name: "a backfill task", Tables: []doc.Fields{backfillFields}},
	New:     func() Work { return &Backfill{} },
	Result:  &Holes{},
	Settles: true,
	Bare:    true,
}

var backfillFields = doc.Fields{
	{Name: "holes", Type: &doc.Count, About: "how many", At: func(f any) any { return &f.(*Backfill).Holes }},
	{Name: "width", Type: &doc.Length, About: "straight across the hole, 2 to 3 times the ball", At: func(f any) any { return &f.(*Backfill).Width }},
	{Name: "depth", Type: &doc.Length, About: "no deeper than the ball", At: func(f any) any { return &f.(*Backfill).Depth }},
	{Name: "ball", Type: &ball, About: `"#1", "0.7 gal", or across by height "6 in x 7 in"`, At: func(f any) any { return &f.(*Backfill).Ball }},
	{Name: "above_grade", Type: &doc.Margin, About: "how far the ball stands above the ground; 1 to 2 in in clay", At: func(f any) any { return &f.(*Backfill).AboveGrade }},
	{Name: "share", Type: &doc.SomeOfAll, About: "share of the backfill that is material; left out, only soil goes back", At: func(f any) any { return &f.(*Backfill).Share }},
	{Name: "soil", Type: &soil, About: "the soil dug; clay when left out", At: func(f any) any { return &f.(*Backfill).Soil }},
}

// Kind is the kind "backfill".
func (f *Backfill) Kind() *Kind {
	if f == nil {
		return nil
	}
	return backfill
}

// Clone returns a copy that shares nothing with f.
func (f *Backfill) Clone() Work {
	if f == nil {
		return nil
	}
	c := *f
	c.Ball = f.Ball.clone()
	return &c
}

// Holes is the result of a backfill task. Volumes are for all holes together, rounded
// to the nanolitre. What depends on a ball known by its class is a range.
type Holes struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Count        int64
	Width, Depth units.Length // of one hole
	Ball         Ball         // as the job gives it
	Below        units.Length // the height of one ball below the ground
	Above        units.Length // the height of one ball above the ground
	Across       units.Length // of one ball; 0 when only its volume is known

	Dug      units.Volume // soil dug, as it lay before digging
	InBall   units.Range  // the balls, only what is below the ground
	Round    units.Range  // between hole and ball: what is filled
	Material units.Range  // the part of Round that is amendment, in place
	PutBack  units.Range  // the part of Round that is soil, in place
	Left     units.Range  // soil left over, loose

	work     *Backfill
	blend    *catalog.Blend
	soil     *catalog.Soil
	ballFrom catalog.Source
	deep     units.Length // by how much the hole is deeper than the ball reaches, 0 or more
	proud    units.Length // by how much the ball stands higher than AboveGrade, 0 or more
	thin     bool         // the ball, known by its volume, cannot be as high as the hole has it
}

// result is worked out before the allowances are applied: the material is a share of
// the volume between hole and ball, and that has to be known first.
func (f *Backfill) result(r *doc.Reader, s *catalog.Scope, in *In) Result {
	h := &Holes{Count: f.Holes, Width: f.Width, Depth: f.Depth, work: f, blend: in.Blend, soil: s.Soil(f.Soil)}
	f.check(r)
	if r.Sound() {
		h.measure(r, s)
	}
	f.pair(r, in.Task)
	return h
}

// measure works out the hole and the ball, then the space between them. It takes the
// share of all holes together, so that the share is rounded once.
func (h *Holes) measure(r *doc.Reader, s *catalog.Scope) {
	hole, ok := ground.Cylinder(h.Width, h.Depth)
	if ok {
		h.Dug, ok = hole.Times(h.Count)
	}
	if !ok {
		r.Problem(doc.VolumeLarge, tooMuch())
		return
	}
	if hole == 0 {
		r.Problem(doc.VolumeSmall, "the hole holds nothing that can be measured")
		return
	}
	one := h.below(r, s)
	if !r.Sound() {
		return
	}
	if rest, ok := units.Exactly(hole).Minus(one); !ok || rest.Plan == 0 {
		r.ProblemAt("ball", doc.BallLarge, message.Of("the ball, {#0} below ground, fills the hole, {#1}",
			units.Both.Volume(one.Plan), units.Both.Volume(hole)))
		return
	}
	if h.InBall, ok = one.Times(h.Count); !ok {
		r.Problem(doc.VolumeLarge, tooMuch())
		return
	}
	h.Ball, h.Across = *h.work.Ball, h.work.Ball.Across
	h.Below, h.Above = h.Depth-h.deep, h.work.AboveGrade+h.proud
	h.Round, _ = units.Exactly(h.Dug).Minus(h.InBall)
	h.Material, _ = h.Round.MulDiv(h.work.Share.Num(), h.work.Share.Den())
	h.balance()
}

// check reports measures that are missing or cannot be.
func (f *Backfill) check(r *doc.Reader) {
	if f.Holes == 0 {
		r.ProblemAt("holes", doc.FieldMissing, "how many holes?")
	}
	if f.Width == 0 {
		r.ProblemAt("width", doc.FieldMissing, `how wide? such as "18 in", 2 to 3 times the ball`)
	}
	if f.Depth == 0 {
		r.ProblemAt("depth", doc.FieldMissing, `how deep? such as "7 in", no deeper than the ball`)
	}
	switch {
	case f.AboveGrade < 0 || f.AboveGrade > units.MaxLength:
		r.ProblemAt("above_grade", units.QuantityNegative, "zero or more")
	case f.AboveGrade > f.Depth && f.Depth > 0:
		r.ProblemAt("above_grade", doc.BallAbove, message.Of(
			"more of the ball would stand above the ground than the hole is deep, {#0}", units.Both.Length(f.Depth)))
	}
	if f.Ball == nil {
		r.ProblemAt("ball", doc.FieldMissing, `how large is the root ball? such as "#1" or "6 in x 7 in"`)
	}
}

// pair reports a material without a share and a share without a material. Neither has
// a default: how much to mix in is the grower's decision.
func (f *Backfill) pair(r *doc.Reader, t *Task) {
	named := t.Material != "" || t.Mix != ""
	switch some := f.Share != (units.Ratio{}); {
	case named && !some:
		r.ProblemAt("share", doc.FieldMissing,
			`how much of the backfill is it? such as "25%"; or leave the material out`)
	case some && !named:
		r.ProblemAt("material", doc.FieldMissing, "a share of what? name a material, or leave share out")
	}
}

// below is the volume of one ball below the ground. Where only the volume of a ball is
// known, the ball is taken to stand on the floor of the hole, so its height is the
// depth of the hole plus what stands above the ground; thin keeps whether no ball is
// like that. A ball of known height is placed by AboveGrade, or on the floor of a hole
// too shallow for that, and deep or proud keeps the difference. All are for notes.
func (h *Holes) below(r *doc.Reader, s *catalog.Scope) units.Range {
	f := h.work
	r.Enter("ball")
	defer r.Leave()
	ball, from, ok := f.Ball.volume(r, s)
	h.ballFrom = from
	if !ok {
		return units.Range{}
	}
	height := f.Ball.Height
	if height == 0 {
		h.thin = thin(ball, f.Depth+f.AboveGrade)
		below, _ := ball.MulDiv(int64(f.Depth), int64(f.Depth+f.AboveGrade))
		return below
	}
	sunk := height - f.AboveGrade
	switch {
	case f.Ball.Across > f.Width:
		r.Problem(doc.BallLarge, message.Of("wider than the hole, {#0}", units.Both.Length(f.Width)))
		return units.Range{}
	case sunk <= 0:
		r.Problem(doc.BallAbove, "the whole ball would stand above the ground")
		return units.Range{}
	case height-f.Depth > f.Depth:
		r.Problem(doc.BallAbove, message.Of("{#0} of the ball would stand above the ground, more than the hole is deep, {#1}",
			units.Both.Length(height-f.Depth), units.Both.Length(f.Depth)))
		return units.Range{}
	case sunk > f.Depth:
		h.proud, sunk = sunk-f.Depth, f.Depth
	default:
		h.deep = f.Depth - sunk
	}
	v, _ := ground.Cylinder(f.Ball.Across, sunk) // smaller than the whole ball
	return units.Exactly(v)
}

// thin reports whether a ball of any volume in v that is as high as given would be more
// than twice as high as it is wide, which no common pot is (common practice).
func thin(v units.Range, height units.Length) bool {
	least, ok := ground.Cylinder(height/2, height)
	return !ok || least > v.High
}

// balance works out how much soil goes back and how much is left over. What is left
// is given loose, as it has to be carted away: soil swells when it is dug.
func (h *Holes) balance() {
	h.PutBack = units.Range{
		Low:  h.Round.Low - h.Material.Low,
		Plan: h.Round.Plan - h.Material.Plan,
		High: h.Round.High - h.Material.High,
	}
	left, _ := units.Exactly(h.Dug).Minus(h.PutBack)
	swell := func(v units.Volume, r units.Ratio) units.Volume {
		w, ok := v.MulDiv(r.Den()+r.Num(), r.Den())
		if !ok {
			return units.MaxVolume
		}
		return w
	}
	h.Left = units.Range{
		Low:  swell(left.Low, h.soil.SwellLow),
		Plan: swell(left.Plan, h.soil.Swell),
		High: swell(left.High, h.soil.SwellHigh),
	}
}

// Net is the material mixed into the backfill, in place, in nanolitres.
func (h *Holes) Net() units.Range { return h.Material }

// Terms yields the planned Net as one exact volume. The range of Net comes from the
// ball alone and is narrow, so it is left out of the chances.
func (h *Holes) Terms(yield func(Term) bool) {
	yield(Term{Times: 1, Each: units.Exactly(h.Material.Plan)})
}

// Reach is nil: the plants decide how many holes there are, not the stock of compost.
func (h *Holes) Reach(units.Volume, func(units.Range) bool, lang.Printer) *Reached { return nil }

// Title is the number of holes: "Backfill 12 holes".
func (h *Holes) Title(p lang.Printer, _ string) string {
	return p.Count(h.Count, "Backfill {0} hole", "Backfill {0} holes")
}

// Facts are the holes and the soil.
func (h *Holes) Facts(p lang.Printer) []Fact {
	f := facts{p: p}
	f.add("holes", "Holes", itoa(h.Count)+" x "+p.Length(h.Width)+" x "+p.Length(h.Depth))
	f.add("dug", "Soil dug, in place", p.Volume(h.Dug))
	f.add("round", "Filled round the balls", p.Range(h.Round))
	f.add("put-back", "Soil put back, in place", p.Range(h.PutBack))
	f.add("soil-left", "Soil left over, loose", p.Range(h.Left))
	return f.list
}

// Steps writes the hole, the ball and the balance of the soil.
func (h *Holes) Steps(s *Steps) {
	p, f, soil := s.Printer, h.work, h.soil
	n := p.Count(h.Count, "{0} hole", "{0} holes")
	s.Add("{0} {1} x {2}, straight sides: pi d^2 h / 4", p.Volume(h.Dug), catalog.Arithmetic,
		n, p.Length(h.Width), p.Length(h.Depth))
	s.Add("less the balls below ground: {0}, {1} above grade", p.Range(h.InBall), h.ballFrom,
		p.Figure(h.Ball.String()), p.Length(f.AboveGrade))
	s.Add("filled round the balls, in place", p.Range(h.Round), catalog.Arithmetic)
	if h.Material.High > 0 {
		s.Add("{0} of that is material, in place", p.Range(h.Material), catalog.FromJob, p.Share(f.Share))
	}
	s.Add("soil put back, in place", p.Range(h.PutBack), catalog.Arithmetic)
	s.Add("soil left over, loose: dug less put back, x (1 + swell), {0} {1} ({2} to {3})",
		p.Range(h.Left), soil.Source,
		soil.Name, p.Share(soil.Swell), p.Share(soil.SwellLow), p.Share(soil.SwellHigh))
}

// Notes says where the hole does not fit the ball, and which soil is assumed. These
// are no problems: the volumes are right for the hole as it will be.
func (h *Holes) Notes(n *Notes) {
	switch {
	case h.deep > 0:
		n.say("depth", "hole.deep",
			"the hole is {0} deeper than the ball reaches, and a hole is no deeper than the ball (Univ. of Idaho, 2012): dig less, or firm soil under it",
			n.Printer.Length(h.deep))
	case h.thin:
		n.say("depth", "hole.deep",
			"to reach the floor of this hole a ball of {0} would be more than twice as high as it is wide, and a hole is no deeper than the ball (Univ. of Idaho, 2012): dig less, or give the ball across by height",
			n.Printer.Figure(h.Ball.String()))
	}
	if h.proud > 0 {
		n.say("ball", "ball.proud",
			"the ball stands {0} higher above the ground than you gave: dig deeper, or give that as above_grade",
			n.Printer.Length(h.proud))
	}
	if h.work.Soil == "" {
		n.say("soil", "soil.assumed", "the soil left over is worked out for clay; say soil for another")
	}
}

// Cautions are about amending single holes and about digging.
func (h *Holes) Cautions(s *catalog.Scope) (list []Caution) {
	if h.blend != nil {
		list = append(list, Caution{Code: "hole-only", Place: 40,
			Text:   "Amending single holes is a common error, most of all in heavy clay: water stands in them and roots stay in them. Amend the whole bed.",
			Source: "Univ. of Georgia newswire, 2002; Univ. of Idaho 2012 allows 3 parts soil to 1 organic"})
	}
	return append(append(list, about(s, h.blend, nitrogen, salt)...), digging)
}

// JSON writes the balance of the soil, in litres.
func (h *Holes) JSON(w *lang.Writer) {
	w.Open("backfill")
	w.Litres("dug_litres", h.Dug)
	w.Range("put_back_", h.PutBack)
	w.Range("left_over_loose_", h.Left)
	w.Close()
}

// Shape describes what JSON writes, for the plan's schema.
func (h *Holes) Shape() *json.Member {
	shape := json.AnObject("Backfill", "What only a backfill task has.",
		json.Member{Name: "dug_litres", Shape: json.ANumber, About: "soil dug, in place"},
		json.Member{Name: "put_back_litres", Shape: json.ANumber, About: "of that, what goes back, in place"},
		json.Member{Name: "put_back_range_litres", Shape: json.ARange, About: "its least and its most", Maybe: true},
		json.Member{Name: "left_over_loose_litres", Shape: json.ANumber, About: "soil left over, loose"},
		json.Member{Name: "left_over_loose_range_litres", Shape: json.ARange, About: "its least and its most", Maybe: true})
	return &json.Member{Name: "backfill", About: "the soil of all holes together", Maybe: true, Shape: shape}
}
