package catalog

import (
	"slices"
	"strings"
	"testing"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// TestCatalogue checks what the decoder of catalog.json does not check.
func TestCatalogue(t *testing.T) {
	cat := BuiltIn()
	if len(cat.Materials) < 35 || len(cat.Containers) < 60 || len(cat.Mixes) == 0 || len(cat.Soils) != 3 {
		t.Fatalf("rows are missing: %d materials, %d containers, %d mixes, %d soils",
			len(cat.Materials), len(cat.Containers), len(cat.Mixes), len(cat.Soils))
	}
	seen := map[string]bool{}
	row := func(id string, from Source, confidence string) {
		if id == "" || seen[id] {
			t.Errorf("id %q is missing or stands twice", id)
		}
		seen[id] = true
		if from.ID == "" || from.Text == "" || from.Kind == "" {
			t.Errorf("%s has no source of the catalogue", id)
		}
		if confidence == "" {
			t.Errorf("%s does not say how sure it is", id)
		}
	}
	var ids []string
	for i := range cat.Materials {
		m := &cat.Materials[i]
		row(m.ID, m.Source, m.Confidence)
		ids = append(ids, m.ID)
		if m.Dry <= 0 || m.Wet < m.Dry || m.Grade == "" || m.Kind == "" {
			t.Errorf("%s: dry %v, wet %v, grade %q, kind %q", m.ID, m.Dry, m.Wet, m.Grade, m.Kind)
		}
		if len(m.ID) > 14 {
			t.Errorf("%s does not fit its column of barrow list", m.ID)
		}
		if len(m.Packs)+len(m.Bales) == 0 {
			t.Errorf("%s comes in no pack", m.ID)
		}
		if len(m.Bales) > 0 && (m.OpensSource.ID == "" || m.OpensLow.Float() < 1) {
			t.Errorf("%s: bales without how they open", m.ID)
		}
		if m.SettleHigh != (units.Ratio{}) && (m.SettleSource.ID == "" || m.SettleHigh.Less(m.SettleLow)) {
			t.Errorf("%s: settle is not a range with a source", m.ID)
		}
	}
	if !slices.IsSorted(ids) {
		t.Errorf("materials are not in order: %v", ids)
	}
	for i := range cat.Containers {
		k := &cat.Containers[i]
		row(k.ID, k.Source, k.Confidence)
		if h := k.Holds; h.Low <= 0 || h.Plan < h.Low || h.High < h.Plan || k.Cells < 1 || k.Kind == "" {
			t.Errorf("%s: %+v, %d cells, kind %q", k.ID, h, k.Cells, k.Kind)
		}
	}
	for i := range cat.Mixes {
		row(cat.Mixes[i].ID, cat.Mixes[i].Source, cat.Mixes[i].Confidence)
		if plain().blends[cat.Mixes[i].ID] == nil {
			t.Errorf("%s does not open", cat.Mixes[i].ID)
		}
	}
	for _, s := range cat.Soils {
		row(s.ID, s.Source, s.Confidence)
		if s.Swell.Less(s.SwellLow) || s.SwellHigh.Less(s.Swell) {
			t.Errorf("%s: swell %v to %v to %v", s.ID, s.SwellLow, s.Swell, s.SwellHigh)
		}
	}
	for _, id := range []string{"blend-loss", "settle-pot"} {
		a := cat.Allowances[slices.IndexFunc(cat.Allowances, func(a Common) bool { return a.ID == id })]
		row(a.ID, a.Source, a.Confidence)
		if a.Share.Less(a.Low) || a.High.Less(a.Share) {
			t.Errorf("%s: %v is not between %v and %v", id, a.Share, a.Low, a.High)
		}
	}
	for _, s := range cat.Substitutes {
		_, known := plain().material[s.For]
		_, can := plain().material[s.Use]
		if !known || !can || s.For == s.Use || s.Changes == "" || s.Source.ID == "" || s.Confidence == "" {
			t.Errorf("substitute %+v", s)
		}
	}
	used := map[string]bool{}
	for _, m := range cat.Materials {
		used[m.PackedSource.ID] = true
		used[m.Source.ID], used[m.SettleSource.ID], used[m.OpensSource.ID] = true, true, true
	}
	for _, k := range cat.Containers {
		used[k.Source.ID] = true
	}
	for _, m := range cat.Mixes {
		used[m.Source.ID] = true
	}
	for _, a := range cat.Allowances {
		used[a.Source.ID] = true
	}
	for _, s := range cat.Soils {
		used[s.Source.ID] = true
	}
	for _, s := range cat.Sources {
		text := strings.ToLower(s.Text.String())
		if s.Kind == "memory" && !strings.Contains(text, "memory") ||
			s.Kind == "practice" && !strings.Contains(text, "common practice") {
			t.Errorf("the text of %s does not say that it is %s", s.ID, s.Kind)
		}
		if !used[s.ID] {
			t.Errorf("no row cites the source %s", s.ID)
		}
	}
}

// TestUncited: a row that names none of the catalogue's sources is a problem.
func TestUncited(t *testing.T) {
	cat := Catalog{Sources: []Source{{ID: "known", Text: "a source"}},
		Soils: []Soil{{ID: "clay", Source: Source{Text: "known"}}, {ID: "loam", Source: Source{Text: "nobody"}}}}
	var r doc.Reader
	cat.citeAll(&r)
	if found := doc.ProblemsIn(r.Err()); len(found) != 1 || found[0].Code != "source.unknown" {
		t.Errorf("problems %v, want source.unknown of the loam alone", found)
	}
}

// TestFillLine: every pot of the catalogue has one meaning, the mix to a fill line
// at 94 % of its brim, and all else is filled level.
func TestFillLine(t *testing.T) {
	cat := BuiltIn()
	level := []string{"Tree bands", "Deep cells", "Cell trays", "Flats"}
	for i := range cat.Containers {
		k := &cat.Containers[i]
		if slices.Contains(level, k.Kind) {
			if k.Brim != 0 {
				t.Errorf("%s has a brim, but is filled level", k.ID)
			}
			continue
		}
		// 183 cu in to the brim, 172.8 cu in to the fill line.
		off := k.Holds.Plan.Litres()/k.Brim.Litres() - 172.8/183
		if !(-1e-8 < off && off < 1e-8) || k.Holds.High < k.Brim {
			t.Errorf("%s: %v of a brim of %v, at most %v", k.ID, k.Holds.Plan, k.Brim, k.Holds.High)
		}
	}
}

// TestOneMake: a row that rests on a single make is taken to differ by a tenth, a
// pot up to its brim. What a job says its own pot holds stays certain.
func TestOneMake(t *testing.T) {
	one := Class{Holds: units.Range{Plan: 100 * units.Millilitre}}
	one.fill()
	if want := (units.Range{Low: 90 * units.Millilitre, Plan: 100 * units.Millilitre, High: 110 * units.Millilitre}); one.Holds != want {
		t.Errorf("one make of 100 mL: %v, want %v", one.Holds, want)
	}
	pot := Class{Brim: 305 * units.Millilitre}
	pot.fill()
	want := units.Range{Low: 259_200_000, Plan: 288 * units.Millilitre, High: 305 * units.Millilitre}
	if pot.Holds != want {
		t.Errorf("a brim of 305 mL: %v, want %v", pot.Holds, want)
	}
	own := Class{ID: "mine", Holds: units.Range{Plan: units.Litre}}
	var r doc.Reader
	if own.check(&r); !own.Holds.Certain() {
		t.Errorf("a job's own pot: %v", own.Holds)
	}
}

// TestKnownAs: what people call a container leads to one row.
func TestKnownAs(t *testing.T) {
	cat, owner := BuiltIn(), map[string]string{}
	for i := range cat.Containers {
		k := &cat.Containers[i]
		for _, name := range append([]string{k.ID}, k.Also...) {
			if owner[name] != "" {
				t.Errorf("%q is %s and %s", name, owner[name], k.ID)
			}
			owner[name] = k.ID
		}
	}
	for typed, want := range map[string]string{"3 L": "C3", "98 cell": "tray-98", "1020": "flat", "fabric-5": "cloth-5",
		"5 gal fabric": "cloth-5", "4 in square": "sq-4", "5 gal": "#5", "c3": "C3", "try-98": "tray-98", "15 cm pot": "pot-6"} {
		var r doc.Reader
		plain().Class(&r, typed)
		if p := doc.ProblemsIn(r.Err()); len(p) != 1 || p[0].Hint.String() != doc.DidYouMean(want).String() {
			t.Errorf("%q: %v, want a hint at %s", typed, p, want)
		}
	}
}

// TestBales: peat in a sealed pack of 107 L and more is a bale, of whatever size;
// loose bags are smaller. A dry block of coir opens too.
func TestBales(t *testing.T) {
	peat, coir := *plain().materials[plain().material["peat"]], *plain().materials[plain().material["coir"]]
	for _, test := range []struct {
		of   Material
		size string
		bale bool
	}{
		{peat, "107 L", true}, {peat, "3.8 cu ft", true}, {peat, "110 L", true}, {peat, "225 L", true}, {peat, "300 L", true},
		{peat, "2.2 cu ft", true}, {peat, "80 L", false}, {peat, "106 L", false}, {peat, "2 cu ft", false},
		{coir, "9.9 L", true}, {coir, "50 L", false}, {coir, "200 L", false},
	} {
		size, err := units.ParseVolume(test.size)
		if err != nil {
			t.Fatal(err)
		}
		if got := test.of.IsBale(size); got != test.bale {
			t.Errorf("%s of %s is a bale: %t, want %t", test.size, test.of.ID, got, test.bale)
		}
	}
}
