package order

import (
	"math/bits"
	"slices"
)

// The rows are priced: each is given a charge per part, every material is
// covered at its least with the charges added, and what the rows allow is taken
// off again. For any charges that is a bound on the goods (a Lagrangian
// relaxation); ascend looks for charges that make it high.

// evaluate covers every material at the present charges and sets the bound.
func (y *way) evaluate() {
	for _, m := range y.mats {
		y.cheapest(m)
	}
	y.sum()
}

// sum adds up the materials and subtracts what the rows allow. The result,
// value, is a lower bound on the goods for the present trips and loads; use is
// what the cheapest covers take of each row.
func (y *way) sum() {
	clear(y.use)
	sum := int64(0)
	for _, m := range y.mats {
		sum += m.floor - m.lifted()
		if m.best != nil {
			for k, u := range m.best.use {
				y.use[k] += u
			}
		}
	}
	y.value = sum
	always := sum
	y.step = [2]int64{}
	for k := range y.rows {
		r := &y.rows[k]
		if r.charge > 0 {
			y.value = max(y.value-part(r.charge, r.most), -none>>2)
			always -= part(r.charge, r.flat)
			y.step[0] += part(r.charge, r.trip)
			y.step[1] += part(r.charge, r.load)
		}
	}
	y.bound(always)
}

// part returns charge times share, rounded up.
func part(charge, share int64) int64 {
	hi, lo := bits.Mul64(uint64(charge), uint64(share))
	lo, carry := bits.Add64(lo, one-1, 0)
	hi += carry
	if hi >= one>>1 {
		return none >> 2
	}
	return int64(hi<<44 | lo>>20)
}

// bound raises low, the bound on every order of this way, when the charges per
// trip and per load are not above what a trip and a load cost: then more of
// them never lower the sum.
func (y *way) bound(sum int64) {
	trip, load := y.trips.price-y.step[0], y.loads.price-y.step[1]
	if trip >= 0 && load >= 0 {
		y.low = max(y.low, sum+times(trip, y.trips.least)+times(load, y.loads.least))
	}
}

// cheapest finds the cover of m with the lowest charge, or bounds it when the
// work runs out. It starts from the pool of covers that were cheapest at other
// charges, because a good first cover cuts off most of the walk.
func (y *way) cheapest(m *mat) {
	w := &y.s.walk
	w.start(m, y.rows)
	m.best, w.best = nil, nil
	w.limit, w.every, w.ties = none>>2, false, y.uncharged()
	w.until = plus(y.s.work, coverWork)
	for _, c := range m.pool {
		c.charged = w.charged(c, y.rows)
		if m.best == nil || c.charged < m.best.charged || c.charged == m.best.charged && c.compare(m.best) < 0 {
			m.best = c
		}
	}
	if m.best != nil {
		w.best, w.limit = m.best, m.best.charged
		if !w.ties {
			w.limit--
		}
	}
	w.from(0, m.target, 0)
	if w.best != nil && w.best != m.best {
		m.best = w.best
		m.pool = append(m.pool, w.best)
	}
	m.floor = w.floor()
}

// floor is a charge that no cover is below; 0 when there is no cover. A walk
// that was cut short falls back on the best rate.
func (w *walk) floor() int64 {
	if w.cut {
		return max(1, worth(w.m.target, w.stops[0].rate))
	}
	if w.best == nil {
		return 0
	}
	return w.best.charged
}

// lifted is the charge that every cover of m has for lifting. It only steers
// the walk, so sum takes it off again.
func (m *mat) lifted() int64 {
	if m.lift == 0 {
		return 0
	}
	return m.mostPacks * m.lift
}

// coverWork is the work that the cheapest cover of one material may take.
const coverWork = 50_000

// charged returns what c costs at the charges of rows.
func (w *walk) charged(c *cover, rows []row) int64 {
	sum := c.cost * scale
	for _, p := range c.counts {
		l := w.m.lines[p.at]
		sum += p.count * (charge(l.use, rows) + l.hand*w.m.lift)
	}
	return sum
}

// uncharged reports whether no row has a charge: then the covers are known
// already.
func (y *way) uncharged() bool {
	return !slices.ContainsFunc(y.rows, func(r row) bool { return r.charge > 0 })
}

// ascend sets the charges that make the bound highest. It goes row by row while
// that helps. Where it does not, it moves along all rows at once, because row
// by row gets stuck on an edge.
func (y *way) ascend(trips, loads int64) {
	if y.uncharged() {
		y.discharge()
	} else {
		y.evaluate()
	}
	y.tryHome(trips, loads)
	for range 6 {
		if y.uncharged() && y.fullest() < 0 {
			return
		}
		before := y.value
		for k := range y.rows {
			if y.over() {
				return
			}
			y.raise(k)
			y.tryHome(trips, loads)
		}
		if len(y.rows) < 2 || y.over() {
			return
		}
		if y.value == before && !y.slide() {
			return
		}
	}
}

// sweep charges one row at a time what a part of a trip or load costs, which
// bounds every number of them at once, and tries the covers that are cheapest
// then. It leaves the charges with the best bound.
func (y *way) sweep() {
	best := -1
	for k := range y.rows {
		if y.modes != hauled|delivered && k != y.heaviest() {
			continue
		}
		if y.s.best.counts != nil && y.s.work > y.s.budget {
			break
		}
		low := y.low
		y.only(k)
		if y.evaluate(); y.low > low {
			best = k
		}
		y.ship()
	}
	y.only(best)
}

// only charges row k alone, as much as a trip or load is worth; -1 clears all
// charges.
func (y *way) only(k int) {
	for i := range y.rows {
		y.rows[i].charge = 0
	}
	if k < 0 {
		return
	}
	r := &y.rows[k]
	charge := r.top
	if r.trip > 0 {
		charge = min(charge, muldiv(y.trips.price, one, r.trip))
	}
	if r.load > 0 {
		charge = min(charge, muldiv(y.loads.price, one, r.load))
	}
	r.charge = charge
}

// heaviest is the row that the covers without charges use most.
func (y *way) heaviest() int {
	at, most := -1, int64(-1)
	for k := range y.rows {
		var use int64
		for _, m := range y.mats {
			use += m.free.use[k]
		}
		if use > most && y.rows[k].flat == 0 {
			at, most = k, use
		}
	}
	return at
}

// over reports whether the bound rules out the present trips and loads.
func (y *way) over() bool { return y.base+y.value > y.s.limit() }

// slide takes steps along the slopes of all rows towards a bound as high as the
// best order, and keeps the highest point. A step that does not improve halves
// the next one. It reports whether the bound rose.
func (y *way) slide() bool {
	start := y.value
	high, at := start, y.charges(nil)
	part := int64(1)
	for range 16 {
		y.slip(part)
		if y.evaluate(); y.value > high {
			high, at = y.value, y.charges(at[:0])
			if y.over() {
				return true
			}
		} else {
			part *= 2
		}
	}
	for k := range y.rows {
		y.rows[k].charge = at[k]
	}
	y.evaluate()
	return high > start
}

// charges appends the charge of every row.
func (y *way) charges(at []int64) []int64 {
	for k := range y.rows {
		at = append(at, y.rows[k].charge)
	}
	return at
}

// slip moves every charge along its slope, by as much as would take the bound
// to the best order's cost if it were straight; part divides that step. The
// arithmetic is in whole numbers, scaled to the steepest slope.
func (y *way) slip(part int64) {
	const fine = 1 << 20
	steep := int64(1)
	for k := range y.rows {
		steep = max(steep, y.spot(k).climb())
	}
	squares := int64(0)
	for k := range y.rows {
		g := muldiv(y.spot(k).climb(), fine, steep)
		squares += g * g
	}
	gap := min(y.s.limit()-y.base-y.value, 1<<40) / part
	for k := range y.rows {
		p, r := y.spot(k), &y.rows[k]
		g := muldiv(p.climb(), fine, steep)
		move := muldiv(muldiv(gap, g*fine, max(1, squares)), one, steep)
		if p.slope < 0 {
			r.charge = max(0, r.charge-move)
		} else {
			r.charge = min(r.top, plus(r.charge, move))
		}
	}
}

// climb is the size of the slope. A downward slope at no charge counts as zero,
// because a charge cannot be negative.
func (p spot) climb() int64 {
	if p.slope < 0 && p.charge == 0 {
		return 0
	}
	return max(p.slope, -p.slope)
}

// discharge removes all charges and restores the covers without charges, which
// were kept.
func (y *way) discharge() {
	for k := range y.rows {
		y.rows[k].charge = 0
	}
	for _, m := range y.mats {
		m.best, m.floor = m.free, m.freeFloor
	}
	y.sum()
}

// fullest is the row that is furthest over its limit, or -1.
func (y *way) fullest() int {
	at, over := -1, int64(0)
	for k := range y.rows {
		if d := y.use[k] - y.rows[k].most; d > over {
			at, over = k, d
		}
	}
	return at
}

// spot is the bound at one charge of a row: its value, and its slope, which is
// how much more is used than the limit.
type spot struct{ charge, value, slope int64 }

// raise finds the charge of row k with the highest bound while the other
// charges stay. The bound is concave in the charge, so two tangents with slopes
// of opposite sign meet above the top.
func (y *way) raise(k int) {
	start := y.spot(k)
	switch {
	case start.slope > 0:
		y.narrow(k, start, y.climb(k, start))
	case start.slope < 0 && start.charge > 0:
		y.narrow(k, y.at(k, 0), start)
	}
}

// climb goes up, four times as far each time, to a charge at which row k is not
// over its limit.
func (y *way) climb(k int, low spot) (high spot) {
	top := y.rows[k].top
	charge := max(y.trips.price, y.loads.price, scale, 2*low.charge)
	for {
		high = y.at(k, min(charge, top))
		if high.slope <= 0 || high.charge == top || y.over() {
			return high
		}
		charge = high.charge * 4
	}
}

// narrow moves low and high together, to where their tangents meet, at most
// twelve times, and leaves row k at the best charge seen. The bound holds at
// any charge, so stopping early only makes it weaker.
func (y *way) narrow(k int, low, high spot) {
	best := low.higher(high)
	for range 12 {
		if low.slope <= 0 || high.slope >= 0 || y.base+best.value > y.s.limit() {
			break
		}
		meet := low.meet(high)
		if meet <= low.charge || meet >= high.charge {
			break
		}
		mid := y.at(k, meet)
		if best = best.higher(mid); mid.slope > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	y.at(k, best.charge)
}

// higher returns the spot with the higher bound.
func (p spot) higher(q spot) spot {
	if q.value > p.value {
		return q
	}
	return p
}

// meet returns the charge at which the tangents of two spots meet, rounded
// down.
func (p spot) meet(q spot) int64 {
	fall := -q.slope
	d := muldiv(q.charge-p.charge, fall, p.slope+fall)
	if rise := q.value - p.value; rise >= 0 {
		return p.charge + d + muldiv(rise, one, p.slope+fall)
	} else {
		return p.charge + d - muldiv(-rise, one, p.slope+fall)
	}
}

// at sets the charge of row k and evaluates there.
func (y *way) at(k int, charge int64) spot {
	if y.rows[k].charge != charge {
		if y.rows[k].charge = charge; y.uncharged() {
			y.discharge()
		} else {
			y.evaluate()
		}
	}
	return y.spot(k)
}

// spot is row k as it is now.
func (y *way) spot(k int) spot {
	return spot{y.rows[k].charge, y.value, y.use[k] - y.rows[k].most}
}
