package mix

import (
	"example.org/barrow/mix/wire"
	"example.org/barrow/units"
)

// Offer is a pack of a material as a yard sells it: a bag or bale (Pack), or a
// step of bulk (Bulk). One of the two is given.
type Offer struct {
	Material string
	Pack     Size
	Bulk     Size
	OpensTo  units.Volume // loose volume of a compressed pack; 0 when not said
	Price    *units.Money // of one; nil when not said
	Weight   units.Mass   // of one; 0 when not said
	Stock    *int64       // how many there are; nil when not said
}

// Size returns the pack or the step of bulk.
func (o *Offer) Size() Size {
	if o.Bulk.Volume > 0 {
		return o.Bulk
	}
	return o.Pack
}

var offerFields = []field[Offer]{
	{"material", "a material", "what it is", func(c *checker, n *wire.Node, o *Offer) { o.Material, _ = readText(c, n, "the id of a material") }},
	{"pack", "volume", `a bag or bale, "2 cu ft"; or bulk`, func(c *checker, n *wire.Node, o *Offer) { readSize(c, n, &o.Pack) }},
	{"bulk", "volume", `the step that loose material is sold by, "1/2 cu yd"; or pack`, func(c *checker, n *wire.Node, o *Offer) { readSize(c, n, &o.Bulk) }},
	{"opens_to", "volume", "what a compressed pack makes when it is fluffed", func(c *checker, n *wire.Node, o *Offer) { o.OpensTo = readVolume(c, n) }},
	{"price", "amount", "of one", func(c *checker, n *wire.Node, o *Offer) { m := readMoney(c, n); o.Price = &m }},
	{"weight", "weight", "of one, as its label says", func(c *checker, n *wire.Node, o *Offer) { o.Weight = readMass(c, n) }},
	{"stock", "whole number", "how many the yard has", func(c *checker, n *wire.Node, o *Offer) { s := readCount(c, n, 0); o.Stock = &s }},
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
	if o.Material == "" {
		c.problemAt("material", "field.missing", "of which material?")
	} else if _, ok := b.material[o.Material]; !ok {
		c.path.push("material")
		c.add(c.unknown("material.unknown", o.Material, b.materialNames(), "barrow list materials shows them; a job may add its own under materials"))
		c.path.pop()
	}
	switch {
	case o.Pack.Volume <= 0 && o.Bulk.Volume <= 0:
		c.problemAt("pack", "field.missing", `how large is one? pack, such as "2 cu ft", or bulk, such as "1/2 cu yd"`)
	case o.Pack.Volume > 0 && o.Bulk.Volume > 0:
		c.problemAt("bulk", "field.both", "give pack or bulk, not both")
	case o.Size().Volume <= Slack:
		c.problemAt("pack", "quantity.small", "a pack holds more than 1 mL")
	case o.OpensTo > 0 && o.Bulk.Volume > 0:
		c.problemAt("opens_to", "field.alone", "opens_to goes with a compressed pack")
	case o.OpensTo > 0 && o.OpensTo < o.Pack.Volume:
		c.problemAt("opens_to", "offer.opens", "a pack does not open to less than its own volume, "+o.Pack.Text)
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
