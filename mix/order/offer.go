package order

import "example.org/barrow/units"

// Offer is a pack that a yard sells: a bag, a bale or a step of bulk. The zero
// value is refused, because a pack must hold something.
type Offer struct {
	Material int          // index into Needs
	Yield    units.Volume // loose volume that one pack covers; above zero
	Room     units.Volume // what one pack, as sold, takes up on a vehicle
	Mass     units.Mass   // of one; zero is weightless, or not known
	Price    units.Money  // of one, before tax
	Breaks   []Break      // by rising From
	Deposit  units.Money  // paid for each and paid back later: in Pay, not in Cost

	Least      int64 // the smallest number sold; zero is one
	Stock      int64 // how many there are, when Limited
	Limited    bool
	CanDeliver bool // the yard's own vehicle may bring it
	Machine    bool // loaded by machine, so not counted as lifted
}

// Break is a price for larger counts: when From or more are bought, every one
// costs Price. From is at least 2. A price that rises is taken as given.
type Break struct {
	From  int64
	Price units.Money
}

// Paid returns the price of count packs before tax, and the tax on it, rounded
// half up to the minor unit. Both are right while count times the price is at
// most [units.MaxMoney].
func (o *Offer) Paid(count int64, tax units.Ratio) (goods, due units.Money) {
	price := o.Price
	if at := stepOf(o.Breaks, count); at > 0 {
		price = o.Breaks[at-1].Price
	}
	goods = units.Money(count) * price
	return goods, taxOn(goods, tax)
}

// taxOn rounds half up. Twice the product fits in 64 bits: goods is at most
// MaxMoney and the terms of a ratio are at most a million.
func taxOn(goods units.Money, tax units.Ratio) units.Money {
	num, den := units.Money(tax.Num()), units.Money(tax.Den())
	if num == 0 {
		return 0
	}
	return (2*goods*num + den) / (2 * den)
}
