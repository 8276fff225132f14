package mix

import (
	"strings"

	"example.org/barrow/units"
)

// Note is something worth knowing that is no caution and no problem.
type Note struct {
	Task int    // the task's index, or -1
	Path string // the field it is about, or ""
	Code string
	Text string
}

// notes are what the plan has to say that is neither caution nor problem:
// nothing that a job lists is passed over in silence.
func (p *Plan) notes() []Note {
	n := &noter{p: p, m: p.Measure, told: map[told]bool{}}
	for i := range p.work.tasks {
		n.task, n.path = i, "tasks["+itoa(int64(i))+"]"
		n.worked(&p.work.tasks[i])
	}
	n.task, n.path = -1, ""
	n.yard()
	n.mulch()
	n.onHand()
	n.offers()
	n.lifts()
	n.haul()
	return n.notes
}

// yard says what the plan takes as changed at the yard.
func (n *noter) yard() {
	y := n.p.yard
	if y == nil {
		return
	}
	for _, b := range y.Bought {
		n.add("yard.bought", "yard.bought", "bought already: "+itoa(b.Count)+" x "+b.Offer)
	}
	if len(y.Without) > 0 {
		n.add("yard.without", "yard.without", "sold out: "+listed(y.Without, "and"))
	}
	if y.Only != nil {
		n.add("yard.only_stock", "yard.only_stock", "of every offer that does not say, "+itoa(*y.Only)+" are left")
	}
}

// told is a note that one class is to have once.
type told struct {
	class *Class
	code  string
}

// noter writes notes.
type noter struct {
	p     *Plan
	m     units.Measure
	task  int
	path  string
	told  map[told]bool // what is told already
	notes []Note
}

// add writes a note about a field of where the noter is.
func (n *noter) add(field, code, text string) {
	path := n.path
	if path != "" && field != "" {
		path += "."
	}
	n.notes = append(n.notes, Note{n.task, path + field, code, text})
}

func (n *noter) worked(w *worked) {
	for k := range w.pots {
		n.pot(&w.pots[k], "containers["+itoa(int64(k))+"].")
	}
	h := w.holes
	if h == nil {
		return
	}
	if h.deep > 0 {
		n.add("depth", "hole.deep", "the hole is "+n.m.Length(h.deep)+" deeper than the ball reaches: firm soil under it, or dig less")
	}
	if h.proud > 0 {
		n.add("ball", "ball.proud", "the ball stands "+n.m.Length(h.proud)+" higher than above_grade says: dig deeper, or say so")
	}
	if w.task.Backfill.Soil == "" {
		n.add("soil", "soil.assumed", "the soil left over is worked out for clay; say soil for another")
	}
}

// pot says once of every class that its makes differ, and of a pot given in
// whole gallons that the trade's gallon pot takes less.
func (n *noter) pot(p *pot, line string) {
	if k := p.class; k != nil && !k.Holds.Certain() && !n.told[told{k, "size.range"}] {
		n.told[told{k, "size.range"}] = true
		each := "one takes "
		if k.Cells > 1 {
			each = "a cell takes "
		}
		n.add(line+"size", "size.range", "makes of "+k.ID+" differ: "+each+n.m.VolumeRange(k.Holds.Low, k.Holds.High)+". Fill one with water, measure that, and write it as holds")
	}
	holds := p.line.Holds
	class := n.p.work.book.class["#"+itoa(int64(holds/units.Gallon))]
	if holds == 0 || holds%units.Gallon != 0 || class == nil || n.told[told{class, "gallon.liquid"}] {
		return
	}
	n.told[told{class, "gallon.liquid"}] = true
	n.add(line+"holds", "gallon.liquid", "a full "+units.US.Volume(holds)+" is taken; the "+class.ID+" pot that the trade calls by that name takes about "+n.m.Volume(class.Holds.Plan)+": write it as size "+class.ID)
}

// mulch says what layers come to if they are to be that deep after they have
// settled, all tasks of a mulch together.
func (n *noter) mulch() {
	sums := make([]Span, len(n.p.work.takes))
	for i := range n.p.work.tasks {
		if w := &n.p.work.tasks[i]; w.task.Cover != nil && w.task.Settle == nil {
			w.in.spread(w.loose, sums) // fits: it is a part of all that is taken
		}
	}
	for i, v := range sums {
		mat := n.p.work.book.materials[i]
		if v.Plan == 0 || mat.SettleHigh == (units.Ratio{}) {
			continue
		}
		low, _ := v.mulDiv(without(mat.SettleLow))
		high, _ := v.mulDiv(without(mat.SettleHigh))
		n.add("", "mulch.settles", mat.Name+": settles by "+mat.SettleLow.String()+" to "+mat.SettleHigh.String()+": to be as deep after that, it takes "+n.m.VolumeRange(low.Plan, high.Plan)+". Give settle to plan for it")
	}
}

func (n *noter) onHand() {
	for _, h := range n.p.work.job.OnHand {
		if n.p.work.takes[n.p.work.book.material[h.Material]].High == 0 {
			n.add("on_hand."+h.Material, "on_hand.unused", "no task takes "+h.Material)
		}
	}
}

// offers speaks of offers that no task takes, of bales that were guessed to be
// bales, and of needs without an offer.
func (n *noter) offers() {
	w := n.p.work
	for i := range w.job.Offers {
		o := &w.job.Offers[i]
		path := "offers[" + itoa(int64(i)) + "]."
		index := w.book.material[o.Material]
		if w.takes[index].High == 0 {
			n.add(path+"material", "offer.unused", "no task takes "+o.Material)
			continue
		}
		if each, from := o.yield(w.book.materials[index]); from != (Source{}) && o.OpensTo == 0 {
			n.add(path+"opens_to", "bale.range", o.Pack.String()+" of "+o.Material+" is taken as a compressed bale that opens to "+n.m.VolumeRange(each.Low, each.High)+", and counted by the least. Give opens_to if you know it")
		}
	}
	if len(n.p.Unpriced) > 0 && n.p.Priced {
		n.add("offers", "cost.partial", "the cost leaves out "+listed(n.p.Unpriced, "and")+": no price is given")
	}
	for i := range n.p.Needs {
		need := &n.p.Needs[i]
		if len(w.job.Offers) == 0 || need.Buy.Plan == 0 || n.p.Ordered(need.Material) {
			continue
		}
		n.add("offers", "offer.missing", "no offer of "+need.Material.ID+": see what packs it comes in"+n.substitutes(need.Material))
	}
}

// lifts names the packs of the order that may be too much for one person.
func (n *noter) lifts() {
	for i := range n.p.Order {
		l := &n.p.Order[i]
		each, _ := l.Offer.mass(l.Material, l.Each.Plan)
		if l.Offer.Bulk.Volume == 0 && each[1] > liftLimit {
			n.add("offers["+itoa(int64(l.index))+"]", "lift.heavy", "a "+l.Offer.Size().String()+" pack of "+l.Material.ID+" may weigh "+n.m.Mass(each[1])+", more than one person is to lift")
		}
	}
}

func (n *noter) haul() {
	p := n.p
	for i := range p.Order {
		if l := &p.Order[i]; l.Priced && l.Offer.PriceFor(l.Count) == 0 {
			n.add("offers["+itoa(int64(l.index))+"].price", "offer.free", l.Material.ID+" in "+l.Offer.Size().String()+" is taken as free: ask whether it is")
		}
	}
	if d := p.work.job.Delivery; d != nil && len(p.Drops) == 0 && len(p.Order) > 0 {
		why := "fetching it costs less, or no offer may be delivered"
		if p.Haul == (Haul{}) {
			why = "without haul, fetching it is taken as free and without a limit"
		}
		n.add("delivery", "delivery.unused", "nothing is delivered: "+why)
	}
	if p.Unproven {
		n.add("offers", "order.unproven", "this is the best order found in the time it may take; none costs less than "+p.Currency+p.Bound.String())
	}
	switch h := &p.Haul; {
	case *h == (Haul{}):
	case len(p.Order) == 0:
		n.add("haul", "haul.unused", "trips are not worked out: there is nothing to buy from offers")
	case h.Limit() > 0 && p.Load.Mass[1] == 0:
		n.add("haul", "haul.unknown", "what some packs weigh is not known, and the trips do not count it: give their weight")
	}
}

// LeftOut lists the materials to buy that the order does not have.
func (p *Plan) LeftOut() (list []*Material) {
	for i := range p.Needs {
		if n := &p.Needs[i]; n.Buy.Plan > Slack && !p.Ordered(n.Material) {
			list = append(list, n.Material)
		}
	}
	return list
}

// needOf is the planned need of a material.
func (p *Plan) needOf(m *Material) units.Volume {
	for i := range p.Needs {
		if p.Needs[i].Material == m {
			return p.Needs[i].Buy.Plan
		}
	}
	return 0
}

// Ordered reports whether the order has a line of the material.
func (p *Plan) Ordered(m *Material) bool {
	for i := range p.Order {
		if p.Order[i].Material == m {
			return true
		}
	}
	return false
}

// substitutes says what the catalogue knows to stand in for a material.
func (n *noter) substitutes(m *Material) string {
	text := ""
	for _, s := range n.p.StandIns(m.ID) {
		text += ". " + s.Sentence()
	}
	return text
}

// StandIns lists what the catalogue knows to stand in for a material.
func (p *Plan) StandIns(id string) (list []Substitute) {
	for _, s := range p.work.book.cat.Substitutes {
		if s.For == id {
			list = append(list, s)
		}
	}
	return list
}

// Sentence says what stands in and what changes then.
func (s *Substitute) Sentence() string { return title(s.Use) + " can stand in: " + s.Changes }

// title writes an id with a capital.
func title(id string) string {
	if id == "" {
		return ""
	}
	return strings.ToUpper(id[:1]) + id[1:]
}
