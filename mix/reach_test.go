package mix_test

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// TestReachAndPlan: what reach says can be filled, a plan of that many takes no
// more than there is, and a plan of one more does (but for the slack, a
// millilitre in place, and a nanolitre a part).
func TestReachAndPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		have := map[string]units.Volume{}
		for _, m := range []string{"bark-fines", "peat", "perlite"} {
			have[m] = units.Volume(rapid.Int64Range(int64(units.Litre), int64(1000*units.Litre)).Draw(t, m))
		}
		mixID := rapid.SampledFrom([]string{"potting", "rooting", "bark-peat", "twice"}).Draw(t, "mix")
		size := rapid.SampledFrom([]string{`"size": "#1"`, `"size": "tray-72"`, `"holds": "2.8 L"`,
			`"top": "8 in", "bottom": "6 in", "height": "7 in"`}).Draw(t, "size")
		doc := func(count int64) []byte {
			return fmt.Appendf(nil, `{"schema": 1,
				"mixes": [{"id": "twice", "parts": {"potting": 2, "peat": 1}, "blend_loss": "5%%"}],
				"tasks": [{"kind": "fill", "mix": %q, "containers": [{"count": %d, %s}]}],
				"on_hand": {"bark-fines": %q, "peat": %q, "perlite": %q}}`,
				mixID, count, size, have["bark-fines"], have["peat"], have["perlite"])
		}
		job, err := mix.Decode(doc(1))
		if err != nil {
			t.Fatal(err)
		}
		list, err := job.Reach()
		if err != nil {
			t.Fatal(err)
		}
		n := list[0].Pots[0].Count
		fits := func(count int64, slack units.Volume) bool {
			p, err := mix.PlanDocument(doc(count))
			if err != nil {
				t.Fatal(err)
			}
			for _, need := range p.Needs {
				if need.Takes.Plan > have[need.Material.ID]+slack {
					return false
				}
			}
			return true
		}
		if n > 0 && !fits(n, 2*units.Millilitre) {
			t.Fatalf("%d are said to be filled, and take more than there is", n)
		}
		if fits(n+1, -2*units.Millilitre) {
			t.Fatalf("%d are said to be filled, and one more is, too", n)
		}
	})
}

// TestReachOfALayer: a cubic yard over 240 sq ft is 27/240 ft deep.
func TestReachOfALayer(t *testing.T) {
	job, err := mix.Decode([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "60 ft x 4 ft", ` +
		`"layer": "1 in", "material": "bark-mulch"}], "on_hand": {"bark-mulch": "1 cu yd"}}`))
	if err != nil {
		t.Fatal(err)
	}
	list, err := job.Reach()
	if err != nil || list[0].Depth != 34_290_000 { // 1.35 in
		t.Errorf("%v, %v, want 34.29 mm", list[0].Depth, err)
	}
}

// TestReachNeedsStock: without anything on hand there is a problem, not a zero.
func TestReachNeedsStock(t *testing.T) {
	job, err := mix.Decode([]byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "60 ft x 4 ft", ` +
		`"layer": "1 in", "material": "bark-mulch"}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := job.Reach(); len(doc.ProblemsIn(err)) != 1 {
		t.Errorf("got %v", err)
	}
}

func ExampleJob_Reach() {
	job, _ := mix.Decode([]byte(`{"schema": 1,
		"tasks": [{"kind": "fill", "mix": "rooting", "containers": [{"count": 1, "holds": "2 L"}], "settle": "0%", "blend_loss": "0%"}],
		"on_hand": {"peat": "1 x 3.8 cu ft", "perlite": "60 L"}}`))
	list, _ := job.Reach()
	r := list[0]
	fmt.Println(r.Pots[0].Count, r.Pots[0].Label+"s;", r.Limit.Name, "runs out first")
	// Output: 60 2 L pots; Perlite runs out first
}
