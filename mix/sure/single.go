package sure

import (
	"cmp"
	"math"

	"example.org/barrow/mix/stable"
)

// single returns the exact chance when one factor varies. The figures at which
// an item is just enough are the roots of a polynomial; between two of them
// nothing changes, so one test in the middle decides.
func (m *Model) single(f *folded, factor int) float64 {
	of := m.Factors[factor]
	cuts := []float64{of.Low, of.High}
	for i := range m.Items {
		cuts = append(cuts, roots(f.polynomial(i), of.Low, of.High)...)
	}
	stable.Sort(cuts, cmp.Compare[float64])
	x := m.figures(lowest)
	var sum float64
	start := math.NaN() // where the run of figures that are enough begins
	for i, cut := range cuts[:len(cuts)-1] {
		x[factor] = cut + float64((cuts[i+1]-cut)/2)
		ok := m.enough(x, x)
		switch {
		case ok && start != start:
			start = cut
		case !ok && start == start:
			sum += of.Below(cut) - of.Below(start)
			start = math.NaN()
		}
	}
	if start == start {
		sum += of.Below(of.High) - of.Below(start)
	}
	return sum
}

// polynomial returns what an item is short, less its slack, as a polynomial in
// the one factor, lowest power first. It is multiplied by the power of 1-x that
// clears the losses. Losses are below 1, so that power is above 0 and moves no
// root.
func (f *folded) polynomial(item int) []float64 {
	const x, gone = 0, 1
	most := [2]int{}
	powers := func(p part) (n [2]int) {
		for _, u := range p.uses {
			if u.Kind == Loss {
				n[gone]++
			} else {
				n[x]++
			}
		}
		return n
	}
	for _, p := range f.parts {
		if p.item == item {
			n := powers(p)
			most[x], most[gone] = max(most[x], n[x]), max(most[gone], n[gone])
		}
	}
	out := make([]float64, most[x]+most[gone]+1)
	addPower(out, -(f.room[item] + Slack), 0, most[gone])
	for _, p := range f.parts {
		if p.item == item {
			n := powers(p)
			addPower(out, p.litres, n[x], most[gone]-n[gone])
		}
	}
	return out
}

// addPower adds c x^a (1-x)^b to a polynomial.
func addPower(to []float64, c float64, a, b int) {
	for k := range b + 1 {
		to[a+k] += c
		c = -c * float64(b-k) / float64(k+1)
	}
}

// roots returns the places between low and high at which a polynomial changes
// sign. Between two places where its slope changes sign, it has at most one.
func roots(poly []float64, low, high float64) []float64 {
	if len(poly) < 2 {
		return nil
	}
	slope := make([]float64, len(poly)-1)
	for i := range slope {
		slope[i] = poly[i+1] * float64(i+1)
	}
	ends := append(append([]float64{low}, roots(slope, low, high)...), high)
	var out []float64
	for i, end := range ends[1:] {
		if a, b := horner(poly, ends[i]) > 0, horner(poly, end) > 0; a != b {
			out = append(out, halve(ends[i], end, 0, func(x float64) bool { return horner(poly, x) > 0 == b }))
		}
	}
	return out
}

// horner evaluates a polynomial.
func horner(poly []float64, x float64) float64 {
	var y float64
	for i := len(poly) - 1; i >= 0; i-- {
		y = float64(y*x) + poly[i]
	}
	return y
}

// halve returns the lowest number from low to high at which ok holds: at most
// tiny above it, or exact to the last bit. ok must hold at high and from some
// number on.
func halve(low, high, tiny float64, ok func(float64) bool) float64 {
	for high-low > tiny {
		mid := low + float64((high-low)/2)
		if mid <= low || mid >= high {
			break
		}
		if ok(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}
