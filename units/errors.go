package units

import (
	"strconv"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// Error says what is wrong with a quantity as typed. It is data: Code is
// stable, Value is what was typed, Hint says what would do, in whatever language
// it is to be said in, and may be reworded.
type Error struct {
	Code  string
	Value string
	Hint  message.Text
}

// Error gives the value, quoted, and the hint.
func (e *Error) Error() string { return quoted(e.Value, '"') + ": " + e.Hint.String() }

// quoted is s between marks as [strconv.Quote] has it, but for what does not
// print: that is always a number here. The other forms, and what strconv has
// for them, would be 1 kB of the browser's download.
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

// maxText bounds a quantity as typed: the longest honest one is a third of it.
const maxText = 200

// fault returns an Error about s, cut to what a screen can show.
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
