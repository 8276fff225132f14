package sure

// Slack is how many litres an item may be short and still count as enough: 1
// mL, as in every count of packs.
const Slack = 0.001

// Kind is how a factor enters a term. The zero value is [Times].
type Kind uint8

// The ways a factor x enters a term.
const (
	Times Kind = iota // the term is multiplied by x
	Loss              // a share x of it is lost on the way: multiplied by 1/(1-x)
)

// Use is one factor, given by its index in [Model.Factors], entering a term.
type Use struct {
	Factor int
	Kind   Kind
}

// Term is a part of what one item needs or has: Amount litres, changed by each
// of its uses. Amount is the litres with every Times figure at 1 and every loss
// at 0. A term without uses is a certain volume.
type Term struct {
	Item   int
	Amount float64
	Uses   []Use
}

// Model is what is known. The need for an item is the sum of its terms in
// Needs, its supply the sum of its terms in Supplies. The order is enough when
// no item's supply is more than [Slack] below its need. Factors are independent
// of each other, and a factor has one figure wherever it is used. The zero
// value has no items and is always enough.
//
// [Model.Check] reports whether the other methods can answer; they panic on a
// model that it refuses. No method changes the model, so they can run at the
// same time.
type Model struct {
	Items    int
	Factors  []Factor
	Needs    []Term
	Supplies []Term
}

// effect is what one litre becomes with the factor at x.
func (k Kind) effect(x float64) float64 {
	if k == Loss {
		return 1 / (1 - x)
	}
	return x
}

// litres is the term with each factor at its figure in x.
func (t *Term) litres(x []float64) float64 {
	v := t.Amount
	for _, u := range t.Uses {
		v = float64(v * u.Kind.effect(x[u.Factor])) // not fused with the sum it goes into
	}
	return v
}

// sums adds up the terms of each item with each factor at its figure in x.
func (m *Model) sums(terms []Term, x []float64) []float64 {
	out := make([]float64, m.Items)
	for i := range terms {
		out[terms[i].Item] += terms[i].litres(x)
	}
	return out
}

// figures returns one figure for every factor.
func (m *Model) figures(of func(Factor) float64) []float64 {
	x := make([]float64, len(m.Factors))
	for i, f := range m.Factors {
		x[i] = of(f)
	}
	return x
}

// lowest is the least figure of a factor, for figures.
func lowest(f Factor) float64 { return f.Low }

// highest is the largest figure of a factor, for figures.
func highest(f Factor) float64 { return f.High }

// keep returns the model with only the terms of some items.
func (m *Model) keep(item func(int) bool) *Model {
	return &Model{m.Items, m.Factors, kept(m.Needs, item), kept(m.Supplies, item)}
}

// kept returns the terms of some items.
func kept(terms []Term, item func(int) bool) []Term {
	var out []Term
	for _, t := range terms {
		if item(t.Item) {
			out = append(out, t)
		}
	}
	return out
}

// needs returns the model without its supplies.
func (m *Model) needs() *Model { return &Model{m.Items, m.Factors, m.Needs, nil} }
