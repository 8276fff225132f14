package main

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"example.org/barrow/mix"
	"example.org/barrow/units"
)

// renderCSV writes what to buy as rows for a spreadsheet: a row for each line
// of the order, and a row without a pack for each need that no offer covers.
func renderCSV(out io.Writer, p *mix.Plan) error {
	w := csv.NewWriter(out)
	w.Write([]string{"material", "name", "need_litres", "need_cu_ft", "need_cu_yd", "pack", "count", "cost", "left_litres", "mass_kg_low", "mass_kg_high"})
	for i := range p.Needs {
		n := &p.Needs[i]
		row := func() []string {
			return []string{n.Material.ID, cell(n.Material.Name), litres(n.Buy.Plan), per(n.Buy.Plan, units.CubicFoot), per(n.Buy.Plan, units.CubicYard), "", "", "", "", "", ""}
		}
		weigh := func(row []string, mass [2]units.Mass) []string {
			if mass[1] > 0 {
				row[9], row[10] = kilograms(mass[0]), kilograms(mass[1])
			}
			return row
		}
		if !p.Ordered(n.Material) {
			w.Write(weigh(row(), n.Mass()))
			continue
		}
		for k := range p.Order {
			l := &p.Order[k]
			if l.Material != n.Material {
				continue
			}
			r := row()
			r[5], r[6] = cell(l.Offer.Size().String()), strconv.FormatInt(l.Count, 10)
			if l.Priced {
				r[7] = l.Cost.String()
			}
			if l.Last {
				r[8] = litres(l.Left)
			}
			w.Write(weigh(r, l.Mass))
		}
	}
	w.Flush()
	return w.Error()
}

// cell keeps a spreadsheet from taking text for a formula.
func cell(s string) string {
	if strings.ContainsAny(s[:min(1, len(s))], "=+-@\t\r") {
		return "'" + s
	}
	return s
}

func litres(v units.Volume) string { return string(v.AppendLitres(nil)) }

// per writes v in a unit to four decimals, as spreadsheets take it.
func per(v, unit units.Volume) string {
	return strconv.FormatFloat(float64(v)/float64(unit), 'f', 4, 64)
}

func kilograms(m units.Mass) string {
	return strconv.FormatFloat(float64(m)/float64(units.Kilogram), 'f', 1, 64)
}
