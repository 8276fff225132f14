package sure

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/stable"
)

// part is a term with its certain figures multiplied in: its litres, negative
// for a supply, and its uses of factors that vary, in order.
type part struct {
	item   int
	litres float64
	uses   []Use
}

// folded is a model without its certain figures.
type folded struct {
	parts []part
	room  []float64 // per item, certain supply less certain need
}

// fold multiplies the certain figures into the terms, and adds terms without
// any other use to room.
func (m *Model) fold() folded {
	f := folded{room: make([]float64, m.Items)}
	m.foldTerms(&f, m.Needs, 1)
	m.foldTerms(&f, m.Supplies, -1)
	return f
}

// foldTerms folds one list; sign is 1 for needs and -1 for supplies.
func (m *Model) foldTerms(f *folded, terms []Term, sign float64) {
	for i := range terms {
		p := part{terms[i].Item, sign * terms[i].Amount, nil}
		for _, u := range terms[i].Uses {
			if of := m.Factors[u.Factor]; of.Certain() {
				p.litres = float64(p.litres * u.Kind.effect(of.Low))
			} else {
				p.uses = append(p.uses, u)
			}
		}
		switch {
		case len(p.uses) == 0:
			f.room[p.item] -= p.litres
		case p.litres != 0:
			stable.Sort(p.uses, compareUses)
			f.parts = append(f.parts, p)
		}
	}
}

// compareUses orders uses by factor, then by kind.
func compareUses(a, b Use) int {
	return cmp.Or(cmp.Compare(a.Factor, b.Factor), cmp.Compare(a.Kind, b.Kind))
}

// varying returns the factors in use, in order.
func (f *folded) varying() []int {
	var out []int
	for _, p := range f.parts {
		for _, u := range p.uses {
			out = append(out, u.Factor)
		}
	}
	stable.Sort(out, cmp.Compare[int])
	return slices.Compact(out)
}
