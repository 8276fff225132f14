package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Purchase is a number of packs that were bought already, of an offer by its
// index in the job. [Yard.Apply] makes it, and [Terms.Purchases] adds it up.
type Purchase struct {
	offer int
	count int64
	cost  *units.Money // nil is what the offer asks for so many
}

// Purchases is what was bought already, and what was paid for it. The zero value
// is nothing.
type Purchases struct {
	Lines []Line // one for each purchase, none of them the last of its material
	// Bill has what was paid at the yard: goods, tax, their total, and the
	// deposits. Nobody knows which drives were made for it.
	Bill Bill
	// Priced is false when no purchase has a price. Unpriced names the materials
	// of those without one.
	Priced   bool
	Unpriced []string
}

// Purchases adds up what was bought. material finds a material of the job by its
// id, or returns nil for one that it does not have.
func (t *Terms) Purchases(r *doc.Reader, list []Purchase, material func(id string) *catalog.Material) (p Purchases) {
	for _, b := range list {
		o := &t.Offers[b.offer]
		m := material(o.Material)
		if m == nil {
			continue
		}
		l := Line{Material: m, Offer: o, Priced: o.Price != nil || b.cost != nil, index: b.offer}
		l.Each, l.From = o.Yield(m)
		l.take(r, b.count, 0, &order.Offer{}, t.Tax)
		asked, n := l.ask(0, false), b.count
		if b.cost != nil {
			asked, n = order.Offer{Price: *b.cost}, 1
		}
		l.Cost, l.Tax = asked.Paid(n, t.Tax)
		p.add(&l)
	}
	return p
}

// add adds one purchase.
func (p *Purchases) add(l *Line) {
	p.Lines = append(p.Lines, *l)
	if !l.Priced {
		p.Unpriced = append(p.Unpriced, l.Material.ID)
		return
	}
	p.Priced = true
	deposit, _ := l.Offer.Deposit.Times(l.Count)
	p.Bill.Goods += l.Cost
	p.Bill.Tax += l.Tax
	p.Bill.Total += l.Cost + l.Tax
	p.Bill.Deposit += deposit
}
