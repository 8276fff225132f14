package units

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// TestRangeKeepsFractions takes a known volume through sums, counts, losses and
// splits, and holds what is kept of it against fractions.
func TestRangeKeepsFractions(t *testing.T) {
	draw := func(t *rapid.T, name string) (Range, *big.Rat) {
		n, d := rapid.Uint64Range(1, 1e15).Draw(t, name), rapid.Uint64Range(1, 1000).Draw(t, name+" parts")
		f, _ := fixedOf(n, d, 1, 1)
		return Known(f), fraction(n, d)
	}
	rapid.Check(t, func(t *rapid.T) {
		r, want := draw(t, "volume")
		steps := rapid.IntRange(1, 8).Draw(t, "steps")
		for range steps {
			n, d := rapid.Int64Range(1, 40).Draw(t, "n"), rapid.Int64Range(1, 40).Draw(t, "d")
			switch rapid.IntRange(0, 3).Draw(t, "step") {
			case 0:
				s, more := draw(t, "more")
				r, _ = r.Plus(s)
				want = new(big.Rat).Add(want, more)
			case 1:
				s, less := draw(t, "less")
				if less.Cmp(want) >= 0 {
					continue
				}
				r, _ = r.Minus(s)
				want = new(big.Rat).Sub(want, less)
			case 2:
				if want.Cmp(big.NewRat(1e16, 1)) > 0 {
					continue
				}
				r, _ = r.Times(n)
				want = new(big.Rat).Mul(want, big.NewRat(n, 1))
			default:
				if want.Cmp(big.NewRat(1e16, 1)) > 0 {
					continue
				}
				r, _ = r.MulDiv(n, d)
				want = new(big.Rat).Mul(want, big.NewRat(n, d))
			}
		}
		if !r.Certain() || r.FixedLow() != r.FixedPlan() || r.FixedHigh() != r.FixedPlan() {
			t.Fatalf("%v is not known any more", r)
		}
		off := new(big.Rat).Sub(r.FixedPlan().value(), want)
		if off.Abs(off).Cmp(Grain.value()) > 0 {
			t.Fatalf("%v is kept, want %v", r.FixedPlan().value(), want)
		}
	})
}
