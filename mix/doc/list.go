package doc

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
)

// List reads every element of n with read. It returns nil, with a problem, where n
// is not a list. what is the elements in words, for that problem: "lengths".
func List[T any](r *Reader, n *json.Node, what message.Text, read func(r *Reader, n *json.Node, into *T)) []T {
	if !r.isList(n, what) {
		return nil
	}
	list := make([]T, len(n.Items))
	for i := range n.Items {
		r.EnterAt(i)
		read(r, &n.Items[i], &list[i])
		r.Leave()
	}
	return list
}

// isList reports a problem where n is not a list.
func (r *Reader) isList(n *json.Node, what message.Text) bool {
	if n.Kind != json.Array {
		r.Problem(JSONKind, message.Of("{=0} are a list in [ ], not {=1}", string(what), n.Kind.String()))
		return false
	}
	return true
}

// ReadEach is the Read of a list of objects. It reads each by the tables of the
// type's object, into a list that the object's Row makes. The type's Such is the
// elements in words.
func ReadEach(t *Type, r *Reader, n *json.Node, at any) {
	o := t.Of()
	parts := o.into(nil)
	r.Each(n, t.Such, o, at, func(n *json.Node, row any) {
		for i := range parts {
			parts[i].Object = row
		}
		r.Object(n, o.Name, parts...)
	})
}

// Each reads a list of objects, each with read, into a list that the Row of o makes.
// at points to the list; such is the elements in words. It is for objects that are
// read in a way of their own, such as tasks, whose kind decides their fields.
func (r *Reader) Each(n *json.Node, such message.Text, o *Object, at any, read func(n *json.Node, row any)) {
	if !r.isList(n, such) {
		return
	}
	for i := range n.Items {
		fresh := 0
		if i == 0 { // the whole list is made with its first row
			fresh = len(n.Items)
		}
		r.EnterAt(i)
		read(&n.Items[i], o.Row(at, i, fresh))
		r.Leave()
	}
}

// into pairs every table of the object with the same value.
func (o *Object) into(at any) []Into {
	parts := make([]Into, len(o.Tables))
	for i, t := range o.Tables {
		parts[i] = Into{t, at}
	}
	return parts
}

// ReadOne is the Read of a single object. Where the object may be left out it first
// makes a new one, so that an empty object in the document differs from none.
func ReadOne(t *Type, r *Reader, n *json.Node, at any) {
	o := t.Of()
	if o.Maybe != nil {
		at = o.Maybe(at, true)
	}
	r.Object(n, o.Name, o.into(at)...)
}
