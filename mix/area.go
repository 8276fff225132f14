package mix

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Area is a piece of ground: a shape, or a plain area, with what is added and
// what is left out. The zero value is no ground, which measuring reports.
type Area struct {
	Text  string // as typed, for the working; "" for an object
	Shape string // "plain", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners"

	Plain units.Area
	// Sides are the rectangle's two, the circle's diameter, the ellipse's two
	// diameters, the triangle's base and height or its three sides, the ring's
	// outer and inner diameter.
	Sides   []units.Length
	Strip   *Strip
	Corners [][2]units.Length

	Count int64  // how many of it; 0 and 1 are one
	Plus  []Area // more ground
	Less  []Area // ground left out: paving, a stump
}

// shape is a word that an area may start with, and how many lengths follow.
type shape struct {
	word        string
	also        string // in Spanish, with its accent and without, separated by |
	least, most int
	example     message.Text
}

// shapes are the words an area may start with, with how many lengths follow.
var shapes = []shape{
	{"rectangle", "rectángulo|rectangulo", 2, 2, "60 ft x 4 ft"},
	{"circle", "círculo|circulo", 1, 1, "circle 14 ft (straight across)"},
	{"ellipse", "elipse", 2, 2, "ellipse 14 ft x 8 ft"},
	{"triangle", "triángulo|triangulo", 2, 3, "triangle 10 ft x 6 ft (base, height) or triangle 9 ft x 12 ft x 15 ft (sides)"},
	{"ring", "anillo", 2, 2, "ring 20 ft x 14 ft (outer, inner, straight across)"},
}

// ParseArea reads an area in one line: "60 ft x 4 ft", "circle 14 ft",
// "240 sq ft". Rings, triangles and ellipses go the same way. The error is a
// [*units.Error].
func ParseArea(s string) (Area, error) {
	text := strings.TrimSpace(s)
	word, rest, _ := strings.Cut(text, " ")
	word = spell.Lower(word)
	for _, sh := range shapes {
		for name := range strings.SplitSeq(sh.word+"|"+sh.also, "|") {
			if name == word {
				return parseShape(sh.word, rest, s)
			}
		}
	}
	if figure, sides := units.Looks(text); figure && sides > 1 {
		return parseShape("rectangle", text, s)
	}
	a, err := units.ParseArea(s)
	if err == nil && a == 0 {
		err = &units.Error{Code: "quantity.zero", Value: clip(s), Hint: "an area is more than zero, such as 240 sq ft"}
	}
	if err != nil {
		return Area{}, areaHint(err)
	}
	return Area{Text: text, Shape: "plain", Plain: a}, nil
}

// areaHint adds the shapes to a hint that knows only plain areas.
func areaHint(err error) error {
	e := *err.(*units.Error)
	if e.Code != "unit.unknown" && e.Code != "quantity.large" && e.Code != "quantity.zero" && !strings.HasPrefix(e.Code, "number.co") {
		form := message.Text(`{=0}; or a shape, such as "60 ft x 4 ft" or "circle 14 ft"`)
		if strings.HasSuffix(e.Hint.String(), "?") {
			form = `{=0} Or a shape, such as "60 ft x 4 ft" or "circle 14 ft"`
		}
		e.Hint = message.Of(form, string(e.Hint))
	}
	return &e
}

func parseShape(word, lengths, whole string) (Area, error) {
	i := slices.IndexFunc(shapes, func(s shape) bool { return s.word == word })
	sides, err := units.ParseDims(lengths)
	if err != nil {
		e := *err.(*units.Error)
		e.Value = clip(whole)
		return Area{}, &e
	}
	if len(sides) < shapes[i].least || len(sides) > shapes[i].most {
		return Area{}, &units.Error{Code: "area.sides", Value: clip(whole), Hint: message.Of("write it as {=0}", string(shapes[i].example))}
	}
	return Area{Text: strings.TrimSpace(whole), Shape: word, Sides: sides}, nil
}

// Measure returns the area of the ground, rounded to the square micrometre.
// The error carries every problem; see [Problems].
func (a *Area) Measure() (units.Area, error) {
	var c checker
	total := a.measure(&c)
	if err := c.err(); err != nil {
		return 0, err
	}
	return total, nil
}

// measure reports problems below the current path.
func (a *Area) measure(c *checker) units.Area {
	if !c.sound() { // it did not read
		return 0
	}
	one := a.shape(c)
	if !c.sound() {
		return 0
	}
	count := max(a.Count, 1)
	if one <= 0 {
		c.problem("area.small", "less ground than can be measured")
		return 0
	}
	if one > units.MaxArea/units.Area(count) {
		c.problem("area.large", "more ground than 400 ha")
		return 0
	}
	total := one * units.Area(count)
	for _, plus := range measureList(c, "plus", a.Plus) {
		if total += plus; total > units.MaxArea {
			c.problem("area.large", "more ground than 400 ha")
			return 0
		}
	}
	ground := total
	for _, less := range measureList(c, "less", a.Less) {
		if total -= less; total <= 0 {
			c.problemAt("less", "area.less", message.Of("what is left out is not smaller than the area itself, {#0}", units.Both.Area(ground)))
			return 0
		}
	}
	return total
}

func measureList(c *checker, name string, list []Area) []units.Area {
	c.path.push(name)
	out := make([]units.Area, len(list))
	for i := range list {
		c.path.pushIndex(i)
		out[i] = list[i].measure(c)
		c.path.pop()
	}
	c.path.pop()
	return out
}

// shape measures the shape alone.
func (a *Area) shape(c *checker) units.Area {
	s := a.Sides
	if i := slices.IndexFunc(shapes, func(sh shape) bool { return sh.word == a.Shape }); i >= 0 && (len(s) < shapes[i].least || len(s) > shapes[i].most) {
		c.problem("area.sides", message.Of("write it as {=0}", string(shapes[i].example)))
		return 0
	}
	if len(s) > 0 && slices.Min(s) <= 0 {
		c.problem("quantity.zero", "every side must be more than zero")
		return 0
	}
	switch a.Shape {
	case "plain":
		if a.Plain <= 0 || a.Plain > units.MaxArea {
			c.problem("quantity.zero", "an area is more than zero, and at most 400 ha")
		}
		return a.Plain
	case "rectangle":
		if flat, ok := s[0].By(s[1]); ok {
			return flat
		}
	case "circle":
		return curved(c, float64(math.Pi/4)*square(s[0]))
	case "ellipse":
		return curved(c, float64(math.Pi/4*micrometres(s[0]))*micrometres(s[1]))
	case "ring":
		if s[1] >= s[0] {
			c.problem("area.ring", "the inner diameter is smaller than the outer: write outer, then inner")
			return 0
		}
		return curved(c, math.Pi/4*(square(s[0])-square(s[1])))
	case "triangle":
		return triangle(c, s)
	case "strip":
		if a.Strip != nil {
			return a.Strip.measure(c)
		}
		c.problem("area.missing", "a strip has runs and a width")
		return 0
	case "corners":
		return polygon(c, a.Corners)
	default:
		c.problem("area.missing", `say what the ground measures, such as "60 ft x 4 ft", "circle 14 ft" or "240 sq ft"`)
		return 0
	}
	c.problem("area.large", "more ground than 400 ha")
	return 0
}

func micrometres(l units.Length) float64 { return float64(l) / 1000 }

func square(l units.Length) float64 { return float64(micrometres(l) * micrometres(l)) }

// curved rounds square micrometres once.
func curved(c *checker, f float64) units.Area {
	switch {
	case f > float64(units.MaxArea):
		c.problem("area.large", "more ground than 400 ha")
		return 0
	case f < 1:
		c.problem("area.small", "less ground than can be measured")
		return 0
	}
	return units.Area(math.Round(f))
}

// triangle measures base and height, or three sides by Heron's formula in
// Kahan's order, which stays exact for needles.
func triangle(c *checker, s []units.Length) units.Area {
	if len(s) == 2 {
		return curved(c, micrometres(s[0])*micrometres(s[1])/2)
	}
	t := slices.Clone(s)
	stable.Sort(t, cmp.Compare[units.Length])
	if t[2] >= t[0]+t[1] {
		c.problem("area.triangle", "these sides do not close: the longest must be shorter than the other two together")
		return 0
	}
	x, y, z := micrometres(t[2]), micrometres(t[1]), micrometres(t[0])
	product := float64((x + (y + z)) * micrometres(t[0]-(t[2]-t[1])))
	product = float64(product * float64((z+(x-y))*(x+(y-z))))
	return curved(c, math.Sqrt(product)/4)
}

func readArea(c *checker, n *json.Node, a *Area) {
	if n.Kind != json.Object {
		s, ok := readText(c, n, `an area such as "60 ft x 4 ft"`)
		if !ok {
			return
		}
		parsed, err := ParseArea(s)
		if err != nil {
			c.unitsError(err)
		}
		*a = parsed
		return
	}
	readObject(c, n, a, "an area", areaFields())
	switch given := shapesGiven(n); {
	case len(given) > 1:
		c.problem("field.both", message.Of("one shape, not {=0}; add more ground with plus", string(and(given))))
	case len(given) == 0 && c.sound():
		c.problem("area.missing", "name a shape: area, rectangle, circle, ellipse, triangle, ring, strip or corners")
	}
}

func shapesGiven(n *json.Node) (given []string) {
	for _, key := range n.Keys {
		switch key {
		case "area", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners":
			given = append(given, key)
		}
	}
	return given
}

// areaFields is a function because an area may hold areas.
func areaFields() []field[*Area] {
	fields := []field[*Area]{
		{"area", "area", `a plain area, "240 sq ft"`, func(c *checker, n *json.Node, a *Area) {
			a.Shape, a.Plain = "plain", readQuantity(c, n, `an area such as "240 sq ft"`, true, units.ParseArea)
		}},
		{"strip", "object", "a bed along a line", func(c *checker, n *json.Node, a *Area) {
			a.Shape, a.Strip = "strip", &Strip{}
			readObject(c, n, a.Strip, "a strip", stripFields)
		}},
		{"corners", "list", `the outline, corner by corner: [["0 ft", "0 ft"], ["12 ft", "0 ft"], ...]`, func(c *checker, n *json.Node, a *Area) {
			a.Shape, a.Corners = "corners", readList(c, n, "corners", readCorner)
		}},
		{"count", "whole number", "how many of this shape, 1 when left out", func(c *checker, n *json.Node, a *Area) { a.Count = readCount(c, n, 1) }},
		{"plus", "list of areas", "more ground", func(c *checker, n *json.Node, a *Area) { a.Plus = readList(c, n, "areas", readArea) }},
		{"less", "list of areas", "ground left out", func(c *checker, n *json.Node, a *Area) { a.Less = readList(c, n, "areas", readArea) }},
	}
	for _, sh := range shapes {
		fields = append(fields, field[*Area]{sh.word, "lengths", string(sh.example), func(c *checker, n *json.Node, a *Area) { readShape(c, n, a, sh.word) }})
	}
	return fields
}

// readShape reads the lengths of a shape whose word is the field's name. A
// ring may be an object, since its two lengths have names.
func readShape(c *checker, n *json.Node, a *Area, word string) {
	a.Shape = word
	if word == "ring" && n.Kind == json.Object {
		a.Sides = make([]units.Length, 2)
		readObject(c, n, a, "a ring", ringFields)
		for i, name := range []string{"outer", "inner"} {
			if a.Sides[i] == 0 {
				c.problemAt(name, "field.missing", "give the diameter, such as \"6 ft\"")
			}
		}
		return
	}
	s, ok := readText(c, n, message.Of("its lengths, such as {=0}", string(shapes[slices.IndexFunc(shapes, func(s shape) bool { return s.word == word })].example)))
	if !ok {
		return
	}
	parsed, err := parseShape(word, s, s)
	if err != nil {
		c.unitsError(err)
	}
	a.Sides = parsed.Sides
}

var ringFields = []field[*Area]{
	{"outer", "length", "the diameter outside", func(c *checker, n *json.Node, a *Area) { a.Sides[0] = readLength(c, n) }},
	{"inner", "length", "the diameter of the hole", func(c *checker, n *json.Node, a *Area) { a.Sides[1] = readLength(c, n) }},
}
