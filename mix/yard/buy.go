package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Order is what to buy: the best by the aim over all materials, packs, trips
// and deliveries together.
type Order struct {
	Lines  []Line
	Others []Line // offers that were not chosen, each as if only it were bought
	Bill   Bill
	Trips  []Trip // drives
	Drops  []Trip // loads that the yard brings
	// Unproven says that the search stopped before it could show that no order
	// costs less. Then none costs less than Bound.
	Unproven bool
	Bound    units.Money
}

// billOf is the bill of what the search found.
func billOf(o *order.Order) Bill {
	return Bill{o.Goods, o.Tax, o.Driving, o.Fees, o.Cost, o.Deposit}
}

// Bill is what the order costs. Total leaves out deposits, which come back.
type Bill struct {
	Goods, Tax, Driving, Fees, Total units.Money
	Deposit                          units.Money
}

// budget limits the work of one search to about a quarter of a second on a
// desktop computer. Past it, the order is the best one found, and a note says
// what no order can cost less than. smallBudget is for one search of many.
const (
	budget      = 200_000
	smallBudget = 20_000
)

// Buy finds the order for the needs. When there are problems, or nothing to
// buy, the order is empty. The terms' offers must have been checked; see
// [Terms.CheckOffers].
func (t *Terms) Buy(r *doc.Reader, needs []Need) Order {
	q := t.request(r, needs)
	if q == nil || !r.Sound() {
		return Order{}
	}
	q.whole(q.finest())
	found, err := order.Search(q.Request)
	if err != nil {
		q.refuse(r, err)
		return Order{}
	}
	return q.answer(r, &found)
}

// BuyAgain is Buy for other amounts of the same materials, with a smaller
// budget. ok is false when there is no order.
func (t *Terms) BuyAgain(needs []Need) (o Order, ok bool) {
	var r doc.Reader
	q := t.request(&r, needs)
	if q == nil || r.Err() != nil {
		return Order{}, false
	}
	q.Budget = 10 * smallBudget
	q.whole(q.finest())
	found, err := order.Search(q.Request)
	if err != nil {
		return Order{}, false
	}
	o = q.answer(&r, &found)
	return o, r.Err() == nil
}

// request is the question for the search, with what is needed to translate its
// answer back into the job's offers.
type request struct {
	order.Request
	terms  *Terms
	all    []Need        // every need, also those that no offer covers
	offers []int         // the job's offer for each of the search's
	wants  []units.Fixed // what is to be bought of each of the search's materials
	needs  []*Need       // the need for each of the search's materials
	lines  []Line        // for each of the search's offers, as if only it were bought
}

// request asks for every need that is on offer. It returns nil when there is
// none.
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
		if len(lines) == 0 || !needs[i].Wanted() {
			continue
		}
		if sum += needs[i].Buy.Plan; sum > units.MaxVolume {
			r.ProblemAt("offers", doc.OrderLarge, "the order comes to more than can be worked out")
			return nil
		}
		q.add(r, &needs[i], lines)
	}
	if len(q.needs) == 0 {
		return nil
	}
	return q
}

// add adds one need and its offers. When the offers with a price are enough,
// the others are left out, because it is not known whether they are cheaper.
// When all stocks together are too few, what there is is bought, since a grower
// at the yard takes that home and looks for the rest elsewhere.
func (q *request) add(r *doc.Reader, n *Need, lines []Line) {
	stock, want := inStock(lines), n.Buy.FixedPlan()
	if !stock.Over(slack) {
		return
	}
	if want.Over(stock.Plus(slack)) {
		want = stock
	}
	material := len(q.needs)
	q.needs, q.wants = append(q.needs, n), append(q.wants, want)
	priced := pricedCover(n, lines)
	for i := range lines {
		l := &lines[i]
		l.tooHeavy(r, q.terms)
		if priced && !l.Priced {
			continue
		}
		q.offers, q.lines = append(q.offers, l.index), append(q.lines, *l)
		q.Offers = append(q.Offers, l.ask(material, q.terms.Delivery != nil))
	}
}

// maxParts is the most parts of a nanolitre that an order is worked out in.
const maxParts = 1 << 30

// finest returns in how many parts of a nanolitre every pack that has a choice beside
// it is a whole number: 1 for packs in cubic feet or litres, 3 for a third of a cubic
// inch. It returns 1 where there are more than maxParts, or where the order would be
// past what the search can hold; then packs are taken as rounded.
func (q *request) finest() int64 {
	parts, largest := int64(1), q.Room
	if q.Delivery != nil {
		largest = max(largest, q.Delivery.Capacity)
	}
	for i := range q.lines {
		l := &q.lines[i]
		largest = max(largest, l.Each.Plan+1, l.Offer.Size().Volume)
		if q.sole(i) {
			continue
		}
		of := l.Each.FixedPlan().MulDiv(parts, 1).Parts(maxParts)
		if parts *= of; parts < 1 || parts > maxParts {
			return 1
		}
	}
	if largest > units.MaxVolume/units.Volume(parts) || !q.fits(parts) {
		return 1
	}
	return parts
}

// sole reports whether offer i is the only one of its material.
func (q *request) sole(i int) bool {
	m := q.Offers[i].Material
	return (i == 0 || q.Offers[i-1].Material != m) && (i == len(q.Offers)-1 || q.Offers[i+1].Material != m)
}

// fits reports whether the needs, in such parts, are within the bound of volumes.
func (q *request) fits(parts int64) bool {
	sum := units.Fixed{}
	for _, want := range q.wants {
		sum = sum.Plus(want)
	}
	return sum.Floor()+int64(len(q.wants)) < int64(units.MaxVolume)/parts
}

// whole states the request in such parts of a nanolitre, all whole numbers. A need is
// rounded up: a whole number of parts covers it just where it covers that. Where there
// is one offer the count is known, so the need is that many of the pack, rounded or
// not.
func (q *request) whole(parts int64) {
	q.Needs = make([]units.Volume, len(q.wants))
	for i, want := range q.wants {
		q.Needs[i] = units.Volume(want.MulDiv(parts, 1).Up())
	}
	for i := range q.Offers {
		o, each := &q.Offers[i], q.lines[i].Each.FixedPlan()
		o.Yield = units.Volume(each.MulDiv(parts, 1).Round())
		o.Room *= units.Volume(parts)
		if q.sole(i) && !each.Whole() {
			q.Needs[o.Material] = o.Yield * units.Volume(Count(q.wants[o.Material], each))
		}
	}
	q.Slack *= units.Volume(parts)
	q.Room *= units.Volume(parts)
	if q.Delivery != nil {
		q.Delivery.Capacity *= units.Volume(parts)
	}
}

// inStock is the loose volume of everything that the yard has of the lines'
// offers, up to the largest volume.
func inStock(lines []Line) (stock units.Fixed) {
	for i := range lines {
		if stock = stock.Plus(lines[i].inStock()); stock.Over(most) {
			return most
		}
	}
	return stock
}

// most is the largest volume.
var most = units.FixedOf(units.MaxVolume)

// pricedCover reports whether the offers with a price cover the need by
// themselves.
func pricedCover(n *Need, lines []Line) bool {
	var priced []Line
	for i := range lines {
		if lines[i].Priced {
			priced = append(priced, lines[i])
		}
	}
	return !n.Buy.FixedPlan().Over(inStock(priced).Plus(slack))
}

// inStock is the loose volume of everything the yard has of the line's offer.
func (l *Line) inStock() units.Fixed {
	if l.Offer.Stock == nil {
		return most
	}
	all, ok := l.Each.Planned().Times(*l.Offer.Stock)
	if !ok {
		return most
	}
	return all.FixedPlan()
}

// ask returns the line's offer in the form the search uses, at its heaviest.
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
		if b.Price != nil { // otherwise there is a problem and nothing is bought
			a.Breaks = append(a.Breaks, order.Break{From: b.From, Price: *b.Price})
		}
	}
	if o.Stock != nil {
		a.Stock, a.Limited = *o.Stock, true
	}
	return a
}

// tooHeavy reports an offer of which a single pack is too much for the vehicle,
// and that the yard does not deliver.
func (l *Line) tooHeavy(r *doc.Reader, t *Terms) {
	if l.Offer.Deliver && t.Delivery != nil {
		return
	}
	each := l.ask(0, false)
	r.Enter("offers")
	r.EnterAt(l.index)
	if p := t.Haul.Limit(); p > 0 && each.Mass > p {
		r.Problem(doc.OfferHeavy, message.Of(
			"one of these may weigh {#0}, more than the payload, {#1}: leave it out, or take a smaller step or a pack",
			units.Both.Mass(each.Mass), units.Both.Mass(p)))
	}
	if room := t.Haul.Room; room > 0 && each.Room > room {
		r.Problem(doc.OfferLarge, message.Of(
			"one of these takes more room than there is, {#0}: leave it out, or take a smaller step or a pack",
			units.Both.Volume(room)))
	}
	r.Leave()
	r.Leave()
}

// refuse reports an error of the search in the words of the job. Stock and
// weight were checked before, one material at a time; a minimum can still leave
// a need uncovered.
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
		r.Problem(doc.StockShort, message.Of("{=0} do not cover the need: see stock and least", string(what)))
	case order.ErrTooHeavy:
		r.Problem(doc.OfferHeavy, message.Of("{=0} do not fit the vehicle", string(what)))
	default:
		r.Problem(doc.OrderLarge, message.Of("{=0} come to more than can be worked out", string(what)))
	}
}

// answer turns what the search found into lines and trips.
func (q *request) answer(r *doc.Reader, found *order.Order) (o Order) {
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
		last.Left, last.Last = max(loose(o.Lines[first:])-n.Buy.Plan, 0), true
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
	o.Bill = billOf(found)
	o.Unproven, o.Bound = !found.Proven, found.Bound
	o.Trips, o.Drops = q.trips(found)
	return o
}

// loose is the loose volume of lines together.
func loose(lines []Line) (all units.Volume) {
	for i := range lines {
		all += lines[i].Volume
	}
	return all
}

// alone is how many of an offer cover its need when nothing else is bought.
func (q *request) alone(index int) int64 {
	for i := range q.lines {
		if q.lines[i].index == index {
			return q.lines[i].Count
		}
	}
	return 0
}
