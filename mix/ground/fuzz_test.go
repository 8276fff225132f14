package ground

import (
	"testing"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// FuzzParseArea reads any text as an area: nothing panics, and what can be
// measured is more than zero and within its limit.
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
		if err != nil && len(doc.ProblemsIn(err)) == 0 {
			t.Errorf("ParseArea(%q): %v carries no problem", s, err)
		}
	})
}
