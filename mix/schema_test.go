package mix_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"example.org/barrow/mix"
)

// TestSchema holds the written schema of jobs to the tables of fields.
func TestSchema(t *testing.T) {
	const file = "../testdata/schema/job.schema.json"
	if *update {
		if err := os.WriteFile(file, mix.Schema(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(mix.Schema()), string(got)); diff != "" {
		t.Errorf("%s is out of date: run with -update (-tables +file)\n%s", file, diff)
	}
}

// jobSchema reads the schema with a validator that knows nothing of this project.
func jobSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(mix.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("job.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("job.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// seen are the bad jobs of testdata in which a schema sees something wrong: a field
// that there is not, a value of another kind, a word or a count that is none. In the
// others what is wrong is in the text of a quantity, or in what does not go together.
var seen = map[string]bool{
	"bad-many.json": true, "bad-quantities.json": true, "bad-words.json": true,
	"bad-mixes.json": false, "bad-shapes.json": false,
}

// TestJobsBySchema: every good job is valid; a bad one is not, where a schema can
// see what is wrong with it.
func TestJobsBySchema(t *testing.T) {
	schema := jobSchema(t)
	check := func(name string, job []byte, want bool) {
		t.Helper()
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(job))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := schema.Validate(v); (err == nil) != want {
			t.Errorf("%s: valid %v, want %v: %v", name, err == nil, want, err)
		}
	}
	check("the sample", mix.Sample(), true)
	files, err := filepath.Glob("../testdata/jobs/*.json")
	if err != nil || len(files) < 15 {
		t.Fatalf("%d jobs, %v", len(files), err)
	}
	for _, f := range files {
		job, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(f)
		sees, known := seen[name]
		if bad := strings.HasPrefix(name, "bad-"); bad && !known {
			t.Errorf("%s: say in seen whether a schema sees what is wrong", name)
		}
		check(name, job, !sees)
	}
	for _, tt := range []struct{ why, job string }{
		{"no tasks", `{"schema": 1}`},
		{"no version", `{"tasks": []}`},
		{"a field that there is not", `{"schema": 1, "taks": [], "tasks": []}`},
		{"no kind", `{"schema": 1, "tasks": [{"area": "1 sq m", "layer": "3 in", "material": "bark-mulch"}]}`},
		{"no such kind", `{"schema": 1, "tasks": [{"kind": "mulch"}]}`},
		{"another kind's field", `{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "into": "9 in", "material": "bark-mulch"}]}`},
		{"a bare number for a depth", `{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": 3, "material": "bark-mulch"}]}`},
		{"a count in quotes", `{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [{"count": "64", "size": "#1"}]}]}`},
		{"a count of none", `{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [{"count": 0, "size": "#1"}]}]}`},
		{"half a pot", `{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [{"count": 1.5, "size": "#1"}]}]}`},
		{"no such soil", `{"schema": 1, "tasks": [{"kind": "amend", "area": "1 sq m", "layer": "3 in", "into": "9 in", "material": "peat", "soil": "silt"}]}`},
		{"a field of an area in an area", `{"schema": 1, "tasks": [{"kind": "cover", "area": {"rectangle": "4 m x 3 m", "less": [{"cirle": "1 m"}]}, "layer": "3 in", "material": "peat"}]}`},
		{"a corner of a number", `{"schema": 1, "tasks": [{"kind": "cover", "area": {"corners": [[0, 0], [1, 0], [1, 1]]}, "layer": "3 in", "material": "peat"}]}`},
		{"an id with a space", `{"schema": 1, "tasks": [], "materials": [{"id": "my bark"}]}`},
		{"a trait that there is not", `{"schema": 1, "tasks": [], "materials": [{"id": "my-bark", "traits": ["dusty"]}]}`},
		{"yes for true", `{"schema": 1, "tasks": [], "offers": [{"material": "peat", "pack": "2 cu ft", "deliver": "yes"}]}`},
	} {
		check(tt.why, []byte(tt.job), false)
		if p, err := mix.PlanDocument([]byte(tt.job)); p != nil || err == nil {
			t.Errorf("%s: the library takes it", tt.why)
		}
	}
}
