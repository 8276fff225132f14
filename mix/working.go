package mix

import (
	"iter"
	"strings"

	"example.org/barrow/units"
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
		s := &steps{p: p, m: p.Measure, yield: yield, more: true}
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
	m        units.Measure
	task     int
	material string
	yield    func(Step) bool
	more     bool
}

func (s *steps) add(step, figure string, source Source) {
	if s.more {
		s.more = s.yield(Step{s.task, s.material, step, figure, source.String()})
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
	if p.class != nil {
		s.add("one "+p.class.Name+p.perCell()+", to the fill line", spanText(s.m, p.each), p.class.Source)
	} else {
		s.add(k.formula(s.m), spanText(s.m, p.each), k.source())
	}
	if k.Ball != nil {
		s.add("less the root ball, "+k.Ball.String(), spanText(s.m, p.ball), p.ballFrom)
	}
	count := itoa(k.Count)
	if p.cells > 1 {
		count += " x " + itoa(p.cells) + " cells"
	}
	s.add(count+" of these, in place", spanText(s.m, p.total), arithmetic)
}

// perCell says that a tray's figure is for a cell of it.
func (p *pot) perCell() string {
	if p.cells > 1 {
		return ", a cell"
	}
	return ""
}

// formula says how a container's own measures make its volume.
func (k *Container) formula(m units.Measure) string {
	rim := ", filled to the rim"
	if k.BelowRim > 0 {
		rim = ", " + m.Length(k.BelowRim) + " below the rim"
	}
	switch {
	case k.Holds > 0:
		return "each holds, to the fill line"
	case len(k.Box) == 3:
		return k.words(m) + rim + ": length x width x depth"
	case k.Shape == "square" && k.Top > 0:
		return k.words(m) + rim + ": h (t^2 + t b + b^2) / 3, t the width at the fill line"
	case k.Shape == "square":
		return k.words(m) + rim + ": side^2 x h"
	case k.Across > 0:
		return k.words(m) + rim + ": pi d^2 h / 4"
	}
	return k.words(m) + rim + ": pi h (t^2 + t b + b^2) / 12, t the width at the fill line"
}

func (k *Container) source() Source {
	if k.Holds > 0 {
		return fromJob
	}
	return Source{Text: "the pot's own measures; solid geometry", Kind: "arithmetic"}
}

// bed writes an amended bed.
func (s *steps) bed(w *worked) {
	b := w.bed
	s.add("the bed: "+b.task.Area.words(s.m), s.m.Area(b.area), arithmetic)
	switch {
	case b.task.Layer == 0 && b.task.Into > 0:
		s.add("layer = "+b.share.String()+" of "+s.m.Length(b.finished)+" finished depth", s.m.Length(b.layer), Source{Text: "share = layer / finished depth: Cornell advice"})
	case b.task.Layer == 0:
		s.add("layer = "+s.m.Length(b.native)+" x share / (1 - share), share "+b.share.String(), s.m.Length(b.layer), Source{Text: "share = layer / (layer + native soil): Cornell advice"})
	case b.task.Into > 0:
		s.add("share = "+s.m.Length(b.layer)+" of "+s.m.Length(b.finished)+" finished depth", percent(b.share), Source{Text: "share = layer / finished depth: Cornell advice"})
	default:
		s.add("share = "+s.m.Length(b.layer)+" over "+s.m.Length(b.native)+" of native soil, "+s.m.Length(b.finished)+" together", percent(b.share), Source{Text: "share = layer / (layer + native soil): Cornell advice"})
	}
	s.add(s.m.Area(b.area)+" x "+s.m.Length(b.layer)+" layer, as spread", s.m.Volume(w.net.Plan), arithmetic)
	s.add("the grade rises by the layer less what settles, "+percent(w.settle.Share), "up to "+s.m.Length(w.rise()), arithmetic)
}

// holes writes planting holes.
func (s *steps) holes(h *holes) {
	f := h.task
	n := itoa(f.Holes) + " " + many(f.Holes, "hole")
	s.add(n+" "+s.m.Length(f.Width)+" x "+s.m.Length(f.Depth)+", straight sides: pi d^2 h / 4", s.m.Volume(h.dug), arithmetic)
	s.add("less the balls below ground: "+f.Ball.String()+", "+s.m.Length(f.AboveGrade)+" above grade", spanText(s.m, h.ball), h.ballFrom)
	s.add("filled round the balls, in place", spanText(s.m, h.round), arithmetic)
	if h.material.High > 0 {
		s.add(percent(f.Share)+" of that is material, in place", spanText(s.m, h.material), fromJob)
	}
	s.add("soil put back, in place", spanText(s.m, h.putBack), arithmetic)
	s.add("soil left over, loose: dug less put back, x (1 + swell), "+h.soil.Name+" "+percent(h.soil.Swell)+" ("+percent(h.soil.SwellLow)+" to "+percent(h.soil.SwellHigh)+")", spanText(s.m, h.left), h.soil.Source)
}

// cover writes a mulched bed.
func (s *steps) cover(k *cover) {
	v := k.task
	s.add("the bed: "+v.Area.words(s.m), s.m.Area(k.ground), arithmetic)
	if k.bare > 0 {
		s.add("less "+itoa(v.Stems.Count)+" circles kept bare, "+s.m.Length(v.Stems.Clear)+" from each stem: pi r^2", s.m.Area(k.bare), arithmetic)
	}
	net, _ := k.area.Deep(v.Layer)
	s.add(s.m.Area(k.area)+" x "+s.m.Length(v.Layer)+" layer, as spread", s.m.Volume(net), arithmetic)
	if v.Sheet == nil {
		return
	}
	how := "area / (sheet less overlap), rounded up; edges are cut to fit"
	if k.exact {
		how = "laid in rows, the better way round"
	}
	s.add("sheets "+s.m.Length(v.Sheet.Size[0])+" x "+s.m.Length(v.Sheet.Size[1])+", overlap "+s.m.Length(v.Sheet.Overlap)+": "+how, itoa(k.sheets), arithmetic)
}

// words is the area as typed, or its shape and measures.
func (a *Area) words(m units.Measure) string {
	text := a.Text
	if text == "" {
		text = a.shapeWords(m)
	}
	if a.Count > 1 {
		text = itoa(a.Count) + " x " + text
	}
	for _, plus := range a.Plus {
		text += ", and " + plus.words(m)
	}
	for _, less := range a.Less {
		text += ", less " + less.words(m)
	}
	return text
}

func (a *Area) shapeWords(m units.Measure) string {
	switch a.Shape {
	case "plain":
		return m.Area(a.Plain)
	case "corners":
		return "an outline of " + itoa(int64(len(a.Corners))) + " corners"
	case "strip":
		s := a.Strip
		text := "a strip " + m.Length(s.Width) + " wide along " + lengths(m, s.Along, " + ")
		if len(s.Gaps) > 0 {
			text += " less " + lengths(m, s.Gaps, " + ")
		}
		edge := s.Edge
		if edge == "" {
			edge = "centre"
		}
		return text + ", measured along its " + edge + " line, " + itoa(s.Bends()) + " " + many(s.Bends(), "corner")
	case "rectangle":
		return lengths(m, a.Sides, " x ")
	}
	return a.Shape + " " + lengths(m, a.Sides, " x ")
}

func lengths(m units.Measure, list []units.Length, between string) string {
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
		how := " / (1 - " + percent(a.Share) + ")"
		if a.Name == "spare" {
			how = " x (1 + " + percent(a.Share) + ")"
		}
		if a.Share == (units.Ratio{}) {
			s.add(a.Name+": none", "+0", a.Source)
			continue
		}
		s.add(a.Name+": "+s.m.VolumeLike(at, w.loose.Plan)+how, "+"+s.m.VolumeLike(a.Adds, w.loose.Plan), a.Source)
		at += a.Adds
	}
	s.add("loose, as it leaves the shovel", spanText(s.m, w.loose), arithmetic)
}

// split writes the parts of what goes in.
func (s *steps) split(b *blend, v Span) {
	if len(b.of) == 1 && b.of[0].blend == nil {
		m := s.p.work.book.materials[b.of[0].material]
		s.material = m.ID
		s.add(m.Name+": all of it", spanText(s.m, v), arithmetic)
		return
	}
	low, plan, high := Split(v.Low, b.parts), Split(v.Plan, b.parts), Split(v.High, b.parts)
	for i, in := range b.of {
		part := Span{low[i], plan[i], high[i]}
		share := itoa(b.parts[i]) + " of " + itoa(b.whole) + " parts"
		if in.blend == nil {
			m := s.p.work.book.materials[in.material]
			s.material = m.ID
			s.add(m.Name+": "+share+" of "+b.mix.Name, spanText(s.m, part), b.mix.Source)
			continue
		}
		s.material = ""
		s.add(in.blend.mix.Name+": "+share+" of "+b.mix.Name, spanText(s.m, part), b.mix.Source)
		grown, _ := part.mulDiv(without(in.blend.loss))
		s.add("its own blend loss, / (1 - "+percent(in.blend.loss)+")", spanText(s.m, grown), in.blend.from)
		s.split(in.blend, grown)
	}
	s.material = ""
}

// need writes one material over all tasks.
func (s *steps) need(n *Need) {
	s.material = n.Material.ID
	s.add(n.Material.Name+", all tasks together, loose", spanText(s.m, n.Takes), arithmetic)
	if n.OnHand > 0 {
		s.add("less what is on hand", s.m.Volume(n.OnHand), fromJob)
	}
	s.add("to buy", spanText(s.m, n.Buy), arithmetic)
	if n.Material.Wet > 0 {
		mass := n.Mass()
		s.add("weight, dry to wet, "+s.m.DensityRange(n.Material.Dry, n.Material.Wet), s.m.MassRange(mass[0], mass[1]), n.Material.Source)
	}
}

// line writes one line of the order.
func (s *steps) line(l *Line) {
	s.material = l.Material.ID
	size := l.Offer.Size()
	if l.From != (Source{}) {
		s.add("one "+size.String()+" opens to", spanText(s.m, l.Each), l.From)
	}
	if l.Last && l.FewMany != [2]int64{l.Count, l.Count} || l.Count == Bags(s.p.needOf(l.Material), l.Each.Plan) {
		s.add(l.Material.Name+" in "+size.String()+": the need / "+s.m.Volume(l.Each.Plan)+", rounded up", itoa(l.Count), Source{Text: "exact; a shortfall of up to 1 mL buys nothing"})
	} else {
		s.add(l.Material.Name+" in "+size.String()+", "+s.m.Volume(l.Each.Plan)+" each, of the order of least "+s.p.work.job.Aim.String(), itoa(l.Count), Source{Text: "exact search over all offers and trips; a shortfall of up to 1 mL buys nothing"})
	}
	if l.Last {
		s.add("left over", s.m.Volume(l.Left), arithmetic)
	}
	if l.Priced {
		s.add(itoa(l.Count)+" x "+s.p.Currency+l.Offer.PriceFor(l.Count).String(), s.p.Currency+l.Cost.String(), fromJob)
	}
	if l.Mass[1] > 0 {
		how := "weight, lightest to heaviest"
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
		s.add("drives, packs undivided, at their heaviest: "+limits(s.m, p.Haul.Limit(), p.Haul.Room), itoa(p.Load.Drives), Source{Text: "exact packing; the payload is the placard's figure less the people, 49 CFR 575.6"})
	}
	if p.Load.Dry > 0 && p.Load.Dry < p.Load.Drives {
		s.add("the same at their lightest", itoa(p.Load.Dry), arithmetic)
	}
	if d := p.work.job.Delivery; d != nil && p.Load.Loads > 0 {
		s.add("loads that the yard brings: "+limits(s.m, d.Payload, d.Capacity), itoa(p.Load.Loads), fromJob)
	}
}

// bill writes what there is to pay.
func (s *steps) bill() {
	b := &s.p.Bill
	add := func(what string, m units.Money, from Source) {
		if m > 0 {
			s.add(what, s.p.Currency+m.String(), from)
		}
	}
	add("the whole order, goods", b.Goods, arithmetic)
	add("tax, "+percent(s.p.work.job.Tax)+" of each line, rounded half up", b.Tax, fromJob)
	add("driving, "+itoa(s.p.Load.Drives)+" x "+s.p.Currency+s.p.Haul.TripCost.String(), b.Driving, fromJob)
	add("delivery", b.Fees, fromJob)
	add("in all", b.Total, arithmetic)
	add("deposits, which come back", b.Deposit, fromJob)
}

// limits writes what a vehicle takes.
func limits(m units.Measure, payload units.Mass, room units.Volume) string {
	var text []string
	if payload > 0 {
		text = append(text, "payload "+m.Mass(payload))
	}
	if room > 0 {
		text = append(text, "room "+m.Volume(room))
	}
	if len(text) == 0 {
		return "no limit is given"
	}
	return strings.Join(text, ", ")
}
