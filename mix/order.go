package mix

import (
	"errors"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Line is one line of the order: so many of one offer.
type Line struct {
	Material  *Material
	Offer     *Offer
	Count     int64
	Delivered int64 // of Count, what the yard brings
	// FewMany is the count for the least and the most that the need may be, for
	// a line that covers its need alone; else the count twice.
	FewMany  [2]int64
	Each     Span         // loose volume of one
	From     Source       // of Each, when it is not the pack's own size
	Volume   units.Volume // loose volume of all, as planned
	Left     units.Volume // over the need, on the material's last line
	Last     bool         // of its material
	Cost     units.Money  // before tax
	Tax      units.Money
	Priced   bool
	Mass     [2]units.Mass // lightest and heaviest; zero when not known
	MassFrom Source

	index int // of the offer
}

// Bill is what the order costs. Total leaves out deposits, which come back.
type Bill struct {
	Goods, Tax, Driving, Fees, Total units.Money
	Deposit                          units.Money
}

// searchBudget bounds the search's work to about a quarter of a second on a desk
// machine; past it the order is the best found, and a note says what none can
// cost less than.
const searchBudget = 200_000

// bought is what the search found, in the words of the job.
type bought struct {
	order, others []Line
	bill          Bill
	drives, drops []Trip
	unproven      bool        // the search stopped at its budget
	bound         units.Money // then no order costs less than this
}

// buy finds the order of least cost over all materials, with their trips.
func (w *work) buy(c *checker) bought {
	r := w.request(c)
	if r == nil || !c.sound() {
		return bought{}
	}
	found, err := order.Search(r.Request)
	if err != nil {
		r.refuse(c, err)
		return bought{}
	}
	return w.lay(c, r, &found)
}

// request is the search's question, with the way back from its offers to the
// job's.
type request struct {
	order.Request
	offers []int   // by the search's offers
	needs  []*Need // by the search's materials
	lines  []Line  // one for each of the search's offers, were it bought alone
}

// request asks for every need that is offered; nil when there is none.
func (w *work) request(c *checker) *request {
	j := w.job
	r := &request{Request: order.Request{
		Tax: j.Tax, Payload: j.Haul.Limit(), Room: j.Haul.Room, TripCost: j.Haul.TripCost,
		Slack: Slack, Aim: order.Aim(j.Aim), Budget: searchBudget,
	}}
	if d := j.Delivery; d != nil {
		r.Delivery = &order.Delivery{Capacity: d.Capacity, Payload: d.Payload, Fee: d.Fee}
	}
	var sum units.Volume
	for i := range w.needs {
		lines := w.lines(&w.needs[i], c)
		if len(lines) == 0 || w.needs[i].Buy.Plan <= Slack {
			continue
		}
		if sum += w.needs[i].Buy.Plan; sum > units.MaxVolume {
			c.problemAt("offers", "order.large", "the order comes to more than can be worked out")
			return nil
		}
		r.add(c, w.job, &w.needs[i], lines)
	}
	if len(r.needs) == 0 {
		return nil
	}
	return r
}

// add puts one need and its offers to the question. Where those with a price
// suffice, the others are left aside: nobody can say which is cheaper.
func (r *request) add(c *checker, j *Job, n *Need, lines []Line) {
	material := len(r.needs)
	r.needs, r.Needs = append(r.needs, n), append(r.Needs, n.Buy.Plan)
	priced := pricedCover(n, lines)
	var stock units.Volume
	limited := true
	for i := range lines {
		l := &lines[i]
		l.tooHeavy(c, j)
		if priced && !l.Priced {
			continue
		}
		r.offers, r.lines, r.Offers = append(r.offers, l.index), append(r.lines, *l), append(r.Offers, l.ask(material, j))
		if l.Offer.Stock == nil {
			limited = false
		} else if all, ok := l.Each.Plan.Times(*l.Offer.Stock); ok {
			stock = min(stock+all, units.MaxVolume)
		} else {
			stock = units.MaxVolume
		}
	}
	if limited && stock+Slack < n.Buy.Plan {
		shortOf(c, lines, stock)
	}
}

// pricedCover reports whether the offers with a price cover the need by
// themselves: then those without one are left aside.
func pricedCover(n *Need, lines []Line) bool {
	var stock units.Volume
	for i := range lines {
		l := &lines[i]
		if !l.Priced {
			continue
		}
		all, ok := units.MaxVolume, true
		if l.Offer.Stock != nil {
			if all, ok = l.Each.Plan.Times(*l.Offer.Stock); !ok {
				all = units.MaxVolume
			}
		}
		stock = min(stock+all, units.MaxVolume)
	}
	return stock+Slack >= n.Buy.Plan
}

// ask is the line's offer as the search knows it: at its heaviest.
func (l *Line) ask(material int, j *Job) order.Offer {
	o := l.Offer
	mass := o.Weight
	if mass == 0 {
		each, _ := o.mass(l.Material, l.Each.Plan)
		mass = each[1]
	}
	a := order.Offer{
		Material: material, Yield: l.Each.Plan, Room: o.Size().Volume, Mass: mass,
		Deposit: o.Deposit, Least: o.Least, CanDeliver: o.Deliver && j.Delivery != nil, Machine: o.Bulk.Volume > 0,
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
func (l *Line) tooHeavy(c *checker, j *Job) {
	if l.Offer.Deliver && j.Delivery != nil {
		return
	}
	each := l.ask(0, j)
	c.path.push("offers")
	c.path.pushIndex(l.index)
	if p := j.Haul.Limit(); p > 0 && each.Mass > p {
		c.problem("offer.heavy", message.Of("one of these may weigh {#0}, more than the payload, {#1}: leave it out, or take a smaller step or a pack", units.Both.Mass(each.Mass), units.Both.Mass(p)))
	}
	if room := j.Haul.Room; room > 0 && each.Room > room {
		c.problem("offer.large", message.Of("one of these takes more room than there is, {#0}: leave it out, or take a smaller step or a pack", units.Both.Volume(room)))
	}
	c.path.pop()
	c.path.pop()
}

// shortOf reports that the stock of all offers together does not cover a need.
func shortOf(c *checker, lines []Line, stock units.Volume) {
	l := &lines[0]
	hint := message.Of("{0} of these are needed; raise the stock, add another offer, or buy what there is and count it as on hand", itoa(l.Count))
	if len(lines) > 1 {
		hint = message.Of("all offers of {0} together have {#1} in stock, which is short of the need; raise the stock, add another offer, or buy what there is and count it as on hand", l.Material.ID, units.Both.Volume(stock))
	}
	c.path.push("offers")
	c.path.pushIndex(l.index)
	c.problemAt("stock", "stock.short", hint)
	c.path.pop()
	c.path.pop()
}

// refuse reports what the search says, in the job's words. Stock and weight are
// checked before, material by material; a minimum may still leave a need
// uncovered.
func (r *request) refuse(c *checker, err error) {
	e, ok := errors.AsType[*order.Error](err)
	if !ok {
		panic(err) // the search has no other errors
	}
	c.path.push("offers")
	if e.Offer >= 0 && e.Offer < len(r.offers) {
		c.path.pushIndex(r.offers[e.Offer])
		defer c.path.pop()
	}
	defer c.path.pop()
	what := message.Text("these offers")
	if e.Material >= 0 && e.Material < len(r.needs) {
		what = message.Of("the offers of {0}", r.needs[e.Material].Material.ID)
	}
	switch e.Code {
	case order.ErrShort:
		c.problem("stock.short", message.Of("{=0} do not cover the need: see stock and least", string(what)))
	case order.ErrTooHeavy:
		c.problem("offer.heavy", message.Of("{=0} do not fit the vehicle", string(what)))
	default:
		c.problem("order.large", message.Of("{=0} come to more than can be worked out", string(what)))
	}
}

// lay turns what the search found into lines and trips.
func (w *work) lay(c *checker, r *request, found *order.Order) (b bought) {
	used := map[int]bool{}
	for m, n := range r.needs {
		first := len(b.order)
		for k := range r.Offers {
			if count := found.Haul[k] + found.Deliver[k]; r.Offers[k].Material == m && count > 0 {
				l := r.lines[k]
				l.take(c, count, found.Deliver[k], &r.Offers[k], w.job.Tax)
				b.order = append(b.order, l)
				used[l.index] = true
			}
		}
		if len(b.order) == first {
			continue
		}
		last := &b.order[len(b.order)-1]
		last.Left, last.Last = found.Left[m], true
		if len(b.order) == first+1 && last.Count == r.alone(last.index) {
			last.FewMany = last.fewMany(n.Buy)
		}
	}
	for i := range w.needs {
		for _, l := range w.lines(&w.needs[i], c) {
			if !used[l.index] && l.Count > 0 {
				l.Last = true
				b.others = append(b.others, l)
			}
		}
	}
	b.bill = Bill{found.Goods, found.Tax, found.Driving, found.Fees, found.Cost, found.Deposit}
	b.unproven, b.bound = !found.Proven, found.Bound
	b.trips(r, found, &w.job.Haul)
	return b
}

// alone is the count of an offer that covers its need alone.
func (r *request) alone(index int) int64 {
	for i := range r.lines {
		if r.lines[i].index == index {
			return r.lines[i].Count
		}
	}
	return 0
}

// take makes the line one of count.
func (l *Line) take(c *checker, count, delivered int64, asked *order.Offer, tax units.Ratio) {
	l.Count, l.Delivered, l.FewMany, l.Left = count, delivered, [2]int64{count, count}, 0
	l.Cost, l.Tax = asked.Paid(count, tax)
	var fits bool
	if l.Volume, fits = l.Each.Plan.Times(count); !fits || !l.weigh() {
		c.problemAt("offers", "order.large", "the order comes to more than can be worked out")
	}
}

// lines works out the order from each offer of the need alone.
func (w *work) lines(n *Need, c *checker) (lines []Line) {
	c.path.push("offers")
	defer c.path.pop()
	for _, i := range w.offers[n.index] {
		o := &w.job.Offers[i]
		if o.gone {
			continue
		}
		c.path.pushIndex(i)
		l := Line{Material: n.Material, Offer: o, Priced: o.Price != nil, index: i}
		l.Each, l.From = o.yield(n.Material)
		l.count(c, n.Buy, w.job.Tax)
		lines = append(lines, l)
		c.path.pop()
	}
	return lines
}

// count works out how many cover the need alone, and what they come to.
func (l *Line) count(c *checker, need Span, tax units.Ratio) {
	l.Count = Bags(need.Plan, l.Each.Plan)
	if l.Count > 0 {
		l.Count = max(l.Count, l.Offer.Least)
	}
	l.FewMany = l.fewMany(need)
	var ok bool
	if l.Volume, ok = l.Each.Plan.Times(l.Count); !ok || l.Count > maxCount {
		c.problem("volume.large", "so many of these come to more than can be worked out")
		return
	}
	l.Left = max(l.Volume-need.Plan, 0)
	if l.Priced {
		if cost, fits := l.Offer.Price.Times(l.Count); !fits || cost > units.MaxMoney {
			c.problemAt("price", "cost.large", "so many of these cost more than can be worked out")
			return
		}
		asked := l.ask(0, &Job{})
		l.Cost, l.Tax = asked.Paid(l.Count, tax)
	}
	if !l.weigh() {
		c.problemAt("weight", "weight.large", "so many of these weigh more than can be worked out")
	}
}

// fewMany are the counts for the least and the most that the need may be.
func (l *Line) fewMany(need Span) (n [2]int64) {
	n = [2]int64{Bags(need.Low, l.Each.High), Bags(need.High, l.Each.Low)}
	for i := range n {
		if n[i] > 0 {
			n[i] = max(n[i], l.Offer.Least)
		}
	}
	return n
}

// weigh works out the mass: the pack's own weight counts as given, else what
// such packs weigh, else the dry and the wet density tell.
func (l *Line) weigh() (ok bool) {
	if w := l.Offer.Weight; w > 0 {
		l.MassFrom = fromJob
		l.Mass[0], ok = w.Times(l.Count)
		l.Mass[1] = l.Mass[0]
		return ok
	}
	each, from := l.Offer.mass(l.Material, l.Each.Plan)
	l.MassFrom = from
	for i := range each {
		if l.Mass[i], ok = each[i].Times(l.Count); !ok {
			return false
		}
	}
	return true
}

// mass is what one of the offer weighs, lightest and heaviest, and where that
// comes from; zero when it is not known. loose is what one makes.
func (o *Offer) mass(m *Material, loose units.Volume) (mass [2]units.Mass, from Source) {
	if o.Weight > 0 {
		return [2]units.Mass{o.Weight, o.Weight}, fromJob
	}
	low, high, v, from := m.Dry, m.Wet, loose, m.Source
	if sealed := o.Bulk.Volume == 0 && m.PackedHigh > 0; sealed && (m.OpensLow == (units.Ratio{}) || loose > o.Pack.Volume) {
		low, high, v, from = m.PackedLow, m.PackedHigh, o.Pack.Volume, m.PackedSource
	}
	mass[0], _ = v.Mass(low) // a pack's mass fits wherever its volume does
	mass[1], _ = v.Mass(high)
	return mass, from
}

// mass is what v of the material weighs loose, dry and wet; zero when not
// known.
func (m *Material) mass(v units.Volume) (mass [2]units.Mass, ok bool) {
	mass[0], ok = v.Mass(m.Dry)
	if ok {
		mass[1], ok = v.Mass(m.Wet)
	}
	return mass, ok
}

// InStock reports whether the yard has as many as the line takes.
func (l *Line) InStock() bool { return l.Offer.Stock == nil || *l.Offer.Stock >= l.Count }
