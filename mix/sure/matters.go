package sure

import (
	"cmp"
	"math"

	"example.org/barrow/mix/stable"
)

// State is a model with one factor at one figure, Value, and all others at
// their typical figure: the litres of each item that it needs and supplies.
type State struct {
	Value        float64
	Need, Supply []float64
}

// Influence is how much depends on one factor, given by its index in
// [Model.Factors]. Low has the factor at its 10th percentile, High at its 90th.
// Moves is by how many litres supply shifts against need between the two, added
// up over the items as absolute values; without supplies it is litres of need.
// A factor that raises the need and the supply of an item equally moves
// nothing.
type Influence struct {
	Factor    int
	Low, High State
	Moves     float64
}

// Matters returns the figures most worth measuring: at most that many
// influences, the largest first, equal ones by index. Factors that are certain
// or move nothing are left out. A most below 1 returns none. It varies one
// figure at a time, so it says nothing about two that move together.
func (m *Model) Matters(most int) []Influence {
	m.must()
	all := m.influences()
	return all[:min(max(most, 0), len(all))]
}

// influences returns the influence of every factor that moves something.
func (m *Model) influences() []Influence {
	var all []Influence
	x := m.figures(Factor.Typical)
	for i, f := range m.Factors {
		if f.Certain() {
			continue
		}
		l := f.law()
		in := Influence{Factor: i, Low: m.state(x, i, l.at(0.1)), High: m.state(x, i, l.at(0.9))}
		if in.Moves = in.Low.against(in.High); in.Moves > 0 {
			all = append(all, in)
		}
	}
	stable.Sort(all, func(a, b Influence) int { return cmp.Compare(b.Moves, a.Moves) })
	return all
}

// state works out the model with one factor at value. It restores x.
func (m *Model) state(x []float64, factor int, value float64) State {
	before := x[factor]
	x[factor] = value
	s := State{value, m.sums(m.Needs, x), m.sums(m.Supplies, x)}
	x[factor] = before
	return s
}

// against adds up how far supply shifts against need from s to t.
func (s State) against(t State) float64 {
	var sum float64
	for i := range s.Need {
		sum += math.Abs((t.Need[i] - s.Need[i]) - (t.Supply[i] - s.Supply[i]))
	}
	return sum
}
