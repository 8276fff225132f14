package units

import "example.org/barrow/units/message"

// ParseNumber reads a plain number of zero or more as a fraction in lowest
// terms: "3", "0.5", "1 1/2". Numerator and denominator are at most a million.
// The error is an [*Error].
func ParseNumber(s string) (num, den int64, err error) {
	var t text
	if err := t.fold(s); err != nil {
		return 0, 1, err
	}
	b := trimUnit(skipSpace(t.buf[:t.n]))
	if at(b, 0) == '-' {
		return 0, 1, fault(QuantityNegative, s, message.Of("zero or more, such as {#0}", "1.5"))
	}
	r, rest, bad := lexNumber(b)
	switch {
	case bad == badMissing:
		return 0, 1, fault(NumberMissing, s, "write a number, such as 3 or 1 1/2")
	case bad != nil:
		return 0, 1, fault(bad.code, s, bad.hint)
	case len(skipSpace(rest)) > 0:
		return 0, 1, fault(NumberBad, s, "write the number alone, such as 3 or 1 1/2")
	}
	g := gcd(r.n, r.d)
	if r.n/g > maxTerm || r.d/g > maxTerm {
		return 0, 1, fault(QuantityLarge, s, "at most 1000000, with at most six decimals")
	}
	return int64(r.n / g), int64(r.d / g), nil
}
