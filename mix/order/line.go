package order

import "example.org/barrow/units"

// mode is how a pack can come home, as a set of bits.
type mode uint8

// The two ways to come home. Together they mean that either will do.
const (
	hauled mode = 1 << iota
	delivered
)

// line is an offer that can be used, prepared for the search.
type line struct {
	offer             int
	yield, room, mass int64
	price             int64   // of one, before any break
	steps             []Break // within most
	num, den          int64   // the tax
	can, modes        mode    // how it can come at all, and in the way being searched
	least, most       int64
	hand              int64 // 1 when lifted by hand
	floor             int64 // no count costs less for each pack, tax included, in scale
	use               []int64
}

// newLine makes a line of offer i. ok is false when no vehicle takes the pack,
// or the stock is below the minimum.
func (r *Request) newLine(i int) (l line, ok bool) {
	o := &r.Offers[i]
	l = line{offer: i, yield: int64(o.Yield), room: int64(o.Room), mass: int64(o.Mass), price: int64(o.Price),
		num: r.Tax.Num(), den: r.Tax.Den(), can: r.modes(o), least: max(1, o.Least), most: r.most(o), hand: 1}
	if o.Machine {
		l.hand = 0
	}
	if o.Limited {
		l.most = min(l.most, o.Stock)
	}
	for _, b := range o.Breaks {
		if b.From <= l.most {
			l.steps = append(l.steps, b)
		}
	}
	if l.can == 0 || l.least > l.most {
		return l, false
	}
	l.floor = l.apiece()
	return l, true
}

// modes returns which vehicles can take one pack of o.
func (r *Request) modes(o *Offer) (m mode) {
	if (r.Payload == 0 || o.Mass <= r.Payload) && (r.Room == 0 || o.Room <= r.Room) {
		m |= hauled
	}
	d := r.Delivery
	if d != nil && o.CanDeliver &&
		(d.Payload == 0 || o.Mass <= d.Payload) && (d.Capacity == 0 || o.Room <= d.Capacity) {
		m |= delivered
	}
	return m
}

// most is how many of o keep a line's volume, mass and cost inside the limits
// of their types.
func (r *Request) most(o *Offer) int64 {
	n := min(mostCount, 2*int64(units.MaxVolume)/int64(o.Yield))
	if o.Room > 0 {
		n = min(n, 2*int64(units.MaxVolume)/int64(o.Room))
	}
	if o.Mass > 0 {
		n = min(n, int64(units.MaxMass/o.Mass))
	}
	price := o.Price
	for _, b := range o.Breaks {
		price = max(price, b.Price)
	}
	if price > 0 {
		goods := muldiv(int64(units.MaxMoney), r.Tax.Den(), r.Tax.Den()+r.Tax.Num())
		n = min(n, goods/int64(price))
	}
	return n
}

// cost is what n of l cost with tax; n is at most l.most.
func (l *line) cost(n int64) int64 {
	price := l.price
	for i := range l.steps {
		if n < l.steps[i].From {
			break
		}
		price = int64(l.steps[i].Price)
	}
	goods := n * price
	if l.num == 0 {
		return goods
	}
	return goods + (2*goods*l.num+l.den)/(2*l.den)
}

// apiece is a lower bound on what one pack costs at any count, in scale. The
// first counts at each price are worked out, because there the rounding of the
// tax matters; after those it is worth at most half a unit divided by the
// count.
func (l *line) apiece() int64 {
	if l.num == 0 {
		low := l.price
		for i := range l.steps {
			low = min(low, int64(l.steps[i].Price))
		}
		return low * scale
	}
	low := l.apieceFrom(1, l.price)
	for i := range l.steps {
		low = min(low, l.apieceFrom(l.steps[i].From, int64(l.steps[i].Price)))
	}
	return low
}

// apieceFrom is apiece for the counts from from on, at one price.
func (l *line) apieceFrom(from, price int64) int64 {
	const exact = 16
	taxed := price*scale + muldiv(price*scale, l.num, l.den)
	low := max(0, taxed-up(scale, 2*(from+exact)))
	for n := from; n < from+exact && n <= l.most; n++ {
		goods := n * price
		low = min(low, (goods+(2*goods*l.num+l.den)/(2*l.den))*scale/n)
	}
	return low
}
