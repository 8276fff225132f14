package mix

import (
	"fmt"
	"strings"
	"testing"

	"example.org/barrow/units"
)

// TestChoose: the order of preference among offers of one material, a mulch of
// 10 cu ft.
func TestChoose(t *testing.T) {
	for _, tt := range []struct {
		why, offers, want string
	}{
		{"the cheaper in all", `{"pack": "2 cu ft", "price": "4.00"}, {"pack": "3 cu ft", "price": "4.50"}`, "4 of 3 cu ft for 18.00, 2 cu ft over"},
		{"of one cost, the less left over", `{"pack": "3 cu ft", "price": "5.00"}, {"pack": "2 1/2 cu ft", "price": "5.00"}`, "4 of 2 1/2 cu ft for 20.00, 0 cu in over"},
		{"of one cost and left over, the fewer", `{"pack": "1 cu ft", "price": "1.00"}, {"pack": "2 cu ft", "price": "2.00"}`, "5 of 2 cu ft for 10.00, 0 cu in over"},
		{"of equals, the first", `{"pack": "2 cu ft", "price": "2.00"}, {"bulk": "2 cu ft", "price": "2.00"}`, "5 of 2 cu ft for 10.00, 0 cu in over"},
		{"a price before none", `{"pack": "2 cu ft"}, {"pack": "3 cu ft", "price": "9.00"}`, "4 of 3 cu ft for 36.00, 2 cu ft over"},
		{"free is a price", `{"pack": "2 cu ft", "price": "1.00"}, {"bulk": "1 cu yd", "price": "0"}`, "1 of 1 cu yd for 0.00, 17 cu ft over"},
		{"what is in stock", `{"pack": "2 cu ft", "price": "1.00", "stock": 4}, {"pack": "2 cu ft", "price": "3.00", "stock": 5}`, "5 of 2 cu ft for 15.00, 0 cu in over"},
	} {
		offers := strings.ReplaceAll(tt.offers, "{", `{"material": "bark-mulch", `)
		p, err := PlanDocument([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"}], "offers": [` + offers + `]}`))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		l := &p.Order[0]
		if got := fmt.Sprintf("%d of %s for %s, %s over", l.Count, l.Offer.Size().Text, l.Cost, units.US.Volume(l.Left)); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.why, got, tt.want)
		}
	}
}

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
		p, err := PlanDocument([]byte(taskJob(`"kind": "cover", "area": ` + tt.area + `, "layer": "3 in", "material": "bark-mulch", "sheet": ` + tt.sheet)))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		got := ""
		for _, f := range p.Tasks[0].Facts {
			if strings.HasPrefix(f.Label, "Sheets") {
				got = f.Figure
			}
		}
		if got != tt.want {
			t.Errorf("%s: %s sheets, want %s", tt.why, got, tt.want)
		}
	}
}
