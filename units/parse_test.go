package units

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Exact counts below are products of the definitions in NIST Handbook 44
// Appendix C: 1 in = 25.4 mm, 1 US gal = 231 cu in, 1 bu = 2150.42 cu in,
// 1 lb = 453.59237 g; and, from NIST SP 811 Appendix B, 1 imp gal = 4.54609 L.

var volumes = []struct {
	why, in string
	want    Volume
}{
	{"decimal", "1.5 cu ft", 3 * CubicFoot / 2},
	{"mixed number", "1 1/2 cu ft", 3 * CubicFoot / 2},
	{"fraction sign", "1½ ft³", 3 * CubicFoot / 2},
	{"hyphen in a mixed number", "1-1/2 cubic feet", 3 * CubicFoot / 2},
	{"fraction alone", "1/2 yd3", CubicYard / 2},
	{"fraction sign alone", "½ yd³", CubicYard / 2},
	{"fraction slash", "1 3⁄4 cu yd", 7 * CubicYard / 4},
	{"no space", "3.8cuft", 107_604_017_050},
	{"full stops", "2 cu. ft.", 2 * CubicFoot},
	{"capitals", "2 Cu Ft", 2 * CubicFoot},
	{"caret", "2 ft^3", 2 * CubicFoot},
	{"a yard is cubic where a volume is asked for", "2 yards", 2 * CubicYard},
	{"litres", "30 L", 30 * Litre},
	{"small letter", "30l", 30 * Litre},
	{"point first", ".5 m3", 500 * Litre},
	{"hard space", "0.5\u00a0m3", 500 * Litre},
	{"trailing zeros count for nothing", "1.500000000000000000 L", 1500 * Millilitre},
	{"liquid quarts", "4 liq qt", Gallon},
	{"dry quarts", "32 dry quarts", 35_239_070_167}, // 35.23907016688 L
	{"bushel", "1 bu", 35_239_070_167},
	{"imperial", "2 imp gal", 9_092_180_000},
	{"half a nanolitre rounds up", "0.0000000005 L", 1},
	{"under half rounds down", "0.0000000004 L", 0},
	{"a third is rounded once", "1/3 cu in", 5_462_355}, // 5,462,354.67
	{"zero is a quantity", "0 L", 0},
	{"the bound", "1000000 m3", MaxVolume},
}

var lengths = []struct {
	why, in string
	want    Length
}{
	{"words", "12 inches", Foot},
	{"feet and inches", "2 ft 6 in", 30 * Inch},
	{"marks", `2' 6"`, 30 * Inch},
	{"marks run together", `2'6"`, 30 * Inch},
	{"curly marks", "2’ 6”", 30 * Inch},
	{"primes", "2′ 6″", 30 * Inch},
	{"run together", "2ft6in", 30 * Inch},
	{"a fraction at the end", "2 ft 6 1/2 in", 30*Inch + Inch/2},
	{"three parts", "1 yd 2 ft 3 in", 63 * Inch},
	{"metric parts", "1 m 20 cm", 1200 * Millimetre},
	{"hyphen before the unit", "12-inch", Foot},
	{"a sixty-fourth", "1/64 in", 396_875},
	{"a yard is long where a length is asked for", "2 yards", 6 * Foot},
}

func TestParseVolume(t *testing.T) {
	for _, tt := range volumes {
		if got, err := ParseVolume(tt.in); got != tt.want || err != nil {
			t.Errorf("%s: ParseVolume(%q) = %d, %v, want %d", tt.why, tt.in, got, err, tt.want)
		}
	}
}

func TestParseLength(t *testing.T) {
	for _, tt := range lengths {
		if got, err := ParseLength(tt.in); got != tt.want || err != nil {
			t.Errorf("%s: ParseLength(%q) = %d, %v, want %d", tt.why, tt.in, got, err, tt.want)
		}
	}
}

func TestParseOthers(t *testing.T) {
	area, err := ParseArea("240 sq ft")
	if want := 240 * SquareFoot; area != want || err != nil {
		t.Errorf("ParseArea = %d, %v, want %d", area, err, want)
	}
	acre, err := ParseArea("1 acre")
	if want := 43_560 * SquareFoot; acre != want || err != nil {
		t.Errorf("ParseArea = %d, %v, want %d", acre, err, want)
	}
	mass, err := ParseMass("1 lb 8 oz")
	if want := 3 * Pound / 2; mass != want || err != nil {
		t.Errorf("ParseMass = %d, %v, want %d", mass, err, want)
	}
	density, err := ParseDensity("1000 lb per cubic yard")
	if want := Density(593_276_421); density != want || err != nil { // 593.276421 kg/m3
		t.Errorf("ParseDensity = %d, %v, want %d", density, err, want)
	}
	offset, err := ParseOffset("-3 ft")
	if want := -3 * Foot; offset != want || err != nil {
		t.Errorf("ParseOffset = %d, %v, want %d", offset, err, want)
	}
	money, err := ParseMoney("4.7")
	if want := Money(470); money != want || err != nil {
		t.Errorf("ParseMoney = %d, %v, want %d", money, err, want)
	}
}

func TestParseRatio(t *testing.T) {
	for _, tt := range []struct {
		in       string
		num, den int64
		text     string
	}{
		{"10%", 1, 10, "10%"},
		{"12.5 percent", 1, 8, "12.5%"},
		{"1/3", 1, 3, "1/3"},
		{"33 1/3 %", 1, 3, "1/3"},
		{"0.25", 1, 4, "25%"},
		{"150%", 3, 2, "150%"},
		{"0", 0, 1, "0%"},
		{"0.0001%", 1, 1_000_000, "0.0001%"},
	} {
		r, err := ParseRatio(tt.in)
		if err != nil || r.Num() != tt.num || r.Den() != tt.den || r.String() != tt.text {
			t.Errorf("ParseRatio(%q) = %d/%d %s, %v, want %d/%d %s",
				tt.in, r.Num(), r.Den(), r, err, tt.num, tt.den, tt.text)
		}
	}
}

func TestLooks(t *testing.T) {
	for in, want := range map[string]struct {
		figure bool
		sides  int
	}{
		"#1": {false, 1}, "tray-72": {false, 1}, "2.8 L": {true, 1}, "⅝ gal": {true, 1}, ".5 L": {true, 1}, "-3 L": {true, 1},
		"6 in x 7 in": {true, 2}, "3 ft ✕ 4 ft": {true, 2}, "3 in * 4 in": {true, 2}, "20 in by 10 in by 2 in": {true, 3},
		"circle 14 ft": {false, 1}, "": {false, 1}, "\xff": {false, 1},
	} {
		if figure, sides := Looks(in); figure != want.figure || sides != want.sides {
			t.Errorf("Looks(%q) = %v, %d, want %v, %d", in, figure, sides, want.figure, want.sides)
		}
	}
}

func TestParseDims(t *testing.T) {
	for _, tt := range []struct {
		in   string
		want []Length
	}{
		{"60 ft x 4 ft", []Length{60 * Foot, 4 * Foot}},
		{"60 x 4 ft", []Length{60 * Foot, 4 * Foot}},
		{"60ftx4ft", []Length{60 * Foot, 4 * Foot}},
		{"2 ft 6 in × 18 in", []Length{30 * Inch, 18 * Inch}},
		{`2'6" * 18"`, []Length{30 * Inch, 18 * Inch}},
		{"20 in by 10 in by 2 1/2 in", []Length{20 * Inch, 10 * Inch, 5 * Inch / 2}},
		{"14 ft", []Length{14 * Foot}},
	} {
		got, err := ParseDims(tt.in)
		if diff := cmp.Diff(tt.want, got); diff != "" || err != nil {
			t.Errorf("ParseDims(%q): %v (-want +got)\n%s", tt.in, err, diff)
		}
	}
}

// refused rows are read by kind: v, l, a, m, d, r (share), c (money), x (dims).
var refused = []struct{ why, kind, in, code string }{
	{"empty", "v", "", "quantity.empty"},
	{"blank", "v", " \t ", "quantity.empty"},
	{"decimal comma", "v", "0,5 m3", "number.comma"},
	{"thousands comma", "v", "1,500 L", "number.comma"},
	{"exponent", "v", "1e400 L", "number.exponent"},
	{"signed exponent", "v", "1e-9 L", "number.exponent"},
	{"not a number", "v", "NaN L", "number.missing"},
	{"infinity", "v", "Inf L", "number.missing"},
	{"plus sign", "v", "+3 L", "number.missing"},
	{"negative", "v", "-3 L", "quantity.negative"},
	{"negative with a real minus", "v", "−3 L", "quantity.negative"},
	{"range", "v", "2-3 cu ft", "number.range"},
	{"range with a dash and spaces", "v", "2 – 3 cu ft", "number.range"},
	{"range in words", "l", "2 to 3 in", "number.range"},
	{"two points", "v", "1.2.3 L", "number.bad"},
	{"zero below", "v", "1/0 L", "number.fraction"},
	{"huge below", "v", "1/10000001 L", "number.fraction"},
	{"more than one after a whole number", "l", "1 5/2 in", "number.fraction"},
	{"decimal above", "v", "1.5/2 L", "number.bad"},
	{"decimal and fraction", "v", "1.5 1/2 L", "number.bad"},
	{"19 digits", "v", "1234567890123456789 mL", "number.digits"},
	{"13 places", "v", "0.1234567890123 L", "number.digits"},
	{"too large", "v", "1000000.000000001 m3", "quantity.large"},
	{"too large for the machine", "v", "999999999999999999 m3", "quantity.large"},
	{"no unit", "v", "12", "unit.missing"},
	{"two numbers", "v", "1 2 L", "unit.missing"},
	{"dry or liquid", "v", "40 qt", "unit.ambiguous"},
	{"dry or liquid pints", "v", "40 pints", "unit.ambiguous"},
	{"feet of volume", "v", "2 ft", "unit.kind"},
	{"weight for a volume", "v", "3 lb", "unit.kind"},
	{"misspelled", "v", "5 gallonz", "unit.unknown"},
	{"no such unit", "v", "5 firkins", "unit.unknown"},
	{"two terms of volume", "v", "2 cu ft 3 gal", "quantity.terms"},
	{"odd character", "v", "3 ☃", "text.odd"},
	{"control character", "v", "3\x00L", "text.odd"},
	{"invalid UTF-8", "v", "3 \xff", "text.utf8"},
	{"long", "v", strings.Repeat("9", 201), "text.long"},
	{"junk after", "v", "3 L!", "number.bad"},
	{"weight for a depth", "l", "3 lb", "unit.kind"},
	{"misspelled inches", "l", "3 inchs", "unit.unknown"},
	{"smaller first", "l", "6 in 2 ft", "quantity.order"},
	{"same twice", "l", "6 in 2 in", "quantity.order"},
	{"fraction before the end", "l", "2.5 ft 6 in", "quantity.order"},
	{"sum too large", "l", "100 km 1 m", "quantity.large"},
	{"length for an area", "a", "240 ft", "unit.kind"},
	{"volume for a weight", "m", "3 gal", "unit.kind"},
	{"weight alone for a density", "d", "3 lb", "unit.kind"},
	{"bare share", "r", "10", "unit.missing"},
	{"unit on a share", "r", "10 in", "unit.kind"},
	{"negative share", "r", "-1%", "quantity.negative"},
	{"fine share", "r", "10.12345678%", "ratio.digits"},
	{"huge share", "r", "100000000000%", "quantity.large"},
	{"currency sign", "c", "$9", "money.unit"},
	{"half cents", "c", "4.755", "money.decimals"},
	{"thousands in money", "c", "1,000.00", "number.comma"},
	{"negative money", "c", "-1", "quantity.negative"},
	{"no money", "c", "", "quantity.empty"},
	{"money past its bound", "c", "1000000000.01", "quantity.large"},
	{"no lengths", "x", "x", "quantity.empty"},
	{"a side of zero", "x", "1 ft x 0 ft", "quantity.zero"},
	{"a side without a unit at the end", "x", "1 ft x 2", "unit.missing"},
	{"five sides", "x", "1ft x 1ft x 1ft x 1ft x 1ft", "dims.count"},
}

func TestRefused(t *testing.T) {
	readers := map[string]func(string) error{
		"v": func(s string) error { _, err := ParseVolume(s); return err },
		"l": func(s string) error { _, err := ParseLength(s); return err },
		"a": func(s string) error { _, err := ParseArea(s); return err },
		"m": func(s string) error { _, err := ParseMass(s); return err },
		"d": func(s string) error { _, err := ParseDensity(s); return err },
		"r": func(s string) error { _, err := ParseRatio(s); return err },
		"c": func(s string) error { _, err := ParseMoney(s); return err },
		"x": func(s string) error { _, err := ParseDims(s); return err },
	}
	for _, tt := range refused {
		err := readers[tt.kind](tt.in)
		var e *Error
		if !errors.As(err, &e) {
			t.Errorf("%s: %q was read, want %s", tt.why, tt.in, tt.code)
			continue
		}
		if e.Code != tt.code {
			t.Errorf("%s: %q gives code %s (%s), want %s", tt.why, tt.in, e.Code, e.Hint, tt.code)
		}
		if e.Hint == "" || e.Value != clip(tt.in) {
			t.Errorf("%s: %q gives value %q, hint %q", tt.why, tt.in, e.Value, e.Hint)
		}
	}
}

// TestHints checks the few hints that contain the answer.
func TestHints(t *testing.T) {
	for in, want := range map[string]string{
		"3 inchs":   `did you mean "in"?`,
		"3 lb":      "lb is a unit of weight; here it takes a length, such as 3 in",
		"3 firkins": "use in, ft, yd, mm, cm, m, mi or km",
		"3":         "which unit? write a length such as 3 in",
	} {
		_, err := ParseLength(in)
		var e *Error
		if !errors.As(err, &e) || e.Hint.String() != want {
			t.Errorf("ParseLength(%q) hints %v, want %q", in, err, want)
		}
	}
}

// TestTable checks the table against its own rules: every name parses to its
// own unit, and no spelling means two units within a kind.
func TestTable(t *testing.T) {
	for i := range table {
		u := &table[i]
		seen := map[string]bool{}
		for _, w := range append(strings.Split(u.also, "|"), strings.Split(u.loose, "|")...) {
			if w == "" {
				continue
			}
			if got := find(u.kind, []byte(w)); got != u || seen[w] {
				t.Errorf("%q of %s finds %v, or stands twice", w, u.name, got)
			}
			seen[w] = true
		}
		var f text
		if err := f.fold("1 " + u.name); err != nil {
			t.Fatal(err)
		}
		if _, rest, err := parseTerm(f.buf[:f.n], u.name, u.kind); err != nil || len(rest) > 0 {
			t.Errorf("1 %s does not parse: %v", u.name, err)
		}
	}
}
