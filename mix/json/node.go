package json

import (
	"slices"

	"example.org/barrow/units/message"
)

// Kind is the kind of value that a [Node] holds. The zero value is Null.
type Kind uint8

// The kinds of JSON value.
const (
	Null Kind = iota
	Bool
	Number
	String
	Array
	Object
)

// String returns the kind in English words that fit after "found" or
// "expected".
func (k Kind) String() string { return k.words().String() }

// words returns the same, ready to be translated.
func (k Kind) words() message.Text {
	switch k {
	case Null:
		return "nothing"
	case Bool:
		return "true or false"
	case Number:
		return "a number"
	case String:
		return "text"
	case Array:
		return "a list"
	case Object:
		return "an object"
	}
	return "an unknown kind of value"
}

// Node is one value of a document. The zero value is a null.
type Node struct {
	Kind   Kind
	Bool   bool
	Offset int      // byte offset of the value in the document
	Text   string   // a string, decoded; or a number's literal as written
	Keys   []string // an object's keys, in document order
	Items  []Node   // an array's elements, or an object's values in the order of Keys
}

// Field returns the value of key in the object n. It returns nil when n has no
// such key, is not an object or is nil itself, so that look-ups can be chained.
// The search is linear; a caller that reads every key should walk Keys instead.
func (n *Node) Field(key string) *Node {
	if n == nil || n.Kind != Object {
		return nil
	}
	i := slices.Index(n.Keys, key)
	if i < 0 {
		return nil
	}
	return &n.Items[i]
}
