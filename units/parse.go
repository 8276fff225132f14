package units

import (
	"strings"

	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// term is one number with its unit.
type term struct {
	num  rat
	unit *unit
}

// parse reads a quantity of kind k and returns its count of base units, rounded once.
func parse(s string, k kind, signed bool) (int64, error) {
	f, err := parseFixed(s, k, signed)
	return f.Round(), err
}

// parseFixed reads a quantity of kind k and returns it before rounding.
func parseFixed(s string, k kind, signed bool) (Fixed, error) {
	var t text
	if err := t.fold(s); err != nil {
		return Fixed{}, err
	}
	b, negative, err := lexSign(t.buf[:t.n], s, k, signed)
	if err != nil {
		return Fixed{}, err
	}
	total, last := Fixed{}, (*unit)(nil)
	for first := true; first || len(b) > 0; first = false {
		tm, rest, err := parseTerm(b, s, k)
		if err != nil {
			return Fixed{}, err
		}
		n, ok := fixedOf(tm.num.n, tm.num.d, tm.unit.num, tm.unit.den)
		if !ok || n.Round() > kinds[k].max-total.Round() {
			return Fixed{}, tooLarge(s, k)
		}
		if err := checkOrder(s, k, last, tm, rest); err != nil {
			return Fixed{}, err
		}
		total, last, b = total.Plus(n), tm.unit, rest
	}
	if negative {
		return Fixed{}.Minus(total), nil
	}
	return total, nil
}

// lexSign reads the sign from the front of b, and refuses empty text.
func lexSign(b []byte, s string, k kind, signed bool) (rest []byte, negative bool, err error) {
	b = trimUnit(skipSpace(b))
	if len(b) == 0 {
		return nil, false, fault(QuantityEmpty, s,
			message.Of("write {=0}, such as {#1}", article(k), kinds[k].example))
	}
	if b[0] != '-' {
		return b, false, nil
	}
	if !signed {
		return nil, false, fault(QuantityNegative, s,
			message.Of("{=0} is zero or more, such as {#1}", article(k), kinds[k].example))
	}
	return b[1:], true, nil
}

// parseTerm reads one number and its unit from the front of b.
func parseTerm(b []byte, s string, k kind) (tm term, rest []byte, err error) {
	num, rest, bad := lexNumber(b)
	if bad != nil {
		return term{}, nil, fault(bad.code, s, bad.forKind(k))
	}
	var room [maxText]byte
	name, rest := lexUnit(rest, room[:0])
	rest = skipSpace(rest)
	if len(name) == 0 {
		if len(rest) > 0 && !isDigit(rest[0]) {
			return term{}, nil, oddText(s, k)
		}
		return term{}, nil, fault(UnitMissing, s,
			message.Of("which unit? write {=0} such as {#1}", article(k), kinds[k].example))
	}
	u := find(k, name)
	if u == nil {
		return term{}, nil, unknownUnit(name, s, k)
	}
	if len(rest) > 0 && !isDigit(rest[0]) && rest[0] != '.' {
		return term{}, nil, oddText(s, k)
	}
	return term{num, u}, rest, nil
}

// oddText is the error for text that is neither a number nor a unit.
func oddText(s string, k kind) error {
	return fault(NumberBad, s,
		message.Of("write one {=0}, such as {#1}", string(kinds[k].name), kinds[k].example))
}

// forKind returns the hint for a quantity of kind k, with an example where a
// number is missing.
func (c *complaint) forKind(k kind) message.Text {
	if c == badMissing {
		return message.Of("start with a number: {=0} such as {#1}", article(k), kinds[k].example)
	}
	return c.hint
}

// checkOrder checks the rule for several terms: lengths and masses only, each
// in a smaller unit than the one before, and a fraction in the last one only.
func checkOrder(s string, k kind, last *unit, tm term, rest []byte) error {
	if last != nil && last.num*tm.unit.den <= tm.unit.num*last.den {
		return fault(QuantityOrder, s, message.Of("put the larger unit first, as in {#0}", "2 ft 6 in"))
	}
	if len(rest) == 0 {
		return nil
	}
	if k != lengthKind && k != massKind {
		return fault(QuantityTerms, s,
			message.Of("write one number with one unit, such as {#0}", kinds[k].example))
	}
	if tm.num.d != 1 || tm.unit.den != 1 {
		return fault(QuantityOrder, s,
			message.Of("only the last part may have a fraction, as in {#0}", "2 ft 6 1/2 in"))
	}
	return nil
}

// tooLarge is the error for a quantity past its kind's bound.
func tooLarge(s string, k kind) error {
	return fault(QuantityLarge, s, message.Of("too large: at most {#0}", bound(k)))
}

// bound writes the largest quantity of kind k, for a hint.
func bound(k kind) string {
	switch k {
	case lengthKind:
		return "100 km"
	case areaKind:
		return "400 ha"
	case volumeKind:
		return "1000000 m3"
	case massKind:
		return "4000000 t"
	case densityKind:
		return "100 g/cm3"
	default:
		return "10000%"
	}
}

// article returns the name of the kind with its article.
func article(k kind) string { return string(kinds[k].article) }

// unknownUnit explains a unit that kind k does not have: an ambiguous one, one
// of another kind, a misspelling, or none of these.
func unknownUnit(name []byte, s string, k kind) error {
	for _, d := range doubtful {
		if d.kind == k && spelledIn(d.names, name) {
			if a, b, two := strings.Cut(d.which, "|"); two {
				return fault(UnitAmbiguous, s,
					message.Of(`dry or liquid? write "{#0}" or "{#1}": they differ by 16%`, a, b))
			}
			return fault(UnitKind, s, didYouMean(d.which))
		}
	}
	if u := findAny(name); u != nil {
		return fault(UnitKind, s, message.Of("{#0} is a unit of {=1}; here it takes {=2}, such as {#3}",
			u.name, string(kinds[u.kind].name), article(k), kinds[k].example))
	}
	if u := nearest(name, k); u != nil {
		return fault(UnitUnknown, s, didYouMean(u.name))
	}
	return fault(UnitUnknown, s, message.Of("use {#0}", offered(k)))
}

// didYouMean suggests a unit.
func didYouMean(unit string) message.Text { return message.Of(`did you mean "{#0}"?`, unit) }

// nearest returns the unit of kind k that name misspells, or nil.
func nearest(name []byte, k kind) *unit {
	var words []string
	var owner []*unit
	for i := range table {
		u := &table[i]
		if u.kind != k {
			continue
		}
		for w := range strings.SplitSeq(u.also+"|"+u.name, "|") {
			words, owner = append(words, w), append(owner, u)
		}
	}
	meant := spell.Word(string(name), words)
	for i, w := range words {
		if meant != "" && w == meant {
			return owner[i]
		}
	}
	return nil
}

// offered lists up to eight units of kind k, the usual ones first.
func offered(k kind) string {
	var names []string
	for i := range table {
		if table[i].kind == k && len(names) < 8 {
			names = append(names, table[i].name)
		}
	}
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}
