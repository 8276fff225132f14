package mix

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Yard is what has changed at the yard since a job was written: what is sold
// out, how few there are left, what is bought already. A job may carry one, and
// then its plan is of the job as it stands there. The zero value changes
// nothing.
type Yard struct {
	Without []string // offers that are sold out: "bark-fines:2 cu ft"
	Only    *int64   // so many are left of every offer that does not say; nil when not known
	Bought  []Bought
}

// Bought is so many of an offer, bought already: they cover a part of the need,
// and are no part of what is still to pay.
type Bought struct {
	Offer string // "peat:3.8 cu ft"
	Count int64
}

var yardFields = []field[*Yard]{
	{"without", "list of offers", `what is sold out: ["bark-fines:2 cu ft"]; a step of bulk is "bark-fines:1/2 cu yd bulk"`, func(c *checker, n *json.Node, y *Yard) {
		y.Without = readList(c, n, "offers", func(c *checker, n *json.Node, s *string) { *s = readWord(c, n, "an offer") })
	}},
	{"only_stock", "whole number", "so many are left of every offer that does not say", func(c *checker, n *json.Node, y *Yard) { s := readCount(c, n, 0); y.Only = &s }},
	{"bought", "list", `what is bought already: [{"offer": "peat:3.8 cu ft", "count": 2}]`, func(c *checker, n *json.Node, y *Yard) {
		y.Bought = readList(c, n, "bought", func(c *checker, n *json.Node, b *Bought) { readObject(c, n, b, "what is bought", boughtFields) })
	}},
}

var boughtFields = []field[*Bought]{
	{"offer", "an offer", `the material and the pack: "peat:3.8 cu ft"`, func(c *checker, n *json.Node, b *Bought) { b.Offer = readWord(c, n, "an offer") }},
	{"count", "whole number", "how many", func(c *checker, n *json.Node, b *Bought) { b.Count = readCount(c, n, 1) }},
}

// Apply returns the job as it stands at the yard, over what the job itself
// says of the yard, and leaves j as it is. The error carries every problem, by
// the paths without[0] and bought[0].
func (y *Yard) Apply(j *Job) (*Job, error) {
	c := &checker{}
	after := y.apply(c, j.atYard(c))
	return after, c.err()
}

// atYard is the job with what it says of the yard applied.
func (j *Job) atYard(c *checker) *Job {
	if j.Yard == nil {
		return j
	}
	c.path.push("yard")
	defer c.path.pop()
	return j.Yard.apply(c, j)
}

// maxYard bounds what may have changed: each is looked up among the offers.
const maxYard = 1000

func (y *Yard) apply(c *checker, j *Job) *Job {
	after := *j
	after.Yard = nil
	if len(y.Without) > maxYard || len(y.Bought) > maxYard {
		c.problem("job.large", message.Of("at most {0} offers that have changed", itoa(maxYard)))
		return &after
	}
	after.Offers = append([]Offer(nil), j.Offers...)
	after.OnHand = append([]OnHand(nil), j.OnHand...)
	y.buyAll(c, &after)
	gone := map[int]bool{}
	c.path.push("without")
	for i, name := range y.Without {
		c.path.pushIndex(i)
		for _, k := range findOffers(c, j, name) {
			gone[k] = true
		}
		c.path.pop()
	}
	c.path.pop()
	for i := range after.Offers {
		o := &after.Offers[i]
		if y.Only != nil && o.Stock == nil {
			o.Stock = y.Only
		}
		o.gone = o.gone || gone[i] || o.Stock != nil && *o.Stock < o.Least
	}
	return &after
}

// buyAll moves what is bought from the offers' stock to what is on hand.
func (y *Yard) buyAll(c *checker, j *Job) {
	c.path.push("bought")
	defer c.path.pop()
	for i, b := range y.Bought {
		c.path.pushIndex(i)
		found := findOffers(c, j, b.Offer)
		switch {
		case !c.clean("count"):
		case b.Count < 1 || b.Count > maxCount:
			c.problem("count.small", message.Of("at least 1, and at most {0}", itoa(maxCount)))
		case len(found) > 0:
			o := &j.Offers[found[0]]
			o.bring(c, j, b.Count)
		}
		c.path.pop()
	}
}

// bring takes count of the offer home.
func (o *Offer) bring(c *checker, j *Job, count int64) {
	if o.Stock != nil {
		left := max(*o.Stock-count, 0)
		o.Stock = &left
	}
	o.Least = 0 // met by what is bought
	each := o.Size().Volume
	if m := j.materialRow(o.Material); m != nil {
		span, _ := o.yield(m)
		each = span.Plan
	}
	all, ok := each.Times(count)
	if !ok {
		c.problem("volume.large", "so many come to more than can be worked out")
		return
	}
	j.OnHand = append(j.OnHand, OnHand{Material: o.Material, Volume: all})
}

// materialRow is the row of the job or else of the catalogue, or nil.
func (j *Job) materialRow(id string) *Material {
	for i := range j.Materials {
		if j.Materials[i].ID == id {
			return &j.Materials[i]
		}
	}
	if index, ok := stock().material[id]; ok {
		return stock().materials[index]
	}
	return nil
}

// findOffers looks "material:pack" up among the job's offers: all that match. A
// pack and a step of bulk of one size are told apart by "bulk" at the end.
func findOffers(c *checker, j *Job, name string) (found []int) {
	material, pack, ok := strings.Cut(name, ":")
	material = strings.TrimSpace(material)
	pack, onlyBulk := strings.CutSuffix(strings.TrimSpace(pack), "bulk")
	var names []string
	var bulk []int
	size, err := units.ParseVolume(pack)
	for i := range j.Offers {
		o := &j.Offers[i]
		kind := ""
		if o.Bulk.Volume > 0 {
			kind = " bulk"
		}
		names = append(names, o.Material+":"+o.Size().String()+kind)
		switch {
		case !ok || err != nil || o.Material != material || o.Size().Volume != size:
		case o.Bulk.Volume > 0:
			bulk = append(bulk, i)
		case !onlyBulk:
			found = append(found, i)
		}
	}
	if len(found) == 0 {
		found = bulk
	}
	if len(found) > 0 {
		return found
	}
	hint := message.Text(`name a material and a pack, such as "bark-fines:2 cu ft"`)
	if len(names) > 0 {
		hint = message.Of("no such offer; there are {=0}", string(and(names[:min(len(names), 12)])))
	}
	node := &Problem{Path: c.path.String(), Code: "offer.unknown", Value: clip(name), Hint: hint}
	c.add(node)
	return nil
}

// Change is what replanning does to one offer of the order.
type Change struct {
	Material *Material
	Pack     string
	Bulk     bool
	Before   int64
	After    int64

	offer int // its index
	size  units.Volume
}

// Changes compares the orders of two plans of one job, offer by offer, in the
// order of the earlier and then of the later; before may be nil. What is the
// same is left in: somebody reads down the list at the yard.
func Changes(before, after *Plan) (changes []Change) {
	find := func(l *Line) *Change {
		for i := range changes {
			if k := &changes[i]; k.offer == l.index && k.Material.ID == l.Material.ID && k.size == l.Offer.Size().Volume {
				return k
			}
		}
		changes = append(changes, Change{Material: l.Material, Pack: l.Offer.Size().String(), Bulk: l.Offer.Bulk.Volume > 0, offer: l.index, size: l.Offer.Size().Volume})
		return &changes[len(changes)-1]
	}
	if before != nil {
		for i := range before.Order {
			find(&before.Order[i]).Before += before.Order[i].Count
		}
	}
	for i := range after.Order {
		find(&after.Order[i]).After += after.Order[i].Count
	}
	return changes
}

// Kind is what becomes of the offer: "new", "gone", "more", "fewer" or "same".
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
