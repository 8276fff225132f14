package mix

import (
	"iter"
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Working yields every step of the working: task by task, then the needs, the lines of
// the order and the load. Steps are worked out as they are read, so that the working
// of a very large job costs nothing until somebody reads it. It may be read again.
func (p *Plan) Working() iter.Seq[task.Step] {
	return func(yield func(task.Step) bool) {
		if p.e == nil {
			return
		}
		s := &steps{p: p, Steps: task.Steps{Printer: p.Printer(), Scope: p.e.scope, Yield: yield}}
		for i := range p.e.tasks {
			s.Task = i
			p.e.tasks[i].Steps(&s.Steps)
		}
		s.Task = -1
		for i := range p.Needs {
			s.need(&p.Needs[i])
		}
		for i := range p.Lines {
			s.line(&p.Lines[i])
		}
		s.load()
	}
}

// steps writes the working of what is added up over all tasks.
type steps struct {
	task.Steps
	p *Plan
}

// need writes what all tasks take of one material, and what of that is to be bought.
func (s *steps) need(n *yard.Need) {
	s.Material = n.Material.ID
	s.Add("{0}, all tasks together, loose", s.Printer.Range(n.Takes), catalog.Arithmetic, n.Material.Name)
	if n.OnHand > 0 {
		s.Add("less what is on hand", s.Printer.Volume(n.OnHand), catalog.FromJob)
	}
	s.Add("to buy", s.Printer.Range(n.Buy), catalog.Arithmetic)
	if n.Material.Wet > 0 {
		mass := n.Mass()
		s.Add("weight, dry to wet, {0}", s.Printer.MassRange(mass[0], mass[1]), n.Material.Source,
			s.Printer.DensityRange(n.Material.Dry, n.Material.Wet))
	}
}

// line writes one line of the order. A count that is the need in packs, rounded up, can
// be checked by division, and the step says so. Any other count comes from the search
// over all offers, which a reader cannot repeat by hand.
func (s *steps) line(l *yard.Line) {
	s.Material = l.Material.ID
	size, name, each := s.Printer.Figure(l.Offer.Size().String()), l.Material.Name, s.Printer.Volume(l.Each.Plan)
	if l.From != (catalog.Source{}) {
		s.Add("one {0} opens to", s.Printer.Range(l.Each), l.From, size)
	}
	alone := l.Last && l.FewMany != [2]int64{l.Count, l.Count}
	if alone || l.Count == yard.Count(s.p.needOf(l.Material), l.Each.FixedPlan()) {
		s.Add("{0} in {1}: the need / {2}, rounded up", itoa(l.Count), byDivision, name, size, each)
	} else {
		s.Add("{0} in {1}, {2} each, of the order of least {=3}", itoa(l.Count), bySearch,
			name, size, each, string(s.p.e.terms.Aim.Words()))
	}
	if l.Last {
		s.Add("left over", s.Printer.Volume(l.Left), catalog.Arithmetic)
	}
	if l.Priced {
		s.Put(itoa(l.Count)+" x "+s.p.Amount(l.Offer.PriceFor(l.Count)), s.p.Amount(l.Cost), catalog.FromJob)
	}
	s.weight(l)
}

// weight writes what a line weighs and by which ranges: of the density, and of how
// full such packs are.
func (s *steps) weight(l *yard.Line) {
	mass := s.Printer.MassRange(l.Mass[0], l.Mass[1])
	density, v, from := l.Offer.Density(l.Material, l.Each.Plan)
	each := itoa(l.Count) + " x " + s.Printer.Figure(l.Offer.Size().String())
	if v != l.Offer.Size().Volume { // a bale that weighs by what it opens to
		each = itoa(l.Count) + " x " + s.Printer.Volume(v)
	}
	of := s.Printer.DensityRange(density[0], density[1])
	full, varies := l.Offer.Fullness(l.Material)
	switch {
	case l.Mass[1] == 0:
	case l.Offer.Weight > 0:
		s.Add("weight, by the pack's label", mass, l.MassFrom)
	case varies:
		s.Add("weight, lightest to heaviest: {0} at {1}; {=2}", mass, from, each, of, string(full.Source.Text))
	default:
		s.Add("weight, lightest to heaviest: {0} at {1}", mass, from, each, of)
	}
}

// How counts of packs and of drives are worked out.
var (
	byDivision = catalog.Source{Text: "exact; a shortfall of up to 1 mL buys nothing"}
	bySearch   = catalog.Source{Text: "exact search over all offers and trips; a shortfall of up to 1 mL buys nothing"}
	byPacking  = catalog.Source{Text: "exact packing; the payload is the placard's figure less the people, 49 CFR 575.6"}
)

// load writes the volume, the weight, the cost and the drives of the whole order.
func (s *steps) load() {
	p := s.p
	s.Material = ""
	if len(p.Lines) == 0 {
		s.paid()
		return
	}
	s.Add("the whole order, loose", s.Printer.TradeVolume(p.Load.Volume), catalog.Arithmetic)
	s.Add("the whole order, as packed", s.Printer.TradeVolume(p.Load.Packed), catalog.Arithmetic)
	if p.Load.Mass[1] > 0 {
		s.Add("the whole order, weight", s.Printer.MassRange(p.Load.Mass[0], p.Load.Mass[1]), catalog.Arithmetic)
	}
	if p.Load.Priced {
		s.bill()
	}
	s.paid()
	if p.Load.Drives > 0 {
		s.Add("drives, packs undivided, at their heaviest: {0}", itoa(p.Load.Drives), byPacking,
			limits(s.Printer, p.Haul.Limit(), p.Haul.Room))
	}
	if p.Load.Dry > 0 && p.Load.Dry < p.Load.Drives {
		s.Add("the same at their lightest", itoa(p.Load.Dry), catalog.Arithmetic)
	}
	if d := p.Delivery(); d != nil && p.Load.Loads > 0 {
		s.Add("loads that the yard brings: {0}", itoa(p.Load.Loads), catalog.FromJob,
			limits(s.Printer, d.Payload, d.Capacity))
	}
}

// bill writes what there is to pay, in the order in which it adds up. Deposits come
// after the total, since they are paid back.
func (s *steps) bill() {
	b := &s.p.Bill
	add := func(what message.Text, m units.Money, from catalog.Source, with ...string) {
		if m > 0 {
			s.Add(what, s.p.Amount(m), from, with...)
		}
	}
	add("the whole order, goods", b.Goods, catalog.Arithmetic)
	add("tax, {0} of each line, rounded half up", b.Tax, catalog.FromJob, s.Printer.Share(s.p.e.terms.Tax))
	add("driving, {0} x {1}", b.Driving, catalog.FromJob, itoa(s.p.Load.Drives), s.p.Amount(s.p.Haul.TripCost))
	add("delivery", b.Fees, catalog.FromJob)
	add("in all", b.Total, catalog.Arithmetic)
	add("deposits, which come back", b.Deposit, catalog.FromJob)
}

// paid writes what was paid already, and that with what is still to pay.
func (s *steps) paid() {
	if b := &s.p.Bought; b.Priced {
		s.Add("paid for what is bought already, tax counted", s.p.Amount(b.Bill.Total), catalog.FromJob)
		s.Add("paid and still to pay", s.p.Amount(s.p.InAll()), catalog.Arithmetic)
	}
}

// limits writes what a vehicle can carry.
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

// needOf is how much of a material is planned to be bought, before rounding.
func (p *Plan) needOf(m *catalog.Material) units.Fixed {
	for i := range p.Needs {
		if p.Needs[i].Material == m {
			return p.Needs[i].Buy.FixedPlan()
		}
	}
	return units.Fixed{}
}
