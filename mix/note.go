package mix

import (
	"strconv"
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units/message"
)

// notes collects what is worth knowing about the plan and is neither a caution nor a
// problem: first about each task, then about the job as a whole. Whatever the job
// lists and the plan does not use gets a note, because it may be a slip.
func (p *Plan) notes() []task.Note {
	tasks := &task.Notes{Printer: p.Printer(), Scope: p.e.scope}
	for i := range p.e.tasks {
		tasks.Of(i, &p.e.tasks[i])
	}
	n := &noter{p: p, e: p.e, list: tasks.List}
	for _, y := range p.e.job.yards {
		n.yard(y)
	}
	tasks.List = nil
	tasks.Settling()
	n.list = append(n.list, tasks.List...)
	n.onHand()
	n.offers()
	n.lifts()
	n.haul()
	n.sure()
	return n.list
}

// noter collects the notes about a job as a whole.
type noter struct {
	p    *Plan
	e    *evaluated
	list []task.Note
}

// say adds a note about the field at path.
func (n *noter) say(path, code string, form message.Text, with ...string) {
	text := n.p.Printer().Print(form, with...)
	n.list = append(n.list, task.Note{Task: -1, Path: path, Code: code, Text: text})
}

// yard notes the changes at the yard that the plan has taken into account. By now
// they are part of the offers and the stock, where nobody could see them.
func (n *noter) yard(y *yard.Yard) {
	for _, b := range y.Bought {
		n.say("yard.bought", "yard.bought",
			"bought already: {0} x {1}, taken to be in the truck or at home; no drive here counts it",
			itoa(b.Count), n.offer(b.Offer))
	}
	if len(y.Without) > 0 {
		gone := make([]string, len(y.Without))
		for i, name := range y.Without {
			gone[i] = n.offer(name)
		}
		n.say("yard.without", "yard.without", "sold out: {0}", n.p.Language.Text(doc.And(gone)))
	}
	if y.Only != nil {
		n.say("yard.only_stock", "yard.only_stock", "of every offer that does not say, {0} are left", itoa(*y.Only))
	}
}

// offer names an offer in a sentence. In English that is as the job names it, such as
// "peat:3.8 cu ft", which can be typed again; other languages translate its words.
func (n *noter) offer(name string) string {
	material, pack, ok := strings.Cut(name, ":")
	if !ok || n.p.Language.Code() == "en" {
		return n.p.Language.Figure(name)
	}
	return n.e.scope.Called(material) + ", " + n.p.Language.Figure(pack)
}

// taken reports whether a task takes the material.
func (n *noter) taken(id string) bool {
	index, _ := n.e.scope.Index(id)
	return n.e.takes[index].High > 0
}

// onHand notes the stock that no task takes.
func (n *noter) onHand() {
	for _, h := range n.e.job.OnHand {
		if !n.taken(h.Material) {
			n.say("on_hand."+h.Material, "on_hand.unused", "no task takes {0}", n.e.scope.Called(h.Material))
		}
	}
}

// offers notes offers that no task takes, packs that are assumed to be bales, offers
// without a price and needs without an offer.
func (n *noter) offers() {
	n.eachOffer()
	n.unpriced()
	n.missing()
}

// eachOffer notes offers that no task takes and packs that are assumed to be bales.
func (n *noter) eachOffer() {
	p, called := n.p, n.e.scope.Called
	for i := range n.e.terms.Offers {
		o := &n.e.terms.Offers[i]
		if !n.taken(o.Material) {
			n.say(offerPath(i)+".material", "offer.unused", "no task takes {0}", called(o.Material))
			continue
		}
		index, _ := n.e.scope.Index(o.Material)
		if each, from := o.Yield(n.e.scope.Material(index)); from != (catalog.Source{}) && o.OpensTo == 0 {
			n.say(offerPath(i)+".opens_to", "bale.range",
				"{0} of {1} is taken as a compressed bale that opens to {2}, and the least is counted. Give what yours opens to, if you know it",
				p.Language.Figure(o.Pack.String()), called(o.Material), p.Printer().VolumeRange(each.Low, each.High))
		}
	}
}

// unpriced notes what the cost leaves out. An order without any price has no cost, so
// there is nothing to note.
func (n *noter) unpriced() {
	p := n.p
	if len(p.Load.Unpriced) == 0 || !p.Load.Priced {
		return
	}
	materials := make([]string, len(p.Load.Unpriced))
	for i, id := range p.Load.Unpriced {
		materials[i] = n.e.scope.Called(id)
	}
	n.say("offers", "cost.partial", "the cost leaves out {0}: no price is given", p.Language.Text(doc.And(materials)))
}

// missing notes what the order leaves out, with what can stand in for it. A job
// without any offers asks only for the needs, so it has no such note.
func (n *noter) missing() {
	p := n.p
	if !p.Offered() {
		return
	}
	for _, out := range p.LeftOut() {
		called, volume := n.e.scope.Called(out.Material.ID), p.Printer().Volume(out.Volume)
		switch first, sold := n.offerOf(out.Material); {
		case p.Ordered(out.Material):
			n.say(offerPath(first)+".stock", doc.StockShort,
				"too little of {0} is in stock: the order has all there is, and leaves out {1}", called, volume)
		case sold:
			n.say("offers", "offer.missing", "every offer of {0} is sold out: the order leaves out {1}", called, volume)
		default:
			n.say("offers", "offer.missing", "no offer of {0}: see what packs it comes in", called)
		}
		note := &n.list[len(n.list)-1]
		for _, sentence := range p.StandIns(out.Material.ID) {
			note.Text += ". " + sentence
		}
	}
}

// offerOf returns the index of the first offer of a material, and whether there is any.
func (n *noter) offerOf(m *catalog.Material) (first int, any bool) {
	for i := range n.e.terms.Offers {
		if n.e.terms.Offers[i].Material == m.ID {
			return i, true
		}
	}
	return 0, false
}

func offerPath(i int) string { return "offers[" + strconv.Itoa(i) + "]" }

// lifts notes the packs of the order that may be too heavy for one person. The caution
// says what to do about it; the note says which packs they are.
func (n *noter) lifts() {
	for i := range n.p.Lines {
		l := &n.p.Lines[i]
		each, _ := l.Offer.Mass(l.Material, l.Each.Plan)
		if l.Offer.Bulk.Volume == 0 && each[1] > liftLimit {
			n.say(offerPath(l.Index()), "lift.heavy",
				"a {0} pack of {1} may weigh {2}, more than one person should lift",
				n.p.Language.Figure(l.Offer.Size().String()), n.e.scope.Called(l.Material.ID),
				n.p.Printer().Mass(each[1]))
		}
	}
}

// haul notes offers taken as free, a delivery that is not used, and what the trips
// could not take into account.
func (n *noter) haul() {
	p := n.p
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Priced && l.Offer.PriceFor(l.Count) == 0 {
			n.say(offerPath(l.Index())+".price", "offer.free", "{0} in {1} is taken as free: ask whether it is",
				n.e.scope.Called(l.Material.ID), p.Language.Figure(l.Offer.Size().String()))
		}
	}
	n.delivery()
	if p.Unproven {
		n.say("offers", "order.unproven",
			"this is the best order found in the time it may take; none costs less than {0}", p.Amount(p.Bound))
	}
	switch h := &p.Haul; {
	case *h == (yard.Haul{}):
	case len(p.Lines) == 0:
		n.say("haul", "haul.unused", "no trips are worked out, since nothing is bought from an offer")
	case h.Limit() > 0 && p.Load.Mass[1] == 0:
		n.say("haul", "haul.unknown",
			"what some packs weigh is not known, and the trips do not count it: give their weight")
	}
}

// delivery notes offers that may be delivered in a job without a delivery, and a delivery
// that is not used, with the reason.
func (n *noter) delivery() {
	p, some := n.p, false
	for i := range n.e.terms.Offers {
		o := &n.e.terms.Offers[i]
		some = some || o.Deliver
		if o.Deliver && p.Delivery() == nil {
			n.say(offerPath(i)+".deliver", "deliver.alone",
				"{0} in {1} is to be fetched: the yard may bring it, but the job has no delivery with its fee",
				n.e.scope.Called(o.Material), p.Language.Figure(o.Size().String()))
		}
	}
	if p.Delivery() != nil && len(p.Drops) == 0 {
		n.say("delivery", "delivery.unused", n.fetched(some))
	}
}

// fetched says why nothing is delivered. some is whether any offer may be.
func (n *noter) fetched(some bool) message.Text {
	may := false
	for i := range n.p.Lines {
		may = may || n.p.Lines[i].Offer.Deliver
	}
	switch {
	case !some:
		return "nothing is delivered: no offer says that the yard brings it"
	case len(n.p.Lines) == 0:
		return "nothing is delivered: there is nothing to buy from offers"
	case !may:
		return "nothing is delivered: the yard brings none of the packs of this order"
	case n.p.Haul == (yard.Haul{}):
		return "nothing is delivered: without haul, fetching it is taken as free and without a limit"
	case n.p.Haul.TripCost == 0:
		return "nothing is delivered: without a cost of a drive, fetching it is taken as free"
	}
	return "nothing is delivered: fetching it costs no more"
}

// sure notes that there is no answer to how sure the order is, because more is
// uncertain than is worked out.
func (n *noter) sure() {
	if len(n.p.Lines) == 0 {
		return
	}
	if u := newModel(n.p); len(u.needs) > 0 && tooUncertain(u.with(n.p.Lines)) {
		n.say("", "sure.large", "how sure the order is was not worked out: more is uncertain than can be in the time it may take")
	}
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
