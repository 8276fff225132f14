package mix_test

import (
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/picture"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestNilWork: work that is a nil pointer is no work: a problem, not a panic.
func TestNilWork(t *testing.T) {
	for _, work := range []task.Work{nil, (*task.Fill)(nil), (*task.Amend)(nil), (*task.Backfill)(nil),
		(*task.Cover)(nil)} {
		job := &mix.Job{Tasks: []task.Task{{Material: "peat", Work: work}},
			OnHand: []yard.OnHand{{Material: "peat", Volume: units.Litre}}}
		_, planned := job.Plan()
		_, reached := job.Reach()
		_, cloned := job.Clone().Plan()
		at, err := job.At(&yard.Yard{})
		require.NoError(t, err)
		_, left := at.Plan()
		for _, err := range []error{planned, reached, cloned, left} {
			found := doc.ProblemsIn(err)
			require.Len(t, found, 1, "%T: %v", work, err)
			require.Equal(t, "tasks[0].kind "+doc.FieldMissing, found[0].Path+" "+found[0].Code, "%T", work)
		}
		require.Nil(t, job.Tasks[0].Kind(), "%T", work)
		require.Nil(t, job.Clone().Tasks[0].Work, "%T", work)
		var r doc.Reader
		job.Tasks[0].Evaluate(&r, catalog.Plain(nil), &task.Evaluated{})
		require.Error(t, r.Err(), "%T", work)
	}
}

// TestOddMeasure: a measure that is none is a problem of a job, and everywhere else
// what the zero value is.
func TestOddMeasure(t *testing.T) {
	odd := units.Measure(9)
	area := ground.Area{Shape: "plain", Plain: units.SquareMetre}
	job := &mix.Job{Measure: odd,
		Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: area, Layer: units.Inch}}}}
	_, err := job.Plan()
	require.Equal(t, doc.WordUnknown, firstCode(err))
	require.Contains(t, err.Error(), "us, metric or both")
	_, err = job.Reach()
	require.Equal(t, doc.WordUnknown, firstCode(err))

	job.Measure = units.US
	p, err := job.Plan()
	require.NoError(t, err)
	want := string(report.Full(p))
	p.Measure = odd
	require.Equal(t, want, string(report.Full(p)))
	require.Equal(t, lang.Printer{}.Range(units.Range{Low: 1, Plan: 2e9, High: 3e9}),
		lang.Printer{Measure: odd}.Range(units.Range{Low: 1, Plan: 2e9, High: 3e9}))
	require.Equal(t, lang.Printer{}.TradeVolume(units.CubicMetre),
		lang.Printer{Measure: odd}.TradeVolume(units.CubicMetre))
}

// TestOddAim is the same of an aim.
func TestOddAim(t *testing.T) {
	odd := yard.Aim(9)
	require.Equal(t, yard.LeastCost.String(), odd.String())
	require.Equal(t, yard.LeastCost.Words(), odd.Words())
	area := ground.Area{Shape: "plain", Plain: units.SquareMetre}
	job := &mix.Job{Aim: odd, Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: area, Layer: units.Inch}}}}
	_, err := job.Plan()
	require.Equal(t, doc.WordUnknown, firstCode(err))
	_, err = job.Reach()
	require.Equal(t, doc.WordUnknown, firstCode(err))
}

// TestNilJob: a nil job has no tasks, which is a problem where there must be some.
func TestNilJob(t *testing.T) {
	var job *mix.Job
	_, err := job.Plan()
	require.Equal(t, doc.JobEmpty, firstCode(err))
	_, err = job.Reach()
	require.Contains(t, []string{doc.JobEmpty, doc.FieldMissing}, firstCode(err))
	require.Nil(t, job.Clone())
	for _, y := range []*yard.Yard{nil, {}} {
		at, err := job.At(y)
		require.NoError(t, err)
		_, err = at.Plan()
		require.Equal(t, doc.JobEmpty, firstCode(err))
	}
	_, err = job.At(&yard.Yard{Without: []string{"peat"}})
	require.Equal(t, doc.OfferUnknown, firstCode(err))
}

// TestZeroPlan: the zero plan is empty, whatever it is asked. Every method is: a new
// one fails here until it is listed.
func TestZeroPlan(t *testing.T) {
	p := &mix.Plan{}
	asked := map[string]any{
		"Printer":      p.Printer(),
		"TaskText":     p.TaskText(&mix.TaskPlan{}, units.Range{}),
		"Amount":       p.Amount(0),
		"Delivery":     p.Delivery(),
		"Offered":      p.Offered(),
		"Ordered":      p.Ordered(nil),
		"LeftOut":      p.LeftOut(),
		"StandIns":     p.StandIns("peat"),
		"Crossings":    p.Crossings(),
		"Alternatives": p.Alternatives(),
		"InAll":        p.InAll(),
		"Priced":       p.Priced(),
		"Options":      p.Options(mix.MaxOptions),
		"Sure":         p.Sure(),
		"ChangesFrom":  p.ChangesFrom(&mix.Plan{}),
		"Load":         nil, // of the order that it embeds, with a reader
		"Working":      nil,
	}
	for s := range p.Working() {
		t.Errorf("a step of nothing: %+v", s)
	}
	require.Equal(t, yard.Load{}, p.Order.Load(&doc.Reader{}, &p.Haul))
	for i := range reflect.TypeOf(p).NumMethod() {
		if name := reflect.TypeOf(p).Method(i).Name; !has(asked, name) {
			t.Errorf("nothing asks a zero plan for its %s", name)
		}
	}
	require.Equal(t, "0.00", asked["Amount"])
	require.Equal(t, "0 cu in", asked["TaskText"])
	for _, none := range []string{"Delivery", "LeftOut", "StandIns", "Crossings", "Options", "Alternatives",
		"Sure", "ChangesFrom", "InAll", "Priced"} {
		require.Empty(t, asked[none], none)
	}
	require.Equal(t, false, asked["Offered"])
	require.Equal(t, false, asked["Ordered"])
}

func has(m map[string]any, key string) bool { _, ok := m[key]; return ok }

// TestZeroPlanReports: as are its documents and its pictures.
func TestZeroPlanReports(t *testing.T) {
	p := &mix.Plan{}
	require.JSONEq(t, `{"schema": 1, "measure": "us", "needs": [], "order": [], "trips": [], "batches": [],
		"tasks": [], "notes": [], "cautions": [], "working": []}`, string(report.Plan(p)))
	require.JSONEq(t, `{"schema": 1, "measure": "us", "needs": [], "order": [], "trips": [], "batches": [],
		"bags_or_bulk": [], "choices": [], "tasks": [], "notes": [], "cautions": [], "working": []}`, string(report.Full(p)))
	require.Equal(t, 1, strings.Count(string(report.CSV(p)), "\n"), "more than the head")
	require.JSONEq(t, `{"changes": [], "after": {}}`, string(report.Changes(nil, p)))
	require.JSONEq(t, `{"changes": [], "before": {}, "after": {}}`, string(report.Changes(p, p)))
	for _, draw := range []func(*mix.Plan) []picture.Drawing{picture.Tasks, picture.Order, picture.Trips,
		picture.Costs} {
		require.Empty(t, draw(p))
	}
}
