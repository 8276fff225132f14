// Package convert writes a quantity in another unit, exactly, however many
// digits that takes: "2 yd3" is "54 cu ft".
//
// [Quantity] parses both texts as package units does and reports errors as it
// does. A [Converted] does not change and can be shared between goroutines.
//
// It is apart from package units because it needs math/big, which brings fmt,
// os and reflect with it: 19 kB that a browser would download for nothing.
package convert

import (
	"math/big"

	"example.org/barrow/units"
)

// Converted is a quantity in a unit, exact: the one type here that is not
// rounded to a count. The zero value is not usable; [Quantity] makes one.
type Converted struct {
	Unit  string // as the table names it
	value *big.Rat
}

// Quantity converts a quantity ("2 yd3") to a unit ("cu ft"). The unit decides
// what is measured: "2 yards" is a volume when asked for in cubic feet and a
// length in feet. The error is a [*units.Error]; its Value is whichever of the
// two is wrong.
func Quantity(quantity, unit string) (Converted, error) {
	e, err := units.ReadExact(quantity, unit)
	if err != nil {
		return Converted{}, err
	}
	sum := new(big.Rat)
	for _, t := range e.Terms {
		sum.Add(sum, new(big.Rat).Mul(rat(t.Number), rat(t.Unit)))
	}
	return Converted{e.Unit, sum.Quo(sum, rat(e.One))}, nil
}

// rat returns f as a number of math/big.
func rat(f units.Fraction) *big.Rat {
	return new(big.Rat).SetFrac(new(big.Int).SetUint64(f.Num), new(big.Int).SetUint64(f.Den))
}

// Float returns the value as the nearest float64.
func (c Converted) Float() float64 {
	f, _ := c.value.Float64()
	return f
}

// Exact reports whether [Converted.Number] gives every digit.
func (c Converted) Exact() bool {
	back, ok := new(big.Rat).SetString(c.Number())
	return ok && back.Cmp(c.value) == 0
}

// Number returns the value as a decimal number: every digit when 15 places
// after the point are enough, otherwise 15 significant digits.
func (c Converted) Number() string {
	s := c.value.FloatString(15)
	if back, _ := new(big.Rat).SetString(s); back.Cmp(c.value) != 0 {
		s = new(big.Float).SetPrec(200).SetRat(c.value).Text('f', places(c.value))
	}
	for i := range s {
		if s[i] == '.' {
			return trimZeros(s)
		}
	}
	return s
}

// places returns how many digits after the point make 15 significant ones.
func places(r *big.Rat) int {
	n := 15
	for one := big.NewRat(1, 1); r.Cmp(one) >= 0 && n > 0; n-- {
		one.Mul(one, big.NewRat(10, 1))
	}
	for tenth := big.NewRat(1, 10); r.Sign() > 0 && r.Cmp(tenth) < 0; n++ {
		tenth.Quo(tenth, big.NewRat(10, 1))
	}
	return n
}

// trimZeros removes the zeros at the end of a decimal, and then its point.
func trimZeros(s string) string {
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}

// String returns the number and the unit: "54 cu ft".
func (c Converted) String() string { return c.Number() + " " + c.Unit }
