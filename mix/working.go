package mix

import (
	"iter"
	"strings"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Step is one step behind a figure of the plan.
type Step struct {
	Task     int    // the task's index, or -1 for what is pooled over tasks
	Material string // the material's id, or ""
	Step     string // what is done, with its figures
	Figure   string // what it comes to
	Source   string // where the figures come from
}

// Working returns every step, task by task, then material by material: the
// need, the packs, the load. It is worked out as it is read, so that a job of
// a hundred thousand lines costs nothing until somebody asks.
func (p *Plan) Working() iter.Seq[Step] {
	return func(yield func(Step) bool) {
		s := &steps{p: p, m: p.Printer(), yield: yield, more: true}
		for i := range p.work.tasks {
			s.task = i
			s.worked(&p.work.tasks[i])
		}
		s.task = -1
		for i := range p.Needs {
			s.need(&p.Needs[i])
		}
		for i := range p.Order {
			s.line(&p.Order[i])
		}
		s.load()
	}
}

// steps writes the working.
type steps struct {
	p        *Plan
	m        lang.Printer
	task     int
	material string
	yield    func(Step) bool
	more     bool
}

// add writes a step by its form.
func (s *steps) add(form message.Text, figure string, source Source, with ...string) {
	if s.more {
		s.put(s.m.Print(form, with...), figure, source)
	}
}

// put writes a step that is in words already.
func (s *steps) put(step, figure string, source Source) {
	if s.more {
		s.more = s.yield(Step{s.task, s.material, step, figure, source.In(s.m.Language)})
	}
}

func (s *steps) worked(w *worked) {
	s.material = ""
	switch {
	case w.task.Fill != nil:
		for i := range w.pots {
			s.pot(&w.pots[i])
		}
		if len(w.pots) > 1 {
			s.add("all containers together, in place", spanText(s.m, w.net), arithmetic)
		}
	case w.task.Amend != nil:
		s.bed(w)
	case w.task.Backfill != nil:
		s.holes(w.holes)
	default:
		s.cover(w.cover)
	}
	if w.in == nil {
		return
	}
	s.allowances(w)
	s.split(w.in, w.loose)
}

// pot writes one container line.
func (s *steps) pot(p *pot) {
	k := p.line
	each, total := spanText(s.m, p.each), spanText(s.m, p.total)
	switch {
	case p.class == nil:
		s.put(k.formula(s.m), each, k.source())
	case p.cells > 1:
		s.add("one {0}, a cell, to the fill line", each, p.class.Source, p.class.Name)
	default:
		s.add("one {0}, to the fill line", each, p.class.Source, p.class.Name)
	}
	if k.Ball != nil {
		s.add("less the root ball, {0}", spanText(s.m, p.ball), p.ballFrom, s.m.Figure(k.Ball.String()))
	}
	if p.cells > 1 {
		s.add("{0} x {1} cells of these, in place", total, arithmetic, itoa(k.Count), itoa(p.cells))
	} else {
		s.add("{0} of these, in place", total, arithmetic, itoa(k.Count))
	}
}

// formula says how a container's own measures make its volume.
func (k *Container) formula(m lang.Printer) string {
	var how message.Text
	switch {
	case k.Holds > 0:
		return m.Print("each holds, to the fill line")
	case len(k.Box) == 3:
		how = "length x width x depth"
	case k.Shape == "square" && k.Top > 0:
		how = "h (t^2 + t b + b^2) / 3, t the width at the fill line"
	case k.Shape == "square":
		how = "side^2 x h"
	case k.Across > 0:
		how = "pi d^2 h / 4"
	default:
		how = "pi h (t^2 + t b + b^2) / 12, t the width at the fill line"
	}
	if k.BelowRim > 0 {
		return m.Print("{0}, {2} below the rim: {=1}", k.words(m), string(how), m.Length(k.BelowRim))
	}
	return m.Print("{0}, filled to the rim: {=1}", k.words(m), string(how))
}

func (k *Container) source() Source {
	if k.Holds > 0 {
		return fromJob
	}
	return Source{Text: "the pot's own measures; solid geometry", Kind: "arithmetic"}
}

// What the two shares of a bed mean, and who says so.
var (
	ofFinished = Source{Text: "share = layer / finished depth: Cornell advice"}
	ofBoth     = Source{Text: "share = layer / (layer + native soil): Cornell advice"}
)

// bed writes an amended bed.
func (s *steps) bed(w *worked) {
	b := w.bed
	s.add("the bed: {0}", s.m.Area(b.area), arithmetic, b.task.Area.words(s.m))
	switch {
	case b.task.Layer == 0 && b.task.Into > 0:
		s.add("layer = {0} of {1} finished depth", s.m.Length(b.layer), ofFinished, s.m.Figure(b.share.String()), s.m.Length(b.finished))
	case b.task.Layer == 0:
		s.add("layer = {0} x share / (1 - share), share {1}", s.m.Length(b.layer), ofBoth, s.m.Length(b.native), s.m.Figure(b.share.String()))
	case b.task.Into > 0:
		s.add("share = {0} of {1} finished depth", percent(s.m, b.share), ofFinished, s.m.Length(b.layer), s.m.Length(b.finished))
	default:
		s.add("share = {0} over {1} of native soil, {2} together", percent(s.m, b.share), ofBoth, s.m.Length(b.layer), s.m.Length(b.native), s.m.Length(b.finished))
	}
	s.add("{0} x {1} layer, as spread", s.m.Volume(w.net.Plan), arithmetic, s.m.Area(b.area), s.m.Length(b.layer))
	s.add("the grade rises by the layer less what settles, {0}", s.m.Print("up to {0}", s.m.Length(w.rise())), arithmetic, percent(s.m, w.settle.Share))
}

// holes writes planting holes.
func (s *steps) holes(h *holes) {
	f := h.task
	n := s.m.Count(f.Holes, "{0} hole", "{0} holes")
	s.add("{0} {1} x {2}, straight sides: pi d^2 h / 4", s.m.Volume(h.dug), arithmetic, n, s.m.Length(f.Width), s.m.Length(f.Depth))
	s.add("less the balls below ground: {0}, {1} above grade", spanText(s.m, h.ball), h.ballFrom, s.m.Figure(f.Ball.String()), s.m.Length(f.AboveGrade))
	s.add("filled round the balls, in place", spanText(s.m, h.round), arithmetic)
	if h.material.High > 0 {
		s.add("{0} of that is material, in place", spanText(s.m, h.material), fromJob, percent(s.m, f.Share))
	}
	s.add("soil put back, in place", spanText(s.m, h.putBack), arithmetic)
	s.add("soil left over, loose: dug less put back, x (1 + swell), {0} {1} ({2} to {3})", spanText(s.m, h.left), h.soil.Source, h.soil.Name, percent(s.m, h.soil.Swell), percent(s.m, h.soil.SwellLow), percent(s.m, h.soil.SwellHigh))
}

// cover writes a mulched bed.
func (s *steps) cover(k *cover) {
	v := k.task
	s.add("the bed: {0}", s.m.Area(k.ground), arithmetic, v.Area.words(s.m))
	if k.bare > 0 {
		s.add("less {0} circles kept bare, {1} from each stem: pi r^2", s.m.Area(k.bare), arithmetic, itoa(v.Stems.Count), s.m.Length(v.Stems.Clear))
	}
	net, _ := k.area.Deep(v.Layer)
	s.add("{0} x {1} layer, as spread", s.m.Volume(net), arithmetic, s.m.Area(k.area), s.m.Length(v.Layer))
	if v.Sheet == nil {
		return
	}
	form := message.Text("sheets {0} x {1}, overlap {2}: area / (sheet less overlap), rounded up; edges are cut to fit")
	if k.exact {
		form = "sheets {0} x {1}, overlap {2}: laid in rows, the better way round"
	}
	s.add(form, itoa(k.sheets), arithmetic, s.m.Length(v.Sheet.Size[0]), s.m.Length(v.Sheet.Size[1]), s.m.Length(v.Sheet.Overlap))
}

// words is the area as typed, or its shape and measures.
func (a *Area) words(m lang.Printer) string {
	text := m.Figure(a.Text)
	if text == "" {
		text = a.shapeWords(m)
	}
	if a.Count > 1 {
		text = itoa(a.Count) + " x " + text
	}
	for _, plus := range a.Plus {
		text = m.Print("{0}, and {1}", text, plus.words(m))
	}
	for _, less := range a.Less {
		text = m.Print("{0}, less {1}", text, less.words(m))
	}
	return text
}

func (a *Area) shapeWords(m lang.Printer) string {
	switch a.Shape {
	case "plain":
		return m.Area(a.Plain)
	case "corners":
		return m.Print("an outline of {0} corners", itoa(int64(len(a.Corners))))
	case "strip":
		s := a.Strip
		along := lengths(m, s.Along, " + ")
		if len(s.Gaps) > 0 {
			along = m.Print("{0} less {1}", along, lengths(m, s.Gaps, " + "))
		}
		form := message.Text("a strip {0} wide along {1}, measured along its centre line, {2}")
		switch s.Edge {
		case "outer":
			form = "a strip {0} wide along {1}, measured along its outer line, {2}"
		case "inner":
			form = "a strip {0} wide along {1}, measured along its inner line, {2}"
		}
		return m.Print(form, m.Length(s.Width), along, m.Count(s.Bends(), "{0} corner", "{0} corners"))
	case "rectangle":
		return lengths(m, a.Sides, " x ")
	}
	return m.Figure(a.Shape) + " " + lengths(m, a.Sides, " x ")
}

func lengths(m lang.Printer, list []units.Length, between string) string {
	text := make([]string, len(list))
	for i, l := range list {
		text[i] = m.Length(l)
	}
	return strings.Join(text, between)
}

// allowances writes the way from net to loose; a share of nothing is written
// too, so that nobody wonders.
func (s *steps) allowances(w *worked) {
	at := w.net.Plan
	for _, a := range []Allowance{w.settle, w.blend, w.spare} {
		if a.Share == (units.Ratio{}) {
			s.add("{=0}: none", "+0", a.Source, string(a.Name))
			continue
		}
		how := " / (1 - "
		if a.Name == spareName {
			how = " x (1 + "
		}
		s.put(s.m.Text(a.Name)+": "+s.m.VolumeLike(at, w.loose.Plan)+how+percent(s.m, a.Share)+")", "+"+s.m.VolumeLike(a.Adds, w.loose.Plan), a.Source)
		at += a.Adds
	}
	s.add("loose, as it leaves the shovel", spanText(s.m, w.loose), arithmetic)
}

// split writes the parts of what goes in.
func (s *steps) split(b *blend, v Span) {
	if len(b.of) == 1 && b.of[0].blend == nil {
		m := s.p.work.book.materials[b.of[0].material]
		s.material = m.ID
		s.add("{0}: all of it", spanText(s.m, v), arithmetic, m.Name)
		return
	}
	low, plan, high := Split(v.Low, b.parts), Split(v.Plan, b.parts), Split(v.High, b.parts)
	for i, in := range b.of {
		part := Span{low[i], plan[i], high[i]}
		if in.blend == nil {
			m := s.p.work.book.materials[in.material]
			s.material = m.ID
			s.parts(m.Name, b, i, part)
			continue
		}
		s.material = ""
		s.parts(in.blend.mix.Name, b, i, part)
		grown, _ := part.mulDiv(without(in.blend.loss))
		s.add("its own blend loss, / (1 - {0})", spanText(s.m, grown), in.blend.from, percent(s.m, in.blend.loss))
		s.split(in.blend, grown)
	}
	s.material = ""
}

// parts writes what one ingredient is of a mix.
func (s *steps) parts(name string, b *blend, i int, part Span) {
	s.add("{0}: {1} of {2} parts of {3}", spanText(s.m, part), b.mix.Source, name, itoa(b.parts[i]), itoa(b.whole), b.mix.Name)
}

// need writes one material over all tasks.
func (s *steps) need(n *Need) {
	s.material = n.Material.ID
	s.add("{0}, all tasks together, loose", spanText(s.m, n.Takes), arithmetic, n.Material.Name)
	if n.OnHand > 0 {
		s.add("less what is on hand", s.m.Volume(n.OnHand), fromJob)
	}
	s.add("to buy", spanText(s.m, n.Buy), arithmetic)
	if n.Material.Wet > 0 {
		mass := n.Mass()
		s.add("weight, dry to wet, {0}", s.m.MassRange(mass[0], mass[1]), n.Material.Source, s.m.DensityRange(n.Material.Dry, n.Material.Wet))
	}
}

// line writes one line of the order.
func (s *steps) line(l *Line) {
	s.material = l.Material.ID
	size, name, each := s.m.Figure(l.Offer.Size().String()), l.Material.Name, s.m.Volume(l.Each.Plan)
	if l.From != (Source{}) {
		s.add("one {0} opens to", spanText(s.m, l.Each), l.From, size)
	}
	if l.Last && l.FewMany != [2]int64{l.Count, l.Count} || l.Count == Bags(s.p.needOf(l.Material), l.Each.Plan) {
		s.add("{0} in {1}: the need / {2}, rounded up", itoa(l.Count), Source{Text: "exact; a shortfall of up to 1 mL buys nothing"}, name, size, each)
	} else {
		s.add("{0} in {1}, {2} each, of the order of least {=3}", itoa(l.Count), Source{Text: "exact search over all offers and trips; a shortfall of up to 1 mL buys nothing"}, name, size, each, string(aimWords[s.p.work.job.Aim]))
	}
	if l.Last {
		s.add("left over", s.m.Volume(l.Left), arithmetic)
	}
	if l.Priced {
		s.put(itoa(l.Count)+" x "+s.p.amount(l.Offer.PriceFor(l.Count)), s.p.amount(l.Cost), fromJob)
	}
	if l.Mass[1] > 0 {
		how := message.Text("weight, lightest to heaviest")
		if l.Offer.Weight > 0 {
			how = "weight, by the pack's label"
		}
		s.add(how, s.m.MassRange(l.Mass[0], l.Mass[1]), l.MassFrom)
	}
}

// load writes the whole order.
func (s *steps) load() {
	p := s.p
	if len(p.Order) == 0 {
		return
	}
	s.material = ""
	s.add("the whole order, loose", Shown(s.m, p.Load.Volume), arithmetic)
	s.add("the whole order, as packed", Shown(s.m, p.Load.Packed), arithmetic)
	if p.Load.Mass[1] > 0 {
		s.add("the whole order, weight", s.m.MassRange(p.Load.Mass[0], p.Load.Mass[1]), arithmetic)
	}
	if p.Priced {
		s.bill()
	}
	if p.Load.Drives > 0 {
		s.add("drives, packs undivided, at their heaviest: {0}", itoa(p.Load.Drives), Source{Text: "exact packing; the payload is the placard's figure less the people, 49 CFR 575.6"}, limits(s.m, p.Haul.Limit(), p.Haul.Room))
	}
	if p.Load.Dry > 0 && p.Load.Dry < p.Load.Drives {
		s.add("the same at their lightest", itoa(p.Load.Dry), arithmetic)
	}
	if d := p.work.job.Delivery; d != nil && p.Load.Loads > 0 {
		s.add("loads that the yard brings: {0}", itoa(p.Load.Loads), fromJob, limits(s.m, d.Payload, d.Capacity))
	}
}

// bill writes what there is to pay.
func (s *steps) bill() {
	b := &s.p.Bill
	add := func(what message.Text, m units.Money, from Source, with ...string) {
		if m > 0 {
			s.add(what, s.p.amount(m), from, with...)
		}
	}
	add("the whole order, goods", b.Goods, arithmetic)
	add("tax, {0} of each line, rounded half up", b.Tax, fromJob, percent(s.m, s.p.work.job.Tax))
	add("driving, {0} x {1}", b.Driving, fromJob, itoa(s.p.Load.Drives), s.p.amount(s.p.Haul.TripCost))
	add("delivery", b.Fees, fromJob)
	add("in all", b.Total, arithmetic)
	add("deposits, which come back", b.Deposit, fromJob)
}

// limits writes what a vehicle takes.
func limits(m lang.Printer, payload units.Mass, room units.Volume) string {
	var text []string
	if payload > 0 {
		text = append(text, m.Print("payload {0}", m.Mass(payload)))
	}
	if room > 0 {
		text = append(text, m.Print("room {0}", m.Volume(room)))
	}
	if len(text) == 0 {
		return m.Print("no limit is given")
	}
	return strings.Join(text, ", ")
}
