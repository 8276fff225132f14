package order

import "example.org/barrow/units"

// Offer is a pack that a yard sells: a bag, a bale, a step of bulk. The zero
// value is refused: a pack holds something.
type Offer struct {
	Material int          // index into Needs
	Yield    units.Volume // loose volume that one covers of the need; above zero
	Room     units.Volume // what one takes up on a vehicle, bale or bag as sold
	Mass     units.Mass   // of one; zero is weightless, or not known
	Price    units.Money  // of one, before tax
	Breaks   []Break      // by rising From
	Deposit  units.Money  // paid for each and paid back later: in Pay, not in Cost

	Least      int64 // so many or none; zero is one
	Stock      int64 // how many there are, when Limited
	Limited    bool
	CanDeliver bool // the yard's own vehicle may bring it
	Machine    bool // loaded by machine: nobody lifts it
}

// Break is an all-units price: From or more, every one at Price. From is at
// least 2. A price that rises is taken as it stands.
type Break struct {
	From  int64
	Price units.Money
}

// Paid is what the line of count of o comes to before tax, and its tax,
// rounded half up to the minor unit. Both are right while count times the price
// stays within units.MaxMoney.
func (o *Offer) Paid(count int64, tax units.Ratio) (goods, due units.Money) {
	price := o.Price
	for _, b := range o.Breaks {
		if count >= b.From {
			price = b.Price
		}
	}
	goods = units.Money(count) * price
	return goods, taxOn(goods, tax)
}

// taxOn rounds half up. Twice the product fits: goods is at most MaxMoney and a
// ratio's terms are at most a million.
func taxOn(goods units.Money, tax units.Ratio) units.Money {
	num, den := units.Money(tax.Num()), units.Money(tax.Den())
	if num == 0 {
		return 0
	}
	return (2*goods*num + den) / (2 * den)
}
