package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Order is what to buy: the least by the aim over all materials, packs, trips and
// deliveries together.
type Order struct {
	Lines  []Line
	Others []Line // offers that were not chosen, each were it bought alone
	Bill   Bill
	Trips  []Trip // drives
	Drops  []Trip // loads that the yard brings
	// Unproven says that the search stopped before it could show that no order
	// costs less; then none costs less than Bound.
	Unproven bool
	Bound    units.Money
}

// Bill is what the order costs. Total leaves out deposits, which come back.
type Bill struct {
	Goods, Tax, Driving, Fees, Total units.Money
	Deposit                          units.Money
}

// Budgets bound the work of a search. budget is about a quarter of a second on a
// desk machine; past it the order is the best found, and a note says what none can
// cost less than. aLittle is for one of many searches.
const (
	budget  = 200_000
	aLittle = 20_000
)

// Buy finds the order for the needs. Where problems are found there is none. The
// terms' offers are checked.
func (t *Terms) Buy(r *doc.Reader, needs []Need) Order {
	q := t.request(r, needs)
	if q == nil || !r.Sound() {
		return Order{}
	}
	found, err := order.Search(q.Request)
	if err != nil {
		q.refuse(r, err)
		return Order{}
	}
	return q.lay(r, &found)
}

// BuyAgain is Buy for other needs of the same materials, with a smaller budget; ok
// is false when there is no order.
func (t *Terms) BuyAgain(needs []Need) (o Order, ok bool) {
	var r doc.Reader
	q := t.request(&r, needs)
	if q == nil || r.Err() != nil {
		return Order{}, false
	}
	q.Budget = 10 * aLittle
	found, err := order.Search(q.Request)
	if err != nil {
		return Order{}, false
	}
	o = q.lay(&r, &found)
	return o, r.Err() == nil
}

// request is the search's question, with the way back from its offers to the
// job's.
type request struct {
	order.Request
	terms  *Terms
	all    []Need  // what is asked for, and what no offer covers
	offers []int   // by the search's offers
	needs  []*Need // by the search's materials
	lines  []Line  // one for each of the search's offers, were it bought alone
}

// request asks for every need that is offered; nil when there is none.
func (t *Terms) request(r *doc.Reader, needs []Need) *request {
	q := &request{terms: t, all: needs, Request: order.Request{
		Tax: t.Tax, Payload: t.Haul.Limit(), Room: t.Haul.Room, TripCost: t.Haul.TripCost,
		Slack: catalog.Slack, Aim: order.Aim(t.Aim), Budget: budget,
	}}
	if d := t.Delivery; d != nil {
		q.Delivery = &order.Delivery{Capacity: d.Capacity, Payload: d.Payload, Fee: d.Fee}
	}
	var sum units.Volume
	for i := range needs {
		lines := t.lines(r, &needs[i])
		if len(lines) == 0 || needs[i].Buy.Plan <= catalog.Slack {
			continue
		}
		if sum += needs[i].Buy.Plan; sum > units.MaxVolume {
			r.ProblemAt("offers", "order.large", "the order comes to more than can be worked out")
			return nil
		}
		q.add(r, &needs[i], lines)
	}
	if len(q.needs) == 0 {
		return nil
	}
	return q
}

// add puts one need and its offers to the question. Where those with a price
// suffice, the others are left aside: nobody can say which is cheaper.
func (q *request) add(r *doc.Reader, n *Need, lines []Line) {
	material := len(q.needs)
	q.needs, q.Needs = append(q.needs, n), append(q.Needs, n.Buy.Plan)
	priced := pricedCover(n, lines)
	var stock units.Volume
	limited := true
	for i := range lines {
		l := &lines[i]
		l.tooHeavy(r, q.terms)
		if priced && !l.Priced {
			continue
		}
		q.offers, q.lines, q.Offers = append(q.offers, l.index), append(q.lines, *l), append(q.Offers, l.ask(material, q.terms.Delivery != nil))
		if l.Offer.Stock == nil {
			limited = false
		} else {
			stock = min(stock+l.inStock(), units.MaxVolume)
		}
	}
	if limited && stock+catalog.Slack < n.Buy.Plan {
		shortOf(r, lines, stock)
	}
}

// pricedCover reports whether the offers with a price cover the need by
// themselves: then those without one are left aside.
func pricedCover(n *Need, lines []Line) bool {
	var stock units.Volume
	for i := range lines {
		if lines[i].Priced {
			stock = min(stock+lines[i].inStock(), units.MaxVolume)
		}
	}
	return stock+catalog.Slack >= n.Buy.Plan
}

// inStock is the loose volume of all that there is of the line's offer.
func (l *Line) inStock() units.Volume {
	if l.Offer.Stock == nil {
		return units.MaxVolume
	}
	all, ok := l.Each.Plan.Times(*l.Offer.Stock)
	if !ok {
		return units.MaxVolume
	}
	return all
}

// ask is the line's offer as the search knows it: at its heaviest.
func (l *Line) ask(material int, delivered bool) order.Offer {
	o := l.Offer
	mass := o.Weight
	if mass == 0 {
		each, _ := o.Mass(l.Material, l.Each.Plan)
		mass = each[1]
	}
	a := order.Offer{
		Material: material, Yield: l.Each.Plan, Room: o.Size().Volume, Mass: mass,
		Deposit: o.Deposit, Least: o.Least, CanDeliver: o.Deliver && delivered, Machine: o.Bulk.Volume > 0,
	}
	if o.Price != nil {
		a.Price = *o.Price
	}
	for _, b := range o.Breaks {
		if b.Price != nil { // else the job is not sound, and nothing is bought
			a.Breaks = append(a.Breaks, order.Break{From: b.From, Price: *b.Price})
		}
	}
	if o.Stock != nil {
		a.Stock, a.Limited = *o.Stock, true
	}
	return a
}

// tooHeavy reports an offer of which one alone is too much for the vehicle and
// that the yard does not bring.
func (l *Line) tooHeavy(r *doc.Reader, t *Terms) {
	if l.Offer.Deliver && t.Delivery != nil {
		return
	}
	each := l.ask(0, false)
	r.Enter("offers")
	r.EnterAt(l.index)
	if p := t.Haul.Limit(); p > 0 && each.Mass > p {
		r.Problem("offer.heavy", message.Of("one of these may weigh {#0}, more than the payload, {#1}: leave it out, or take a smaller step or a pack", units.Both.Mass(each.Mass), units.Both.Mass(p)))
	}
	if room := t.Haul.Room; room > 0 && each.Room > room {
		r.Problem("offer.large", message.Of("one of these takes more room than there is, {#0}: leave it out, or take a smaller step or a pack", units.Both.Volume(room)))
	}
	r.Leave()
	r.Leave()
}

// shortOf reports that the stock of all offers together does not cover a need.
func shortOf(r *doc.Reader, lines []Line, stock units.Volume) {
	l := &lines[0]
	hint := message.Of("{0} of these are needed; raise the stock, add another offer, or buy what there is and count it as on hand", itoa(l.Count))
	if len(lines) > 1 {
		hint = message.Of("all offers of {0} together have {#1} in stock, which is short of the need; raise the stock, add another offer, or buy what there is and count it as on hand", l.Material.ID, units.Both.Volume(stock))
	}
	r.Enter("offers")
	r.EnterAt(l.index)
	r.ProblemAt("stock", "stock.short", hint)
	r.Leave()
	r.Leave()
}

// refuse reports what the search says, in the job's words. Stock and weight are
// checked before, material by material; a minimum may still leave a need
// uncovered.
func (q *request) refuse(r *doc.Reader, err error) {
	e, ok := err.(*order.Error)
	if !ok {
		panic(err) // the search has no other errors
	}
	r.Enter("offers")
	if e.Offer >= 0 && e.Offer < len(q.offers) {
		r.EnterAt(q.offers[e.Offer])
		defer r.Leave()
	}
	defer r.Leave()
	what := message.Text("these offers")
	if e.Material >= 0 && e.Material < len(q.needs) {
		what = message.Of("the offers of {0}", q.needs[e.Material].Material.ID)
	}
	switch e.Code {
	case order.ErrShort:
		r.Problem("stock.short", message.Of("{=0} do not cover the need: see stock and least", string(what)))
	case order.ErrTooHeavy:
		r.Problem("offer.heavy", message.Of("{=0} do not fit the vehicle", string(what)))
	default:
		r.Problem("order.large", message.Of("{=0} come to more than can be worked out", string(what)))
	}
}

// lay turns what the search found into lines and trips.
func (q *request) lay(r *doc.Reader, found *order.Order) (o Order) {
	used := map[int]bool{}
	for m, n := range q.needs {
		first := len(o.Lines)
		for k := range q.Offers {
			if count := found.Haul[k] + found.Deliver[k]; q.Offers[k].Material == m && count > 0 {
				l := q.lines[k]
				l.take(r, count, found.Deliver[k], &q.Offers[k], q.terms.Tax)
				o.Lines = append(o.Lines, l)
				used[l.index] = true
			}
		}
		if len(o.Lines) == first {
			continue
		}
		last := &o.Lines[len(o.Lines)-1]
		last.Left, last.Last = found.Left[m], true
		if len(o.Lines) == first+1 && last.Count == q.alone(last.index) {
			last.FewMany = last.fewMany(n.Buy)
		}
	}
	for i := range q.all {
		for _, l := range q.terms.lines(r, &q.all[i]) {
			if !used[l.index] && l.Count > 0 {
				l.Last = true
				o.Others = append(o.Others, l)
			}
		}
	}
	o.Bill = Bill{found.Goods, found.Tax, found.Driving, found.Fees, found.Cost, found.Deposit}
	o.Unproven, o.Bound = !found.Proven, found.Bound
	o.Trips, o.Drops = q.trips(found)
	return o
}

// alone is the count of an offer that covers its need alone.
func (q *request) alone(index int) int64 {
	for i := range q.lines {
		if q.lines[i].index == index {
			return q.lines[i].Count
		}
	}
	return 0
}
