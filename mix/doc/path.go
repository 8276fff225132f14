package doc

import "example.org/barrow/mix/json"

// path is where in a document a reader stands: tasks[1].containers[0].count.
// It is the JSON path and the name of the form control alike.
type path []step

// step is a field, which may have any name, or an index.
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

// find returns the node that p leads to from root, or nil, and the offset of
// the deepest node on the way: where a person should look.
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
