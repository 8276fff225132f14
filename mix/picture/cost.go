package picture

import (
	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// Costs draws, for each material that is offered in bags and in bulk with
// prices, what both cost against the volume. It takes some milliseconds,
// because an order is searched for at every volume.
func Costs(p *mix.Plan) (list []Drawing) {
	crossings := p.Crossings()
	for i := range crossings {
		c := &crossings[i]
		if i == mostCosts {
			return plainPen(p).more(list, len(crossings)-i, moreHeaps)
		}
		k := newPen(p, -1, c.Material.Name)
		k.cost(c)
		list = k.onto(list)
	}
	return list
}

// cost draws the two curves of one material.
func (k *pen) cost(c *yard.Crossing) {
	m := k.p.Printer()
	k.Kind = "cost"
	top := c.Points[len(c.Points)-1].Volume
	highest := units.Money(1)
	for i := range c.Points {
		highest = max(highest, c.Points[i].Bags, c.Points[i].Bulk)
	}
	k.sentence(costDesc).like(top, c.Need).describe()
	k.describe(c.Sentence(m), ".")

	// The axes start right of the widest text at their ticks.
	tickMoney := units.Money(roundUp(1, float64(highest)/4.2))
	unit, name := unitOf(m.Measure, c.Need)
	tickVolume := units.Volume(roundUp(int64(unit/100), float64(top)/4.2))
	amount := func(v units.Money) string { return m.Figure(whole(v.String())) }
	volume := func(v units.Volume) string { return m.Figure(string(appendNumber(nil, float64(v)/float64(unit)))) }
	x0 := left
	for v := units.Money(0); v <= highest; v += tickMoney {
		x0 = max(x0, left+labelWide(amount(v))+7)
	}
	bagsName, bulkName := k.sentence(costBags).String(), k.sentence(costBulk).String()
	x1 := right - max(wide(bagsName, aFigure), wide(bulkName, aFigure)) - 8
	const tall = 150.0

	unitName := k.sentence(costPlain)
	if sign := plain(k.p.Currency); sign != "" {
		unitName = k.sentence(costMoney).text(sign)
	}
	k.notes(aLabel, unitName.String(), 2)
	at := func(v units.Volume) float64 { return x0 + (x1-x0)*float64(v)/float64(top) }

	// The texts of the two marks. Above where bulk costs less has a row of its
	// own; the need is on the side of its line that the other line does not cross.
	crosses := c.From > 0
	if crosses {
		for _, s := range k.sentence(costFrom).like(c.From, c.Need).wrap(right-left, 2).lines {
			w := labelWide(s) / 2
			k.text(aLabel, atMiddle, min(max(at(c.From), left+w), right-w), k.Height+ascent, s)
			k.Height += step
		}
		k.Height += 2
	}
	from := k.Height
	need := at(c.Need)
	side, x, room := atStart, need+6, right-need-6
	if crosses && c.From > c.Need {
		side, x, room = atEnd, need-6, need-6-left
	}
	mark := k.Height
	k.Height = k.lines(k.sentence(costNeed).like(c.Need, c.Need).wrap(room, 3), side, x, k.Height) + 6
	y0 := k.Height + tall
	height := func(v units.Money) float64 { return y0 - tall*float64(v)/float64(highest) }

	for v := units.Money(0); v <= highest; v += tickMoney {
		k.line(aGrid, x0, height(v), x1, height(v))
		k.text(aLabel, atEnd, x0-5, height(v)+5, amount(v))
	}
	last := left - 8
	for v := units.Volume(0); v <= top; v += tickVolume {
		k.line(aTick, at(v), y0, at(v), y0+4)
		s := volume(v)
		if w := labelWide(s) / 2; at(v)-w > last+8 && at(v)+w <= right {
			k.text(aLabel, atMiddle, at(v), y0+6+ascent, s)
			last = at(v) + w
		}
	}
	k.path(aAxis, false, x0, k.Height, x0, y0, x1, y0)
	thick := false
	for _, s := range c.Stretches {
		if s.Cheaper == yard.CheaperBulk {
			k.line(aCheaper, at(s.Over), y0, at(s.UpTo), y0)
			thick = true
		}
	}
	if crosses {
		k.line(aCrossing, at(c.From), from, at(c.From), y0)
	}
	k.line(aNeed, need, mark, need, y0)
	bags := k.curve(aBags, c.Points, at, height, func(p *yard.CrossingPoint) units.Money { return p.Bags })
	bulk := k.curve(aBulk, c.Points, at, height, func(p *yard.CrossingPoint) units.Money { return p.Bulk })
	// The names go beside the ends of the curves, and must not overlap.
	bags, bulk = min(bags, y0-4), min(bulk, y0-4)
	if bags <= bulk {
		bags = min(bags, bulk-step)
	} else {
		bulk = min(bulk, bags-step)
	}
	down := max(0, y0-tall-min(bags, bulk))
	bags, bulk = bags+down, bulk+down
	k.text(aFigure, atStart, x1+6, bags+5, bagsName)
	k.text(aFigure, atStart, x1+6, bulk+5, bulkName)
	k.Height = y0 + step + 8
	k.notes(aLabel, k.sentence(costVolume).figure(name).String(), 1)
	if thick {
		k.note(k.sentence(costThick).String())
	}
}

// curve draws a cost against the volume and returns the height of its last
// point. Where there is no cost it leaves a gap. Points closer than a pixel are
// drawn once.
func (k *pen) curve(c class, points []yard.CrossingPoint, x func(units.Volume) float64,
	y func(units.Money) float64, of func(*yard.CrossingPoint) units.Money) (last float64) {
	var t trace
	var px, py float64
	last = y(0)
	for i := range points {
		v := of(&points[i])
		if v < 0 {
			t.open = false
			continue
		}
		last = y(v)
		u := x(points[i].Volume)
		if t.open && i < len(points)-1 && u-px < .6 && py-last < .6 && last-py < .6 {
			continue
		}
		t.to(u, last)
		px, py = u, last
	}
	k.trace(c, &t)
	return last
}

// whole removes cents that are zero.
func whole(amount string) string {
	if n := len(amount) - 3; n > 0 && amount[n:] == ".00" {
		return amount[:n]
	}
	return amount
}

// unitOf returns the unit in which a measure writes volumes like v.
func unitOf(m units.Measure, v units.Volume) (units.Volume, string) {
	switch {
	case m == units.Metric && v >= 2*units.CubicMetre:
		return units.CubicMetre, "m3"
	case m == units.Metric && v >= units.Litre:
		return units.Litre, "L"
	case m == units.Metric:
		return units.Millilitre, "mL"
	case v >= units.CubicFoot/2:
		return units.CubicFoot, "cu ft"
	case v >= units.Gallon/4:
		return units.Gallon, "gal"
	}
	return units.CubicInch, "cu in"
}
