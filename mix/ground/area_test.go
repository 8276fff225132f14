package ground

import (
	"strings"
	"testing"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// areas are checked against closed forms: the circle against pi to 12 digits,
// right triangles against half the product of their legs, the polygon against
// its rectangle. Published areas are in testdata/published.
var areas = []struct {
	why, in string
	want    units.Area
}{
	{"rectangle", "60 ft x 4 ft", 240 * units.SquareFoot},
	{"unit at the end", "60 x 4 ft", 240 * units.SquareFoot},
	{"the word itself", "rectangle 60 ft x 4 ft", 240 * units.SquareFoot},
	{"by", "60 ft by 4 ft", 240 * units.SquareFoot},
	{"plain", "240 sq ft", 240 * units.SquareFoot},
	{"circle", "circle 2 m", 3_141_592_653_590},   // pi m2
	{"capitals", "Circle 2 m", 3_141_592_653_590}, // pi m2
	{"in Spanish", "círculo 2 metros", 3_141_592_653_590},
	{"in Spanish without its accent, in capitals", "CIRCULO 2 m", 3_141_592_653_590},
	{"a rectangle in Spanish", "4 metros por 3 metros", 12 * units.SquareMetre},
	{"ellipse", "ellipse 4 m x 1 m", 3_141_592_653_590}, // pi/4 x 4 x 1
	{"base and height", "triangle 10 ft x 6 ft", 30 * units.SquareFoot},
	{"three sides", "triangle 9 ft x 12 ft x 15 ft", 54 * units.SquareFoot}, // a right angle: 9 x 12 / 2
	{"a needle", "triangle 10 m x 10 m x 2 cm", 99_999_950_000},             // sqrt(10^2 - 0.01^2) x 0.01
	{"ring", "ring 2 m x 1 m", 2_356_194_490_192},                           // 3/4 pi m2
}

func TestParseArea(t *testing.T) {
	for _, tt := range areas {
		a, err := ParseArea(tt.in)
		if err != nil {
			t.Errorf("%s: ParseArea(%q): %v", tt.why, tt.in, err)
			continue
		}
		if got, err := a.Measure(); got != tt.want || err != nil {
			t.Errorf("%s: %q measures %d, %v, want %d", tt.why, tt.in, got, err, tt.want)
		}
	}
}

var badAreas = []struct{ why, in, code string }{
	{"empty", "", "quantity.empty"},
	{"one side", "60 ft", "unit.kind"},
	{"three sides of a rectangle", "3 ft x 4 ft x 5 ft", "area.sides"},
	{"two lengths of a circle", "circle 3 ft x 4 ft", "area.sides"},
	{"no length", "circle", "quantity.empty"},
	{"no such shape", "hexagon 4 ft", "number.missing"},
	{"a side of zero", "0 ft x 4 ft", "quantity.zero"},
	{"no ground", "0 sq ft", "quantity.zero"},
	{"weight", "3 lb", "unit.kind"},
	{"misspelled", "240 sq fet", "unit.unknown"},
	{"negative", "-3 ft x 4 ft", "quantity.negative"},
	{"too large", "3 km x 3 km", "area.large"},
	{"inner larger", "ring 1 m x 2 m", "area.ring"},
	{"sides that do not close", "triangle 1 m x 2 m x 3 m", "area.triangle"},
	{"thin air", "ellipse 1 mm x 0.000001 mm", "area.small"},
}

func TestBadAreas(t *testing.T) {
	for _, tt := range badAreas {
		a, err := ParseArea(tt.in)
		code := ""
		if err == nil {
			_, err = a.Measure()
			if problems := doc.ProblemsIn(err); len(problems) == 1 {
				code = problems[0].Code
			}
		} else if e, ok := err.(*units.Error); ok {
			code = e.Code
		}
		if code != tt.code {
			t.Errorf("%s: %q gives %q (%v), want %q", tt.why, tt.in, code, err, tt.code)
		}
	}
}

// metres makes corners of whole metres.
func metres(xy ...int64) (corners [][2]units.Length) {
	for i := 0; i < len(xy); i += 2 {
		x, y := units.Length(xy[i])*units.Metre, units.Length(xy[i+1])*units.Metre
		corners = append(corners, [2]units.Length{x, y})
	}
	return corners
}

func TestPolygon(t *testing.T) {
	for _, tt := range []struct {
		why     string
		corners [][2]units.Length
		want    units.Area // square metres; 0 with code
		code    string
	}{
		{"square", metres(0, 0, 2, 0, 2, 2, 0, 2), 4, ""},
		{"the other way round", metres(0, 2, 2, 2, 2, 0, 0, 0), 4, ""},
		{"closed by hand", metres(0, 0, 2, 0, 2, 2, 0, 2, 0, 0), 4, ""},
		{"an L", metres(0, 0, 4, 0, 4, 1, 1, 1, 1, 3, 0, 3), 6, ""},
		{"a corner on a straight side", metres(0, 0, 1, 0, 2, 0, 2, 2, 0, 2), 4, ""},
		{"across the origin", metres(-1, -1, 1, -1, 1, 1, -1, 1), 4, ""},
		{"as far as it goes", metres(-1000, -1000, 1000, -1000, 1000, 1000, -1000, 1000), 4_000_000, ""},
		{"a bow tie", metres(0, 0, 2, 2, 2, 0, 0, 2), 0, "area.crossing"},
		{"touching itself", metres(0, 0, 4, 0, 4, 2, 2, 0, 0, 2), 0, "area.crossing"},
		{"folding back", metres(0, 0, 4, 0, 2, 0, 2, 2), 0, "area.crossing"},
		{"the same corner twice", metres(0, 0, 2, 0, 2, 0, 2, 2), 0, "area.crossing"},
		{"on one line", metres(0, 0, 1, 0, 2, 0), 0, "area.small"},
		{"two corners", metres(0, 0, 1, 0), 0, "area.corners"},
		{"none", nil, 0, "area.corners"},
	} {
		a := Area{Shape: "corners", Corners: tt.corners}
		got, err := a.Measure()
		if got != tt.want*units.SquareMetre {
			t.Errorf("%s: %v, want %d sq m", tt.why, got, tt.want)
		}
		if code := firstCode(err); code != tt.code {
			t.Errorf("%s: %v, want code %q", tt.why, err, tt.code)
		}
	}
}

func firstCode(err error) string {
	if p := doc.ProblemsIn(err); len(p) > 0 {
		return p[0].Code
	}
	return ""
}

// TestStrip compares the three edges of one L-shaped bed: 1 m wide, 5 m and 4 m
// along its outer edge.
func TestStrip(t *testing.T) {
	runs := func(cm ...units.Length) (out []units.Length) {
		for _, l := range cm {
			out = append(out, l*10*units.Millimetre)
		}
		return out
	}
	four := int64(4)
	for _, tt := range []struct {
		why   string
		strip Strip
		want  units.Area // square centimetres
		code  string
	}{
		{"outer edge", Strip{Along: runs(500, 400), Width: units.Metre, Edge: "outer"}, 80_000, ""},
		{"centre line", Strip{Along: runs(450, 350), Width: units.Metre}, 80_000, ""},
		{"inner edge", Strip{Along: runs(400, 300), Width: units.Metre, Edge: "inner"}, 80_000, ""},
		{"a gap for a gate", Strip{Along: runs(450, 350), Width: units.Metre, Gaps: runs(100)}, 70_000, ""},
		{"round a square", Strip{Along: runs(400, 400, 400, 400), Width: units.Metre, Corners: &four, Edge: "outer"}, 120_000, ""},
		{"all gap", Strip{Along: runs(450), Width: units.Metre, Gaps: runs(450)}, 0, "area.gaps"},
		{"all corner", Strip{Along: runs(50, 50), Width: units.Metre, Edge: "outer"}, 0, "area.strip"},
		{"no width", Strip{Along: runs(450)}, 0, "field.missing"},
		{"no runs", Strip{Width: units.Metre}, 0, "field.missing"},
	} {
		a := Area{Shape: "strip", Strip: &tt.strip}
		got, err := a.Measure()
		if got != tt.want*units.SquareMetre/10_000 || firstCode(err) != tt.code {
			t.Errorf("%s: %v, %v, want %d sq cm, code %q", tt.why, got, err, tt.want, tt.code)
		}
	}
}

func TestPlusAndLess(t *testing.T) {
	bed, _ := ParseArea("10 m x 2 m")
	stone, _ := ParseArea("1 m x 1 m")
	six := stone
	six.Count = 6
	for _, tt := range []struct {
		why  string
		area Area
		want units.Area // square metres
		code string
	}{
		{"six stones left out", Area{Shape: "plain", Plain: 20 * units.SquareMetre, Less: []Area{six}}, 14, ""},
		{"two beds", Area{Shape: bed.Shape, Sides: bed.Sides, Plus: []Area{bed}}, 40, ""},
		{"three of it", Area{Shape: bed.Shape, Sides: bed.Sides, Count: 3}, 60, ""},
		{"all left out", Area{Shape: stone.Shape, Sides: stone.Sides, Less: []Area{stone}}, 0, "area.less"},
		{"more left out than there is", Area{Shape: stone.Shape, Sides: stone.Sides, Less: []Area{bed}}, 0, "area.less"},
		{"too many of it", Area{Shape: bed.Shape, Sides: bed.Sides, Count: 1_000_000}, 0, "area.large"},
	} {
		if got, err := tt.area.Measure(); got != tt.want*units.SquareMetre || firstCode(err) != tt.code {
			t.Errorf("%s: %v, %v, want %d sq m, code %q", tt.why, got, err, tt.want, tt.code)
		}
	}
}

// TestManyPieces: the words for ground of very many pieces or runs count the rest
// instead of writing them out.
func TestManyPieces(t *testing.T) {
	foot := Area{Text: "1 ft x 1 ft", Shape: "rectangle", Sides: []units.Length{units.Foot, units.Foot}}
	a := foot
	for range 100_000 {
		a.Plus, a.Less = append(a.Plus, foot), append(a.Less, foot)
	}
	got := a.Words(lang.Printer{})
	if len(got) > 2000 || !strings.Contains(got, ", and 99950 more pieces") ||
		!strings.HasSuffix(got, ", less 99950 more pieces") {
		t.Errorf("%d bytes: %.2100q", len(got), got)
	}
	s := Area{Shape: "strip", Strip: &Strip{Along: make([]units.Length, 1000), Width: units.Foot}}
	if got := s.Words(lang.Printer{}); len(got) > 500 || !strings.Contains(got, "+ 950 more") {
		t.Errorf("%d bytes: %.600q", len(got), got)
	}
}
