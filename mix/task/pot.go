package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Pot is one line of a fill task worked out. Volumes are in place, in nanolitres;
// those of a container known by its class are a range, since makes differ.
type Pot struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Line  *Container  // as the job gives it
	Cells int64       // of one tray; 1 for a pot
	Each  units.Range // one pot or cell to the fill line, with the space of its ball
	Ball  units.Range // one ball; zero when there is none
	Total units.Range // all pots of the line, without their balls

	class    *catalog.Class  // of a container given by Size, or nil
	usual    *catalog.Common // the share of its brim left free, where the fill line is not given; or nil
	rooted   *catalog.Class  // of a ball given by its Size, or nil
	ballFrom catalog.Source
}

// result works out one line. With problems the Pot is incomplete and must not be used.
func (k *Container) result(r *doc.Reader, s *catalog.Scope) Pot {
	p := Pot{Line: k, Cells: max(k.Cells, 1)}
	if k.Count == 0 {
		r.ProblemAt("count", doc.FieldMissing, "how many?")
	}
	if k.Shape != "" && k.Shape != "round" && k.Shape != "square" {
		r.ProblemAt("shape", doc.WordUnknown, "write round or square")
	}
	least := min(k.Across, k.Top, k.Bottom, k.Height, k.BelowRim)
	if min(k.Holds.Volume, k.Brim.Volume) < 0 || least < 0 || k.Cells < 0 { // a document has no such, a Go program may
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
	case "brim":
		var ok bool
		if p.Each, p.usual, ok = k.belowBrim(r, s); !ok {
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
		p.Each = v
	}
	p.less(r, s, depth)
	return p
}

// known finds the class of a container given by its Size. ok is false with a problem.
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

// less takes the ball away and multiplies by the number of pots and cells.
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

// seat measures the ball and checks that it fits into the pot. A ball or a pot known
// by its volume alone is compared by volume alone. ok is false with a problem.
func (p *Pot) seat(r *doc.Reader, s *catalog.Scope, depth units.Length) (ok bool) {
	ball := p.Line.Ball
	r.Enter("ball")
	defer r.Leave()
	p.Ball, p.ballFrom, ok = ball.volume(r, s)
	p.rooted = s.ClassOf(ball.Size)
	switch wide := p.Line.wide(); {
	case !ok || ball.Height == 0: // nothing to compare
	case ball.Height > depth && depth > 0:
		r.Problem(doc.BallLarge, message.Of("taller than the mix is deep, {#0}", units.Both.Length(depth)))
	case ball.Across > wide && wide > 0:
		r.Problem(doc.BallLarge, message.Of("wider than the container, {#0}", units.Both.Length(wide)))
	}
	if rest, ok := p.Each.Minus(p.Ball); !ok || rest.Plan == 0 {
		r.Problem(doc.BallLarge, message.Of("the ball, {#0}, fills the container, {#1}",
			units.Both.Volume(p.Ball.Plan), units.Both.Volume(p.Each.Plan)))
	}
	return r.Sound()
}

// Takes is what one pot or cell takes around its ball, in place, in nanolitres.
func (p *Pot) Takes() units.Range {
	takes, _ := p.Each.Minus(p.Ball)
	return takes
}

// Depth is the depth of the mix, or 0 where only the volume is known.
func (p *Pot) Depth() units.Length {
	if full := p.Line.full(); full > 0 {
		return full - p.Line.BelowRim
	}
	return 0
}

// ByClass reports whether the pot is given by its class, and has no measures of its
// own.
func (p *Pot) ByClass() bool { return p.class != nil }

// Label is the line in words: "64 x #1 nursery pot".
func (p *Pot) Label(q lang.Printer) string { return itoa(p.Line.Count) + " x " + p.one(q) }

// one names one container of the line: "#1 nursery pot".
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
	case p.Line.Brim.Volume > 0:
		how, from := p.brimFormula(q)
		s.Put(how, each, from)
	case p.class == nil:
		how, from := p.Line.formula(q)
		s.Put(how, each, from)
	default:
		s.Add(p.filled(), each, p.class.Source, p.class.Name)
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

// filled says how far one pot or cell of the line's class is filled. The job's own
// containers are to their fill line, as the job says what they hold.
func (p *Pot) filled() message.Text {
	switch own := p.class.Kind == ""; {
	case p.class.Brim > 0:
		return "one {0}, to the fill line, 94 % of the brim"
	case own && p.Cells > 1:
		return "one {0}, a cell, to the fill line"
	case own:
		return "one {0}, to the fill line"
	case p.Cells > 1:
		return "one {0}, a cell, filled level"
	}
	return "one {0}, filled level"
}

// rangeOfPot and rangeOfCell are the notes on a class whose makes differ.
const (
	rangeOfPot  message.Text = "makes of {0} differ: one takes {1}. Fill one to the brim with water, and give that volume as its brim"
	rangeOfCell message.Text = "makes of {0} differ: a cell takes {1}. Fill one with water, and give that volume as what it holds"
)

// notes says that the makes of a class differ, and that the trade's gallon pot takes
// less than the gallon that was given, each once for a class, however many lines have
// it; and once how far a pot is filled that is given by its brim alone. line is the path of the line, with the point that follows it.
func (p *Pot) notes(n *Notes, line string) {
	q := n.Printer
	if k := p.class; k != nil && !k.Holds.Certain() && n.first(k.ID, "size.range") {
		form := rangeOfPot
		if k.Cells > 1 {
			form = rangeOfCell
		}
		n.say(line+"size", "size.range", form, k.ID, q.VolumeRange(k.Holds.Low, k.Holds.High))
	}
	if p.usual != nil && n.first("", "brim.usual") {
		n.say(line+"brim", "brim.usual",
			"{0} of what a pot holds to the brim is taken to be left free for water, {1} to {2} as pots and growers differ: give below_rim and top for your own",
			q.Share(p.usual.Share), q.Share(p.usual.Low), q.Share(p.usual.High))
	}
	holds := p.Line.Holds.Volume
	if holds == 0 || holds%units.Gallon != 0 {
		return
	}
	if k := n.Scope.ClassOf("#" + itoa(int64(holds/units.Gallon))); k != nil && n.first(k.ID, "gallon.liquid") {
		n.say(line+"holds", "gallon.liquid",
			"a full {0} is taken; the {1} pot that the trade calls by that name takes about {2}: write it as size {1}",
			q.Figure(units.US.Volume(holds)), k.ID, q.Volume(k.Holds.Plan))
	}
}

// ReachedPots is how many containers of one line can be filled if the whole stock goes
// into that line.
type ReachedPots struct {
	Label string   // one container, in words
	Count int64    // whole pots or whole trays, for the planned size
	Range [2]int64 // the same for the largest and for the smallest size
}

// CountText writes the count, and where the size of the container is not certain the
// counts for its largest and its smallest size: "99 (68 to 113)".
func (p *ReachedPots) CountText() string { return lang.Printer{}.CountRange(p.Count, p.Range) }

// reach counts the whole pots or trays of the line that the stock fills. It allows
// the same slack as a count of packs, so that a stock bought for 64 pots fills 64. net
// is about what the stock fills; enough decides.
func (p *Pot) reach(net units.Volume, enough func(units.Range) bool, q lang.Printer) ReachedPots {
	one, _ := p.Takes().Times(p.Cells)
	slack := units.FixedOf(catalog.Slack)
	count := func(each units.Fixed) int64 {
		if !each.Over(slack) {
			return 0
		}
		fills := func(n int64) bool {
			all := each.MulDiv(n, 1).Minus(slack)
			return all.Negative() || enough(units.Known(all))
		}
		n := int64(net+catalog.Slack) / each.Round()
		for n > 0 && !fills(n) {
			n--
		}
		for fills(n + 1) {
			n++
		}
		return n
	}
	return ReachedPots{p.one(q), count(one.FixedPlan()), [2]int64{count(one.FixedHigh()), count(one.FixedLow())}}
}
