package order

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/stable"
)

// exhaust tries every combination of covers that could be better than the best
// order, with the present trips and loads. It first drops covers that others
// replace by what they use of the rows. That is enough unless a combination
// passes the rows and still cannot be loaded; then it tries again, dropping
// only covers whose replacement surely loads. It reports false when the work
// ran out.
func (y *way) exhaust(trips, loads int64) bool {
	p := &y.s.picker
	p.y, p.trips, p.loads, p.refused, p.unsure = y, trips, loads, none, false
	y.loose = true
	if !p.widen() {
		return false
	}
	if p.refused == none || p.refused*scale > y.s.limit() {
		return true
	}
	y.loose, p.unsure = false, false
	return p.widen() && !p.unsure
}

// widen picks with a growing margin. In an order that costs at most some margin
// over the bound, every cover is within that margin of its material's floor. So
// the margin starts small and grows until no better order can be outside it.
func (p *picker) widen() bool {
	y, s := p.y, p.y.s
	for margin := int64(16 * scale); ; margin *= 4 {
		margin = min(margin, s.limit()-y.base-y.value)
		if !y.lists(margin) {
			return false
		}
		p.start(margin)
		p.from(0, 0, 0)
		if s.work > s.budget {
			return false
		}
		if margin >= s.limit()-y.base-y.value || margin > widest {
			return true
		}
	}
}

// listWork is the work that listing the covers of one material may take,
// mostCovers how many may be listed, and thick how many to collect before
// dropping those that others replace.
const (
	listWork   = 500_000
	mostCovers = 2000
	thick      = 500
)

// widest is more than any cover is charged.
const widest = 1 << 58

// lists collects, for each material, every cover within margin of its floor. It
// reports false when there are too many to go through.
func (y *way) lists(margin int64) bool {
	w := &y.s.walk
	w.every, w.way = true, y
	for _, m := range y.mats {
		w.start(m, y.rows)
		w.thick = thick
		w.got, w.limit = m.list[:0], plus(m.floor, margin)
		w.until = min(plus(y.s.work, listWork), y.s.budget)
		w.from(0, m.target, 0)
		if m.list = y.thin(m, w.got); w.cut {
			return false
		}
		stable.Sort(m.list, func(a, b *cover) int { return cmp.Compare(a.charged, b.charged) })
	}
	return true
}

// thin drops the covers that another can replace whatever else is bought: one
// that comes first in the total order and can be loaded wherever the dropped
// one can. A loose way does not check the loading.
func (y *way) thin(m *mat, list []*cover) []*cover {
	stable.Sort(list, (*cover).compare)
	kept := list[:0]
	for _, c := range list {
		if !slices.ContainsFunc(kept, func(k *cover) bool { return y.replaces(m, k, c) }) {
			kept = append(kept, c)
		}
	}
	return kept
}

// replaces reports whether a, which comes first, can stand for b.
func (y *way) replaces(m *mat, a, b *cover) bool {
	y.s.work++
	if y.s.most != none && a.left > b.left {
		return false
	}
	for k := range a.use {
		if a.use[k] > b.use[k] {
			return false
		}
	}
	return y.loose || y.nests(m, a, b)
}

// nests reports whether the packs of a, one by one, fit into the places of the
// packs of b. Then a can be loaded however b is loaded.
func (y *way) nests(m *mat, a, b *cover) bool {
	if len(y.rows) == 0 {
		return true
	}
	free := append(y.s.nest[:0], b.counts...)
	defer func() { y.s.nest = free }()
	same := 0 // the place of a line of a in free
	for _, p := range a.counts {
		l, n := m.lines[p.at], p.count
		for same < len(free) && free[same].at < p.at {
			same++
		}
		if same < len(free) && free[same].at == p.at {
			both := min(n, free[same].count)
			free[same].count -= both
			n -= both
		}
		for k := 0; n > 0; k++ {
			if k == len(free) {
				return false
			}
			f := &free[k]
			held := y.holds(m.lines[f.at], l)
			if f.count == 0 || m.lines[f.at].modes&^l.modes != 0 || held == 0 {
				continue
			}
			took := min(f.count, up(n, held))
			f.count -= took
			n = max(0, n-times(took, held))
		}
	}
	return true
}

// holds is how many packs of small fit in the place of one pack of big.
func (y *way) holds(big, small *line) int64 {
	v := vehicle{payload: none, room: none}
	if y.weighs() {
		v.payload = big.mass
	}
	if y.takesRoom() {
		v.room = big.room
	}
	return v.holds(small, mostCount)
}

// weighs reports whether mass limits a vehicle that costs something.
func (y *way) weighs() bool {
	return y.trips.price > 0 && y.s.r.Payload > 0 || y.loads.price > 0 && y.s.r.Delivery.Payload > 0
}

// takesRoom reports whether room limits a vehicle that costs something.
func (y *way) takesRoom() bool {
	return y.trips.price > 0 && y.s.r.Room > 0 || y.loads.price > 0 && y.s.r.Delivery.Capacity > 0
}

// picker picks one cover for every material, depth first. It starts with the
// materials that have the fewest covers, so that dead ends show early.
type picker struct {
	y            *way
	trips, loads int64
	margin       int64
	mats         []*mat
	picked       []*cover
	use          [][]int64 // by material, what those before it use
	rest         [][]int64 // by material, the least that it and those after it use
	restLeft     []int64
	slab         []int64 // of use and rest
	unsure       bool    // it is not certain that a refused combination cannot be loaded
	refused      int64   // the lowest cost of a combination that could not be loaded
}

// start prepares a search within margin. It reuses the slices of the search
// before it.
func (p *picker) start(margin int64) {
	p.margin = margin
	p.mats = append(p.mats[:0], p.y.mats...)
	stable.Sort(p.mats, func(a, b *mat) int { return len(a.list) - len(b.list) })
	n, rows := len(p.mats), len(p.y.rows)
	if size := 2 * (n + 1) * rows; len(p.slab) < size {
		p.slab = make([]int64, size)
	}
	if p.picked == nil {
		p.picked, p.restLeft = make([]*cover, n), make([]int64, n+1)
	}
	p.use, p.rest = p.use[:0], p.rest[:0]
	for i := range n + 1 {
		at := p.slab[2*i*rows:]
		p.use, p.rest = append(p.use, at[:rows:rows]), append(p.rest, at[rows:2*rows:2*rows])
	}
	clear(p.use[0])
	clear(p.rest[n])
	for i := n - 1; i >= 0; i-- {
		p.least(i)
	}
}

// least works out the least that the materials from i on use of each row, and
// leave over.
func (p *picker) least(i int) {
	list := p.mats[i].list
	for k := range p.rest[i] {
		low := int64(none)
		for _, c := range list {
			low = min(low, c.use[k])
		}
		p.rest[i][k] = plus(p.rest[i+1][k], low)
	}
	low := int64(none)
	for _, c := range list {
		low = min(low, c.left)
	}
	p.restLeft[i] = plus(p.restLeft[i+1], low)
}

// from picks for the materials from i on. over is how much the covers picked so
// far are above their floors, left what they leave over.
func (p *picker) from(i int, over, left int64) {
	if i == len(p.mats) {
		p.leaf()
		return
	}
	m := p.mats[i]
	for _, c := range m.list {
		more := over + c.charged - m.floor
		if more > p.margin || p.y.s.work > p.y.s.budget {
			return
		}
		p.y.s.work++
		if plus(left, plus(c.left, p.restLeft[i+1])) > p.y.s.most || !p.allowed(i, c) {
			continue
		}
		p.picked[i] = c
		p.from(i+1, more, plus(left, c.left))
	}
}

// allowed adds c to what is used and reports whether every row still holds with
// the least that the rest will use.
func (p *picker) allowed(i int, c *cover) bool {
	for k, u := range c.use {
		sum := p.use[i][k] + u
		if sum+p.rest[i+1][k] > p.y.rows[k].most {
			return false
		}
		p.use[i+1][k] = sum
	}
	return true
}

// leaf offers a full set of covers. When only the loading fails, it notes the
// cost: exhaust then has to look again.
func (p *picker) leaf() {
	f, ok, sure := p.y.offer(p.picked, p.mats, p.trips, p.loads)
	switch {
	case ok:
		p.margin = min(p.margin, p.y.s.limit()-p.y.base-p.y.value)
	case f != none:
		p.refused = min(p.refused, f)
		p.unsure = p.unsure || !sure
	}
}

// offer makes the covers the best order when they come first and can be brought
// home in that many trips and loads. Where only the loading fails, refused is
// the cost; sure is false when the failure is not certain.
func (y *way) offer(covers []*cover, mats []*mat, trips, loads int64) (refused int64, ok, sure bool) {
	s := y.s
	f := found{cost: y.base / scale, trips: trips, loads: loads}
	for _, c := range covers {
		f.cost, f.left, f.packs = f.cost+c.cost, plus(f.left, c.left), f.packs+c.packs
	}
	if f.left > s.most || s.best.counts != nil && f.figures(&s.best) > 0 {
		return none, false, true
	}
	f.counts = s.spread(covers, mats)
	if !f.before(&s.best) {
		return none, false, true
	}
	var b *loader
	if len(y.rows) > 0 {
		b = y.loaded(covers, mats)
		if ok, sure = b.fits(trips, loads); !ok {
			return f.cost, false, sure
		}
	}
	s.accept(&f, b)
	return none, true, true
}

// accept makes f the best order, with the fills of b. b is nil where no row
// limits the loading; home then finds the fills.
func (s *search) accept(f *found, b *loader) {
	s.counts = s.best.counts
	f.kinds, f.fills = s.best.kinds[:0], s.best.fills[:0]
	if b != nil {
		for i := range b.kinds {
			f.kinds = append(f.kinds, b.kinds[i].offer)
		}
		f.fills = append(f.fills, b.fills...)
	}
	s.best = *f
}

// spread writes the covers' counts by offer.
func (s *search) spread(covers []*cover, mats []*mat) []int64 {
	if s.counts == nil {
		s.counts = make([]int64, len(s.r.Offers))
	}
	clear(s.counts)
	for i, c := range covers {
		for _, p := range c.counts {
			s.counts[mats[i].lines[p.at].offer] = p.count
		}
	}
	return s.counts
}

// loaded returns a loader with the packs of the covers. It reuses the memory of
// one loader, because every combination tried needs one.
func (y *way) loaded(covers []*cover, mats []*mat) *loader {
	b := &y.s.spare
	*b = loader{haul: y.s.r.truck(), drop: y.s.r.van(), rows: y.rows, kinds: b.kinds[:0], left: b.left[:0],
		fills: b.fills[:0], load: b.load, spare: b.spare, order: b.order, keys: b.keys, work: &y.s.work}
	for i, c := range covers {
		for _, p := range c.counts {
			b.add(mats[i].lines[p.at], p.count)
		}
	}
	b.ready()
	return b
}

// tryHome makes the cheapest covers the best order, if they pass the rows and
// can be loaded.
func (y *way) tryHome(trips, loads int64) {
	if y.fullest() < 0 {
		y.offer(y.bests(), y.mats, trips, loads)
	}
}

// bests lists the cheapest cover of every material.
func (y *way) bests() []*cover {
	covers := y.s.picked[:0]
	for _, m := range y.mats {
		covers = append(covers, m.best)
	}
	y.s.picked = covers
	return covers
}

// ship makes an order of the cheapest covers, with however many trips and loads
// they take when loaded greedily. Any first order gives later bounds something
// to beat.
func (y *way) ship() {
	covers := y.bests()
	if slices.Contains(covers, nil) {
		return
	}
	b := y.loaded(covers, y.mats)
	switch y.modes {
	case hauled:
		b.greedy(hauled, 0, none, 0)
	case delivered:
		b.greedy(delivered, 0, 0, none)
	default:
		b.greedy(delivered, 0, none, none)
	}
	most := b.sent(delivered)
	y.shipped(covers, b.sent(hauled), most)
	for n := int64(1); n < most && y.modes == hauled|delivered && y.s.work <= y.s.budget; n *= 2 {
		if b := y.loaded(covers, y.mats); b.greedy(delivered, 0, none, n) {
			y.shipped(covers, b.sent(hauled), n)
		}
	}
}

// shipped offers the covers with the given trips and loads, at their price.
func (y *way) shipped(covers []*cover, trips, loads int64) {
	trips, loads = y.trips.clamp(trips), y.loads.clamp(loads)
	y.base = plus(times(trips, y.trips.price), times(loads, y.loads.price))
	if y.base <= mostDriving*scale {
		y.offer(covers, y.mats, trips, loads)
	}
}

// clamp limits a number of trips or loads to what the axis allows.
func (a axis) clamp(n int64) int64 { return max(a.least, min(a.most, n)) }
