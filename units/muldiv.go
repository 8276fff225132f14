package units

import "math/bits"

// mulDiv returns a*b/c to the nearest whole number, halves up, through 128
// bits. ok is false when the result needs more than 63 bits or c is zero.
func mulDiv(a, b, c uint64) (q int64, ok bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, false
	}
	n, rest := bits.Div64(hi, lo, c)
	if rest >= c-rest {
		n++
	}
	return int64(n), n <= 1<<63-1
}

// mulDivFloor returns a*b/c rounded down and the remainder; ok as for mulDiv.
func mulDivFloor(a, b, c uint64) (q int64, rest uint64, ok bool) {
	hi, lo := bits.Mul64(a, b)
	if hi >= c {
		return 0, 0, false
	}
	n, rest := bits.Div64(hi, lo, c)
	return int64(n), rest, n <= 1<<63-1
}

// mul returns a*b; ok is false when it needs more than 63 bits.
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
