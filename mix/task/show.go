package task

import (
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Fact is a figure of a task besides its volumes, as text in the reader's units and
// language. Code never changes, so that a program can find a fact in any language:
// "area", "layer", "finished".
type Fact struct{ Code, Label, Figure string }

// facts collects the facts of a task and translates their labels.
type facts struct {
	p    lang.Printer
	list []Fact
}

func (f *facts) add(code string, label message.Text, figure string) {
	f.list = append(f.list, Fact{code, f.p.Text(label), figure})
}

// Step is one step of the working behind a figure of the plan, as text in the
// reader's units and language.
type Step struct {
	Task     int    // the task's index, or -1 for a step over all tasks
	Material string // the material's id, or ""
	Step     string // what is done, with the figures that go in
	Figure   string // the figure that comes out
	Source   string // where the figures come from
}

// Steps hands out the working, one [Step] at a time, until Yield returns false. From
// then on it formats nothing more, so that reading only the first steps is cheap.
type Steps struct {
	Printer  lang.Printer
	Scope    *catalog.Scope
	Task     int    // for the steps that follow
	Material string // for the steps that follow
	Yield    func(Step) bool

	stopped bool // Yield has returned false
}

// Add writes a step: form with the values of with put in, and the figure that it
// comes to.
func (s *Steps) Add(form message.Text, figure string, source catalog.Source, with ...string) {
	if !s.stopped {
		s.Put(s.Printer.Print(form, with...), figure, source)
	}
}

// Put writes a step whose words are in the reader's language already.
func (s *Steps) Put(step, figure string, source catalog.Source) {
	if !s.stopped {
		s.stopped = !s.Yield(Step{s.Task, s.Material, step, figure, source.In(s.Printer.Language)})
	}
}

// allowances writes the steps from the net to the loose volume. An allowance of
// nothing has a step too: the reader sees that it was considered, and by whom it was
// set to nothing. Every figure is in the unit of the loose volume, so that the steps
// add up on paper.
func (s *Steps) allowances(d *Evaluated) {
	at := d.Net.Plan
	like := func(v units.Volume) string { return s.Printer.VolumeLike(v, d.Loose.Plan) }
	for _, a := range d.In.Allowances() {
		if a.Share == (units.Ratio{}) {
			s.Add("{=0}: none", "+0", a.Source, string(a.Name))
			continue
		}
		how := " / (1 - "
		if a.Code == Spare {
			how = " x (1 + "
		}
		step := s.Printer.Text(a.Name) + ": " + like(at) + how + s.Printer.Share(a.Share) + ")"
		if low, high, uncertain := a.Range(); uncertain {
			step = s.Printer.Print("{0}; it may be {1} to {2}", step, s.Printer.Share(low), s.Printer.Share(high))
		}
		s.Put(step, "+"+like(a.Adds), a.Source)
		at += a.Adds
	}
	s.Add("loose, as it leaves the shovel", s.Printer.Range(d.Loose), catalog.Arithmetic)
}

// split writes how a volume of a blend is divided among its parts. A mix inside the
// blend is divided in turn, after its own blend loss.
func (s *Steps) split(b *catalog.Blend, v units.Range) {
	if len(b.Of) == 1 && b.Of[0].Blend == nil {
		m := s.Scope.Material(b.Of[0].Material)
		s.Material = m.ID
		s.Add("{0}: all of it", s.Printer.Range(v), catalog.Arithmetic, m.Name)
		return
	}
	low, plan := catalog.Split(v.Low, b.Parts), catalog.Split(v.Plan, b.Parts)
	high := catalog.Split(v.High, b.Parts)
	for i, in := range b.Of {
		part := v.Part(low[i], plan[i], high[i], b.Parts[i], b.Whole)
		if in.Blend == nil {
			m := s.Scope.Material(in.Material)
			s.Material = m.ID
			s.part(m.Name, b, i, part)
			continue
		}
		s.Material = ""
		s.part(in.Blend.Mix.Name, b, i, part)
		grown, _ := part.MulDiv(catalog.Without(in.Blend.Loss))
		loss := Allowance{Share: in.Blend.Loss, Common: in.Blend.Common}
		s.Add("its own blend loss, / (1 - share), share {0}", s.Printer.Range(grown), in.Blend.From,
			loss.ShareText(s.Printer))
		s.split(in.Blend, grown)
	}
	s.Material = ""
}

// part writes what part of a mix one ingredient is.
func (s *Steps) part(name string, b *catalog.Blend, i int, part units.Range) {
	s.Add("{0}: {1} of {2} parts of {3}", s.Printer.Range(part), b.Mix.Source,
		name, itoa(b.Parts[i]), itoa(b.Whole), b.Mix.Name)
}

// Note is something worth knowing about a plan that is neither a caution nor a
// problem. Code never changes; the wording of Text may.
type Note struct {
	Task int    // the task's index, or -1 for a note about the whole job
	Path string // the field that it is about, or ""
	Code string
	Text string // in the reader's language
}

// Notes collects the notes of all tasks. A note on a class of containers or on a
// material appears once in a plan, however many tasks use it.
type Notes struct {
	Printer lang.Printer
	Scope   *catalog.Scope
	List    []Note // the notes so far

	task    int // the index of current
	path    string
	current *Evaluated      // the task whose notes are being collected
	said    map[string]bool // notes on containers, by code and class
	settle  []units.Range   // layers that will settle, by the scope's materials
}

// Of adds the notes of the task at index.
func (n *Notes) Of(index int, d *Evaluated) {
	n.task, n.path, n.current = index, "tasks["+strconv.Itoa(index)+"]", d
	d.Result.Notes(n)
}

// say adds a note about a field of the current task.
func (n *Notes) say(field, code string, form message.Text, with ...string) {
	n.List = append(n.List, Note{n.task, n.path + "." + field, code, n.Printer.Print(form, with...)})
}

// first reports whether this is the first time that a code is noted for the class with
// an id, and remembers it.
func (n *Notes) first(id, code string) bool {
	key := code + " " + id
	if n.said[key] {
		return false
	}
	if n.said == nil {
		n.said = map[string]bool{}
	}
	n.said[key] = true
	return true
}

// settling adds the current task's material to the layers of [Notes.Settling].
func (n *Notes) settling() {
	if n.settle == nil {
		n.settle = make([]units.Range, n.Scope.Len())
	}
	n.current.Spread(n.settle) // cannot overflow: all tasks together fit
}

// Settling adds, for each material, how much the layers would take if they are to be
// as deep as planned after they have settled. It comes after all tasks, so that a
// material in several tasks has one note with the sum.
func (n *Notes) Settling() {
	for i, v := range n.settle {
		m := n.Scope.Material(i)
		if v.Plan == 0 || m.SettleHigh == (units.Ratio{}) {
			continue
		}
		low, _ := v.MulDiv(catalog.Without(m.SettleLow))
		high, _ := v.MulDiv(catalog.Without(m.SettleHigh))
		text := n.Printer.Print(
			"{0}: settles by {1} to {2} in a bed, as is common practice, and by more where it is trodden: to be as deep after that, it takes {3}. Give what it settles by to plan for it",
			m.Name, n.Printer.Figure(m.SettleLow.String()), n.Printer.Figure(m.SettleHigh.String()),
			n.Printer.VolumeRange(low.Plan, high.Plan))
		n.List = append(n.List, Note{-1, "", "mulch.settles", text})
	}
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
