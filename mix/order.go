package mix

import (
	"slices"

	"example.org/barrow/units"
)

// Line is one line of the order: so many of one offer.
type Line struct {
	Material *Material
	Offer    *Offer
	Count    int64
	// FewMany is the count for the least and the most that the need may be.
	FewMany  [2]int64
	Each     Span         // loose volume of one
	From     Source       // of Each, when it is not the pack's own size
	Volume   units.Volume // loose volume of all, as planned
	Left     units.Volume // over the need
	Cost     units.Money
	Priced   bool
	Mass     [2]units.Mass // lightest and heaviest; zero when not known
	MassFrom Source

	index int // of the offer
}

// buy orders what every need takes, from one offer a material: the least
// cost, then the least left over, then the fewest packs, then the first
// listed. The rest it returns as others. A choice that mixes packs replaces
// choose and nothing else.
func (w *work) buy(c *checker) (order, others []Line) {
	for i := range w.needs {
		lines := w.lines(&w.needs[i], c)
		if len(lines) == 0 || w.needs[i].Buy.Plan == 0 {
			continue
		}
		best, ok := choose(lines)
		if ok {
			order = append(order, lines[best])
			lines = slices.Delete(lines, best, best+1)
		} else if len(lines) == 1 {
			w.shortOf(c, lines)
		}
		others = append(others, lines...)
	}
	return order, others
}

// lines works out the order from each offer of the need alone.
func (w *work) lines(n *Need, c *checker) (lines []Line) {
	c.path.push("offers")
	defer c.path.pop()
	for i := range w.job.Offers {
		o := &w.job.Offers[i]
		if index := w.book.material[o.Material]; index != n.index {
			continue
		}
		c.path.pushIndex(i)
		l := Line{Material: n.Material, Offer: o, index: i}
		l.Each, l.From = o.yield(n.Material)
		l.count(c, n.Buy)
		lines = append(lines, l)
		c.path.pop()
	}
	return lines
}

// count works out how many, and what they come to.
func (l *Line) count(c *checker, need Span) {
	l.Count = Bags(need.Plan, l.Each.Plan)
	l.FewMany = [2]int64{Bags(need.Low, l.Each.High), Bags(need.High, l.Each.Low)}
	var ok bool
	if l.Volume, ok = l.Each.Plan.Times(l.Count); !ok {
		c.problem("volume.large", "so many of these come to more than can be worked out")
		return
	}
	l.Left = max(l.Volume-need.Plan, 0)
	if l.Offer.Price != nil {
		if l.Cost, l.Priced = l.Offer.Price.Times(l.Count); !l.Priced || l.Cost > units.MaxMoney {
			c.problemAt("price", "cost.large", "so many of these cost more than can be worked out")
		}
	}
	if !l.weigh() {
		c.problemAt("weight", "weight.large", "so many of these weigh more than can be worked out")
	}
}

// weigh works out the mass: the pack's own weight counts as given, else what
// such packs weigh, else the dry and the wet density tell.
func (l *Line) weigh() (ok bool) {
	if w := l.Offer.Weight; w > 0 {
		l.MassFrom = fromJob
		l.Mass[0], ok = w.Times(l.Count)
		l.Mass[1] = l.Mass[0]
		return ok
	}
	each, from := l.Offer.mass(l.Material, l.Each.Plan)
	l.MassFrom = from
	for i := range each {
		if l.Mass[i], ok = each[i].Times(l.Count); !ok {
			return false
		}
	}
	return true
}

// mass is what one of the offer weighs, lightest and heaviest, and where that
// comes from; zero when it is not known. loose is what one makes.
func (o *Offer) mass(m *Material, loose units.Volume) (mass [2]units.Mass, from Source) {
	low, high, v, from := m.Dry, m.Wet, loose, m.Source
	if sealed := o.Bulk.Volume == 0 && m.PackedHigh > 0; sealed && (m.OpensLow == (units.Ratio{}) || loose > o.Pack.Volume) {
		low, high, v, from = m.PackedLow, m.PackedHigh, o.Pack.Volume, m.PackedSource
	}
	mass[0], _ = v.Mass(low) // a pack's mass fits wherever its volume does
	mass[1], _ = v.Mass(high)
	return mass, from
}

// mass is what v of the material weighs loose, dry and wet; zero when not
// known.
func (m *Material) mass(v units.Volume) (mass [2]units.Mass, ok bool) {
	mass[0], ok = v.Mass(m.Dry)
	if ok {
		mass[1], ok = v.Mass(m.Wet)
	}
	return mass, ok
}

// choose returns the index of the best line that the stock covers; ok is false
// when none is.
func choose(lines []Line) (best int, ok bool) {
	for i := range lines {
		if lines[i].InStock() && (!ok || lines[i].better(&lines[best])) {
			best, ok = i, true
		}
	}
	return best, ok
}

// InStock reports whether the yard has as many as the line takes.
func (l *Line) InStock() bool { return l.Offer.Stock == nil || *l.Offer.Stock >= l.Count }

// better reports whether l is to be preferred to k, which stands before it.
func (l *Line) better(k *Line) bool {
	switch {
	case l.Priced != k.Priced:
		return l.Priced
	case l.Cost != k.Cost:
		return l.Cost < k.Cost
	case l.Left != k.Left:
		return l.Left < k.Left
	}
	return l.Count < k.Count
}

// shortOf reports that the only offer's stock does not cover the need.
func (w *work) shortOf(c *checker, lines []Line) {
	l := &lines[0]
	c.path.push("offers")
	c.path.pushIndex(l.index)
	c.problemAt("stock", "stock.short", itoa(l.Count)+" of these are needed; raise the stock, add another offer, or buy what there is and list it under on_hand")
	c.path.pop()
	c.path.pop()
}
