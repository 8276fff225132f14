package report_test

import (
	"bytes"
	"encoding/csv"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
)

// TestCSVReads: what a plan writes for a spreadsheet, encoding/csv reads, cell
// for cell, whatever a name has in it.
func TestCSVReads(t *testing.T) {
	doc := `{"schema": 1,
	  "materials": [{"id": "odd", "name": "=1+2 \"bark\", fine", "dry": "300 kg/m3", "wet": "500 kg/m3"}, {"id": "plain", "name": " spaced"}],
	  "tasks": [
	    {"kind": "cover", "area": "10 m x 1 m", "layer": "10 cm", "material": "odd"},
	    {"kind": "cover", "area": "10 m x 1 m", "layer": "10 cm", "material": "plain"}],
	  "offers": [{"material": "odd", "pack": "300 L", "price": "3.50"}]}`
	p, err := mix.PlanDocument([]byte(doc))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(report.CSV(p))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{
		{"material", "name", "need_litres", "need_cu_ft", "need_cu_yd", "pack", "count", "cost", "left_litres", "mass_kg_low", "mass_kg_high"},
		{"odd", `'=1+2 "bark", fine`, "1000", "35.3147", "1.3080", "300 L", "4", "14.00", "200", "360.0", "600.0"},
		{"plain", "spaced", "1000", "35.3147", "1.3080", "", "", "", "", "", ""},
	}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Errorf("rows differ (-want +got)\n%s", diff)
	}
}
