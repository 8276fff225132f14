package json

import (
	"strconv"

	"example.org/barrow/units/message"
)

// tally walks through the document once and counts the members of each
// container, in the order in which containers open. With that the parser can
// take all nodes from one allocation of the right size, and can refuse a
// document with too many values before it has built any.
//
// It knows no grammar beyond strings, commas and brackets. For a well-formed
// document its count is exact. For any other the parser stops, and up to there
// every value follows an opening bracket or a comma that was counted here.
func (p *parser) tally() bool {
	t := tally{nodes: 1, deepest: p.limits.Depth}
	for i := 0; i < len(p.text) && !t.over; i++ {
		c := p.text[i]
		if c == '"' {
			i = stringEnd(p.text, i)
		}
		t.take(c)
		if t.nodes > p.limits.Nodes {
			return p.fail(Size, i, i, message.Of("the document holds more than {0} values; split it",
				strconv.Itoa(p.limits.Nodes)))
		}
	}
	p.sizes = t.sizes
	p.nodes = make([]Node, t.nodes-1)
	p.keys = make([]string, t.keys)
	return true
}

// tally is the count so far.
type tally struct {
	nodes, keys int
	deepest     int
	sizes       []int     // members of each container, in opening order
	open        []bracket // containers not closed yet, outermost first
	fresh       bool      // the innermost one has no member yet
	over        bool      // nothing that follows can be read
}

// bracket is a container that is open.
type bracket struct {
	size   int // index into tally.sizes
	object bool
}

// take counts one byte outside strings.
func (t *tally) take(c byte) {
	if isSpace(c) {
		return
	}
	if t.fresh && c != ']' && c != '}' {
		t.member()
	}
	switch c {
	case '[', '{':
		t.push(c == '{')
	case ']', '}':
		t.pop()
	case ',':
		t.member()
	}
}

// member counts a member of the innermost container.
func (t *tally) member() {
	t.fresh = false
	if len(t.open) == 0 {
		return
	}
	in := t.open[len(t.open)-1]
	t.sizes[in.size]++
	t.nodes++
	if in.object {
		t.keys++
	}
}

// push opens a container. Past the deepest level it stops counting: the parser
// will refuse that.
func (t *tally) push(object bool) {
	t.over = len(t.open) == t.deepest
	t.fresh = true
	t.open = append(t.open, bracket{len(t.sizes), object})
	t.sizes = append(t.sizes, 0)
}

// pop closes a container; after the outermost, nothing can be read.
func (t *tally) pop() {
	t.fresh = false
	t.open = t.open[:max(0, len(t.open)-1)]
	t.over = len(t.open) == 0
}

// stringEnd returns the offset of the quote that closes the string opened at i,
// or of the last byte.
func stringEnd(text string, i int) int {
	for i++; i < len(text) && text[i] != '"'; i++ {
		if text[i] == '\\' {
			i++
		}
	}
	return min(i, len(text)-1)
}

// isSpace reports whether c is white space between values.
func isSpace(c byte) bool { return c == ' ' || c == '\n' || c == '\r' || c == '\t' }
