package units

import "example.org/barrow/units/message"

// Exact is a quantity as it was typed, before rounding: the sum of its terms.
// Package convert divides that sum by One.
type Exact struct {
	Unit  string   // the unit to convert to, as the table names it
	One   Fraction // how many counts one of that unit is
	Terms []Term
}

// Term is a number and its unit, as in 5 ft. Unit is what one of the unit is in
// counts.
type Term struct{ Number, Unit Fraction }

// Fraction is Num/Den. It need not be in lowest terms.
type Fraction struct{ Num, Den uint64 }

// ReadExact reads a quantity ("2 yd3") as the kind of quantity that unit ("cu
// ft") measures. The error is an [*Error]; its Value is whichever of the two is
// wrong.
func ReadExact(quantity, unit string) (Exact, error) {
	var t text
	if err := t.fold(unit); err != nil {
		return Exact{}, err
	}
	name, rest := lexUnit(t.buf[:t.n], nil)
	if len(name) == 0 || len(rest) > 0 {
		return Exact{}, fault(UnitMissing, unit,
			message.Of(`name a unit to convert to, such as "{#0}"`, "cu ft"))
	}
	var first error
	for k := range kinds {
		u := find(kind(k), name)
		if u == nil {
			continue
		}
		_, err := parse(quantity, kind(k), false)
		if err == nil {
			return Exact{u.name, Fraction{u.num, u.den}, terms(quantity, u.kind)}, nil
		}
		if first == nil {
			first = err
		}
	}
	if first == nil {
		first = noUnit(name, unit)
	}
	return Exact{}, first
}

// terms returns the terms of s, which must be known to parse.
func terms(s string, k kind) (all []Term) {
	var t text
	_ = t.fold(s) // s parses, so it folds
	for b := t.buf[:t.n]; len(b) > 0; {
		tm, rest, err := parseTerm(b, s, k)
		if err != nil {
			panic("units: " + err.Error()) // s parses
		}
		all = append(all, Term{Fraction{tm.num.n, tm.num.d}, Fraction{tm.unit.num, tm.unit.den}})
		b = rest
	}
	return all
}

// noUnit explains a unit that no kind of quantity has.
func noUnit(name []byte, unit string) error {
	for _, d := range doubtful {
		if spelledIn(d.names, name) {
			return unknownUnit(name, unit, d.kind)
		}
	}
	for k := range kinds {
		if u := nearest(name, kind(k)); u != nil {
			return fault(UnitUnknown, unit, didYouMean(u.name))
		}
	}
	return fault(UnitUnknown, unit, message.Of("no such unit; {#0} are lengths, {#1} volumes",
		offered(lengthKind), offered(volumeKind)))
}
