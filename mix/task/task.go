package task

import (
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// kinds lists every kind of task in the order in which the work goes.
var kinds = []*Kind{fill, amend, backfill, cover}

// whatItDoes names every kind again, since a language may have words for them.
const whatItDoes message.Text = "say what the task does: fill, amend, backfill or cover"

// Kinds lists every kind of task in the order in which the work goes.
func Kinds() []*Kind { return slices.Clone(kinds) }

// Kind is a kind of task. It is read-only.
type Kind struct {
	Name   string
	Object *doc.Object // its own fields in the document, besides those of every task
	New    func() Work // work of this kind with nothing said yet
	// Settles says that what goes in settles in place, as in a pot; a layer is
	// measured loose, as it is spread.
	Settles bool
	// Bare says that nothing may go in: soil alone goes back into a hole.
	Bare bool
	// Result is an empty result of this kind, for what is asked of all of them.
	Result Result
}

// Task is one piece of work: what goes in, the allowances, and what is done.
type Task struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Name string // what the plan calls it, or ""

	// Mix or Material says what goes in: one of the two. Both may be "" only for
	// a kind that is Bare.
	Mix, Material string

	// Settle and BlendLoss override the mix's and the catalogue's allowances;
	// nil takes those. Spare is what the grower wants on top.
	Settle, BlendLoss *units.Ratio
	Spare             units.Ratio

	Work Work // what is done; nil is a problem
}

// Work is what a task does, such as a [*Fill]: one type for each kind.
type Work interface {
	// Kind is the kind of work that this is; nil of a nil pointer.
	Kind() *Kind
	// Clone is a copy that shares nothing; nil of a nil pointer.
	Clone() Work
	// result checks the work and measures it. Problems go to r, and then the
	// result is of no use, though not nil.
	result(r *doc.Reader, s *catalog.Scope, in *In) Result
}

// Result is a task's work worked out: the only place where its figures live, such
// as [*Pots] of a [*Fill].
type Result interface {
	// Net is what goes in, in place, before allowances.
	Net() units.Range
	// Terms are the volumes that Net adds up, each with what is uncertain of it.
	Terms(yield func(Term) bool)
	// Reach turns the question round: how far net goes; nil where it makes no
	// sense to ask.
	Reach(net units.Volume, p lang.Printer) *Reached

	// Title is what is done in a few words; filling is what goes in, or "".
	Title(p lang.Printer, filling string) string
	// Facts are what it works out besides volumes.
	Facts(p lang.Printer) []Fact
	Steps(s *Steps)
	Notes(n *Notes)
	Cautions(s *catalog.Scope) []Caution
	// JSON writes what only this kind has, as a field of the plan document; Shape
	// says which, for the document's schema, nil for none.
	JSON(w *lang.Writer)
	Shape() *json.Member
}

// Term is one volume of what goes in, so many times.
type Term struct {
	Times float64
	Each  units.Range
	Class string // the id of the container that makes Each uncertain, or ""
	Less  bool   // taken away: a root ball
}

// Reached is how far a volume goes in the work of a task.
type Reached struct {
	Pots  []ReachedPots // each line of containers, were it alone
	Area  units.Area    // of a layer; 0 for containers
	Depth units.Length  // how deep over the whole of it, as spread
}

// Done is a task worked out.
type Done struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Task   *Task
	In     In
	Net    units.Range // in place
	Loose  units.Range // as it leaves the shovel
	Result Result      // nil with problems
}

// Kind returns the kind of the task's work. It is nil where there is none, as when
// Work is a nil pointer.
func (t *Task) Kind() *Kind {
	if t.Work == nil {
		return nil
	}
	return t.Work.Kind()
}

// Evaluate checks the task and works it out into d. Problems go to r, and then d is
// not to be used.
func (t *Task) Evaluate(r *doc.Reader, s *catalog.Scope, d *Done) {
	*d = Done{Task: t}
	if t.Kind() == nil {
		if r.Sound() { // else its kind is what did not read
			r.ProblemAt("kind", doc.FieldMissing, whatItDoes)
		}
		return
	}
	d.In.look(r, s, t)
	d.Result = t.Work.result(r, s, &d.In)
	d.Net = d.Result.Net()
	if d.In.Blend == nil || !r.Sound() {
		return
	}
	var ok bool
	if d.Loose, ok = d.In.loose(d.Net); !ok {
		r.Problem(doc.VolumeLarge, "with its allowances, more than can be worked out")
		d.Loose = units.Range{}
	}
}

// Spread adds what the task takes of each material to takes; ok is false past
// [units.MaxVolume].
func (d *Done) Spread(takes []units.Range) (ok bool) {
	return d.In.Blend == nil || d.In.Blend.Spread(d.Loose, takes)
}

// Filling is the name of what goes in, "" for nothing.
func (d *Done) Filling() string {
	if d.In.Blend == nil {
		return ""
	}
	return d.In.Blend.Mix.Name
}

// Title is the task's name, or what it does in a few words.
func (d *Done) Title(p lang.Printer) string {
	if d.Task.Name != "" {
		return d.Task.Name
	}
	return d.Result.Title(p, d.Filling())
}

// Steps writes how the task is worked out.
func (d *Done) Steps(s *Steps) {
	s.Material = ""
	d.Result.Steps(s)
	if d.In.Blend == nil {
		return
	}
	s.allowances(d)
	s.split(d.In.Blend, d.Loose)
}

// Cautions are what to take care of in this task.
func (d *Done) Cautions(s *catalog.Scope) []Caution {
	return append(d.Result.Cautions(s), about(s, d.In.Blend, legionella, dust)...)
}

// Clone is a copy that shares nothing with t.
func (t *Task) Clone() Task {
	c := *t
	c.Settle, c.BlendLoss = cloneRatio(t.Settle), cloneRatio(t.BlendLoss)
	if t.Work != nil {
		c.Work = t.Work.Clone()
	}
	return c
}

func cloneRatio(r *units.Ratio) *units.Ratio {
	if r == nil {
		return nil
	}
	c := *r
	return &c
}
