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

// evaluated is a job worked out. A [Plan] shows what is in it, and [Job.Reach] asks it
// another question. Its job must be a copy of the caller's, because a plan keeps it
// and goes on asking it, for example for the working.
type evaluated struct {
	job    *Job
	scope  *catalog.Scope
	terms  yard.Terms
	tasks  []task.Evaluated // by the job's tasks
	takes  []units.Range    // what all tasks take, loose, by the scope's materials
	hand   []units.Range    // what is on hand, loose, by the scope's materials
	needs  []yard.Need
	order  yard.Order
	bought yard.Purchases

	copies []*catalog.Material // the plan's own copies of the scope's materials; see material
}

// maxSteps is the most parts that all tasks together may go through. Mixes may contain
// mixes, so without a bound a small document could ask for a very long calculation.
const maxSteps = 50_000

// evaluate checks the whole job and works it out. It goes on after a problem wherever
// it can, so that a report has as many of them as possible; with problems the result
// must not be used.
func (j *Job) evaluate(r *doc.Reader) *evaluated {
	e := &evaluated{job: j,
		terms: yard.Terms{Offers: j.Offers, Haul: j.Haul, Delivery: j.Delivery, Tax: j.Tax, Aim: j.Aim}}
	if j.Measure > units.Both {
		r.ProblemAt("measure", doc.WordUnknown, message.Of("write {=0}", string(doc.Or(measures))))
	}
	few := j.checkRows(r)
	e.terms.Check(r)
	if !few {
		return e // the rows are checked against each other, which would take too long
	}
	own := catalog.Own{Materials: j.Materials, Containers: j.Containers, Mixes: j.Mixes}
	e.scope = catalog.NewScope(r, j.Language, own)
	e.takes = make([]units.Range, e.scope.Len())
	e.copies = make([]*catalog.Material, e.scope.Len())
	if len(j.Tasks) == 0 {
		r.ProblemAt("tasks", doc.JobEmpty,
			`a job has tasks, such as [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 in", "material": "bark-mulch"}]`)
	}
	if !e.evaluateTasks(r) {
		return e
	}
	e.hand = yard.Stock(r, e.scope, j.OnHand, j.Offers)
	e.terms.CheckOffers(r, e.scope)
	if r.Sound() { // the search for an order takes time and needs sound figures
		e.pool()
		e.checkMass(r)
		e.order = e.terms.Buy(r, e.needs)
		e.bought = e.terms.Purchases(r, j.bought, e.materialOf)
	}
	return e
}

// materialOf is the plan's own copy of the material with an id, or nil.
func (e *evaluated) materialOf(id string) *catalog.Material {
	if index, ok := e.scope.Index(id); ok {
		return e.material(index)
	}
	return nil
}

// evaluateTasks works out every task and adds up what they take. ok is false when it
// stopped at maxSteps.
func (e *evaluated) evaluateTasks(r *doc.Reader) (ok bool) {
	e.tasks = make([]task.Evaluated, len(e.job.Tasks))
	steps, lines := 0, 0
	r.Enter("tasks")
	defer r.Leave()
	for i := range e.job.Tasks {
		r.EnterAt(i)
		d := &e.tasks[i]
		if f, ok := e.job.Tasks[i].Work.(*task.Fill); ok && f != nil {
			if lines += len(f.Containers); lines > maxLines {
				r.ProblemAt("containers", doc.JobLarge,
					message.Of("with the tasks before it, more than {0} lines", strconv.Itoa(maxLines)))
				r.Leave()
				return false
			}
		}
		e.job.Tasks[i].Evaluate(r, e.scope, d)
		if b := d.In.Blend; b != nil {
			steps += b.Steps
		}
		if steps > maxSteps {
			r.Problem(doc.JobLarge, message.Of(
				"with the tasks before it, more parts than can be worked out, {0}", strconv.Itoa(maxSteps)))
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

// pool makes one need of each material that the tasks take, in the order in which the
// tasks first name them, so that a plan lists its materials as the job does.
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
				need := yard.NewNeed(e.material(in.Material), in.Material, e.takes[in.Material], e.hand[in.Material])
				e.needs = append(e.needs, need)
			}
		}
	}
	walked := map[*catalog.Blend]bool{} // tasks with the same mix share its blend
	for i := range e.tasks {
		if b := e.tasks[i].In.Blend; b != nil && !walked[b] {
			walked[b] = true
			walk(b)
		}
	}
}

// checkMass reports a material that weighs more than [units.MaxMass], at its most and
// wet.
func (e *evaluated) checkMass(r *doc.Reader) {
	for i := range e.needs {
		n := &e.needs[i]
		if _, ok := n.Material.Mass(n.Takes.High); !ok {
			r.ProblemAt("tasks", doc.WeightLarge,
				message.Of("{0} comes to more weight than can be worked out", n.Material.ID))
		}
	}
}

// material is the plan's own copy of one of the scope's materials, made on first use.
// The scope's row may be the catalogue's, which all plans share, while a caller may
// change what it finds in a plan.
func (e *evaluated) material(index int) *catalog.Material {
	if e.copies[index] == nil {
		e.copies[index] = e.scope.Material(index).Clone()
	}
	return e.copies[index]
}
