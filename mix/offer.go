package mix

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Offer is a pack of a material as a yard sells it: a bag or bale (Pack), or a
// step of bulk (Bulk). One of the two is given.
type Offer struct {
	Material string
	Pack     Size
	Bulk     Size
	OpensTo  units.Volume // loose volume of a compressed pack; 0 when not said
	Price    *units.Money // of one; nil when not said
	Breaks   []Break      // what one costs from a count on, by rising count
	Deposit  units.Money  // on each, paid back later
	Weight   units.Mass   // of one; 0 when not said
	Stock    *int64       // how many there are; nil when not said
	Least    int64        // at least so many, if any; 0 and 1 are any
	Deliver  bool         // the yard's own vehicle may bring it

	gone bool // sold out since the job was written
}

// Break is a price for many: each at Price, from From on.
type Break struct {
	From  int64
	Price *units.Money // nil is a problem
}

// Size returns the pack or the step of bulk.
func (o *Offer) Size() Size {
	if o.Bulk.Volume > 0 {
		return o.Bulk
	}
	return o.Pack
}

// PriceFor is what each costs when count are bought.
func (o *Offer) PriceFor(count int64) units.Money {
	if o.Price == nil {
		return 0
	}
	price := *o.Price
	for _, b := range o.Breaks {
		if count >= b.From && b.Price != nil {
			price = *b.Price
		}
	}
	return price
}

var offerFields = []field[*Offer]{
	{"material", "a material", "what it is", func(c *checker, n *json.Node, o *Offer) { o.Material = readWord(c, n, "a material") }},
	{"pack", "volume", `a bag or bale, "2 cu ft"; or bulk`, func(c *checker, n *json.Node, o *Offer) { readSize(c, n, &o.Pack) }},
	{"bulk", "volume", `the step that loose material is sold by, "1/2 cu yd"; or pack`, func(c *checker, n *json.Node, o *Offer) { readSize(c, n, &o.Bulk) }},
	{"opens_to", "volume", "what a compressed pack makes when it is fluffed", func(c *checker, n *json.Node, o *Offer) { o.OpensTo = readVolume(c, n) }},
	{"breaks", "list", `cheaper by the number: [{"from": 10, "price": "4.25"}]`, func(c *checker, n *json.Node, o *Offer) {
		o.Breaks = readList(c, n, "breaks", func(c *checker, n *json.Node, b *Break) { readObject(c, n, b, "a break", breakFields) })
	}},
	{"deposit", "amount", "on each, paid back later", func(c *checker, n *json.Node, o *Offer) { o.Deposit = readMoney(c, n) }},
	{"least", "whole number", "at least so many, if any", func(c *checker, n *json.Node, o *Offer) { o.Least = readCount(c, n, 1) }},
	{"deliver", "true or false", "whether the yard brings it, see delivery", func(c *checker, n *json.Node, o *Offer) { o.Deliver = readBool(c, n) }},
	{"price", "amount", "of one", func(c *checker, n *json.Node, o *Offer) { m := readMoney(c, n); o.Price = &m }},
	{"weight", "weight", "of one, as its label says", func(c *checker, n *json.Node, o *Offer) { o.Weight = readMass(c, n) }},
	{"stock", "whole number", "how many the yard has", func(c *checker, n *json.Node, o *Offer) { s := readCount(c, n, 0); o.Stock = &s }},
}

var breakFields = []field[*Break]{
	{"from", "whole number", "this many, or more", func(c *checker, n *json.Node, b *Break) { b.From = readCount(c, n, 2) }},
	{"price", "amount", "of each then", func(c *checker, n *json.Node, b *Break) { m := readMoney(c, n); b.Price = &m }},
}

// checkOffers holds every offer to what the order relies on.
func (w *work) checkOffers(c *checker) {
	c.path.push("offers")
	for i := range w.job.Offers {
		c.path.pushIndex(i)
		w.job.Offers[i].check(c, w.book)
		c.path.pop()
	}
	c.path.pop()
}

func (o *Offer) check(c *checker, b *book) {
	o.checkPrices(c)
	if o.Material == "" {
		if c.clean("material") {
			c.problemAt("material", "field.missing", "of which material?")
		}
	} else if _, ok := b.material[o.Material]; !ok {
		c.path.push("material")
		b.unknownMaterial(c, o.Material)
		c.path.pop()
	}
	switch {
	case !c.clean("pack", "bulk"):
	case o.Pack.Volume <= 0 && o.Bulk.Volume <= 0:
		c.problemAt("pack", "field.missing", `how large is one? pack, such as "2 cu ft", or bulk, such as "1/2 cu yd"`)
	case o.Pack.Volume > 0 && o.Bulk.Volume > 0:
		c.problemAt("bulk", "field.both", "give pack or bulk, not both")
	case o.Size().Volume <= Slack:
		c.problemAt("pack", "quantity.small", "a pack holds more than 1 mL")
	case o.OpensTo > 0 && o.Bulk.Volume > 0:
		c.problemAt("opens_to", "field.alone", "opens_to goes with a compressed pack")
	case o.OpensTo > 0 && o.OpensTo < o.Pack.Volume:
		c.problemAt("opens_to", "offer.opens", message.Of("a pack does not open to less than its own volume, {#0}", o.Pack.String()))
	}
}

// checkPrices holds breaks to a rising count and a price to fall from.
func (o *Offer) checkPrices(c *checker) {
	c.path.push("breaks")
	last := int64(1)
	for i, b := range o.Breaks {
		c.path.pushIndex(i)
		switch {
		case b.From == 0:
			c.problemAt("from", "field.missing", "from how many on?")
		case b.From <= last:
			c.problemAt("from", "break.order", message.Of("more than {0}: breaks go up", itoa(last)))
		}
		if b.Price == nil {
			c.problemAt("price", "field.missing", "what does each cost then?")
		} else if *b.Price < 0 || *b.Price > units.MaxMoney {
			c.problemAt("price", "quantity.negative", "zero or more")
		}
		last = max(last, b.From)
		c.path.pop()
	}
	c.path.pop()
	if len(o.Breaks) > 0 && o.Price == nil {
		c.problemAt("price", "field.missing", "what does one cost, below the first break?")
	}
	if o.Stock != nil && *o.Stock < 0 {
		c.problemAt("stock", "quantity.negative", "zero or more")
	}
	if o.Least < 0 || o.Least > maxCount {
		c.problemAt("least", "quantity.negative", "zero or more")
	}
	if o.Weight < 0 || o.Weight > units.MaxMass {
		c.problemAt("weight", "quantity.negative", "zero or more")
	}
	if o.Deposit < 0 || o.Deposit > units.MaxMoney {
		c.problemAt("deposit", "quantity.negative", "zero or more")
	}
	if o.Price != nil && (*o.Price < 0 || *o.Price > units.MaxMoney) {
		c.problemAt("price", "quantity.negative", "zero or more")
	}
	if o.Stock != nil && *o.Stock >= 0 && *o.Stock < o.Least {
		c.problemAt("least", "offer.least", "more than there are in stock")
	}
}

// yield is the loose volume of one of the offer, and where the figure comes
// from when it is not the pack itself. A bale of a size that the material is
// sold compressed in is taken as one: planned with the least it opens to, so
// that it does not run short.
func (o *Offer) yield(m *Material) (each Span, from Source) {
	size := o.Size().Volume
	if o.OpensTo > 0 {
		return Exactly(o.OpensTo), fromJob
	}
	if o.Bulk.Volume == 0 && m.isBale(size) {
		return m.opened(size), m.OpensSource
	}
	return Exactly(size), Source{}
}

// isBale reports whether the material is commonly sold compressed in size.
func (m *Material) isBale(size units.Volume) bool {
	for _, b := range m.Bales {
		if d := b.Volume - size; -Slack <= d && d <= Slack {
			return true
		}
	}
	return false
}

// opened is what a bale of size makes.
func (m *Material) opened(size units.Volume) Span {
	low, _ := size.MulDiv(m.OpensLow.Num(), m.OpensLow.Den())
	high, ok := size.MulDiv(m.OpensHigh.Num(), m.OpensHigh.Den())
	if !ok {
		high = units.MaxVolume
	}
	return Span{low, low, high}
}
