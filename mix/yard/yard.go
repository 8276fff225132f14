package yard

import (
	"slices"
	"strconv"
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Yard is what has changed at the yard since a job was written: what is sold
// out, how few are left, what has been bought already. A job can contain one;
// then it is planned as things are now. The zero value changes nothing.
type Yard struct {
	Without []string // offers that are sold out: "bark-fines:2 cu ft"
	Only    *int64   // how many are left of every offer without a stock; nil when not known
	Bought  []Bought
}

// Bought is a number of packs of an offer that were bought already. They cover
// a part of the need and are not part of what is still to pay.
type Bought struct {
	Offer string // "peat:3.8 cu ft"
	Count int64
	Cost  *units.Money // of all of them, before tax; nil is what the offer asks for so many
}

// Object describes the yard in a document.
var Object = &doc.Object{ID: "yard", Name: "yard", Maybe: doc.MaybeOf[Yard], Tables: []doc.Fields{{
	{Name: "without", Type: &offerNames, About: `what is sold out: ["bark-fines:2 cu ft"]; a step of bulk is "bark-fines:1/2 cu yd bulk"`, At: func(y any) any { return &y.(*Yard).Without }},
	{Name: "only_stock", Type: &doc.MaybeCount, About: "so many are left of every offer that does not say", At: func(y any) any { return &y.(*Yard).Only }},
	{Name: "bought", Type: &bought, About: `what is bought already: [{"offer": "peat:3.8 cu ft", "count": 2}]`, At: func(y any) any { return &y.(*Yard).Bought }},
}}}

// bought reads what is bought already into a []Bought.
var bought = doc.Type{Takes: "list", Form: "list", Such: "bought",
	Of: func() *doc.Object { return boughtObject }, Read: doc.ReadEach}

// boughtObject describes one entry of what is bought.
var boughtObject = &doc.Object{Row: doc.RowOf[Bought], ID: "bought", Name: "what is bought", Tables: []doc.Fields{{
	{Name: "offer", Type: &offerName, About: `the material and the pack: "peat:3.8 cu ft"`, At: func(b any) any { return &b.(*Bought).Offer }},
	{Name: "count", Type: &doc.Count, About: "how many", At: func(b any) any { return &b.(*Bought).Count }},
	{Name: "cost", Type: &doc.Price, About: "what all of them cost, before tax; the offer's price when left out", At: func(b any) any { return &b.(*Bought).Cost }},
}}}

// offerName reads the name of an offer; see [Offer.Name].
var offerName = doc.Type{Takes: "an offer", Form: "text", Such: "an offer", Read: doc.ReadWord}

// offerNames reads a list of names of offers.
var offerNames = doc.Type{Takes: "list of offers", Form: "list", Items: &offerName, Read: readOfferNames}

// readOfferNames reads each name; whether there is such an offer is checked in
// Apply.
func readOfferNames(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*[]string) = doc.List(r, n, "offers", func(r *doc.Reader, n *json.Node, s *string) {
		offerName.Read(&offerName, r, n, s)
	})
}

// Objects lists the objects of a document that this package describes.
func Objects() []*doc.Object {
	return []*doc.Object{OfferObject, breakObject, HaulObject, DeliveryObject, Object, boughtObject}
}

// maxYard limits how many changes there may be, because each is looked up among
// all offers.
const maxYard = 1000

// Apply returns the offers as they are at the yard now, and what has been
// bought, as stock and as purchases. The offers that it is given do not change.
// material finds a material by its id, or returns nil. Problems are reported at
// the reader's path, below it as without[0] and bought[0].
func (y *Yard) Apply(r *doc.Reader, offers []Offer, material func(id string) *catalog.Material) (
	after []Offer, home []OnHand, bought []Purchase) {
	if len(y.Without) > maxYard || len(y.Bought) > maxYard {
		r.Problem(doc.JobLarge, message.Of("at most {0} offers that have changed", strconv.Itoa(maxYard)))
		return offers, nil, nil
	}
	after = append([]Offer(nil), offers...)
	home, bought = y.buyAll(r, after, material)
	gone := map[int]bool{}
	r.Enter("without")
	for i, name := range y.Without {
		r.EnterAt(i)
		for _, k := range findOffers(r, offers, name) {
			gone[k] = true
		}
		r.Leave()
	}
	r.Leave()
	for i := range after {
		o := &after[i]
		if y.Only != nil && o.Stock == nil {
			o.Stock = clone(y.Only)
		}
		o.gone = o.gone || gone[i] || o.Stock != nil && *o.Stock < o.Least
	}
	return after, home, bought
}

// buyAll takes what was bought out of the offers' stock and returns it as stock
// on hand, and as purchases.
func (y *Yard) buyAll(r *doc.Reader, offers []Offer, material func(id string) *catalog.Material) (
	home []OnHand, bought []Purchase) {
	r.Enter("bought")
	defer r.Leave()
	for i, b := range y.Bought {
		r.EnterAt(i)
		found := findOffers(r, offers, b.Offer)
		switch {
		case !r.Clean("count", "cost"):
		case b.Count < 1 || b.Count > doc.MaxCount:
			r.Problem(doc.CountSmall, message.Of("at least 1, and at most {0}", strconv.Itoa(doc.MaxCount)))
		case len(found) > 0:
			o := &offers[found[0]]
			b.checkCost(r, o)
			if all, ok := o.bring(r, material(o.Material), b.Count); ok {
				home = append(home, OnHand{Material: o.Material, Volume: all.Plan, fixed: all.FixedPlan()})
				bought = append(bought, Purchase{found[0], b.Count, clone(b.Cost)})
			}
		}
		r.Leave()
	}
	return home, bought
}

// checkCost reports a cost that is out of range.
func (b *Bought) checkCost(r *doc.Reader, o *Offer) {
	if b.Cost != nil {
		if *b.Cost < 0 || *b.Cost > units.MaxMoney {
			r.ProblemAt("cost", units.QuantityNegative, "zero or more")
		}
		return
	}
	if all, fits := o.PriceFor(b.Count).Times(b.Count); !fits || all > units.MaxMoney {
		r.ProblemAt("count", doc.CostLarge, "that many of these cost more than can be worked out")
	}
}

// bring takes count packs out of the offer's stock, and returns their loose
// volume.
func (o *Offer) bring(r *doc.Reader, m *catalog.Material, count int64) (all units.Range, ok bool) {
	if o.Stock != nil {
		left := max(*o.Stock-count, 0)
		o.Stock = &left
	}
	o.Least = 0 // met by what is bought
	each := units.Known(o.Size().Fixed())
	if m != nil {
		each, _ = o.Yield(m)
	}
	if all, ok = each.Planned().Times(count); !ok {
		r.Problem(doc.VolumeLarge, "that many come to more than can be worked out")
	}
	return all, ok
}

// Name returns the name of an offer at the yard: "peat:3.8 cu ft", with "bulk"
// at the end for a step of bulk.
func (o *Offer) Name() string {
	name := o.Material + ":" + o.Size().String()
	if o.Bulk.Volume > 0 {
		name += " bulk"
	}
	return name
}

// findOffers returns every offer that "material:pack" names. "bulk" at the end
// tells a step of bulk from a pack of the same size.
func findOffers(r *doc.Reader, offers []Offer, name string) (found []int) {
	material, pack, ok := strings.Cut(name, ":")
	material = strings.TrimSpace(material)
	pack, onlyBulk := strings.CutSuffix(strings.TrimSpace(pack), "bulk")
	var bulk []int
	size, err := units.ParseVolume(pack)
	for i := range offers {
		o := &offers[i]
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
	if len(offers) > 0 {
		var names []string
		for i := range min(len(offers), 12) {
			names = append(names, offers[i].Name())
		}
		hint = message.Of("no such offer; there are {=0}", string(doc.And(names)))
	}
	r.Add(r.Here(doc.OfferUnknown, name, hint))
	return nil
}

// Clone returns a copy that shares nothing with y, or nil for nil.
func (y *Yard) Clone() *Yard {
	if y == nil {
		return nil
	}
	c := &Yard{slices.Clone(y.Without), clone(y.Only), slices.Clone(y.Bought)}
	for i := range c.Bought {
		c.Bought[i].Cost = clone(c.Bought[i].Cost)
	}
	return c
}
