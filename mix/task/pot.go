package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Pot is one line of a fill task worked out.
type Pot struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Line  *Container  // as the job has it
	Cells int64       // of one tray, or 1
	Each  units.Range // one pot or cell to the fill line, before the ball
	Ball  units.Range // of one; nothing when there is none
	Total units.Range // all of the line, less the balls

	class    *catalog.Class // when given by size
	rooted   *catalog.Class // the ball's class, when it is given by size
	ballFrom catalog.Source
}

// result works out one line; with problems the pot is of no use.
func (k *Container) result(r *doc.Reader, s *catalog.Scope) Pot {
	p := Pot{Line: k, Cells: max(k.Cells, 1)}
	if k.Count == 0 {
		r.ProblemAt("count", doc.FieldMissing, "how many?")
	}
	if k.Shape != "" && k.Shape != "round" && k.Shape != "square" {
		r.ProblemAt("shape", doc.WordUnknown, "write round or square")
	}
	if min(int64(k.Holds.Volume), int64(k.Across), int64(k.Top), int64(k.Bottom), int64(k.Height), int64(k.BelowRim), k.Cells) < 0 {
		r.Problem(units.QuantityNegative, "every measure is zero or more")
	}
	depth := k.depth(r)
	if !r.Sound() {
		return p
	}
	switch k.form(r) {
	case "size":
		if !p.known(r, s) {
			return p
		}
	case "":
		return p
	default:
		v, ok := k.volume(depth)
		if !ok {
			r.Problem(doc.VolumeLarge, message.Of("larger than {#0}", units.Both.Volume(units.MaxVolume)))
			return p
		}
		p.Each = units.Exactly(v)
	}
	p.less(r, s, depth)
	return p
}

// known looks up a container given by its class.
func (p *Pot) known(r *doc.Reader, s *catalog.Scope) bool {
	r.Enter("size")
	p.class = s.Class(r, p.Line.Size)
	r.Leave()
	if p.class == nil {
		return false
	}
	p.Each = p.class.Holds
	if p.Line.Cells == 0 {
		p.Cells = p.class.Cells
	} else if p.class.Cells > 1 {
		r.ProblemAt("cells", doc.FieldBoth, "this tray's cells are known; leave cells out")
	}
	return true
}

// less takes the ball away and counts the line up.
func (p *Pot) less(r *doc.Reader, s *catalog.Scope, depth units.Length) {
	if p.Line.Ball != nil && !p.seat(r, s, depth) {
		return
	}
	row, ok := p.Takes().Times(p.Line.Count)
	if ok {
		p.Total, ok = row.Times(p.Cells)
	}
	switch {
	case !ok:
		r.Problem(doc.VolumeLarge, tooMuch())
	case p.Each.Plan == 0:
		r.Problem(doc.VolumeSmall, "it holds nothing that can be measured")
	}
}

// seat puts the ball into the pot; ok is false with a problem.
func (p *Pot) seat(r *doc.Reader, s *catalog.Scope, depth units.Length) (ok bool) {
	ball := p.Line.Ball
	r.Enter("ball")
	defer r.Leave()
	p.Ball, p.ballFrom, ok = ball.volume(r, s)
	p.rooted = s.ClassOf(ball.Size)
	switch wide := p.Line.wide(); {
	case !ok || ball.Height == 0 || depth == 0: // nothing to compare
	case ball.Height > depth:
		r.Problem(doc.BallLarge, message.Of("taller than the mix is deep, {#0}", units.Both.Length(depth)))
	case ball.Across > wide:
		r.Problem(doc.BallLarge, message.Of("wider than the container, {#0}", units.Both.Length(wide)))
	}
	if rest, ok := p.Each.Minus(p.Ball); !ok || rest.Plan == 0 {
		r.Problem(doc.BallLarge, message.Of("the ball, {#0}, fills the container, {#1}", units.Both.Volume(p.Ball.Plan), units.Both.Volume(p.Each.Plan)))
	}
	return r.Sound()
}

// Takes is what one pot or cell takes, less its ball.
func (p *Pot) Takes() units.Range {
	takes, _ := p.Each.Minus(p.Ball)
	return takes
}

// Depth is how deep the mix stands; 0 where only the volume is known.
func (p *Pot) Depth() units.Length {
	if full := p.Line.full(); full > 0 {
		return full - p.Line.BelowRim
	}
	return 0
}

// ByClass reports whether the pot is given by its class: its own measures are not known.
func (p *Pot) ByClass() bool { return p.class != nil }

// Label is the line in words: 64 x #1 nursery pot.
func (p *Pot) Label(q lang.Printer) string { return itoa(p.Line.Count) + " x " + p.one(q) }

// one is what the line has many of: a #1 nursery pot.
func (p *Pot) one(q lang.Printer) (s string) {
	switch {
	case p.class != nil:
		s = p.class.Name
	case p.Cells > 1:
		s = q.Print("{0}, {1} cells", p.Line.words(q), itoa(p.Cells))
	default:
		s = p.Line.words(q)
	}
	if p.Line.Ball != nil {
		s = q.Print("{0}, ball {1}", s, q.Figure(p.Line.Ball.String()))
	}
	return s
}

// steps writes the line's working.
func (p *Pot) steps(s *Steps) {
	q := s.Printer
	each, total := q.Range(p.Each), q.Range(p.Total)
	switch {
	case p.class == nil:
		how, from := p.Line.formula(q)
		s.Put(how, each, from)
	case p.Cells > 1:
		s.Add("one {0}, a cell, to the fill line", each, p.class.Source, p.class.Name)
	default:
		s.Add("one {0}, to the fill line", each, p.class.Source, p.class.Name)
	}
	if p.Line.Ball != nil {
		s.Add("less the root ball, {0}", q.Range(p.Ball), p.ballFrom, q.Figure(p.Line.Ball.String()))
	}
	if p.Cells > 1 {
		s.Add("{0} x {1} cells of these, in place", total, catalog.Arithmetic, itoa(p.Line.Count), itoa(p.Cells))
	} else {
		s.Add("{0} of these, in place", total, catalog.Arithmetic, itoa(p.Line.Count))
	}
}

// notes says once of every class that its makes differ, and of a pot given in
// whole gallons that the trade's gallon pot takes less.
func (p *Pot) notes(n *Notes, line string) {
	q := n.Printer
	if k := p.class; k != nil && !k.Holds.Certain() && n.first(k, "size.range") {
		form := message.Text("makes of {0} differ: one takes {1}. Fill one with water, measure that, and write that as what it holds")
		if k.Cells > 1 {
			form = "makes of {0} differ: a cell takes {1}. Fill one with water, measure that, and write that as what it holds"
		}
		n.say(line+"size", "size.range", form, k.ID, q.VolumeRange(k.Holds.Low, k.Holds.High))
	}
	holds := p.Line.Holds.Volume
	if holds == 0 || holds%units.Gallon != 0 {
		return
	}
	if k := n.Scope.ClassOf("#" + itoa(int64(holds/units.Gallon))); k != nil && n.first(k, "gallon.liquid") {
		n.say(line+"holds", "gallon.liquid", "a full {0} is taken; the {1} pot that the trade calls by that name takes about {2}: write it as size {1}",
			q.Figure(units.US.Volume(holds)), k.ID, q.Volume(k.Holds.Plan))
	}
}

// ReachedPots is how many of one container line's containers are filled, were
// nothing else filled.
type ReachedPots struct {
	Label string
	Count int64 // for the planned size; trays count whole
	Range [2]int64
}

// CountText writes the count, and where the container's size is not certain the
// counts for its largest and its smallest: "99 (68 to 113)".
func (p *ReachedPots) CountText() string { return lang.Printer{}.CountRange(p.Count, p.Range) }

// reach counts the containers of the line that net fills: whole pots and whole
// trays.
func (p *Pot) reach(net units.Volume, q lang.Printer) ReachedPots {
	one, _ := p.Takes().Times(p.Cells)
	count := func(v units.Volume) int64 {
		if v <= catalog.Slack {
			return 0
		}
		return int64((net + catalog.Slack) / v)
	}
	return ReachedPots{p.one(q), count(one.Plan), [2]int64{count(one.High), count(one.Low)}}
}
