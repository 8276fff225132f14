package mix_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// sameJob compares jobs field by field, also what is not exported; an empty list
// is none.
var sameJob = cmp.Options{
	cmpopts.EquateEmpty(),
	cmp.AllowUnexported(mix.Job{}, yard.Offer{}, yard.OnHand{}, catalog.Mix{}, doc.AsTyped{}, units.Range{}, units.Fixed{}),
	cmp.Comparer(func(a, b units.Ratio) bool { return a == b }),
}

// roundTrip encodes a job and reads it back.
func roundTrip(t rapid.TB, j *mix.Job) ([]byte, *mix.Job) {
	t.Helper()
	data, err := mix.Encode(j)
	if err != nil {
		t.Fatalf("Encode: %v", err)
	}
	back, err := mix.Decode(data)
	if err != nil {
		t.Fatalf("Decode: %v\n%s", err, data)
	}
	return data, back
}

// TestEncodeDocuments: every sample job is written as a document that says the
// same: read back it is equal, and its plan is the same bytes.
func TestEncodeDocuments(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/good-*.json")
	if err != nil || len(files) < 9 {
		t.Fatalf("%d jobs, %v", len(files), err)
	}
	docs := [][]byte{mix.Sample()}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		docs = append(docs, data)
	}
	for i, d := range docs {
		j, err := mix.Decode(d)
		if err != nil {
			t.Fatal(err)
		}
		data, back := roundTrip(t, j)
		if diff := cmp.Diff(j, back, sameJob); diff != "" {
			t.Errorf("job %d (-read +written and read)\n%s\n%s", i, diff, data)
		}
		if diff := cmp.Diff(string(report.Handle(d)), string(report.Handle(data))); diff != "" {
			t.Errorf("the plan of job %d (-of the document +of what Encode wrote)\n%s", i, diff)
		}
	}
}

// TestEncodeRefuses: what no document can hold is a problem, not a document.
func TestEncodeRefuses(t *testing.T) {
	for why, j := range map[string]*mix.Job{
		"a name of two lines": {Name: "a\nb"},
		"an id with a space":  {Materials: []catalog.Material{{ID: "my bark"}}},
		"a negative count":    {Tasks: []task.Task{{Work: &task.Backfill{Holes: -3}}}},
		"work that is nil":    {Tasks: []task.Task{{Work: (*task.Cover)(nil)}}},
		"two stocks of one":   {OnHand: []yard.OnHand{{Material: "peat", Volume: 1}, {Material: "peat", Volume: 2}}},
	} {
		if data, err := mix.Encode(j); err == nil {
			t.Errorf("%s: %s", why, data)
		}
	}
	if data, err := mix.Encode(nil); err != nil || string(data) != "{\n  \"schema\": 1\n}\n" {
		t.Errorf("Encode(nil) = %s, %v", data, err)
	}
}
