package task_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
)

// covered plans one cover task over an area and returns its result.
func covered(t interface{ Fatalf(string, ...any) }, area, sheet string) *task.Mulch {
	p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": ` + area +
		`, "layer": "3 in", "material": "bark-mulch", "sheet": ` + sheet + `}]}`))
	if err != nil {
		t.Fatalf("%s with %s: %v", area, sheet, err)
	}
	return p.Tasks[0].Result.(*task.Mulch)
}

// TestSheetsOneGround: the same ground takes the same sheets however it is
// written down, and so many pieces take so many times as many.
func TestSheetsOneGround(t *testing.T) {
	const sheet = `{"size": "4 ft x 3 ft", "overlap": "6 in"}`
	for _, tt := range []struct {
		why, area string
		want      int64
		exact     bool
	}{
		{"a rectangle", `"24 ft x 6 ft"`, 20, true},
		{"the other way round", `"6 ft x 24 ft"`, 20, true},
		{"a strip", `{"strip": {"along": ["24 ft"], "width": "6 ft"}}`, 20, true},
		{"along its edge", `{"strip": {"along": ["24 ft"], "width": "6 ft", "edge": "outer"}}`, 20, true},
		{"two runs in one line", `{"strip": {"along": ["14 ft", "10 ft"], "width": "6 ft", "corners": 0}}`, 20, true},
		{"three of them", `{"rectangle": "24 ft x 6 ft", "count": 3}`, 60, true},
		{"three strips", `{"strip": {"along": ["24 ft"], "width": "6 ft"}, "count": 3}`, 60, true},
		{"round a corner", `{"strip": {"along": ["14 ft", "10 ft"], "width": "6 ft"}}`, 20, false},
		{"round a corner, along the outer edge",
			`{"strip": {"along": ["18 ft", "12 ft"], "width": "6 ft", "edge": "outer"}}`, 20, false},
		{"with a gate", `{"strip": {"along": ["28 ft"], "width": "6 ft", "gaps": ["4 ft"]}}`, 20, false},
		{"a plain area", `"144 sq ft"`, 17, false}, // 144 / 8.75
		{"more ground beside it", `{"rectangle": "24 ft x 6 ft", "plus": ["24 ft x 6 ft"]}`, 33, false},
	} {
		if m := covered(t, tt.area, sheet); m.Sheets != tt.want || m.Exact != tt.exact {
			t.Errorf("%s: %d sheets, exact is %t; want %d and %t", tt.why, m.Sheets, m.Exact, tt.want, tt.exact)
		}
	}
}

// TestSheetsSayAbout: a program can tell a count from an estimate by a key of
// its own.
func TestSheetsSayAbout(t *testing.T) {
	for area, about := range map[string]bool{`"24 ft x 6 ft"`: false, `"circle 14 ft"`: true} {
		p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": ` + area +
			`, "layer": "3 in", "material": "bark-mulch", "sheet": {"size": "4 ft x 3 ft"}}]}`))
		if err != nil {
			t.Fatal(err)
		}
		var plan struct {
			Tasks []struct {
				Cover struct {
					Sheets int64
					About  *bool `json:"sheets_about"`
				}
			}
		}
		if err := json.Unmarshal(report.Plan(p), &plan); err != nil {
			t.Fatal(err)
		}
		c := plan.Tasks[0].Cover
		if c.Sheets == 0 || c.About == nil || *c.About != about {
			t.Errorf("%s: %d sheets, about is %v, want %t", area, c.Sheets, c.About, about)
		}
	}
}

// TestSheetsLaid lays the sheets one by one and looks at every square of the
// ground. In whole squares: as many rows as are counted leave none bare, and one
// fewer, or one sheet fewer in each, leaves some.
func TestSheetsLaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string, most int) int { return rapid.IntRange(1, most).Draw(t, name) }
		long, wide, l, w := side("length", 60), side("width", 40), side("sheet length", 15), side("sheet width", 15)
		lap := rapid.IntRange(0, min(l, w)-1).Draw(t, "overlap")
		n := rapid.IntRange(1, 4).Draw(t, "count")
		want := n * min(laid(long, wide, l, w, lap), laid(long, wide, w, l, lap))
		sheet := fmt.Sprintf(`{"size": "%d in x %d in", "overlap": "%d in"}`, l, w, lap)
		for _, area := range []string{
			fmt.Sprintf(`{"rectangle": "%d in x %d in", "count": %d}`, long, wide, n),
			fmt.Sprintf(`{"strip": {"along": ["%d in"], "width": "%d in"}, "count": %d}`, long, wide, n),
			fmt.Sprintf(`{"strip": {"along": ["%d in"], "width": "%d in"}, "count": %d}`, wide, long, n),
		} {
			if m := covered(t, area, sheet); m.Sheets != int64(want) || !m.Exact {
				t.Fatalf("%s with %s takes %d sheets, exact is %t; laid out they are %d", area, sheet, m.Sheets, m.Exact, want)
			}
		}
	})
}

// laid lays sheets of l by w in rows until the ground is covered, and counts
// them. Each lies over its neighbour by lap, and over the edge where it must.
func laid(long, wide, l, w, lap int) int {
	bare := make([]bool, long*wide)
	for i := range bare {
		bare[i] = true
	}
	left, sheets := len(bare), 0
	for y := 0; left > 0; y += w - lap {
		for x := 0; x == 0 || anyBare(bare, long, wide, x, y, w); x += l - lap {
			sheets++
			for i := x; i < min(x+l, long); i++ {
				for j := y; j < min(y+w, wide); j++ {
					if bare[j*long+i] {
						bare[j*long+i] = false
						left--
					}
				}
			}
		}
	}
	return sheets
}

// anyBare reports whether the row of sheets at y has bare ground from x on.
func anyBare(bare []bool, long, wide, x, y, w int) bool {
	for i := x; i < long; i++ {
		for j := y; j < min(y+w, wide); j++ {
			if bare[j*long+i] {
				return true
			}
		}
	}
	return false
}
