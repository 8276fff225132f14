package order

import (
	"math"
	"math/bits"
)

// Inside the search, prices are minor units times scale, and shares of a
// vehicle are whole parts out of one. Both are rounded in the direction that
// keeps a bound valid. Wherever two orders are compared, the figures are exact.
const (
	scale = 1 << 10
	one   = 1 << 20
	none  = math.MaxInt64
)

// plus adds two numbers of zero or more. Past the largest int64 it returns
// that.
func plus(a, b int64) int64 {
	if s := a + b; s >= 0 {
		return s
	}
	return none
}

// times multiplies two numbers of zero or more. Past the largest int64 it
// returns that.
func times(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > none {
		return none
	}
	return int64(lo)
}

// up divides a by b, rounding up. a is zero or more, b above zero.
func up(a, b int64) int64 {
	n := a / b
	if n*b < a {
		n++
	}
	return n
}

// muldiv returns a*b/c rounded down, for a and b of zero or more and c above
// zero. Past the largest int64 it returns that.
func muldiv(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return none
	}
	q, _ := bits.Div64(hi, lo, uint64(c))
	if q > none {
		return none
	}
	return int64(q)
}

// rate returns price/size as a fraction of 2^64, rounded down so that worth
// never overstates.
func rate(price, size int64) uint64 {
	if price >= size {
		return math.MaxUint64
	}
	q, _ := bits.Div64(uint64(price), 0, uint64(size))
	return q
}

// worth returns much times a rate, rounded down.
func worth(much int64, rate uint64) int64 {
	hi, _ := bits.Mul64(uint64(much), rate)
	return int64(hi)
}
