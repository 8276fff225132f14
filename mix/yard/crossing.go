package yard

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/order"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
)

// Crossing is where bulk becomes cheaper than bags for one material, when the
// material is bought alone. Costs include trips and delivery.
type Crossing struct {
	Material *catalog.Material
	Need     units.Volume
	// From is the volume from which bulk is cheaper, to the litre. Always and
	// Never are set when there is no such volume up to twice the need: bulk is
	// then cheaper everywhere, or nowhere.
	From          units.Volume
	Always, Never bool
	Points        []CrossingPoint // cost against volume, for a plot
}

// CrossingPoint is what a volume costs in bags and in bulk. A negative cost
// means that the offers do not cover the volume.
type CrossingPoint struct {
	Volume     units.Volume
	Bags, Bulk units.Money
}

// crossingPoints is how many volumes are tried, up to twice the need.
const crossingPoints = 96

// Crossings compares bags and bulk for every need that is offered in both, with
// prices.
func (t *Terms) Crossings(needs []Need) (list []Crossing) {
	for i := range needs {
		n := &needs[i]
		if n.Buy.Plan <= catalog.Slack {
			continue
		}
		if c := t.compare(n); c != nil {
			list = append(list, c.crossing(n))
		}
	}
	return list
}

// comparer works out what a volume of one material costs in bags or in bulk.
type comparer struct {
	bags, bulk order.Request
}

// compare separates the material's offers into bags and bulk. It returns nil
// when one of the two is missing.
func (t *Terms) compare(n *Need) *comparer {
	var r doc.Reader
	q := t.request(&r, []Need{*n})
	if q == nil || r.Err() != nil {
		return nil
	}
	out := &comparer{bags: q.Request, bulk: q.Request}
	out.bags.Offers, out.bulk.Offers = nil, nil
	out.bags.Aim, out.bulk.Aim = order.LeastCost, order.LeastCost
	out.bags.Budget, out.bulk.Budget = smallBudget, smallBudget
	for i := range q.Offers {
		q.Offers[i].Limited = false // prices are compared, not stocks
		switch {
		case !q.lines[i].Priced:
			return nil
		case q.lines[i].Offer.Bulk.Volume > 0:
			out.bulk.Offers = append(out.bulk.Offers, q.Offers[i])
		default:
			out.bags.Offers = append(out.bags.Offers, q.Offers[i])
		}
	}
	if len(out.bags.Offers) == 0 || len(out.bulk.Offers) == 0 {
		return nil
	}
	return out
}

// at returns both costs of a volume.
func (c *comparer) at(v units.Volume) CrossingPoint {
	return CrossingPoint{v, cost(c.bags, v), cost(c.bulk, v)}
}

// cost is the lowest cost of a volume, or -1 when the offers do not cover it.
func cost(q order.Request, v units.Volume) units.Money {
	q.Needs = []units.Volume{v}
	found, err := order.Search(q)
	if err != nil {
		return -1
	}
	return found.Cost
}

// bulkWins reports whether bulk is cheaper, or alone covers the volume.
func (p *CrossingPoint) bulkWins() bool {
	return p.Bulk >= 0 && (p.Bags < 0 || p.Bulk < p.Bags)
}

// volumes lists the volumes to try, up to top: evenly spaced, and on both sides
// of every step of bulk, where its cost jumps, unless there are too many steps.
func (c *comparer) volumes(top units.Volume) (list []units.Volume) {
	for i := range int64(crossingPoints) {
		v, _ := top.MulDiv(i+1, crossingPoints)
		list = append(list, v)
	}
	for i := range c.bulk.Offers {
		step := c.bulk.Offers[i].Yield
		for k := units.Volume(1); k <= crossingPoints && k*step < top; k++ {
			list = append(list, k*step, min(k*step+2*catalog.Slack, top))
		}
	}
	stable.Sort(list, cmp.Compare[units.Volume])
	return slices.Compact(list)
}

// crossing tries volumes up to twice the need. Then it halves the gap between
// the last one at which bags cost no more and the next.
func (c *comparer) crossing(n *Need) Crossing {
	k := Crossing{Material: n.Material, Need: n.Buy.Plan}
	last := -1
	for i, v := range c.volumes(min(2*n.Buy.Plan, units.MaxVolume)) {
		k.Points = append(k.Points, c.at(v))
		if !k.Points[i].bulkWins() {
			last = i
		}
	}
	switch {
	case last < 0:
		k.Always = true
		return k
	case last == len(k.Points)-1:
		k.Never = true
		return k
	}
	low, high := k.Points[last].Volume, k.Points[last+1].Volume
	for high-low > units.Litre {
		middle := low + (high-low)/2
		if at := c.at(middle); at.bulkWins() {
			high = middle
		} else {
			low = middle
		}
	}
	k.From = high
	return k
}

// Sentence says in words where bulk becomes cheaper.
func (k *Crossing) Sentence(m lang.Printer) string {
	name, need := k.Material.Name, m.VolumeLike(k.Need, k.Need)
	switch {
	case k.Always:
		return m.Print("{0}: bulk is cheaper from {2} on, the least looked at; you need {1}",
			name, need, m.VolumeLike(k.Points[0].Volume, k.Need))
	case k.Never:
		return m.Print("{0}: bags are cheaper, or as cheap, up to twice what you need; you need {1}", name, need)
	}
	return m.Print("{0}: bulk is cheaper from {2} on, trips counted; you need {1}",
		name, need, m.VolumeLike(k.From, k.Need))
}
