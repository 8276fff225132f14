package sure_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"example.org/barrow/mix/sure"
)

// uses lists factors that multiply.
func uses(factors ...int) (out []sure.Use) {
	for _, f := range factors {
		out = append(out, sure.Use{Factor: f})
	}
	return out
}

// flat lists n uniform factors.
func flat(n int, low, high float64) []sure.Factor {
	out := make([]sure.Factor, n)
	for i := range out {
		out[i] = sure.Factor{Low: low, High: high, Flat: true}
	}
	return out
}

// exactly lists certain supplies, item by item.
func exactly(litres ...float64) (out []sure.Term) {
	for i, v := range litres {
		out = append(out, sure.Term{Item: i, Amount: v})
	}
	return out
}

// random makes a model of up to 5 items and 12 factors: a mixture of flat,
// triangular, one-sided and certain factors and of means of pieces; terms that share factors, use one
// twice or both ways, in needs and supplies alike; supplies near the needs.
func random(seed uint64) *sure.Model {
	r := rand.New(rand.NewPCG(seed, 1))
	m := &sure.Model{Items: 1 + r.IntN(5)}
	for i := range 2 + r.IntN(11) {
		f := sure.Factor{Name: fmt.Sprint("f", i), Low: 0.4 * r.Float64(), Flat: r.IntN(3) == 0}
		f.High = f.Low + 0.5*r.Float64()
		f.Mode = f.Low + (f.High-f.Low)*r.Float64()
		switch r.IntN(9) {
		case 8:
			f.Pieces = 1 + r.Int64N(6)
		case 0:
			f.Mode = f.Low
		case 1:
			f.Mode = f.High
		case 2:
			f.Mode, f.High = f.Low, f.Low
		}
		m.Factors = append(m.Factors, f)
	}
	term := func(item int) sure.Term {
		t := sure.Term{Item: item, Amount: 20 + 200*r.Float64()}
		for range r.IntN(4) {
			t.Uses = append(t.Uses, sure.Use{Factor: r.IntN(len(m.Factors)), Kind: sure.Kind(r.IntN(2))})
		}
		return t
	}
	for item := range m.Items {
		for range 1 + r.IntN(4) {
			m.Needs = append(m.Needs, term(item))
		}
	}
	need := make([]float64, m.Items)
	for _, t := range m.Needs {
		need[t.Item] += typical(m, t)
	}
	for item, v := range need {
		v *= 0.95 + 0.5*r.Float64()
		if r.IntN(2) == 0 {
			m.Supplies = append(m.Supplies, sure.Term{Item: item, Amount: v})
			continue
		}
		part := term(item)
		part.Amount = 0.4 * v
		m.Supplies = append(m.Supplies, part, sure.Term{Item: item, Amount: max(v-typical(m, part), 0)})
	}
	return m
}

// typical is a term with every factor at its typical figure.
func typical(m *sure.Model, t sure.Term) float64 {
	v := t.Amount
	for _, u := range t.Uses {
		if x := m.Factors[u.Factor].Typical(); u.Kind == sure.Loss {
			v = float64(v / (1 - x))
		} else {
			v = float64(v * x)
		}
	}
	return v
}

// simulated draws the model plainly, n times, sharing no code with the
// package: the inverse of each distribution is written out again.
func simulated(m *sure.Model, n int, seed uint64) (all float64, item []float64) {
	r := rand.New(rand.NewPCG(seed, 2))
	times, grown := make([]float64, len(m.Factors)), make([]float64, len(m.Factors))
	margin := make([]float64, m.Items)
	add := func(terms []sure.Term, sign float64) {
		for i := range terms {
			v := sign * terms[i].Amount
			for _, u := range terms[i].Uses {
				if u.Kind == sure.Loss {
					v *= grown[u.Factor]
				} else {
					v *= times[u.Factor]
				}
			}
			margin[terms[i].Item] += v
		}
	}
	good := 0
	item = make([]float64, m.Items)
	for range n {
		for i, f := range m.Factors {
			times[i] = drawn(f, r)
			grown[i] = 1 / (1 - times[i])
		}
		clear(margin)
		add(m.Supplies, 1)
		add(m.Needs, -1)
		ok := 1
		for i, v := range margin {
			if v >= -sure.Slack {
				item[i]++
			} else {
				ok = 0
			}
		}
		good += ok
	}
	for i := range item {
		item[i] /= float64(n)
	}
	return float64(good) / float64(n), item
}

// drawn draws a figure; of pieces, one after another, and takes their mean.
func drawn(f sure.Factor, r *rand.Rand) float64 {
	if f.Pieces == 0 {
		return inverse(f, r.Float64())
	}
	f.Mode = (f.Low + f.High) / 2
	var sum float64
	for range f.Pieces {
		sum += inverse(f, r.Float64())
	}
	return sum / float64(f.Pieces)
}

// inverse is the figure of a single draw that is not exceeded with probability
// u.
func inverse(f sure.Factor, u float64) float64 {
	w := f.High - f.Low
	switch {
	case f.Flat:
		return f.Low + w*u
	case u*w < f.Mode-f.Low:
		return f.Low + math.Sqrt(u*w*(f.Mode-f.Low))
	default:
		return f.High - math.Sqrt((1-u)*w*(f.High-f.Mode))
	}
}
