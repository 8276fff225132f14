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
	cheapest          []int64 // by step, the least cost at the start of it or of one after it
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
	l.steps = o.Breaks[:stepOf(o.Breaks, l.most)]
	if l.can == 0 || l.least > l.most {
		return l, false
	}
	l.floor = l.apiece()
	l.cheapest = make([]int64, len(l.steps))
	least := int64(none)
	for i := len(l.steps) - 1; i >= 0; i-- {
		least = min(least, l.cost(l.steps[i].From))
		l.cheapest[i] = least
	}
	return l, true
}

// step is how many steps of l start at count n or below.
func (l *line) step(n int64) int { return stepOf(l.steps, n) }

// stepOf is how many of the breaks start at count n or below. They rise, so it
// halves the list.
func stepOf(steps []Break, n int64) int {
	low, high := 0, len(steps)
	for low < high {
		if middle := (low + high) / 2; steps[middle].From <= n {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
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
	if at := l.step(n); at > 0 {
		price = int64(l.steps[at-1].Price)
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
	low := l.apieceFrom(none, 1, l.price)
	for i := range l.steps {
		low = l.apieceFrom(low, l.steps[i].From, int64(l.steps[i].Price))
	}
	return low
}

// apieceFrom is the lower of low and of apiece for the counts from from on, at one
// price. Where none of those can be below low, it does not work them out.
func (l *line) apieceFrom(low, from, price int64) int64 {
	const exact = 16
	taxed := price*scale + muldiv(price*scale, l.num, l.den)
	if taxed-up(scale, 2*from) >= low {
		return low
	}
	low = min(low, max(0, taxed-up(scale, 2*(from+exact))))
	for n := from; n < from+exact && n <= l.most; n++ {
		goods := n * price
		low = min(low, (goods+(2*goods*l.num+l.den)/(2*l.den))*scale/n)
	}
	return low
}
