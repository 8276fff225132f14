package yard

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
)

// Crossing compares what one material costs in bags and in bulk: the order of
// least cost with each kind alone, as if no other material were bought, with
// tax, trips and delivery, and within the stock. The zero value compares
// nothing.
type Crossing struct {
	Material *catalog.Material
	Need     units.Volume
	// Bags and Bulk are what the need costs either way, and Cheaper which of the
	// two costs less. A negative cost means that the offers do not cover it.
	Bags, Bulk units.Money
	Cheaper    Cheaper
	// Stretches says what costs less for every volume up to Top, which is twice
	// the need. Each begins where the one before it ends.
	Stretches []Stretch
	Top       units.Volume
	// From is the volume above which bulk costs less for every volume up to Top.
	// Always and Never are set when bulk costs less for all volumes, or for none;
	// From is then zero. It is also zero, and neither of them is set, when bulk
	// costs less somewhere, but not at Top.
	From          units.Volume
	Always, Never bool
	// Points are cost against volume, for a plot: both ends of every step that
	// was looked at.
	Points []CrossingPoint
	// Currency is written before an amount; see [Crossing.Sentence].
	Currency string
}

// CrossingPoint is what a volume costs in bags and in bulk. A negative cost
// means that the offers do not cover the volume.
type CrossingPoint struct {
	Volume     units.Volume
	Bags, Bulk units.Money
}

// crossingPoints is how many volumes are looked at for the plot, evenly spaced
// up to twice the need, where the steps are closer than that.
const crossingPoints = 96

// The work for all materials together is limited to what the searches for ten
// orders may take. Half of it is shared out evenly; the rest goes to those that
// ran out. The searches for one material are limited too, so that its points are
// few enough to draw. What that leaves open is [CheaperUnknown].
const (
	crossingWork = 10 * budget
	mostSearches = 800
)

// Crossings compares bags and bulk for every need that is offered in both, with
// prices. Its work is bounded whatever the needs, the packs and the number of
// offers are.
func (t *Terms) Crossings(needs []Need) (list []Crossing) {
	var all []*comparer
	for i := range needs {
		if n := &needs[i]; n.Wanted() {
			if c := t.compare(n); c != nil {
				list, all = append(list, Crossing{Material: n.Material, Need: n.Buy.Plan}), append(all, c)
			}
		}
	}
	left := int64(crossingWork)
	for i, c := range all {
		share := crossingWork / 2 / int64(len(all))
		c.left = work{share, mostSearches}
		c.crossing(&list[i])
		left -= share - c.left.units
	}
	for i, c := range all {
		if c.left.units <= 0 && left > 0 {
			c.left.units = left
			c.crossing(&list[i])
			left = c.left.units
		}
	}
	return list
}

// compare separates the material's offers into bags and bulk. It returns nil
// when one of the two is missing.
func (t *Terms) compare(n *Need) *comparer {
	var r doc.Reader
	q := t.request(&r, []Need{*n})
	if q == nil || r.Err() != nil {
		return nil
	}
	q.whole(1) // a price against a volume needs no finer parts
	top := min(2*n.Buy.Plan, units.MaxVolume)
	q.Aim, q.Budget = order.LeastCost, smallBudget
	out := &comparer{bags: curve{request: q.Request, top: top}, bulk: curve{request: q.Request, top: top}}
	out.bags.request.Offers, out.bulk.request.Offers = nil, nil
	for i := range q.Offers {
		kind := &out.bags.request
		if q.lines[i].Offer.Bulk.Volume > 0 {
			kind = &out.bulk.request
		}
		if q.lines[i].Priced {
			kind.Offers = append(kind.Offers, q.Offers[i])
		}
	}
	if len(out.bags.request.Offers) == 0 || len(out.bulk.request.Offers) == 0 {
		return nil
	}
	return out
}

// crossing works out the need first, then every step from the smallest volume
// on. Where there are very many it goes on with volumes for the plot, and then
// with what lies between them, nearest to the need first. Called again with more
// work, it keeps the steps that it knows.
func (c *comparer) crossing(k *Crossing) {
	c.found = nil
	bags, bulk := c.both(k.Need)
	k.Bags, k.Bulk, k.Cheaper = bags.cost(), bulk.cost(), cheaper(bags.costs, bulk.costs)
	k.Top = c.bags.top
	c.bags.walk(crossingPoints, &c.left)
	c.bulk.walk(crossingPoints, &c.left)
	cells := c.cells(k.Need)
	for _, s := range cells {
		c.both(s.UpTo)
	}
	for _, s := range cells {
		c.split(s.Over, s.UpTo)
	}
	k.Stretches = c.stretches(k.Top)
	k.Points = c.points()
	k.mark()
}

// cells cuts the volumes up to the top into even ranges, from Over to UpTo, the
// nearest to the need first.
func (c *comparer) cells(need units.Volume) (list []Stretch) {
	first := catalog.Slack + 1
	for i := range int64(crossingPoints) {
		last, _ := c.bags.top.MulDiv(i+1, crossingPoints)
		if first <= last {
			list = append(list, Stretch{Over: first, UpTo: last})
			first = last + 1
		}
	}
	far := func(s Stretch) units.Volume { return max(s.Over-need, need-s.UpTo, 0) }
	stable.Sort(list, func(a, b Stretch) int { return cmp.Compare(far(a), far(b)) })
	return list
}

// points returns both ends of every step of either kind where both costs are
// known.
func (c *comparer) points() (list []CrossingPoint) {
	var at []units.Volume
	for _, k := range []*curve{&c.bags, &c.bulk} {
		for i := range k.steps {
			at = append(at, k.steps[i].first, k.steps[i].last)
		}
	}
	stable.Sort(at, cmp.Compare[units.Volume])
	for _, v := range slices.Compact(at) {
		i, bags := c.bags.find(v)
		j, bulk := c.bulk.find(v)
		if bags && bulk {
			list = append(list, CrossingPoint{v, c.bags.steps[i].cost(), c.bulk.steps[j].cost()})
		}
	}
	return list
}

// cost is what the best order found costs, or -1 when none covers the volume.
func (s *step) cost() units.Money {
	if s.most == beyond {
		return -1
	}
	return s.most
}

// mark sets From, Always and Never by the stretches.
func (k *Crossing) mark() {
	last := k.Stretches[len(k.Stretches)-1]
	k.Never = !slices.ContainsFunc(k.Stretches, func(s Stretch) bool {
		return s.Cheaper == CheaperBulk || s.Cheaper == CheaperUnknown
	})
	k.From, k.Always = 0, false
	if last.Cheaper == CheaperBulk {
		k.From, k.Always = last.Over, last.Over == 0
	}
}
