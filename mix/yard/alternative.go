package yard

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Alternative is the best order that buys one of the other offers, and nothing
// else of its material. Its bill is the whole order's, tax, driving and delivery
// counted, so it can be compared with the bill of the plan.
type Alternative struct {
	Line  Line // of that offer
	Bill  Bill
	Trips int64 // drives and deliveries
	// Unproven says that the search stopped before it could show that no such
	// order costs less. Then none costs less than Bound.
	Unproven bool
	Bound    units.Money
}

// maxAlternatives is how many other offers are worked out: each takes a search, and
// all of them together have the budget of ten small ones.
const maxAlternatives = 50

// Alternatives works out an order for each of the first of others, the lines of
// [Order.Others]. It leaves out what has no price, and what has too little in
// stock to cover its need alone.
func (t *Terms) Alternatives(needs []Need, others []Line) (list []Alternative) {
	var r doc.Reader
	q := t.request(&r, needs)
	if q == nil || r.Err() != nil {
		return nil
	}
	q.whole(q.finest())
	q.Budget = 10 * smallBudget / int64(min(max(len(others), 10), maxAlternatives))
	for i := range others {
		if l := &others[i]; l.Priced && l.InStock() && len(list) < maxAlternatives {
			if a, ok := q.only(&r, l.index); ok {
				list = append(list, a)
			}
		}
	}
	return list
}

// only finds the best order that has one offer alone of its material. ok is false
// when there is none, or the offer was not asked for.
func (q *request) only(r *doc.Reader, index int) (a Alternative, ok bool) {
	one := request{Request: q.Request}
	one.Offers = nil
	at, material := -1, q.materialAt(index)
	for k := range q.Offers {
		if q.Offers[k].Material == material && q.offers[k] != index {
			continue
		}
		if q.offers[k] == index {
			at = len(one.Offers)
			a.Line = q.lines[k]
		}
		one.Offers = append(one.Offers, q.Offers[k])
	}
	if at < 0 {
		return a, false
	}
	found, err := order.Search(one.Request)
	if err != nil {
		return a, false
	}
	count := found.Haul[at] + found.Deliver[at]
	a.Line.take(r, count, found.Deliver[at], &one.Offers[at], q.terms.Tax)
	a.Line.Left, a.Line.Last = max(a.Line.Volume-q.needs[material].Buy.Plan, 0), true
	a.Bill, a.Trips, a.Unproven, a.Bound = billOf(&found), found.Trips+found.Loads, !found.Proven, found.Bound
	return a, r.Err() == nil
}

// materialAt is the search's material of one of the job's offers, or -1.
func (q *request) materialAt(index int) int {
	for k := range q.Offers {
		if q.offers[k] == index {
			return q.Offers[k].Material
		}
	}
	return -1
}
