package json

// Shape is what may stand at one place of a document, for a schema of it. Shapes
// are read-only once made.
type Shape struct {
	Is      string   // "string", "number", "integer", "array" or "object"
	Words   []string // of a string: one of these, where it is not any
	Of      *Shape   // of an array: each element
	Count   int      // of an array: so many elements; 0 for any number
	Name    string   // of an object: what the schema calls it, such as "Line"
	About   string   // of an object: what it is
	Extends []*Shape // of an object: others, whose fields it has too
	Fields  []Member // of an object, in the order in which they are written
}

// Member is one field of an object in a [Shape].
type Member struct {
	Name  string
	Shape *Shape
	About string // what it is, with its unit where it has one
	Maybe bool   // it may be left out
}

// The plain shapes.
var (
	AString = &Shape{Is: "string"}
	ANumber = &Shape{Is: "number"}
	AnInt   = &Shape{Is: "integer"}
	ARange  = &Shape{Is: "array", Of: ANumber, Count: 2} // the lowest and the highest
)

// AWord is one of some words.
func AWord(words ...string) *Shape { return &Shape{Is: "string", Words: words} }

// ListOf is a list of one shape.
func ListOf(of *Shape) *Shape { return &Shape{Is: "array", Of: of} }

// AnObject is an object with a name of its own in the schema.
func AnObject(name, about string, fields ...Member) *Shape {
	return &Shape{Is: "object", Name: name, About: about, Fields: fields}
}

// All lists the fields of an object, those of the objects that it extends first.
func (s *Shape) All() (fields []Member) {
	for _, other := range s.Extends {
		fields = append(fields, other.All()...)
	}
	return append(fields, s.Fields...)
}
