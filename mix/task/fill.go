package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Fill is the work of filling containers with mix. Without containers, as in the zero
// value, it is a problem.
type Fill struct {
	Containers []Container
}

var fill = &Kind{
	Name:    "fill",
	Object:  &doc.Object{ID: "fill", Name: "a fill task", Tables: []doc.Fields{fillFields}},
	New:     func() Work { return &Fill{} },
	Result:  &Pots{},
	Settles: true,
}

var containers = doc.Type{Takes: "list", Form: "list", Such: "containers",
	Of: func() *doc.Object { return container }, Read: doc.ReadEach}

var fillFields = doc.Fields{
	{Name: "containers", Type: &containers, About: "what is filled", At: func(f any) any { return &f.(*Fill).Containers }},
}

// Kind is the kind "fill".
func (f *Fill) Kind() *Kind {
	if f == nil {
		return nil
	}
	return fill
}

// Clone returns a copy that shares nothing with f.
func (f *Fill) Clone() Work {
	if f == nil {
		return nil
	}
	c := &Fill{Containers: make([]Container, len(f.Containers))}
	for i := range f.Containers {
		c.Containers[i] = f.Containers[i].clone()
	}
	return c
}

// Pots is the result of a fill task.
type Pots struct {
	// Lines has one entry for each of the task's containers, in their order.
	Lines []Pot

	blend *catalog.Blend
	net   units.Range
}

// result measures every line and adds them up. A line past the bound starts the sum
// again, so that the lines after it are still checked, each on its own.
func (f *Fill) result(r *doc.Reader, s *catalog.Scope, in *In) Result {
	p := &Pots{blend: in.Blend}
	if len(f.Containers) == 0 {
		r.ProblemAt("containers", doc.FieldMissing, `say what is filled, such as [{"count": 64, "size": "#1"}]`)
		return p
	}
	p.Lines = make([]Pot, len(f.Containers))
	r.Enter("containers")
	defer r.Leave()
	for i := range f.Containers {
		r.EnterAt(i)
		p.Lines[i] = f.Containers[i].result(r, s)
		var ok bool
		if p.net, ok = p.net.Plus(p.Lines[i].Total); !ok {
			r.Problem(doc.VolumeLarge, "with the lines before it, more than can be worked out")
			p.net = units.Range{}
		}
		r.Leave()
	}
	return p
}

// Net is what all lines take in place, in nanolitres.
func (p *Pots) Net() units.Range { return p.net }

// Terms yields the pots of each line and then, to be taken away, their balls. They are
// kept apart because pot and ball may be of different classes, and then their sizes
// vary independently. How far the sides of a pot taper that is given by its brim and
// its width moves it by a hundredth or so, and is left out of the chances.
func (p *Pots) Terms(yield func(Term) bool) {
	for i := range p.Lines {
		line := &p.Lines[i]
		times := float64(line.Line.Count) * float64(line.Cells)
		if !yield(Term{Times: times, Each: line.Each, Class: idOf(line.class), Usual: line.usual}) {
			return
		}
		if line.Ball.Plan > 0 && !yield(Term{Times: times, Each: line.Ball, Class: idOf(line.rooted), Less: true}) {
			return
		}
	}
}

// idOf is the id of a class, or "" for nil.
func idOf(k *catalog.Class) string {
	if k == nil {
		return ""
	}
	return k.ID
}

// Reach is how many containers of each line the stock fills, each line as if it were
// alone.
func (p *Pots) Reach(net units.Volume, enough func(units.Range) bool, q lang.Printer) *Reached {
	reached := &Reached{}
	for i := range p.Lines {
		reached.Pots = append(reached.Pots, p.Lines[i].reach(net, enough, q))
	}
	return reached
}

// Title names what goes in: "Fill with potting mix".
func (p *Pots) Title(q lang.Printer, filling string) string { return q.Print("Fill with {0}", filling) }

// Facts are the lines, each with what it takes in place.
func (p *Pots) Facts(q lang.Printer) (list []Fact) {
	for i := range p.Lines {
		list = append(list, Fact{"containers", p.Lines[i].Label(q), q.Range(p.Lines[i].Total)})
	}
	return list
}

// Steps writes every line and then their sum.
func (p *Pots) Steps(s *Steps) {
	for i := range p.Lines {
		p.Lines[i].steps(s)
	}
	if len(p.Lines) > 1 {
		s.Add("all containers together, in place", s.Printer.Range(p.net), catalog.Arithmetic)
	}
}

// Notes says where the size of a container is not certain.
func (p *Pots) Notes(n *Notes) {
	for i := range p.Lines {
		p.Lines[i].notes(n, "containers["+itoa(int64(i))+"].")
	}
}

// Cautions are about soil in pots, and about working with potting mix.
func (p *Pots) Cautions(s *catalog.Scope) (list []Caution) {
	if s.HasTrait(p.blend, "soil") {
		list = append(list, Caution{Code: "soil-in-pots", Place: 50,
			Text: "Topsoil in pots packs down and drains badly: keep it for beds.", Source: "common practice"})
	}
	return append(append(list, about(s, p.blend, salt)...), legionella)
}

// JSON writes nothing: the facts have all that a fill task works out.
func (p *Pots) JSON(*lang.Writer) {}

// Shape is nil, since JSON writes nothing.
func (p *Pots) Shape() *json.Member { return nil }
