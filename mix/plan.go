package mix

import (
	"unicode/utf8"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/spell"
)

// Plan is everything that a face shows of a job. Faces only lay it out: every
// figure has its text beside it, in the job's measure. The zero Plan is empty.
type Plan struct {
	Name     string
	Measure  units.Measure
	Language *lang.Language
	Currency string // as it stands before an amount

	Tasks      []TaskPlan
	Needs      []yard.Need
	yard.Order           // what to buy, and the trips
	Load       yard.Load // the whole order
	Haul       yard.Haul // as the job has it
	Notes      []task.Note
	Cautions   []task.Caution

	e *evaluated
}

// TaskPlan is one task of the plan.
type TaskPlan struct {
	Kind, Title string
	Filling     string      // the name of what goes in, "" for nothing
	Net, Loose  units.Range // in place, and as it leaves the shovel
	Allowances  []task.Allowance
	Parts       []Portion // of Loose, by material
	Facts       []task.Fact
	Result      task.Result
}

// Portion is a material's share of a task.
type Portion struct {
	Material *catalog.Material
	Volume   units.Range // loose
}

// Plan checks the job and works it out. The error is [Problems], every one at
// once, and then there is no plan. A nil job has no tasks.
func (j *Job) Plan() (*Plan, error) {
	if j == nil {
		j = &Job{}
	}
	return j.Clone().plan(&doc.Reader{})
}

// PlanDocument reads a job document and works it out: [Decode] and [Job.Plan] in
// one, so that what is wrong with its form and with its meaning comes at once.
// Changes are made to the job between the two, as by flags of a command.
func PlanDocument(data []byte, changes ...func(*Job)) (*Plan, error) {
	r := &doc.Reader{}
	j := read(r, data)
	if j == nil {
		return nil, r.Err()
	}
	for _, change := range changes {
		change(j)
	}
	return j.Clone().plan(r) // a change may have put in what the caller keeps
}

// PlanIn is PlanDocument for a reader of a language; nil is English.
func PlanIn(l *lang.Language, data []byte) (*Plan, error) {
	r := &doc.Reader{}
	j := read(r, data)
	if j == nil {
		return nil, r.Err()
	}
	j.Language = l
	return j.plan(r)
}

// plan works the job out. The plan keeps the job, which must be its own.
func (j *Job) plan(r *doc.Reader) (*Plan, error) {
	e := j.atYard(r).evaluate(r)
	p := &Plan{Name: j.Name, Measure: j.Measure, Language: j.Language, Currency: sign(j.Currency),
		Needs: e.needs, Order: e.order, Haul: j.Haul, e: e}
	if r.Sound() {
		p.Load = p.Order.Load(r, &p.Haul)
	}
	if err := r.Err(); err != nil {
		return nil, err
	}
	p.Tasks = make([]TaskPlan, len(e.tasks))
	for i := range e.tasks {
		p.Tasks[i] = e.lay(&e.tasks[i], p.Printer())
	}
	p.Notes = p.notes(j.Yard)
	p.Cautions = p.cautions()
	return p, nil
}

// Printer is how the plan speaks to its reader.
func (p *Plan) Printer() lang.Printer {
	return lang.Printer{Measure: p.Measure, Language: p.Language}
}

// sign is a currency as it stands before an amount: letters keep their distance.
func sign(currency string) string {
	if last, _ := utf8.DecodeLastRuneInString(currency); spell.Letter(last) {
		return currency + " "
	}
	return currency
}

// lay lays one task out.
func (e *evaluated) lay(d *task.Evaluated, p lang.Printer) TaskPlan {
	t := TaskPlan{Kind: d.Task.Work.Kind().Name, Title: d.Title(p), Filling: d.Filling(), Net: d.Net, Loose: d.Loose,
		Allowances: d.In.Allowances(), Facts: d.Result.Facts(p), Result: d.Result}
	takes := make([]units.Range, len(e.takes))
	d.Spread(takes)
	for i, v := range takes {
		if v.High > 0 {
			t.Parts = append(t.Parts, Portion{e.material(i), v})
		}
	}
	return t
}

// TaskText writes a volume of a task in the unit of what the task takes in
// all, with its range where there is one.
func (p *Plan) TaskText(t *TaskPlan, v units.Range) string {
	if v.Certain() {
		return p.Printer().VolumeLike(v.Plan, t.Loose.Plan)
	}
	return p.Printer().Range(v)
}

// Amount writes money with its currency.
func (p *Plan) Amount(m units.Money) string { return p.Currency + p.Language.Figure(m.String()) }

// Delivery is the yard's own vehicle, as the job has it; nil when it brings
// nothing.
func (p *Plan) Delivery() *yard.Delivery {
	if p.e == nil {
		return nil
	}
	return p.e.terms.Delivery
}

// Offered reports whether the job has offers at all.
func (p *Plan) Offered() bool { return p.e != nil && len(p.e.terms.Offers) > 0 }

// Ordered reports whether the order has a line of the material.
func (p *Plan) Ordered(m *catalog.Material) bool {
	for i := range p.Lines {
		if p.Lines[i].Material == m {
			return true
		}
	}
	return false
}

// LeftOut lists the materials to buy that the order does not have.
func (p *Plan) LeftOut() (list []*catalog.Material) {
	for i := range p.Needs {
		if n := &p.Needs[i]; n.Buy.Plan > catalog.Slack && !p.Ordered(n.Material) {
			list = append(list, n.Material)
		}
	}
	return list
}

// StandIns says, in sentences, what the catalogue knows to stand in for a material
// and what changes then.
func (p *Plan) StandIns(id string) (sentences []string) {
	if p.e == nil {
		return nil
	}
	for _, s := range p.e.scope.StandIns(id) {
		sentences = append(sentences, p.e.scope.Sentence(&s))
	}
	return sentences
}

// Crossings works out bags or bulk for every ordered material that is offered
// in both, with prices. It takes some milliseconds.
func (p *Plan) Crossings() []yard.Crossing {
	if p.e == nil {
		return nil
	}
	return p.e.terms.Crossings(p.e.needs)
}

// MaxOptions is how many orders faces list.
const MaxOptions = 4

// Options lists the orders between the least cost and the least left over, at
// most so many, by rising cost. It is empty when there is no order.
func (p *Plan) Options(most int) []yard.Option {
	if p.e == nil {
		return nil
	}
	return p.e.terms.Options(p.e.needs, most)
}
