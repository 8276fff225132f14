package order

import (
	"slices"

	"example.org/barrow/units"
)

// Item is a number of identical packs. Neither mass nor room is divided.
type Item struct {
	Count int64
	Mass  units.Mass   // of one
	Room  units.Volume // of one
}

// Trip is one fill of a vehicle that goes out Times times.
type Trip struct {
	Counts []int64 // by item
	Times  int64
}

// Packing says which pack goes on which trip. The zero value carries nothing.
type Packing struct {
	Trips []Trip
	Count int64 // how many trips there are in all
	Least int64 // no packing has fewer
}

// Proven reports whether no packing needs fewer trips.
func (p *Packing) Proven() bool { return p.Count == p.Least }

// Pack puts every pack on exactly one trip, none over payload or room, in the
// fewest trips. A payload or room of zero is no limit. Least is proven, and
// equals Count except for large counts of packs that fit badly. The error is an
// *Error: ErrTooHeavy when one pack is too much for a trip, with the item's
// index as its Offer, or ErrRange.
func Pack(items []Item, payload units.Mass, room units.Volume) (Packing, error) {
	if !within(payload, units.MaxMass) || !within(room, units.MaxVolume) || len(items) > mostOffers {
		return Packing{}, &Error{Code: ErrRange, Offer: -1, Material: -1}
	}
	var work int64
	v := vehicleOf(int64(payload), int64(room))
	b := loader{haul: v, work: &work}
	t := table{}
	for i, it := range items {
		if err := it.check(i, v); err != nil {
			return Packing{}, err
		}
		if it.Count > 0 {
			t.lines = append(t.lines, &line{offer: i, mass: int64(it.Mass), room: int64(it.Room), modes: hauled})
		}
	}
	t.single(v, hauled, one, 0)
	for _, l := range t.lines {
		b.add(l, items[l.offer].Count)
	}
	b.rows = t.rows
	b.ready()
	return b.fewest(len(items)), nil
}

// check refuses figures out of range and packs that no trip can take. An item of
// no packs needs no trip, however heavy it is.
func (it *Item) check(i int, v vehicle) error {
	switch {
	case it.Count < 0 || it.Count > mostCount || !within(it.Mass, units.MaxMass) || !within(it.Room, units.MaxVolume):
		return &Error{Code: ErrRange, Offer: i, Material: -1}
	case it.Count > 0 && (int64(it.Mass) > v.payload || int64(it.Room) > v.room):
		return &Error{Code: ErrTooHeavy, Offer: i, Material: -1}
	}
	return nil
}

// packBudget is the work after which Pack returns the best it has found.
const packBudget = 2_000_000

// fewest tries one trip more at a time, from the proven least up to what greedy
// filling takes.
func (b *loader) fewest(items int) (p Packing) {
	p.Least = b.atLeast()
	most, by := b.greedily()
	open := true
	for p.Count = p.Least; p.Count < most && *b.work < packBudget; p.Count++ {
		ok, sure := b.fits(p.Count, 0)
		if ok {
			p.Trips = b.trips(hauled, items)
			return p
		}
		if open = open && sure; open {
			p.Least = p.Count + 1
		}
	}
	p.Count = most
	b.greedy(hauled, by, most, 0)
	p.Trips = b.trips(hauled, items)
	return p
}

// greedily is the fewest trips that greedy filling takes, and in which
// sequence.
func (b *loader) greedily() (most int64, by int) {
	most = none
	for i := range sequences {
		b.greedy(hauled, i, none, 0)
		if n := b.sent(hauled); n < most {
			most, by = n, i
		}
	}
	return most, by
}

// sent is how many vehicles of mode m the fills take.
func (b *loader) sent(m mode) (n int64) {
	for i := range b.fills {
		if b.fills[i].mode == m {
			n += b.fills[i].times
		}
	}
	return n
}

// atLeast is the fewest trips that pass every row.
func (b *loader) atLeast() int64 {
	n := int64(min(1, len(b.kinds)))
	for k := range b.rows {
		var sum int64
		for i := range b.kinds {
			sum = plus(sum, times(b.kinds[i].count, b.kinds[i].use[k]))
		}
		if b.rows[k].trip > 0 {
			n = max(n, up(sum, b.rows[k].trip))
		}
	}
	return n
}

// trips lists the fills of one vehicle.
func (b *loader) trips(m mode, offers int) []Trip {
	kinds := make([]int, len(b.kinds))
	for i := range kinds {
		kinds[i] = b.kinds[i].offer
	}
	return tripsOf(b.fills, kinds, m, offers)
}

// tripsOf lists the fills of one vehicle with counts by offer. Equal fills
// become one trip that goes more often.
func tripsOf(fills []placed, kinds []int, m mode, offers int) (out []Trip) {
	var apart []placed // those that differ
	for _, f := range fills {
		if f.mode != m {
			continue
		}
		if same := slices.IndexFunc(apart, func(g placed) bool { return slices.Equal(f.counts, g.counts) }); same >= 0 {
			out[same].Times += f.times
			continue
		}
		t := Trip{Counts: make([]int64, offers), Times: f.times}
		for _, p := range f.counts {
			t.Counts[kinds[p.at]] = p.count
		}
		apart, out = append(apart, f), append(out, t)
	}
	return out
}

// truck is the grower's vehicle.
func (r *Request) truck() vehicle { return vehicleOf(int64(r.Payload), int64(r.Room)) }

// van is the yard's vehicle.
func (r *Request) van() vehicle {
	if r.Delivery == nil {
		return vehicle{}
	}
	return vehicleOf(int64(r.Delivery.Payload), int64(r.Delivery.Capacity))
}

// vehicleOf turns a limit of zero into no limit.
func vehicleOf(payload, room int64) vehicle {
	v := vehicle{payload: payload, room: room}
	if payload == 0 {
		v.payload = none
	}
	if room == 0 {
		v.room = none
	}
	return v
}
