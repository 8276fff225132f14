package mix

import "example.org/barrow/units"

// Choice is a need in one pack: how many of it, were it bought in that alone.
type Choice struct {
	Size  Size
	Bulk  bool     // loose, in steps of Size
	Bale  bool     // compressed
	Count [2]int64 // for a bale, if it opens as far as it can, and if least; else twice the same
	Left  units.Volume
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
	add := func(sizes []Size, bulk bool) {
		for _, s := range sizes {
			count := Bags(n.Buy.Plan, s.Volume)
			left, _ := s.Volume.Times(count)
			out = append(out, Choice{Size: s, Bulk: bulk, Count: [2]int64{count, count}, Left: max(left-n.Buy.Plan, 0)})
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
		opened := mat.opened(s.Volume)
		most := Bags(n.Buy.Plan, opened.Low)
		left, _ := opened.Low.Times(most)
		out = append(out, Choice{Size: s, Bale: true, Count: [2]int64{Bags(n.Buy.Plan, opened.High), most}, Left: max(left-n.Buy.Plan, 0)})
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
