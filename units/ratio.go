package units

import (
	"strings"

	"example.org/barrow/units/message"
)

// Ratio is an exact share of a whole, a fraction in lowest terms. The zero
// value is no share. Ratios compare with ==.
type Ratio struct{ num, den int64 } // no share is {0, 0}, the zero value

// maxTerm is the largest numerator and denominator of a Ratio. Three of them
// multiply inside an int64.
const maxTerm = 1_000_000

// maxRatio is the largest Ratio: a hundred times the whole, 10000%.
const maxRatio = 100

// NewRatio returns num/den in lowest terms. The error is an [*Error] when num
// is negative, den is below 1, the share is more than a hundred times the
// whole, or a reduced term is more than a million.
func NewRatio(num, den int64) (Ratio, error) {
	if num < 0 || den < 1 || num/den > maxRatio || num/den == maxRatio && num%den > 0 {
		return Ratio{}, fault(RatioRange, itoa(num)+"/"+itoa(den),
			"a share is from zero to a hundred times the whole")
	}
	if num == 0 {
		return Ratio{}, nil
	}
	g := int64(gcd(uint64(num), uint64(den)))
	r := Ratio{num / g, den / g}
	if r.num > maxTerm || r.den > maxTerm {
		return Ratio{}, fault(RatioDigits, itoa(num)+"/"+itoa(den),
			"a share has at most four decimals of a percent")
	}
	return r, nil
}

// Percent returns p hundredths.
func Percent(p uint16) Ratio {
	r, _ := NewRatio(int64(p), 100) // a uint16 over 100 is always in range
	return r
}

// Num returns the numerator of the reduced fraction.
func (r Ratio) Num() int64 { return r.num }

// Den returns the denominator of the reduced fraction, at least 1.
func (r Ratio) Den() int64 { return max(r.den, 1) }

// Float returns the ratio as the nearest float64.
func (r Ratio) Float() float64 { return float64(r.num) / float64(r.Den()) }

// Less reports whether r is smaller than s.
func (r Ratio) Less(s Ratio) bool { return r.num*s.Den() < s.num*r.Den() }

// ParseRatio reads a share: "10%", "12.5 percent", "1/3", "0.25". It refuses a
// bare whole number, because 10 could mean 10% or ten times. The error is an
// [*Error].
func ParseRatio(s string) (Ratio, error) {
	var t text
	if err := t.fold(s); err != nil {
		return Ratio{}, err
	}
	b, _, err := lexSign(t.buf[:t.n], s, ratioKind, false)
	if err != nil {
		return Ratio{}, err
	}
	num, rest, bad := lexNumber(b)
	if bad != nil {
		return Ratio{}, fault(bad.code, s, bad.forKind(ratioKind))
	}
	below, err := ratioUnit(num, rest, s)
	if err != nil {
		return Ratio{}, err
	}
	d, ok := mul(num.d, below)
	if !ok || num.n > 1<<62 || d > 1<<62 {
		return Ratio{}, fault(RatioDigits, s, "a share has at most four decimals of a percent")
	}
	if num.n/d > maxRatio {
		return Ratio{}, tooLarge(s, ratioKind)
	}
	r, err := NewRatio(int64(num.n), int64(d))
	if err != nil {
		return Ratio{}, onto(err, s)
	}
	return r, nil
}

// ratioUnit reads what follows the number of a share: a percent sign, or
// nothing after a fraction or a decimal. It returns what to divide the number
// by.
func ratioUnit(num rat, rest []byte, s string) (below uint64, err error) {
	name, rest := lexUnit(rest, nil)
	switch {
	case len(skipSpace(rest)) > 0:
		return 0, fault(NumberBad, s, "write one share, such as 10%")
	case len(name) == 0 && num.d == 1 && num.n > 0:
		return 0, fault(UnitMissing, s,
			message.Of(`a share needs its percent sign: "{0}%"`, strings.TrimSpace(clip(s))))
	case len(name) == 0:
		return 1, nil
	}
	if u := find(ratioKind, name); u != nil {
		return u.den, nil
	}
	return 0, unknownUnit(name, s, ratioKind)
}

// String writes the share exactly: "12.5%", or "1/3" where a percentage would
// not end. [ParseRatio] reads it back.
func (r Ratio) String() string {
	if n, ok := mul(uint64(r.num), 1_000_000); ok && n%uint64(r.Den()) == 0 {
		return string(append(appendDecimal(nil, int64(n)/r.Den(), 4), '%'))
	}
	return itoa(r.num) + "/" + itoa(r.den)
}

// MarshalText returns the text of [Ratio.String]. The error is always nil.
func (r Ratio) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what [ParseRatio] reads.
func (r *Ratio) UnmarshalText(b []byte) (err error) {
	*r, err = ParseRatio(string(b))
	return err
}
