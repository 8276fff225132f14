package mix_test

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// typings are one of everything that can stand in a document.
var typings = []string{`null`, `true`, `3`, `"x"`, `"3 in"`, `[]`, `["x"]`, `[3]`, `{}`, `{"x": 1}`}

// TestObjects walks the tables of the job document from the top: every field says
// what it is called, what it takes and what it is for, and gives a place that its
// type can read into, which is no other field's.
func TestObjects(t *testing.T) {
	w := walker{T: t, walked: map[string]bool{}}
	w.walk(mix.Objects()[0], mix.NewDocument())
	for _, k := range task.Kinds() {
		w.walk(k.Object, k.New())
	}
	w.walk(ground.RingObject, &[]units.Length{0, 0})
	ids := map[string]bool{}
	for _, o := range mix.Objects() {
		if ids[o.ID] {
			t.Errorf("two objects are %q", o.ID)
		}
		ids[o.ID] = true
		if !w.walked[o.ID] {
			t.Errorf("nothing leads to %q", o.ID)
		}
	}
	for id := range w.walked {
		if !ids[id] {
			t.Errorf("mix.Objects leaves out %q", id)
		}
	}
}

// walker goes through the tables of objects.
type walker struct {
	*testing.T
	walked map[string]bool // by ID
}

// walk goes through an object's fields and what is inside them, once.
func (w *walker) walk(o *doc.Object, at any) {
	if w.walked[o.ID] {
		return
	}
	w.walked[o.ID] = true
	if o.ID == "" || o.Title() == "" {
		w.Errorf("an object is called %q, %q", o.ID, o.Title())
	}
	names, places := map[string]bool{}, map[any]string{}
	for _, f := range o.Fields() {
		name := o.ID + "." + f.Name
		if f.Name == "" || names[f.Name] {
			w.Errorf("%s: a field without a name of its own", name)
		}
		names[f.Name] = true
		if f.About == "" || f.Type == nil || f.Type.InWords() == "" || f.Type.Form == "" {
			w.Errorf("%s does not say what it takes or what it is for", name)
			continue
		}
		place := f.At(at)
		if other := places[place]; place != nil && other != "" {
			w.Errorf("%s is kept where %s is", name, other)
		}
		places[place] = name
		switch {
		case name == "task.kind": // read before all others, by its task
			require.Nil(w, place)
		case f.Type.Form == "lengths" && o.ID == "area": // the shapes, which share one list
		default:
			require.Equal(w, reflect.Pointer, reflect.ValueOf(place).Kind(), name)
			require.False(w, reflect.ValueOf(place).IsNil(), name)
		}
		w.reads(name, &f, at)
		w.inside(name, &f, place)
	}
}

// reads reads one of everything into the field; a type that reads into another
// than its place has panics.
func (w *walker) reads(name string, f *doc.Field, at any) {
	for _, typed := range typings {
		root, faults := json.Parse([]byte(typed), json.Limits{})
		require.Empty(w, faults)
		fresh := reflect.New(reflect.TypeOf(at).Elem())
		fresh.Elem().Set(reflect.ValueOf(at).Elem())
		func() {
			defer func() {
				if p := recover(); p != nil {
					w.Errorf("%s: reading %s: %v", name, typed, fmt.Sprint(p))
				}
			}()
			r := doc.Over(&root)
			f.Type.Read(f.Type, r, &root, f.At(fresh.Interface()))
		}()
	}
}

// inside walks the object that the field has, or a row of its list.
func (w *walker) inside(name string, f *doc.Field, place any) {
	if f.Type.Of == nil || f.Type.Form == "lengths" {
		return
	}
	o := f.Type.Of()
	switch {
	case f.Type.Form == "list":
		require.Nil(w, o.Row(place, 0, 0), "%s: a row of an empty list", name)
		row := o.Row(place, 1, 2)
		require.NotNil(w, row, name)
		require.NotSame(w, o.Row(place, 0, 0), row, name)
		require.Nil(w, o.Row(place, 2, 0), "%s: a row past the end", name)
		place = row
	case o.Maybe != nil:
		require.Nil(w, o.Maybe(place, false), "%s: what is left out", name)
		place = o.Maybe(place, true)
		require.NotNil(w, place, name)
	}
	w.walk(o, place)
}
