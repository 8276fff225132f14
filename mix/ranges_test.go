package mix_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/report"
	"example.org/barrow/units"
)

// planRead is a part of the plan's document.
type planRead struct {
	Tasks []struct {
		Allowances []struct{ Code, Share, Low, High string }
		Bed        struct {
			Rise    float64    `json:"rise_mm"`
			Fresh   [2]float64 `json:"rise_fresh_range_mm"`
			Settled [2]float64 `json:"rise_settled_range_mm"`
		}
	}
}

func planDocument(t *testing.T, job string) (p *mix.Plan, doc planRead) {
	t.Helper()
	p, err := mix.PlanDocument([]byte(job))
	require.NoError(t, err, job)
	require.NoError(t, json.Unmarshal(report.Plan(p), &doc))
	return p, doc
}

// TestSettleRange: Verhagen's 105 to 155 % of the delivered density are a loss of 1 - 1/1.05
// to 1 - 1/1.55, and the plan takes all of it in. A share of the job's own has no range.
func TestSettleRange(t *testing.T) {
	fill := `{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [{"count": 10, "holds": "1 L"}]SETTLE}]}`
	p, doc := planDocument(t, strings.Replace(fill, "SETTLE", "", 1))
	settle := doc.Tasks[0].Allowances[0]
	low, err := units.ParseRatio(settle.Low)
	require.NoError(t, err)
	high, err := units.ParseRatio(settle.High)
	require.NoError(t, err)
	if settle.Code != "settle" || settle.Share != "10%" || low.Float() > 1-1/1.05 || high.Float() < 1-1/1.55 {
		t.Errorf("%+v, want 10%% in a range that takes in %.4f to %.4f", settle, 1-1/1.05, 1-1/1.55)
	}
	if loss := doc.Tasks[0].Allowances[1]; loss.Code != "blend-loss" || loss.Low != "5%" || loss.High != "20%" {
		t.Errorf("%+v, want a range of 5 to 20%%", loss)
	}
	if spare := doc.Tasks[0].Allowances[2]; spare.Low != "" || spare.High != "" {
		t.Errorf("%+v, want no range: the job's own", spare)
	}
	said := ""
	for s := range p.Working() {
		said += s.Step + "\n"
	}
	if want := "it may be " + settle.Low + " to " + settle.High; !strings.Contains(said, want) {
		t.Errorf("no step says %q", want)
	}
	_, doc = planDocument(t, strings.Replace(fill, "SETTLE", `, "settle": "12%"`, 1))
	if own := doc.Tasks[0].Allowances[0]; own.Share != "12%" || own.Low != "" {
		t.Errorf("%+v, want 12%% without a range", own)
	}
}

// TestSettleOdds: what is in hand covers a settling of 20 %, so it is enough as often as the
// triangle of the source is below that, by its own formula.
func TestSettleOdds(t *testing.T) {
	p, _ := planDocument(t, `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand",
		"containers": [{"count": 100, "holds": "1 L"}]}], "on_hand": {"sand": "109999 mL"},
		"offers": [{"material": "sand", "bulk": "1 L"}, {"material": "sand", "pack": "14 L", "price": "1", "least": 1}]}`)
	if len(p.Lines) != 1 || p.Lines[0].Offer.Bulk.Volume > 0 {
		t.Fatalf("want one bag: %+v", p.Lines)
	}
	low, mode, high := 0.0476, 0.1, 0.355
	below := func(loss float64) float64 {
		if loss <= mode {
			return (loss - low) * (loss - low) / ((high - low) * (mode - low))
		}
		return 1 - (high-loss)*(high-loss)/((high-low)*(high-mode))
	}
	least, most := below(1-100/(109.999+14*underBag)), below(1-100/(109.999+14*overBag))
	if got := p.Sure().Chance; got < least-0.01 || got > most+0.01 {
		t.Errorf("enough %v times, want %v to %v", got, least, most)
	}
}

// TestRise: two published beds, as dug and once they have settled. City of Everett,
// Stormwater Management Manual, Table 12.1: 6 in of soil tilled, swelling to 8.4, and 4.2 in
// of compost stand 5.3 in up, and 3.2 rolled. The same manual, option 1: 3 in into 5 in of
// soil stand about 9.5 in, settled 8.
func TestRise(t *testing.T) {
	const inch = 25.4
	for _, bed := range []struct {
		depths         string
		fresh, settled float64 // published, in inches
	}{
		{`"layer": "4.2 in", "over": "8.4 in"`, 5.3, 3.2},
		{`"layer": "4.2 in", "over": "6 in"`, 5.3, 3.2},
		{`"layer": "3 in", "over": "5 in"`, 9.5 - 5, 8 - 5},
		{`"layer": "3 in", "into": "8 in"`, 9.5 - 5, 8 - 5},
	} {
		for _, soil := range []string{"", `, "soil": "clay"`} {
			job := `{"schema": 1, "tasks": [{"kind": "amend", "area": "100 sq ft", "material": "compost", ` + bed.depths + soil + `}]}`
			_, doc := planDocument(t, job)
			b := doc.Tasks[0].Bed
			if f := bed.fresh * inch; f < b.Fresh[0] || f > b.Fresh[1] {
				t.Errorf("%s: freshly dug %v mm, published %v", job, b.Fresh, f)
			}
			if s := bed.settled * inch; s < b.Settled[0]-1e-6 || s > b.Settled[1]+1e-6 {
				t.Errorf("%s: settled %v mm, published %v", job, b.Settled, s)
			}
			if b.Rise != b.Settled[1] || b.Fresh[1] < b.Settled[1] || b.Fresh[0] < b.Settled[0] {
				t.Errorf("%s: %+v", job, b)
			}
		}
	}
}

// TestRiseWorked holds the rise against the steps of Everett's table, done here in floating
// point for every soil and for settling that the job gives, at every swell in between.
func TestRiseWorked(t *testing.T) {
	swells := map[string][2]float64{"": {0.05, 0.60}, "clay": {0.20, 0.60}, "loam": {0.10, 0.45}, "sandy": {0.05, 0.18}}
	for soil, swell := range swells {
		for _, bed := range [][2]float64{{3, 6}, {1, 12}, {4.2, 6}, {6, 2}, {0.5, 24}} {
			for _, given := range []string{"", "0%", "20%"} {
				layer, native := bed[0]*25.4, bed[1]*25.4
				loss := map[string]float64{"20%": 0.2}[given]
				least := layer * (1 - loss)
				if given == "" {
					least = layer / 1.2
				}
				fresh, settled := [2]float64{math.Inf(1), 0}, [2]float64{layer * (1 - loss), layer * (1 - loss)}
				for i := range 1001 {
					loose := native * (1 + swell[0] + (swell[1]-swell[0])*float64(i)/1000)
					fills := math.Min(0.15*loose, layer)
					fresh[0] = math.Min(fresh[0], layer+loose-native-fills)
					fresh[1] = math.Max(fresh[1], layer+loose-native)
					settled[0] = math.Max(math.Min(settled[0], least+math.Max(loose/1.2-native, 0)-fills), 0)
				}
				job := map[string]any{"schema": 1, "tasks": []any{map[string]any{"kind": "amend", "area": "10 sq m", "material": "compost",
					"layer": units.Length(layer * 1e6).String(), "over": units.Length(native * 1e6).String()}}}
				of := job["tasks"].([]any)[0].(map[string]any)
				if soil != "" {
					of["soil"] = soil
				}
				if given != "" {
					of["settle"] = given
				}
				data, err := json.Marshal(job)
				require.NoError(t, err)
				_, doc := planDocument(t, string(data))
				b := doc.Tasks[0].Bed
				for i := range 2 {
					if math.Abs(b.Fresh[i]-fresh[i]) > 0.01 || math.Abs(b.Settled[i]-settled[i]) > 0.01 {
						t.Errorf("%s: fresh %v, settled %v, want %v and %v", data, b.Fresh, b.Settled, fresh, settled)
					}
				}
			}
		}
	}
}

// TestMulchSettles: what the note says of mulch in a bed is the catalogue's range, and says
// that it is common practice.
func TestMulchSettles(t *testing.T) {
	p, _ := planDocument(t, string(buys("bark-mulch", `{"material": "bark-mulch", "pack": "2 cu ft"}`, "")))
	var note string
	for _, n := range p.Notes {
		if n.Code == "mulch.settles" {
			note = n.Text
		}
	}
	if !strings.Contains(note, "10% to 25%") || !strings.Contains(note, "common practice") {
		t.Errorf("%q", note)
	}
	for _, m := range catalog.BuiltIn().Materials {
		if m.SettleHigh != (units.Ratio{}) && m.SettleSource.Kind != "practice" {
			t.Errorf("%s settles by a %s source, %s", m.ID, m.SettleSource.Kind, m.SettleSource.Text)
		}
	}
}
