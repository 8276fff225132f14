package yard

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Option is one order to choose from: no other is better on cost and as good on
// what is left over, or the other way round.
type Option struct {
	Bill  Bill
	Left  units.Volume // of all materials
	Packs int64        // lifted by hand
	Trips int64
	Lines []Line
}

// Options lists up to most orders between the lowest cost and the least left
// over, by rising cost. It is empty when there is no order.
func (t *Terms) Options(needs []Need, most int) (list []Option) {
	var r doc.Reader
	q := t.request(&r, needs)
	if q == nil || r.Err() != nil {
		return nil
	}
	q.Budget = 5 * smallBudget
	q.whole(q.finest())
	found, err := order.Frontier(q.Request, most)
	if err != nil {
		return nil
	}
	for i := range found {
		o := q.answer(&r, &found[i])
		list = append(list, Option{o.Bill, leftOver(o.Lines), found[i].Packs, found[i].Trips, o.Lines})
	}
	return list
}

// leftOver is what lines buy over the needs, of all materials.
func leftOver(lines []Line) (left units.Volume) {
	for i := range lines {
		left += lines[i].Left // each is part of an order that fits
	}
	return left
}
