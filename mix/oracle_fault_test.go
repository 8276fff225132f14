package mix_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
)

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
	potFault("a slice that is all of the pot", ".below_rim", modelLine{form: "brim", sides: []typed{*litre(2), mm(200)[0]}, belowRim: &mm(70)[0]}),
	potFault("a ball wider than the rim", ".ball", modelLine{form: "brim", sides: []typed{*litre(2), mm(150)[0]}, tapers: true, belowRim: &mm(20)[0], ball: &modelBall{across: mm(151)[0], height: mm(20)[0]}}),
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
	holeFault("a ball more above the ground than in it", "ball", 10, modelBall{across: mm(200)[0], height: mm(401)[0]}),
	holeFault("a ball set higher than its hole is deep", "above_grade", 201, modelBall{volume: litre(3)}),
	{"a layer deeper than its bed", "into", func() modelTask {
		g := modelGround{shape: "rectangle", count: 1, sides: mm(1000, 1000)}
		return modelTask{kind: "amend", filling: "compost", ground: g, layer: &mm(201)[0], into: &mm(200)[0]}
	}},
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
