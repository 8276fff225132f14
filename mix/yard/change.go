package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// Side is one of two plans of a job that are compared: the job's offers as they
// are then, what is to be bought and what is bought already.
type Side struct {
	Offers        []Offer
	Lines, Bought []Line
	Material      func(id string) *catalog.Material // of the job, or nil
}

// Change is what replanning changes about one offer. Before and After are how
// many are to be bought.
type Change struct {
	Material *catalog.Material
	Pack     string
	Bulk     bool
	Before   int64
	After    int64
	Bought   int64 // how many were bought in between; less than zero for a purchase taken back
	SoldOut  bool  // since the job was written
	Scarce   bool  // After is all that there is in stock
	// Prices of one before and now; nil when not known. Priced says that they differ.
	Prices [2]*units.Money
	Priced bool

	offer int // its index
	size  units.Volume
}

// Changes compares two plans of one job, offer by offer, in the order of the
// earlier one, then of the later, then of what was bought, then of the prices.
// Offers that stay the same are included, because people read down the list at
// the yard; one that neither plan buys is only there for its price or for what
// was bought of it.
func Changes(before, after Side) []Change {
	c := &comparison{at: map[int]int{}}
	for i := range before.Lines {
		c.of(&before.Lines[i]).Before += before.Lines[i].Count
	}
	for i := range after.Lines {
		l := &after.Lines[i]
		k := c.of(l)
		k.After += l.Count
		k.Scarce = l.Offer.Stock != nil && *l.Offer.Stock <= k.After
	}
	for i := range after.Bought {
		c.of(&after.Bought[i]).Bought += after.Bought[i].Count
	}
	for i := range before.Bought {
		c.of(&before.Bought[i]).Bought -= before.Bought[i].Count
	}
	c.offers(before.Offers, after)
	return c.worth()
}

// comparison collects changes.
type comparison struct {
	list []Change
	at   map[int]int // the last change of each offer in list, by its index
}

// of returns the change of a line's offer, and adds it on first use. An offer of one
// index may be another one in the other plan; then there are two.
func (c *comparison) of(l *Line) *Change {
	if i, ok := c.at[l.index]; ok && c.list[i].is(l) {
		return &c.list[i]
	} else if ok {
		for i := range c.list {
			if c.list[i].is(l) {
				return &c.list[i]
			}
		}
	}
	c.at[l.index] = len(c.list)
	c.list = append(c.list, Change{Material: l.Material, Pack: l.Offer.Size().String(),
		Bulk: l.Offer.Bulk.Volume > 0, offer: l.index, size: l.Offer.Size().Volume})
	return &c.list[len(c.list)-1]
}

// is reports whether a line is of the change's offer.
func (c *Change) is(l *Line) bool {
	return c.offer == l.index && c.Material.ID == l.Material.ID && c.size == l.Offer.Size().Volume
}

// offers notes what became of the offers themselves. Where the list of offers is
// another one, nothing is known of that.
func (c *comparison) offers(before []Offer, after Side) {
	for i := range min(len(before), len(after.Offers)) {
		was, is := &before[i], &after.Offers[i]
		priced := (was.Price == nil) != (is.Price == nil) || was.Price != nil && *was.Price != *is.Price
		if _, bought := c.at[i]; !bought && !priced || was.Material != is.Material || was.Name() != is.Name() {
			continue
		}
		m := after.Material(is.Material)
		if m == nil {
			continue
		}
		k := c.of(&Line{Material: m, Offer: is, index: i})
		k.SoldOut, k.Priced = is.gone && !was.gone, priced
		k.Prices = [2]*units.Money{clone(was.Price), clone(is.Price)}
	}
}

// worth returns the changes of offers that are or were bought, or whose price is
// another.
func (c *comparison) worth() (list []Change) {
	for i := range c.list {
		if k := &c.list[i]; k.Before > 0 || k.After > 0 || k.Bought != 0 || k.Priced {
			list = append(list, *k)
		}
	}
	return list
}

// Kind returns what happens to the offer: "new", "gone", "more", "fewer" or
// "same".
func (c *Change) Kind() string {
	switch {
	case c.Before == c.After:
		return "same"
	case c.Before == 0:
		return "new"
	case c.After == 0:
		return "gone"
	case c.Before < c.After:
		return "more"
	}
	return "fewer"
}

// Why returns why fewer are to be bought, or none: "sold-out", "bought",
// "scarce" when these are all there are, or "not-needed". It is "" where as many
// or more are to be bought.
func (c *Change) Why() string {
	switch {
	case c.After >= c.Before:
		return ""
	case c.SoldOut:
		return "sold-out"
	case c.After+c.Bought >= c.Before:
		return "bought"
	case c.Scarce:
		return "scarce"
	}
	return "not-needed"
}
