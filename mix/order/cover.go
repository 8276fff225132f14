package order

import (
	"cmp"

	"example.org/barrow/mix/stable"
)

// cover is one way to meet the need for one material.
type cover struct {
	charged           int64 // cost, with the charges for its shares of vehicles, in scale
	cost, left, packs int64
	counts            []pick  // of the lines that are bought, by rising at
	use               []int64 // by row
}

// pick is how many of one line are bought. A cover lists only those, because a
// material may have thousands of lines and few are ever bought together.
type pick struct {
	at    int // index into the material's lines
	count int64
}

// comparePicks orders lists of picks as if each had a count for every line.
func comparePicks(a, b []pick) int {
	for i := range min(len(a), len(b)) {
		if c := cmp.Or(cmp.Compare(b[i].at, a[i].at), cmp.Compare(a[i].count, b[i].count)); c != 0 {
			return c
		}
	}
	return cmp.Compare(len(a), len(b))
}

// compare orders covers by cost, what is left over, packs lifted and counts:
// the part of the total order that one material decides.
func (c *cover) compare(d *cover) int {
	return cmp.Or(cmp.Compare(c.cost, d.cost), cmp.Compare(c.left, d.left), cmp.Compare(c.packs, d.packs),
		comparePicks(c.counts, d.counts))
}

// walk goes depth first through the covers of one material, starting with the
// line that covers at the lowest price, the largest counts first. Two facts
// keep it finite and exact. In an order that cannot be improved, no line can be
// left out, so nothing is bought once the need is covered. And no count can be
// one less, unless that loses a price or a minimum. So past the count that
// covers alone, only counts that open a lower price are tried.
type walk struct {
	s     *search
	m     *mat
	stops []stop
	open  []int // the stops of which some are bought, by rising place
	limit int64 // the highest charge that a cover may have
	ties  bool  // go on to covers that cost the same
	every bool  // collect covers instead of finding the cheapest
	way   *way  // for which to collect
	thick int   // how many to collect before dropping those that others replace
	until int64 // work at which to stop
	cut   bool  // stopped before the end
	best  *cover
	got   []*cover
}

// stop is a line at its place in the walk.
type stop struct {
	*line
	at     int    // index into the material's lines
	charge int64  // for the share of the vehicles that one pack uses, in scale
	rate   uint64 // the least that a volume can be covered for
	count  int64
}

// start sorts the lines by rate at the present charges.
func (w *walk) start(m *mat, rows []row) {
	w.m, w.stops, w.open, w.cut = m, w.stops[:0], w.open[:0], false
	for i, l := range m.lines {
		charge := charge(l.use, rows) + l.hand*m.lift
		w.stops = append(w.stops, stop{line: l, at: i, charge: charge, rate: rate(l.floor+charge, l.yield)})
	}
	stable.Sort(w.stops, func(a, b stop) int { return cmp.Compare(a.rate, b.rate) })
	w.s.work += went(len(m.lines))
}

// Going through a few lines, breaks or packs is a part of the unit of work that is
// counted anyway. Going through more of them is a unit for each eight, so that a
// material with a thousand lines uses up its budget in the time of any other.
const (
	few  = 64
	many = 8
)

// went is the work of going through n lines, breaks or packs.
func went(n int) int64 {
	if n <= few {
		return 0
	}
	return int64(n / many)
}

// from covers short with the lines from i on; paid is what the lines before
// them cost. It calls itself only for lines that are bought, so it goes no
// deeper than an order has lines: a browser's stack is small.
func (w *walk) from(i int, short, paid int64) {
	for ; ; i++ {
		l := &w.stops[i]
		full := up(short, l.yield)
		w.close(l, full, short, paid)
		if l.count = 0; i+1 == len(w.stops) || !w.some(i, min(full-1, l.most), short, paid) {
			return
		}
		if paid+worth(short, w.stops[i+1].rate) > w.limit {
			return
		}
	}
}

// some buys n of line i, then fewer, with other lines after it. It reports
// whether the walk may go on with none of line i.
func (w *walk) some(i int, n, short, paid int64) bool {
	l, next := &w.stops[i], w.stops[i+1].rate
	w.open = append(w.open, i)
	defer func() { l.count, w.open = 0, w.open[:len(w.open)-1] }()
	for ; ; n-- {
		if w.s.work++; w.s.work > w.until {
			w.cut = true
			return false
		}
		if n < l.least {
			return true
		}
		done := n * l.yield
		// The rates rise along the walk, so fewer of l only cost more.
		if paid+worth(done, l.rate)+worth(short-done, next) > w.limit {
			return false
		}
		if spent := paid + w.spend(l, n); spent+worth(short-done, next) <= w.limit {
			l.count = n
			w.from(i+1, short-done, spent)
		}
	}
}

// spend is what n of l cost, charges included.
func (w *walk) spend(l *stop, n int64) int64 {
	return l.cost(n)*scale + n*l.charge
}

// close ends covers with l: as many as cover alone, or more where that opens a
// lower price.
func (w *walk) close(l *stop, full, short, paid int64) {
	n := max(full, l.least)
	if n > l.most {
		return
	}
	w.leaf(l, n, short, paid)
	cost := l.cost(n)
	first := l.step(n)
	for i := first; i < len(l.steps) && l.cheapest[i] < cost; i++ {
		if from := l.steps[i].From; l.cost(from) < cost {
			w.leaf(l, from, short, paid)
		}
		if i >= few && i%many == 0 {
			if w.s.work++; w.s.work > w.until {
				w.cut = true
				return
			}
		}
	}
}

// leaf takes a complete cover with n of the last line, unless its charge or its
// figure of the aim is too high.
func (w *walk) leaf(l *stop, n, short, paid int64) {
	charged := paid + w.spend(l, n)
	if charged > w.limit {
		return
	}
	l.count = n
	left := max(0, n*l.yield-short-w.m.slack)
	if left > w.m.mostLeft || w.m.lift > 0 && w.packs(l) > w.m.mostPacks {
		return
	}
	if w.every {
		w.collect(w.take(l, charged, left))
		return
	}
	if w.best != nil && charged == w.best.charged {
		if c := w.take(l, charged, left); c.compare(w.best) < 0 {
			w.best = c
		}
		return
	}
	w.best = w.take(l, charged, left)
	w.limit = charged
	if !w.ties {
		w.limit--
	}
}

// collect keeps c. When more than mostCovers are left after dropping those that
// others replace, it stops the walk.
func (w *walk) collect(c *cover) {
	w.got = append(w.got, c)
	if len(w.got) < w.thick {
		return
	}
	w.got = w.way.thin(w.m, w.got)
	w.thick = max(thick, 2*len(w.got))
	if len(w.got) > mostCovers {
		w.until = 0
	}
}

// packs counts the packs lifted by hand in a cover that ends with last.
func (w *walk) packs(last *stop) (n int64) {
	for _, i := range w.open {
		n += w.stops[i].count * w.stops[i].hand
	}
	return n + last.count*last.hand
}

// take copies the cover at which the walk stands, which ends with last.
func (w *walk) take(last *stop, charged, left int64) *cover {
	c := w.s.newCover(len(w.open)+1, w.m.rows)
	c.charged, c.left = charged, left
	for _, i := range w.open {
		c.add(w.stops[i].line, w.stops[i].at, w.stops[i].count)
	}
	c.add(last.line, last.at, last.count)
	stable.Sort(c.counts, func(a, b pick) int { return cmp.Compare(a.at, b.at) })
	return c
}

// add adds n of a line to the cover.
func (c *cover) add(l *line, at int, n int64) {
	c.counts = append(c.counts, pick{at, n})
	c.cost += l.cost(n)
	c.packs += n * l.hand
	for k, u := range l.use {
		c.use[k] += n * u
	}
}

// newCover takes a cover, with room for so many picks, and its slices from blocks,
// to spare the allocator.
func (s *search) newCover(picks, rows int) *cover {
	if len(s.covers) == 0 {
		s.covers = make([]cover, 64)
	}
	if len(s.ints) < rows {
		s.ints = make([]int64, max(512, rows))
	}
	if len(s.picks) < picks {
		s.picks = make([]pick, max(256, picks))
	}
	c := &s.covers[0]
	s.covers = s.covers[1:]
	c.counts, s.picks = s.picks[:0:picks], s.picks[picks:]
	c.use, s.ints = s.ints[:rows:rows], s.ints[rows:]
	return c
}
