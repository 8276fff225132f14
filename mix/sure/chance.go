package sure

import (
	"math"
	"slices"
)

// Chance is how sure an order is: All is the chance that every item is enough,
// Item the chance for each item by itself, all from 0 to 1.
//
// Error and ItemError say how far off sampling may be. They are cautious
// standard errors, half as large again as the scatter of the shifts, because so
// few shifts do not show the scatter well. Most chances are closer to the true
// one than that, and very few are three times as far off. The error is 0 for a
// chance that was worked out without sampling; for a sampled one it is at least
// 1/16384, which is what the points resolve. It does not say how good the
// ranges are.
type Chance struct {
	All       float64
	Item      []float64
	Error     float64
	ItemError []float64
}

// Chance returns the chance that the supplies are enough. It is exact, apart
// from rounding, where at most one factor varies (in all items or in one item),
// and where even the worst case is enough or even the best case is not.
func (m *Model) Chance() Chance {
	m.must()
	out := Chance{All: 1, Item: make([]float64, m.Items), ItemError: make([]float64, m.Items)}
	known := make([]bool, m.Items)
	sampled, least := false, 1.0
	for i := range out.Item {
		out.Item[i], known[i] = m.keep(func(j int) bool { return j == i }).exact()
		if known[i] {
			least = min(least, out.Item[i])
		}
		sampled = sampled || !known[i]
	}
	open := m.keep(func(i int) bool { return !known[i] || out.Item[i] < 1 })
	joint, ok := open.exact()
	if sampled || !ok {
		open.sample(&out, known)
		out.All = min(out.All, slices.Min(out.Item))
	}
	if ok || least == 0 {
		out.All, out.Error = min(joint, least), 0
	}
	return out
}

// exact returns the chance that all items are enough, if that needs no
// sampling.
func (m *Model) exact() (chance float64, ok bool) {
	f := m.fold()
	if varying := f.varying(); len(varying) == 1 {
		return m.single(&f, varying[0]), true
	}
	low, high := m.figures(lowest), m.figures(highest)
	switch {
	case m.enough(high, low):
		return 1, true
	case !m.enough(low, high):
		return 0, true
	}
	return 0, false
}

// enough reports whether the supplies at one set of figures meet the needs at
// another.
func (m *Model) enough(need, supply []float64) bool {
	have := m.sums(m.Supplies, supply)
	for i, n := range m.sums(m.Needs, need) {
		if n > have[i]+Slack {
			return false
		}
	}
	return true
}

// sample fills in All, the items that are not known yet, and their errors.
func (m *Model) sample(out *Chance, known []bool) {
	p := m.plan()
	d, t := p.drawer(), p.tally()
	for s := range shifts {
		for first := 0; first < points; first += block {
			d.draw(s, first)
			t.add(d, s)
		}
	}
	out.All, out.Error = mean(&t.all)
	for i, item := range p.live {
		if !known[item] {
			out.Item[item], out.ItemError[item] = mean(&t.items[i])
		}
	}
}

// mean returns the mean chance over the shifts and its cautious standard error.
func mean(sums *[shifts]float64) (mean, err float64) {
	for _, x := range sums {
		mean += x
	}
	mean = float64(mean / samples)
	var squares float64
	for _, x := range sums {
		off := float64(x/points) - mean
		squares += float64(off * off)
	}
	const caution = 1.5
	return mean, max(caution*math.Sqrt(squares/(shifts*(shifts-1))), 1.0/samples)
}

// tally adds up chances over blocks of points, for each shift. At each point,
// the pivot is enough for every item from low to high.
type tally struct {
	*plan
	low, high []float64
	all       [shifts]float64
	items     [][shifts]float64 // per live item
}

// tally returns an empty tally.
func (p *plan) tally() *tally {
	return &tally{plan: p, low: make([]float64, block), high: make([]float64, block),
		items: make([][shifts]float64, len(p.live))}
}

// add adds the block of points that d has drawn.
func (t *tally) add(d *drawer, shift int) {
	for k := range t.low {
		t.low[k], t.high[k] = math.Inf(-1), math.Inf(1)
	}
	for i, item := range t.live {
		t.items[i][shift] += t.item(t.room[item]+Slack, d.base[i], d.slope[i])
	}
	for k, high := range t.high {
		t.all[shift] += t.between(t.low[k], high)
	}
}

// item narrows low and high by the condition base + slope*u <= room, and
// returns the sum of its chances.
func (t *tally) item(room float64, base, slope []float64) (sum float64) {
	for k, s := range slope {
		r := room - base[k]
		switch u := r / s; {
		case s > 0:
			t.high[k] = min(t.high[k], u)
			sum += t.below(u)
		case s < 0:
			t.low[k] = max(t.low[k], u)
			sum += 1 - t.below(u)
		case r >= 0:
			sum++
		default:
			t.high[k] = math.Inf(-1)
		}
	}
	return sum
}
