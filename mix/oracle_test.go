package mix_test

import (
	"maps"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
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

// TestModelKnowsTheTrade holds the model against figures worked by hand, so
// that a slip in it is not taken for one of the program.
func TestModelKnowsTheTrade(t *testing.T) {
	ft := func(n int64) exact { return exactly(n*3048, 10) }
	foot := decimal("28316846.592") // microlitres
	bed := modelGround{shape: "rectangle", count: 1, sides: []typed{{value: ft(60)}, {value: ft(4)}}}
	if got, want := bed.area().times(ft(1)).over(foot), exactly(240, 1); got.rat.Cmp(want.rat) != 0 {
		t.Errorf("60 ft x 4 ft x 1 ft is %v cu ft, want 240", got.rat)
	}
	right := modelGround{shape: "triangle", count: 2, sides: []typed{{value: ft(3)}, {value: ft(4)}, {value: ft(5)}}}
	if got := right.area().over(ft(1)).over(ft(1)).float(); got != 12 {
		t.Errorf("two triangles of 3, 4, 5 ft are %v sq ft, want 12", got)
	}
	if got := packs(foot.taken(189), foot); got != 189 {
		t.Errorf("189 cu ft are %d bags of 1 cu ft", got)
	}
	if got := exactly(-5, 2).whole(exactly(1, 1)); got.rat.Cmp(big.NewRat(-3, 1)) != 0 {
		t.Errorf("-2 1/2 rounds to %v, want -3", got.rat)
	}
	// facts of the trade: 100 L net at 10 % and 10 % needs 123.46 L.
	task := modelTask{kind: "fill", filling: "rooting", isMix: true,
		lines: []modelLine{{count: 1, form: "holds", sides: []typed{{value: exactly(100_000_000, 1)}}}}}
	if got := task.loose(&modelJob{}).plan.over(exactly(1_000_000, 1)).rat.FloatString(2); got != "123.46" {
		t.Errorf("100 L net takes %s L, want 123.46", got)
	}
}
