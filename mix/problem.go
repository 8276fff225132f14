package mix

import (
	"cmp"
	"errors"
	"math"
	"strconv"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Problem is one thing wrong with a job: data, not prose. Path is the field as
// the document nests it ("tasks[1].layer"), Code is stable, Value is what was
// typed, Hint says what would do, in whatever language it is to be said in, and
// may be reworded.
type Problem struct {
	Path, Code, Value string
	Hint              message.Text

	offset int // where in the document, for the order of a report
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

// Problems returns the problems that err carries, in document order, or nil
// when err is not about a job.
func Problems(err error) []*Problem {
	var out []*Problem
	for _, e := range listIn(err) {
		if p, ok := e.(*Problem); ok {
			out = append(out, p)
		}
	}
	stable.Sort(out, func(a, b *Problem) int { return cmp.Compare(a.offset, b.offset) })
	return out
}

// maxProblems bounds a report: nobody mends more at a sitting, and a hostile
// job must not turn into a larger report.
const maxProblems = 100

// checker collects problems while it walks a job. It knows where it is, so
// that every problem carries its path; the zero value is at the top.
type checker struct {
	root  *json.Node // nil when the job was made in Go
	path  path
	found *problemList
	seen  map[string]bool // paths with a problem
	full  bool
}

// problem reports something wrong at the current path. Only the first problem
// of a path counts: what follows from a bad field is no news.
func (c *checker) problem(code string, hint message.Text) {
	if c.full {
		return
	}
	node, offset := c.path.find(c.root)
	c.add(&Problem{Path: c.path.String(), Code: code, Value: typed(node), Hint: hint, offset: offset})
}

// problemAt reports something wrong in a field of the current object.
func (c *checker) problemAt(field, code string, hint message.Text) {
	c.path.push(field)
	c.problem(code, hint)
	c.path.pop()
}

// unitsError reports err, which package units made, at the current path.
func (c *checker) unitsError(err error) {
	if e, ok := errors.AsType[*units.Error](err); ok {
		c.problem(e.Code, e.Hint)
	}
}

func (c *checker) add(p *Problem) {
	if c.seen[p.Path] || c.full {
		return
	}
	if len(c.seen) == maxProblems {
		c.full = true
		p = &Problem{Code: "problems.more", Hint: "there are more problems; mend these first", offset: math.MaxInt}
	}
	if c.seen == nil {
		c.seen = map[string]bool{}
	}
	c.seen[p.Path] = true
	c.found = addTo(c.found, p)
}

// sound reports whether nothing is wrong at the current path or below it.
func (c *checker) sound() bool {
	if len(c.seen) == 0 {
		return true
	}
	if c.full { // what came after the last report is not known to be sound
		return false
	}
	here := c.path.String()
	for p := range c.seen {
		if strings.HasPrefix(p, here) && (len(p) == len(here) || here == "" || p[len(here)] == '.' || p[len(here)] == '[') {
			return false
		}
	}
	return true
}

// clean reports whether nothing is wrong with fields of the current object: a
// field that did not read is not a field that is missing.
func (c *checker) clean(fields ...string) bool {
	for _, f := range fields {
		c.path.push(f)
		ok := c.sound()
		c.path.pop()
		if !ok {
			return false
		}
	}
	return true
}

// err returns what was found, or nil.
func (c *checker) err() error {
	if c.found == nil {
		return nil // a nil *problemList in an error would not be nil
	}
	c.found.ErrorFormat = report
	return c.found
}

// report is the text of the whole error: a line for each problem.
func report(errs []error) string {
	lines := make([]string, len(errs))
	for i, e := range errs {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// typed is what somebody wrote at a node, cut to what a screen can show.
func typed(n *json.Node) string {
	if n == nil {
		return ""
	}
	switch n.Kind {
	case json.String, json.Number:
		return clip(n.Text)
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

// clip makes s fit to show: at most 40 runes, none of which moves a cursor.
func clip(s string) string {
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

// ProblemFrom makes what package units says of one quantity into the error
// that [Problems] reads, so that faces report it as they report a job's.
func ProblemFrom(path string, e *units.Error) error {
	var c checker
	c.add(&Problem{Path: path, Code: e.Code, Value: clip(e.Value), Hint: e.Hint})
	return c.err()
}
