package doc

import "example.org/barrow/mix/json"

// path is where a reader is in a document: tasks[1].containers[0].count. The page
// names its form controls by the same path, so it can show a problem beside its
// control without a table that maps one to the other.
type path []step

// step is a field or an index. It says which, since a document may have a field of
// any name, even one of digits.
type step struct {
	name    string
	index   int
	isIndex bool
}

// String writes the path as package json writes it in a fault.
func (p path) String() string {
	s := ""
	for _, at := range p {
		if at.isIndex {
			s = json.PathIndex(s, at.index)
		} else {
			s = json.PathKey(s, at.name)
		}
	}
	return s
}

// find returns the node that p leads to from root, or nil where there is none. The
// offset, in bytes, is that of the deepest node on the way: for a field that is
// missing, that is the object that should have it.
func (p path) find(root *json.Node) (n *json.Node, offset int) {
	n = root
	for _, at := range p {
		if n == nil {
			return nil, offset
		}
		offset = n.Offset
		switch {
		case !at.isIndex:
			n = n.Field(at.name)
		case n.Kind == json.Array && at.index < len(n.Items):
			n = &n.Items[at.index]
		default:
			n = nil
		}
	}
	if n != nil {
		offset = n.Offset
	}
	return n, offset
}
