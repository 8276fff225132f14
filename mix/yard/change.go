package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// Change is what replanning changes about one offer.
type Change struct {
	Material *catalog.Material
	Pack     string
	Bulk     bool
	Before   int64
	After    int64

	offer int // its index
	size  units.Volume
}

// Changes compares two orders of one job, offer by offer, in the order of the
// earlier one and then of the later. Offers that stay the same are included,
// because people read down the list at the yard.
func Changes(before, after []Line) (changes []Change) {
	find := func(l *Line) *Change {
		for i := range changes {
			k := &changes[i]
			if k.offer == l.index && k.Material.ID == l.Material.ID && k.size == l.Offer.Size().Volume {
				return k
			}
		}
		changes = append(changes, Change{Material: l.Material, Pack: l.Offer.Size().String(),
			Bulk: l.Offer.Bulk.Volume > 0, offer: l.index, size: l.Offer.Size().Volume})
		return &changes[len(changes)-1]
	}
	for i := range before {
		find(&before[i]).Before += before[i].Count
	}
	for i := range after {
		find(&after[i]).After += after[i].Count
	}
	return changes
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
