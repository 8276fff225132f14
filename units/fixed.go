package units

import "math/bits"

// Fixed is a number of counts with 128 binary digits after the point: a quantity
// before it is rounded to a whole count. A third of an inch is 8,466,666 2/3 nm; as
// a [Length] it is 8,466,667, and over an acre the third of a nanometre between the
// two is more than a millilitre. A count of packs is decided by the Fixed, so that
// rounding never adds a pack. The zero value is nothing; the value may be negative.
//
// A result that needs more digits is cut off toward zero, which changes it by less
// than 2^-128 of a count. Two that are nearer to each other than [Grain] are taken as
// equal. That is right as long as what is cut off comes to less, and as long as what a
// job means differs by more:
//
//   - A length, area or volume that is measured is at least half a count, so each step
//     changes it by less than one part in 2^127. A need of [MaxVolume], 10^18 nL, that
//     comes of twenty steps is then off by less than 2^-62 nL.
//   - Two fractions that differ do so by at least one part of the product of their
//     denominators. Three sides in thousandths and a share in millionths come to
//     10^15, far less than 2^60.
type Fixed struct{ whole, high, low uint64 } // two's complement, the point is after whole

// Grain is 2^-60 of a count; see [Fixed].
var Grain = Fixed{0, 1 << 4, 0}

// FixedOf returns a whole number of counts.
func FixedOf[T ~int64](n T) Fixed { return Fixed{whole: uint64(n)} }

// Whole reports whether f is a whole number of counts.
func (f Fixed) Whole() bool { return f.high|f.low == 0 }

// Round returns f to the nearest whole count, halves away from zero.
func (f Fixed) Round() int64 {
	if f.Negative() {
		return -Fixed{}.Minus(f).Round()
	}
	return int64(f.whole + f.high>>63)
}

// Floor returns the whole counts in f, rounded down.
func (f Fixed) Floor() int64 { return int64(f.whole) }

// Negative reports whether f is less than nothing.
func (f Fixed) Negative() bool { return f.whole>>63 > 0 }

// Plus returns f + g.
func (f Fixed) Plus(g Fixed) (sum Fixed) {
	var carry uint64
	sum.low, carry = bits.Add64(f.low, g.low, 0)
	sum.high, carry = bits.Add64(f.high, g.high, carry)
	sum.whole, _ = bits.Add64(f.whole, g.whole, carry)
	return sum
}

// Minus returns f - g.
func (f Fixed) Minus(g Fixed) (rest Fixed) {
	var borrow uint64
	rest.low, borrow = bits.Sub64(f.low, g.low, 0)
	rest.high, borrow = bits.Sub64(f.high, g.high, borrow)
	rest.whole, _ = bits.Sub64(f.whole, g.whole, borrow)
	return rest
}

// Over reports whether f is more than g, by more than [Grain].
func (f Fixed) Over(g Fixed) bool { return g.Plus(Grain).Minus(f).Negative() }

// Up returns the least whole number of counts that f is not over.
func (f Fixed) Up() int64 {
	n := int64(f.whole)
	if f.Over(FixedOf(n)) {
		n++
	}
	return n
}

// MulDiv returns f*n/d for n of zero or more and d above zero.
func (f Fixed) MulDiv(n, d int64) Fixed {
	if f == (Fixed{}) {
		return f
	}
	if f.Negative() {
		return Fixed{}.Minus(Fixed{}.Minus(f).MulDiv(n, d))
	}
	top, whole := bits.Mul64(f.whole, uint64(n))
	var high, low, carry uint64
	if !f.Whole() {
		var more uint64
		carry, low = bits.Mul64(f.low, uint64(n))
		more, high = bits.Mul64(f.high, uint64(n))
		high, carry = bits.Add64(high, carry, 0)
		whole, carry = bits.Add64(whole, more+carry, 0) // more is at most 2^64-2
	}
	if d == 1 {
		return Fixed{whole, high, low}
	}
	rest := top + carry
	whole, rest = bits.Div64(rest%uint64(d), whole, uint64(d))
	if rest|high|low != 0 {
		high, rest = bits.Div64(rest, high, uint64(d))
		low, _ = bits.Div64(rest, low, uint64(d))
	}
	return Fixed{whole, high, low}
}

// By returns the area in square micrometres of a rectangle of f by g nanometres;
// either may be negative, as the sides of a triangle between corners are. ok is
// false when the result is more than [MaxArea] either way.
func (f Fixed) By(g Fixed) (area Fixed, ok bool) {
	area, ok = f.times(g, 1_000_000)
	return area, ok && !area.outside(int64(MaxArea))
}

// Deep returns the volume in nanolitres of a layer, g nanometres deep, over f square
// micrometres. ok is false when the result is more than [MaxVolume], or when either
// is negative.
func (f Fixed) Deep(g Fixed) (v Fixed, ok bool) {
	v, ok = f.times(g, 1_000_000_000)
	return v, ok && !f.Negative() && !g.Negative() && !v.outside(int64(MaxVolume))
}

// outside reports whether f, rounded, is more than most either way.
func (f Fixed) outside(most int64) bool {
	n := f.Round()
	return n > most || n < -most
}

// times returns f*g/d. ok is false when the result is 2^63 or more either way.
func (f Fixed) times(g Fixed, d uint64) (product Fixed, ok bool) {
	negative := f.Negative() != g.Negative()
	a, b := f.size(), g.size()
	var p [6]uint64 // the lowest first
	for i := range a {
		var carry uint64
		for j := range b {
			hi, lo := bits.Mul64(a[i], b[j])
			var c uint64
			lo, c = bits.Add64(lo, p[i+j], 0)
			hi += c
			p[i+j], c = bits.Add64(lo, carry, 0)
			carry = hi + c
		}
		p[i+3] = carry
	}
	var rest uint64
	for i := len(p) - 1; i >= 0; i-- {
		p[i], rest = bits.Div64(rest, p[i], d)
	}
	product = Fixed{p[4], p[3], p[2]} // what is below 2^-128 goes
	ok = p[5] == 0 && !product.Negative()
	if negative {
		product = Fixed{}.Minus(product)
	}
	return product, ok
}

// size returns the words of f without its sign, the lowest first.
func (f Fixed) size() [3]uint64 {
	if f.Negative() {
		f = Fixed{}.Minus(f)
	}
	return [3]uint64{f.low, f.high, f.whole}
}

// Parts returns the least number k, up to most, for which k times f is a whole
// number of counts, or 0 when there is none: 3 for a third. f must not be negative,
// and most is at most 2^30.
//
// It goes through the convergents of the continued fraction of f. Each is nearer to f
// than any fraction with a smaller denominator, so the one that is f comes up.
func (f Fixed) Parts(most int64) int64 {
	before, k := int64(0), int64(1)
	x, y := uint64(1<<63), f.high>>1
	for k <= most {
		sum := Fixed{high: f.high, low: f.low}.MulDiv(k, 1)
		if whole := FixedOf(sum.Round()); !sum.Over(whole) && !whole.Over(sum) {
			return k
		}
		if y == 0 || x/y > uint64(most) {
			break
		}
		before, k = k, int64(x/y)*k+before
		x, y = y, x%y
	}
	return 0
}

// fixedOf returns n*a/(b*d) counts, for the number n/d of a unit of a/b counts. ok
// is false when that is 2^63 or more. A divisor past 64 bits, which only weights per
// volume can have, leaves the result rounded to a whole count.
func fixedOf(n, d, a, b uint64) (f Fixed, ok bool) {
	over, below := bits.Mul64(b, d)
	if over > 0 {
		whole, ok := mulDivDiv(n, a, d, b)
		return FixedOf(whole), ok
	}
	hi, lo := bits.Mul64(n, a)
	if hi >= below {
		return f, false
	}
	var rest uint64
	f.whole, rest = bits.Div64(hi, lo, below)
	if rest > 0 {
		f.high, rest = bits.Div64(rest, 0, below)
		f.low, _ = bits.Div64(rest, 0, below)
	}
	return f, !f.Negative()
}
