package doc

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Field is one field of an object: its name, what may be written in it, what it is
// for, and where its value is stored.
type Field struct {
	Name  string
	Type  *Type
	About string // one line of help
	// At takes a pointer to the object and returns a pointer to the value, of the
	// type that Type reads into. Both are any, and so are the arguments of the
	// functions of [Object]: the compiler would make a copy of a generic table and
	// its reader for every type of object, and a browser downloads every copy.
	At func(of any) any
}

// Fields is the table of an object's fields, in the order in which help and forms
// show them. It is read-only.
type Fields []Field

// Object is one kind of object in a document. It is read-only.
type Object struct {
	ID     string       // its name in the page and in the schema
	Name   message.Text // its name in a hint: "a sheet"
	Help   string       // the heading of its fields in the help, where Name is too short
	Tables []Fields     // an object may have several, such as those of every task and those of one kind
	Line   bool         // it may also be written as one line of text, as an area may

	// Row returns a pointer to row i of the list that at points to, or nil past the
	// end of the list. With n above zero it first replaces the list by n zero rows,
	// all at once, so that earlier pointers to rows stay good. Row is nil for an
	// object that is in no list.
	Row func(at any, i, n int) any
	// Maybe returns the object whose pointer at points to, or nil where that pointer
	// is nil. With fresh it first makes a new object. Maybe is nil for an object that
	// is always there.
	Maybe func(at any, fresh bool) any
}

// RowOf is the Row of an object that is a row of a list of T.
func RowOf[T any](at any, i, n int) any {
	list := at.(*[]T)
	if n > 0 {
		*list = make([]T, n)
	}
	if i >= len(*list) {
		return nil
	}
	return &(*list)[i]
}

// MaybeOf is the Maybe of an object that a *T points to.
func MaybeOf[T any](at any, fresh bool) any {
	t := at.(**T)
	if fresh {
		*t = new(T)
	}
	if *t == nil {
		return nil
	}
	return *t
}

// Title is the heading of the object's fields in a list of all objects: its Help, or
// else its Name in English.
func (o *Object) Title() string {
	if o.Help != "" {
		return o.Help
	}
	return o.Name.String()
}

// Into is a table and a pointer to the object that its fields are read into. An
// object of the document may fill several: a task's name and allowances go into the
// task, its other fields into its work.
type Into struct {
	Table  Fields
	Object any
}

// Object reads n's fields into the parts and reports every field that is in none of
// their tables. A misspelled field that was ignored would change the plan without a
// word. what is the object in words, for hints: "a task".
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
				r.read(f, n, p.Object)
				return true
			}
		}
	}
	return false
}

// read reads n into the field of an object. The path is at the field.
func (r *Reader) read(f *Field, n *json.Node, object any) {
	kept, from := r.kept, r.keptFrom
	r.kept, r.keptFrom = nil, len(r.path)-1
	if k, ok := object.(keeper); ok {
		r.kept = k.asTyped()
	}
	f.Type.Read(f.Type, r, n, f.At(object))
	r.kept, r.keptFrom = kept, from
}

// unknownField is the hint for a field that is in no table: the nearest name, or
// else all of them.
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

// Fields lists the fields of the object, in the order of its tables. The list is the
// caller's; the types that its fields point to are not.
func (o *Object) Fields() (list []Field) {
	for _, table := range o.Tables {
		list = append(list, table...)
	}
	return list
}
