package report_test

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
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
		{"row", "material", "name", "need_litres", "need_cu_ft", "need_cu_yd", "pack", "sold", "count", "cost", "currency", "left_litres", "mass_kg_low", "mass_kg_high"},
		{"need", "odd", `'=1+2 "bark", fine`, "1000", "35.3147", "1.3080", "", "", "", "", "", "", "300.0", "500.0"},
		{"need", "plain", "spaced", "1000", "35.3147", "1.3080", "", "", "", "", "", "", "", ""},
		{"order", "odd", `'=1+2 "bark", fine`, "", "", "", "300 L", "bag", "4", "14.00", "", "200", "337.6", "638.2"},
		{"left-out", "plain", "spaced", "1000", "35.3147", "1.3080", "", "", "", "", "", "", "", ""},
		{"total", "", "", "", "", "", "", "", "", "14.00", "", "", "", ""},
	}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Errorf("rows differ (-want +got)\n%s", diff)
	}
}

// TestCSVIsSafe: no cell of text begins as a formula does, and none can be parted at
// another separator.
func TestCSVIsSafe(t *testing.T) {
	for name, want := range map[string]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@sum": "'@sum", "\uff1d1+1": "'\uff1d1+1", "\uff0b1": "'\uff0b1",
		"\uff0d1": "'\uff0d1", "\uff20sum": "'\uff20sum", "bark; =1+1": `"bark; =1+1"`, "bark": "bark", "1 - 1": "1 - 1",
		"\uff1b": "\uff1b",
	} {
		doc := `{"schema": 1, "materials": [{"id": "odd", "name": "` + name + `"}],
		  "tasks": [{"kind": "cover", "area": "10 m x 1 m", "layer": "10 cm", "material": "odd"}]}`
		p, err := mix.PlanDocument([]byte(doc))
		if err != nil {
			t.Fatal(name, err)
		}
		if got := string(report.CSV(p)); !strings.Contains(got, "\nneed,odd,"+want+",1000,") {
			t.Errorf("%s: %s", name, got)
		}
	}
}

// TestCSVAddsUp: of the sample jobs, the cost of order, tax, driving and delivery is the
// total, in whole cents; paid and total are in-all; and count, need and left over are
// those of the plan's JSON.
func TestCSVAddsUp(t *testing.T) {
	totals := 0
	for what, job := range jobs(t) {
		p, err := mix.PlanDocument(job)
		if err != nil {
			continue
		}
		rows, err := csv.NewReader(bytes.NewReader(report.CSV(p))).ReadAll()
		if err != nil {
			t.Fatal(what, err)
		}
		col := map[string]int{}
		for i, name := range rows[0] {
			col[name] = i
		}
		sum, count := map[string]int64{}, map[string]int{}
		for _, row := range rows[1:] {
			kind := row[col["row"]]
			count[kind]++
			if cost := row[col["cost"]]; cost != "" {
				cents, err := strconv.ParseInt(strings.Replace(cost, ".", "", 1), 10, 64)
				if err != nil || len(cost) < 4 {
					t.Fatal(what, row)
				}
				sum[kind] += cents
			}
		}
		if got := sum["order"] + sum["tax"] + sum["driving"] + sum["delivery"]; got != sum["total"] {
			t.Errorf("%s: the rows come to %d, the total is %d", what, got, sum["total"])
		}
		if count["paid"] > 0 && sum["paid"]+sum["total"] != sum["in-all"] {
			t.Errorf("%s: paid %d, total %d, in all %d", what, sum["paid"], sum["total"], sum["in-all"])
		}
		if count["need"] != len(p.Needs) || count["order"] != len(p.Lines) || count["bought"] != len(p.Bought.Lines) {
			t.Errorf("%s: rows %v", what, count)
		}
		totals += count["total"]
	}
	if totals < 5 {
		t.Errorf("only %d jobs have a total", totals)
	}
}
