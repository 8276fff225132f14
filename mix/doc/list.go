package doc

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
)

// List reads every element of n with read; what is the elements in words.
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

func (r *Reader) isList(n *json.Node, what message.Text) bool {
	if n.Kind != json.Array {
		r.Problem(JSONKind, message.Of("{=0} are a list in [ ], not {=1}", string(what), n.Kind.String()))
		return false
	}
	return true
}

// ReadEach reads a list of objects, each by the tables of the type's object, into
// a list that its Row makes; Such is the elements in words.
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

// Each reads a list of objects, each with read, into a list that the Row of o
// makes; such is the elements in words.
func (r *Reader) Each(n *json.Node, such message.Text, o *Object, at any, read func(n *json.Node, row any)) {
	if !r.isList(n, such) {
		return
	}
	for i := range n.Items {
		fresh := 0
		if i == 0 {
			fresh = len(n.Items)
		}
		r.EnterAt(i)
		read(&n.Items[i], o.Row(at, i, fresh))
		r.Leave()
	}
}

func (o *Object) into(at any) []Into {
	parts := make([]Into, len(o.Tables))
	for i, t := range o.Tables {
		parts[i] = Into{t, at}
	}
	return parts
}

// ReadOne reads an object by the tables of the type's, into a new one where it may
// be left out.
func ReadOne(t *Type, r *Reader, n *json.Node, at any) {
	o := t.Of()
	if o.Maybe != nil {
		at = o.Maybe(at, true)
	}
	r.Object(n, o.Name, o.into(at)...)
}
