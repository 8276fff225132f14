package json

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/units/message"
)

// Parse reads one JSON document. When the document cannot be read it returns a
// zero Node and at least one [Fault], in document order: every repeated key up
// to Limits.Faults, and the first fault of any other kind, which ends the
// parse. The package comment lists what is refused beyond RFC 8259. Parse keeps
// no reference to data.
func Parse(data []byte, limits Limits) (Node, []Fault) {
	p := parser{limits: limits.filled()}
	var root Node
	if p.accepts(data) && p.tally() && p.value(&root) && p.finish() && len(p.faults) == 0 {
		return root, nil
	}
	return Node{}, p.faults
}

// parser reads one document.
type parser struct {
	text    string // the document, up to the first byte that is not UTF-8
	tail    string // the rest, from that byte on
	at      int    // how far text has been read
	limits  Limits
	sizes   []int    // members of each container still to open
	nodes   []Node   // not handed out yet
	keys    []string // not handed out yet
	scratch []byte   // for decoding a string with escapes
	steps   []step   // one for each open container, outermost first
	last    place    // where the latest fault was
	faults  []Fault
	stopped bool
}

// step leads from a container to the member being read.
type step struct {
	key   string
	index int // or one of the two below
}

// The values of step.index that are not an index.
const (
	stepKey     = -1 // key counts, not index
	stepBetween = -2 // no member is being read
)

// accepts checks what can be known before the first value, and takes the text.
func (p *parser) accepts(data []byte) bool {
	if len(data) > p.limits.Bytes {
		return p.fail(Size, 0, 0, message.Of("the document has {0} bytes, and the limit is {1}",
			strconv.Itoa(len(data)), strconv.Itoa(p.limits.Bytes)))
	}
	text := string(data)
	switch {
	case strings.HasPrefix(text, "\xef\xbb\xbf"):
		return p.fail(BOM, 0, 0, "the file starts with a byte order mark; save the file as UTF-8 without one")
	case strings.HasPrefix(text, "\xfe\xff"), strings.HasPrefix(text, "\xff\xfe"):
		return p.fail(BOM, 0, 0, "the file is in UTF-16; save the file as UTF-8")
	}
	valid := validLength(text)
	p.text, p.tail = text[:valid], text[valid:]
	return true
}

// validLength returns how many bytes of text, from its start, are UTF-8.
func validLength(text string) int {
	if utf8.ValidString(text) {
		return len(text)
	}
	for i := 0; ; {
		r, n := utf8.DecodeRuneInString(text[i:])
		if r == utf8.RuneError && n <= 1 {
			return i
		}
		i += n
	}
}

// finish checks that nothing follows the value at the top.
func (p *parser) finish() bool {
	end := p.at
	p.space()
	if p.at < len(p.text) {
		return p.trailing(end)
	}
	if p.tail != "" {
		return p.fail(UTF8, p.at, p.at, "")
	}
	return true
}

// value reads the next value into n.
func (p *parser) value(n *Node) bool {
	p.space()
	n.Offset = p.at
	if p.at == len(p.text) {
		return p.missingValue()
	}
	switch c := p.text[p.at]; {
	case c == '"':
		n.Kind = String
		return p.quoted(&n.Text)
	case c == '{':
		n.Kind = Object
		return p.object(n)
	case c == '[':
		n.Kind = Array
		return p.array(n)
	case c == '-' || isDigit(c):
		n.Kind = Number
		return p.number(&n.Text)
	}
	return p.word(n)
}

// word reads true, false or null.
func (p *parser) word(n *Node) bool {
	word := p.lexeme()
	switch word {
	case "true", "false":
		n.Kind, n.Bool = Bool, word == "true"
	case "null":
		n.Kind = Null
	default:
		return p.notValue(word)
	}
	p.at += len(word)
	return true
}

// array reads the members of a list.
func (p *parser) array(n *Node) bool {
	if !p.open(n) {
		return false
	}
	for p.next(n) {
		i := len(n.Items)
		p.steps[len(p.steps)-1].index = i
		n.Items = append(n.Items, Node{})
		if !p.value(&n.Items[i]) {
			return false
		}
	}
	return p.close()
}

// object reads the members of an object.
func (p *parser) object(n *Node) bool {
	if !p.open(n) {
		return false
	}
	size := cap(n.Items)
	n.Keys, p.keys = p.keys[:0:size], p.keys[size:]
	var seen keySet
	for p.next(n) {
		if !p.key(n, &seen) || !p.colon() || !p.value(&n.Items[len(n.Items)-1]) {
			return false
		}
	}
	return p.close()
}

// open enters the container at p.at. Its members get their place in the common
// allocation: tally has counted them.
func (p *parser) open(n *Node) bool {
	if len(p.steps) == p.limits.Depth {
		return p.fail(Depth, p.at, p.at+1,
			message.Of("more than {0} lists and objects inside one another; use fewer levels",
				strconv.Itoa(p.limits.Depth)))
	}
	p.at++
	p.steps = append(p.steps, step{index: stepBetween})
	size := p.sizes[0]
	p.sizes = p.sizes[1:]
	n.Items, p.nodes = p.nodes[:0:size], p.nodes[size:]
	return true
}

// close leaves a container, unless the parse has stopped.
func (p *parser) close() bool {
	if p.stopped {
		return false
	}
	p.steps = p.steps[:len(p.steps)-1]
	return true
}

// next moves to the start of the next member of n. It reports false when it has
// read the closing bracket instead, or stopped the parse.
func (p *parser) next(n *Node) bool {
	if p.stopped || p.closed(n) {
		return false
	}
	if len(n.Items) == 0 {
		return p.hasMore(n)
	}
	comma := p.at
	if !p.hasMore(n) || !p.comma(n) {
		return false
	}
	p.between()
	if p.closed(n) {
		return p.fail(Syntax, comma, comma+1,
			message.Of("a comma follows the last value of {=0}; take the comma out", n.Kind.String()))
	}
	return p.hasMore(n)
}

// closed skips white space, and the closing bracket of n if that comes next.
func (p *parser) closed(n *Node) bool {
	p.space()
	if p.at == len(p.text) || p.text[p.at] != closer(n.Kind)[0] {
		return false
	}
	p.at++
	return true
}

// comma reads the comma between two members.
func (p *parser) comma(n *Node) bool {
	if p.text[p.at] != ',' {
		return p.notComma(n)
	}
	p.at++
	return true
}

// key reads a key of n and adds an empty value for it.
func (p *parser) key(n *Node, seen *keySet) bool {
	from := p.at
	if p.text[p.at] != '"' {
		return p.notKey(n)
	}
	var key string
	if !p.quoted(&key) {
		return false
	}
	p.steps[len(p.steps)-1] = step{key: key, index: stepKey}
	if first := seen.find(n.Keys, key); first >= 0 {
		p.duplicate(from, n.Items[first].Offset)
	}
	n.Keys = append(n.Keys, key)
	n.Items = append(n.Items, Node{})
	return !p.stopped
}

// colon reads the colon between a key and its value.
func (p *parser) colon() bool {
	p.space()
	if p.at == len(p.text) || p.text[p.at] != ':' {
		return p.notColon()
	}
	p.at++
	return true
}

// space skips white space.
func (p *parser) space() {
	for p.at < len(p.text) && isSpace(p.text[p.at]) {
		p.at++
	}
}

// between notes that no member of the innermost container is being read.
func (p *parser) between() { p.steps[len(p.steps)-1].index = stepBetween }

// keySet finds repeated keys. A map costs more than it saves for the few keys
// of a usual object, so it starts at the ninth. Without it, an object with many
// keys would take quadratic time.
type keySet map[string]int

// fewKeys is how many keys are searched one by one.
const fewKeys = 8

// find returns the index of key in keys. If it is not there, find returns -1
// and remembers it as the next key.
func (s *keySet) find(keys []string, key string) int {
	if len(keys) < fewKeys {
		return slices.Index(keys, key)
	}
	if *s == nil {
		*s = make(keySet, cap(keys))
		for i, k := range slices.Backward(keys) {
			(*s)[k] = i
		}
	}
	if i, ok := (*s)[key]; ok {
		return i
	}
	(*s)[key] = len(keys)
	return -1
}
