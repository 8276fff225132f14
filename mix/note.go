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

// notes are what the plan has to say that is neither caution nor problem: first of
// each task, then of the whole. Nothing that a job lists is passed over in
// silence.
func (p *Plan) notes(changed *yard.Yard) []task.Note {
	tasks := &task.Notes{Printer: p.Printer(), Scope: p.e.scope}
	for i := range p.e.tasks {
		tasks.Of(i, &p.e.tasks[i])
	}
	n := &noter{p: p, e: p.e, list: tasks.List}
	n.yard(changed)
	tasks.List = nil
	tasks.Settling()
	n.list = append(n.list, tasks.List...)
	n.onHand()
	n.offers()
	n.lifts()
	n.haul()
	return n.list
}

// noter writes notes about the whole of a job.
type noter struct {
	p    *Plan
	e    *evaluated
	list []task.Note
}

// say writes a note about a field by its form.
func (n *noter) say(path, code string, form message.Text, with ...string) {
	n.list = append(n.list, task.Note{Task: -1, Path: path, Code: code, Text: n.p.Printer().Print(form, with...)})
}

// yard says what the plan takes as changed at the yard.
func (n *noter) yard(y *yard.Yard) {
	if y == nil {
		return
	}
	for _, b := range y.Bought {
		n.say("yard.bought", "yard.bought", "bought already: {0} x {1}", itoa(b.Count), n.offer(b.Offer))
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

// offer is what a sentence calls an offer that is named as in "peat:3.8 cu ft".
func (n *noter) offer(name string) string {
	material, pack, ok := strings.Cut(name, ":")
	if !ok || n.p.Language.Code() == "en" {
		return name
	}
	return n.e.scope.Called(material) + ", " + n.p.Language.Figure(pack)
}

// taken reports whether a task takes the material.
func (n *noter) taken(id string) bool {
	index, _ := n.e.scope.Index(id)
	return n.e.takes[index].High > 0
}

func (n *noter) onHand() {
	for _, h := range n.e.job.OnHand {
		if !n.taken(h.Material) {
			n.say("on_hand."+h.Material, "on_hand.unused", "no task takes {0}", n.e.scope.Called(h.Material))
		}
	}
}

// offers speaks of offers that no task takes, of bales that were guessed to be
// bales, and of needs without an offer.
func (n *noter) offers() {
	p, called := n.p, n.e.scope.Called
	for i := range n.e.terms.Offers {
		o := &n.e.terms.Offers[i]
		if !n.taken(o.Material) {
			n.say(offerPath(i)+".material", "offer.unused", "no task takes {0}", called(o.Material))
			continue
		}
		index, _ := n.e.scope.Index(o.Material)
		if each, from := o.Yield(n.e.scope.Material(index)); from != (catalog.Source{}) && o.OpensTo == 0 {
			n.say(offerPath(i)+".opens_to", "bale.range", "{0} of {1} is taken as a compressed bale that opens to {2}, and counted by the least. Give what yours opens to, if you know it",
				p.Language.Figure(o.Pack.String()), called(o.Material), p.Printer().VolumeRange(each.Low, each.High))
		}
	}
	if len(p.Load.Unpriced) > 0 && p.Load.Priced {
		missing := make([]string, len(p.Load.Unpriced))
		for i, id := range p.Load.Unpriced {
			missing[i] = called(id)
		}
		n.say("offers", "cost.partial", "the cost leaves out {0}: no price is given", p.Language.Text(doc.And(missing)))
	}
	for i := range p.Needs {
		need := &p.Needs[i]
		if !p.Offered() || need.Buy.Plan == 0 || p.Ordered(need.Material) {
			continue
		}
		n.say("offers", "offer.missing", "no offer of {0}: see what packs it comes in", called(need.Material.ID))
		note := &n.list[len(n.list)-1]
		for _, sentence := range p.StandIns(need.Material.ID) {
			note.Text += ". " + sentence
		}
	}
}

func offerPath(i int) string { return "offers[" + strconv.Itoa(i) + "]" }

// lifts names the packs of the order that may be too much for one person.
func (n *noter) lifts() {
	for i := range n.p.Lines {
		l := &n.p.Lines[i]
		each, _ := l.Offer.Mass(l.Material, l.Each.Plan)
		if l.Offer.Bulk.Volume == 0 && each[1] > liftLimit {
			n.say(offerPath(l.Index()), "lift.heavy", "a {0} pack of {1} may weigh {2}, more than one person is to lift",
				n.p.Language.Figure(l.Offer.Size().String()), n.e.scope.Called(l.Material.ID), n.p.Printer().Mass(each[1]))
		}
	}
}

// haul speaks of what is free, of delivery, and of trips.
func (n *noter) haul() {
	p := n.p
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Priced && l.Offer.PriceFor(l.Count) == 0 {
			n.say(offerPath(l.Index())+".price", "offer.free", "{0} in {1} is taken as free: ask whether it is", n.e.scope.Called(l.Material.ID), p.Language.Figure(l.Offer.Size().String()))
		}
	}
	if p.Delivery() != nil && len(p.Drops) == 0 && len(p.Lines) > 0 {
		form := message.Text("nothing is delivered: fetching it costs less, or no offer may be delivered")
		if p.Haul == (yard.Haul{}) {
			form = "nothing is delivered: without haul, fetching it is taken as free and without a limit"
		}
		n.say("delivery", "delivery.unused", form)
	}
	if p.Unproven {
		n.say("offers", "order.unproven", "this is the best order found in the time it may take; none costs less than {0}", p.Amount(p.Bound))
	}
	switch h := &p.Haul; {
	case *h == (yard.Haul{}):
	case len(p.Lines) == 0:
		n.say("haul", "haul.unused", "trips are not worked out: there is nothing to buy from offers")
	case h.Limit() > 0 && p.Load.Mass[1] == 0:
		n.say("haul", "haul.unknown", "what some packs weigh is not known, and the trips do not count it: give their weight")
	}
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
