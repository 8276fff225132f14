package order

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
)

// Frontier returns up to most orders between the lowest cost and the least left
// over: no other order is better on one of the two and as good on the other.
// They are sorted by rising cost, and the first has the lowest. When there are
// more than most, they are spread over what may be left over. r.Aim is ignored,
// and r.Budget applies to each order. Errors are those of [Search].
func Frontier(r Request, most int) ([]Order, error) {
	r.Aim = LeastCost
	first, err := Search(r)
	if err != nil || most <= 1 {
		return []Order{first}[:min(1, max(most, 0))], err
	}
	r.Aim = LeastLeft
	last, err := Search(r)
	if err != nil {
		return nil, err
	}
	r.Aim = LeastCost
	f := front{r: &r, orders: []Order{first}}
	if f.add(last) {
		f.gaps = append(f.gaps, gap{last.LeftOver(), first.LeftOver() - 1})
	}
	for len(f.orders) < most && len(f.gaps) > 0 {
		if err := f.step(); err != nil {
			return nil, err
		}
	}
	return f.best(), nil
}

// front is what is known of the choices so far.
type front struct {
	r      *Request
	orders []Order
	gaps   []gap
}

// gap is a range of volumes left over: an order is known at from, none has been
// looked for above from and up to to.
type gap struct{ from, to units.Volume }

// add keeps o unless an order that leaves as much is known.
func (f *front) add(o Order) bool {
	left := o.LeftOver()
	if slices.ContainsFunc(f.orders, func(k Order) bool { return k.LeftOver() == left }) {
		return false
	}
	f.orders = append(f.orders, o)
	return true
}

// step looks for the cheapest order within the lower half of the widest gap,
// which spreads the choices evenly.
func (f *front) step() error {
	at := 0
	for i, g := range f.gaps {
		if g.to-g.from > f.gaps[at].to-f.gaps[at].from {
			at = i
		}
	}
	g := f.gaps[at]
	f.gaps = slices.Delete(f.gaps, at, at+1)
	if g.to <= g.from {
		return nil
	}
	mid := g.from + (g.to-g.from+1)/2
	o, err := f.within(mid)
	if err != nil {
		return err
	}
	if !f.add(o) { // nothing from g.from to mid: the next is the first over it, if any
		mid = g.to
		if o, err = f.within(mid); err != nil || !f.add(o) {
			return err
		}
	}
	left := o.LeftOver()
	f.gaps = append(f.gaps, gap{g.from, left - 1}, gap{mid, g.to})
	return nil
}

// within finds the cheapest order that leaves at most most over. It starts from
// the best order known that does.
func (f *front) within(most units.Volume) (Order, error) {
	s, err := newSearch(f.r)
	if err != nil {
		return Order{}, err
	}
	s.most = int64(most)
	for i := range f.orders {
		if o := &f.orders[i]; o.LeftOver() <= most {
			if k := o.found(); k.before(&s.best) {
				s.best = k
			}
		}
	}
	s.run()
	return s.order()
}

// found returns o in the form that the search uses.
func (o *Order) found() found {
	f := found{cost: int64(o.Cost), left: int64(o.LeftOver()), packs: o.Packs, trips: o.Trips, loads: o.Loads}
	for i := range o.Haul {
		f.counts = append(f.counts, o.Haul[i]+o.Deliver[i])
		f.kinds = append(f.kinds, i)
	}
	for _, t := range o.Drives {
		f.fills = append(f.fills, placed{mode: hauled, counts: picksOf(t.Counts), times: t.Times})
	}
	for _, t := range o.Drops {
		f.fills = append(f.fills, placed{mode: delivered, counts: picksOf(t.Counts), times: t.Times})
	}
	return f
}

// best lists the orders that no other order beats, by rising cost.
func (f *front) best() []Order {
	stable.Sort(f.orders, func(a, b Order) int {
		return cmp.Or(cmp.Compare(a.Cost, b.Cost), cmp.Compare(a.LeftOver(), b.LeftOver()))
	})
	out := f.orders[:1]
	for _, o := range f.orders[1:] {
		if o.LeftOver() < out[len(out)-1].LeftOver() {
			out = append(out, o)
		}
	}
	return out
}
