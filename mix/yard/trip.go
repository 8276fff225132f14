package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Trip is one loaded drive, or one load that the yard delivers, and how often
// it is made.
type Trip struct {
	Packs  []TripPack
	Times  int64
	Mass   [2]units.Mass // lightest and heaviest; zero when not known
	Volume units.Volume  // loose
	Packed units.Volume  // as carried
	Limit  string        // the limit it is closer to, "weight" or "room"; "" without limits
}

// TripPack is a number of packs of one offer on a trip.
type TripPack struct {
	Material *catalog.Material
	Offer    *Offer
	Count    int64
}

// trips turns the search's trips into drives and deliveries of the job.
func (q *request) trips(found *order.Order) (drives, drops []Trip) {
	h := &q.terms.Haul
	for i := range found.Drives {
		drives = append(drives, q.trip(&found.Drives[i], h.Limit(), h.Room))
	}
	for i := range found.Drops {
		drops = append(drops, q.trip(&found.Drops[i], q.terms.Delivery.Payload, q.terms.Delivery.Capacity))
	}
	return drives, drops
}

// trip works out one trip: its packs, its mass and the room that it takes.
func (q *request) trip(t *order.Trip, payload units.Mass, room units.Volume) Trip {
	out := Trip{Times: t.Times}
	known := true
	for k, n := range t.Counts {
		if n == 0 {
			continue
		}
		l := &q.lines[k]
		out.Packs = append(out.Packs, TripPack{l.Material, l.Offer, n})
		each, _ := l.Offer.Mass(l.Material, l.Each.Plan)
		known = known && each[1] > 0
		for i := range each { // a part of the order, which fits
			out.Mass[i] += each[i] * units.Mass(n)
		}
		out.Volume += l.Each.Plan * units.Volume(n)
		out.Packed += l.Offer.Size().Volume * units.Volume(n)
	}
	if !known {
		out.Mass, payload = [2]units.Mass{}, 0
	}
	out.Limit = nearer(out.Mass[1], payload, out.Packed, room)
	return out
}

// nearer names the limit that the load is closer to.
func nearer(mass, payload units.Mass, packed, room units.Volume) string {
	var byMass, byRoom float64
	if payload > 0 {
		byMass = float64(mass) / float64(payload)
	}
	if room > 0 {
		byRoom = float64(packed) / float64(room)
	}
	switch {
	case payload == 0 && room == 0:
		return ""
	case byMass >= byRoom:
		return "weight"
	}
	return "room"
}

// dryTrips is how many drives the hauled packs take when they are at their
// lightest.
func (o *Order) dryTrips(h *Haul) int64 {
	var items []order.Item
	for i := range o.Lines {
		l := &o.Lines[i]
		each, _ := l.Offer.Mass(l.Material, l.Each.Plan)
		items = append(items, order.Item{Count: l.Count - l.Delivered, Mass: each[0], Room: l.Offer.Size().Volume})
	}
	packed, err := order.Pack(items, h.Limit(), h.Room)
	if err != nil {
		return 0 // not known: more packs than can be worked out
	}
	return packed.Count
}

// countTrips counts all trips, each as often as it is made.
func countTrips(trips []Trip) (n int64) {
	for i := range trips {
		n += trips[i].Times
	}
	return n
}
