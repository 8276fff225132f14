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

// Object is the yard in a document.
var Object = &doc.Object{Maybe: func(at any, fresh bool) any {
	m := at.(**Yard)
	if fresh {
		*m = &Yard{}
	}
	if *m == nil {
		return nil
	}
	return *m
}, ID: "yard", Name: "yard", Tables: []doc.Fields{doc.Fields{
	{Name: "without", Type: &offerNames, About: `what is sold out: ["bark-fines:2 cu ft"]; a step of bulk is "bark-fines:1/2 cu yd bulk"`, At: func(y any) any { return &y.(*Yard).Without }},
	{Name: "only_stock", Type: &doc.MaybeCount, About: "so many are left of every offer that does not say", At: func(y any) any { return &y.(*Yard).Only }},
	{Name: "bought", Type: &bought, About: `what is bought already: [{"offer": "peat:3.8 cu ft", "count": 2}]`, At: func(y any) any { return &y.(*Yard).Bought }},
}}}

var bought = doc.Type{Takes: "list", Form: "list", Such: "bought", Of: func() *doc.Object { return boughtObject }, Read: doc.ReadEach}

var boughtObject = &doc.Object{Row: func(at any, i, n int) any {
	l := at.(*[]Bought)
	if n > 0 {
		*l = make([]Bought, n)
	}
	if i >= len(*l) {
		return nil
	}
	return &(*l)[i]
}, ID: "bought", Name: "what is bought", Tables: []doc.Fields{doc.Fields{
	{Name: "offer", Type: &offerName, About: `the material and the pack: "peat:3.8 cu ft"`, At: func(b any) any { return &b.(*Bought).Offer }},
	{Name: "count", Type: &doc.Count, About: "how many", At: func(b any) any { return &b.(*Bought).Count }},
}}}

var offerName = doc.Type{Takes: "an offer", Form: "text", Such: "an offer", Read: doc.ReadWord}

var offerNames = doc.Type{Takes: "list of offers", Form: "list", Items: &offerName, Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*[]string) = doc.List(r, n, "offers", func(r *doc.Reader, n *json.Node, s *string) { offerName.Read(&offerName, r, n, s) })
}}

// Objects lists the objects of a document that package yard has.
func Objects() []*doc.Object {
	return []*doc.Object{OfferObject, breakObject, HaulObject, DeliveryObject, Object, boughtObject}
}

// maxYard bounds what may have changed: each is looked up among the offers.
const maxYard = 1000

// Apply returns the offers as they stand at the yard, and what is bought there as
// stock. material finds a material by its id, or nil. Problems are at the reader's
// path, by the paths without[0] and bought[0].
func (y *Yard) Apply(r *doc.Reader, offers []Offer, material func(id string) *catalog.Material) (after []Offer, home []OnHand) {
	if len(y.Without) > maxYard || len(y.Bought) > maxYard {
		r.Problem("job.large", message.Of("at most {0} offers that have changed", strconv.Itoa(maxYard)))
		return offers, nil
	}
	after = append([]Offer(nil), offers...)
	home = y.buyAll(r, after, material)
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
			o.Stock = y.Only
		}
		o.gone = o.gone || gone[i] || o.Stock != nil && *o.Stock < o.Least
	}
	return after, home
}

// buyAll takes what is bought out of the offers' stock, and home.
func (y *Yard) buyAll(r *doc.Reader, offers []Offer, material func(id string) *catalog.Material) (home []OnHand) {
	r.Enter("bought")
	defer r.Leave()
	for i, b := range y.Bought {
		r.EnterAt(i)
		found := findOffers(r, offers, b.Offer)
		switch {
		case !r.Clean("count"):
		case b.Count < 1 || b.Count > doc.MaxCount:
			r.Problem("count.small", message.Of("at least 1, and at most {0}", strconv.Itoa(doc.MaxCount)))
		case len(found) > 0:
			o := &offers[found[0]]
			if all, ok := o.bring(r, material(o.Material), b.Count); ok {
				home = append(home, OnHand{Material: o.Material, Volume: all})
			}
		}
		r.Leave()
	}
	return home
}

// bring takes count of the offer home, and returns what they make loose.
func (o *Offer) bring(r *doc.Reader, m *catalog.Material, count int64) (all units.Volume, ok bool) {
	if o.Stock != nil {
		left := max(*o.Stock-count, 0)
		o.Stock = &left
	}
	o.Least = 0 // met by what is bought
	each := o.Size().Volume
	if m != nil {
		yield, _ := o.Yield(m)
		each = yield.Plan
	}
	if all, ok = each.Times(count); !ok {
		r.Problem("volume.large", "so many come to more than can be worked out")
	}
	return all, ok
}

// Name is how an offer is named at the yard: "peat:3.8 cu ft", and a step of bulk
// with "bulk" at the end.
func (o *Offer) Name() string {
	name := o.Material + ":" + o.Size().String()
	if o.Bulk.Volume > 0 {
		name += " bulk"
	}
	return name
}

// findOffers looks "material:pack" up among the offers: all that match. A pack and
// a step of bulk of one size are told apart by "bulk" at the end.
func findOffers(r *doc.Reader, offers []Offer, name string) (found []int) {
	material, pack, ok := strings.Cut(name, ":")
	material = strings.TrimSpace(material)
	pack, onlyBulk := strings.CutSuffix(strings.TrimSpace(pack), "bulk")
	var names []string
	var bulk []int
	size, err := units.ParseVolume(pack)
	for i := range offers {
		o := &offers[i]
		names = append(names, o.Name())
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
		hint = message.Of("no such offer; there are {=0}", string(doc.And(names[:min(len(names), 12)])))
	}
	r.Add(r.Here("offer.unknown", name, hint))
	return nil
}

// Clone is a copy that shares nothing with y; nil of nil.
func (y *Yard) Clone() *Yard {
	if y == nil {
		return nil
	}
	return &Yard{slices.Clone(y.Without), clone(y.Only), slices.Clone(y.Bought)}
}
