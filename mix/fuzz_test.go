package mix

import (
	"bytes"
	"testing"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// FuzzParseArea reads any text as an area: nothing panics, and what measures
// is more than nothing and within its bound.
func FuzzParseArea(f *testing.F) {
	for _, tt := range areas {
		f.Add(tt.in)
	}
	for _, tt := range badAreas {
		f.Add(tt.in)
	}
	if len(areas)*len(badAreas) == 0 {
		f.Fatal("no seeds")
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := ParseArea(s)
		if err != nil {
			if _, ok := err.(*units.Error); !ok {
				t.Fatalf("ParseArea(%q): %T", s, err)
			}
			return
		}
		got, err := a.Measure()
		if err == nil && (got <= 0 || got > units.MaxArea) {
			t.Errorf("ParseArea(%q) measures %d", s, got)
		}
		if err != nil && len(Problems(err)) == 0 {
			t.Errorf("ParseArea(%q): %v carries no problem", s, err)
		}
	})
}

// FuzzHandle answers any bytes: nothing panics, and the reply is either a plan
// or problems, in sound JSON, the same every time.
func FuzzHandle(f *testing.F) {
	f.Add(Sample())
	f.Add(manyTasks(5))
	for _, tt := range badJobs {
		f.Add([]byte(tt.doc))
	}
	if len(badJobs) == 0 {
		f.Fatal("no seeds")
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		out := Handle(doc)
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
		if !bytes.Equal(out, Handle(doc)) {
			t.Fatal("the reply differs from run to run")
		}
	})
}
