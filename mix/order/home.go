package order

import (
	"slices"

	"example.org/barrow/units"
)

// home decides which pack goes on which trip or load. Among ways that cost the
// same it takes the one with the fewest trips, then the fewest loads, as far as
// fits can tell. Otherwise it keeps the way that the search found.
func (s *search) home(o *Order) {
	offers := len(s.r.Offers)
	if !s.rehome(o) {
		o.Drives = tripsOf(s.best.fills, s.best.kinds, hauled, offers)
		o.Drops = tripsOf(s.best.fills, s.best.kinds, delivered, offers)
	}
	o.Trips, o.Loads = number(o.Drives), number(o.Drops)
	o.Haul, o.Deliver = tally(o.Drives, offers), tally(o.Drops, offers)
	o.Driving = units.Money(o.Trips) * s.r.TripCost
	o.Fees = units.Money(o.Loads * s.r.fee())
}

// rehome looks for fewer trips and loads at the same cost. Where only trips are
// paid for, the search has already found the fewest.
func (s *search) rehome(o *Order) bool {
	if len(s.best.fills) > 0 && s.r.Delivery == nil && s.r.TripCost > 0 {
		return false
	}
	b := s.newLoader()
	if !s.cheapestHome(b) {
		return false
	}
	offers := len(s.r.Offers)
	o.Drives, o.Drops = b.trips(hauled, offers), b.trips(delivered, offers)
	return true
}

// number counts the trips, each as often as it goes.
func number(trips []Trip) (n int64) {
	for _, t := range trips {
		n += t.Times
	}
	return n
}

// tally counts the packs on all trips, by offer.
func tally(trips []Trip, offers int) []int64 {
	counts := make([]int64, offers)
	for _, t := range trips {
		for i, n := range t.Counts {
			counts[i] += n * t.Times
		}
	}
	return counts
}

// newLoader returns a loader with the packs of the best order and every row
// there is.
func (s *search) newLoader() *loader {
	b := &loader{haul: s.r.truck(), drop: s.r.van(), work: &s.work}
	t := table{}
	for i := range s.lines {
		l := &s.lines[i]
		if n := s.best.counts[l.offer]; n > 0 {
			l.use, l.modes = nil, l.can
			t.lines = append(t.lines, l)
			b.add(l, n)
		}
	}
	s.r.allRows(&t)
	b.rows = t.rows
	b.ready()
	return b
}

// cheapestHome leaves b with the fills for the best pair of trips and loads
// among those that cost what the search settled on.
func (s *search) cheapestHome(b *loader) bool {
	trips, loads := s.best.trips, s.best.loads
	trip, fee := int64(s.r.TripCost), s.r.fee()
	if trip == 0 {
		trips = free
	}
	if fee == 0 && s.r.Delivery != nil {
		loads = free
	}
	spent := plus(times(trip, trips), times(fee, loads))
	until := s.work + packBudget
	first := b.leastTrips()
	if fee == 0 && trip > 0 {
		first = trips // fewer would not cost what was settled on
	}
	for t := first; t <= trips && s.work < until; t++ {
		s.work++
		n, rest := loads, spent-times(trip, t)
		if fee > 0 && (rest < 0 || rest%fee != 0) {
			continue
		}
		if fee > 0 {
			n = rest / fee
		}
		if ok, _ := b.fits(t, n); ok {
			return s.fewerLoads(b, t, n)
		}
	}
	return s.fewerLoads(b, trips, loads)
}

// fewerLoads reduces the loads where they are free. Packs that fit also fit in
// more loads, so halving finds the fewest: there may be hundreds of millions.
func (s *search) fewerLoads(b *loader, trips, loads int64) bool {
	if s.r.fee() == 0 && s.r.Delivery != nil {
		b.fits(trips, loads)
		low, high := int64(0), b.sent(delivered)
		for low < high {
			s.work++
			if ok, _ := b.fits(trips, low+(high-low)/2); ok {
				high = low + (high-low)/2
			} else {
				low += (high-low)/2 + 1
			}
		}
		if ok, _ := b.fits(trips, low); ok {
			return true
		}
	}
	ok, _ := b.fits(trips, loads)
	return ok
}

// leastTrips is 1 when some pack can only be hauled, else 0.
func (b *loader) leastTrips() int64 {
	if slices.ContainsFunc(b.kinds, func(k kind) bool { return k.modes == hauled }) {
		return 1
	}
	return 0
}

// fee is the price of one load, 0 without delivery.
func (r *Request) fee() int64 {
	if r.Delivery == nil {
		return 0
	}
	return int64(r.Delivery.Fee)
}

// allRows makes the rows of both vehicles.
func (r *Request) allRows(t *table) {
	t.single(r.truck(), hauled, one, 0)
	if r.Delivery != nil {
		t.single(r.van(), delivered, 0, one)
		t.total(r.truck().payload, r.van().payload, (*line).weight)
		t.total(r.truck().room, r.van().room, (*line).bulk)
		t.joint(r.truck(), r.van(), int64(r.TripCost), r.fee())
	}
}
