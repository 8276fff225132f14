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

// kinds lists every kind of task in the order in which the work is done: pots first,
// cover last.
var kinds = []*Kind{fill, amend, backfill, cover}

// whatItDoes names every kind again, as a sentence that a language translates whole.
const whatItDoes message.Text = "say what the task does: fill, amend, backfill or cover"

// Kinds lists every kind of task in the order in which the work is done. The list is
// the caller's; the kinds are not.
func Kinds() []*Kind { return slices.Clone(kinds) }

// Kind is a kind of task. It is read-only.
type Kind struct {
	Name   string      // in the document: "fill"
	Object *doc.Object // its own fields in the document, besides those of every task
	New    func() Work // makes work of this kind with nothing filled in
	// Settles is true where what goes in settles in place, as in a pot. A layer is
	// measured loose, as it is spread, so its settling changes nothing in the plan.
	Settles bool
	// Bare is true where nothing has to go in: a hole may be filled with soil alone.
	Bare bool
	// Result is an empty result of this kind, for methods such as Shape that are
	// the same for every result.
	Result Result
}

// Task is one piece of work: what goes in, the allowances, and what is done. The zero
// value has no Work, which planning reports.
type Task struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Name string // its title in the plan; "" for one made from the work

	// Mix and Material say what goes in; exactly one of them is given. Both may be
	// "" only for a kind that is Bare.
	Mix, Material string

	// Settle and BlendLoss are the task's own allowances. nil takes those of the mix
	// or the catalogue, while zero is an allowance of nothing, so they are pointers.
	// Spare is what the grower wants on top; it has no default.
	Settle, BlendLoss *units.Ratio
	Spare             units.Ratio

	Work Work // what is done; nil is a problem
}

// Work is what a task does, such as a [*Fill]: one type for each kind. Other packages
// cannot add a kind, since kinds are listed in this one.
type Work interface {
	// Kind is the kind of this work, or nil for a nil pointer.
	Kind() *Kind
	// Clone returns a copy that shares nothing with the work, or nil for a nil pointer.
	Clone() Work
	// result checks the work and measures it. Its in has the shares of the allowances
	// but not yet what they add, since that follows from the result. Problems go to
	// r, and then the result must not be used, but it is not nil.
	result(r *doc.Reader, s *catalog.Scope, in *In) Result
}

// Result is the work of a task worked out, such as the [*Pots] of a [*Fill]: the only
// place that keeps its figures, which every document, text and drawing asks.
type Result interface {
	// Net is the volume that goes in, in place, before allowances.
	Net() units.Range
	// Terms yields the volumes that make up Net, each with what is uncertain about
	// it, for the chances of the order.
	Terms(yield func(Term) bool)
	// Reach is how far a stock goes in this work, or nil where the question makes no
	// sense. net is what it fills in place, rounded; enough reports exactly whether
	// it fills so much.
	Reach(net units.Volume, enough func(net units.Range) bool, p lang.Printer) *Reached

	// Title says in a few words what is done; filling is what goes in, or "".
	Title(p lang.Printer, filling string) string
	// Facts are the figures besides volumes.
	Facts(p lang.Printer) []Fact
	// Steps writes the working from the measures to Net.
	Steps(s *Steps)
	// Notes adds what is worth knowing about the work.
	Notes(n *Notes)
	// Cautions are the warnings that this kind of work has, in any order.
	Cautions(s *catalog.Scope) []Caution
	// JSON writes the figures that only this kind has, as one field of the plan
	// document. Shape describes that field, or is nil where there is none.
	JSON(w *lang.Writer)
	Shape() *json.Member
}

// Term is one volume of what goes in, and how often it occurs.
type Term struct {
	Times float64 // a float, since it goes into chances, not into the order
	Each  units.Range
	Class string // the id of the container that makes Each uncertain, or ""
	// Usual is the catalogue's allowance that makes Each uncertain, what is left free
	// below a brim, or nil. It is not the caller's to change.
	Usual *catalog.Common
	Less  bool // the volume is taken away, as a root ball is
}

// Reached is how far a volume goes in the work of a task: so many pots, or a layer so
// deep.
type Reached struct {
	Pots  []ReachedPots // for each line of containers, as if it were the only one
	Area  units.Area    // of a layer; 0 for containers
	Depth units.Length  // of the layer over all of Area, as spread
}

// Evaluated is a task worked out.
type Evaluated struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Task   *Task
	In     In
	Net    units.Range // in place, in nanolitres
	Loose  units.Range // with the allowances, as it leaves the shovel; zero when nothing goes in
	Result Result      // nil for a task without a kind
}

// Kind returns the kind of the task's work, or nil where Work is nil or a nil pointer.
func (t *Task) Kind() *Kind {
	if t.Work == nil {
		return nil
	}
	return t.Work.Kind()
}

// Evaluate checks the task and works it out into d. Problems go to r, and then d must
// not be used.
//
// The work comes before the allowances: it makes the result, whose Net they then turn
// into the loose volume. A task with problems is worked out as far as possible, so
// that one report has all of them.
func (t *Task) Evaluate(r *doc.Reader, s *catalog.Scope, d *Evaluated) {
	*d = Evaluated{Task: t}
	if t.Kind() == nil {
		if r.Sound() { // or else the reader has reported the kind already
			r.ProblemAt("kind", doc.FieldMissing, whatItDoes)
		}
		return
	}
	d.In.resolve(r, s, t)
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

// Spread adds what the task takes of each material, loose, to takes, which is indexed
// by the scope's materials. ok is false past [units.MaxVolume].
func (d *Evaluated) Spread(takes []units.Range) (ok bool) {
	return d.In.Blend == nil || d.In.Blend.Spread(d.Loose, takes)
}

// Takes adds what the task would take of each material for another volume in place,
// as Spread does. ok is false past [units.MaxVolume].
func (d *Evaluated) Takes(net units.Range, takes []units.Range) (ok bool) {
	in := d.In // a copy, since the allowances keep what they add
	loose, ok := in.loose(net)
	return ok && in.Blend.Spread(loose, takes)
}

// Filling is the name of what goes in, or "" for nothing.
func (d *Evaluated) Filling() string {
	if d.In.Blend == nil {
		return ""
	}
	return d.In.Blend.Mix.Name
}

// Title is the name of the task, or else what it does in a few words.
func (d *Evaluated) Title(p lang.Printer) string {
	if d.Task.Name != "" {
		return d.Task.Name
	}
	return d.Result.Title(p, d.Filling())
}

// Steps writes the working of the task: the work, the allowances, and the parts of
// what goes in.
func (d *Evaluated) Steps(s *Steps) {
	s.Material = ""
	d.Result.Steps(s)
	if d.In.Blend == nil {
		return
	}
	s.allowances(d)
	s.split(d.In.Blend, d.Loose)
}

// Cautions are the warnings of the work, then those of the material, whatever the
// work. The plan puts them in order and drops repeats.
func (d *Evaluated) Cautions(s *catalog.Scope) []Caution {
	return append(d.Result.Cautions(s), about(s, d.In.Blend, legionella, dust)...)
}

// Clone returns a copy that shares nothing with t.
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
