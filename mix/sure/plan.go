package sure

import (
	"cmp"
	"slices"

	"example.org/barrow/mix/stable"
)

// plan is a folded model arranged for many draws. The need less the supply of
// an item is base + slope*u, where u is the effect of one factor, the pivot,
// and base and slope depend on the other factors. So each draw of the others
// gives an interval of the pivot in which everything is enough, and the pivot's
// distribution gives its exact probability. That is one dimension less, and a
// smooth function to average instead of a jump. Without a pivot, slope is 0.
type plan struct {
	room     []float64 // per item
	live     []int     // the items with a part that varies
	pivot    *law
	kind     Kind // how the pivot enters
	axis     int  // the pivot's dimension
	columns  []column
	products []product
}

// column is the effect of one factor in one kind of use, and its dimension.
type column struct {
	use Use
	law law
	dim int
}

// product is a set of uses that is multiplied once for all the parts that share
// it, as the materials of one mix do.
type product struct {
	columns []int
	pivot   bool
	shares  []share
}

// share is where a product goes: that many litres of it to one live item.
type share struct {
	live   int
	litres float64
}

// plan folds the model, chooses the pivot and joins parts with equal uses.
func (m *Model) plan() *plan {
	f := m.fold()
	p := &plan{room: f.room, live: f.live()}
	order := m.order(f.varying())
	pivot, dims := p.choose(m, &f, order)
	stable.Sort(f.parts, func(a, b part) int {
		return cmp.Or(slices.CompareFunc(a.uses, b.uses, compareUses), cmp.Compare(a.item, b.item))
	})
	for i, one := range f.parts {
		if i == 0 || !slices.Equal(one.uses, f.parts[i-1].uses) {
			p.products = append(p.products, p.product(m, one.uses, pivot, dims))
		}
		last := &p.products[len(p.products)-1]
		live, _ := slices.BinarySearch(p.live, one.item)
		if n := len(last.shares); n > 0 && last.shares[n-1].live == live {
			last.shares[n-1].litres += one.litres
		} else {
			last.shares = append(last.shares, share{live, one.litres})
		}
	}
	return p
}

// live returns the items that have a part that varies, in order.
func (f *folded) live() []int {
	var out []int
	for _, p := range f.parts {
		out = append(out, p.item)
	}
	stable.Sort(out, cmp.Compare[int])
	return slices.Compact(out)
}

// order sorts factors by influence, the largest first. Factors that move
// nothing with the others at their typical figure come last.
func (m *Model) order(varying []int) []int {
	rank := make([]int, len(m.Factors))
	for i, in := range m.influences() {
		rank[in.Factor] = i - len(m.Factors)
	}
	out := slices.Clone(varying)
	stable.Sort(out, func(a, b int) int { return cmp.Compare(rank[a], rank[b]) })
	return out
}

// choose makes the pivot the most influential factor that enters every part at
// most once and always in the same way. It gives the others their dimensions in
// order, and the pivot the last one. It returns the pivot, or -1, and the
// dimension of each factor.
func (p *plan) choose(m *Model, f *folded, order []int) (pivot int, dims []int) {
	pivot = -1
	for _, one := range order {
		if kind, ok := f.once(one); ok {
			l := m.Factors[one].law()
			pivot, p.pivot, p.kind, p.axis = one, &l, kind, len(order)-1
			break
		}
	}
	dims = make([]int, len(m.Factors))
	next := 0
	for _, one := range order {
		if one != pivot {
			dims[one] = next
			next++
		}
	}
	return pivot, dims
}

// once reports whether a factor enters each part at most once and always in the
// same way, and which way.
func (f *folded) once(factor int) (kind Kind, ok bool) {
	found := false
	for _, p := range f.parts {
		here := 0
		for _, u := range p.uses {
			if u.Factor != factor {
				continue
			}
			here++
			if here > 1 || found && u.Kind != kind {
				return 0, false
			}
			kind, found = u.Kind, true
		}
	}
	return kind, found
}

// product returns the product of uses, without the pivot, with new columns
// where needed.
func (p *plan) product(m *Model, uses []Use, pivot int, dims []int) product {
	var out product
	for _, u := range uses {
		if u.Factor == pivot {
			out.pivot = true
			continue
		}
		i := slices.IndexFunc(p.columns, func(c column) bool { return c.use == u })
		if i < 0 {
			i = len(p.columns)
			p.columns = append(p.columns, column{u, m.Factors[u.Factor].law(), dims[u.Factor]})
		}
		out.columns = append(out.columns, i)
	}
	return out
}

// below returns the probability that the effect of the pivot is at most u.
// Without a pivot, u is infinite.
func (p *plan) below(u float64) float64 {
	switch {
	case p.pivot == nil && u > 0:
		return 1
	case p.pivot == nil:
		return 0
	case p.kind == Times:
		return p.pivot.below(u)
	case u >= 1:
		return p.pivot.below(1 - 1/u)
	default:
		return 0
	}
}

// between returns the probability that the effect of the pivot is from low to
// high.
func (p *plan) between(low, high float64) float64 {
	if !(low < high) {
		return 0
	}
	return max(p.below(high)-p.below(low), 0)
}
