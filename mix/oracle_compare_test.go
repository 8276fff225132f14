package mix_test

import (
	"maps"
	"math/big"
	"slices"
	"strconv"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// comparison counts what was compared, so that a run that compares nothing
// cannot pass unseen.
type comparison struct{ jobs, spans, counts, skipped int }

func (c *comparison) job(t *rapid.T, j *modelJob) {
	doc := j.document()
	plan := planned(t, doc)
	c.jobs++
	takes := j.takes()
	if got, want := len(plan.Needs), len(takes); got != want {
		t.Fatalf("%d needs, want %d\n%s", got, want, doc)
	}
	for i := range plan.Needs {
		need := &plan.Needs[i]
		id := need.Material.ID
		want, ok := takes[id]
		if !ok {
			t.Fatalf("%s is needed, want none of it\n%s", id, doc)
		}
		c.span(t, j, doc, id+" takes", need.Takes, want)
		c.span(t, j, doc, id+" to buy", need.Buy, j.buy(id, want))
		c.weight(t, j, doc, need, j.buy(id, want))
		c.choices(t, j, doc, need, j.buy(id, want))
	}
	for i := range j.tasks {
		c.task(t, j, doc, i, &plan.Tasks[i])
	}
	c.order(t, j, doc, plan, takes)
}

func planned(t interface{ Fatalf(string, ...any) }, doc []byte) *mix.Plan {
	plan, err := mix.PlanDocument(doc)
	if err != nil {
		t.Fatalf("%v\n%s", err, doc)
	}
	return plan
}

// tolerance is what rounding may add up to in a sum of so many lines, in
// nanolitres; where a curve came in, floating point adds a relative part.
func tolerance(j *modelJob, want exact) *big.Rat {
	tol := new(big.Rat).Add(big.NewRat((j.lines()+4)*3, 1), j.rounding().rat)
	if want.curved {
		part := new(big.Rat).Mul(nanolitres(want), big.NewRat(1, 1_000_000_000_000))
		tol.Add(tol, part)
	}
	return tol
}

func nanolitres(a exact) *big.Rat { return a.taken(1000).rat }

func (c *comparison) span(t *rapid.T, j *modelJob, doc []byte, what string, got units.Range, want spread) {
	c.spans++
	for _, side := range []struct {
		name string
		got  units.Volume
		want exact
	}{{"plan", got.Plan, want.plan}, {"low", got.Low, want.low}, {"high", got.High, want.high}} {
		off := new(big.Rat).Sub(big.NewRat(int64(side.got), 1), nanolitres(side.want))
		if tol := tolerance(j, side.want); off.Abs(off).Cmp(tol) > 0 {
			t.Fatalf("%s, %s: %d nL, want %s: off by %s, more than %s\n%s", what, side.name, side.got,
				nanolitres(side.want).FloatString(3), off.FloatString(3), tol.FloatString(3), doc)
		}
	}
}

// weight compares the lightest and the heaviest, in micrograms. A material of the
// job's own weighs nothing that is known.
func (c *comparison) weight(t *rapid.T, j *modelJob, doc []byte, need *yard.Need, want spread) {
	id := need.Material.ID
	dry, wet := j.densities(id)
	for i, side := range []struct{ volume, density exact }{{want.low, dry}, {want.high, wet}} {
		c.spans++
		heavy := side.volume.times(side.density)
		off := exactly(int64(need.Mass()[i]), 1).minus(heavy)
		slack := exact{rat: tolerance(j, side.volume)}.over(exactly(1000, 1)).times(side.density).plus(exactly(1, 1))
		if off.rat.Abs(off.rat).Cmp(slack.rat) > 0 {
			t.Fatalf("%s weighs %d ug, want %s\n%s", id, need.Mass()[i], heavy.rat.FloatString(3), doc)
		}
	}
}

// count compares a count of packs. Where a curve came in, rounding may decide it, and
// then it is left out.
func (c *comparison) count(t *rapid.T, j *modelJob, doc []byte, what string, got int64, need, size exact) {
	edge := exactly(0, 1)
	if need.curved {
		edge = exactly(1, 10).atLeast(exact{rat: tolerance(j, need)}.over(exactly(1000, 1))) // 100 nL or more
	}
	if packs(need.minus(edge), size) != packs(need.plus(edge), size) {
		c.skipped++
		return
	}
	c.counts++
	if want := packs(need, size); got != want {
		t.Fatalf("%s: %d packs of %s L for %s L, want %d\n%s", what, got,
			size.over(exactly(1_000_000, 1)).rat.FloatString(9),
			need.over(exactly(1_000_000, 1)).rat.FloatString(9), want, doc)
	}
}

func (c *comparison) choices(t *rapid.T, j *modelJob, doc []byte, need *yard.Need, want spread) {
	for _, choice := range need.Packs(units.Both) {
		if choice.Bale {
			continue // opens to a range; an offer says to what
		}
		size := exactly(int64(choice.Size.Volume), 1000)
		by := need.Material.ID + " by the " + choice.Size.Text
		c.count(t, j, doc, by, choice.Count, want.plan, size)
		c.count(t, j, doc, by+", at least", choice.FewMany[0], want.low, size)
		c.count(t, j, doc, by+", at most", choice.FewMany[1], want.high, size)
	}
}

func (c *comparison) order(t *rapid.T, j *modelJob, doc []byte, plan *mix.Plan, takes map[string]spread) {
	lines := map[string]*yard.Line{}
	for i := range plan.Lines {
		lines[plan.Lines[i].Material.ID] = &plan.Lines[i]
	}
	var cents int64
	for i := range j.offers {
		o := &j.offers[i]
		line := lines[o.material]
		need, needed := takes[o.material]
		if delete(lines, o.material); line == nil {
			if needed {
				c.count(t, j, doc, o.material+" not ordered", 0, j.buy(o.material, need).plan, o.loose())
			}
			continue
		}
		c.line(t, j, doc, o, line, j.buy(o.material, need))
		cents += int64(line.Cost)
	}
	if len(lines) > 0 {
		t.Fatalf("ordered %v, which nobody offers\n%s", slices.Collect(maps.Keys(lines)), doc)
	}
	if int64(plan.Bill.Goods) != cents {
		t.Fatalf("the order costs %s, its lines %d cents\n%s", plan.Bill.Goods, cents, doc)
	}
}

func (c *comparison) line(t *rapid.T, j *modelJob, doc []byte, o *modelOffer, line *yard.Line, need spread) {
	size := o.loose()
	c.count(t, j, doc, o.material+" ordered", line.Count, need.plan, size)
	c.count(t, j, doc, o.material+" at least", line.FewMany[0], need.low, size)
	c.count(t, j, doc, o.material+" at most", line.FewMany[1], need.high, size)
	over := size.taken(line.Count).minus(need.plan).atLeast(exactly(0, 1))
	c.span(t, j, doc, o.material+" over", units.Exactly(line.Left), certain(over))
	if line.Priced != (o.cents != nil) {
		t.Fatalf("%s: priced is %t\n%s", o.material, line.Priced, doc)
	}
	if line.Priced && int64(line.Cost) != line.Count**o.cents {
		t.Fatalf("%s: %d at %d cents cost %s\n%s", o.material, line.Count, *o.cents, line.Cost, doc)
	}
}

func (c *comparison) task(t *rapid.T, j *modelJob, doc []byte, i int, got *mix.TaskPlan) {
	task := &j.tasks[i]
	name := "task " + strconv.Itoa(i)
	if task.filling != "" {
		c.span(t, j, doc, name+" net", got.Net, task.net(j))
		c.span(t, j, doc, name+" loose", got.Loose, task.loose(j))
		parts := map[string]spread{}
		j.split(parts, task.filling, task.loose(j))
		for _, p := range got.Parts {
			c.span(t, j, doc, name+" "+p.Material.ID, p.Volume, parts[p.Material.ID])
		}
	}
	facts := map[string]string{}
	for _, f := range got.Facts {
		facts[f.Label] = f.Figure
	}
	switch task.kind {
	case "amend":
		c.share(t, doc, name, facts["Share of the finished bed"], task.bedShare())
	case "backfill":
		c.fact(t, j, doc, name, facts, "Soil left over, loose", task.leftOver(j))
		c.fact(t, j, doc, name, facts, "Soil dug, in place", certain(task.dug()))
		c.fact(t, j, doc, name, facts, "Soil put back, in place", task.back(j).times(task.materialShare().rest()))
	}
}

// share compares a percentage, which the plan writes to a tenth.
func (c *comparison) share(t *rapid.T, doc []byte, name, got string, want exact) {
	c.spans++
	off := percent(got).minus(want)
	if off.rat.Abs(off.rat).Cmp(big.NewRat(5001, 10_000_000)) > 0 {
		t.Fatalf("%s: share of the finished bed is %s, want %v\n%s", name, got, want.float(), doc)
	}
}

// fact compares a volume that the plan gives as text only. Where the text would
// round the one way or the other within the tolerance, both will do: pi goes out
// of the soil left over, so that ties do come up.
func (c *comparison) fact(t *rapid.T, j *modelJob, doc []byte, name string, facts map[string]string, label string,

	want spread) {
	c.spans++
	off := exact{rat: tolerance(j, want.high)}.over(exactly(1000, 1))
	var texts []string
	for _, low := range around(want.low, off) {
		for _, plan := range around(want.plan, off) {
			for _, high := range around(want.high, off) {
				texts = append(texts, lang.Printer{}.Range(units.Range{Low: low, Plan: plan, High: high}))
			}
		}
	}
	if !slices.Contains(texts, facts[label]) {
		t.Fatalf("%s: %s is %q, want %q\n%s", name, label, facts[label], slices.Compact(texts), doc)
	}
}

func around(a, off exact) (v [3]units.Volume) {
	for i, a := range []exact{a, a.minus(off), a.plus(off)} {
		v[i] = units.Volume(a.atLeast(exactly(0, 1)).whole(nanolitre).taken(1000).rat.Num().Int64())
	}
	return v
}
