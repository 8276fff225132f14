package order

import (
	"slices"

	"example.org/barrow/units"
)

// way is one manner of bringing the order home: all hauled, all delivered, or
// some of each. Each vehicle that it uses goes at least once.
type way struct {
	s     *search
	modes mode
	rows  []row
	mats  []*mat
	trips axis
	loads axis
	loose bool  // for thin
	low   int64 // no order of this way costs less, in scale

	base  int64   // what the present trips and loads cost, in scale
	value int64   // bound on the goods at the present charges, in scale
	use   []int64 // what the cheapest covers take of each row
	step  [2]int64
}

// axis is how many trips, or loads, there may be, and the price of each in
// scale.
type axis struct {
	least, most int64
	price       int64
}

// free is the number of trips or loads where they cost nothing: as many as
// anyone wants.
const free = 1 << 40

// axisOf returns the axis of a vehicle. Without limits, one trip is enough.
func axisOf(used bool, v vehicle, price units.Money) axis {
	switch {
	case !used:
		return axis{}
	case price == 0:
		return axis{least: free, most: free}
	case !v.limited():
		return axis{least: 1, most: 1, price: int64(price) * scale}
	}
	return axis{least: 1, most: mostDriving / int64(price), price: int64(price) * scale}
}

// usualRows is how many rows fit in the memory that is reserved for each line.
const usualRows = 6

// newWay prepares the lines and rows for m. It returns nil when some material
// cannot come that way.
func (s *search) newWay(m mode) *way {
	y := &way{s: s, modes: m}
	y.trips = axisOf(m&hauled != 0, s.r.truck(), s.r.TripCost)
	y.loads = axisOf(m&delivered != 0, s.r.van(), units.Money(s.r.fee()))
	if s.uses == nil {
		s.uses = make([]int64, len(s.lines)*usualRows)
	}
	for i := range s.lines {
		from := i * usualRows
		s.lines[i].modes, s.lines[i].use = s.lines[i].can&m, s.uses[from:from:from+usualRows]
	}
	y.makeRows()
	y.mats = make([]*mat, 0, len(s.mats))
	for i := range s.mats {
		mat := &s.mats[i]
		if !mat.narrow(len(y.rows)) {
			return nil
		}
		y.mats = append(y.mats, mat)
	}
	y.use = make([]int64, len(y.rows))
	y.cap()
	return y
}

// makeRows makes the rows of the vehicles that cost something. The others can
// go as often as needed.
func (y *way) makeRows() {
	r, t := y.s.r, table{}
	for i := range y.s.lines {
		if l := &y.s.lines[i]; l.modes != 0 {
			t.lines = append(t.lines, l)
		}
	}
	hauling, dropping := y.trips.price > 0, y.loads.price > 0
	if hauling {
		t.single(r.truck(), hauled, one, 0)
	}
	if dropping {
		t.single(r.van(), delivered, 0, one)
	}
	if hauling && dropping {
		t.total(r.truck().payload, r.van().payload, (*line).weight)
		t.total(r.truck().room, r.van().room, (*line).bulk)
		t.joint(r.truck(), r.van(), y.trips.price/scale, y.loads.price/scale)
	}
	if y.s.most != none {
		t.leftRow(y.s.most, y.s.mats)
	}
	y.rows = t.rows
}

// narrow keeps the lines that can come this way, and reports whether they cover
// the need.
func (m *mat) narrow(rows int) bool {
	m.lines, m.rows = m.lines[:0], rows
	var sum int64
	for _, l := range m.all {
		if l.modes != 0 {
			m.lines = append(m.lines, l)
			sum = plus(sum, times(l.yield, l.most))
		}
	}
	if m.pool = m.pool[:0]; m.seed != nil {
		if c := m.seeded(); c != nil {
			m.pool = append(m.pool, c)
		}
	}
	return sum >= m.target
}

// seeded is the cover that the aim settled on; nil when it has lines that
// cannot come this way.
func (m *mat) seeded() *cover {
	c := &cover{use: make([]int64, m.rows)}
	over := -m.target - m.slack
	for _, p := range m.seed {
		l := m.all[p.at]
		at := slices.Index(m.lines, l)
		if at < 0 {
			return nil
		}
		c.add(l, at, p.count)
		over += p.count * l.yield
	}
	c.left = max(0, over)
	return c
}

// cap limits the charges so that no sum of them overflows an int64.
func (y *way) cap() {
	const room = 1 << 57
	for k := range y.rows {
		sum := int64(one)
		for _, m := range y.mats {
			for _, l := range m.lines {
				sum = plus(sum, times(l.widest(m.target), l.use[k]))
			}
		}
		y.rows[k].top = room / int64(len(y.rows)) / up(sum, one)
	}
}

// widest is the largest count that the walk tries.
func (l *line) widest(target int64) int64 {
	n := max(up(target, l.yield), l.least)
	if last := len(l.steps) - 1; last >= 0 {
		n = max(n, l.steps[last].From)
	}
	return min(n, l.most)
}

// search goes through the numbers of loads, and for each through the trips.
func (y *way) search() {
	y.evaluate()
	if y.missing() {
		return
	}
	for _, m := range y.mats {
		m.free, m.freeFloor = m.best, m.floor
	}
	y.ship()
	y.sweep()
	if y.low > y.s.limit() {
		return
	}
	if y.loads.least > y.loads.most || y.trips.least > y.trips.most {
		return
	}
	for n := y.loads.least; n <= y.loads.most; n++ {
		if y.alongTrips(n) {
			return
		}
		if y.s.work > y.s.budget {
			y.s.open = min(y.s.open, y.low)
			return
		}
	}
}

// missing reports whether some material has no cover that the aim allows. If
// the work ran out before one was found, the way counts as not ruled out.
func (y *way) missing() bool {
	for _, m := range y.mats {
		if m.best == nil {
			if m.floor > 0 {
				y.s.open = min(y.s.open, y.low)
			}
			return true
		}
	}
	return false
}

// alongTrips tries every number of trips that could be better than the best
// order. It reports whether all of them were ruled out by charges that also
// rule out more loads.
func (y *way) alongTrips(loads int64) (last bool) {
	last = true
	for trips := y.trips.least; trips <= y.trips.most; {
		if y.s.work > y.s.budget {
			return false // search notices that the work ran out
		}
		y.s.work += 1 + int64(len(y.mats)) // there may be millions of trips
		y.aim(trips, loads)
		over := y.pair(trips, loads)
		last = last && over > 0 && y.step[1] <= y.loads.price
		switch {
		case over <= 0:
			trips++
		case y.step[0] <= y.trips.price:
			return last
		default:
			trips += max(1, over/(y.step[0]-y.trips.price))
		}
	}
	return last
}

// aim sets the limits of the rows, and the base price, for so many trips and
// loads.
func (y *way) aim(trips, loads int64) {
	y.base = times(trips, y.trips.price) + times(loads, y.loads.price)
	for k := range y.rows {
		r := &y.rows[k]
		r.most = plus(r.flat, plus(times(r.trip, trips), times(r.load, loads)))
	}
}

// pair looks for a better order with so many trips and loads. When the bound is
// above the best order, it returns by how much, and step holds what one trip
// and one load are charged in it: alongTrips skips ahead by that.
func (y *way) pair(trips, loads int64) (over int64) {
	y.ascend(trips, loads)
	if over = y.base + y.value - y.s.limit(); over > 0 {
		return over
	}
	if !y.exhaust(trips, loads) {
		y.s.open = min(y.s.open, y.base+y.value)
	}
	return 0
}

// limit is the cost of the best order, in scale; without one it is more than
// any order costs.
func (s *search) limit() int64 {
	if s.best.counts == nil {
		return none >> 1
	}
	return s.best.cost * scale
}
