package mix

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Backfill is a task that fills planting holes round their root balls, with
// the soil dug from them and, if Share is given, material mixed in.
type Backfill struct {
	Holes      int64
	Width      units.Length // straight across
	Depth      units.Length
	Ball       *Ball
	AboveGrade units.Length // how far the ball stands above the ground
	Share      units.Ratio  // of the backfill that is material, by volume in place
	Soil       string       // "clay", "loam", "sandy", or "" when not said
}

var backfillFields = []field[*Task]{
	{"holes", "whole number", "how many", func(c *checker, n *json.Node, t *Task) { t.Backfill.Holes = readCount(c, n, 1) }},
	{"width", "length", "straight across the hole, 2 to 3 times the ball", func(c *checker, n *json.Node, t *Task) { t.Backfill.Width = readLength(c, n) }},
	{"depth", "length", "no deeper than the ball", func(c *checker, n *json.Node, t *Task) { t.Backfill.Depth = readLength(c, n) }},
	{"ball", "size, volume or lengths", `"#1", "0.7 gal", or across by height "6 in x 7 in"`, func(c *checker, n *json.Node, t *Task) { t.Backfill.Ball = readBall(c, n) }},
	{"above_grade", "length", "how far the ball stands above the ground; 1 to 2 in in clay", func(c *checker, n *json.Node, t *Task) { t.Backfill.AboveGrade = readMargin(c, n) }},
	{"share", "share", "of the backfill that is material; left out, only soil goes back", func(c *checker, n *json.Node, t *Task) { t.Backfill.Share = readSome(c, n, whole) }},
	{"soil", "clay, loam or sandy", "the soil dug; clay when left out", func(c *checker, n *json.Node, t *Task) { t.Backfill.Soil = readSoil(c, n) }},
}

// holes are planting holes worked out; volumes are for all of them.
type holes struct {
	task     *Backfill
	soil     *Soil
	dug      units.Volume // in place, before digging
	ball     Span         // below grade
	ballFrom Source
	round    Span         // between hole and ball: what is filled
	material Span         // of that, the amendment, in place
	putBack  Span         // of that, soil, in place
	left     Span         // soil left over, loose
	deep     units.Length // how far the hole is deeper than the ball, 0 or more
	proud    units.Length // how far the ball stands higher than said, 0 or more
}

// work measures the holes. The net volume is the material's, in place.
func (f *Backfill) work(c *checker, b *book) (h *holes, net Span) {
	h = &holes{task: f}
	f.check(c)
	if !c.sound() {
		return h, Span{}
	}
	h.soil = b.cat.soil(f.Soil)
	if h.soil == nil {
		h.soil = b.cat.soil("clay")
	}
	hole, ok := Cylinder(f.Width, f.Depth)
	if ok {
		h.dug, ok = hole.Times(f.Holes)
	}
	if !ok {
		c.problem("volume.large", tooMuch())
		return h, Span{}
	}
	if hole == 0 {
		c.problem("volume.small", "the hole holds nothing that can be measured")
		return h, Span{}
	}
	one := f.below(c, b, h)
	if !c.sound() {
		return h, Span{}
	}
	if rest, ok := Exactly(hole).minus(one); !ok || rest.Plan == 0 {
		c.problemAt("ball", "ball.large", message.Of("the ball, {#0} below ground, fills the hole, {#1}", units.Both.Volume(one.Plan), units.Both.Volume(hole)))
		return h, Span{}
	}
	var fits bool
	if h.ball, fits = one.times(f.Holes); !fits {
		c.problem("volume.large", tooMuch())
		return h, Span{}
	}
	h.round, _ = Exactly(h.dug).minus(h.ball)
	h.material, _ = h.round.mulDiv(f.Share.Num(), f.Share.Den())
	h.soilBalance()
	return h, h.material
}

// check reports what is missing.
func (f *Backfill) check(c *checker) {
	if f.Holes == 0 {
		c.problemAt("holes", "field.missing", "how many holes?")
	}
	if f.Width == 0 {
		c.problemAt("width", "field.missing", `how wide? such as "18 in", 2 to 3 times the ball`)
	}
	if f.Depth == 0 {
		c.problemAt("depth", "field.missing", `how deep? such as "7 in", no deeper than the ball`)
	}
	if f.AboveGrade < 0 || f.AboveGrade > units.MaxLength {
		c.problemAt("above_grade", "quantity.negative", "zero or more")
	}
	if f.Ball == nil {
		c.problemAt("ball", "field.missing", `how large is the root ball? such as "#1" or "6 in x 7 in"`)
	}
}

// below is how much of one ball is below grade. A ball known by its volume
// alone stands on the floor of the hole, so it is as high as the hole is deep
// and the part above grade together; one with its own height is held at its
// place above grade, and h notes where hole and ball disagree.
func (f *Backfill) below(c *checker, b *book, h *holes) Span {
	c.path.push("ball")
	defer c.path.pop()
	ball, from, ok := f.Ball.work(c, b)
	h.ballFrom = from
	if !ok {
		return Span{}
	}
	height := f.Ball.Height
	if height == 0 {
		span, _ := ball.mulDiv(int64(f.Depth), int64(f.Depth+f.AboveGrade))
		return span
	}
	sunk := height - f.AboveGrade
	switch {
	case f.Ball.Across > f.Width:
		c.problem("ball.large", message.Of("wider than the hole, {#0}", units.Both.Length(f.Width)))
		return Span{}
	case sunk <= 0:
		c.problem("ball.above", "the ball is no higher than it stands above grade")
		return Span{}
	case sunk > f.Depth:
		h.proud, sunk = sunk-f.Depth, f.Depth
	default:
		h.deep = f.Depth - sunk
	}
	v, _ := Cylinder(f.Ball.Across, sunk) // smaller than the whole ball
	return Exactly(v)
}

// soilBalance works out what goes back and what is left over. What is left is
// loose: dug soil swells.
func (h *holes) soilBalance() {
	h.putBack = Span{h.round.Low - h.material.Low, h.round.Plan - h.material.Plan, h.round.High - h.material.High}
	left, _ := Exactly(h.dug).minus(h.putBack)
	swell := func(v units.Volume, r units.Ratio) units.Volume {
		w, ok := v.MulDiv(r.Den()+r.Num(), r.Den())
		if !ok {
			return units.MaxVolume
		}
		return w
	}
	h.left = Span{swell(left.Low, h.soil.SwellLow), swell(left.Plan, h.soil.Swell), swell(left.High, h.soil.SwellHigh)}
}
