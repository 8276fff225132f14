package mix_test

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"math/big"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
	"example.org/barrow/units/convert"
)

// publishedKind says how rows of one kind are worked out: by a job, as a user
// would write it, and a figure of the document that answers it.
type publishedKind struct {
	About, Inputs string
	Verb          string            // "" for the plan, or "reach"
	Job           any               // with {holes} for the inputs
	Figure        string            // where it stands in the answer
	Figures       map[string]string // or where, by the input take
	Within        []string          // or where the two ends of a range stand that takes the printed figures in
	Unit          string            // what the answer has it in
	Places        int               // so many places after the point
	Against       string            // the input it is compared with, or "" for the exact figure
	Per           string            // the input whose number of them the answer holds, or ""
	Near          float64           // how near it comes, relative, or 0 for one part in 10^9
}

var loadKinds = sync.OnceValues(func() (kinds map[string]publishedKind, err error) {
	data, err := os.ReadFile("../testdata/published/kinds.json")
	if err != nil {
		return nil, err
	}
	return kinds, json.Unmarshal(data, &kinds)
})

func publishedKinds(t *testing.T) map[string]publishedKind {
	t.Helper()
	kinds, err := loadKinds()
	if err != nil {
		t.Fatal(err)
	}
	return kinds
}

func (r *published) checkConverted(t *testing.T) {
	got, err := convert.Quantity(r.in["of"], r.unit)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := r.exact.Float64()
	if off := got.Float() - want; !(max(off, -off) <= 1e-9*want) {
		t.Errorf("%s is %.12g %s, want %.12g", r.in["of"], got.Float(), r.unit, want)
	}
}

// checkPlanned works the row's job out and compares a figure of the plan. What it
// may be off by is half the last place that the plan writes and one part in 10^9,
// for the nanometres and nanolitres on the way.
func (r *published) checkPlanned(t *testing.T) {
	kind := publishedKinds(t)[r.kind]
	unit := kind.Unit
	if unit == "" {
		unit = r.in["unit"]
	}
	job, err := json.Marshal(r.fill(kind.Job))
	if err != nil {
		t.Fatal(err)
	}
	if len(kind.Within) == 2 {
		r.checkWithin(t, kind, job)
		return
	}
	got := r.figure(t, kind, job)
	want, of := r.exact, r.unit
	if kind.Against != "" {
		number, unit, _ := strings.Cut(r.in[kind.Against], " ")
		want, of = decimal(number).rat, unit
	}
	if kind.Per != "" {
		want = new(big.Rat).Mul(want, decimal(r.in[kind.Per]).rat)
	}
	want = inUnit(t, want, of, unit)
	slack := new(big.Rat).SetFloat64(cmp.Or(kind.Near, 1e-9))
	slack.Mul(slack, want)
	if unit != "each" {
		tens := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(kind.Places)), nil)
		slack.Add(slack, new(big.Rat).SetFrac(big.NewInt(1), tens.Mul(tens, big.NewInt(2))))
	}
	off := new(big.Rat).Sub(got, want)
	if off.Abs(off).Cmp(slack) > 0 {
		t.Errorf("%s(%s): %s %s in the answer, want %s, off by more than %s\n%s", r.kind, r.input, got.FloatString(9), unit,
			want.FloatString(9), slack.FloatString(12), job)
	}
}

// checkWithin reports printed figures that a range of the plan does not take in. Half
// the last place that the plan writes may be missing at either end.
func (r *published) checkWithin(t *testing.T, kind publishedKind, job []byte) {
	t.Helper()
	tens := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(kind.Places)), nil)
	slack := new(big.Rat).SetFrac(big.NewInt(1), tens.Mul(tens, big.NewInt(2)))
	var ends [2]*big.Rat
	for i := range ends {
		kind.Figure = kind.Within[i]
		ends[i] = r.figure(t, kind, job)
	}
	low := new(big.Rat).Add(inUnit(t, r.low, r.unit, kind.Unit), slack)
	high := new(big.Rat).Sub(inUnit(t, r.high, r.unit, kind.Unit), slack)
	if low.Cmp(ends[0]) < 0 || high.Cmp(ends[1]) > 0 {
		t.Errorf("%s(%s): the plan's range is %s to %s %s, which leaves out %s by %s\n%s", r.kind, r.input,
			ends[0].FloatString(6), ends[1].FloatString(6), kind.Unit, r.printed, r.source, job)
	}
}

// fill puts the inputs in the holes of a job. A member whose input the row does not
// have is left out, and a member "..." stands for all inputs that no hole takes.
func (r *published) fill(template any) any {
	taken := map[string]bool{"take": true}
	r.holes(template, taken)
	job, _ := r.put(template, taken)
	if o, ok := job.(map[string]any); ok && o["schema"] == nil {
		o["schema"] = 1
	}
	return job
}

func (r *published) holes(template any, taken map[string]bool) {
	switch v := template.(type) {
	case string:
		if key, ok := hole(v); ok {
			taken[key] = true
		}
	case []any:
		for _, e := range v {
			r.holes(e, taken)
		}
	case map[string]any:
		for _, e := range v {
			r.holes(e, taken)
		}
	}
}

func hole(s string) (key string, ok bool) {
	if len(s) > 2 && s[0] == '{' && s[len(s)-1] == '}' {
		return s[1 : len(s)-1], true
	}
	return "", false
}

func (r *published) put(template any, taken map[string]bool) (value any, ok bool) {
	switch v := template.(type) {
	case string:
		if key, isHole := hole(v); isHole {
			return r.value(key)
		}
	case []any:
		list := []any{}
		for _, e := range v {
			if e, ok := r.put(e, taken); ok {
				list = append(list, e)
			}
		}
		return list, true
	case map[string]any:
		object := map[string]any{}
		for key, e := range v {
			if key == "..." {
				for _, rest := range slices.Sorted(maps.Keys(r.in)) {
					if !taken[rest] {
						object[rest], _ = r.value(rest)
					}
				}
			} else if e, ok := r.put(e, taken); ok {
				object[key] = e
			}
		}
		return object, true
	}
	return template, true
}

// value is one input as JSON: a number, an object or a list as it stands, and
// everything else as text.
func (r *published) value(key string) (any, bool) {
	if key == "exact" {
		return r.exact.RatString() + " " + r.unit, true
	}
	text, ok := r.in[key]
	if ok && json.Valid([]byte(text)) {
		return json.RawMessage(text), true
	}
	return text, ok
}

// figure is what the answer to the job has at the kind's place.
func (r *published) figure(t *testing.T, kind publishedKind, job []byte) *big.Rat {
	path := kind.Figure
	if path == "" {
		path = kind.Figures[r.in["take"]]
	}
	if path == "" {
		path = r.in["figure"]
	}
	for key, value := range r.in {
		path = strings.ReplaceAll(path, "{"+key+"}", value)
		if n, err := strconv.Atoi(value); err == nil {
			path = strings.ReplaceAll(path, "{"+key+"-1}", strconv.Itoa(n-1))
		}
	}
	answer := report.Handle(job)
	if kind.Verb == "reach" {
		answer = reached(t, job)
	}
	found, err := lookUp(answer, path)
	if err != nil {
		t.Fatalf("%s: %v\n%s\n%s", path, err, job, answer)
	}
	v, err := number(found, kind.Unit)
	if err != nil {
		t.Fatalf("%s: %v\n%s", path, err, job)
	}
	return v
}

func reached(t *testing.T, document []byte) []byte {
	job, err := mix.Decode(document)
	if err != nil {
		t.Fatalf("%v\n%s", err, document)
	}
	answers, err := job.Reach()
	if err != nil || len(answers) != 1 {
		t.Fatalf("Reach() = %d answers, %v\n%s", len(answers), err, document)
	}
	return report.Reach(&answers[0])
}

// lookUp finds what stands at a path such as tasks[0].net_litres or
// needs[material=peat].litres.
func lookUp(document []byte, path string) (any, error) {
	decoder := json.NewDecoder(strings.NewReader(string(document)))
	decoder.UseNumber()
	var at any
	if err := decoder.Decode(&at); err != nil {
		return nil, err
	}
	for path != "" {
		if rest, isIndex := strings.CutPrefix(path, "["); isIndex {
			index, after, _ := strings.Cut(rest, "]")
			list, _ := at.([]any)
			i := indexOf(list, index)
			if i < 0 {
				return nil, fmt.Errorf("nothing is at [%s]", index)
			}
			at, path = list[i], strings.TrimPrefix(after, ".")
			continue
		}
		end := strings.IndexAny(path+".", ".[")
		object, _ := at.(map[string]any)
		value, ok := object[path[:end]]
		if !ok {
			return nil, fmt.Errorf("there is no %s", path[:end])
		}
		at, path = value, strings.TrimPrefix(path[end:], ".")
	}
	return at, nil
}

// indexOf reads an index: a number, or key=value for the first object that has it.
func indexOf(list []any, index string) int {
	key, value, named := strings.Cut(index, "=")
	if named {
		return slices.IndexFunc(list, func(e any) bool {
			object, _ := e.(map[string]any)
			return object[key] == value
		})
	}
	if i, err := strconv.Atoi(index); err == nil && i < len(list) {
		return i
	}
	return -1
}

// number reads a figure of an answer: a number, or text such as "5.7 to 8 1/4 cu ft",
// of which the last counts, in the unit.
func number(found any, unit string) (*big.Rat, error) {
	text := fmt.Sprint(found)
	if _, ok := found.(json.Number); ok {
		return decimal(text).rat, nil
	}
	if _, last, found := strings.Cut(text, " to "); found {
		text = strings.TrimSuffix(last, ")")
	}
	if share, found := strings.CutSuffix(text, "%"); found {
		text = share + " %"
	}
	sum := new(big.Rat)
	for i, word := range strings.Fields(text) {
		v, ok := new(big.Rat).SetString(word)
		if !ok {
			of := strings.Join(strings.Fields(text)[i:], " ")
			if i == 0 || publishedUnits[of].size == "" {
				break
			}
			return sum.Mul(sum, unitSize(of)).Quo(sum, unitSize(unit)), nil
		}
		sum.Add(sum, v)
	}
	return nil, fmt.Errorf("%q is no quantity", text)
}

// publishedUnits are the units of published figures, by themselves: NIST Handbook 44
// Appendix C and Special Publication 811 Appendix B.
var publishedUnits = map[string]struct{ of, size string }{
	"mm": {"length", "1"}, "cm": {"length", "10"}, "m": {"length", "1000"},
	"in": {"length", "25.4"}, "ft": {"length", "304.8"}, "yd": {"length", "914.4"},
	"sq m": {"area", "1"}, "sq cm": {"area", "0.0001"}, "ha": {"area", "10000"}, "acre": {"area", "4046.8564224"},
	"sq in": {"area", "0.00064516"}, "sq ft": {"area", "0.09290304"}, "sq yd": {"area", "0.83612736"},
	"L": {"volume", "1"}, "mL": {"volume", "0.001"}, "m3": {"volume", "1000"},
	"cu in": {"volume", "0.016387064"}, "cu ft": {"volume", "28.316846592"}, "cu yd": {"volume", "764.554857984"},
	"gal": {"volume", "3.785411784"}, "imp gal": {"volume", "4.54609"}, "bu": {"volume", "35.23907016688"},
	"dry qt": {"volume", "1.101220942715"}, "liq qt": {"volume", "0.946352946"},
	"kg": {"mass", "1"}, "g": {"mass", "0.001"}, "lb": {"mass", "0.45359237"}, "oz": {"mass", "0.028349523125"},
	"ton":  {"mass", "907.18474"},
	"g/m3": {"density", "1"}, "kg/m3": {"density", "1000"}, "g/cm3": {"density", "1000000"},
	"lb/cu yd": {"density", "45359237/76455.4857984"}, "lb/cu ft": {"density", "45359237/2831.6846592"},
	"share": {"share", "1"}, "%": {"share", "0.01"},
	"each": {"count", "1"}, "bags": {"count", "1"}, "pots": {"count", "1"}, "drives": {"count", "1"},
}

func unitSize(unit string) *big.Rat {
	num, den, found := strings.Cut(publishedUnits[unit].size, "/")
	if !found {
		den = "1"
	}
	return new(big.Rat).Quo(decimal(num).rat, decimal(den).rat)
}

// inUnit is so many of one unit in another of its kind.
func inUnit(t *testing.T, v *big.Rat, from, to string) *big.Rat {
	t.Helper()
	a, b := publishedUnits[from], publishedUnits[to]
	if a.of == "" || a.of != b.of {
		t.Fatalf("%s in %s: not of one kind", from, to)
	}
	v = new(big.Rat).Mul(v, unitSize(from))
	return v.Quo(v, unitSize(to))
}

func TestPublishedJob(t *testing.T) {
	var template any
	text := `{"tasks": [{"kind": "fill", "settle": "{settle}", "spare": "{spare}", "containers": [{"count": 3, "...": ""}]}]}`
	if err := json.Unmarshal([]byte(text), &template); err != nil {
		t.Fatal(err)
	}
	r := &published{in: map[string]string{"settle": "5%", "box": "1 ft x 2 ft x 3 ft", "cells": "4", "take": "low"}}
	got, err := json.Marshal(r.fill(template))
	if err != nil {
		t.Fatal(err)
	}
	want := `{"schema":1,"tasks":[{"containers":[{"box":"1 ft x 2 ft x 3 ft","cells":4,"count":3}],"kind":"fill","settle":"5%"}]}`
	if string(got) != want {
		t.Errorf("fill(%v) = %s, want %s", r.in, got, want)
	}
}

func TestPublishedFigure(t *testing.T) {
	answer := []byte(`{"needs": [{"material": "peat", "litres": 2.5, "range": [1, "5.7 cu ft (5.7 to 8 1/4 cu ft)"]}], "share": "12.5%"}`)
	for _, test := range []struct{ path, unit, want string }{
		{"needs[0].litres", "L", "2.5"},
		{"needs[material=peat].range[0]", "L", "1"},
		{"needs[0].range[1]", "cu ft", "8.25"},
		{"share", "share", "0.125"},
		{"needs[1].litres", "L", ""},
		{"needs[material=bark].litres", "L", ""},
		{"needs[0].pounds", "L", ""},
		{"needs[0].material", "L", ""},
	} {
		var got *big.Rat
		found, err := lookUp(answer, test.path)
		if err == nil {
			got, err = number(found, test.unit)
		}
		switch {
		case test.want == "" && err == nil:
			t.Errorf("%s is %v, want an error", test.path, got)
		case test.want != "" && err != nil:
			t.Errorf("%s: %v, want %s", test.path, err, test.want)
		case test.want != "" && got.Cmp(decimal(test.want).rat) != 0:
			t.Errorf("%s is %v, want %s", test.path, got, test.want)
		}
	}
}
