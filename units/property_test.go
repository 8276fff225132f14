package units

import (
	"math/big"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

// TestRoundTrip checks parse(String(x)) == x for every kind.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Volume(rapid.Int64Range(0, int64(MaxVolume)).Draw(t, "volume"))
		if got, err := ParseVolume(v.String()); got != v || err != nil {
			t.Fatalf("ParseVolume(%q) = %d, %v, want %d", v, got, err, v)
		}
		l := Length(rapid.Int64Range(-int64(MaxLength), int64(MaxLength)).Draw(t, "length"))
		if got, err := ParseOffset(l.String()); got != l || err != nil {
			t.Fatalf("ParseOffset(%q) = %d, %v, want %d", l, got, err, l)
		}
		// An area needs 12 places and up to 7 digits before them, one more than a
		// number may have: the largest are refused, never misread.
		a := Area(rapid.Int64Range(0, 999_999_999_999_999_999).Draw(t, "area"))
		if got, err := ParseArea(a.String()); got != a || err != nil {
			t.Fatalf("ParseArea(%q) = %d, %v, want %d", a, got, err, a)
		}
		m := Mass(rapid.Int64Range(0, 999_999_999_999_999_999).Draw(t, "mass"))
		if got, err := ParseMass(m.String()); got != m || err != nil {
			t.Fatalf("ParseMass(%q) = %d, %v, want %d", m, got, err, m)
		}
		d := Density(rapid.Int64Range(0, int64(MaxDensity)).Draw(t, "density"))
		if got, err := ParseDensity(d.String()); got != d || err != nil {
			t.Fatalf("ParseDensity(%q) = %d, %v, want %d", d, got, err, d)
		}
		c := Money(rapid.Int64Range(0, int64(MaxMoney)).Draw(t, "money"))
		if got, err := ParseMoney(c.String()); got != c || err != nil {
			t.Fatalf("ParseMoney(%q) = %d, %v, want %d", c, got, err, c)
		}
		den := rapid.Int64Range(1, maxTerm).Draw(t, "den")
		r, err := NewRatio(rapid.Int64Range(0, min(maxTerm, maxRatio*den)).Draw(t, "num"), den)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := ParseRatio(r.String()); got != r || err != nil {
			t.Fatalf("ParseRatio(%q) = %v, %v, want %v", r, got, err, r)
		}
	})
}

// TestParseIsExact compares a number in a unit with the nearest whole count by
// math/big, halves up.
func TestParseIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := &table[rapid.IntRange(0, len(table)-2).Draw(t, "unit")] // the last is the share, which has no count
		places := rapid.IntRange(0, 9).Draw(t, "places")
		digits := rapid.Uint64Range(0, 999_999_999_999).Draw(t, "digits")
		s := string(appendDecimal(nil, int64(digits), places)) + " " + u.name
		want := new(big.Rat).Mul(fraction(digits, 1), fraction(u.num, u.den))
		want.Quo(want, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
		got, err := parse(s, u.kind, false)
		if limit := new(big.Rat).SetInt64(kinds[u.kind].max); want.Cmp(limit) > 0 {
			if err == nil {
				t.Fatalf("parse(%q) = %d, want it refused", s, got)
			}
			return
		}
		if err != nil {
			t.Fatalf("parse(%q): %v", s, err)
		}
		if nearest := roundHalfUp(want); nearest.Cmp(big.NewInt(got)) != 0 {
			t.Fatalf("parse(%q) = %d, want %v", s, got, nearest)
		}
	})
}

// TestFractionsAreExact does the same for mixed numbers.
func TestFractionsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Uint64Range(0, 9999).Draw(t, "whole")
		d := rapid.Uint64Range(2, maxDenominator).Draw(t, "d")
		n := rapid.Uint64Range(0, min(9999, d-1)).Draw(t, "n")
		part := strconv.FormatUint(n, 10) + "/" + strconv.FormatUint(d, 10)
		s := strconv.FormatUint(whole, 10) + " " + part + " cu in"
		want := new(big.Rat).Mul(new(big.Rat).Add(fraction(whole, 1), fraction(n, d)), fraction(cuIn, 1))
		got, err := ParseVolume(s)
		if err != nil || roundHalfUp(want).Cmp(big.NewInt(int64(got))) != 0 {
			t.Fatalf("ParseVolume(%q) = %d, %v, want %v", s, got, err, want.FloatString(3))
		}
	})
}

func roundHalfUp(r *big.Rat) *big.Int {
	twice := new(big.Int).Add(new(big.Int).Mul(r.Num(), big.NewInt(2)), r.Denom())
	return twice.Div(twice, new(big.Int).Mul(r.Denom(), big.NewInt(2)))
}

// TestMulDiv compares the 128-bit product and quotient with math/big.
func TestMulDiv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := rapid.Uint64().Draw(t, "a"), rapid.Uint64().Draw(t, "b"), rapid.Uint64().Draw(t, "c")
		got, ok := mulDiv(a, b, c)
		if c == 0 {
			if ok {
				t.Fatal("divided by zero")
			}
			return
		}
		want := roundHalfUp(new(big.Rat).Mul(fraction(a, 1), fraction(b, c)))
		if fits := want.IsInt64() && want.Int64() < 1<<63-1; fits != ok || ok && want.Int64() != got {
			t.Fatalf("mulDiv(%d, %d, %d) = %d, %v, want %v", a, b, c, got, ok, want)
		}
	})
}

// TestMulDivAtTheEdge checks that a quotient of all ones does not wrap around.
func TestMulDivAtTheEdge(t *testing.T) {
	if v, ok := Volume(4504149450301441).MulDiv(8191, 2); ok {
		t.Errorf("MulDiv = %d", v)
	}
	if v, err := ParseVolume("900462582326267734/799921 cu in"); err == nil {
		t.Errorf("ParseVolume = %d", v)
	}
	if n, ok := mulDiv(1<<64-1, 1, 1); ok {
		t.Errorf("mulDiv = %d", n)
	}
}

// TestMulDivDiv does the same where the divisor is a product.
func TestMulDivDiv(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Uint64().Draw(t, "a"), rapid.Uint64().Draw(t, "b")
		c, d := rapid.Uint64().Draw(t, "c"), rapid.Uint64().Draw(t, "d")
		if rapid.Bool().Draw(t, "half way") && c > 0 && d > 0 { // a*b = (2k+1)*c*d/2
			c, d = c%1_000_000*2+2, d%1_000_000+1
			a, b = (2*(a%1000)+1)*(c/2), d
		}
		got, ok := mulDivDiv(a, b, c, d)
		if c == 0 || d == 0 {
			if ok {
				t.Fatal("divided by zero")
			}
			return
		}
		want := roundHalfUp(new(big.Rat).Mul(fraction(a, c), fraction(b, d)))
		if fits := want.IsInt64() && want.Int64() < 1<<63-1; fits != ok || ok && want.Int64() != got {
			t.Fatalf("mulDivDiv(%d, %d, %d, %d) = %d, %v, want %v", a, b, c, d, got, ok, want)
		}
	})
}

// TestGeometryStaysWithinANanolitre checks that a box in two steps, area and
// depth, is within half a square micrometre's column of the exact product.
func TestGeometryStaysWithinANanolitre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Int64Range(1, int64(100*Metre))
		l, w, d := side.Draw(t, "l"), side.Draw(t, "w"), rapid.Int64Range(1, int64(Metre)).Draw(t, "d")
		a, ok := Length(l).By(Length(w))
		if !ok {
			t.Fatal("out of range")
		}
		v, ok := a.Deep(Length(d))
		if !ok {
			t.Fatal("out of range")
		}
		exact := new(big.Rat).Mul(fraction(uint64(l), 1_000_000), fraction(uint64(w), 1))
		exact.Mul(exact, fraction(uint64(d), 1_000_000_000))
		off := new(big.Rat).Sub(exact, new(big.Rat).SetInt64(int64(v)))
		if off.Abs(off).Cmp(big.NewRat(1, 1)) > 0 {
			t.Fatalf("%d x %d x %d nm = %d nL, off by %s", l, w, d, v, off.FloatString(3))
		}
	})
}

// TestFriendlyIsClose checks that text for people is within half of its third
// digit.
func TestFriendlyIsClose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Volume(rapid.Int64Range(int64(Millilitre), int64(MaxVolume)/2).Draw(t, "volume"))
		for _, m := range []Measure{US, Metric} {
			got, err := ParseVolume(m.Volume(v))
			if err != nil {
				t.Fatalf("%q: %v", m.Volume(v), err)
			}
			if off := float64(got-v) / float64(v); off > 0.0051 || off < -0.0051 {
				t.Fatalf("%s shown for %s is off by %g", m.Volume(v), v, off)
			}
		}
	})
}

// fraction is n/d, in the exact arithmetic that the properties are held to.
func fraction(n, d uint64) *big.Rat {
	return new(big.Rat).SetFrac(new(big.Int).SetUint64(n), new(big.Int).SetUint64(d))
}
