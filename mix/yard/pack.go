package yard

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Pack is a need counted in one kind of pack: how many of it, if only that is
// bought.
type Pack struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Size  catalog.Size
	Bulk  bool // loose, in steps of Size
	Bale  bool // compressed; counted by the least it opens to
	Count int64
	// FewMany is the count for the least and the most that may be needed, and
	// that a bale may open to.
	FewMany [2]int64
	Left    units.Volume // over the need
}

// Common practice: the bags in which mix and bark are sold by the litre, and
// the steps in which loose material is loaded.
var (
	metricBags = []catalog.Size{
		{Text: "20 L", Volume: 20 * units.Litre}, {Text: "40 L", Volume: 40 * units.Litre},
		{Text: "50 L", Volume: 50 * units.Litre}, {Text: "80 L", Volume: 80 * units.Litre},
	}
	yardSteps = []catalog.Size{
		{Text: "1/4 cu yd", Volume: units.CubicYard / 4},
		{Text: "1/2 cu yd", Volume: units.CubicYard / 2},
		{Text: "1 cu yd", Volume: units.CubicYard},
	}
	metricSteps = []catalog.Size{
		{Text: "0.25 m3", Volume: units.CubicMetre / 4},
		{Text: "0.5 m3", Volume: units.CubicMetre / 2},
		{Text: "1 m3", Volume: units.CubicMetre},
	}
)

// Packs counts the need in every common size: the material's bags, its bales,
// and bulk in quarters, halves and wholes. Metric sizes are included when the
// measure has them.
func (n *Need) Packs(m units.Measure) []Pack {
	var out []Pack
	one := func(s catalog.Size, each units.Range) Pack {
		count := Count(n.Buy.FixedPlan(), each.FixedPlan())
		all, _ := each.Planned().Times(count)
		fewMany := [2]int64{Count(n.Buy.FixedLow(), each.FixedHigh()), Count(n.Buy.FixedHigh(), each.FixedLow())}
		return Pack{Size: s, Count: count, FewMany: fewMany, Left: max(all.Plan-n.Buy.Plan, 0)}
	}
	add := func(sizes []catalog.Size, bulk bool) {
		for _, s := range sizes {
			c := one(s, units.Known(s.Fixed()))
			c.Bulk = bulk
			out = append(out, c)
		}
	}
	mat, inMetric := n.Material, m == units.Metric || m == units.Both
	if m != units.Metric {
		add(mat.Packs, false)
	}
	if inMetric {
		add(metric(mat), false)
	}
	for _, s := range bales(mat, m) {
		c := one(s, mat.Opened(s))
		c.Bale = true
		out = append(out, c)
	}
	if !mat.Bulk {
		return out
	}
	if m != units.Metric {
		add(yardSteps, true)
	}
	if inMetric {
		add(metricSteps, true)
	}
	return out
}

// bales returns the bales of a material in the reader's units, where it comes in
// both.
func bales(m *catalog.Material, measure units.Measure) []catalog.Size {
	var litres, others []catalog.Size
	for _, s := range m.Bales {
		if strings.HasSuffix(s.Text, " L") {
			litres = append(litres, s)
		} else {
			others = append(others, s)
		}
	}
	switch {
	case measure == units.Both || len(litres) == 0 || len(others) == 0:
		return m.Bales
	case measure == units.Metric:
		return litres
	}
	return others
}

// metric returns the bags in litres that a material may come in. Heavy material
// comes in small bags, so none is much larger than the material's largest other
// bag; the smallest one is always included.
func metric(m *catalog.Material) []catalog.Size {
	var largest units.Volume
	for _, s := range m.Packs {
		largest = max(largest, s.Volume)
	}
	n := 0
	for n < len(metricBags) && metricBags[n].Volume <= largest+largest/5 {
		n++
	}
	if len(m.Packs) > 0 {
		n = max(n, 1)
	}
	return metricBags[:n]
}

// CountText writes the count in English and, when it is not certain, the fewest
// and the most: "6 (5 to 7)".
func (c *Pack) CountText() string { return lang.Printer{}.CountRange(c.Count, c.FewMany) }
