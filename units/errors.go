package units

import (
	"strconv"

	"example.org/barrow/units/say"
)

// Error says what is wrong with a quantity as typed. It is data: Code is
// stable, Value is what was typed, Hint says what would do, in whatever language
// it is to be said in, and may be reworded.
type Error struct {
	Code  string
	Value string
	Hint  say.Phrase
}

// Error gives the value, quoted, and the hint.
func (e *Error) Error() string { return strconv.Quote(e.Value) + ": " + e.Hint.String() }

// maxText bounds a quantity as typed: the longest honest one is a third of it.
const maxText = 200

// fault returns an Error about s, cut to what a screen can show.
func fault(code, s string, hint say.Phrase) error {
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
