package mix_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestOracle draws whole jobs and holds every figure of the plan against the
// model in fractions.
func TestOracle(t *testing.T) {
	var c comparison
	rapid.Check(t, func(t *rapid.T) { c.job(t, drawJob(t)) })
	t.Logf("%d jobs: %d spans and %d counts compared, %d counts on the edge skipped", c.jobs, c.spans,
		c.counts, c.skipped)
	if !t.Failed() && (c.jobs == 0 || c.spans == 0 || c.counts == 0) {
		t.Error("nothing was compared")
	}
}

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

// count compares a count of packs, unless rounding may decide it.
func (c *comparison) count(t *rapid.T, j *modelJob, doc []byte, what string, got int64, need, size exact) {
	edge := exactly(1, 10).atLeast(exact{rat: tolerance(j, need)}.over(exactly(1000, 1))) // 100 nL or more
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

// loose is what one pack gives.
func (o *modelOffer) loose() exact {
	if o.opens != nil {
		return o.opens.value
	}
	return o.size.value
}

// TestPoolingIsOrderFree: tasks, and lines within a task, may come in any order.
func TestPoolingIsOrderFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		before := planned(t, j.document())
		j.tasks = rapid.Permutation(j.tasks).Draw(t, "tasks in another order")
		for i := range j.tasks {
			j.tasks[i].lines = rapid.Permutation(j.tasks[i].lines).Draw(t, "lines in another order")
		}
		after := planned(t, j.document())
		if a, b := spans(before), spans(after); !maps.Equal(a, b) {
			t.Fatalf("needs are %v, in another order %v\n%s", a, b, j.document())
		}
		if before.Bill != after.Bill {
			t.Fatalf("the order costs %s, in another order %s\n%s", before.Bill.Total, after.Bill.Total, j.document())
		}
	})
}

type takenAndBought struct{ takes, buy units.Range }

func spans(p *mix.Plan) map[string]takenAndBought {
	m := map[string]takenAndBought{}
	for i := range p.Needs {
		m[p.Needs[i].Material.ID] = takenAndBought{p.Needs[i].Takes, p.Needs[i].Buy}
	}
	return m
}

// TestScaling: twice the counts take twice as much; more work or a larger
// allowance never takes less.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		before := spans(planned(t, j.document()))
		takes := j.takes()

		more := *j
		more.tasks = append(slices.Clone(j.tasks), drawTask(t, j))
		neverLess(t, before, &more)
		raised := *j
		raised.tasks = slices.Clone(j.tasks)
		raise(t, &raised)
		neverLess(t, before, &raised)

		for i := range j.tasks {
			j.tasks[i].double()
		}
		for id, after := range spans(planned(t, j.document())) {
			off := big.NewRat(int64(after.takes.Plan-2*before[id].takes.Plan), 1)
			tol := new(big.Rat).Mul(tolerance(j, takes[id].plan), big.NewRat(3, 1)) // twice once, and once
			if off.Abs(off).Cmp(tol) > 0 {
				t.Fatalf("%s: %d nL, with twice the counts %d\n%s", id, before[id].takes.Plan, after.takes.Plan,
					j.document())
			}
		}
	})
}

func neverLess(t *rapid.T, before map[string]takenAndBought, j *modelJob) {
	after := spans(planned(t, j.document()))
	for id, b := range before {
		a := after[id]
		if a.takes.Low < b.takes.Low || a.takes.Plan < b.takes.Plan || a.takes.High < b.takes.High ||
			a.buy.Plan < b.buy.Plan {
			t.Fatalf("%s fell from %v to %v\n%s", id, b, a, j.document())
		}
	}
}

// raise makes one allowance of one task larger than it is.
func raise(t *rapid.T, j *modelJob) {
	task := &j.tasks[rapid.IntRange(0, len(j.tasks)-1).Draw(t, "task to raise")]
	if task.filling == "" {
		return // soil alone has no allowances
	}
	more := drawShare(t, "raise", 1, 30).value
	switch rapid.IntRange(0, 2).Draw(t, "allowance to raise") {
	case 0:
		task.settle = shareOf(task.settles(j).plus(more))
	case 1:
		task.blend = shareOf(task.losses(j).plus(more))
	default:
		task.spare = shareOf(task.spares().plus(more))
	}
}

func shareOf(a exact) *typed { return &typed{a.rat.String(), a} }

// double takes every count of the task twice.
func (t *modelTask) double() {
	t.lines = slices.Clone(t.lines)
	for i := range t.lines {
		t.lines[i].count *= 2
	}
	t.holes *= 2
	t.stems *= 2
	t.ground.double()
}

func (g *modelGround) double() {
	g.count *= 2
	for i := range g.plus {
		g.plus[i].double()
	}
	for i := range g.less {
		g.less[i].double()
	}
}

// TestZeroAllowances: without allowances, what is shovelled is what stands in
// place, to the nanolitre, and so is the sum of its parts.
func TestZeroAllowances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		none := &typed{"0%", exactly(0, 1)}
		for i := range j.mixes {
			j.mixes[i].blend = none
		}
		for i := range j.tasks {
			if task := &j.tasks[i]; task.filling != "" {
				task.settle, task.blend, task.spare = none, none, none
			}
		}
		plan := planned(t, j.document())
		for i := range plan.Tasks {
			task := &plan.Tasks[i]
			if j.tasks[i].filling == "" {
				continue
			}
			if task.Loose != task.Net {
				t.Fatalf("task %d: loose %v, in place %v\n%s", i, task.Loose, task.Net, j.document())
			}
			if sum := partsOf(task); sum != task.Loose.Plan && !j.nestsCatalogue(j.tasks[i].filling) {
				t.Fatalf("task %d: parts add up to %d nL of %d\n%s", i, sum, task.Loose.Plan, j.document())
			}
		}
	})
}

func partsOf(task *mix.TaskPlan) (sum units.Volume) {
	for _, p := range task.Parts {
		sum += p.Volume.Plan
	}
	return sum
}

// nestsCatalogue reports whether a mix of the catalogue, whose blend loss the
// job cannot set, is a part.
func (j *modelJob) nestsCatalogue(id string) bool {
	m, _ := j.mix(id)
	return slices.ContainsFunc(m.parts, func(p modelPart) bool {
		inner, ok := j.mix(p.of)
		return ok && inner.blend == nil || j.nestsCatalogue(p.of)
	})
}

// TestBagsExact: never one bag over, never one short.
func TestBagsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := units.Volume(rapid.Int64Range(int64(catalog.Slack)+1, int64(units.CubicMetre)).Draw(t, "size"))
		need := units.Volume(rapid.Int64Range(0, int64(100*units.CubicMetre)).Draw(t, "need"))
		if k := rapid.Int64Range(0, 1000).Draw(t, "bags to the brim"); k > 0 {
			near := rapid.Int64Range(-2, 2).Draw(t, "beside the slack")
			need = units.Volume(k)*size + catalog.Slack*units.Volume(rapid.IntRange(0, 1).Draw(t, "with slack")) +
				units.Volume(near)
		}
		want := packs(exactly(int64(need), 1000), exactly(int64(size), 1000))
		if got := yard.Bags(need, size); got != want {
			t.Fatalf("Bags(%d, %d) = %d, want %d", need, size, got, want)
		}
	})
}

// TestBagsOfEqualBeds: beds that together fill exactly so many bags buy so many,
// though no bed is a whole count of nanolitres.
func TestBagsOfEqualBeds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := typedVolume(t, "bag", 1_000_000, 500_000_000)
		bags := rapid.Int64Range(1, 500).Draw(t, "bags")
		beds := rapid.Int64Range(1, 1000).Draw(t, "beds")
		bed := size.value.taken(bags).over(exactly(beds, 1)).whole(nanolitre)
		need := units.Volume(bed.taken(1000).taken(beds).rat.Num().Int64())
		if got := yard.Bags(need, units.Volume(size.value.taken(1000).rat.Num().Int64())); got != bags {
			t.Fatalf("%d beds that fill %d bags of %s take %d", beds, bags, size.text, got)
		}
	})
}

// TestTenBeds is the trap by its name: 10 x 0.7 cu yd are 189 cu ft and the
// little that ten roundings add.
func TestTenBeds(t *testing.T) {
	bed := typed{"0.7 cu yd", decimal("535188400.5888").whole(nanolitre)}
	zero := &typed{"0%", exactly(0, 1)}
	j := &modelJob{
		tasks:  []modelTask{{kind: "fill", filling: "topsoil", settle: zero}},
		offers: []modelOffer{{material: "topsoil", size: &typed{"1 cu ft", decimal("28316846.592")}}},
	}
	for range 10 {
		j.tasks[0].lines = append(j.tasks[0].lines, modelLine{count: 1, form: "holds", sides: []typed{bed}})
	}
	plan := planned(t, j.document())
	if got := plan.Lines[0].Count; got != 189 {
		t.Errorf("ten beds of 0.7 cu yd take %d bags of 1 cu ft, want 189", got)
	}
	if plan.Needs[0].Buy.Plan == 189*units.CubicFoot {
		t.Error("ten beds come to 189 cu ft exactly: the trap is not set")
	}
}

// TestShareOfAnAcre: a third of ten inches over an acre is 12,100 cu ft. The layer
// has no whole count of nanometres, and half of one over an acre is 2 mL.
func TestShareOfAnAcre(t *testing.T) {
	j := &modelJob{
		tasks: []modelTask{{kind: "amend", filling: "compost", share: &typed{"1/3", exactly(1, 3)}, into: &typed{"10 in", exactly(254, 1)},
			ground: modelGround{shape: "area", count: 1, sides: []typed{{"1 acre", decimal("4046856422.4")}}}}},
		offers: []modelOffer{{material: "compost", size: &typed{"1 cu ft", decimal("28316846.592")}}},
	}
	plan := planned(t, j.document())
	got, want := plan.Lines[0].Count, int64(12_100)
	if got != want || packs(j.takes()["compost"].plan, j.offers[0].size.value) != want {
		t.Errorf("a third of ten inches over an acre takes %d bags of 1 cu ft, want %d", got, want)
	}
}

// TestSplitSums: shares add up to the whole, each within a nanolitre of its exact
// share, and equal parts come out equal but for one.
func TestSplitSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, int64(units.MaxVolume)).Draw(t, "whole")
		parts := rapid.SliceOfN(rapid.Int64Range(0, 1000), 1, 9).Draw(t, "parts")
		var sum int64
		for _, p := range parts {
			sum += p
		}
		if sum == 0 {
			t.Skip("nothing to share by")
		}
		if rapid.Bool().Draw(t, "comes out even") {
			whole = whole / 10_000 * sum
		}
		got := catalog.Split(units.Volume(whole), parts)
		checkSplit(t, whole, sum, parts, got)
	})
}

func checkSplit(t *rapid.T, whole, sum int64, parts []int64, got []units.Volume) {
	left := whole
	first := map[int64]units.Volume{}
	for i, p := range parts {
		left -= int64(got[i])
		want := exactly(whole, 1).taken(p).over(exactly(sum, 1))
		off := exactly(int64(got[i]), 1).minus(want).rat
		if off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 || want.rat.IsInt() && off.Sign() != 0 {
			t.Fatalf("Split(%d, %v)[%d] = %d, want %s", whole, parts, i, got[i], want.rat.FloatString(3))
		}
		if f, ok := first[p]; !ok {
			first[p] = got[i]
		} else if f < got[i] || f > got[i]+1 {
			t.Fatalf("Split(%d, %v)[%d] = %d, an equal part before it %d", whole, parts, i, got[i], f)
		}
	}
	if left != 0 {
		t.Fatalf("Split(%d, %v) = %v, which is %d short", whole, parts, got, left)
	}
}

// TestOraclePredictsProblems adds one impossible task to a job that is sound:
// it is reported, at its path, and nothing else is.
func TestOraclePredictsProblems(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		fault := rapid.SampledFrom(faults).Draw(t, "fault")
		j.tasks = append(j.tasks, fault.task())
		path := fmt.Sprintf("tasks[%d].%s", len(j.tasks)-1, fault.path)
		plan, err := mix.PlanDocument(j.document())
		if plan != nil || err == nil {
			t.Fatalf("%s: no problem reported\n%s", fault.what, j.document())
		}
		for _, p := range doc.ProblemsIn(err) {
			if !strings.HasPrefix(p.Path, path) {
				t.Fatalf("%s: problem %v, want it at %s\n%s", fault.what, p, path, j.document())
			}
		}
	})
}

// A fault is a task that cannot be done, and where that is to be said.
type fault struct {
	what, path string
	task       func() modelTask
}

func mm(n ...int64) (sides []typed) {
	for _, n := range n {
		sides = append(sides, typed{strconv.FormatInt(n, 10) + " mm", exactly(n, 1)})
	}
	return sides
}

func litre(n int64) *typed {
	return &typed{strconv.FormatInt(n, 10) + " L", exactly(n*1_000_000, 1)}
}

func potFault(what, path string, line modelLine) fault {
	return fault{what, "containers[0]" + path, func() modelTask {
		line.count = 1
		return modelTask{kind: "fill", filling: "peat", lines: []modelLine{line}}
	}}
}

func groundFault(what, path string, g modelGround) fault {
	return fault{what, path, func() modelTask {
		g.count = 1
		return modelTask{kind: "cover", filling: "bark-mulch", ground: g, layer: &mm(50)[0]}
	}}
}

func holeFault(what, path string, above int64, ball modelBall) fault {
	return fault{what, path, func() modelTask {
		return modelTask{kind: "backfill", holes: 2, width: mm(300)[0], depth: mm(200)[0], ball: ball,
			above: &mm(above)[0]}
	}}
}

var faults = []fault{
	potFault("a ball larger than its pot", ".ball", modelLine{form: "holds", sides: []typed{*litre(2)}, ball: &modelBall{volume: litre(3)}}),
	potFault("a class larger than its pot", ".ball", modelLine{form: "size", class: "#1", ball: &modelBall{class: "#3"}}),
	potFault("a ball wider than its pot", ".ball", modelLine{form: "straight", sides: mm(200, 300), ball: &modelBall{across: mm(250)[0], height: mm(20)[0]}}),
	potFault("a ball taller than the mix", ".ball", modelLine{form: "box", sides: mm(300, 300, 200), belowRim: &mm(50)[0], ball: &modelBall{across: mm(50)[0], height: mm(180)[0]}}),
	potFault("no room under the rim", ".below_rim", modelLine{form: "taper", sides: mm(300, 250, 200), belowRim: &mm(200)[0]}),
	potFault("a class that is not known", ".size", modelLine{form: "size", class: "#4711"}),
	groundFault("a ring turned inside out", "area", modelGround{shape: "ring", asObject: true, sides: mm(1000, 1200)}),
	groundFault("sides that do not meet", "area", modelGround{shape: "triangle", asObject: true, sides: mm(1000, 1200, 2500)}),
	groundFault("more left out than there is", "area", modelGround{shape: "rectangle", sides: mm(1000, 1000),
		less: []modelGround{{shape: "rectangle", count: 2, sides: mm(900, 900)}}}),
	groundFault("gaps longer than the runs", "area", modelGround{shape: "strip", sides: mm(1000, 1000), gaps: mm(1500, 1500), width: mm(300)[0]}),
	groundFault("an outline that crosses itself", "area", modelGround{shape: "corners", points: [][2]typed{
		[2]typed(mm(0, 0)), [2]typed(mm(1000, 1000)), [2]typed(mm(1000, 0)), [2]typed(mm(0, 900))}}),
	holeFault("a ball larger than its hole", "ball", 10, modelBall{volume: litre(30)}),
	holeFault("a ball wider than its hole", "ball", 10, modelBall{across: mm(320)[0], height: mm(100)[0]}),
	holeFault("a ball that stands on the ground", "ball", 100, modelBall{across: mm(200)[0], height: mm(100)[0]}),
	{"stems on all the ground", "stems", func() modelTask {
		g := modelGround{shape: "rectangle", count: 1, sides: mm(1000, 1000)}
		return modelTask{kind: "cover", filling: "bark-mulch", ground: g, layer: &mm(50)[0], stems: 9,
			clear: mm(300)[0]}
	}},
	{"a material that is not known", "material", func() modelTask {
		return modelTask{kind: "fill", filling: "moon-dust",
			lines: []modelLine{{count: 1, form: "holds", sides: []typed{*litre(2)}}}}
	}},
	{"all of it lost", "settle", func() modelTask {
		return modelTask{kind: "fill", filling: "peat", settle: &typed{"100%", exactly(1, 1)},
			lines: []modelLine{{count: 1, form: "holds", sides: []typed{*litre(2)}}}}
	}},
}

// A scale writes n of size as text.
type scale struct {
	size  exact
	write func(n int64, style int) string
}

func mixed(size string, den int64, unit string) scale {
	return scale{decimal(size).over(exactly(den, 1)), func(n int64, style int) string {
		return fraction(n, den, style) + " " + unit
	}}
}

func places(size string, digits int, unit string) scale {
	den := int64(math.Pow10(digits))
	return scale{decimal(size).over(exactly(den, 1)), func(n int64, _ int) string {
		return big.NewRat(n, den).FloatString(digits) + " " + unit
	}}
}

// fraction writes n/den as people do: 3 1/2, 3-1/2, 3½, 1/2.
func fraction(n, den int64, style int) string {
	r := big.NewRat(n%den, den)
	if r.Sign() == 0 {
		return strconv.FormatInt(n/den, 10)
	}
	text, joint := r.String(), []string{" ", "-", " "}[style]
	glyphs := map[string]string{"1/2": "½", "1/4": "¼", "3/4": "¾", "1/3": "⅓", "2/3": "⅔", "3/8": "⅜"}
	if glyph := glyphs[text]; glyph != "" && style == 2 {
		text, joint = glyph, ""
	}
	if n < den {
		return text
	}
	return strconv.FormatInt(n/den, 10) + joint + text
}

var (
	lengths = []scale{
		mixed("25.4", 16, "in"), mixed("25.4", 3, "in"), places("25.4", 2, "in"), places("304.8", 2, "ft"), mixed("304.8", 4, "ft"),
		places("1", 0, "mm"), places("10", 2, "cm"), places("1000", 3, "m"), mixed("914.4", 4, "yd"), {decimal("12.7"), feetAndInches},
	}
	areas = []scale{
		places("92903.04", 1, "sq ft"), places("1000000", 2, "sq m"), mixed("836127.36", 3, "sq yd"), places("645.16", 0, "sq in"),
	}
	volumes = []scale{
		places("28316846.592", 2, "cu ft"), mixed("28316846.592", 4, "cu ft"), places("1000000", 1, "L"), places("1000", 0, "mL"),
		mixed("3785411.784", 8, "gal"), places("16387.064", 2, "cu in"), mixed("764554857.984", 3, "cu yd"), places("764554857.984", 2, "yd3"),
		mixed("1101220.9427150", 2, "dry qt"), mixed("35239070.16688", 4, "bu"), places("4546090", 1, "imp gal"), places("1000000000", 3, "m3"),
	}
)

func feetAndInches(halves int64, style int) string {
	feet, rest := halves/24, halves%24
	if feet == 0 || rest == 0 {
		return fraction(halves, 2, style) + " in"
	}
	return strconv.FormatInt(feet, 10) + " ft " + fraction(rest, 2, style) + " in"
}

// typedOn draws a quantity from low to high on one of the scales that have one.
func typedOn(t *rapid.T, label string, scales []scale, step exact, low, high float64) typed {
	var fit []scale
	for _, s := range scales {
		if math.Ceil(low/s.size.float()) <= math.Floor(high/s.size.float()) {
			fit = append(fit, s)
		}
	}
	if len(fit) == 0 {
		t.Fatalf("no %s from %v to %v", label, low, high)
	}
	s := fit[rapid.IntRange(0, len(fit)-1).Draw(t, label+" unit")]
	n := rapid.Int64Range(int64(math.Ceil(low/s.size.float())), int64(math.Floor(high/s.size.float()))).Draw(t, label)
	return typed{s.write(n, rapid.IntRange(0, 2).Draw(t, label+" style")), s.size.taken(n).whole(step)}
}

func typedLength(t *rapid.T, label string, low, high float64) typed {
	return typedOn(t, label, lengths, nanometre, low, high)
}

func typedVolume(t *rapid.T, label string, low, high float64) typed {
	return typedOn(t, label, volumes, nanolitre, low, high)
}

func drawShare(t *rapid.T, label string, low, high int64) typed {
	tenths := rapid.Int64Range(low*10, high*10).Draw(t, label)
	value := exactly(tenths, 1000)
	switch rapid.IntRange(0, 3).Draw(t, label+" style") {
	case 0:
		if !value.rat.IsInt() { // a bare whole number is refused: 1 might mean 1%
			return typed{value.rat.FloatString(3), value}
		}
	case 1:
		if tenths%10 == 0 {
			return typed{strconv.FormatInt(tenths/10, 10) + " percent", value}
		}
	case 2:
		if !value.rat.IsInt() {
			return typed{value.rat.String(), value}
		}
	}
	return typed{value.taken(100).rat.FloatString(1) + "%", value}
}

// maybeShare leaves the share out as often as not, and makes it zero often.
func maybeShare(t *rapid.T, label string, high int64) *typed {
	switch rapid.IntRange(0, 3).Draw(t, label+" given") {
	case 0, 1:
		return nil
	case 2:
		return &typed{"0%", exactly(0, 1)}
	}
	s := drawShare(t, label, 0, high)
	return &s
}

func often(t *rapid.T, label string) bool { return rapid.Bool().Draw(t, label) }

func drawJob(t *rapid.T) *modelJob {
	j := &modelJob{onHand: map[string]typed{}}
	for _, id := range []string{"leaf-mould", "perlite", "grit"}[:rapid.IntRange(0, 3).Draw(t, "own materials")] {
		j.materials = append(j.materials, modelMaterial{id, maybeShare(t, id+" settle", 50)})
	}
	for _, id := range []string{"tub", "#2"}[:rapid.IntRange(0, 2).Draw(t, "own pots")] {
		j.pots = append(j.pots, drawPot(t, id))
	}
	for _, id := range []string{"seed", "rooting", "house", "rich"}[:rapid.IntRange(0, 4).Draw(t, "own mixes")] {
		j.mixes = append(j.mixes, drawMix(t, j, id))
	}
	for range rapid.IntRange(1, 6).Draw(t, "tasks") {
		j.tasks = append(j.tasks, drawTask(t, j))
	}
	for _, id := range slices.Sorted(maps.Keys(j.takes())) {
		if often(t, id+" on hand") {
			j.onHand[id] = typedVolume(t, id+" there", 1_000_000, 400_000_000)
		}
		if often(t, id+" offered") {
			j.offers = append(j.offers, drawOffer(t, id))
		}
	}
	for i := range j.offers {
		j.fits(t, &j.offers[i])
		j.price(t, &j.offers[i])
	}
	return j
}

// price gives the pack one, unless so many of them would cost more than a job
// may: nobody buys a hundred thousand bags.
func (j *modelJob) price(t *rapid.T, o *modelOffer) {
	need := j.buy(o.material, j.takes()[o.material]).plan
	if often(t, o.material+" priced") && packs(need, o.loose()) < 100_000 {
		cents := rapid.Int64Range(0, 10_000).Draw(t, o.material+" price")
		o.cents = &cents
	}
}

// fits now and then makes a pack that the need fills to the brim so many times,
// but for the rounding: the count on which floating point goes wrong.
func (j *modelJob) fits(t *rapid.T, o *modelOffer) {
	need := j.buy(o.material, j.takes()[o.material]).plan
	bags := rapid.Int64Range(2, 200).Draw(t, o.material+" bags to the brim")
	size := need.over(exactly(bags, 1)).whole(nanolitre)
	if o.opens != nil || size.less(exactly(2000, 1)) || !often(t, o.material+" fits") {
		return
	}
	o.size = &typed{size.over(exactly(1_000_000, 1)).rat.FloatString(9) + " L", size}
}

func drawPot(t *rapid.T, id string) modelPot {
	holds := typedVolume(t, id+" holds", 1_000_000, 30_000_000)
	p := modelPot{id: id, cells: rapid.Int64Range(0, 3).Draw(t, id+" cells"), holds: &holds}
	if often(t, id+" range") {
		low := typedVolume(t, id+" low", holds.value.float()*0.5, holds.value.float())
		high := typedVolume(t, id+" high", holds.value.float(), holds.value.float()*1.5)
		p.low, p.high = &low, &high
	}
	return p
}

// materialIDs are those that a task may name: the catalogue's and the job's own.
func (j *modelJob) materialIDs() []string {
	ids := []string{"bark-chunks", "bark-fines", "bark-mulch", "coir", "compost", "peat", "perlite", "sand", "topsoil",
		"vermiculite", "wood-chips"}
	for _, m := range j.materials {
		if !slices.Contains(ids, m.id) {
			ids = append(ids, m.id)
		}
	}
	return ids
}

func (j *modelJob) mixIDs() []string {
	ids := []string{"bark-peat", "peat-lite", "potting"} // "rooting" may become the job's own
	for _, m := range j.mixes {
		ids = append(ids, m.id)
	}
	return ids
}

// drawMix makes a mix of materials and of mixes that came before it.
func drawMix(t *rapid.T, j *modelJob, id string) modelMix {
	m := modelMix{id: id, blend: maybeShare(t, id+" blend loss", 30), settle: maybeShare(t, id+" settle", 40)}
	from := slices.Concat(j.materialIDs(), j.mixIDs())
	amounts := []scale{mixed("1", 1, ""), mixed("1", 4, ""), places("1", 1, "")}
	for _, i := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(from)-1), 1, 5, rapid.ID[int]).Draw(t, id+" parts") {
		amount := typedOn(t, id+" amount", amounts, exactly(1, 1000), 0.2, 20)
		amount.text = strings.TrimSpace(amount.text)
		m.parts = append(m.parts, modelPart{from[i], amount})
	}
	return m
}

func drawOffer(t *rapid.T, id string) modelOffer {
	o := modelOffer{material: id, bulk: often(t, id+" in bulk")}
	size := typedVolume(t, id+" pack", 5_000_000, 120_000_000)
	if o.bulk {
		size = typedVolume(t, id+" step", 100_000_000, 800_000_000)
	}
	o.size = &size
	if !o.bulk && (id == "peat" || often(t, id+" compressed")) {
		opens := typedVolume(t, id+" opens", size.value.float()*1.2, size.value.float()*2)
		o.opens = &opens
	}
	return o
}

func drawTask(t *rapid.T, j *modelJob) modelTask {
	task := modelTask{kind: rapid.SampledFrom([]string{"fill", "amend", "backfill", "cover"}).Draw(t, "kind")}
	if task.isMix = often(t, "of a mix"); task.isMix {
		task.filling = rapid.SampledFrom(j.mixIDs()).Draw(t, "mix")
	} else {
		task.filling = rapid.SampledFrom(j.materialIDs()).Draw(t, "material")
	}
	task.settle, task.spare = maybeShare(t, "settle", 60), maybeShare(t, "spare", 50)
	task.blend = maybeShare(t, "blend loss", 30)
	switch task.kind {
	case "fill":
		for range rapid.IntRange(1, 4).Draw(t, "lines") {
			task.lines = append(task.lines, drawLine(t, j))
		}
	case "amend":
		drawAmend(t, &task)
	case "cover":
		drawCover(t, &task)
	default:
		drawBackfill(t, j, &task)
	}
	return task
}

func drawAmend(t *rapid.T, task *modelTask) {
	task.ground = drawGround(t, rapid.SampledFrom([]float64{1000, 5000, 12_000}).Draw(t, "scale"), true)
	var low, high float64
	if often(t, "layer given") {
		layer := typedLength(t, "layer", 10, 150)
		task.layer, low, high = &layer, layer.value.float()*1.2, layer.value.float()*6
	} else {
		share := drawShare(t, "share", 5, 60)
		task.share, low, high = &share, 100, 400
	}
	if often(t, "into given") {
		into := typedLength(t, "into", low, high)
		task.into = &into
	} else {
		over := typedLength(t, "over", low, high)
		task.over = &over
	}
}

func drawCover(t *rapid.T, task *modelTask) {
	task.ground = drawGround(t, rapid.SampledFrom([]float64{1000, 5000, 12_000}).Draw(t, "scale"), true)
	layer := typedLength(t, "layer", 10, 150)
	task.layer = &layer
	task.clear = typedLength(t, "clear", 10, 120)
	most := task.ground.area().float() / (2 * math.Pi * math.Pow(task.clear.value.float(), 2))
	task.stems = rapid.Int64Range(0, min(200, int64(most))).Draw(t, "stems")
}

func drawBackfill(t *rapid.T, j *modelJob, task *modelTask) {
	task.holes = rapid.Int64Range(1, 200).Draw(t, "holes")
	task.width = typedLength(t, "width", 200, 900)
	task.depth = typedLength(t, "depth", 100, 500)
	width, depth := task.width.value.float(), task.depth.value.float()
	task.ball = drawBall(t, j, width*width*depth*0.5, width*0.9, depth*1.6) // some stand higher than the hole is deep
	if often(t, "above grade") {
		above := typedLength(t, "above", 5, depth*0.25)
		task.above = &above
	}
	task.soil = rapid.SampledFrom([]string{"", "clay", "loam", "sandy"}).Draw(t, "soil")
	if often(t, "material in the holes") {
		share := drawShare(t, "share", 1, 100)
		task.share = &share
		return
	}
	task.filling, task.isMix, task.settle, task.blend, task.spare = "", false, nil, nil, nil
}

// drawBall draws a ball of at most four fifths of room, inside a cylinder.
func drawBall(t *rapid.T, j *modelJob, room, across, height float64) modelBall {
	var classes []string
	for _, id := range j.potIDs() {
		if p := j.pot(id); p.holds.value.float() < room*0.8 {
			classes = append(classes, id)
		}
	}
	switch form := rapid.IntRange(0, 2).Draw(t, "ball"); {
	case form == 0 && len(classes) > 0:
		return modelBall{class: rapid.SampledFrom(classes).Draw(t, "ball class")}
	case form == 1:
		v := typedVolume(t, "ball volume", room*0.2, room*0.8)
		return modelBall{volume: &v}
	}
	return modelBall{across: typedLength(t, "ball across", across*0.3, across*0.9),
		height: typedLength(t, "ball height", height*0.3, height*0.9)}
}

func (j *modelJob) potIDs() []string {
	ids := slices.Sorted(maps.Keys(trade().pots))
	for _, p := range j.pots {
		if !slices.Contains(ids, p.id) {
			ids = append(ids, p.id)
		}
	}
	return ids
}

func drawLine(t *rapid.T, j *modelJob) modelLine {
	l := modelLine{count: rapid.Int64Range(1, 400).Draw(t, "count")}
	l.form = rapid.SampledFrom([]string{"size", "holds", "box", "straight", "taper"}).Draw(t, "form")
	narrow, tall := l.drawSides(t, j)
	l.square = (l.form == "straight" || l.form == "taper") && often(t, "square")
	if l.form != "size" && often(t, "cells given") {
		l.cells = rapid.Int64Range(1, 200).Draw(t, "cells")
	}
	if tall > 0 && often(t, "below the rim") {
		rim := typedLength(t, "below rim", 2, tall*0.4)
		l.belowRim = &rim
		tall -= rim.value.float()
	}
	if often(t, "stepped up") {
		room := l.holds(j).plan.float()
		if tall == 0 { // its shape is not known: a ball inside a cube inside it
			narrow, tall = math.Cbrt(room)*0.9, math.Cbrt(room)*0.9
		}
		ball := drawBall(t, j, room, narrow, tall)
		l.ball = &ball
	}
	return l
}

// drawSides draws what the form needs, and returns how wide and tall it is at
// the least, or 0 where the form does not tell.
func (l *modelLine) drawSides(t *rapid.T, j *modelJob) (narrow, tall float64) {
	at := func(i int) float64 { return l.sides[i].value.float() }
	switch l.form {
	case "size":
		l.class = rapid.SampledFrom(j.potIDs()).Draw(t, "class")
		return 0, 0
	case "holds":
		l.sides = []typed{typedVolume(t, "holds", 5000, 60_000_000)}
		return 0, 0
	case "box":
		l.sides = []typed{typedLength(t, "long", 60, 1200), typedLength(t, "wide", 60, 600),
			typedLength(t, "deep", 40, 500)}
		return min(at(0), at(1)), at(2)
	case "straight":
		l.sides = []typed{typedLength(t, "across", 40, 600), typedLength(t, "height", 40, 500)}
		return at(0), at(1)
	}
	top := typedLength(t, "top", 50, 600)
	l.sides = []typed{top, typedLength(t, "bottom", top.value.float()*0.5, top.value.float()),
		typedLength(t, "height", 40, 500)}
	return at(1), at(2)
}

// drawGround draws a shape some s to 4 s wide; a whole one has more ground and
// ground left out, so small that something stays.
func drawGround(t *rapid.T, s float64, whole bool) modelGround {
	shapes := []string{"area", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners"}
	g := modelGround{shape: rapid.SampledFrom(shapes).Draw(t, "shape"), count: 1, asObject: often(t, "as an object")}
	side := func(name string) typed { return typedLength(t, name, s, 4*s) }
	switch g.shape {
	case "area":
		g.sides = []typed{typedOn(t, "area", areas, micrometre2, s*s/2, 20*s*s)}
	case "circle":
		g.sides = []typed{side("diameter")}
	case "rectangle", "ellipse":
		g.sides = []typed{side("long"), side("wide")}
	case "triangle":
		g.sides = drawTriangle(t, side("a"), side("b"))
	case "ring":
		outer := typedLength(t, "outer", 2*s, 4*s)
		g.sides = []typed{outer, typedLength(t, "inner", outer.value.float()*0.2, outer.value.float()*0.8)}
	case "strip":
		g.drawStrip(t, s)
	default:
		g.points = drawOutline(t, s)
	}
	if !whole {
		return g
	}
	g.count = rapid.Int64Range(1, 5).Draw(t, "how many of it")
	for range rapid.IntRange(0, 2).Draw(t, "more ground") {
		g.plus = append(g.plus, drawGround(t, s, false))
	}
	for range rapid.IntRange(0, 2).Draw(t, "left out") {
		g.less = append(g.less, drawGround(t, s/40, false))
	}
	return g
}

func drawTriangle(t *rapid.T, a, b typed) []typed {
	if often(t, "base and height") {
		return []typed{a, b}
	}
	x, y := a.value.float(), b.value.float()
	return []typed{a, b, typedLength(t, "c", math.Abs(x-y)+0.2*min(x, y), 0.9*(x+y))}
}

func (g *modelGround) drawStrip(t *rapid.T, s float64) {
	n := rapid.IntRange(1, 4).Draw(t, "runs")
	for range n {
		g.sides = append(g.sides, typedLength(t, "run", s, 4*s))
	}
	g.width = typedLength(t, "width", s/10, s/4)
	if often(t, "a gap") {
		g.gaps = []typed{typedLength(t, "gap", s/10, s/3)}
	}
	if often(t, "corners given") {
		corners := rapid.Int64Range(0, int64(n)).Draw(t, "corners")
		g.corners = &corners
	}
	g.edge = rapid.SampledFrom([]string{"", "centre", "outer", "inner"}).Draw(t, "edge")
}

// drawOutline goes east below a line and west above it, so that it never
// crosses itself; the line itself lies anywhere.
func drawOutline(t *rapid.T, s float64) [][2]typed {
	grid := s / 100
	step := func(name string) int64 { return rapid.Int64Range(20, 150).Draw(t, name) }
	x0, y0 := rapid.Int64Range(-500, 500).Draw(t, "east"), rapid.Int64Range(-500, 500).Draw(t, "north")
	at := func(x, y int64) [2]typed { return [2]typed{onGrid(x0+x, grid), onGrid(y0+y, grid)} }
	points := [][2]typed{at(0, 0)}
	var east []int64
	x := int64(0)
	for range rapid.IntRange(1, 4).Draw(t, "bends") {
		x += step("on")
		points = append(points, at(x, -step("south")))
		east = append(east, x)
	}
	points = append(points, at(x+step("on"), 0))
	for _, x := range slices.Backward(east) {
		points = append(points, at(x+7, step("north")))
	}
	if often(t, "the other way round") {
		slices.Reverse(points)
	}
	return points
}

func onGrid(n int64, grid float64) typed {
	value := exactly(n, 1).times(exact{rat: new(big.Rat).SetFloat64(grid)})
	return typed{value.rat.FloatString(3) + " mm", value.whole(nanometre)}
}

// object is a JSON object on its way out.
type object map[string]any

func (o object) put(name string, q *typed) {
	if q != nil {
		o[name] = q.text
	}
}

// document writes the job as people would.
func (j *modelJob) document() []byte {
	doc := object{"schema": 1, "tasks": each(j.tasks, (*modelTask).object)}
	if len(j.materials) > 0 {
		doc["materials"] = each(j.materials, (*modelMaterial).object)
	}
	if len(j.pots) > 0 {
		doc["containers"] = each(j.pots, (*modelPot).object)
	}
	if len(j.mixes) > 0 {
		doc["mixes"] = each(j.mixes, (*modelMix).object)
	}
	if len(j.offers) > 0 {
		doc["offers"] = each(j.offers, (*modelOffer).object)
	}
	hand := object{}
	for id, v := range j.onHand {
		hand.put(id, &v)
	}
	if len(hand) > 0 {
		doc["on_hand"] = hand
	}
	data, err := json.Marshal(doc)
	if err != nil {
		panic(err)
	}
	return data
}

func each[T any, R any](list []T, write func(*T) R) (out []R) {
	for i := range list {
		out = append(out, write(&list[i]))
	}
	return out
}

func (m *modelMaterial) object() object {
	o := object{"id": m.id, "name": "My " + m.id}
	o.put("settle", m.settle)
	return o
}

func (p *modelPot) object() object {
	o := object{"id": p.id}
	if p.cells > 0 {
		o["cells"] = p.cells
	}
	o.put("holds", p.holds)
	o.put("low", p.low)
	o.put("high", p.high)
	return o
}

func (m *modelMix) object() object {
	parts := object{}
	for _, p := range m.parts {
		parts[p.of] = p.amount.text
		if _, err := strconv.ParseFloat(p.amount.text, 64); err == nil {
			parts[p.of] = json.Number(p.amount.text)
		}
	}
	o := object{"id": m.id, "parts": parts}
	o.put("blend_loss", m.blend)
	o.put("settle", m.settle)
	return o
}

func (f *modelOffer) object() object {
	o := object{"material": f.material}
	if f.bulk {
		o.put("bulk", f.size)
	} else {
		o.put("pack", f.size)
	}
	o.put("opens_to", f.opens)
	if f.cents != nil {
		o["price"] = big.NewRat(*f.cents, 100).FloatString(2)
	}
	return o
}

func (t *modelTask) object() object {
	o := object{"kind": t.kind}
	if t.isMix {
		o["mix"] = t.filling
	} else if t.filling != "" {
		o["material"] = t.filling
	}
	o.put("settle", t.settle)
	o.put("blend_loss", t.blend)
	o.put("spare", t.spare)
	o.put("layer", t.layer)
	o.put("share", t.share)
	o.put("into", t.into)
	o.put("over", t.over)
	switch t.kind {
	case "fill":
		o["containers"] = each(t.lines, (*modelLine).object)
	case "backfill":
		t.hole(o)
	default:
		o["area"] = t.ground.document()
	}
	if t.stems > 0 {
		o["stems"] = object{"count": t.stems, "clear": t.clear.text}
	}
	return o
}

func (t *modelTask) hole(o object) {
	o["holes"] = t.holes
	o.put("width", &t.width)
	o.put("depth", &t.depth)
	o["ball"] = t.ball.String()
	o.put("above_grade", t.above)
	if t.soil != "" {
		o["soil"] = t.soil
	}
}

func (b *modelBall) String() string {
	switch {
	case b.class != "":
		return b.class
	case b.volume != nil:
		return b.volume.text
	}
	return dims(b.across, b.height)
}

func dims(sides ...typed) string {
	return strings.Join(each(sides, func(s *typed) string { return s.text }), " x ")
}

func (l *modelLine) object() object {
	o := object{"count": l.count}
	switch l.form {
	case "size":
		o["size"] = l.class
	case "holds":
		o.put("holds", &l.sides[0])
	case "box":
		o["box"] = dims(l.sides...)
	case "straight":
		o.put("across", &l.sides[0])
		o.put("height", &l.sides[1])
	default:
		o.put("top", &l.sides[0])
		o.put("bottom", &l.sides[1])
		o.put("height", &l.sides[2])
	}
	if l.square {
		o["shape"] = "square"
	}
	if l.cells > 0 {
		o["cells"] = l.cells
	}
	o.put("below_rim", l.belowRim)
	if l.ball != nil {
		o["ball"] = l.ball.String()
	}
	return o
}

// document writes a shape in one line where one line can say it.
func (g *modelGround) document() any {
	object := object{}
	switch g.shape {
	case "strip":
		object["strip"] = g.along()
	case "corners":
		object["corners"] = each(g.points, func(p *[2]typed) []string { return []string{p[0].text, p[1].text} })
	default:
		line := dims(g.sides...)
		if !g.asObject && g.count == 1 && g.plus == nil && g.less == nil {
			return strings.TrimPrefix(strings.TrimPrefix(g.shape+" "+line, "area "), "rectangle ")
		}
		object[g.shape] = line
	}
	if g.shape == "ring" {
		object["ring"] = map[string]string{"outer": g.sides[0].text, "inner": g.sides[1].text}
	}
	if g.count > 1 {
		object["count"] = g.count
	}
	if g.plus != nil {
		object["plus"] = each(g.plus, (*modelGround).document)
	}
	if g.less != nil {
		object["less"] = each(g.less, (*modelGround).document)
	}
	return object
}

func (g *modelGround) along() object {
	text := func(s *typed) string { return s.text }
	o := object{"along": each(g.sides, text), "width": g.width.text}
	if g.gaps != nil {
		o["gaps"] = each(g.gaps, text)
	}
	if g.corners != nil {
		o["corners"] = *g.corners
	}
	if g.edge != "" {
		o["edge"] = g.edge
	}
	return o
}
