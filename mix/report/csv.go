package report

import (
	"strconv"
	"strings"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// csvHead names the columns of [CSV]. They are English in every language, since
// programs find a column by its name.
const csvHead = "material,name,need_litres,need_cu_ft,need_cu_yd,pack,count,cost,left_litres," +
	"mass_kg_low,mass_kg_high\n"

// CSV writes what to buy as rows for a spreadsheet. There is a row for each line of the
// order, and a row without a pack for each need that no offer covers. Volumes are
// litres, exact, and cubic feet and cubic yards to four decimals; masses are kilograms
// to a tenth. A cell is empty where its figure is not known.
//
// The text is UTF-8, as in RFC 4180 except that lines end in \n alone, which
// spreadsheets read too and which compares well. Text that a spreadsheet would take
// for a formula has an apostrophe before it, because a job may come from a stranger.
func CSV(p *mix.Plan) []byte {
	b := []byte(csvHead)
	for i := range p.Needs {
		n := &p.Needs[i]
		start := len(b)
		b = appendCell(b, n.Material.ID)
		b = appendCell(append(b, ','), n.Material.Name)
		b = n.Buy.Plan.AppendLitres(append(b, ','))
		for _, unit := range [...]units.Volume{units.CubicFoot, units.CubicYard} {
			b = strconv.AppendFloat(append(b, ','), float64(n.Buy.Plan)/float64(unit), 'f', 4, 64)
		}
		need := string(b[start:])
		if !p.Ordered(n.Material) {
			b = appendMass(append(b, ",,,,"...), n.Mass())
			continue
		}
		b = b[:start]
		for k := range p.Lines {
			if l := &p.Lines[k]; l.Material == n.Material {
				b = appendLine(append(b, need...), l)
			}
		}
	}
	return b
}

// appendLine appends the columns of one line of the order, after those of its need. What
// is left over is on the last line of a material only, so that a sum of the column is
// right.
func appendLine(b []byte, l *yard.Line) []byte {
	b = appendCell(append(b, ','), l.Offer.Size().String())
	b = strconv.AppendInt(append(b, ','), l.Count, 10)
	b = append(b, ',')
	if l.Priced {
		b = append(b, l.Cost.String()...)
	}
	b = append(b, ',')
	if l.Last {
		b = l.Left.AppendLitres(b)
	}
	return appendMass(b, l.Mass)
}

// appendMass appends a range of mass, or two empty cells where it is not known, and
// ends the row.
func appendMass(b []byte, mass [2]units.Mass) []byte {
	for _, m := range mass {
		b = append(b, ',')
		if mass[1] > 0 {
			b = strconv.AppendFloat(b, float64(m)/float64(units.Kilogram), 'f', 1, 64)
		}
	}
	return append(b, '\n')
}

// appendCell appends text as one cell, in quotes where it needs them. A cell that begins
// with a space is quoted too, since some spreadsheets drop that space.
func appendCell(b []byte, s string) []byte {
	if s != "" && strings.IndexByte("=+-@\t\r", s[0]) >= 0 {
		s = "'" + s
	}
	if !strings.ContainsAny(s, "\",\r\n") && !strings.HasPrefix(s, " ") {
		return append(b, s...)
	}
	b = append(b, '"')
	for _, c := range []byte(s) {
		if c == '"' {
			b = append(b, c)
		}
		b = append(b, c)
	}
	return append(b, '"')
}
