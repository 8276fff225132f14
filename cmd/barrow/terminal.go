package main

import (
	"io"
	"os"
	"strings"

	"example.org/barrow/units/message"
)

// screen is standard output or standard error. What is written to it cannot move a
// cursor or turn text around, whoever's text it is, and it keeps the first error, so
// that nothing is lost in silence wherever it was written. Every write has whole
// characters.
type screen struct {
	to    io.Writer
	bold  bool // the program's own escapes may pass
	wrong error
}

// Write writes text with U+FFFD in place of every control character but the end of a
// line and the tab.
func (s *screen) Write(text []byte) (int, error) {
	if s.wrong == nil {
		if _, err := s.to.Write([]byte(strings.Map(s.shown, string(text)))); err != nil {
			s.wrong = &writeError{err}
		}
	}
	if s.wrong != nil {
		return 0, s.wrong
	}
	return len(text), nil
}

// shown is what stands for a character.
func (s *screen) shown(r rune) rune {
	if message.IsControl(r) && r != '\n' && r != '\t' && (r != '\x1b' || !s.bold) {
		return '\uFFFD'
	}
	return r
}

// isTerminal reports whether headings can be bold: out is a terminal that
// understands it, and NO_COLOR (no-color.org) does not ask for plain text.
func isTerminal(out io.Writer) bool {
	f, ok := out.(*os.File)
	if !ok || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// heading is a line that stands out on a terminal.
func (a *app) heading(s string) string {
	if a.colour {
		return "\x1b[1m" + s + "\x1b[0m"
	}
	return s
}
