package yard

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Option is an order worth looking at: no other is better on both cost and what
// is left over.
type Option struct {
	Bill  Bill
	Left  units.Volume // of all materials
	Packs int64        // lifted by hand
	Trips int64
	Lines []Line
}

// Options lists the orders between the least cost and the least left over, at
// most so many, by rising cost. It is empty when there is no order.
func (t *Terms) Options(needs []Need, most int) (list []Option) {
	var r doc.Reader
	q := t.request(&r, needs)
	if q == nil || r.Err() != nil {
		return nil
	}
	q.Budget = 5 * aLittle
	found, err := order.Frontier(q.Request, most)
	if err != nil {
		return nil
	}
	for i := range found {
		o := q.lay(&r, &found[i])
		list = append(list, Option{o.Bill, found[i].LeftOver(), found[i].Packs, found[i].Trips, o.Lines})
	}
	return list
}
