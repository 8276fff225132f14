package mix_test

import (
	"math/big"
	"sync"
)

// exact is a fraction. A curved one came through pi or a root, which the model
// takes to 200 bits and the program takes through floating point.
type exact struct {
	rat    *big.Rat
	curved bool
}

func exactly(num, den int64) exact { return exact{rat: big.NewRat(num, den)} }

// decimal reads a fraction from a constant of this test.
func decimal(s string) exact {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("not a number: " + s)
	}
	return exact{rat: r}
}

func (a exact) plus(b exact) exact {
	return exact{new(big.Rat).Add(a.rat, b.rat), a.curved || b.curved}
}

func (a exact) minus(b exact) exact {
	return exact{new(big.Rat).Sub(a.rat, b.rat), a.curved || b.curved}
}

func (a exact) times(b exact) exact {
	return exact{new(big.Rat).Mul(a.rat, b.rat), a.curved || b.curved}
}

func (a exact) over(b exact) exact {
	return exact{new(big.Rat).Quo(a.rat, b.rat), a.curved || b.curved}
}

func (a exact) taken(n int64) exact { return a.times(exactly(n, 1)) }

func (a exact) rest() exact { return exactly(1, 1).minus(a) } // what a share leaves of the whole

func (a exact) less(b exact) bool { return a.rat.Cmp(b.rat) < 0 }

func (a exact) float() float64 { f, _ := a.rat.Float64(); return f }

func (a exact) atLeast(b exact) exact {
	if a.less(b) {
		return b
	}
	return a
}

func (a exact) atMost(b exact) exact {
	if b.less(a) {
		return b
	}
	return a
}

// whole rounds half away from zero to a multiple of step, as parsing does.
func (a exact) whole(step exact) exact {
	q := a.over(step)
	twice := new(big.Int).Mul(q.rat.Num(), big.NewInt(2))
	if q.rat.Sign() < 0 {
		twice.Sub(twice, q.rat.Denom())
	} else {
		twice.Add(twice, q.rat.Denom())
	}
	n := twice.Quo(twice, new(big.Int).Mul(q.rat.Denom(), big.NewInt(2)))
	return exact{new(big.Rat).SetInt(n), a.curved}.times(step)
}

// ceil is the least whole number that is not below a.
func (a exact) ceil() int64 {
	n, rest := new(big.Int).DivMod(a.rat.Num(), a.rat.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		n.Add(n, big.NewInt(1))
	}
	return n.Int64()
}

func rooted(f *big.Float) exact {
	r, _ := f.Rat(nil)
	return exact{r, true}
}

func (a exact) root() exact {
	f := new(big.Float).SetPrec(200).SetRat(a.rat)
	return rooted(f.Sqrt(f))
}

var pi = sync.OnceValue(func() exact {
	f, _, err := big.ParseFloat("3.14159265358979323846264338327950288419716939937510582097494459230781640629", 10, 200,
		big.ToNearestEven)
	if err != nil {
		panic(err)
	}
	return rooted(f)
})

// disc is the area of a circle or ellipse by its two diameters.
func disc(a, b exact) exact { return pi().times(a).times(b).over(exactly(4, 1)) }

// spread is a figure with the least and the most it may be.
type spread struct{ low, plan, high exact }

func certain(a exact) spread { return spread{a, a, a} }

func (s spread) plus(o spread) spread {
	return spread{s.low.plus(o.low), s.plan.plus(o.plan), s.high.plus(o.high)}
}

// minus leaves the least where the most is taken away. Nothing is below zero.
func (s spread) minus(o spread) spread {
	zero := exactly(0, 1)
	return spread{
		s.low.minus(o.high).atLeast(zero),
		s.plan.minus(o.plan).atLeast(zero),
		s.high.minus(o.low).atLeast(zero),
	}
}

func (s spread) times(a exact) spread {
	return spread{s.low.times(a), s.plan.times(a), s.high.times(a)}
}

func (s spread) over(a exact) spread { return spread{s.low.over(a), s.plan.over(a), s.high.over(a)} }

func (s spread) taken(n int64) spread {
	return s.times(exactly(n, 1))
}

// typed is a quantity as text and as the count that the text stands for.
type typed struct {
	text  string
	value exact
}

// rounded is a length as the formulas of what is round take it.
func (t typed) rounded() exact { return t.value.whole(nanometre) }

// The steps that quantities are rounded to.
var (
	nanolitre = exactly(1, 1000)      // of a microlitre
	nanometre = exactly(1, 1_000_000) // of a millimetre
)
