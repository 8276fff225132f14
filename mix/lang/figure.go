package lang

import "strings"

// Figure rewrites a figure from package units, "18 to 29.6 cu ft", for the
// reader: the decimal mark, the names of units and the words between numbers.
// The form of a unit may be two, "pie³|pies³", for one and for more.
func (l *Language) Figure(s string) string {
	if l == nil {
		return s
	}
	var b []byte
	one := false // the number just written is one or less
	for i := 0; i < len(s); {
		switch c := s[i]; {
		case isDigit(c):
			n := i
			for n < len(s) && (isDigit(s[n]) || s[n] == '.' || s[n] == '/') {
				n++
			}
			number := s[i:n]
			one = (number == "1" || strings.Contains(number, "/")) && !(i > 1 && s[i-1] == ' ' && isDigit(s[i-2]))
			if l.comma {
				number = l.pointed(number)
			}
			b = append(b, number...)
			i = n
		case isLetter(c):
			n := l.wordEnd(s, i)
			form, many, two := strings.Cut(l.Form(s[i:n]), "|")
			if two && !one {
				form = many
			}
			b = append(b, form...)
			i = n
		default:
			b = append(b, c)
			i++
		}
	}
	return string(b)
}

// pointed returns a number with a comma for its point, where a digit follows
// it.
func (l *Language) pointed(number string) string {
	b := []byte(number)
	for i := 0; i+1 < len(b); i++ {
		if b[i] == '.' && isDigit(b[i+1]) {
			b[i] = ','
		}
	}
	return string(b)
}

// wordEnd returns where the unit or word that starts at i ends: after two words
// where the language knows the two together, otherwise after one.
func (l *Language) wordEnd(s string, i int) int {
	first := endOf(s, i)
	if first < len(s) && s[first] == ' ' {
		if second := endOf(s, first+1); second > first+1 {
			if _, known := l.forms[Key(s[i:second])]; known {
				return second
			}
		}
	}
	return first
}

// endOf returns where one word ends. A slash is part of a unit, and so is a
// power.
func endOf(s string, i int) int {
	start := i
	for i < len(s) && (isLetter(s[i]) || i > start && (s[i] == '/' || isPower(s, i))) {
		i++
	}
	return i
}

// isPower reports whether the digit at i is the power of a unit, as in ft2, and
// not the start of a number.
func isPower(s string, i int) bool {
	return (s[i] == '2' || s[i] == '3') && (i+1 == len(s) || !isDigit(s[i+1]))
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// isLetter counts the bytes of letters beyond ASCII as letters, so that no word
// is cut inside one.
func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' || c >= 0x80 }
