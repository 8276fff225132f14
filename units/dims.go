package units

import "example.org/barrow/units/message"

// ParseDims reads lengths joined by x, ×, "by" or "por" ("20 in x 10 in x 2 in"). A
// unit written once, at the end, serves every number ("60 x 4 ft"). The error
// is an [*Error]; there are one to three lengths, each more than zero.
func ParseDims(s string) ([]Length, error) {
	var t text
	if err := t.fold(s); err != nil {
		return nil, err
	}
	parts := splitDims(t.buf[:t.n])
	if len(parts) > 3 {
		return nil, fault("dims.count", s, message.Of("at most three lengths, such as {#0}", "20 in x 10 in x 2 in"))
	}
	unit := sharedUnit(parts)
	out := make([]Length, len(parts))
	for i, p := range parts {
		text := string(trimUnit(skipSpace(p)))
		if unit != "" && i < len(parts)-1 {
			text += " " + unit
		}
		n, err := parse(text, lengthKind, false)
		if err != nil {
			return nil, onto(err, s)
		}
		if n == 0 {
			return nil, fault("quantity.zero", s, "every side must be more than zero")
		}
		out[i] = Length(n)
	}
	return out, nil
}

// Looks tells what text is like before it is read as anything: whether it
// starts with a figure, as a quantity does and a name does not, and how many
// lengths an x or "by" would part it into.
func Looks(s string) (figure bool, sides int) {
	var t text
	if t.fold(s) != nil {
		return false, 1
	}
	b := skipSpace(t.buf[:t.n])
	first := at(b, 0)
	return isDigit(first) || first == '.' || first == '-', len(splitDims(b))
}

// splitDims cuts b at every x, *, "by" and "por". No unit of length has an x.
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

// cross is how much of b's start parts two lengths.
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

// sharedUnit returns the last part's unit when no other part has one, or "".
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

// onto puts the whole text s in place of the part that err is about.
func onto(err error, s string) error {
	e := *err.(*Error)
	e.Value = clip(s)
	return &e
}
