package mix_test

import (
	"bytes"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/report"
)

// FuzzHandle answers any bytes: nothing panics, and the reply is either a plan
// or problems, in sound JSON, the same every time.
func FuzzHandle(f *testing.F) {
	f.Add(mix.Sample())
	f.Add(manyTasks(5))
	for _, tt := range badJobs {
		f.Add([]byte(tt.doc))
	}
	if len(badJobs) == 0 {
		f.Fatal("no seeds")
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		out := report.Handle(doc)
		root, faults := json.Parse(out, json.Limits{Bytes: 1 << 30, Nodes: 1 << 30})
		if len(faults) > 0 {
			t.Fatalf("the reply is not JSON: %v\n%s", faults, out)
		}
		plan, problems := root.Field("needs"), root.Field("problems")
		if (plan == nil) == (problems == nil) {
			t.Fatalf("the reply is neither plan nor problems\n%s", out)
		}
		if problems != nil && len(problems.Items) == 0 {
			t.Fatalf("no plan and no problem")
		}
		for _, c := range out {
			if c < ' ' && c != '\n' {
				t.Fatalf("a control character in the reply")
			}
		}
		if !bytes.Equal(out, report.Handle(doc)) {
			t.Fatal("the reply differs from run to run")
		}
	})
}
