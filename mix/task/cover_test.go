package task_test

import (
	"testing"

	"example.org/barrow/mix"
)

// TestSheets: sheets are laid in rows over a rectangle, the better way round,
// and counted by hand: 24 ft with sheets of 4 ft lapping 6 in takes 1 + 20/3.5,
// so 7 along, by 1 + 3/2.5, so 3 across, is 21; turned round, 1 + 21/2.5, so 10,
// by 1 + 2/3.5, so 2, is 20.
func TestSheets(t *testing.T) {
	for _, tt := range []struct {
		why, area, sheet string
		want             string
	}{
		{"in rows", `"24 ft x 6 ft"`, `{"size": "4 ft x 3 ft", "overlap": "6 in"}`, "20"},
		{"turned round is better", `"6 ft x 4 ft"`, `{"size": "3 ft x 4 ft"}`, "2"},
		{"one covers it", `"3 ft x 4 ft"`, `{"size": "4 ft x 3 ft", "overlap": "1 ft"}`, "1"},
		{"from the area of a round bed", `"circle 14 ft"`, `{"size": "4 ft x 3 ft", "overlap": "6 in"}`, "18"}, // 153.94 / 8.75
		{"from the area when stones are left out", `{"rectangle": "10 ft x 10 ft", "less": [{"area": "30 sq ft"}]}`, `{"size": "1 ft x 7 ft"}`, "10"},
	} {
		p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": ` + tt.area +
			`, "layer": "3 in", "material": "bark-mulch", "sheet": ` + tt.sheet + `}]}`))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		got := ""
		for _, f := range p.Tasks[0].Facts {
			if f.Code == "sheets" {
				got = f.Figure
			}
		}
		if got != tt.want {
			t.Errorf("%s: %s sheets, want %s", tt.why, got, tt.want)
		}
	}
}
