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

// Problem is one thing wrong with a document: data, not prose. Path is the field
// as the document nests it ("tasks[1].layer"), Code is stable: [FieldMissing] and
// so on, or one of package units or json. Value is what was typed, Hint says what
// would do, in whatever language it is to be said in, and may be reworded.
type Problem struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Path, Code, Value string
	Hint              message.Text

	offset int   // where in the document, for the order of a report
	cause  error // what package units said, where that is what is wrong
}

// Error gives the path, the value and the hint on one line.
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

// Problems is everything wrong with a document, in the document's order. It is
// the one error that reading or planning a job returns. [errors.As] finds in it
// the first [*Problem], and the first [*units.Error].
type Problems []*Problem

// Error gives a line for each problem.
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

// ProblemsIn returns the problems that err carries, or nil when err is about
// something else.
func ProblemsIn(err error) Problems {
	for err != nil { // package errors costs a browser more than this
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

// Quantity makes what package units says of one quantity into the problems that
// a whole document would have with it, at the path.
func Quantity(path string, e *units.Error) error {
	return Problems{{Path: path, Code: e.Code, Value: Clip(e.Value), Hint: e.Hint, cause: e}}
}

// inOrder sorts problems by where in the document they are.
func inOrder(ps Problems) Problems {
	stable.Sort(ps, func(a, b *Problem) int { return cmp.Compare(a.offset, b.offset) })
	return ps
}

// typed is what somebody wrote at a node, cut to what a screen can show.
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

// Clip makes s fit to show: at most 40 runes, none of which moves a cursor.
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
