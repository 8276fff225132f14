package yard

import (
	"strings"
	"testing"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// TestBalesByMeasure: a material that comes in bales of both sorts lists those of
// the reader's units; one that comes in one sort lists it to everybody. All are
// counted by the least that they open to.
func TestBalesByMeasure(t *testing.T) {
	s := catalog.Plain(nil)
	for _, test := range []struct {
		material string
		measure  units.Measure
		want     string
	}{
		{"peat", units.US, "1 cu ft 2.2 cu ft 3 cu ft 3.8 cu ft 5.5 cu ft"},
		{"peat", units.Metric, "107 L 156 L 250 L"},
		{"peat", units.Both, "1 cu ft 2.2 cu ft 3 cu ft 3.8 cu ft 5.5 cu ft 107 L 156 L 250 L"},
		{"coir", units.US, "9.9 L 1.3 L"},
		{"straw", units.Metric, "5.2 cu ft"},
	} {
		index, ok := s.Index(test.material)
		if !ok {
			t.Fatalf("no %s", test.material)
		}
		need := Need{Material: s.Material(index), Buy: units.Exactly(321 * units.Litre)}
		var sizes []string
		for _, p := range need.Packs(test.measure) {
			if p.Bale {
				sizes = append(sizes, p.Size.Text)
			}
			if p.Size.Text == "107 L" && p.Count != 2 { // 2 x 160.5 L
				t.Errorf("321 L of peat is %d bales of 107 L, want 2", p.Count)
			}
		}
		if got := strings.Join(sizes, " "); got != test.want {
			t.Errorf("bales of %s in %v: %s, want %s", test.material, test.measure, got, test.want)
		}
	}
}

// TestBlockWeighs: a dry block of coir of 9.9 L weighs 5 kg, and not what a moist
// bag of its loose volume would.
func TestBlockWeighs(t *testing.T) {
	s := catalog.Plain(nil)
	index, _ := s.Index("coir")
	coir := s.Material(index)
	offer := Offer{Material: "coir", Pack: catalog.Size{Text: "9.9 L", Volume: 99 * units.Litre / 10}}
	each, _ := offer.Yield(coir)
	mass, _ := offer.Mass(coir, each.Plan)
	for _, m := range mass {
		if m < 4990*units.Gram || m > 5010*units.Gram {
			t.Errorf("a block weighs %v, want 5 kg", mass)
		}
	}
}
