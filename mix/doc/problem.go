package doc

import (
	"cmp"
	"strconv"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Problem is one thing wrong with a document, as data that a program can act on.
// Path is the field as the document nests it ("tasks[1].layer"), "" for the whole
// document. Code never changes: it is [FieldMissing] or another code of this package,
// or one of package units or json. Value is what was typed, cut to fit a screen, or
// "" where nothing was. Hint says what to write instead; it can be put in any
// language, and its wording may change.
type Problem struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Path, Code, Value string
	Hint              message.Text

	offset int   // in bytes into the document, for the order of a report
	cause  error // the error of package units that the problem comes from, or nil
}

// Error returns the path, the value and the hint, in English, on one line.
func (p *Problem) Error() string {
	s := p.Path
	if s == "" {
		s = "job"
	}
	if p.Value != "" {
		s += ": " + p.Value
	}
	return s + ": " + p.Hint.String()
}

// Unwrap returns the [*units.Error] that the problem comes from, or nil.
func (p *Problem) Unwrap() error { return p.cause }

// Problems is everything wrong with a document, in the order of the document. It is
// the only kind of error that reading or planning a job returns. [errors.As] finds
// the first [*Problem] in it, and the first [*units.Error].
type Problems []*Problem

// Error returns a line for each problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the problems one by one.
func (ps Problems) Unwrap() []error {
	list := make([]error, len(ps))
	for i, p := range ps {
		list[i] = p
	}
	return list
}

// ProblemsIn returns the problems that err is or wraps, or nil when it has none. It
// does what [errors.As] does without package errors, which would make the program
// that a browser downloads larger.
func ProblemsIn(err error) Problems {
	for err != nil {
		if ps, ok := err.(Problems); ok {
			return ps
		}
		inner, ok := err.(interface{ Unwrap() error })
		if !ok {
			return nil
		}
		err = inner.Unwrap()
	}
	return nil
}

// Quantity returns the error of one quantity as the [Problems] that a document with
// that quantity at path would have. A command that reads a single quantity can
// then report it in the same way as a document.
func Quantity(path string, e *units.Error) error {
	return Problems{{Path: path, Code: e.Code, Value: Clip(e.Value), Hint: e.Hint, cause: e}}
}

// inOrder sorts problems by where they are in the document. The sort is stable: the
// problems of a job made in Go have no place, and keep the order of the checks.
func inOrder(ps Problems) Problems {
	stable.Sort(ps, func(a, b *Problem) int { return cmp.Compare(a.offset, b.offset) })
	return ps
}

// typed is what was written at a node, cut to fit a screen. It is "" for a list or
// an object, which would be too long to repeat.
func typed(n *json.Node) string {
	if n == nil {
		return ""
	}
	switch n.Kind {
	case json.String, json.Number:
		return Clip(n.Text)
	case json.Bool:
		if n.Bool {
			return "true"
		}
		return "false"
	case json.Null:
		return "null"
	}
	return ""
}

// Clip returns s ready to show in one line: at most 40 runes and then "...", and
// U+FFFD in place of every rune that does not print. Such runes could move a
// terminal's cursor and make a report say something else.
func Clip(s string) string {
	n := 0
	for i := range s {
		if n == 40 {
			s = s[:i] + "..."
			break
		}
		n++
	}
	return strings.Map(func(r rune) rune {
		if strconv.IsPrint(r) {
			return r
		}
		return '\uFFFD'
	}, s)
}
