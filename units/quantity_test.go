package units

import (
	"encoding"
	"encoding/json"
	"errors"
	"math/big"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestText checks that every kind is written as text in JSON and in flags, and
// reads back.
func TestText(t *testing.T) {
	type all struct {
		Length  Length
		Area    Area
		Volume  Volume
		Mass    Mass
		Density Density
		Ratio   Ratio
		Money   Money
	}
	want := all{3 * Inch, 240 * SquareFoot, CubicYard, 40 * Pound, 652_604_063, Percent(10), 475}
	text, err := json.Marshal(want)
	require.NoError(t, err)
	const written = `{"Length":"76.2 mm","Area":"22.2967296 sq m","Volume":"764.554857984 L",` +
		`"Mass":"18.1436948 kg","Density":"652.604063 kg/m3","Ratio":"10%","Money":"4.75"}`
	if got, want := string(text), written; got != want {
		t.Errorf("Marshal = %s\nwant %s", got, want)
	}
	var got all
	require.NoError(t, json.Unmarshal(text, &got))
	if diff := cmp.Diff(want, got, cmp.Comparer(func(a, b Ratio) bool { return a == b })); diff != "" {
		t.Errorf("Unmarshal (-want +got)\n%s", diff)
	}
	for _, q := range []encoding.TextUnmarshaler{
		new(Length), new(Area), new(Volume), new(Mass), new(Density), new(Ratio), new(Money),
	} {
		var e *Error
		require.ErrorAs(t, q.UnmarshalText([]byte("3 firkins")), &e)
	}
}

// TestArithmetic compares every product with math/big, and ok with the limit.
func TestArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Int64Range(-5, int64(MaxVolume)).Draw(t, "v")
		n, d := rapid.Int64Range(-2, 1<<40).Draw(t, "n"), rapid.Int64Range(-2, 1<<40).Draw(t, "d")
		check := func(what string, got int64, ok bool, max int64, num, den *big.Int, sound bool) {
			if !sound || den.Sign() <= 0 {
				if ok {
					t.Fatalf("%s is ok", what)
				}
				return
			}
			want := roundHalfUp(new(big.Rat).SetFrac(num, den))
			if fits := want.Cmp(big.NewInt(max)) <= 0; fits != ok || ok && want.Cmp(big.NewInt(got)) != 0 {
				t.Fatalf("%s = %d, %v, want %v", what, got, ok, want)
			}
		}
		one := big.NewInt(1)
		product := new(big.Int).Mul(big.NewInt(v), big.NewInt(n))
		times, ok := Volume(v).Times(n)
		check("Volume.Times", int64(times), ok, int64(MaxVolume), product, one, v >= 0 && n >= 0)
		mass, ok := Mass(v).Times(n)
		check("Mass.Times", int64(mass), ok, int64(MaxMass), product, one, v >= 0 && n >= 0)
		scaled, ok := Volume(v).MulDiv(n, d)
		check("Volume.MulDiv", int64(scaled), ok, int64(MaxVolume), product, big.NewInt(d), v >= 0 && n >= 0 && d > 0)
		weight, ok := Volume(v).Mass(Density(n))
		check("Volume.Mass", int64(weight), ok, int64(MaxMass), product, big.NewInt(int64(Litre)), v >= 0 && n >= 0)
		if v >= 0 && n >= 0 && d > 0 && n <= d {
			share, rest := Volume(v).Share(n, d)
			back := new(big.Int).Add(new(big.Int).Mul(big.NewInt(int64(share)), big.NewInt(d)), big.NewInt(rest))
			if back.Cmp(product) != 0 || rest < 0 || rest >= d {
				t.Fatalf("Volume(%d).Share(%d, %d) = %d rest %d", v, n, d, share, rest)
			}
		}
		fits := v >= 0 && n >= 0 && product.IsInt64()
		if c, ok := Money(v).Times(n); ok != fits || ok && big.NewInt(int64(c)).Cmp(product) != 0 {
			t.Fatalf("Money(%d).Times(%d) = %d, %v", v, n, c, ok)
		}
	})
}

func TestVolumeOfLitres(t *testing.T) {
	for _, tt := range []struct {
		in   float64
		want Volume
		ok   bool
	}{
		{0, 0, true}, {1.5, 1500 * Millilitre, true}, {1e9, MaxVolume, true},
		{0.0000000004, 0, true}, {-1, 0, false}, {1.1e9, 0, false},
		{nan(), 0, false},
	} {
		if got, ok := VolumeOfLitres(tt.in); got != tt.want || ok != tt.ok {
			t.Errorf("VolumeOfLitres(%v) = %d, %v, want %d, %v", tt.in, got, ok, tt.want, tt.ok)
		}
	}
	if got := (1500 * Millilitre).Litres(); got != 1.5 {
		t.Errorf("Litres = %v", got)
	}
}

func nan() float64 { zero := 0.0; return zero / zero }

func TestRatio(t *testing.T) {
	third, err := NewRatio(2, 6)
	require.NoError(t, err)
	if third.Num() != 1 || third.Den() != 3 || third.Float() != 1.0/3 {
		t.Errorf("2/6 = %d/%d", third.Num(), third.Den())
	}
	var zero Ratio
	if !zero.Less(third) || third.Less(zero) || third.Less(third) || zero.Den() != 1 {
		t.Error("Less is not an order")
	}
	for bad, want := range map[[2]int64]string{
		{-1, 2}: "ratio.range", {1, 0}: "ratio.range", {1, -1}: "ratio.range", {101, 1}: "ratio.range",
		{1, 1_000_001}: "ratio.digits",
	} {
		var e *Error
		if r, err := NewRatio(bad[0], bad[1]); !errors.As(err, &e) || e.Code != want {
			t.Errorf("NewRatio(%d, %d) = %v, %v, want %s", bad[0], bad[1], r, err, want)
		}
	}
}

func TestParseNumber(t *testing.T) {
	for _, tt := range []struct {
		in       string
		num, den int64
		code     string
	}{
		{"3", 3, 1, ""}, {"0.5", 1, 2, ""}, {"1 1/2", 3, 2, ""}, {"1½", 3, 2, ""}, {" 2 ", 2, 1, ""}, {"0", 0, 1, ""},
		{"", 0, 1, "number.missing"}, {"three", 0, 1, "number.missing"}, {"-1", 0, 1, "quantity.negative"},
		{"3 L", 0, 1, "number.bad"}, {"1,5", 0, 1, "number.comma"}, {"1000001", 0, 1, "quantity.large"}, {"\xff", 0, 1, "text.utf8"},
	} {
		num, den, err := ParseNumber(tt.in)
		var e *Error
		code := ""
		if errors.As(err, &e) {
			code = e.Code
		}
		if num != tt.num || den != tt.den || code != tt.code {
			t.Errorf("ParseNumber(%q) = %d/%d, %q, want %d/%d, %q", tt.in, num, den, code, tt.num, tt.den, tt.code)
		}
	}
}

func TestParseMeasure(t *testing.T) {
	for _, m := range []Measure{US, Metric, Both} {
		if got, ok := ParseMeasure(m.String()); got != m || !ok {
			t.Errorf("ParseMeasure(%q) = %v, %v", m, got, ok)
		}
	}
	if m, ok := ParseMeasure("imperial"); ok {
		t.Errorf("ParseMeasure takes imperial as %v", m)
	}
}

// TestUnits checks that the list has every row, with spellings that people can
// read.
func TestUnits(t *testing.T) {
	list := Units()
	if len(list) != len(table) {
		t.Fatalf("%d units, want %d", len(list), len(table))
	}
	if got, want := list[0], (Unit{"in", "length", `inch, inches, ins, ", '', pulg, pulgada, pulgadas`}); got != want {
		t.Errorf("Units()[0] = %v, want %v", got, want)
	}
}

// TestFold checks every character that people type in place of a plain one.
func TestFold(t *testing.T) {
	for in, want := range map[string]Length{
		"⅓ yd": Foot, "⅔ yd": 2 * Foot, "¼ in": Inch / 4, "¾ in": 3 * Inch / 4, "⅛ in": Inch / 8, "⅜ in": 3 * Inch / 8,
		"⅝ in": 5 * Inch / 8, "⅞ in": 7 * Inch / 8, "⅕ m": Metre / 5, "⅖ m": 2 * Metre / 5, "⅗ m": 3 * Metre / 5,
		"⅘ m": 4 * Metre / 5, "⅙ ft": 2 * Inch, "⅚ ft": 10 * Inch, "1\u2009m": Metre, "1\u202fm": Metre, "1\tm": Metre, "12‑inch": Foot,
	} {
		if got, err := ParseLength(in); got != want || err != nil {
			t.Errorf("ParseLength(%q) = %d, %v, want %d", in, got, err, want)
		}
	}
}
