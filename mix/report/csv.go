package report

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// csvHead names the columns of [CSV]. They are English in every language, since
// programs find a column by its name.
const csvHead = "row,material,name,need_litres,need_cu_ft,need_cu_yd,pack,sold,count,cost,currency," +
	"left_litres,mass_kg_low,mass_kg_high\n"

// CSV writes a plan as rows for a spreadsheet. One row is one thing, and its first
// column says what:
//
//	need      a material over all tasks, less what is on hand
//	order     a line of what to buy; sold says whether by the bag, the bale or in bulk
//	left-out  what the order lacks of a material, in the columns of the need
//	tax       on the order
//	driving   count is how many drives, cost what all of them cost
//	delivery  count is how many loads the yard brings
//	total     what there is to pay: the cost of the rows of order, tax, driving and delivery
//	deposit   comes back, and is no part of the total
//	bought    a purchase made already; its cost is no part of the total either
//	paid      for all purchases, with tax
//	in-all    paid and total
//
// Volumes are litres, exact, and cubic feet and cubic yards to four decimals; masses are
// kilograms to a tenth; figures have a decimal point. A cell is empty where its figure is
// not known or does not belong to the row.
//
// The text is UTF-8, as in RFC 4180 except that lines end in \n alone, which
// spreadsheets read too and which compares well. Text that a spreadsheet would take
// for a formula has an apostrophe before it, because a job may come from a stranger.
func CSV(p *mix.Plan) []byte {
	s := &sheet{p: p, b: []byte(csvHead)}
	for i := range p.Needs {
		n := &p.Needs[i]
		s.write(row{kind: "need", material: n.Material.ID, name: n.Material.Name, need: &n.Buy.Plan, mass: n.Mass()})
	}
	for i := range p.Lines {
		s.line("order", &p.Lines[i])
	}
	if p.Offered() {
		for _, out := range p.LeftOut() {
			s.write(row{kind: "left-out", material: out.Material.ID, name: out.Material.Name, need: &out.Volume})
		}
	}
	s.bill()
	for i := range p.Bought.Lines {
		s.line("bought", &p.Bought.Lines[i])
	}
	if p.Bought.Priced {
		all := p.InAll()
		s.write(row{kind: "paid", cost: &p.Bought.Bill.Total})
		s.write(row{kind: "in-all", cost: &all})
	}
	return s.b
}

// sheet is the rows written so far.
type sheet struct {
	p *mix.Plan
	b []byte
}

// row is one row; what is zero or nil is an empty cell.
type row struct {
	kind, material, name string
	need                 *units.Volume
	pack, sold           string
	count                *int64
	cost                 *units.Money
	left                 *units.Volume
	mass                 [2]units.Mass
}

// line writes one line of an order. What is left over is on the last line of a material
// only, so that a sum of the column is right.
func (s *sheet) line(kind string, l *yard.Line) {
	r := row{kind: kind, material: l.Material.ID, name: l.Material.Name, pack: l.Offer.Size().String(),
		sold: soldAs(l), count: &l.Count, mass: l.Mass}
	if l.Priced {
		r.cost = &l.Cost
	}
	if l.Last {
		r.left = &l.Left
	}
	s.write(r)
}

// soldAs says in which way a line is sold: "bulk", "bale" for what opens to more than
// its own volume, or "bag".
func soldAs(l *yard.Line) string {
	switch {
	case l.Offer.Bulk.Volume > 0:
		return "bulk"
	case l.Each.Plan > l.Offer.Size().Volume:
		return "bale"
	}
	return "bag"
}

// bill writes what the order costs besides its lines, the trips, and the total.
func (s *sheet) bill() {
	b, load, priced := &s.p.Bill, &s.p.Load, s.p.Priced()
	part := func(kind string, count int64, cost *units.Money) {
		r := row{kind: kind}
		if count > 0 {
			r.count = &count
		}
		if priced {
			r.cost = cost
		}
		if count > 0 || priced && (*cost > 0 || kind == "total") {
			s.write(r)
		}
	}
	part("tax", 0, &b.Tax)
	part("driving", load.Drives, &b.Driving)
	part("delivery", load.Loads, &b.Fees)
	part("total", 0, &b.Total)
	part("deposit", 0, &b.Deposit)
}

// write appends one row.
func (s *sheet) write(r row) {
	b := append(s.b, r.kind...)
	b = appendCell(append(b, ','), r.material)
	b = appendCell(append(b, ','), r.name)
	b = appendNeed(b, r.need)
	b = appendCell(append(b, ','), r.pack)
	b = append(append(b, ','), r.sold...)
	b = append(b, ',')
	if r.count != nil {
		b = strconv.AppendInt(b, *r.count, 10)
	}
	b = append(b, ',')
	currency := ""
	if r.cost != nil {
		b = append(b, r.cost.String()...)
		currency = strings.TrimSpace(s.p.Currency)
	}
	b = appendCell(append(b, ','), currency)
	b = append(b, ',')
	if r.left != nil {
		b = r.left.AppendLitres(b)
	}
	s.b = appendMass(b, r.mass)
}

// appendNeed appends a volume in each of its three units, or empty cells.
func appendNeed(b []byte, v *units.Volume) []byte {
	if v == nil {
		return append(b, ",,,"...)
	}
	b = v.AppendLitres(append(b, ','))
	for _, unit := range [...]units.Volume{units.CubicFoot, units.CubicYard} {
		b = strconv.AppendFloat(append(b, ','), float64(*v)/float64(unit), 'f', 4, 64)
	}
	return b
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
// with a space is quoted too, since some spreadsheets drop that space, and so is one
// with a semicolon or a tab, at which others part cells.
func appendCell(b []byte, s string) []byte {
	if formula(s) {
		s = "'" + s
	}
	if !strings.ContainsAny(s, "\",;\t\r\n") && !strings.HasPrefix(s, " ") {
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

// formula reports whether a spreadsheet may take text for a formula: by its first sign
// that is not white space, of which some keyboards write a wide form.
func formula(s string) bool {
	if s != "" && strings.IndexByte("\t\r\n", s[0]) >= 0 {
		return true
	}
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s, " \u00a0\u3000"))
	switch first {
	case '=', '+', '-', '@', '\uff1d', '\uff0b', '\uff0d', '\uff20':
		return true
	}
	return false
}
