package json

// Shape describes what one place of a document can hold, for a schema. Shapes
// are read-only once made.
type Shape struct {
	Is      string   // "string", "number", "integer", "boolean", "array" or "object"
	Words   []string // of a string: one of these; nil for any text
	Of      *Shape   // of an array: each element
	Count   int      // of an array: the number of elements; 0 for any number
	Name    string   // of an object: what the schema calls it, such as "Line"
	About   string   // of an object: what it is
	Extends []*Shape // of an object: others, whose fields it has as well
	Fields  []Member // of an object, in the order they are written in
}

// Member is one field of an object in a [Shape].
type Member struct {
	Name  string
	Shape *Shape
	About string // what it is, with its unit if it has one
	Maybe bool   // it can be left out
}

// The shapes without parts.
var (
	AString = &Shape{Is: "string"}
	ANumber = &Shape{Is: "number"}
	AnInt   = &Shape{Is: "integer"}
	ABool   = &Shape{Is: "boolean"}
	ARange  = &Shape{Is: "array", Of: ANumber, Count: 2} // the lowest and the highest
)

// AWord returns the shape of a string that is one of some words.
func AWord(words ...string) *Shape { return &Shape{Is: "string", Words: words} }

// ListOf returns the shape of a list of one shape.
func ListOf(of *Shape) *Shape { return &Shape{Is: "array", Of: of} }

// AnObject returns the shape of an object that has a name in the schema.
func AnObject(name, about string, fields ...Member) *Shape {
	return &Shape{Is: "object", Name: name, About: about, Fields: fields}
}

// All lists the fields of an object, after those of the objects that it
// extends.
func (s *Shape) All() (fields []Member) {
	for _, other := range s.Extends {
		fields = append(fields, other.All()...)
	}
	return append(fields, s.Fields...)
}
