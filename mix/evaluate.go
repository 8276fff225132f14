package mix

import (
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// evaluated is a job worked out, before it is laid out as a plan. It holds
// nothing that is the caller's or the catalogue's.
type evaluated struct {
	job   *Job
	scope *catalog.Scope
	terms yard.Terms
	tasks []task.Evaluated
	takes []units.Range  // loose, by the scope's materials
	hand  []units.Volume // what is there, likewise
	needs []yard.Need
	order yard.Order

	copies []*catalog.Material // of the scope's materials, for the plan; nil until asked for
}

// maxSteps bounds the parts of all tasks together.
const maxSteps = 200_000

// evaluate checks the whole job and works it out as far as it is sound. With
// problems the result is not to be used.
func (j *Job) evaluate(r *doc.Reader) *evaluated {
	e := &evaluated{job: j,
		terms: yard.Terms{Offers: j.Offers, Haul: j.Haul, Delivery: j.Delivery, Tax: j.Tax, Aim: j.Aim}}
	if j.Measure > units.Both {
		r.ProblemAt("measure", doc.WordUnknown, message.Of("write {=0}", string(doc.Or(measures))))
	}
	few := j.checkRows(r)
	e.terms.Check(r)
	if !few {
		return e // checking so many against each other would not end soon
	}
	e.scope = catalog.NewScope(r, j.Language, catalog.Own{Materials: j.Materials, Containers: j.Containers, Mixes: j.Mixes})
	e.takes = make([]units.Range, e.scope.Len())
	e.copies = make([]*catalog.Material, e.scope.Len())
	if len(j.Tasks) == 0 {
		r.ProblemAt("tasks", doc.JobEmpty, `a job has tasks, such as [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 in", "material": "bark-mulch"}]`)
	}
	if !e.doTasks(r) {
		return e
	}
	e.hand = yard.Stock(r, e.scope, j.OnHand, j.Offers)
	e.terms.CheckOffers(r, e.scope)
	if r.Sound() {
		e.pool()
		e.checkMass(r)
		e.order = e.terms.Buy(r, e.needs)
	}
	return e
}

// doTasks works every task out and adds up what they take; ok is false when there
// is more of it than can be worked out, and the rest was left.
func (e *evaluated) doTasks(r *doc.Reader) (ok bool) {
	e.tasks = make([]task.Evaluated, len(e.job.Tasks))
	steps := 0
	r.Enter("tasks")
	defer r.Leave()
	for i := range e.job.Tasks {
		r.EnterAt(i)
		d := &e.tasks[i]
		e.job.Tasks[i].Evaluate(r, e.scope, d)
		if b := d.In.Blend; b != nil {
			steps += b.Steps
		}
		if steps > maxSteps {
			r.Problem(doc.JobLarge, message.Of("the tasks before it take all the parts that can be worked out, {0}", strconv.Itoa(maxSteps)))
			r.Leave()
			return false
		}
		if !d.Spread(e.takes) {
			r.Problem(doc.VolumeLarge, "with the tasks before it, more than can be worked out")
		}
		r.Leave()
	}
	return true
}

// pool adds the tasks' materials up, in the order in which the tasks first name
// them.
func (e *evaluated) pool() {
	seen := make([]bool, len(e.takes))
	var walk func(*catalog.Blend)
	walk = func(b *catalog.Blend) {
		for _, in := range b.Of {
			switch {
			case in.Blend != nil:
				walk(in.Blend)
			case !seen[in.Material]:
				seen[in.Material] = true
				e.needs = append(e.needs, yard.NewNeed(e.material(in.Material), in.Material, e.takes[in.Material], e.hand[in.Material]))
			}
		}
	}
	done := map[*catalog.Blend]bool{}
	for i := range e.tasks {
		if b := e.tasks[i].In.Blend; b != nil && !done[b] {
			done[b] = true
			walk(b)
		}
	}
}

// checkMass refuses what weighs more than can be worked out.
func (e *evaluated) checkMass(r *doc.Reader) {
	for i := range e.needs {
		n := &e.needs[i]
		if _, ok := n.Material.Mass(n.Takes.High); !ok {
			r.ProblemAt("tasks", doc.WeightLarge, message.Of("{0} comes to more weight than can be worked out", n.Material.ID))
		}
	}
}

// material is the plan's own copy of one of the scope's materials, which other
// plans share.
func (e *evaluated) material(index int) *catalog.Material {
	if e.copies[index] == nil {
		e.copies[index] = e.scope.Material(index).Clone()
	}
	return e.copies[index]
}
