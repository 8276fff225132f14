package units

import "example.org/barrow/units/message"

// ParseDims reads one to three lengths joined by x, ×, "by" or "por" ("20 in x
// 10 in x 2 in"), each more than zero. A unit written once, at the end, applies
// to every number ("60 x 4 ft"). The error is an [*Error] about the whole of s.
func ParseDims(s string) ([]Length, error) {
	sides, err := FixedDims(s)
	if err != nil {
		return nil, err
	}
	out := make([]Length, len(sides))
	for i, side := range sides {
		out[i] = Length(side.Round())
	}
	return out, nil
}

// FixedDims is [ParseDims] before rounding, in nanometres.
func FixedDims(s string) ([]Fixed, error) {
	var t text
	if err := t.fold(s); err != nil {
		return nil, err
	}
	parts := splitDims(t.buf[:t.n])
	if len(parts) > 3 {
		hint := message.Of("at most three lengths, such as {#0}", "20 in x 10 in x 2 in")
		return nil, fault(DimsCount, s, hint)
	}
	unit := sharedUnit(parts)
	out := make([]Fixed, len(parts))
	for i, p := range parts {
		text := string(trimUnit(skipSpace(p)))
		if unit != "" && i < len(parts)-1 {
			text += " " + unit
		}
		side, err := parseFixed(text, lengthKind, false)
		if err != nil {
			return nil, onto(err, s)
		}
		if side.Round() == 0 {
			return nil, fault(QuantityZero, s, "every side must be more than zero")
		}
		out[i] = side
	}
	return out, nil
}

// Looks reports what text looks like before anything has read it: whether it
// starts with a figure, as quantities do and names do not, and into how many
// lengths an x or "by" would split it.
func Looks(s string) (figure bool, sides int) {
	var t text
	if t.fold(s) != nil {
		return false, 1
	}
	b := skipSpace(t.buf[:t.n])
	first := at(b, 0)
	return isDigit(first) || first == '.' || first == '-', len(splitDims(b))
}

// splitDims cuts b at every x, *, "by" and "por". No unit of length contains an
// x. It stops after five parts: three are too many already.
func splitDims(b []byte) [][]byte {
	var parts [][]byte
	for i := 0; i < len(b) && len(parts) <= 4; {
		if n := cross(b[i:]); n > 0 {
			parts, b, i = append(parts, b[:i]), b[i+n:], 0
		} else {
			i++
		}
	}
	return append(parts, b)
}

// cross returns the length of the separator that b starts with, or 0.
func cross(b []byte) int {
	if b[0] == 'x' || b[0] == '*' {
		return 1
	}
	for _, by := range [...]string{" by ", " por "} {
		if len(b) >= len(by) && string(b[:len(by)]) == by {
			return len(by)
		}
	}
	return 0
}

// sharedUnit returns the unit of the last part when no other part has one, else
// "".
func sharedUnit(parts [][]byte) string {
	for _, p := range parts[:len(parts)-1] {
		if _, rest, bad := lexNumber(p); bad != nil || len(skipSpace(rest)) > 0 {
			return ""
		}
	}
	_, rest, bad := lexNumber(parts[len(parts)-1])
	if bad != nil {
		return ""
	}
	name, _ := lexUnit(rest, nil)
	return string(name)
}

// onto makes an error about one part an error about the whole text s, which is
// what the user typed.
func onto(err error, s string) error {
	e := *err.(*Error)
	e.Value = clip(s)
	return &e
}
