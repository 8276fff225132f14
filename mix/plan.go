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

// Plan is everything that a command line or a page shows about a job. They only have
// to lay it out: texts are in the job's measure and the reader's language. Volumes are
// in nanolitres, masses in the unit of [units.Mass], money in that of [units.Money].
// The zero Plan is empty, and its methods return nothing.
type Plan struct {
	Name     string
	Measure  units.Measure
	Language *lang.Language // nil is English
	Currency string         // as it is written before an amount, with a space after letters

	Tasks      []TaskPlan     // in the order of the job
	Needs      []yard.Need    // what all tasks take of each material, less what is on hand
	yard.Order                // what to buy, and the trips; empty without offers
	Load       yard.Load      // the whole order
	Bought     yard.Purchases // what was bought already, which is no part of the order
	Haul       yard.Haul      // as the job has it
	Notes      []task.Note    // about tasks first, then about the job
	Cautions   []task.Caution // by their places, each once

	e *evaluated // nil in the zero Plan
}

// TaskPlan is one task of the plan.
type TaskPlan struct {
	Kind, Title string           // the kind's name, and a title in the reader's language
	Filling     string           // the name of what goes in, or "" for nothing
	Net, Loose  units.Range      // in place, and as it leaves the shovel
	Allowances  []task.Allowance // from Net to Loose, in order; nil when nothing goes in
	Parts       []Portion        // of Loose, by the scope's materials; they add up to it
	Facts       []task.Fact      // the figures besides volumes
	Result      task.Result      // what the kind of work has of its own
}

// Portion is the volume of one material.
type Portion struct {
	Material *catalog.Material
	Volume   units.Range // loose
}

// Plan checks the job and works it out. The error is [Problems] with everything that
// is wrong, and then there is no plan. A nil job is the zero Job.
//
// It works on a clone: a plan answers some questions only when asked, such as
// [Plan.Sure] and [Plan.Working], and needs the job as it was planned, whatever the
// caller does with it in the meantime.
func (j *Job) Plan() (*Plan, error) {
	if j == nil {
		j = &Job{}
	}
	return j.Clone().plan(&doc.Reader{})
}

// PlanDocument reads a job document and works it out. It does what [Decode] and
// [Job.Plan] do, but reports the problems of both at once, each with its place in the
// document. changes are made to the job between the two; the flags of a command are
// such changes. The error is [Problems].
func PlanDocument(data []byte, changes ...func(*Job)) (*Plan, error) {
	r := &doc.Reader{}
	j := read(r, data)
	if j == nil {
		return nil, r.Err()
	}
	for _, change := range changes {
		change(j)
	}
	return j.Clone().plan(r) // a change may have put in a value that the caller keeps
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

// plan works out the job. The plan keeps j, so j must not be the caller's.
func (j *Job) plan(r *doc.Reader) (*Plan, error) {
	e := j.atYard(r).evaluate(r)
	p := &Plan{Name: j.Name, Measure: j.Measure, Language: j.Language, Currency: sign(j.Currency),
		Needs: e.needs, Order: e.order, Bought: e.bought, Haul: j.Haul, e: e}
	if r.Sound() {
		p.Load = p.Order.Load(r, &p.Haul)
	}
	if err := r.Err(); err != nil {
		return nil, err
	}
	p.Tasks = make([]TaskPlan, len(e.tasks))
	for i := range e.tasks {
		p.Tasks[i] = e.taskPlan(&e.tasks[i], p.Printer())
	}
	p.Notes = p.notes()
	p.Cautions = p.cautions()
	return p, nil
}

// Printer returns a printer for the plan's measure and language.
func (p *Plan) Printer() lang.Printer {
	return lang.Printer{Measure: p.Measure, Language: p.Language}
}

// sign is a currency as it is written before an amount: "$4" but "EUR 4".
func sign(currency string) string {
	if last, _ := utf8.DecodeLastRuneInString(currency); spell.Letter(last) {
		return currency + " "
	}
	return currency
}

// taskPlan is what the plan shows of one task.
func (e *evaluated) taskPlan(d *task.Evaluated, p lang.Printer) TaskPlan {
	t := TaskPlan{
		Kind: d.Task.Work.Kind().Name, Title: d.Title(p), Filling: d.Filling(),
		Net: d.Net, Loose: d.Loose,
		Allowances: d.In.Allowances(), Facts: d.Result.Facts(p), Result: d.Result,
	}
	takes := make([]units.Range, len(e.takes))
	d.Spread(takes)
	for i, v := range takes {
		if v.High > 0 {
			t.Parts = append(t.Parts, Portion{e.material(i), v})
		}
	}
	return t
}

// TaskText writes a volume of a task. A certain volume is written in the unit of the
// task's loose volume, so that the parts of a task can be compared; an uncertain one
// is written with its range.
func (p *Plan) TaskText(t *TaskPlan, v units.Range) string {
	if v.Certain() {
		return p.Printer().VolumeLike(v.Plan, t.Loose.Plan)
	}
	return p.Printer().Range(v)
}

// Amount writes money with its currency, in the reader's language.
func (p *Plan) Amount(m units.Money) string { return p.Currency + p.Language.Figure(m.String()) }

// Delivery returns the delivery that the job has, or nil where the yard does not
// deliver. It is the plan's own and must not be changed.
func (p *Plan) Delivery() *yard.Delivery {
	if p.e == nil {
		return nil
	}
	return p.e.terms.Delivery
}

// Priced reports whether it is known what there is to pay: at least one line of the
// order has a price, or all is bought already and nothing is left to pay.
func (p *Plan) Priced() bool { return p.Load.Priced || p.Bought.Priced && len(p.Lines) == 0 }

// InAll returns what was paid at the yard already and what is still to pay.
func (p *Plan) InAll() units.Money { return p.Bought.Bill.Total + p.Bill.Total }

// Offered reports whether the job has any offers.
func (p *Plan) Offered() bool { return p.e != nil && len(p.e.terms.Offers) > 0 }

// Ordered reports whether the order has a line of the material, which must be one of
// the plan's own.
func (p *Plan) Ordered(m *catalog.Material) bool {
	for i := range p.Lines {
		if p.Lines[i].Material == m {
			return true
		}
	}
	return false
}

// LeftOut is what the order lacks of one material: all that is to be bought of it, or
// what no stock covers.
type LeftOut struct {
	Material *catalog.Material
	Volume   units.Volume // loose, as planned
}

// LeftOut lists what is to be bought but is not in the order, because nothing is
// offered of it or too little is in stock, or there are no offers. Up to
// [catalog.Slack] of a material does not count.
func (p *Plan) LeftOut() (list []LeftOut) {
	for i := range p.Needs {
		n := &p.Needs[i]
		short := n.Buy.FixedPlan()
		for k := range p.Lines {
			if p.Lines[k].Material == n.Material {
				short = short.Minus(p.Lines[k].Supply())
			}
		}
		if short.Over(units.FixedOf(catalog.Slack)) {
			list = append(list, LeftOut{n.Material, units.Volume(short.Round())})
		}
	}
	return list
}

// StandIns returns sentences in the reader's language that say what can be used in
// place of a material, and what changes then. It is nil where the catalogue knows of
// nothing.
func (p *Plan) StandIns(id string) (sentences []string) {
	if p.e == nil {
		return nil
	}
	for _, s := range p.e.scope.StandIns(id) {
		sentences = append(sentences, p.e.scope.Sentence(&s))
	}
	return sentences
}

// Crossings works out, for every material to buy that is offered both in bags and in
// bulk with prices, what it costs either way, and for which volumes bulk costs less.
// It takes some milliseconds, which is why a plan does not have it from the start.
func (p *Plan) Crossings() []yard.Crossing {
	if p.e == nil {
		return nil
	}
	list := p.e.terms.Crossings(p.e.needs)
	for i := range list {
		list[i].Currency = p.Currency
	}
	return list
}

// Alternatives works out the whole order with each of the other offers in place of what
// is bought of its material, in the order of Others; see [yard.Terms.Alternatives]. It
// is empty where the plan has no cost. It takes some milliseconds.
func (p *Plan) Alternatives() []yard.Alternative {
	if p.e == nil || !p.Load.Priced {
		return nil
	}
	return p.e.terms.Alternatives(p.e.needs, p.Others)
}

// MaxOptions is how many orders the command line and the page list: enough to compare
// without scrolling.
const MaxOptions = 4

// Options lists at most most orders between the one of least cost and the one with
// the least left over, by rising cost. It is empty when there is no order. It takes
// some milliseconds.
func (p *Plan) Options(most int) []yard.Option {
	if p.e == nil {
		return nil
	}
	return p.e.terms.Options(p.e.needs, most)
}
