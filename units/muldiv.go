package units

import "math/bits"

// mulDiv returns a*b/c to the nearest whole number, halves up, computed in 128
// bits. ok is false when c is zero or the result is 2^63-1 or more.
func mulDiv(a, b, c uint64) (q int64, ok bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, false
	}
	n, rest := bits.Div64(hi, lo, c)
	if n >= 1<<63-1 { // adding one may not fit
		return 0, false
	}
	if rest >= c-rest {
		n++
	}
	return int64(n), true
}

// mulDivDiv returns a*b/(c*d) to the nearest whole number, halves up. It is
// exact even where c*d needs more than 64 bits: x/c/d, rounded down twice, is
// x/(c*d) rounded down, and the two remainders decide the rounding. ok is false
// when a divisor is zero or the result is 2^63-1 or more.
func mulDivDiv(a, b, c, d uint64) (q int64, ok bool) {
	if c == 0 || d == 0 {
		return 0, false
	}
	hi, lo := bits.Mul64(a, b)
	hi, lo, rest := div128(hi, lo, c)
	hi, lo, over := div128(hi, lo, d)
	if hi > 0 || lo >= 1<<63-1 { // adding one may not fit
		return 0, false
	}
	// The remainder is c*over + rest of c*d.
	switch left := d - over; {
	case over >= left: // at least half of d
		lo++
	case over+1 == left && rest >= c-rest: // short of it by less than one of c
		lo++
	}
	return int64(lo), true
}

// div128 divides hi:lo by y.
func div128(hi, lo, y uint64) (qhi, qlo, rest uint64) {
	qhi = hi / y
	qlo, rest = bits.Div64(hi%y, lo, y)
	return qhi, qlo, rest
}

// mulDivFloor returns a*b/c rounded down, and the remainder. ok is as for
// mulDiv.
func mulDivFloor(a, b, c uint64) (q int64, rest uint64, ok bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, 0, false
	}
	n, rest := bits.Div64(hi, lo, c)
	return int64(n), rest, n <= 1<<63-1
}

// mul returns a*b. ok is false when that needs more than 63 bits.
func mul(a, b uint64) (p uint64, ok bool) {
	hi, lo := bits.Mul64(a, b)
	return lo, hi == 0 && lo <= 1<<63-1
}

// gcd returns the greatest common divisor of a and b; gcd(0, 0) is 1.
func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, 1)
}
