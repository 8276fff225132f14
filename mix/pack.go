package mix

import "example.org/barrow/units"

// Choice is a need in one pack: how many of it, were it bought in that alone.
type Choice struct {
	Size  Size
	Bulk  bool // loose, in steps of Size
	Bale  bool // compressed; counted by the least it opens to
	Count int64
	// FewMany is the count for the least and the most that the need may be and
	// a bale may open to.
	FewMany [2]int64
	Left    units.Volume // over the need
}

// metricBags are the bags of mix and bark commonly sold in litres, and
// bulkSteps the steps that loose material is loaded by: common practice.
var (
	metricBags  = []Size{{"20 L", 20 * units.Litre}, {"40 L", 40 * units.Litre}, {"50 L", 50 * units.Litre}, {"80 L", 80 * units.Litre}}
	yardSteps   = []Size{{"1/4 cu yd", units.CubicYard / 4}, {"1/2 cu yd", units.CubicYard / 2}, {"1 cu yd", units.CubicYard}}
	metricSteps = []Size{{"0.25 m3", units.CubicMetre / 4}, {"0.5 m3", units.CubicMetre / 2}, {"1 m3", units.CubicMetre}}
)

// Choices lists the need in every common size: the material's bags, its bales,
// and bulk by the quarter, half and whole. Metric sizes join where the measure
// has them.
func (n *Need) Choices(m units.Measure) []Choice {
	var out []Choice
	one := func(s Size, each Span) Choice {
		count := Bags(n.Buy.Plan, each.Plan)
		left, _ := each.Plan.Times(count)
		return Choice{Size: s, Count: count, FewMany: [2]int64{Bags(n.Buy.Low, each.High), Bags(n.Buy.High, each.Low)}, Left: max(left-n.Buy.Plan, 0)}
	}
	add := func(sizes []Size, bulk bool) {
		for _, s := range sizes {
			c := one(s, Exactly(s.Volume))
			c.Bulk = bulk
			out = append(out, c)
		}
	}
	mat := n.Material
	if m != units.Metric {
		add(mat.Packs, false)
	}
	if m != units.US {
		add(mat.metricBags(), false)
	}
	for _, s := range mat.Bales {
		c := one(s, mat.opened(s.Volume))
		c.Bale = true
		out = append(out, c)
	}
	if !mat.Bulk {
		return out
	}
	if m != units.Metric {
		add(yardSteps, true)
	}
	if m != units.US {
		add(metricSteps, true)
	}
	return out
}

// metricBags are the bags in litres that the material may come in: none much
// larger than its largest of the others, since heavy material comes in small
// bags, and the smallest at the least.
func (m *Material) metricBags() []Size {
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

// Mass is what the need weighs, lightest and heaviest; zero when not known.
func (n *Need) Mass() [2]units.Mass {
	low, _ := n.Material.mass(n.Buy.Low)
	high, _ := n.Material.mass(n.Buy.High)
	return [2]units.Mass{low[0], high[1]}
}
