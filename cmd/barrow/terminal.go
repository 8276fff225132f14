package main

import (
	"io"
	"os"
)

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
