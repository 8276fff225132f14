package units

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// value is f as a fraction.
func (f Fixed) value() *big.Rat {
	n := new(big.Int).SetUint64(f.whole)
	n.Lsh(n, 64).Or(n, new(big.Int).SetUint64(f.high))
	n.Lsh(n, 64).Or(n, new(big.Int).SetUint64(f.low))
	if f.Negative() {
		n.Sub(n, new(big.Int).Lsh(big.NewInt(1), 192))
	}
	return new(big.Rat).SetFrac(n, new(big.Int).Lsh(big.NewInt(1), 128))
}

// cut is how far a result may be from its exact value, toward zero.
var cut = new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Lsh(big.NewInt(1), 128))

// within reports whether got is want, cut off toward zero.
func within(got, want *big.Rat) bool {
	short := new(big.Rat).Sub(new(big.Rat).Abs(want), new(big.Rat).Abs(got))
	return short.Sign() >= 0 && short.Cmp(cut) < 0
}

// drawFixed draws a number of counts of up to 2^bits either way, whole every third
// time.
func drawFixed(t *rapid.T, name string, bits uint) Fixed {
	f := Fixed{whole: rapid.Uint64Range(0, 1<<bits).Draw(t, name)}
	if rapid.IntRange(0, 2).Draw(t, name+" fraction") > 0 {
		f.high, f.low = rapid.Uint64().Draw(t, name+" high"), rapid.Uint64().Draw(t, name+" low")
	}
	if rapid.Bool().Draw(t, name+" negative") {
		return Fixed{}.Minus(f)
	}
	return f
}

// TestFixed holds every operation against fractions.
func TestFixed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, g := drawFixed(t, "f", 61), drawFixed(t, "g", 61)
		rat := func() *big.Rat { return new(big.Rat) }
		if got, want := f.Plus(g).value(), rat().Add(f.value(), g.value()); got.Cmp(want) != 0 {
			t.Fatalf("the sum is %v, want %v", got, want)
		}
		if got, want := f.Minus(g).value(), rat().Sub(f.value(), g.value()); got.Cmp(want) != 0 {
			t.Fatalf("the difference is %v, want %v", got, want)
		}
		if got, want := f.Over(g), rat().Sub(f.value(), g.value()).Cmp(Grain.value()) > 0; got != want {
			t.Fatalf("over is %t, want %t", got, want)
		}
		if got, want := big.NewInt(f.Round()), roundAway(f.value()); got.Cmp(want) != 0 {
			t.Fatalf("%v rounds to %v, want %v", f.value(), got, want)
		}
		up := rat().Sub(f.value(), Grain.value())
		if n := rat().SetInt64(f.Up()); n.Cmp(up) < 0 || n.Sub(n, big.NewRat(1, 1)).Cmp(up) >= 0 {
			t.Fatalf("%v is %d up", f.value(), f.Up())
		}
		n, d := rapid.Int64Range(0, 1_000_000_000).Draw(t, "n"), rapid.Int64Range(1, 1_000_000_000).Draw(t, "d")
		want := rat().Mul(f.value(), big.NewRat(n, d))
		if rat().Abs(want).Cmp(rat().SetInt64(1<<62)) < 0 && !within(f.MulDiv(n, d).value(), want) {
			t.Fatalf("%v x %d/%d is %v", f.value(), n, d, f.MulDiv(n, d).value())
		}
	})
}

// roundAway rounds half away from zero.
func roundAway(r *big.Rat) *big.Int {
	if r.Sign() < 0 {
		n := roundHalfUp(new(big.Rat).Neg(r))
		return n.Neg(n)
	}
	return roundHalfUp(r)
}

// TestFixedProducts holds areas and layers against fractions.
func TestFixedProducts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, g := drawFixed(t, "f", rapid.UintRange(1, 46).Draw(t, "f bits")), drawFixed(t, "g", rapid.UintRange(1, 46).Draw(t, "g bits"))
		product := new(big.Rat).Mul(f.value(), g.value())
		want := new(big.Rat).Quo(product, big.NewRat(1_000_000, 1))
		got, ok := f.By(g)
		if large := new(big.Rat).Abs(want).Cmp(big.NewRat(int64(MaxArea)+1, 1)) > 0; ok == large || ok && !within(got.value(), want) {
			t.Fatalf("%v by %v is %v, ok is %t, want %v", f.value(), g.value(), got.value(), ok, want)
		}
		want.Quo(product, big.NewRat(1_000_000_000, 1))
		got, ok = f.Deep(g)
		none := f.Negative() || g.Negative()
		if large := want.Cmp(big.NewRat(int64(MaxVolume)+1, 1)) > 0; ok == (none || large) || ok && !within(got.value(), want) {
			t.Fatalf("%v by %v deep is %v, ok is %t, want %v", f.value(), g.value(), got.value(), ok, want)
		}
	})
}

// TestFixedParts: of n/d in lowest terms, d is the least number that is whole.
func TestFixedParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Int64Range(1, 1<<30).Draw(t, "d")
		r := big.NewRat(rapid.Int64Range(0, 1_000_000*d).Draw(t, "n"), d)
		f, _ := fixedOf(r.Num().Uint64(), r.Denom().Uint64(), 1, 1)
		if got, want := f.Parts(1<<30), r.Denom().Int64(); got != want {
			t.Fatalf("%v has %d parts, want %d", r, got, want)
		}
		if got := f.Parts(r.Denom().Int64() - 1); got != 0 {
			t.Fatalf("%v has %d parts, want none below its own", r, got)
		}
	})
}

// TestFixedReads: what is typed is kept to the last digit.
func TestFixedReads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := &table[rapid.IntRange(0, len(table)-2).Draw(t, "unit")]
		n, d := rapid.Uint64Range(0, 1_000_000).Draw(t, "n"), rapid.Uint64Range(1, 1_000_000).Draw(t, "d")
		text := itoa(int64(n)) + "/" + itoa(int64(d)) + " " + u.name
		f, err := parseFixed(text, u.kind, false)
		want := new(big.Rat).Mul(fraction(n, d), fraction(u.num, u.den))
		if u.kind == densityKind || want.Cmp(big.NewRat(kinds[u.kind].max, 1)) > 0 {
			return
		}
		if err != nil || !within(f.value(), want) {
			t.Fatalf("%s is %v, %v, want %v", text, f.value(), err, want)
		}
	})
}
