package task

import (
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Fact is one more thing that a task works out, as label and figure. Code is
// stable: "area", "layer", "finished".
type Fact struct{ Code, Label, Figure string }

// facts collects the facts of a task.
type facts struct {
	p    lang.Printer
	list []Fact
}

func (f *facts) add(code string, label message.Text, figure string) {
	f.list = append(f.list, Fact{code, f.p.Text(label), figure})
}

// Step is one step behind a figure of the plan.
type Step struct {
	Task     int    // the task's index, or -1 for what is pooled over tasks
	Material string // the material's id, or ""
	Step     string // what is done, with its figures
	Figure   string // what it comes to
	Source   string // where the figures come from
}

// Steps writes the working, one step after the other, until somebody has read
// enough.
type Steps struct {
	Printer  lang.Printer
	Scope    *catalog.Scope
	Task     int    // of the steps that follow
	Material string // of the steps that follow
	Yield    func(Step) bool

	done bool
}

// Add writes a step by its form.
func (s *Steps) Add(form message.Text, figure string, source catalog.Source, with ...string) {
	if !s.done {
		s.Put(s.Printer.Print(form, with...), figure, source)
	}
}

// Put writes a step that is in words already.
func (s *Steps) Put(step, figure string, source catalog.Source) {
	if !s.done {
		s.done = !s.Yield(Step{s.Task, s.Material, step, figure, source.In(s.Printer.Language)})
	}
}

// allowances writes the way from net to loose; a share of nothing is written
// too, so that nobody wonders.
func (s *Steps) allowances(d *Done) {
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
		s.Put(s.Printer.Text(a.Name)+": "+like(at)+how+s.Printer.Share(a.Share)+")", "+"+like(a.Adds), a.Source)
		at += a.Adds
	}
	s.Add("loose, as it leaves the shovel", s.Printer.Range(d.Loose), catalog.Arithmetic)
}

// split writes the parts of what goes in.
func (s *Steps) split(b *catalog.Blend, v units.Range) {
	if len(b.Of) == 1 && b.Of[0].Blend == nil {
		m := s.Scope.Material(b.Of[0].Material)
		s.Material = m.ID
		s.Add("{0}: all of it", s.Printer.Range(v), catalog.Arithmetic, m.Name)
		return
	}
	low, plan, high := catalog.Split(v.Low, b.Parts), catalog.Split(v.Plan, b.Parts), catalog.Split(v.High, b.Parts)
	for i, in := range b.Of {
		part := units.Range{Low: low[i], Plan: plan[i], High: high[i]}
		if in.Blend == nil {
			m := s.Scope.Material(in.Material)
			s.Material = m.ID
			s.part(m.Name, b, i, part)
			continue
		}
		s.Material = ""
		s.part(in.Blend.Mix.Name, b, i, part)
		grown, _ := part.MulDiv(catalog.Without(in.Blend.Loss))
		s.Add("its own blend loss, / (1 - {0})", s.Printer.Range(grown), in.Blend.From, s.Printer.Share(in.Blend.Loss))
		s.split(in.Blend, grown)
	}
	s.Material = ""
}

// part writes what one ingredient is of a mix.
func (s *Steps) part(name string, b *catalog.Blend, i int, part units.Range) {
	s.Add("{0}: {1} of {2} parts of {3}", s.Printer.Range(part), b.Mix.Source, name, itoa(b.Parts[i]), itoa(b.Whole), b.Mix.Name)
}

// Note is something worth knowing that is no caution and no problem.
type Note struct {
	Task int    // the task's index, or -1
	Path string // the field it is about, or ""
	Code string
	Text string
}

// Notes collects what the tasks have to note. What is worth saying once in a
// plan, of a container or of a mulch, it says once.
type Notes struct {
	Printer lang.Printer
	Scope   *catalog.Scope
	List    []Note

	task   int
	path   string
	done   *Done
	told   map[string]bool // what is said once, by code and container
	settle []units.Range   // of layers that settle, by material
}

// Of collects the notes of one task.
func (n *Notes) Of(index int, d *Done) {
	n.task, n.path, n.done = index, "tasks["+strconv.Itoa(index)+"]", d
	d.Result.Notes(n)
}

// say writes a note about a field of the task by its form.
func (n *Notes) say(field, code string, form message.Text, with ...string) {
	n.List = append(n.List, Note{n.task, n.path + "." + field, code, n.Printer.Print(form, with...)})
}

// first reports whether the note of a container is to be said: the first time.
func (n *Notes) first(k *catalog.Class, code string) bool {
	key := code + " " + k.ID
	if n.told[key] {
		return false
	}
	if n.told == nil {
		n.told = map[string]bool{}
	}
	n.told[key] = true
	return true
}

// settling counts the task's material in as a layer whose depth is as it is
// spread; see [Notes.Settling].
func (n *Notes) settling() {
	if n.settle == nil {
		n.settle = make([]units.Range, n.Scope.Len())
	}
	n.done.Spread(n.settle) // fits: it is a part of all that is taken
}

// Settling says what layers come to if they are to be that deep after they have
// settled, all tasks of a material together.
func (n *Notes) Settling() {
	for i, v := range n.settle {
		m := n.Scope.Material(i)
		if v.Plan == 0 || m.SettleHigh == (units.Ratio{}) {
			continue
		}
		low, _ := v.MulDiv(catalog.Without(m.SettleLow))
		high, _ := v.MulDiv(catalog.Without(m.SettleHigh))
		n.List = append(n.List, Note{-1, "", "mulch.settles", n.Printer.Print(
			"{0}: settles by {1} to {2}: to be as deep after that, it takes {3}. Give what it settles by to plan for it",
			m.Name, n.Printer.Figure(m.SettleLow.String()), n.Printer.Figure(m.SettleHigh.String()), n.Printer.VolumeRange(low.Plan, high.Plan))})
	}
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
