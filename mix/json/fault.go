package json

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// Fault is one thing wrong with a document. It is data to show next to the
// document, and it is also an error.
type Fault struct {
	// Path is the path of the value being read, as in
	// tasks[1].containers[0].count; between two members it is the path of their
	// container. It is "" at the top.
	Path string

	// Code is stable: one of [Syntax] and the others. Reason may be reworded.
	Code string

	// Value is the wrong text as typed, at most 40 runes of it, with U+FFFD for
	// what cannot be printed; or a byte that is not UTF-8, as in 0xe4. It is ""
	// at the end of the document.
	Value string

	// Reason says what is wrong and what to write instead. It can be
	// translated.
	Reason message.Text

	// Line and Column count from 1, and columns count runes. A fault of the
	// whole document is at 1:1.
	Line, Column int
}

// Error returns the place, the path and the reason, on one line and in English.
func (f Fault) Error() string {
	place := "line " + strconv.Itoa(f.Line) + ", column " + strconv.Itoa(f.Column) + ": "
	if f.Path == "" {
		return place + f.Reason.String()
	}
	return place + f.Path + ": " + f.Reason.String()
}

// Position returns the line and the column, both from 1, of a byte offset such
// as [Node.Offset]. Columns count runes. An offset outside data counts as its
// nearest end.
func Position(data []byte, offset int) (line, column int) {
	offset = min(max(offset, 0), len(data))
	p := place{}.advance(string(data[:offset]), offset)
	return p.line + 1, p.column + 1
}

// place is a position, with line and column from 0, that can move forward
// without counting again from the top. That keeps a document with many faults
// linear.
type place struct{ offset, line, column int }

// advance moves to an offset. One that is further back starts again at the top.
func (p place) advance(text string, offset int) place {
	if offset < p.offset {
		p = place{}
	}
	gap := text[p.offset:offset]
	if lines := strings.Count(gap, "\n"); lines > 0 {
		p.line += lines
		p.column = 0
		gap = gap[strings.LastIndexByte(gap, '\n')+1:]
	}
	p.column += utf8.RuneCountInString(gap)
	p.offset = offset
	return p
}

// excerpt returns the part of text that [Fault.Value] shows.
func excerpt(text string) string {
	return strings.Map(func(r rune) rune {
		if strconv.IsPrint(r) {
			return r
		}
		return utf8.RuneError
	}, cut(text))
}

// codePoint names a character that cannot be shown, as in U+00A0.
func codePoint(r rune) string {
	const hex = "0123456789ABCDEF"
	name := []byte("U+")
	for shift := 20; shift >= 0; shift -= 4 {
		if shift < 16 || r>>shift != 0 {
			name = append(name, hex[r>>shift&15])
		}
	}
	return string(name)
}
