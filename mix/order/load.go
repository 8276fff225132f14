package order

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/stable"
)

// kind is a number of identical packs to load.
type kind struct {
	*line
	count int64
	size  int64 // the larger of its parts of a vehicle
}

// placed is one fill of a vehicle and how often it goes.
type placed struct {
	mode   mode
	counts []pick // of the kinds that are on it
	times  int64
}

// loader packs kinds into a number of trips and loads.
type loader struct {
	haul, drop vehicle
	rows       []row
	kinds      []kind
	left       []int64 // by kind, not yet placed
	fills      []placed
	load       []pick          // for fill
	spare      []pick          // stock for keep
	order      []int           // for sequence
	keys       []int64         // for sequence
	key        []byte          // for state
	failed     map[string]bool // what does not go in, by state
	work       *int64
	until      int64
}

// vehicle returns the vehicle of a mode.
func (b *loader) vehicle(m mode) vehicle {
	if m == hauled {
		return b.haul
	}
	return b.drop
}

// add adds count packs of l.
func (b *loader) add(l *line, count int64) {
	k := kind{line: l, count: count}
	for _, m := range []mode{hauled, delivered} {
		if v := b.vehicle(m); l.modes&m != 0 {
			k.size = max(k.size, muldiv(l.mass, one, v.payload), muldiv(l.room, one, v.room))
		}
	}
	b.kinds = append(b.kinds, k)
}

// ready sorts the kinds, the largest first; among equals, the first offer
// first.
func (b *loader) ready() {
	stable.Sort(b.kinds, func(x, y kind) int {
		return cmp.Or(cmp.Compare(y.size, x.size), cmp.Compare(x.offer, y.offer))
	})
}

// fits reports whether that many trips and loads are enough, and leaves the
// fills in b. Greedy filling in several sequences answers most questions; only
// then is every fill tried. sure is false when the work ran out before the
// answer.
func (b *loader) fits(trips, loads int64) (ok, sure bool) {
	b.reset()
	if !b.possible(trips, loads) {
		return false, true
	}
	for by := range b.sequences() {
		if b.greedy(delivered, by, trips, loads) {
			return true, true
		}
		if loads > 0 && trips > 0 && b.greedy(hauled, by, trips, loads) {
			return true, true
		}
	}
	if times(min(plus(trips, loads), b.packs()), int64(len(b.kinds))) > deepest {
		return false, false
	}
	b.reset()
	b.until, b.failed = *b.work+packWork, map[string]bool{}
	ok = b.place(trips, loads)
	return ok, ok || *b.work <= b.until
}

// packs counts all packs.
func (b *loader) packs() (n int64) {
	for i := range b.kinds {
		n += b.kinds[i].count
	}
	return n
}

// deepest limits the exact answer to this many fills times kinds: it recurses
// once for each, and a browser's stack is small.
const deepest = 3000

// packWork is the work that one call of fits may take.
const packWork = 100_000

// reset unloads everything.
func (b *loader) reset() {
	b.fills, b.left = b.fills[:0], b.left[:0]
	for i := range b.kinds {
		b.left = append(b.left, b.kinds[i].count)
	}
}

// possible reports whether what is left passes every row. It is necessary for
// loading, not sufficient.
func (b *loader) possible(trips, loads int64) bool {
	for k := range b.rows {
		r := &b.rows[k]
		room := plus(r.flat, plus(times(r.trip, trips), times(r.load, loads)))
		for i := range b.kinds {
			if room -= b.left[i] * b.kinds[i].use[k]; room < 0 {
				return false
			}
		}
	}
	return true
}

// greedy fills one vehicle after another, the largest packs first, and repeats
// each fill as often as the packs allow.
func (b *loader) greedy(first mode, by int, trips, loads int64) bool {
	b.reset()
	order := b.sequence(by)
	for _, m := range []mode{first, hauled + delivered - first} {
		number := trips
		if m == delivered {
			number = loads
		}
		for number > 0 {
			*b.work += 1 + went(len(order))
			p := b.fill(m, order, number, m == first)
			if p.times == 0 {
				break
			}
			number -= p.times
			b.fills = append(b.fills, p)
			if len(order) > few {
				order = slices.DeleteFunc(order, func(i int) bool { return b.left[i] == 0 })
			}
		}
	}
	return !slices.ContainsFunc(b.left, func(n int64) bool { return n > 0 })
}

// sequences is how many sequences of filling are tried by a property of the
// packs, and shuffles how many random ones near the first.
const (
	sequences = 3
	shuffles  = 24
)

// sequences is how many sequences of filling are tried. With many kinds one more
// takes longer, and is less likely to be better.
func (b *loader) sequences() int { return sequences + shuffles*few/max(few, len(b.kinds)) }

// sequence returns the order of filling: by size, by mass, by room, or by size
// with some chance in it. The chance is the same every time, so the answer is
// too.
func (b *loader) sequence(by int) []int {
	order, keys := b.order[:0], b.keys[:0]
	chance := uint64(by) * 0x9e3779b97f4a7c15
	for i := range b.kinds {
		k := &b.kinds[i]
		key := k.size
		switch {
		case by == 1:
			key = k.mass
		case by == 2:
			key = k.room
		case by >= sequences:
			chance = chance*6364136223846793005 + 1442695040888963407
			key = k.size * int64(8+chance>>60)
		}
		order, keys = append(order, i), append(keys, key)
	}
	b.order, b.keys = order, keys
	stable.Sort(order, func(i, k int) int { return cmp.Compare(keys[k], keys[i]) })
	return order
}

// fill loads one vehicle. With choosy, packs that can only go in this one come
// before those that can go in either.
func (b *loader) fill(m mode, order []int, most int64, choosy bool) placed {
	v, p := b.vehicle(m), placed{mode: m, counts: b.load[:0]}
	for _, must := range []bool{true, false} {
		for _, i := range order {
			if k := &b.kinds[i]; k.modes&m != 0 && (choosy && k.modes != m) != must {
				if n := v.holds(k.line, b.left[i]); n > 0 {
					p.counts = append(p.counts, pick{i, n})
					v = v.less(k.line, n)
				}
			}
		}
		if !choosy {
			break
		}
	}
	for i, k := range p.counts {
		if times := b.left[k.at] / k.count; i == 0 || times < p.times {
			p.times = times
		}
	}
	p.times = min(p.times, most)
	for _, k := range p.counts {
		b.left[k.at] -= k.count * p.times
	}
	b.load, p.counts = p.counts, b.keep(p.counts)
	return p
}

// holds is how many of l, up to n, fit in the free part of v.
func (v vehicle) holds(l *line, n int64) int64 {
	if l.mass > 0 && v.payload != none {
		n = min(n, v.payload/l.mass)
	}
	if l.room > 0 && v.room != none {
		n = min(n, v.room/l.room)
	}
	return n
}

// less is v after loading n of l.
func (v vehicle) less(l *line, n int64) vehicle {
	if v.payload != none {
		v.payload -= n * l.mass
	}
	if v.room != none {
		v.room -= n * l.room
	}
	return v
}

// keep copies a load into a block allocated for many, in the sequence of the kinds.
func (b *loader) keep(load []pick) []pick {
	n := len(load)
	if len(b.spare) < n {
		b.spare = make([]pick, max(256, n))
	}
	kept := b.spare[:n:n]
	b.spare = b.spare[n:]
	copy(kept, load)
	stable.Sort(kept, func(x, y pick) int { return cmp.Compare(x.at, y.at) })
	return kept
}

// place loads what is left, exactly. The largest pack left must go in some
// vehicle, so that vehicle is filled in every way that leaves no room for
// another pack. States that failed once are not tried again.
func (b *loader) place(trips, loads int64) bool {
	first := slices.IndexFunc(b.left, func(n int64) bool { return n > 0 })
	if first < 0 {
		return true
	}
	if *b.work++; *b.work > b.until || !b.possible(trips, loads) {
		return false
	}
	key := b.state(trips, loads)
	if b.failed[key] {
		return false
	}
	for _, m := range []mode{hauled, delivered} {
		number := trips
		if m == delivered {
			number = loads
		}
		if number == 0 || b.kinds[first].modes&m == 0 {
			continue
		}
		f := filling{b: b, mode: m, first: first, trips: trips, loads: loads, counts: make([]int64, len(b.kinds))}
		if m == hauled {
			f.trips--
		} else {
			f.loads--
		}
		at := len(b.fills)
		b.fills = append(b.fills, placed{mode: m, times: 1})
		if f.from(first, b.vehicle(m)) {
			b.fills[at].counts = picksOf(f.counts)
			return true
		}
		b.fills = b.fills[:at]
	}
	if *b.work <= b.until {
		b.failed[key] = true
	}
	return false
}

// picksOf lists the counts that are not zero.
func picksOf(counts []int64) (list []pick) {
	for i, n := range counts {
		if n > 0 {
			list = append(list, pick{i, n})
		}
	}
	return list
}

// state encodes what is left for so many vehicles as a key of failed.
func (b *loader) state(trips, loads int64) string {
	key := b.key[:0]
	add := func(n int64) {
		for ; n >= 128; n >>= 7 {
			key = append(key, byte(n)|128)
		}
		key = append(key, byte(n))
	}
	add(trips)
	add(loads)
	for _, n := range b.left {
		add(n)
	}
	b.key = key
	return string(key)
}

// filling goes through the fills of one vehicle.
type filling struct {
	b            *loader
	mode         mode
	first        int
	trips, loads int64 // after this one
	counts       []int64
}

// from tries every count of the kinds from i on, the largest first.
func (f *filling) from(i int, v vehicle) bool {
	b := f.b
	if i == len(b.kinds) {
		return !f.roomy(v) && b.place(f.trips, f.loads)
	}
	if b.left[i] == 0 || b.kinds[i].modes&f.mode == 0 {
		return f.from(i+1, v)
	}
	least := int64(0)
	if i == f.first {
		least = 1
	}
	l := b.kinds[i].line
	for n := v.holds(l, b.left[i]); n >= least; n-- {
		if *b.work++; *b.work > b.until {
			return false
		}
		b.left[i] -= n
		f.counts[i] = n
		if f.from(i+1, v.less(l, n)) {
			return true
		}
		b.left[i] += n
	}
	f.counts[i] = 0
	return false
}

// roomy reports whether another pack would fit. Such a fill is never needed:
// with the pack added it leaves less for the other vehicles.
func (f *filling) roomy(v vehicle) bool {
	for i := range f.b.kinds {
		if k := &f.b.kinds[i]; f.b.left[i] > 0 && k.modes&f.mode != 0 && v.holds(k.line, 1) > 0 {
			return true
		}
	}
	return false
}
