package sure

import (
	"cmp"
	"math"

	"example.org/barrow/mix/stable"
)

// State is a model with one factor at one figure, Value, and all the others at
// their typical figure: the litres of each item that it needs and supplies.
type State struct {
	Value        float64
	Need, Supply []float64
}

// Influence is how much hangs on one factor, by its index in [Model.Factors].
// Low has it at its 10th percentile, High at its 90th. Moves is how many
// litres that shifts supply against need, added up over the items without
// regard to direction; with no supplies it is litres of need. A factor that
// raises the need and the supply of an item alike settles nothing, and
// moves nothing.
type Influence struct {
	Factor    int
	Low, High State
	Moves     float64
}

// Matters returns the figures most worth measuring: at most that many
// influences, the largest first, equal ones by index. Factors that are certain
// or move nothing are left out; most below 1 returns none. It compares one
// figure at a time and says nothing of two that move together.
func (m *Model) Matters(most int) []Influence {
	m.must()
	all := m.influences()
	return all[:min(max(most, 0), len(all))]
}

func (m *Model) influences() []Influence {
	var all []Influence
	x := m.figures(Factor.Typical)
	for i, f := range m.Factors {
		if f.Certain() {
			continue
		}
		in := Influence{Factor: i, Low: m.state(x, i, f.At(0.1)), High: m.state(x, i, f.At(0.9))}
		if in.Moves = in.Low.against(in.High); in.Moves > 0 {
			all = append(all, in)
		}
	}
	stable.Sort(all, func(a, b Influence) int { return cmp.Compare(b.Moves, a.Moves) })
	return all
}

// state leaves x as it was.
func (m *Model) state(x []float64, factor int, value float64) State {
	before := x[factor]
	x[factor] = value
	s := State{value, m.sums(m.Needs, x), m.sums(m.Supplies, x)}
	x[factor] = before
	return s
}

func (s State) against(t State) float64 {
	var sum float64
	for i := range s.Need {
		sum += math.Abs((t.Need[i] - s.Need[i]) - (t.Supply[i] - s.Supply[i]))
	}
	return sum
}
