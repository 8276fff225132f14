package json

// Shape is what may stand at one place of a document, for a schema of it: see
// [Member]. Shapes are read-only once made.
type Shape struct {
	Is     string   // "string", "number", "integer", "boolean", "array" or "object"
	Words  []string // of a string: one of these
	Of     *Shape   // of an array: each element
	Name   string   // of an object: what the schema calls it, such as "Line"
	Fields []Member // of an object, in the order in which they are written
}

// Member is one field of an object in a [Shape].
type Member struct {
	Name  string
	Shape *Shape
	About string // what it is, its unit where it has one
	Maybe bool   // it may be left out
}

// The plain shapes.
var (
	AString  = &Shape{Is: "string"}
	ANumber  = &Shape{Is: "number"}
	AnInt    = &Shape{Is: "integer"}
	ABoolean = &Shape{Is: "boolean"}
)

// ListOf is a list of one shape.
func ListOf(of *Shape) *Shape { return &Shape{Is: "array", Of: of} }

// AnObject is an object with a name of its own in the schema.
func AnObject(name string, fields ...Member) *Shape {
	return &Shape{Is: "object", Name: name, Fields: fields}
}
