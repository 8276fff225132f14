package doc

import (
	"math"
	"strconv"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Limits on a document.
const (
	MaxBytes = 32 << 20
	maxDepth = 16
	maxNodes = 2_000_000 // values in all
	// maxProblems bounds a report: nobody fixes more at one sitting, and a
	// hostile document must not turn into a larger report.
	maxProblems = 100
)

// Reader walks a document, or a job made in Go, and collects what is wrong. It
// knows where it is, so that every problem carries its path. The zero value is at
// the top of what has no text.
type Reader struct {
	root  *json.Node // nil when what is checked was made in Go
	path  path
	found Problems
	seen  map[string]bool // paths with a problem
	full  bool
}

// Parse reads the text of a document, at most [MaxBytes], for the reader to
// walk; nil with problems when it is no JSON.
func (r *Reader) Parse(data []byte) *json.Node {
	if len(data) > MaxBytes {
		r.Add(&Problem{Code: json.Size, Hint: "a job is at most 32 MB; this is larger"})
		return nil
	}
	root, faults := json.Parse(data, json.Limits{Bytes: MaxBytes, Depth: maxDepth, Nodes: maxNodes})
	for _, f := range faults {
		r.Add(&Problem{Path: f.Path, Code: f.Code, Value: f.Value, Hint: message.Of("line {0}, column {1}: {=2}", itoa(int64(f.Line)), itoa(int64(f.Column)), string(f.Reason))})
	}
	if len(faults) > 0 {
		return nil
	}
	r.root = &root
	return &root
}

// Over makes the reader walk a document that is parsed already.
func Over(root *json.Node) *Reader { return &Reader{root: root} }

// Enter goes into a field of the current object; [Reader.Leave] comes back.
func (r *Reader) Enter(field string) { r.path = append(r.path, step{name: field}) }

// EnterAt goes into an element of the current list.
func (r *Reader) EnterAt(i int) { r.path = append(r.path, step{index: i, isIndex: true}) }

// Leave comes back from the field or element entered last.
func (r *Reader) Leave() { r.path = r.path[:len(r.path)-1] }

// Path writes where the reader is.
func (r *Reader) Path() string { return r.path.String() }

// Problem reports something wrong at the current path. Only the first problem
// of a path counts: what follows from a bad field is no news.
func (r *Reader) Problem(code string, hint message.Text) { r.report(code, hint, nil) }

// ProblemAt reports something wrong in a field of the current object.
func (r *Reader) ProblemAt(field, code string, hint message.Text) {
	r.Enter(field)
	r.Problem(code, hint)
	r.Leave()
}

// Quantity reports err, which package units made, at the current path.
func (r *Reader) Quantity(err error) {
	if e, ok := err.(*units.Error); ok {
		r.report(e.Code, e.Hint, e)
	}
}

func (r *Reader) report(code string, hint message.Text, cause error) {
	if r.full {
		return
	}
	node, offset := r.path.find(r.root)
	r.Add(&Problem{Path: r.path.String(), Code: code, Value: typed(node), Hint: hint, offset: offset, cause: cause})
}

// Here is a problem at the current path about a value that stands elsewhere or
// only in part of the field.
func (r *Reader) Here(code, value string, hint message.Text) *Problem {
	_, offset := r.path.find(r.root)
	return &Problem{Path: r.path.String(), Code: code, Value: Clip(value), Hint: hint, offset: offset}
}

// Add reports a problem, unless its path has one.
func (r *Reader) Add(p *Problem) {
	if r.seen[p.Path] || r.full {
		return
	}
	if len(r.seen) == maxProblems {
		r.full = true
		p = &Problem{Code: ProblemsMore, Hint: "there are more problems; mend these first", offset: math.MaxInt}
	}
	if r.seen == nil {
		r.seen = map[string]bool{}
	}
	r.seen[p.Path] = true
	r.found = append(r.found, p)
}

// Full reports whether there are as many problems as a report may have: what
// costs time to find out is not worth finding out any more.
func (r *Reader) Full() bool { return r.full }

// Sound reports whether nothing is wrong at the current path or below it.
func (r *Reader) Sound() bool {
	if len(r.seen) == 0 {
		return true
	}
	if r.full { // what came after the last report is not known to be sound
		return false
	}
	here := r.path.String()
	for p := range r.seen {
		if strings.HasPrefix(p, here) && (len(p) == len(here) || here == "" || p[len(here)] == '.' || p[len(here)] == '[') {
			return false
		}
	}
	return true
}

// Clean reports whether nothing is wrong with fields of the current object: a
// field that did not read is not a field that is missing.
func (r *Reader) Clean(fields ...string) bool {
	for _, f := range fields {
		r.Enter(f)
		ok := r.Sound()
		r.Leave()
		if !ok {
			return false
		}
	}
	return true
}

// Err returns what was found as [Problems], or nil.
func (r *Reader) Err() error {
	if len(r.found) == 0 {
		return nil // an empty Problems in an error would not be nil
	}
	return inOrder(r.found)
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
