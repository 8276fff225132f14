package units

import (
	"strconv"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// Error says what is wrong with a quantity. It is data for a program to show:
// Code is stable, Value is what was typed, at most 40 characters of it, and
// Hint says what to write instead. A hint may be reworded and can be
// translated.
type Error struct {
	Code  string
	Value string
	Hint  message.Text
}

// Error returns the value, in quotes, and the hint in English.
func (e *Error) Error() string { return quoted(e.Value, '"') + ": " + e.Hint.String() }

// quoted returns s between two marks, escaped as [strconv.Quote] does it.
// Characters that do not print are always written as numbers, never as \n or
// \a: strconv's other forms would add 1 kB to the browser's download.
func quoted(s string, mark byte) string {
	b := []byte{mark}
	for _, r := range s {
		switch {
		case r == rune(mark) || r == '\\':
			b = append(b, '\\', byte(r))
		case strconv.IsPrint(r):
			b = utf8.AppendRune(b, r)
		default:
			form, shift := `\u`, 12
			if r > 0xffff {
				form, shift = `\U`, 28
			}
			b = append(b, form...)
			for ; shift >= 0; shift -= 4 {
				b = append(b, "0123456789abcdef"[r>>shift&15])
			}
		}
	}
	return string(append(b, mark))
}

// maxText is the longest text taken as a quantity, three times what any real
// one needs.
const maxText = 200

// fault returns an Error about s, cut to a length that a screen can show.
func fault(code, s string, hint message.Text) error {
	return &Error{Code: code, Value: clip(s), Hint: hint}
}

// clip cuts s to 40 runes, so that a hostile value cannot fill a screen.
func clip(s string) string {
	n := 0
	for i := range s {
		if n == 40 {
			return s[:i] + "..."
		}
		n++
	}
	return s
}
