package order

import (
	"cmp"
	"slices"
)

// cover is one way to meet the need for one material.
type cover struct {
	charged           int64 // cost, with the charges for its shares of vehicles, in scale
	cost, left, packs int64
	counts            []int64 // by the material's lines
	use               []int64 // by row
}

// compare orders covers by cost, what is left over, packs lifted and counts:
// the part of the total order that one material decides.
func (c *cover) compare(d *cover) int {
	return cmp.Or(cmp.Compare(c.cost, d.cost), cmp.Compare(c.left, d.left), cmp.Compare(c.packs, d.packs),
		slices.Compare(c.counts, d.counts))
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

// start sorts the lines by rate at the present charges, by insertion: a
// material has few lines.
func (w *walk) start(m *mat, rows []row) {
	w.m, w.stops, w.cut = m, w.stops[:0], false
	for i, l := range m.lines {
		charge := charge(l.use, rows) + l.hand*m.lift
		w.stops = append(w.stops, stop{line: l, at: i, charge: charge, rate: rate(l.floor+charge, l.yield)})
		for k := len(w.stops) - 1; k > 0 && w.stops[k].rate < w.stops[k-1].rate; k-- {
			w.stops[k], w.stops[k-1] = w.stops[k-1], w.stops[k]
		}
	}
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
	defer func() { l.count = 0 }()
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
	for i := range l.steps {
		if from := l.steps[i].From; from > n && l.cost(from) < cost {
			w.leaf(l, from, short, paid)
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
	if left > w.m.mostLeft || w.m.lift > 0 && w.packs() > w.m.mostPacks {
		return
	}
	if w.every {
		w.collect(w.take(charged, left))
		return
	}
	if w.best != nil && charged == w.best.charged {
		if c := w.take(charged, left); c.compare(w.best) < 0 {
			w.best = c
		}
		return
	}
	w.best = w.take(charged, left)
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

// packs counts the packs lifted by hand.
func (w *walk) packs() (n int64) {
	for i := range w.stops {
		n += w.stops[i].count * w.stops[i].hand
	}
	return n
}

// take copies the cover at which the walk stands.
func (w *walk) take(charged, left int64) *cover {
	c := w.s.newCover(len(w.stops), w.m.rows)
	c.charged, c.left = charged, left
	for i := range w.stops {
		if l := &w.stops[i]; l.count > 0 {
			c.add(l.line, l.at, l.count)
		}
	}
	return c
}

// add adds n of a line to the cover.
func (c *cover) add(l *line, at int, n int64) {
	c.counts[at] = n
	c.cost += l.cost(n)
	c.packs += n * l.hand
	for k, u := range l.use {
		c.use[k] += n * u
	}
}

// newCover takes the cover and its slices from blocks, to spare the allocator.
func (s *search) newCover(lines, rows int) *cover {
	if len(s.covers) == 0 {
		s.covers = make([]cover, 64)
	}
	if len(s.ints) < lines+rows {
		s.ints = make([]int64, max(1024, lines+rows))
	}
	c := &s.covers[0]
	s.covers = s.covers[1:]
	c.counts, s.ints = s.ints[:lines:lines], s.ints[lines:]
	c.use, s.ints = s.ints[:rows:rows], s.ints[rows:]
	return c
}
