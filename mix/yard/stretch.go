package yard

import (
	"cmp"
	"math"
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/order"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
)

// Cheaper says which of bags and bulk costs less. The zero value is not known.
type Cheaper uint8

// What costs less. A volume that only one of the two covers is cheaper in that
// one. It is not known where the search was stopped before it could show which.
const (
	CheaperUnknown Cheaper = iota
	CheaperBags
	CheaperBulk
	CheaperSame    // both cost the same
	CheaperNeither // neither covers the volume by itself
)

// cheaperWords are the words for them in documents.
var cheaperWords = [...]string{"unknown", "bags", "bulk", "same", "neither"}

// String returns the word that a document has for it.
func (c Cheaper) String() string {
	if int(c) < len(cheaperWords) {
		return cheaperWords[c]
	}
	return cheaperWords[0]
}

// CheaperWords lists the words that documents have for [Cheaper].
func CheaperWords() []string { return slices.Clone(cheaperWords[:]) }

// Stretch is a range of volumes for all of which the same costs less: every
// volume above Over, up to and including UpTo. The ends are exact; as
// everywhere, a volume of at most [catalog.Slack] more counts as the end.
type Stretch struct {
	Over, UpTo units.Volume
	Cheaper    Cheaper
}

// beyond is the cost of a volume that the offers do not cover.
const beyond = units.Money(math.MaxInt64)

// costs bounds what some volumes cost: no order that covers any of them costs
// less than least, and for each there is one that costs no more than most.
type costs struct{ least, most units.Money }

// cheaper compares the costs of the same volumes in bags and in bulk.
func cheaper(bags, bulk costs) Cheaper {
	switch {
	case bags.least == beyond && bulk.least == beyond:
		return CheaperNeither
	case bulk.most < bags.least:
		return CheaperBulk
	case bags.most < bulk.least:
		return CheaperBags
	case bags.least == bags.most && bulk == bags:
		return CheaperSame
	}
	return CheaperUnknown
}

// step is one step of a saw-tooth: what every volume from first to last costs.
type step struct {
	first, last units.Volume
	costs
}

// curve is the least cost against the volume, as far as it was looked at. What
// covers a volume covers every smaller one, so the cost never falls, and the
// order for one volume gives the cost of all volumes up to what it holds.
type curve struct {
	request order.Request
	top     units.Volume // no larger volume is looked at
	steps   []step       // by volume; they do not overlap
}

// find returns the index of the step that holds v, or where it would be.
func (c *curve) find(v units.Volume) (i int, ok bool) {
	low, high := 0, len(c.steps)
	for low < high {
		if middle := (low + high) / 2; c.steps[middle].last < v {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low, low < len(c.steps) && c.steps[low].first <= v
}

// walk looks at one step after another, from the smallest volume on. It stops
// after so many.
func (c *curve) walk(most int, left *work) {
	v := catalog.Slack + 1
	for n := 0; n < most && v <= c.top && !left.spent(); n++ {
		v = c.at(v, left).last + 1
	}
}

// at returns the step from v on, looking it up or searching for it. Without
// work left, it is only v itself and what the steps next to it say of its cost.
func (c *curve) at(v units.Volume, left *work) step {
	i, ok := c.find(v)
	switch {
	case ok:
		return step{v, c.steps[i].last, c.steps[i].costs}
	case left.spent():
		return step{v, v, c.around(v, v)}
	}
	s := c.search(v, left)
	if i < len(c.steps) {
		s.last = min(s.last, c.steps[i].first-1)
	}
	c.steps = append(c.steps, s)
	copy(c.steps[i+1:], c.steps[i:])
	c.steps[i] = s
	return s
}

// around returns what the known steps say of the costs from low to high.
func (c *curve) around(low, high units.Volume) costs {
	out := costs{0, beyond}
	if i, ok := c.find(low); ok {
		out.least = c.steps[i].least
	} else if i > 0 {
		out.least = c.steps[i-1].least
	}
	if i, _ := c.find(high); i < len(c.steps) {
		out.most = c.steps[i].most
	}
	return out
}

// search finds the order of least cost for v.
func (c *curve) search(v units.Volume, left *work) step {
	q := c.request
	q.Needs = []units.Volume{v}
	found, err := order.Search(q)
	if e, ok := err.(*order.Error); ok && e.Code == order.ErrRange {
		left.add(q.Budget, len(q.Offers))
		return step{v, v, costs{0, beyond}} // the search gave up
	}
	left.add(found.Work, len(q.Offers))
	if err != nil {
		return step{v, c.top, costs{beyond, beyond}}
	}
	var holds units.Volume
	for i := range q.Offers {
		holds += q.Offers[i].Yield * units.Volume(found.Haul[i]+found.Deliver[i])
	}
	out := step{v, min(max(holds+catalog.Slack, v), c.top), costs{found.Cost, found.Cost}}
	if !found.Proven {
		out.least = found.Bound
	}
	return out
}

// work counts what a comparison may still take: units of work of the searches,
// and searches.
type work struct {
	units    int64
	searches int
}

// Looking for a step takes some work before the search begins, more with many
// offers.
const searchWork = 10

// spent reports whether nothing is left.
func (w *work) spent() bool { return w.units <= 0 || w.searches <= 0 }

// add counts one search among so many offers.
func (w *work) add(took int64, offers int) {
	w.units -= took + searchWork + int64(offers)
	w.searches--
}

// comparer compares bags and bulk of one material.
type comparer struct {
	bags, bulk curve
	left       work
	found      []Stretch // first and last volume of each, in no order
}

// both returns the step of either kind from v on.
func (c *comparer) both(v units.Volume) (bags, bulk step) {
	return c.bags.at(v, &c.left), c.bulk.at(v, &c.left)
}

// split finds what costs less for each volume from low to high. It takes the
// step at low; then the rest at once, where even its cheapest volume in the one
// costs more than its dearest in the other; or else each half of the rest.
func (c *comparer) split(low, high units.Volume) {
	if c.left.spent() {
		c.add(low, high, cheaper(c.bags.around(low, high), c.bulk.around(low, high)))
		return
	}
	bags, bulk := c.both(low)
	last := min(bags.last, bulk.last, high)
	c.add(low, last, cheaper(bags.costs, bulk.costs))
	if last == high {
		return
	}
	low = last + 1
	c.both(low)
	c.both(high)
	all := cheaper(c.bags.around(low, high), c.bulk.around(low, high))
	if all != CheaperUnknown {
		c.add(low, high, all)
		return
	}
	middle := low + (high-low)/2
	c.split(low, middle)
	if middle < high {
		c.split(middle+1, high)
	}
}

// add notes what costs less from low to high.
func (c *comparer) add(low, high units.Volume, is Cheaper) {
	c.found = append(c.found, Stretch{low, high, is})
}

// stretches returns what was found, in order and joined where it is the same.
// The slack is taken off the ends, so that they are sums of whole packs.
func (c *comparer) stretches(top units.Volume) (list []Stretch) {
	stable.Sort(c.found, func(a, b Stretch) int { return cmp.Compare(a.Over, b.Over) })
	for _, s := range c.found {
		if n := len(list); n > 0 && list[n-1].Cheaper == s.Cheaper {
			list[n-1].UpTo = s.UpTo
			continue
		}
		list = append(list, s)
	}
	for i := range list {
		list[i].Over = max(list[i].Over-1-catalog.Slack, 0)
		if list[i].UpTo < top {
			list[i].UpTo -= catalog.Slack
		}
	}
	return list
}
