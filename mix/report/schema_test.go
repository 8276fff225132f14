package report_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.org/barrow/mix"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

var update = flag.Bool("update", false, "write the schemas and the page's types again")

// current holds a file to what it is written from.
func current(t *testing.T, file string, want []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s is out of date: run with -update (-shapes +file)\n%s", file, diff)
	}
}

func schemaFile(name string) string {
	return "../../testdata/schema/" + strings.ToLower(name) + ".schema.json"
}

// TestSchemas and TestTypes hold the written schemas, and the page's types, to the
// shapes.
func TestSchemas(t *testing.T) {
	for _, name := range report.Shapes {
		current(t, schemaFile(name), report.Schema(name))
	}
}

func TestTypes(t *testing.T) { current(t, "../../web/plan.d.ts", report.Types()) }

// compile reads a schema with a validator that knows nothing of this project.
func compile(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(report.Schema(name)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(name, doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// valid holds a document to a schema.
func valid(t *testing.T, schema *jsonschema.Schema, what string, document []byte) {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(document))
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	if err := schema.Validate(v); err != nil {
		t.Errorf("%s: %v", what, err)
	}
}

// jobs are the sample and the documents of testdata.
func jobs(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	if err != nil || len(files) < 15 {
		t.Fatalf("%d jobs, %v", len(files), err)
	}
	all := map[string][]byte{"sample": mix.Sample(), "delivery": []byte(delivery)}
	for _, f := range files {
		if all[filepath.Base(f)], err = os.ReadFile(f); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// TestDocumentsAreValid: every document that the library writes, in English and in
// Spanish, is what its schema says; and every field that a schema has stands in one
// of them, so that none is left from before.
func TestDocumentsAreValid(t *testing.T) {
	schemas := map[string]*jsonschema.Schema{}
	met := map[string]map[string]bool{}
	for _, name := range report.Shapes {
		schemas[name] = compile(t, name)
		met[name] = map[string]bool{}
	}
	check := func(name, what string, document []byte) {
		t.Helper()
		valid(t, schemas[name], name+" of "+what, document)
		root, faults := json.Parse(document, json.Limits{Bytes: 1 << 30, Nodes: 1 << 30})
		if len(faults) > 0 {
			t.Fatalf("%s: %v", what, faults)
		}
		meet(&root, report.Shape(name), met[name])
	}
	file, err := os.ReadFile("../../web/text/es.json")
	if err != nil {
		t.Fatal(err)
	}
	spanish, err := lang.Parse(file)
	if err != nil {
		t.Fatal(err)
	}
	for what, job := range jobs(t) {
		for _, l := range []*lang.Language{nil, spanish.Comma(true)} {
			p, err := mix.PlanDocument(job, func(j *mix.Job) { j.Language = l })
			if err != nil {
				check("Problems", what, report.Problems(err, l))
				continue
			}
			check("Plan", what, report.Plan(p))
			check("FullPlan", what, report.Full(p))
			check("Changes", what, report.Changes(nil, p))
			check("Changes", what, report.Changes(p, p))
			check("Reach", what, reachOf(t, job, l))
		}
	}
	for _, l := range []*lang.Language{nil, spanish.Comma(true)} {
		var plans []*mix.Plan
		for _, job := range []string{delivery, changed} {
			p, err := mix.PlanDocument([]byte(job), func(j *mix.Job) { j.Language = l })
			if err != nil {
				t.Fatal(err)
			}
			plans = append(plans, p)
		}
		check("Plan", "changed", report.Plan(plans[1]))
		check("FullPlan", "changed", report.Full(plans[1]))
		check("Changes", "changed", report.Changes(plans[0], plans[1]))
	}
	check("Reach", "nothing", report.Reach(&mix.Reach{}))
	for _, name := range report.Shapes {
		for _, f := range fieldsOf(report.Shape(name)) {
			if !met[name][f] && !unmet[f] {
				t.Errorf("%s: no document has %s", name, f)
			}
		}
	}
}

// meet notes the fields of a document that stand in it, as "Line.count".
func meet(n *json.Node, s *json.Shape, met map[string]bool) {
	switch {
	case s.Of != nil:
		for i := range n.Items {
			meet(&n.Items[i], s.Of, met)
		}
	case s.Name != "":
		for _, f := range s.All() {
			if in := n.Field(f.Name); in != nil {
				met[s.Name+"."+f.Name] = true
				meet(in, f.Shape, met)
			}
		}
	}
}

// fieldsOf lists the fields of a shape and of those inside it, as meet names them.
func fieldsOf(s *json.Shape) (list []string) {
	seen := map[string]bool{}
	var walk func(s *json.Shape)
	walk = func(s *json.Shape) {
		if s.Of != nil {
			walk(s.Of)
		}
		if s.Name == "" || seen[s.Name] {
			return
		}
		seen[s.Name] = true
		for _, f := range s.All() {
			list = append(list, s.Name+"."+f.Name)
			walk(f.Shape)
		}
	}
	walk(s)
	return list
}

// delivery is a job with what the sample jobs have not: tax, a deposit, and a yard
// that brings what costs more to fetch.
const delivery = `{"schema": 1, "tax": "7%", "haul": {"room": "1 cu ft", "trip_cost": "3.00"},
	"delivery": {"fee": "20.00", "capacity": "1 cu yd"},
	"tasks": [{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"}],
	"offers": [{"material": "bark-mulch", "bulk": "1 cu ft", "price": "1.00", "deposit": "2.00", "deliver": true}]}`

// changed is the same job at the yard: another price, and offers that it did not have,
// of which one is scarce.
const changed = `{"schema": 1, "tax": "7%", "haul": {"room": "1 cu ft", "trip_cost": "3.00"},
	"delivery": {"fee": "20.00", "capacity": "1 cu yd"},
	"yard": {"bought": [{"offer": "bark-mulch:1 cu ft bulk", "count": 1}]},
	"tasks": [{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"}],
	"offers": [{"material": "bark-mulch", "bulk": "1 cu ft", "price": "1.50", "deposit": "2.00", "deliver": true},
		{"material": "bark-mulch", "bulk": "1/2 cu ft", "price": "9.00", "stock": 2},
		{"material": "bark-mulch", "bulk": "3/4 cu ft", "price": "9.00"}]}`

// unmet are fields that no document here has: it takes an order that the search
// cannot prove in its time.
var unmet = map[string]bool{
	"Plan.none_below": true, "Plan.none_below_shown": true,
	"FullPlan.none_below": true, "FullPlan.none_below_shown": true,
	"Alternative.none_below": true, "Alternative.none_below_shown": true,
}

// reachOf is how far the stock of a job goes: of what it has, or else of a yard of
// everything.
func reachOf(t *testing.T, job []byte, l *lang.Language) []byte {
	t.Helper()
	j, err := mix.Decode(job)
	if err != nil {
		t.Fatal(err)
	}
	j.Language = l
	if len(j.OnHand) == 0 {
		p, err := j.Plan()
		if err != nil {
			t.Fatal(err)
		}
		for i := range p.Needs {
			j.OnHand = append(j.OnHand, yard.OnHand{Material: p.Needs[i].Material.ID, Volume: units.CubicYard})
		}
		if len(p.Needs) == 0 { // a stock of what no task takes
			j.OnHand = []yard.OnHand{{Material: "sand", Volume: units.CubicYard}}
		}
	}
	list, err := j.Reach()
	if err != nil {
		t.Fatal(err)
	}
	if len(list) == 0 {
		return []byte(`{"schema": 1, "filling": "", "loose_litres": 0, "net_litres": 0, "limit": "", ` +
			`"left": [], "containers": [], "one_more": []}`)
	}
	return report.Reach(&list[0])
}
