package mix

import "example.org/barrow/mix/json"

// Fill is a task that fills containers with mix.
type Fill struct {
	Containers []Container
}

var fillFields = []field[*Task]{
	{"containers", "list", "what is filled", func(c *checker, n *json.Node, t *Task) {
		t.Fill.Containers = readList(c, n, "containers", func(c *checker, n *json.Node, k *Container) { readObject(c, n, k, "a container line", containerFields) })
	}},
}

// work measures every line and adds them up.
func (f *Fill) work(c *checker, b *book) (pots []pot, net Span) {
	if len(f.Containers) == 0 {
		c.problemAt("containers", "field.missing", `say what is filled, such as [{"count": 64, "size": "#1"}]`)
		return nil, Span{}
	}
	pots = make([]pot, len(f.Containers))
	c.path.push("containers")
	defer c.path.pop()
	for i := range f.Containers {
		c.path.pushIndex(i)
		pots[i] = f.Containers[i].work(c, b)
		var ok bool
		if net, ok = net.plus(pots[i].total); !ok {
			c.problem("volume.large", "with the lines before it, more than can be worked out")
			net = Span{}
		}
		c.path.pop()
	}
	return pots, net
}
