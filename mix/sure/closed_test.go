package sure_test

import (
	"math"
	"testing"

	"example.org/barrow/mix/sure"
)

// large makes the millilitre of slack too small to see.
const large = 1e9

// TestClosedForms compares chances with ones worked out by hand (plain calculus
// on the definitions), within four standard errors, or to rounding where the
// package says that it does not sample.
func TestClosedForms(t *testing.T) {
	loss := func(f int) sure.Use { return sure.Use{Factor: f, Kind: sure.Loss} }
	need := func(litres float64, u ...sure.Use) sure.Term { return sure.Term{Amount: litres * large, Uses: u} }
	tri := sure.Factor{Low: 1, Mode: 2, High: 5}
	both := []sure.Use{{Factor: 0}, {Factor: 1}}
	cases := []struct {
		name          string
		factors       []sure.Factor
		needs, supply []sure.Term
		want          float64
		exact         bool
	}{
		{"triangle, rising side", []sure.Factor{tri}, []sure.Term{need(1, uses(0)...)}, exactly(1.5 * large), 0.25 / 4, true},
		{"triangle, falling side", []sure.Factor{tri}, []sure.Term{need(1, uses(0)...)}, exactly(4 * large), 1 - 1.0/12, true},
		{"triangle, at the mode", []sure.Factor{tri}, []sure.Term{need(1, uses(0)...)}, exactly(2 * large), 0.25, true},
		{"one loss", flat(1, 0, 0.5), []sure.Term{need(1, loss(0))}, exactly(1.5 * large), 2.0 / 3, true},
		{"a square", flat(1, 0, 1), []sure.Term{need(1, uses(0, 0)...)}, exactly(0.25 * large), 0.5, true},
		{"between two roots, x = 0.2 and 0.5", flat(1, 0, 1), []sure.Term{need(100, uses(0, 0)...), need(10)}, []sure.Term{need(70, uses(0)...)}, 0.3, true},
		{"outside two roots", flat(1, 0, 1), []sure.Term{need(70, uses(0)...)}, []sure.Term{need(100, uses(0, 0)...), need(10)}, 0.7, true},
		{"x/(1-x) against 1", flat(1, 0, 0.8), []sure.Term{need(1, uses(0)[0], loss(0))}, exactly(large), 0.5 / 0.8, true},
		{"two losses of one figure", flat(1, 0, 0.5), []sure.Term{need(1, loss(0), loss(0))}, exactly(2.25 * large), 2.0 / 3, true},
		{"sum of two", flat(2, 0, 1), []sure.Term{need(1, uses(0)...), need(1, uses(1)...)}, exactly(0.7 * large), 0.7 * 0.7 / 2, false},
		{"sum of three", flat(3, 0, 1), []sure.Term{need(1, uses(0)...), need(1, uses(1)...), need(1, uses(2)...)}, exactly(1.2 * large), irwinHall(3, 1.2), false},
		{"3X at most 4Y", flat(2, 0, 1), []sure.Term{need(3, uses(0)...)}, []sure.Term{need(4, uses(1)...)}, 1 - 3.0/8, false},
		{"4X at most 3Y", flat(2, 0, 1), []sure.Term{need(4, uses(0)...)}, []sure.Term{need(3, uses(1)...)}, 3.0 / 8, false},
		{"XY at most 0.3", flat(2, 0, 1), []sure.Term{need(1, both...)}, exactly(0.3 * large), 0.3 - 0.3*math.Log(0.3), false},
		// a, b = 1-x, 1-y uniform on (1/2, 1): P(ab >= 1/2) = 4 * integral of (1 - 1/2a) from 1/2 to 1.
		{"two losses", flat(2, 0, 0.5), []sure.Term{need(1, loss(0), loss(1))}, exactly(2 * large), 2 - 2*math.Ln2, false},
		// XX <= Y: integral of the root of y.
		{"a square against a figure", flat(2, 0, 1), []sure.Term{need(1, uses(0, 0)...)}, []sure.Term{need(1, uses(1)...)}, 2.0 / 3, false},
		// XX <= YY has no pivot at all.
		{"a square against a square", flat(2, 0, 1), []sure.Term{need(1, uses(0, 0)...)}, []sure.Term{need(1, uses(1, 1)...)}, 0.5, false},
		// P(X + T <= 1), T triangular on (0, 1) with mode 0: density 2(1-t), integral of 2(1-t)(1-t).
		{"uniform and triangle", []sure.Factor{{High: 1, Flat: true}, {High: 1}}, []sure.Term{need(1, uses(0)...), need(1, uses(1)...)}, exactly(large), 2.0 / 3, false},
	}
	for _, c := range cases {
		m := &sure.Model{Items: 1, Factors: c.factors, Needs: c.needs, Supplies: c.supply}
		got := m.Chance()
		allowed := 4 * got.Error
		if c.exact {
			allowed = 1e-9
		}
		if c.exact != (got.Error == 0) || math.Abs(got.All-c.want) > allowed || math.Abs(got.Item[0]-got.All) > 1e-12 {
			t.Errorf("%s: Chance() = %+v, want %v +- %v", c.name, got, c.want, allowed)
		}
	}
}

// irwinHall is the chance that n uniforms sum to at most x.
func irwinHall(n int, x float64) float64 {
	var sum, choose, factorial float64 = 0, 1, 1
	for k := 0; k <= n && float64(k) < x; k++ {
		sum += choose * math.Pow(x-float64(k), float64(n))
		choose *= -float64(n-k) / float64(k+1)
	}
	for k := 2; k <= n; k++ {
		factorial *= float64(k)
	}
	return sum / factorial
}

// TestManyEqual: sums of many equal uniforms against the exact Irwin-Hall
// chance at 12, and against the normal limit at 48, where the limit itself is
// within 0.0006 (next Edgeworth term at one sigma: 1.2/(24 n) * 2 * 0.242).
func TestManyEqual(t *testing.T) {
	for n, allowed := range map[int]float64{12: 0, 48: 0.0006} {
		m := &sure.Model{Items: 1, Factors: flat(n, 0, 1)}
		for i := range n {
			m.Needs = append(m.Needs, sure.Term{Amount: large, Uses: uses(i)})
		}
		for _, z := range []float64{-1, 0, 1, 2} {
			x := float64(n)/2 + z*math.Sqrt(float64(n)/12)
			m.Supplies = exactly(x * large)
			want := 0.5 * math.Erfc(-z/math.Sqrt2)
			if n == 12 {
				want = irwinHall(n, x)
			}
			if got := m.Chance(); math.Abs(got.All-want) > allowed+4*got.Error {
				t.Errorf("%d terms, %v sigma: %+v, want %v", n, z, got, want)
			}
		}
	}
}

// TestSharedAndApart checks that one factor in two items fails both at once,
// while two factors fail independently, so their chances multiply.
func TestSharedAndApart(t *testing.T) {
	m := &sure.Model{Items: 2, Factors: flat(2, 0, 1), Supplies: exactly(0.6*large, 0.7*large)}
	m.Needs = []sure.Term{{0, large, uses(0)}, {1, large, uses(0)}}
	if got := m.Chance(); math.Abs(got.All-0.6) > 1e-9 || got.Error != 0 {
		t.Errorf("shared: %+v, want 0.6", got)
	}
	m.Needs[1].Uses = uses(1)
	if got := m.Chance(); math.Abs(got.All-0.42) > 4*got.Error || math.Abs(got.Item[1]-0.7) > 1e-9 {
		t.Errorf("apart: %+v, want 0.42", got)
	}
}

// TestPastGenerators uses more factors than the lattice has dimensions.
func TestPastGenerators(t *testing.T) {
	m := &sure.Model{Items: 1, Factors: flat(150, 0, 1)}
	for i := range m.Factors {
		m.Needs = append(m.Needs, sure.Term{Amount: large, Uses: uses(i)})
	}
	m.Supplies = exactly(75 * large)
	if got := m.Chance(); math.Abs(got.All-0.5) > 4*got.Error {
		t.Errorf("Chance() = %+v, want 0.5", got)
	}
}
