package units

import (
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// rat is a number as typed, n/d, not reduced.
type rat struct{ n, d uint64 }

// Limits on a number as typed. They keep n and d inside 64 bits, so that one
// exact division in 128 bits rounds the quantity.
const (
	maxDigits      = 18 // in all
	maxPlaces      = 12 // after the point
	maxDenominator = 1_000_000
)

// text is a quantity reduced to plain ASCII; see fold.
type text struct {
	buf [maxText + maxText/2]byte
	n   int
}

// fold reads s, replacing the characters that keyboards and phones put in place
// of plain ones: fraction signs, superscripts, primes and curly quotes, the
// times sign, dashes, hard spaces and accented letters. Capital letters become
// small. The error is an [*Error] about s.
func (t *text) fold(s string) error {
	if len(s) > maxText {
		return fault(TextLong, s, "too long for a quantity")
	}
	for i := 0; i < len(s); {
		if c := s[i]; c < utf8.RuneSelf {
			if c < ' ' && c != '\t' {
				return fault(TextOdd, s, "a control character does not belong in a quantity")
			}
			if c == '\t' {
				c = ' '
			}
			t.put(lower(c))
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		if r == utf8.RuneError && size == 1 {
			return fault(TextUTF8, s, "the text is not valid UTF-8")
		}
		plain := plainText(r)
		if plain == "" {
			return fault(TextOdd, s,
				message.Of("the character {0} does not belong in a quantity", quoted(string(r), '\'')))
		}
		for j := range len(plain) {
			t.put(plain[j])
		}
		i += size
	}
	return nil
}

// put appends c. The buffer is half as long again as maxText because a fraction
// sign of two bytes becomes four.
func (t *text) put(c byte) {
	if t.n < len(t.buf) {
		t.buf[t.n] = c
		t.n++
	}
}

// plainText returns the ASCII for a character found in quantities, or "". A
// fraction sign gets a leading space, so that 1½ reads as 1 1/2.
func plainText(r rune) string {
	switch r {
	case '½':
		return " 1/2"
	case '⅓':
		return " 1/3"
	case '⅔':
		return " 2/3"
	case '¼':
		return " 1/4"
	case '¾':
		return " 3/4"
	case '⅕':
		return " 1/5"
	case '⅖':
		return " 2/5"
	case '⅗':
		return " 3/5"
	case '⅘':
		return " 4/5"
	case '⅙':
		return " 1/6"
	case '⅚':
		return " 5/6"
	case '⅛':
		return " 1/8"
	case '⅜':
		return " 3/8"
	case '⅝':
		return " 5/8"
	case '⅞':
		return " 7/8"
	case '²':
		return "2"
	case '³':
		return "3"
	case '×', '✕':
		return "x"
	case '⁄', '∕':
		return "/"
	case '−', '–', '—', '‑':
		return "-"
	case '′', '’', '‘', 'ʹ':
		return "'"
	case '″', '”', '“', 'ʺ':
		return `"`
	case 'á', 'Á':
		return "a"
	case 'é', 'É':
		return "e"
	case 'í', 'Í':
		return "i"
	case 'ó', 'Ó':
		return "o"
	case 'ú', 'Ú':
		return "u"
	case '\u00a0', '\u2007', '\u2009', '\u202f':
		return " "
	}
	return ""
}

// lower returns the small letter for an ASCII capital, and any other byte
// unchanged.
func lower(c byte) byte {
	if 'A' <= c && c <= 'Z' {
		return c + 'a' - 'A'
	}
	return c
}

func isDigit(c byte) bool  { return '0' <= c && c <= '9' }
func isLetter(c byte) bool { return 'a' <= c && c <= 'z' }

// at returns b[i], or 0 outside b: a byte that no quantity has.
func at(b []byte, i int) byte {
	if 0 <= i && i < len(b) {
		return b[i]
	}
	return 0
}

// skipSpace removes spaces from the front of b. fold has made all other white
// space spaces.
func skipSpace(b []byte) []byte {
	for len(b) > 0 && b[0] == ' ' {
		b = b[1:]
	}
	return b
}

// complaint is what is wrong with a number, before the caller adds the text it
// is about.
type complaint struct {
	code string
	hint message.Text
}

// The things that can be wrong with a number.
var (
	badMissing = &complaint{NumberMissing, ""} // the caller knows what is missing
	badNumber  = &complaint{NumberBad, "write one number, such as 1.5 or 1 1/2"}
	badComma   = &complaint{NumberComma,
		"a comma may mean a decimal or thousands; use a point for decimals and nothing for thousands, such as 0.5 or 1500"}
	badExponent = &complaint{NumberExponent, "write the number out, without an exponent"}
	badRange    = &complaint{NumberRange, "write one figure, not a range"}
	badDigits   = &complaint{NumberDigits, "at most 18 digits, 12 of them after the point"}
	badFraction = &complaint{NumberFraction,
		"write a fraction as 1/2 or 1 1/2: less than one after a whole number, with a whole number from 1 to 1000000 below"}
)

// CommaHint explains [NumberComma] to somebody whose decimal mark is a comma: what they
// typed had points, and became this comma on the way.
const CommaHint message.Text = "a point may mean thousands or a decimal; use a comma for decimals and nothing for thousands, such as 0,5 or 1500"

// lexNumber reads a number from the front of b: a decimal, a fraction or a
// mixed number.
func lexNumber(b []byte) (r rat, rest []byte, bad *complaint) {
	r, rest, bad = lexDecimal(b)
	if bad != nil {
		return r, rest, bad
	}
	whole := r.d == 1 && !hasPoint(b, rest)
	if whole && at(rest, 0) == '/' && isDigit(at(rest, 1)) {
		return lexBelow(r, rest[1:])
	}
	if part, after, bad, is := lexMixed(rest); is {
		if bad == nil && !whole {
			bad = badNumber
		}
		if bad == nil && r.n > 0 && part.n >= part.d { // 1 5/2 is a mistake
			bad = badFraction
		}
		n, ok := mul(r.n, part.d)
		if bad == nil && !ok {
			bad = badDigits
		}
		return rat{n + part.n, part.d}, after, bad
	}
	return r, rest, afterNumber(rest)
}

// hasPoint reports whether the number that b starts with, up to rest, has a
// point.
func hasPoint(b, rest []byte) bool {
	for _, c := range b[:len(b)-len(rest)] {
		if c == '.' {
			return true
		}
	}
	return false
}

// lexMixed reads " 3/4" or "-3/4" from the front of b. is reports whether b
// starts with anything of that shape.
func lexMixed(b []byte) (r rat, rest []byte, bad *complaint, is bool) {
	rest = b
	if at(b, 0) == '-' {
		rest = b[1:]
	} else if rest = skipSpace(b); len(rest) == len(b) {
		return rat{}, b, nil, false
	}
	i := 0
	for isDigit(at(rest, i)) {
		i++
	}
	if i == 0 || at(rest, i) != '/' || !isDigit(at(rest, i+1)) {
		return rat{}, b, nil, false
	}
	r, rest, bad = lexDecimal(rest)
	if bad == nil {
		r, rest, bad = lexBelow(r, rest[1:])
	}
	return r, rest, bad, true
}

// lexBelow reads the denominator of r from the front of b.
func lexBelow(r rat, b []byte) (rat, []byte, *complaint) {
	below, rest, bad := lexDecimal(b)
	if bad == nil && (below.d != 1 || below.n < 1 || below.n > maxDenominator) {
		bad = badFraction
	}
	if bad == nil {
		bad = afterNumber(rest)
	}
	return rat{r.n, below.n}, rest, bad
}

// lexDecimal reads digits, with or without a point, from the front of b.
func lexDecimal(b []byte) (r rat, rest []byte, bad *complaint) {
	b = skipSpace(b)
	if !isDigit(at(b, 0)) && !(at(b, 0) == '.' && isDigit(at(b, 1))) {
		return rat{0, 1}, b, badMissing
	}
	i, digits := 0, 0
	r = rat{0, 1}
	for ; isDigit(at(b, i)); i++ {
		if digits > 0 || b[i] != '0' {
			digits++
		}
		if digits > maxDigits {
			return r, b, badDigits
		}
		r.n = r.n*10 + uint64(b[i]-'0')
	}
	if at(b, i) != '.' {
		return r, b[i:], nil
	}
	end := i + 1
	for isDigit(at(b, end)) {
		end++
	}
	last := end
	for last > i+1 && b[last-1] == '0' { // 1.500 is 1.5, however many zeros
		last--
	}
	for _, c := range b[i+1 : last] {
		if r.n > 0 || c != '0' {
			digits++
		}
		if digits > maxDigits || last-i-1 > maxPlaces {
			return r, b, badDigits
		}
		r.n, r.d = r.n*10+uint64(c-'0'), r.d*10
	}
	return r, b[end:], nil
}

// afterNumber returns a complaint about text that must not follow a number
// directly, such as a second point or the other end of a range.
func afterNumber(rest []byte) *complaint {
	next := at(rest, 1)
	switch at(rest, 0) {
	case ',':
		if isDigit(next) {
			return badComma
		}
		return badNumber
	case '.', '/', '+', ':':
		return badNumber
	case '-':
		if isDigit(next) || next == ' ' {
			return badRange
		}
	case 'e':
		if isDigit(next) || (next == '-' || next == '+') && isDigit(at(rest, 2)) {
			return badExponent
		}
	case ' ':
		s := skipSpace(rest)
		if at(s, 0) == '-' && isDigit(at(skipSpace(s[1:]), 0)) {
			return badRange
		}
		for _, between := range [...]string{"to ", "or ", "a ", "o "} {
			n := len(between)
			if len(s) > n && string(s[:n]) == between && isDigit(at(skipSpace(s[n:]), 0)) {
				return badRange
			}
		}
	}
	return nil
}

// lexUnit reads the name of a unit from the front of b and appends it to name,
// normalised: no full stops, single spaces, and a slash for "per" and "por".
func lexUnit(b []byte, name []byte) (unit, rest []byte) {
	b = skipSpace(b)
	switch {
	case at(b, 0) == '\'' && at(b, 1) == '\'':
		return append(name, "''"...), b[2:]
	case at(b, 0) == '\'' || at(b, 0) == '"' || at(b, 0) == '%':
		return append(name, b[0]), b[1:]
	case at(b, 0) == '-' && isLetter(at(b, 1)): // 12-inch
		b = b[1:]
	}
	for len(b) > 0 {
		c, last := b[0], at(name, len(name)-1)
		switch {
		case isLetter(c):
			name = append(name, c)
		case c == ' ' && last != '/':
			name = append(name, c)
			b = skipSpace(b)
			if n := at(b, 0); !isLetter(n) && n != '/' {
				return trimUnit(name), b
			}
			if len(b) > 3 && (string(b[:4]) == "per " || string(b[:4]) == "por ") {
				name[len(name)-1] = '/'
				b = skipSpace(b[3:])
			}
			continue
		case c == ' ':
		case c == '/' && last == ' ':
			name[len(name)-1] = '/'
		case c == '/' && len(name) > 0:
			name = append(name, c)
		case c == '.' && isLetter(last), c == '^' && isLetter(last):
		case (c == '2' || c == '3') && isLetter(last) && endsUnit(at(b, 1)):
			return append(name, c), b[1:]
		default:
			return trimUnit(name), b
		}
		b = b[1:]
	}
	return trimUnit(name), b
}

// endsUnit reports whether the 2 or 3 before c is the power of a unit, as in
// ft2, and not the start of another number.
func endsUnit(c byte) bool {
	return !isLetter(c) && !isDigit(c) && c != '.' && c != '\'' && c != '"'
}

// trimUnit removes spaces from the end of a name.
func trimUnit(name []byte) []byte {
	for len(name) > 0 && name[len(name)-1] == ' ' {
		name = name[:len(name)-1]
	}
	return name
}
