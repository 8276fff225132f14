package doc

import (
	"math"
	"strconv"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// MaxBytes is the largest document that is read, in bytes. It is far above any real
// job and keeps a hostile one from filling the memory.
const MaxBytes = 32 << 20

// More limits on a document, for the same reason.
const (
	maxDepth = 16      // of nesting
	maxNodes = 800_000 // values in all
	// maxProblems bounds a report. A person fixes some problems and tries again,
	// and a hostile document must not produce a report larger than itself.
	maxProblems = 100
)

// Reader walks a document, or a job made in Go, and collects the problems in it. It
// keeps track of where it is, so that every problem carries its path. The zero
// Reader is at the top of a job that has no text; see [Reader.Parse] and [Over] for
// one that has.
type Reader struct {
	root  *json.Node // nil for a job made in Go
	path  path
	found Problems
	seen  map[string]bool // paths with a problem
	full  bool            // more problems were met than a report lists
	areas int             // see Areas

	kept     *AsTyped // of the object that is being read, or nil
	keptFrom int      // where the path within that object starts
}

// Parse parses a document of at most [MaxBytes] for the reader to walk, and returns
// its root. It returns nil, with problems, for what is not JSON.
func (r *Reader) Parse(data []byte) *json.Node {
	if len(data) > MaxBytes {
		r.Add(&Problem{Code: json.Size, Hint: "a job is at most 32 MB; this is larger"})
		return nil
	}
	root, faults := json.Parse(data, json.Limits{Bytes: MaxBytes, Depth: maxDepth, Nodes: maxNodes})
	for _, f := range faults {
		where := message.Of("line {0}, column {1}: {=2}", itoa(int64(f.Line)), itoa(int64(f.Column)), string(f.Reason))
		r.Add(&Problem{Path: f.Path, Code: f.Code, Value: f.Value, Hint: where})
	}
	if len(faults) > 0 {
		return nil
	}
	r.root = &root
	return &root
}

// Over returns a reader at the root of a document that has been parsed already.
func Over(root *json.Node) *Reader { return &Reader{root: root} }

// Enter goes into a field of the current object. [Reader.Leave] goes back.
func (r *Reader) Enter(field string) { r.path = append(r.path, step{name: field}) }

// EnterAt goes into an element of the current list. [Reader.Leave] goes back.
func (r *Reader) EnterAt(i int) { r.path = append(r.path, step{index: i, isIndex: true}) }

// Leave goes back from the field or element entered last.
func (r *Reader) Leave() { r.path = r.path[:len(r.path)-1] }

// Path returns the current path, "" at the top.
func (r *Reader) Path() string { return r.path.String() }

// Problem reports something wrong at the current path. Only the first problem at a
// path is kept: further ones are usually consequences of it.
func (r *Reader) Problem(code string, hint message.Text) { r.report(code, hint, nil) }

// ProblemAt reports something wrong in a field of the current object.
func (r *Reader) ProblemAt(field, code string, hint message.Text) {
	r.Enter(field)
	r.Problem(code, hint)
	r.Leave()
}

// Quantity reports an error that a parser of package units returned, at the current
// path, with the error's own code and hint. It ignores an error of any other type.
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

// Typed returns what was written in a field of the current object, cut to fit a screen.
// It is "" for a job made in Go, and for a list or an object.
func (r *Reader) Typed(field string) string {
	r.Enter(field)
	node, _ := r.path.find(r.root)
	r.Leave()
	return typed(node)
}

// Here returns a problem at the current path, for [Reader.Add], about a value that is
// only a part of the field, such as one name in a line of parts.
func (r *Reader) Here(code, value string, hint message.Text) *Problem {
	_, offset := r.path.find(r.root)
	return &Problem{Path: r.path.String(), Code: code, Value: Clip(value), Hint: hint, offset: offset}
}

// Add reports a problem, unless its path has one already. When the report is full it
// ends with the problem [ProblemsMore].
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

// Areas counts one more piece of ground and returns how many there are by now, for
// the bound on all of them: they may lie inside one another.
func (r *Reader) Areas() int {
	r.areas++
	return r.areas
}

// Full reports whether the report lists as many problems as it may. Checks that take
// time can be left out then, since nothing they find would be shown.
func (r *Reader) Full() bool { return r.full }

// Sound reports whether nothing is wrong at the current path or below it. At the top
// that is the whole document. Checks that need several fields ask it first, so that
// they never work with a field that could not be read.
func (r *Reader) Sound() bool {
	if len(r.seen) == 0 {
		return true
	}
	if r.full { // problems were dropped, and one of them may be here
		return false
	}
	here := r.path.String()
	for p := range r.seen {
		// The path goes on with a separator: a problem at "name" is none at "na".
		rest, below := strings.CutPrefix(p, here)
		if below && (rest == "" || here == "" || rest[0] == '.' || rest[0] == '[') {
			return false
		}
	}
	return true
}

// Clean reports whether nothing is wrong with these fields of the current object. A
// field that could not be read is zero, and a check that needs one field of two would
// otherwise take it for missing.
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

// Err returns what was found as [Problems], in the order of the document, or nil.
func (r *Reader) Err() error {
	if len(r.found) == 0 {
		return nil // an error that holds empty Problems would not be nil
	}
	return inOrder(r.found)
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
