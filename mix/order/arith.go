package order

import (
	"math"
	"math/bits"
)

// Prices inside the search are minor units times scale, and shares of a
// vehicle are whole parts out of one. Both are rounded so that a bound stays a
// bound; whatever decides between two orders is exact.
const (
	scale = 1 << 10
	one   = 1 << 20
	none  = math.MaxInt64
)

// plus adds two numbers of zero or more and stops at the largest int64.
func plus(a, b int64) int64 {
	if s := a + b; s >= 0 {
		return s
	}
	return none
}

// times multiplies two numbers of zero or more and stops at the largest int64.
func times(a, b int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi != 0 || lo > none {
		return none
	}
	return int64(lo)
}

// up divides numbers of zero or more, rounding up; b is above zero.
func up(a, b int64) int64 {
	n := a / b
	if n*b < a {
		n++
	}
	return n
}

// muldiv is a*b/c rounded down, for numbers of zero or more and c above zero;
// it stops at the largest int64.
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

// rate is price for size as a fraction of 2^64, rounded down, so that worth
// never overstates.
func rate(price, size int64) uint64 {
	if price >= size {
		return math.MaxUint64
	}
	q, _ := bits.Div64(uint64(price), 0, uint64(size))
	return q
}

// worth is what so much comes to at the rate, rounded down.
func worth(much int64, rate uint64) int64 {
	hi, _ := bits.Mul64(uint64(much), rate)
	return int64(hi)
}
