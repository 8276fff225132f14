package sure

import "math"

// Quantile returns the litres that the need for one item does not exceed with
// probability p, whatever the supplies: 0 gives the least it can be, 1 the
// most. A p below 0 counts as 0; one above 1, or NaN, as 1. It panics on an
// item that does not exist. Apart from rounding the answer is exact where at
// most one factor of the need varies. Otherwise it is sampled: the chance that
// the need is no more is p, within the standard error that [Model.Chance] would
// state.
func (m *Model) Quantile(item int, p float64) float64 {
	m.must()
	one := m.needs().keep(func(i int) bool { return i == item })
	if x, ok := one.corner(p); ok {
		return one.sums(one.Needs, x)[item]
	}
	low, high := one.sums(one.Needs, one.figures(lowest))[item], one.sums(one.Needs, one.figures(highest))[item]
	j := one.plan().joint()
	sum := make([]float64, m.Items)
	return halve(low, high, (high-low)/(1<<24), func(v float64) bool {
		sum[item] = v
		return v >= high || j.chance(sum) >= p
	})
}

// Enough returns the litres of each item to plan for, so that with exactly
// those the chance that all items are enough is at least p. All items are
// planned at one common level, the probability that a need does not exceed its
// plan. When more than one need varies, that level is above p, so the plan of
// an item is more than its [Model.Quantile] at p. The supplies are not read. p
// is read as by Quantile, with the same exactness.
func (m *Model) Enough(p float64) []float64 {
	m.must()
	need := m.needs()
	if x, ok := need.corner(p); ok {
		return need.sums(need.Needs, x)
	}
	j := need.plan().joint()
	path := need.path(j)
	v := make([]float64, m.Items)
	level := j.level(p, func(at int) []float64 { path.litres(v, at); return v })
	path.litres(v, level)
	return v
}

// corner returns the figures at which every need is at its quantile p at once:
// the extremes, or any p where at most one factor varies, because needs only
// rise with a factor.
func (m *Model) corner(p float64) (x []float64, ok bool) {
	f := m.fold()
	varying := f.varying()
	switch {
	case p <= 0:
		return m.figures(lowest), true
	case !(p < 1) || len(varying) == 0:
		return m.figures(highest), true
	case len(varying) == 1:
		x = m.figures(lowest)
		x[varying[0]] = m.Factors[varying[0]].At(p)
		return x, true
	}
	return nil, false
}

// joint returns the chance that no need exceeds a plan, for one plan after
// another. It uses the same points as Chance and gives the same answer.
type joint struct {
	*plan
	base, slope [][]float64 // per live item
	high        []float64   // of one block
}

// joint draws every point once.
func (p *plan) joint() *joint {
	base, slope := p.store()
	return &joint{p, base, slope, make([]float64, block)}
}

// chance is the chance that no need exceeds its litres.
func (j *joint) chance(litres []float64) float64 {
	var sum float64
	for at := 0; at < samples; at += block {
		sum += j.block(litres, at)
	}
	return sum / samples
}

// block adds up the chances of one block of points.
func (j *joint) block(litres []float64, at int) (sum float64) {
	for k := range j.high {
		j.high[k] = math.Inf(1)
	}
	for i, item := range j.live {
		room := litres[item] + j.room[item]
		base, slope := j.base[i][at:at+block], j.slope[i][at:at+block]
		for k, s := range slope {
			r := room - base[k]
			if s > 0 {
				j.high[k] = min(j.high[k], r/s)
			} else if r < 0 {
				j.high[k] = math.Inf(-1)
			}
		}
	}
	for _, h := range j.high {
		sum += j.below(h)
	}
	return sum
}

// path holds the plans of every level: the values of each item in order, from
// the least to the most it can be. Levels are whole numbers from 0 to
// fullLevel, with steps between two values, so that plans do not jump in the
// tails, where values are far apart.
type path struct {
	live   []int
	room   []float64
	low    []float64
	high   []float64
	values [][]float64
}

// A path has this many levels from one value to the next, so that plans rise
// smoothly.
const (
	steps     = 16
	fullLevel = (samples + 1) * steps
)

// path sorts the values of every item.
func (m *Model) path(j *joint) *path {
	return &path{
		live:   j.live,
		room:   j.room,
		low:    m.sums(m.Needs, m.figures(lowest)),
		high:   m.sums(m.Needs, m.figures(highest)),
		values: j.sorted(j.base, j.slope),
	}
}

// litres fills v with the plan of a level.
func (p *path) litres(v []float64, level int) {
	copy(v, p.high) // right for items that do not vary, too
	if level >= fullLevel {
		return
	}
	at, part := level/steps, float64(level%steps)/steps
	for i, item := range p.live {
		a, b := p.value(i, at), p.value(i, at+1)
		v[item] = a + float64(part*(b-a))
	}
}

// value is the litres of live item i at a whole step of the path.
func (p *path) value(i, at int) float64 {
	item := p.live[i]
	switch {
	case at <= 0:
		return p.low[item]
	case at > samples:
		return p.high[item]
	}
	return min(max(p.values[i][at-1]-p.room[item], p.low[item]), p.high[item])
}
