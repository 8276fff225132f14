package mix_test

import (
	"bytes"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
)

// ofTheCatalogue names nothing but the catalogue's rows, and has every kind of
// work, offers with all that they may have, and a yard.
const ofTheCatalogue = `{"schema": 1,
	"tasks": [
		{"kind": "fill", "mix": "potting", "containers": [{"count": 64, "size": "#1", "ball": "SP4"}, {"count": 12, "box": "20 in x 10 in x 2 in"}, {"count": 9, "size": "#5"}]},
		{"kind": "amend", "area": "60 ft x 4 ft", "layer": "3 in", "into": "9 in", "material": "compost", "spare": "5%"},
		{"kind": "backfill", "holes": 12, "width": "18 in", "depth": "7 in", "ball": "#1", "share": "25%", "material": "bark-fines"},
		{"kind": "cover", "area": {"strip": {"along": ["20 ft", "15 ft"], "width": "3 ft", "gaps": ["3 ft"]}, "less": ["circle 1 ft"]}, "layer": "3 in", "material": "bark-mulch", "stems": {"count": 12, "clear": "3 in"}, "sheet": {"size": "4 ft x 3 ft", "overlap": "6 in"}}],
	"on_hand": {"perlite": "1 cu ft", "compost": "2 cu ft", "bark-fines": "9 cu ft", "bark-mulch": "4 cu ft", "peat": "1 cu ft"},
	"offers": [
		{"material": "bark-mulch", "pack": "2 cu ft", "price": "3.95", "breaks": [{"from": 10, "price": "3.50"}]},
		{"material": "bark-mulch", "bulk": "1/2 cu yd", "price": "17.00", "deliver": true},
		{"material": "compost", "bulk": "1/2 cu yd", "price": "22.00", "deliver": true},
		{"material": "compost", "pack": "1 cu ft", "price": "4.50", "stock": 400},
		{"material": "peat", "pack": "3.8 cu ft", "price": "21.00"},
		{"material": "bark-fines", "pack": "2 cu ft", "price": "6.00", "deposit": "1.00"}],
	"haul": {"payload": "1400 lb", "room": "1.5 cu yd", "trip_cost": "6"},
	"delivery": {"fee": "45", "capacity": "3 cu yd"},
	"yard": {"only_stock": 500, "bought": [{"offer": "bark-fines:2 cu ft", "count": 1}]}}`

// TestPlansShareNothing: several goroutines plan one job, and each writes over all
// that it can reach through its plan, its reach and the catalogue; every plan and
// every reach is the first byte for byte. With -race, nothing that is written is
// read by another.
func TestPlansShareNothing(t *testing.T) {
	job, err := mix.Decode([]byte(ofTheCatalogue))
	require.NoError(t, err)
	first, err := outputOf(job)
	require.NoError(t, err)
	var group sync.WaitGroup
	for range 4 {
		group.Go(func() {
			for range 3 {
				again, err := outputOf(job)
				if err != nil || !bytes.Equal(again, first) {
					t.Errorf("after another plan was written over, this one differs: %v", err)
					return
				}
			}
		})
	}
	group.Wait()
}

// outputOf plans the job, writes the plan and the reach down, and then writes over
// all that they lead to.
func outputOf(job *mix.Job) ([]byte, error) {
	p, err := job.Plan()
	if err != nil {
		return nil, err
	}
	reach, err := job.Reach()
	if err != nil {
		return nil, err
	}
	out := append(report.Full(p), report.CSV(p)...)
	for i := range reach {
		out = append(out, report.Reach(&reach[i])...)
	}
	found := []any{p.LeftOut(), p.Crossings(), p.Options(mix.MaxOptions), p.Sure(), p.Delivery(),
		p.ChangesFrom(nil), reach}
	for i := range p.Tasks {
		for term := range p.Tasks[i].Result.Terms {
			found = append(found, &term)
		}
	}
	for i := range p.Needs {
		found = append(found, p.Needs[i].Packs(p.Measure))
	}
	rows := catalog.BuiltIn()
	s := scribbler{seen: map[any]bool{}}
	s.over(reflect.ValueOf(found))
	s.over(reflect.ValueOf(p))
	s.over(reflect.ValueOf(&rows))
	return out, nil
}

// scribbler writes over everything that a value leads to and that another package
// may change: fields, elements, what pointers point at.
type scribbler struct {
	seen map[any]bool
	n    int
}

func (s *scribbler) over(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() || s.seen[v.Interface()] {
			return
		}
		s.seen[v.Interface()] = true
		s.over(v.Elem())
	case reflect.Interface:
		s.over(v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				s.over(v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			s.over(v.Index(i))
		}
		s.beyond(v)
	default:
		s.scalar(v)
	}
}

// beyond writes over what append would write over, behind the end of a slice.
func (s *scribbler) beyond(v reflect.Value) {
	if v.Kind() == reflect.Slice && v.Cap() > v.Len() {
		all := v.Slice(0, v.Cap())
		for i := v.Len(); i < all.Len(); i++ {
			all.Index(i).SetZero()
		}
	}
}

func (s *scribbler) scalar(v reflect.Value) {
	if !v.IsValid() || !v.CanSet() {
		return
	}
	s.n++
	switch {
	case v.Kind() == reflect.String:
		v.SetString("scribbled")
	case v.Kind() == reflect.Bool:
		v.SetBool(!v.Bool())
	case v.CanInt():
		v.SetInt(99)
	case v.CanUint():
		v.SetUint(99)
	case v.CanFloat():
		v.SetFloat(99)
	}
}

// TestScribbler: it reaches what the test above is about.
func TestScribbler(t *testing.T) {
	job, err := mix.Decode([]byte(ofTheCatalogue))
	require.NoError(t, err)
	p, err := job.Plan()
	require.NoError(t, err)
	s := scribbler{seen: map[any]bool{}}
	s.over(reflect.ValueOf(p))
	m := p.Needs[0].Material
	require.Equal(t, "scribbled", m.ID)
	require.Equal(t, []string{"scribbled"}, m.Traits[:1])
	require.EqualValues(t, 99, p.Lines[0].Offer.Bulk.Volume)
	require.EqualValues(t, 99, p.Tasks[0].Result.(*task.Pots).Lines[0].Line.Count)
	require.EqualValues(t, 99, p.Tasks[1].Result.(*task.Bed).Layer)
	require.Equal(t, "scribbled", p.Tasks[0].Parts[0].Material.Name)
	require.Greater(t, s.n, 500)
}

// TestAtSharesNothing: a job as it stands at the yard is its own, too.
func TestAtSharesNothing(t *testing.T) {
	job, err := mix.Decode([]byte(ofTheCatalogue))
	require.NoError(t, err)
	job.Yard = nil
	only := int64(400)
	y := &yard.Yard{Only: &only}
	left, err := job.At(y)
	require.NoError(t, err)
	want, err := left.Plan()
	require.NoError(t, err)
	*left.Offers[0].Stock = 7 // of this offer alone
	only = 1
	require.EqualValues(t, 400, *left.Offers[1].Stock)
	*left.Offers[0].Stock = 400
	again, err := left.Plan()
	require.NoError(t, err)
	require.Equal(t, string(report.Full(want)), string(report.Full(again)))
}

// TestChangesAreCopied: a plan does not keep what a change of [mix.PlanDocument]
// puts into the job.
func TestChangesAreCopied(t *testing.T) {
	fill := &task.Fill{Containers: []task.Container{{Count: 10, Size: "#1"}}}
	tasks := []task.Task{{Material: "peat", Work: fill}}
	p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": []}`), func(j *mix.Job) { j.Tasks = tasks })
	require.NoError(t, err)
	want := string(report.Plan(p))
	fill.Containers[0].Count, tasks[0].Name = 99, "another"
	require.Equal(t, want, string(report.Plan(p)))
	require.Empty(t, doc.ProblemsIn(err))
}
