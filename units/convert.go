package units

import "math/big"

// Converted is a quantity in a unit of somebody's choice, exact however many
// digits that takes: the one place where a quantity is not rounded to a count.
// The zero value is not useful; [Convert] makes one.
type Converted struct {
	Unit  string // as the table names it
	value *big.Rat
}

// Convert writes quantity ("2 yd3") in unit ("cu ft"). The unit decides what
// is measured: "2 yards" is a volume when asked for in cubic feet and a length
// in feet. The error is an [*Error]; its Value tells which of the two is wrong.
func Convert(quantity, unit string) (Converted, error) {
	var t text
	if err := t.fold(unit); err != nil {
		return Converted{}, err
	}
	name, rest := lexUnit(t.buf[:t.n], nil)
	if len(name) == 0 || len(rest) > 0 {
		return Converted{}, fault("unit.missing", unit, `name a unit to convert to, such as "cu ft"`)
	}
	var first error
	for k := range kinds {
		u := find(kind(k), name)
		if u == nil {
			continue
		}
		_, err := parse(quantity, kind(k), false)
		if err == nil {
			return Converted{u.name, inUnit(quantity, u)}, nil
		}
		if first == nil {
			first = err
		}
	}
	if first == nil {
		first = noUnit(name, unit)
	}
	return Converted{}, first
}

// inUnit adds up the terms of s, which parses, and divides by u.
func inUnit(s string, u *unit) *big.Rat {
	var t text
	_ = t.fold(s) // s parses, so it folds
	sum := new(big.Rat)
	for b := t.buf[:t.n]; len(b) > 0; {
		tm, rest, err := parseTerm(b, s, u.kind)
		if err != nil {
			panic("units: " + err.Error()) // s parses
		}
		sum.Add(sum, new(big.Rat).Mul(fraction(tm.num.n, tm.num.d), fraction(tm.unit.num, tm.unit.den)))
		b = rest
	}
	return sum.Quo(sum, fraction(u.num, u.den))
}

func fraction(n, d uint64) *big.Rat {
	return new(big.Rat).SetFrac(new(big.Int).SetUint64(n), new(big.Int).SetUint64(d))
}

// noUnit explains a unit that no kind has.
func noUnit(name []byte, unit string) error {
	for _, d := range doubtful {
		if spelledIn(d.names, name) {
			return unknownUnit(name, unit, d.kind)
		}
	}
	for k := range kinds {
		if u := nearest(name, kind(k)); u != nil {
			return fault("unit.unknown", unit, `did you mean "`+u.name+`"?`)
		}
	}
	return fault("unit.unknown", unit, "no such unit; "+offered(lengthKind)+" are lengths, "+offered(volumeKind)+" volumes")
}

// Float returns the value as the nearest float64.
func (c Converted) Float() float64 {
	f, _ := c.value.Float64()
	return f
}

// Exact reports whether Number gives every digit.
func (c Converted) Exact() bool {
	back, ok := new(big.Rat).SetString(c.Number())
	return ok && back.Cmp(c.value) == 0
}

// Number gives the value as a decimal number: every digit when 15 places after
// the point suffice, else that many significant digits.
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

// places is how many digits after the point make 15 significant ones.
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

func trimZeros(s string) string {
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}

// String gives the number and the unit: "54 cu ft".
func (c Converted) String() string { return c.Number() + " " + c.Unit }

// Unit describes one row of the unit table, for a list of what is understood.
type Unit struct {
	Name string // as printed; parses
	Kind string // "length", "volume" and so on
	Also string // other spellings, separated by commas
}

// Units lists every unit that quantities are written in, kind by kind.
func Units() []Unit {
	out := make([]Unit, len(table))
	for i, u := range table {
		out[i] = Unit{u.name, kinds[u.kind].name, commas(u.also)}
	}
	return out
}

func commas(list string) string {
	var b []byte
	for i := range len(list) {
		if b = append(b, list[i]); list[i] == '|' {
			b = append(b[:len(b)-1], ", "...)
		}
	}
	return string(b)
}
