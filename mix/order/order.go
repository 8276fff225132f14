package order

import (
	"cmp"
	"slices"

	"example.org/barrow/units"
)

// Order is how many of each offer to buy and how to bring them home. Slices by
// offer and by material are as long as the request's. The zero value buys
// nothing.
type Order struct {
	Haul, Deliver []int64 // counts by offer
	Drives        []Trip  // what goes on each drive, counts by offer
	Drops         []Trip  // what comes with each delivery, counts by offer
	Trips, Loads  int64   // how many of those

	Goods   units.Money // prices times counts
	Tax     units.Money // each line rounded half up
	Driving units.Money // TripCost times Trips
	Fees    units.Money // Fee times Loads
	Cost    units.Money // the sum of the four
	Deposit units.Money // comes back, so it is no part of Cost

	Left  []units.Volume // bought over the need, by material
	Packs int64          // lifted by hand

	Proven bool        // no other order is better by the aim
	Bound  units.Money // no order that is as good by the aim costs less
	Work   int64       // units of work that the search took
}

// Pay is what has to be paid at first: Cost and the deposits.
func (o *Order) Pay() units.Money { return o.Cost + o.Deposit }

// LeftOver is what is bought beyond all needs. Past the range of a Volume it is
// the largest Volume.
func (o *Order) LeftOver() units.Volume {
	var sum int64
	for _, v := range o.Left {
		sum = plus(sum, int64(v))
	}
	return units.Volume(sum)
}

// found is an order during the search.
type found struct {
	cost, left, packs int64
	trips, loads      int64
	counts            []int64 // by offer
	kinds             []int   // offers of the fills' counts
	fills             []placed
}

// before reports whether f comes before g in the total order: cost, left over,
// packs lifted, then counts by offer. Orders with the same counts and cost are
// equal in it; home then chooses their trips.
func (f *found) before(g *found) bool {
	if g.counts == nil {
		return true
	}
	return cmp.Or(f.figures(g), slices.Compare(f.counts, g.counts)) < 0
}

// figures compares what the total order looks at before the counts.
func (f *found) figures(g *found) int {
	return cmp.Or(cmp.Compare(f.cost, g.cost), cmp.Compare(f.left, g.left), cmp.Compare(f.packs, g.packs))
}
