package doc

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Field is one field of an object: what it is called, what is written there,
// what it is, and where its value is kept.
type Field struct {
	Name  string
	Type  *Type
	About string // for people who look it up
	// At takes a pointer to the object and gives one to the value, of the type that
	// Type reads into. It is any to any, as [Object] is in its functions: of generic
	// tables a browser would have to download one for every object.
	At func(of any) any
}

// Fields is the table of an object's fields.
type Fields []Field

// Object is one kind of object of a document.
type Object struct {
	ID     string       // what the page and the schema call it
	Name   message.Text // in a hint: "a sheet"
	Help   string       // at the head of its fields, where that is more than Name
	Tables []Fields
	Line   bool // it may be written in one line of text, too, as an area may

	// Row gives a pointer to row i of a list of these, which at points to; nil past
	// its end. With n of more than zero it makes the list n rows, all zero, first.
	// It is nil for what stands in no list.
	Row func(at any, i, n int) any
	// Maybe gives a pointer to an object that may be left out, which at points to a
	// pointer to; nil where it is. With fresh it makes a new one first. It is nil for
	// what is always there.
	Maybe func(at any, fresh bool) any
}

// Title is what a list of all objects calls it.
func (o *Object) Title() string {
	if o.Help != "" {
		return o.Help
	}
	return o.Name.String()
}

// Into is a table and a pointer to the object that its fields are read into.
type Into struct {
	Table  Fields
	Object any
}

// Object reads n's fields and reports every field that no table has. what is the
// object in words: "a task".
func (r *Reader) Object(n *json.Node, what message.Text, parts ...Into) {
	if n.Kind != json.Object {
		r.Problem(JSONKind, message.Of("{=0} is an object in { }, not {=1}", string(what), n.Kind.String()))
		return
	}
	for i, key := range n.Keys {
		r.Enter(key)
		if !r.field(key, &n.Items[i], parts) {
			r.Problem(FieldUnknown, unknownField(key, what, parts))
		}
		r.Leave()
	}
}

// field reads one field; ok is false when no table has it.
func (r *Reader) field(key string, n *json.Node, parts []Into) (ok bool) {
	for _, p := range parts {
		for i := range p.Table {
			if f := &p.Table[i]; f.Name == key {
				f.Type.Read(f.Type, r, n, f.At(p.Object))
				return true
			}
		}
	}
	return false
}

func unknownField(key string, what message.Text, parts []Into) message.Text {
	var names []string
	for _, p := range parts {
		for i := range p.Table {
			names = append(names, p.Table[i].Name)
		}
	}
	if meant := spell.Word(key, names); meant != "" {
		return DidYouMean(meant)
	}
	return message.Of("{=0} takes {=1}", string(what), string(And(names)))
}

// Fields lists the fields of the object, in the order of its tables.
func (o *Object) Fields() (list []Field) {
	for _, table := range o.Tables {
		list = append(list, table...)
	}
	return list
}
