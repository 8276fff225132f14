package mix_test

import (
	"strings"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// TestCountsByHand: counts that rounding would have decided, each worked out by hand.
// Written again and read back, the job takes as many.
func TestCountsByHand(t *testing.T) {
	const (
		compost = `"material": "compost", "settle": "0%"}`
		cover   = `{"kind": "cover", "area": `
		fill    = `{"kind": "fill", "containers": [`
	)
	for _, tt := range []struct {
		why, task, pack, hand string
		want                  int64
	}{
		// 36,000 sq ft x 1/36 ft = 1000 cu ft
		{"a third of an inch", cover + `"36000 sq ft", "layer": "1/3 in", ` + compost, "2 cu ft", "", 500},
		// 48,600 sq ft x 7/36 ft = 9450 cu ft = 350 cu yd
		{"two and a third", cover + `"48600 sq ft", "layer": "2 1/3 in", ` + compost, "1 cu yd", "", 350},
		// 2.333 in is 2333/1000 in: 108,000 sq ft x 2.333/12 ft = 20,997 cu ft
		{"a decimal says what it says", cover + `"108000 sq ft", "layer": "2.333 in", ` + compost, "1 cu ft", "", 20_997},
		// a seventh of 2,744,000 sq ft = 392,000 sq ft, x 1/4 ft = 98,000 cu ft
		{"a seventh of an inch, by share", `{"kind": "amend", "area": "2744000 sq ft", "into": "3 in", "share": "1/7", ` + compost, "7 cu ft", "", 14_000},
		// 1/3 over: share / (1 - share) = 1/2 of 1/7 ft over 882,000 sq ft = 63,000 cu ft
		{"over soil", `{"kind": "amend", "area": "882000 sq ft", "over": "1/7 ft", "share": "1/3", ` + compost, "1 cu ft", "", 63_000},
		// corners on sixteenths: 1000/16 in x 39,000 in x 4 in = 9,750,000 cu in
		{"an outline", cover + `{"corners": [["1/16 in", "0 in"], ["62 9/16 in", "0 in"], ["62 9/16 in", "39000 in"], ["1/16 in", "39000 in"]]}, "layer": "4 in", ` + compost, "1 cu in", "", 9_750_000},
		// 3,000,000 pots of 1/3 cu in = 1,000,000 cu in
		{"many small pots", fill + `{"count": 3000000, "holds": "1/3 cu in"}], ` + compost, "100 cu in", "", 10_000},
		// (1/3 + 1 - 1/3) ft deep
		{"boxes below the rim", fill + `{"count": 1000000, "box": "1/3 ft x 1/7 ft x 1 1/3 ft", "below_rim": "1/3 ft"}], ` + compost, "1 cu ft", "", 47_619 + 1},
		// 9,000,000 packs of 1/3 cu in = 3,000,000 cu in = 250,000 sq in x 12 in
		{"very small packs", cover + `"250000 sq in", "layer": "12 in", ` + compost, "1/3 cu in", "", 9_000_000},
		// less 1/3 cu ft: 1000 cu ft is 1000/3 packs of 3 cu ft
		{"on hand", cover + `"36012 sq ft", "layer": "1/3 in", ` + compost, "1 cu ft", "1/3 cu ft", 1000},
		{"packs on hand", cover + `"72000 sq ft", "layer": "1/3 in", ` + compost, "1 cu ft", "3000000 x 1/3000 cu ft", 1000},
		// a shortfall of 1 mL is not bought for, and any more is
		{"the slack", fill + `{"count": 1, "holds": "7001 mL"}], ` + compost, "1 L", "", 7},
		{"a third over seven bags", fill + `{"count": 3, "holds": "2333 2/3 mL"}], ` + compost, "1 L", "", 7},
		{"a little over the slack", fill + `{"count": 1, "holds": "7001 1/1000000 mL"}], ` + compost, "1 L", "", 8},
		{"less than can be shown over it", fill + `{"count": 1, "holds": "7001.000000000001 mL"}], ` + compost, "1 L", "", 8},
	} {
		hand := ""
		if tt.hand != "" {
			hand = `"on_hand": {"compost": "` + tt.hand + `"}, `
		}
		doc := []byte(`{"schema": 1, ` + hand + `"tasks": [` + tt.task + `], "offers": [{"material": "compost", "pack": "` + tt.pack + `"}]}`)
		plan, err := mix.PlanDocument(doc)
		if err != nil {
			t.Errorf("%s: %v", tt.why, err)
			continue
		}
		if got := plan.Lines[0]; got.Count != tt.want || got.FewMany != [2]int64{tt.want, tt.want} {
			t.Errorf("%s: %d packs (%v), want %d", tt.why, got.Count, got.FewMany, tt.want)
		}
		job, err := mix.Decode(doc)
		if err != nil {
			t.Fatal(err)
		}
		again, err := mix.Encode(job)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := mix.PlanDocument(again); err != nil || back.Lines[0].Count != tt.want {
			t.Errorf("%s: written again it takes %v, want %d\n%s", tt.why, back.Lines[0].Count, tt.want, again)
		}
	}
}

// TestEncodeKeepsFractions: a third of an inch is written as that and reads back as
// that; what a whole count holds is written as before.
func TestEncodeKeepsFractions(t *testing.T) {
	doc := `{"schema": 1, "on_hand": {"peat": "1/7 cu ft"}, "tasks": [
		{"kind": "cover", "material": "peat", "layer": "1/3 in", "area": {"strip": {"along": ["10 ft", "1/7 ft"], "width": "1/7 yd"}, "less": ["1/7 sq in"]}},
		{"kind": "amend", "material": "peat", "layer": "3 in", "into": "1/7 m", "area": {"rectangle": "1/3 in x 20 ft", "count": 2,
			"plus": [{"corners": [["1/3 in", "0 in"], ["-1/7 ft", "1 ft"], ["4 ft", "4 ft"]]}]}},
		{"kind": "fill", "mix": "potting", "containers": [{"count": 2, "box": "1/7 ft x 4 in x 5 in", "below_rim": "1/7 in"}]}],
		"containers": [{"id": "own", "holds": "1/13 gal"}],
		"offers": [{"material": "peat", "pack": "1/7 cu ft", "opens_to": "1/7 cu yd"}]}`
	job, err := mix.Decode([]byte(doc))
	if err != nil {
		t.Fatal(err)
	}
	again, err := mix.Encode(job)
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{`"1/7 cu ft"`, `"layer": "1/3 in"`, `"1/7 ft"`, `"width": "1/7 yd"`, `"1/7 sq in"`, `"into": "1/7 m"`,
		`"1/3 in x 20 ft"`, `"-1/7 ft"`, `"1/7 ft x 4 in x 5 in"`, `"1/7 in"`, `"holds": "1/13 gal"`, `"1/7 cu ft"`, `"opens_to": "1/7 cu yd"`,
		`"layer": "76.2 mm"`, `"3048 mm"`} {
		if !strings.Contains(strings.ReplaceAll(string(again), `":"`, `": "`), text) {
			t.Errorf("%s is not in what is written:\n%s", text, again)
		}
	}
}

// TestStaleText: once a program sets another quantity, what was typed does not count.
func TestStaleText(t *testing.T) {
	job, err := mix.Decode([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "36000 sq ft", "layer": "1/3 in", "material": "compost"}],
		"offers": [{"material": "compost", "pack": "2 cu ft"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	job.Tasks[0].Work.(*task.Cover).Layer = units.Inch
	for _, j := range []*mix.Job{job, job.Clone()} {
		plan, err := j.Plan()
		if err != nil {
			t.Fatal(err)
		}
		if got := plan.Lines[0].Count; got != 1500 {
			t.Errorf("an inch over 36,000 sq ft takes %d bags of 2 cu ft, want 1500", got)
		}
	}
	if data, err := mix.Encode(job); err != nil || !strings.Contains(string(data), `"25.4 mm"`) {
		t.Errorf("%s, %v: want a layer of 25.4 mm", data, err)
	}
}

// TestReachExact: a stock of so many pots fills so many, to the last, and one that is
// more than a millilitre short fills one fewer.
func TestReachExact(t *testing.T) {
	for _, tt := range []struct {
		why, hand, pot, more string
		want                 int64
	}{
		{"pots of a third", "100 1/3 gal", `"holds": "1/3 gal"`, `"settle": "0%"`, 301},
		{"very many", "3000000 x 1/3 cu in", `"holds": "1/3 cu in"`, `"settle": "0%"`, 3_000_000},
		{"boxes", "100 x 1/3 cu ft", `"box": "1/3 ft x 1 ft x 1 1/7 ft", "below_rim": "1/7 ft"`, `"settle": "0%"`, 100},
		{"a millilitre short", "6999 mL", `"holds": "1 L"`, `"settle": "0%"`, 7},
		{"a little more than that", "6998.999999999 mL", `"holds": "1 L"`, `"settle": "0%"`, 6},
		{"with a seventh lost", "700 gal", `"holds": "1/3 gal"`, `"settle": "1/7"`, 1800},
		{"with a third to spare", "400 gal", `"holds": "1/3 gal"`, `"settle": "0%", "spare": "1/3"`, 900},
	} {
		job, err := mix.Decode([]byte(`{"schema": 1, "on_hand": {"topsoil": "` + tt.hand + `"}, "tasks": [{"kind": "fill", ` + tt.more +
			`, "material": "topsoil", "containers": [{"count": 1, ` + tt.pot + `}]}]}`))
		if err != nil {
			t.Fatal(err)
		}
		reach, err := job.Reach()
		if err != nil {
			t.Fatal(err)
		}
		if got := reach[0].Pots[0]; got.Count != tt.want || got.Range != [2]int64{tt.want, tt.want} {
			t.Errorf("%s: fills %d (%v), want %d", tt.why, got.Count, got.Range, tt.want)
		}
	}
}
