package units

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// TestUnitAtTheEdge: a figure changes its unit exactly at the bound, not before
// it and not after.
func TestUnitAtTheEdge(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{US.Length(24*Inch - Inch/16), "23 15/16 in"},
		{US.Length(24 * Inch), "2 ft"},
		{Metric.Length(20*Millimetre - Millimetre/10), "19.9 mm"},
		{Metric.Length(20 * Millimetre), "2 cm"},
		{Metric.Length(Metre - Millimetre), "99.9 cm"},
		{Metric.Length(Metre), "1 m"},
		{US.Area(SquareFoot - SquareInch), "143 sq in"},
		{US.Area(SquareFoot), "1 sq ft"},
		{US.Area(21_779 * SquareFoot), "21779 sq ft"},
		{US.Area(21_780 * SquareFoot), "1/2 acre"},
		{Metric.Area(SquareMetre/10 - SquareMetre/10_000), "999 sq cm"},
		{Metric.Area(SquareMetre / 10), "0.1 sq m"},
		{Metric.Area(4999 * SquareMetre), "4999 sq m"},
		{Metric.Area(5000 * SquareMetre), "0.5 ha"},
		{US.Volume(Gallon/4 - CubicInch/4), "57 1/2 cu in"},
		{US.Volume(Gallon / 4), "1/4 gal"},
		{US.Volume(CubicFoot/2 - CubicInch), "3.74 gal"},
		{US.Volume(CubicFoot / 2), "1/2 cu ft"},
		{Metric.Volume(Litre - Millilitre), "999 mL"},
		{Metric.Volume(Litre), "1 L"},
		{Metric.Volume(1999 * Litre), "1999 L"},
		{Metric.Volume(2000 * Litre), "2 m3"},
		{US.Mass(Pound * 31 / 32), "15.5 oz"},
		{US.Mass(Pound), "1 lb"},
		{Metric.Mass(Kilogram - Gram), "999 g"},
		{Metric.Mass(Kilogram), "1 kg"},
		{Metric.Mass(9_999 * Kilogram), "9999 kg"},
		{Metric.Mass(10_000 * Kilogram), "10 t"},
		{CubicYards(2 * Volume(Yard/Foot) * CubicFoot), "0.222 cu yd"},
		{US.Volume(100*CubicFoot - CubicFoot/2), "99 1/2 cu ft"},
		{US.Volume(100*CubicFoot + CubicFoot/2), "101 cu ft"},
		{US.Volume(9999 * CubicFoot / 100), "100 cu ft"},
		{US.Volume(996 * CubicFoot / 100), "9.96 cu ft"}, // and not 10, by two digits
		{US.Volume(9996 * CubicFoot / 1000), "10 cu ft"},
		{US.Volume(996 * CubicFoot / 1000), "0.996 cu ft"},
		{US.VolumeLike(CubicFoot/1_000_000_000, CubicFoot), "0.000000001 cu ft"},
		{US.VolumeLike(CubicFoot/3_000_000_000, CubicFoot), "0 cu ft"},
	} {
		if tt.got != tt.want {
			t.Errorf("%q, want %q", tt.got, tt.want)
		}
	}
}

// TestLargest: the largest quantity of each kind is read, and the next is not.
func TestLargest(t *testing.T) {
	for _, tt := range []struct {
		largest, more string
		read          func(string) (int64, error)
		want          int64
	}{
		{"100 km", "100 km 1 mm", func(s string) (int64, error) { l, err := ParseLength(s); return int64(l), err }, 100_000_000_000_000},
		{"400 ha", "4000000.000001 sq m", func(s string) (int64, error) { a, err := ParseArea(s); return int64(a), err }, 4_000_000_000_000_000_000},
		{"1000000 m3", "1000000000.001 L", func(s string) (int64, error) { v, err := ParseVolume(s); return int64(v), err }, 1_000_000_000_000_000_000},
		{"4000000 t", "4000000 t 1 g", func(s string) (int64, error) { m, err := ParseMass(s); return int64(m), err }, 4_000_000_000_000_000_000},
		{"100 g/cm3", "100000.001 kg/m3", func(s string) (int64, error) { d, err := ParseDensity(s); return int64(d), err }, 100_000_000_000},
		{"1000000000", "1000000000.01", func(s string) (int64, error) { m, err := ParseMoney(s); return int64(m), err }, 100_000_000_000},
	} {
		if n, err := tt.read(tt.largest); err != nil || n != tt.want {
			t.Errorf("%s: %d, %v, want %d", tt.largest, n, err, tt.want)
		}
		if n, err := tt.read(tt.more); err == nil {
			t.Errorf("%s: %d, want it refused", tt.more, n)
		}
	}
}

// TestProductsAtTheEdge: a product is as large as its kind may be and no larger,
// and nothing times something is nothing.
func TestProductsAtTheEdge(t *testing.T) {
	type product struct {
		what string
		n    int64
		ok   bool
		want int64 // negative for refused
	}
	of := func(what string, n int64, ok bool, want int64) product { return product{what, n, ok, want} }
	var all []product
	area := func(what string, l, w Length, want int64) {
		a, ok := l.By(w)
		all = append(all, of(what, int64(a), ok, want))
	}
	area("none by some", 0, Metre, 0)
	area("some by none", Metre, 0, 0)
	area("less than none", -1, Metre, -1)
	area("by less than none", Metre, -1, -1)
	area("the largest area", 2000*Metre, 2000*Metre, int64(MaxArea))
	area("a larger one", 2000*Metre, 2000*Metre+1, -1)
	deep := func(what string, a Area, d Length, want int64) {
		v, ok := a.Deep(d)
		all = append(all, of(what, int64(v), ok, want))
	}
	deep("no depth", SquareMetre, 0, 0)
	deep("no area", 0, Metre, 0)
	deep("depth below none", SquareMetre, -1, -1)
	deep("the largest volume", 1_000_000*SquareMetre, Metre, int64(MaxVolume))
	deep("a larger one", 1_000_000*SquareMetre, Metre+1, -1)
	v, ok := MaxVolume.Times(1)
	all = append(all, of("the largest volume once", int64(v), ok, int64(MaxVolume)))
	v, ok = (MaxVolume/2 + 1).Times(2)
	all = append(all, of("more than that", int64(v), ok, -1))
	v, ok = MaxVolume.MulDiv(7, 7)
	all = append(all, of("a whole of it", int64(v), ok, int64(MaxVolume)))
	v, ok = Litre.MulDiv(0, 7)
	all = append(all, of("no part", int64(v), ok, 0))
	v, ok = Litre.MulDiv(7, 0)
	all = append(all, of("no parts", int64(v), ok, -1))
	m, ok := MaxMass.Times(1)
	all = append(all, of("the largest mass once", int64(m), ok, int64(MaxMass)))
	m, ok = (MaxMass/2 + 1).Times(2)
	all = append(all, of("more than that", int64(m), ok, -1))
	m, ok = (40_000 * CubicMetre).Mass(MaxDensity)
	all = append(all, of("the heaviest volume", int64(m), ok, int64(MaxMass)))
	m, ok = (40_000*CubicMetre + 1).Mass(MaxDensity)
	all = append(all, of("a heavier one", int64(m), ok, -1))
	for _, p := range all {
		if p.ok != (p.want >= 0) || p.ok && p.n != p.want {
			t.Errorf("%s: %d, %v, want %d", p.what, p.n, p.ok, p.want)
		}
	}
	if v, rest := Volume(0).Share(1, 2); v != 0 || rest != 0 {
		t.Errorf("a share of nothing: %d rest %d", v, rest)
	}
}

// TestWordsAtTheEdge: the longest text is read, and one character more is not.
func TestWordsAtTheEdge(t *testing.T) {
	fill := func(n int) string { return "1" + strings.Repeat(" ", n-3) + "in" }
	if l, err := ParseLength(fill(maxText)); l != Inch || err != nil {
		t.Errorf("%d characters: %v, %v", maxText, l, err)
	}
	if l, err := ParseLength(fill(maxText + 1)); err == nil {
		t.Errorf("%d characters: %v, want them refused", maxText+1, l)
	}
}

// TestOverflow: what does not fit in 63 bits is refused, up to the last of them.
func TestOverflow(t *testing.T) {
	const most = math.MaxInt64
	if n, ok := mul(most, 1); n != most || !ok {
		t.Errorf("mul: %d, %v", n, ok)
	}
	if _, ok := mul(1<<62, 2); ok {
		t.Error("mul past 63 bits is ok")
	}
	if n, rest, ok := mulDivFloor(most, 3, 3); n != most || rest != 0 || !ok {
		t.Errorf("mulDivFloor: %d rest %d, %v", n, rest, ok)
	}
	if n, _, ok := mulDivFloor(1<<63, 3, 3); ok {
		t.Errorf("mulDivFloor past 63 bits: %d", n)
	}
	if _, _, ok := mulDivFloor(1<<63, 1<<1, 1); ok {
		t.Error("mulDivFloor past 64 bits is ok")
	}
}

// TestMoneySteps reads every cent on the way to a dollar.
func TestMoneySteps(t *testing.T) {
	for cents := range 101 {
		s := strconv.Itoa(cents/100) + "." + strconv.Itoa(cents/10%10) + strconv.Itoa(cents%10)
		if m, err := ParseMoney(s); err != nil || m != Money(cents) {
			t.Errorf("%s: %d, %v", s, m, err)
		}
	}
}
