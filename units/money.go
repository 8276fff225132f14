package units

import "example.org/barrow/units/message"

// Money is an amount in whole minor units (cents) of a currency that the job
// names. The zero value is nothing.
type Money int64

// MaxMoney is the largest amount that ParseMoney accepts: a thousand million.
// Sums stay far from overflow.
const MaxMoney Money = 1_000_000_000_00

// anAmount is the example in hints about amounts.
const anAmount = "4.75"

// ParseMoney reads an amount of zero or more with at most two decimals ("4.75",
// "9"). It refuses a currency sign, because a job has one currency and names it
// once. The error is an [*Error].
func ParseMoney(s string) (Money, error) {
	var t text
	if err := t.fold(s); err != nil {
		return 0, err
	}
	b := trimUnit(skipSpace(t.buf[:t.n]))
	switch at(b, 0) {
	case 0:
		return 0, fault(QuantityEmpty, s, message.Of("write an amount, such as {#0}", anAmount))
	case '-':
		return 0, fault(QuantityNegative, s, message.Of("an amount is zero or more, such as {#0}", anAmount))
	}
	r, rest, bad := lexDecimal(b)
	if bad == nil {
		bad = afterNumber(rest)
	}
	switch {
	case bad == badMissing || bad == nil && len(rest) > 0:
		return 0, fault(MoneyUnit, s,
			message.Of("write the amount alone, such as {#0}; the job names its currency once", anAmount))
	case bad != nil:
		return 0, fault(bad.code, s, bad.hint)
	}
	n, ok := mulDiv(r.n, 100, r.d)
	switch {
	case !ok || Money(n) > MaxMoney:
		return 0, fault(QuantityLarge, s, "at most 1000000000")
	case 100%r.d != 0:
		return 0, fault(MoneyDecimals, s, message.Of("at most two digits after the point, such as {#0}", anAmount))
	}
	return Money(n), nil
}

// Times returns m taken n times. ok is false when the result does not fit, or
// when either is negative.
func (m Money) Times(n int64) (t Money, ok bool) {
	if m < 0 || n < 0 {
		return 0, false
	}
	p, ok := mul(uint64(m), uint64(n))
	return Money(p), ok
}

// String always writes two decimals: "71.25". [ParseMoney] reads it back unless
// it is negative, which only a difference can be.
func (m Money) String() string { return string(m.append(nil)) }

func (m Money) append(b []byte) []byte {
	if m < 0 {
		b, m = append(b, '-'), -m
	}
	b = appendDecimal(b, int64(m)/100, 0)
	cents := int64(m) % 100
	return append(b, '.', byte('0'+cents/10), byte('0'+cents%10))
}

// MarshalText returns the text of [Money.String]. The error is always nil.
func (m Money) MarshalText() ([]byte, error) { return m.append(nil), nil }

// UnmarshalText reads what [ParseMoney] reads.
func (m *Money) UnmarshalText(b []byte) (err error) {
	*m, err = ParseMoney(string(b))
	return err
}
