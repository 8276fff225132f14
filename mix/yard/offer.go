package yard

import (
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Offer is a pack of a material as a yard sells it: a bag or bale (Pack), or a
// step of bulk (Bulk). Exactly one of the two is given.
type Offer struct {
	doc.AsTyped

	Material string
	Pack     catalog.Size
	Bulk     catalog.Size
	OpensTo  units.Volume // loose volume of a compressed pack; 0 when not known
	Price    *units.Money // of one; nil when not known
	Breaks   []Break      // prices for larger counts, by rising count
	Deposit  units.Money  // on each, paid back later
	Weight   units.Mass   // of one; 0 when not known
	Stock    *int64       // how many there are; nil when not known
	Least    int64        // the smallest number sold; 0 and 1 are no minimum
	Deliver  bool         // the yard's own vehicle can bring it

	gone bool // sold out since the job was written
}

// Break is a price for larger counts: from From on, each pack costs Price.
type Break struct {
	From  int64
	Price *units.Money // nil is a problem
}

// Size returns the size of the pack, or of the step of bulk.
func (o *Offer) Size() catalog.Size {
	if o.Bulk.Volume > 0 {
		return o.Bulk
	}
	return o.Pack
}

// PriceFor returns what each pack costs when count are bought, or 0 without a
// price.
func (o *Offer) PriceFor(count int64) units.Money {
	if o.Price == nil {
		return 0
	}
	price := *o.Price
	for i := len(o.Breaks) - 1; i >= 0; i-- {
		if b := &o.Breaks[i]; count >= b.From && b.Price != nil {
			return *b.Price
		}
	}
	return price
}

// OfferObject describes an offer in a document.
var OfferObject = &doc.Object{Row: doc.RowOf[Offer], ID: "offer", Name: "an offer", Tables: []doc.Fields{{
	{Name: "material", Type: &catalog.MaterialWord, About: "what it is", At: func(o any) any { return &o.(*Offer).Material }},
	{Name: "pack", Type: &catalog.SizeType, About: `a bag or bale, "2 cu ft"; or bulk`, At: func(o any) any { return &o.(*Offer).Pack }},
	{Name: "bulk", Type: &catalog.SizeType, About: `the step that loose material is sold by, "1/2 cu yd"; or pack`, At: func(o any) any { return &o.(*Offer).Bulk }},
	{Name: "opens_to", Type: &doc.Volume, About: "what a compressed pack makes when it is fluffed", At: func(o any) any { return &o.(*Offer).OpensTo }},
	{Name: "breaks", Type: &breaks, About: `cheaper by the number: [{"from": 10, "price": "4.25"}]`, At: func(o any) any { return &o.(*Offer).Breaks }},
	{Name: "deposit", Type: &doc.Money, About: "on each, paid back later", At: func(o any) any { return &o.(*Offer).Deposit }},
	{Name: "least", Type: &doc.Count, About: "at least so many, if any", At: func(o any) any { return &o.(*Offer).Least }},
	{Name: "deliver", Type: &doc.Bool, About: "whether the yard brings it, see delivery", At: func(o any) any { return &o.(*Offer).Deliver }},
	{Name: "price", Type: &doc.Price, About: "of one", At: func(o any) any { return &o.(*Offer).Price }},
	{Name: "weight", Type: &doc.Mass, About: "of one, as its label says", At: func(o any) any { return &o.(*Offer).Weight }},
	{Name: "stock", Type: &doc.MaybeCount, About: "how many the yard has", At: func(o any) any { return &o.(*Offer).Stock }},
}}}

// The types of fields of an offer. A break starts at two: the price of one is
// the offer's own.
var (
	breaks = doc.Type{Takes: "list", Form: "list", Such: "breaks",
		Of: func() *doc.Object { return breakObject }, Read: doc.ReadEach}
	fromTwo = doc.Type{Takes: "whole number", Form: "count", Least: 2, Read: doc.ReadCount}
)

// breakObject describes a price break in a document.
var breakObject = &doc.Object{Row: doc.RowOf[Break], ID: "price_break", Name: "a break", Help: "a price break of an offer", Tables: []doc.Fields{{
	{Name: "from", Type: &fromTwo, About: "this many, or more", At: func(b any) any { return &b.(*Break).From }},
	{Name: "price", Type: &doc.Price, About: "of each then", At: func(b any) any { return &b.(*Break).Price }},
}}}

// maxBreaks is the most price breaks of one offer, and allBreaks of all offers.
const (
	maxBreaks = 1000
	allBreaks = 20_000
)

// Check reports what is wrong with the offer by itself.
func (o *Offer) Check(r *doc.Reader, s *catalog.Scope) {
	o.checkPrices(r)
	if o.Material == "" {
		if r.Clean("material") {
			r.ProblemAt("material", doc.FieldMissing, "of which material?")
		}
	} else if _, ok := s.Index(o.Material); !ok {
		r.Enter("material")
		s.UnknownMaterial(r, o.Material)
		r.Leave()
	}
	switch {
	case !r.Clean("pack", "bulk"):
	case o.Pack.Volume <= 0 && o.Bulk.Volume <= 0:
		r.ProblemAt("pack", doc.FieldMissing, `how large is one? pack, such as "2 cu ft", or bulk, such as "1/2 cu yd"`)
	case o.Pack.Volume > 0 && o.Bulk.Volume > 0:
		r.ProblemAt("bulk", doc.FieldBoth, "give pack or bulk, not both")
	case o.Size().Volume <= catalog.Slack:
		r.ProblemAt("pack", doc.QuantitySmall, "a pack holds more than 1 mL")
	case o.OpensTo > 0 && o.Bulk.Volume > 0:
		r.ProblemAt("opens_to", doc.FieldAlone, "opens_to goes with a compressed pack")
	case o.OpensTo > 0 && o.OpensTo < o.Pack.Volume:
		r.ProblemAt("opens_to", doc.OfferOpens,
			message.Of("a pack does not open to less than its own volume, {#0}", o.Pack.String()))
	}
}

// checkPrices reports breaks that do not rise or have no price, and figures out
// of range.
func (o *Offer) checkPrices(r *doc.Reader) {
	if len(o.Breaks) > maxBreaks {
		r.ProblemAt("breaks", doc.JobLarge, message.Of("at most {0} of these", itoa(maxBreaks)))
		return
	}
	r.Enter("breaks")
	last := int64(1)
	for i, b := range o.Breaks {
		r.EnterAt(i)
		switch {
		case b.From == 0:
			r.ProblemAt("from", doc.FieldMissing, "from how many?")
		case b.From <= last:
			r.ProblemAt("from", doc.BreakOrder, message.Of("more than {0}: breaks go up", itoa(last)))
		}
		if b.Price == nil {
			r.ProblemAt("price", doc.FieldMissing, "what does each cost then?")
		} else if *b.Price < 0 || *b.Price > units.MaxMoney {
			r.ProblemAt("price", units.QuantityNegative, "zero or more")
		}
		last = max(last, b.From)
		r.Leave()
	}
	r.Leave()
	if len(o.Breaks) > 0 && o.Price == nil {
		r.ProblemAt("price", doc.FieldMissing, "what does one cost, below the first break?")
	}
	if o.Stock != nil && *o.Stock < 0 {
		r.ProblemAt("stock", units.QuantityNegative, "zero or more")
	}
	if o.Least < 0 || o.Least > doc.MaxCount {
		r.ProblemAt("least", units.QuantityNegative, "zero or more")
	}
	if o.Weight < 0 || o.Weight > units.MaxMass {
		r.ProblemAt("weight", units.QuantityNegative, "zero or more")
	}
	if o.Deposit < 0 || o.Deposit > units.MaxMoney {
		r.ProblemAt("deposit", units.QuantityNegative, "zero or more")
	}
	if o.Price != nil && (*o.Price < 0 || *o.Price > units.MaxMoney) {
		r.ProblemAt("price", units.QuantityNegative, "zero or more")
	}
	if o.Stock != nil && *o.Stock >= 0 && *o.Stock < o.Least {
		r.ProblemAt("least", doc.OfferLeast, "more than there are in stock")
	}
}

// Yield returns the loose volume that one pack of the offer makes, and where
// the figure comes from when it is not the size of the pack. A pack of a size
// in which the material is sold compressed counts as a bale. It is planned with
// the least that it opens to, so that it does not run short.
func (o *Offer) Yield(m *catalog.Material) (each units.Range, from catalog.Source) {
	size := o.Size()
	if o.OpensTo > 0 {
		return units.Known(o.FixedVolume("opens_to", o.OpensTo)), catalog.FromJob
	}
	if o.Bulk.Volume == 0 && m.IsBale(size.Volume) {
		return m.Opened(size), m.OpensSource
	}
	return units.Known(size.Fixed()), catalog.Source{}
}

// Clone returns a copy that shares nothing with o.
func (o *Offer) Clone() Offer {
	c := *o
	c.Price, c.Stock = clone(o.Price), clone(o.Stock)
	c.Breaks = slices.Clone(o.Breaks)
	for i := range c.Breaks {
		c.Breaks[i].Price = clone(c.Breaks[i].Price)
	}
	return c
}

// clone returns a pointer to a copy, or nil.
func clone[T any](p *T) *T {
	if p == nil {
		return nil
	}
	c := *p
	return &c
}
