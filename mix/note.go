package mix

import (
	"strings"
	"unicode/utf8"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
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
	n := &noter{p: p, m: p.Printer(), told: map[told]bool{}}
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
		n.say("yard.bought", "yard.bought", "bought already: {0} x {1}", itoa(b.Count), n.p.offer(b.Offer))
	}
	if len(y.Without) > 0 {
		gone := make([]string, len(y.Without))
		for i, name := range y.Without {
			gone[i] = n.p.offer(name)
		}
		n.say("yard.without", "yard.without", "sold out: {0}", n.m.Text(and(gone)))
	}
	if y.Only != nil {
		n.say("yard.only_stock", "yard.only_stock", "of every offer that does not say, {0} are left", itoa(*y.Only))
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
	m     lang.Printer
	task  int
	path  string
	told  map[told]bool // what is told already
	notes []Note
}

// say writes a note by its form.
func (n *noter) say(field, code string, form message.Text, with ...string) {
	n.add(field, code, n.m.Print(form, with...))
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
		n.say("depth", "hole.deep", "the hole is {0} deeper than the ball reaches: firm soil under it, or dig less", n.m.Length(h.deep))
	}
	if h.proud > 0 {
		n.say("ball", "ball.proud", "the ball stands {0} higher above the ground than you gave: dig deeper, or say so", n.m.Length(h.proud))
	}
	if w.task.Backfill.Soil == "" {
		n.say("soil", "soil.assumed", "the soil left over is worked out for clay; say soil for another")
	}
}

// pot says once of every class that its makes differ, and of a pot given in
// whole gallons that the trade's gallon pot takes less.
func (n *noter) pot(p *pot, line string) {
	if k := p.class; k != nil && !k.Holds.Certain() && !n.told[told{k, "size.range"}] {
		n.told[told{k, "size.range"}] = true
		form := message.Text("makes of {0} differ: one takes {1}. Fill one with water, measure that, and write that as what it holds")
		if k.Cells > 1 {
			form = "makes of {0} differ: a cell takes {1}. Fill one with water, measure that, and write that as what it holds"
		}
		n.say(line+"size", "size.range", form, k.ID, n.m.VolumeRange(k.Holds.Low, k.Holds.High))
	}
	holds := p.line.Holds
	class := n.p.work.book.class["#"+itoa(int64(holds/units.Gallon))]
	if holds == 0 || holds%units.Gallon != 0 || class == nil || n.told[told{class, "gallon.liquid"}] {
		return
	}
	n.told[told{class, "gallon.liquid"}] = true
	n.say(line+"holds", "gallon.liquid", "a full {0} is taken; the {1} pot that the trade calls by that name takes about {2}: write it as size {1}", n.m.Figure(units.US.Volume(holds)), class.ID, n.m.Volume(class.Holds.Plan))
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
		n.say("", "mulch.settles", "{0}: settles by {1} to {2}: to be as deep after that, it takes {3}. Give what it settles by to plan for it", mat.Name, n.m.Figure(mat.SettleLow.String()), n.m.Figure(mat.SettleHigh.String()), n.m.VolumeRange(low.Plan, high.Plan))
	}
}

func (n *noter) onHand() {
	for _, h := range n.p.work.job.OnHand {
		if n.p.work.takes[n.p.work.book.material[h.Material]].High == 0 {
			n.say("on_hand."+h.Material, "on_hand.unused", "no task takes {0}", n.p.called(h.Material))
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
			n.say(path+"material", "offer.unused", "no task takes {0}", n.p.called(o.Material))
			continue
		}
		if each, from := o.yield(w.book.materials[index]); from != (Source{}) && o.OpensTo == 0 {
			n.say(path+"opens_to", "bale.range", "{0} of {1} is taken as a compressed bale that opens to {2}, and counted by the least. Give what yours opens to, if you know it", n.m.Figure(o.Pack.String()), n.p.called(o.Material), n.m.VolumeRange(each.Low, each.High))
		}
	}
	if len(n.p.Unpriced) > 0 && n.p.Priced {
		missing := make([]string, len(n.p.Unpriced))
		for i, id := range n.p.Unpriced {
			missing[i] = n.p.called(id)
		}
		n.say("offers", "cost.partial", "the cost leaves out {0}: no price is given", n.m.Text(and(missing)))
	}
	for i := range n.p.Needs {
		need := &n.p.Needs[i]
		if len(w.job.Offers) == 0 || need.Buy.Plan == 0 || n.p.Ordered(need.Material) {
			continue
		}
		n.add("offers", "offer.missing", n.m.Print("no offer of {0}: see what packs it comes in", n.p.called(need.Material.ID))+n.substitutes(need.Material))
	}
}

// lifts names the packs of the order that may be too much for one person.
func (n *noter) lifts() {
	for i := range n.p.Order {
		l := &n.p.Order[i]
		each, _ := l.Offer.mass(l.Material, l.Each.Plan)
		if l.Offer.Bulk.Volume == 0 && each[1] > liftLimit {
			n.say("offers["+itoa(int64(l.index))+"]", "lift.heavy", "a {0} pack of {1} may weigh {2}, more than one person is to lift", n.m.Figure(l.Offer.Size().String()), n.p.called(l.Material.ID), n.m.Mass(each[1]))
		}
	}
}

func (n *noter) haul() {
	p := n.p
	for i := range p.Order {
		if l := &p.Order[i]; l.Priced && l.Offer.PriceFor(l.Count) == 0 {
			n.say("offers["+itoa(int64(l.index))+"].price", "offer.free", "{0} in {1} is taken as free: ask whether it is", n.p.called(l.Material.ID), n.m.Figure(l.Offer.Size().String()))
		}
	}
	if d := p.work.job.Delivery; d != nil && len(p.Drops) == 0 && len(p.Order) > 0 {
		form := message.Text("nothing is delivered: fetching it costs less, or no offer may be delivered")
		if p.Haul == (Haul{}) {
			form = "nothing is delivered: without haul, fetching it is taken as free and without a limit"
		}
		n.say("delivery", "delivery.unused", form)
	}
	if p.Unproven {
		n.say("offers", "order.unproven", "this is the best order found in the time it may take; none costs less than {0}", p.amount(p.Bound))
	}
	switch h := &p.Haul; {
	case *h == (Haul{}):
	case len(p.Order) == 0:
		n.say("haul", "haul.unused", "trips are not worked out: there is nothing to buy from offers")
	case h.Limit() > 0 && p.Load.Mass[1] == 0:
		n.say("haul", "haul.unknown", "what some packs weigh is not known, and the trips do not count it: give their weight")
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
		text += ". " + n.p.Sentence(&s)
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
func (p *Plan) Sentence(s *Substitute) string {
	return p.Language.Print("{0} can stand in: {1}", title(p.called(s.Use)), s.Changes)
}

// called is what a sentence calls a material: its id, which is an English word,
// or in another language the name that it has there.
func (p *Plan) called(id string) string {
	if p.Language.Code() != "en" {
		b := p.work.book
		switch index, ok := b.material[id]; {
		case ok && index < len(b.cat.Materials):
			return small(b.materials[index].Name)
		case ok && b.materials[index].Name != "": // the job's own, as it is written there
			return b.materials[index].Name
		}
	}
	return id
}

// offer is what a sentence calls an offer that is named as in
// "peat:3.8 cu ft".
func (p *Plan) offer(name string) string {
	material, pack, ok := strings.Cut(name, ":")
	if !ok || p.Language.Code() == "en" {
		return name
	}
	return p.called(material) + ", " + p.Language.Figure(pack)
}

// small writes a name inside a sentence: without its capital, unless it is all
// capitals.
func small(name string) string {
	first, n := utf8.DecodeRuneInString(name)
	if second, _ := utf8.DecodeRuneInString(name[n:]); spell.Small(second) != second {
		return name
	}
	return string(spell.Small(first)) + name[n:]
}

// amount writes money with its currency.
func (p *Plan) amount(m units.Money) string { return p.Currency + p.Language.Figure(m.String()) }

// title writes an id as the words at the start of a sentence.
func title(id string) string {
	id = strings.ReplaceAll(id, "-", " ")
	if id == "" {
		return ""
	}
	first, n := utf8.DecodeRuneInString(id)
	return string(spell.Capital(first)) + id[n:]
}
