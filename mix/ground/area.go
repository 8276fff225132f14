package ground

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Area is a piece of ground: a shape or a plain area, with what is added and
// what is left out. The zero value is no ground; measuring it reports a
// problem.
type Area struct {
	doc.AsTyped

	Text  string // as typed, to show in the working; "" for an object
	Shape string // "plain", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners"

	Plain units.Area
	// Sides are the two of a rectangle, the diameter of a circle, the two
	// diameters of an ellipse, the base and height or the three sides of a
	// triangle, the outer and inner diameter of a ring.
	Sides   []units.Length
	Strip   *Strip
	Corners [][2]units.Length

	Count int64  // how many there are; 0 and 1 are one
	Plus  []Area // more ground
	Less  []Area // ground left out: paving, a stump
}

// shape is a word that an area can start with, and how many lengths follow it.
type shape struct {
	word        string
	also        string // in Spanish, with its accent and without, separated by |
	least, most int
	example     message.Text
}

// shapes lists the words that an area can start with. The example is for hints
// and help.
var shapes = []shape{
	{"rectangle", "rectángulo|rectangulo", 2, 2, "60 ft x 4 ft"},
	{"circle", "círculo|circulo", 1, 1, "circle 14 ft (straight across)"},
	{"ellipse", "elipse", 2, 2, "ellipse 14 ft x 8 ft"},
	{"triangle", "triángulo|triangulo", 2, 3, "triangle 10 ft x 6 ft (base, height) or triangle 9 ft x 12 ft x 15 ft (sides)"},
	{"ring", "anillo", 2, 2, "ring 20 ft x 14 ft (outer, inner, straight across)"},
}

// ParseArea reads an area in one line: "60 ft x 4 ft", "circle 14 ft", "240 sq
// ft". Rings, triangles and ellipses are written like circles. The error is a
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
	f, err := units.FixedArea(s)
	plain := units.Area(f.Round())
	if err == nil && plain == 0 {
		err = &units.Error{Code: units.QuantityZero, Value: doc.Clip(s),
			Hint: "an area is more than zero, such as 240 sq ft"}
	}
	if err != nil {
		return Area{}, areaHint(err)
	}
	a := Area{Text: text, Shape: "plain", Plain: plain}
	if !f.Whole() {
		a.Keep("area", text)
	}
	return a, nil
}

// areaHint adds the shapes to a hint about plain areas. Hints that are not
// about the form of an area stay as they are.
func areaHint(err error) error {
	e := *err.(*units.Error)
	switch e.Code {
	case units.UnitUnknown, units.QuantityLarge, units.QuantityZero, units.NumberComma:
		return &e // the hint says enough
	}
	form := message.Text(`{=0}; or a shape, such as "60 ft x 4 ft" or "circle 14 ft"`)
	if strings.HasSuffix(e.Hint.String(), "?") {
		form = `{=0} Or a shape, such as "60 ft x 4 ft" or "circle 14 ft"`
	}
	e.Hint = message.Of(form, string(e.Hint))
	return &e
}

// parseShape reads the lengths of a shape; errors are about the whole text.
func parseShape(word, lengths, whole string) (Area, error) {
	i := slices.IndexFunc(shapes, func(s shape) bool { return s.word == word })
	dims, err := units.FixedDims(lengths)
	if err != nil {
		e := *err.(*units.Error)
		e.Value = doc.Clip(whole)
		return Area{}, &e
	}
	if len(dims) < shapes[i].least || len(dims) > shapes[i].most {
		return Area{}, &units.Error{Code: doc.AreaSides, Value: doc.Clip(whole),
			Hint: message.Of("write it as {=0}", string(shapes[i].example))}
	}
	sides, exact := doc.RoundAll(dims)
	a := Area{Text: strings.TrimSpace(whole), Shape: word, Sides: sides}
	if !exact {
		a.Keep(word, strings.TrimSpace(lengths))
	}
	return a, nil
}

// Measure returns the area of the ground, rounded to the square micrometre. The
// error contains every problem; doc.ProblemsIn lists them.
func (a *Area) Measure() (units.Area, error) {
	var r doc.Reader
	total := a.MeasureIn(&r)
	if err := r.Err(); err != nil {
		return 0, err
	}
	return total, nil
}

// MeasureIn is Measure for one area of a document: it reports problems at and
// below the reader's current path, and returns zero if there are any.
func (a *Area) MeasureIn(r *doc.Reader) units.Area { return units.Area(a.FixedIn(r).Round()) }

// FixedIn is MeasureIn before rounding, in square micrometres. Ground with straight
// sides is exact. What is round, and a triangle of three sides, is rounded to the
// square micrometre, each piece by itself.
func (a *Area) FixedIn(r *doc.Reader) (total units.Fixed) {
	if !r.Sound() { // it did not read
		return units.Fixed{}
	}
	one := a.shape(r)
	if !r.Sound() {
		return units.Fixed{}
	}
	if one.Round() <= 0 {
		r.Problem(doc.AreaSmall, "less ground than can be measured")
		return units.Fixed{}
	}
	count := max(a.Count, 1)
	if one.Round() > int64(units.MaxArea)/count || large(one.MulDiv(count, 1)) {
		return tooLarge(r)
	}
	total = one.MulDiv(count, 1)
	for _, plus := range measureList(r, "plus", a.Plus) {
		if total = total.Plus(plus); large(total) {
			return tooLarge(r)
		}
	}
	ground := total
	for _, less := range measureList(r, "less", a.Less) {
		if total = total.Minus(less); total.Round() <= 0 {
			r.ProblemAt("less", doc.AreaLess, message.Of("what is left out is not smaller than the area itself, {#0}",
				units.Both.Area(units.Area(ground.Round()))))
			return units.Fixed{}
		}
	}
	return total
}

// large reports whether an area is past the bound.
func large(f units.Fixed) bool { return f.Round() > int64(units.MaxArea) }

// tooLarge reports an area past the bound.
func tooLarge(r *doc.Reader) units.Fixed {
	r.Problem(doc.AreaLarge, "more ground than 400 ha")
	return units.Fixed{}
}

// Oblong returns the length and the width of one piece of a rectangle or a strip,
// before Plus and Less. straight is false for a strip with corners or gaps, whose
// length is then that of a straight strip of the same area. Any other shape has no
// such sides, and both are 0. The area must have been measured without problems.
func (a *Area) Oblong() (length, width units.Length, straight bool) {
	switch s := a.Strip; {
	case a.Shape == "rectangle":
		return a.Sides[0], a.Sides[1], true
	case a.Shape == "strip":
		return s.straightened(), s.Width, s.bends() == 0 && len(s.Gaps) == 0
	}
	return 0, 0, false
}

// measureList measures areas one by one. Problems are reported below name.
func measureList(r *doc.Reader, name string, list []Area) []units.Fixed {
	r.Enter(name)
	out := make([]units.Fixed, len(list))
	for i := range list {
		r.EnterAt(i)
		out[i] = list[i].FixedIn(r)
		r.Leave()
	}
	r.Leave()
	return out
}

// shape measures the shape alone, without count, plus and less.
func (a *Area) shape(r *doc.Reader) units.Fixed {
	s := a.Sides
	i := slices.IndexFunc(shapes, func(sh shape) bool { return sh.word == a.Shape })
	if i >= 0 && (len(s) < shapes[i].least || len(s) > shapes[i].most) {
		r.Problem(doc.AreaSides, message.Of("write it as {=0}", string(shapes[i].example)))
		return units.Fixed{}
	}
	if len(s) > 0 && slices.Min(s) <= 0 {
		r.Problem(units.QuantityZero, "every side must be more than zero")
		return units.Fixed{}
	}
	switch a.Shape {
	case "plain":
		if a.Plain <= 0 || a.Plain > units.MaxArea {
			r.Problem(units.QuantityZero, "an area is more than zero, and at most 400 ha")
		}
		return a.FixedArea("area", a.Plain)
	case "rectangle":
		d := a.FixedDims(a.Shape, s)
		if flat, ok := d[0].By(d[1]); ok {
			return flat
		}
		return tooLarge(r)
	case "circle":
		return curved(r, float64(math.Pi/4)*square(s[0]))
	case "ellipse":
		return curved(r, float64(math.Pi/4*micrometres(s[0]))*micrometres(s[1]))
	case "ring":
		if s[1] >= s[0] {
			r.Problem(doc.AreaRing, "the inner diameter is smaller than the outer: write outer, then inner")
			return units.Fixed{}
		}
		return curved(r, math.Pi/4*(square(s[0])-square(s[1])))
	case "triangle":
		return triangle(r, a.FixedDims(a.Shape, s), s)
	case "strip":
		if a.Strip != nil {
			return a.Strip.measure(r)
		}
		r.Problem(doc.AreaMissing, "a strip has runs and a width")
	case "corners":
		return a.polygon(r)
	default:
		r.Problem(doc.AreaMissing,
			`say what the ground measures, such as "60 ft x 4 ft", "circle 14 ft" or "240 sq ft"`)
	}
	return units.Fixed{}
}

// micrometres returns l for the formulas of curved areas.
func micrometres(l units.Length) float64 { return float64(l) / 1000 }

// square returns l squared, in square micrometres.
func square(l units.Length) float64 { return float64(micrometres(l) * micrometres(l)) }

// curved rounds square micrometres, once.
func curved(r *doc.Reader, f float64) units.Fixed {
	switch {
	case f > float64(units.MaxArea):
		return tooLarge(r)
	case f < 1:
		r.Problem(doc.AreaSmall, "less ground than can be measured")
		return units.Fixed{}
	}
	return units.FixedOf(int64(math.Round(f)))
}

// triangle measures a base and a height, or three sides by Heron's formula in
// Kahan's order, which stays accurate for needle shapes.
func triangle(r *doc.Reader, d []units.Fixed, s []units.Length) units.Fixed {
	if len(s) == 2 {
		if half, ok := d[0].MulDiv(1, 2).By(d[1]); ok {
			return half
		}
		return tooLarge(r)
	}
	t := slices.Clone(s)
	stable.Sort(t, cmp.Compare[units.Length])
	if t[2] >= t[0]+t[1] {
		r.Problem(doc.AreaTriangle, "these sides do not close: the longest must be shorter than the other two together")
		return units.Fixed{}
	}
	x, y, z := micrometres(t[2]), micrometres(t[1]), micrometres(t[0])
	product := float64((x + (y + z)) * micrometres(t[0]-(t[2]-t[1])))
	product = float64(product * float64((z+(x-y))*(x+(y-z))))
	return curved(r, math.Sqrt(product)/4)
}

// Type reads an area into an [Area]: one line of text, or an object.
var Type = doc.Type{Takes: "area", Form: "area", Of: Object,
	Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) { readArea(r, n, at.(*Area)) }}

// Object describes an area in a document, when it is an object. It is a
// function because an area can contain areas.
func Object() *doc.Object {
	return &doc.Object{Row: doc.RowOf[Area], ID: "area", Name: "an area", Line: true, Help: "an area, when it is an object", Tables: []doc.Fields{fields()}}
}

// How many pieces an area may add or leave out, and how many areas a job may have,
// those of tasks and those inside others.
const (
	maxPieces = 1000
	maxAreas  = 20_000
)

// readArea reads one line of text, or an object with exactly one shape.
func readArea(r *doc.Reader, n *json.Node, a *Area) {
	if r.Areas() > maxAreas {
		r.Problem(doc.JobLarge, message.Of("at most {0} of these", strconv.Itoa(maxAreas)))
		return
	}
	if n.Kind != json.Object {
		s, ok := r.Text(n, `an area such as "60 ft x 4 ft"`)
		if !ok {
			return
		}
		parsed, err := ParseArea(s)
		if err != nil {
			r.Quantity(err)
		}
		*a = parsed
		return
	}
	r.Object(n, "an area", doc.Into{Table: fields(), Object: a})
	switch given := shapesGiven(n); {
	case len(given) > 1:
		r.Problem(doc.FieldBoth, message.Of("one shape, not {=0}; add more ground with plus", string(doc.And(given))))
	case len(given) == 0 && r.Sound():
		r.Problem(doc.AreaMissing, "name a shape: area, rectangle, circle, ellipse, triangle, ring, strip or corners")
	default:
		a.Shape = shapeWord(given)
	}
}

// shapeWord returns the shape that the name of a field stands for.
func shapeWord(given []string) string {
	switch {
	case len(given) == 0:
		return ""
	case given[0] == "area":
		return "plain"
	}
	return given[0]
}

// shapesGiven lists the shapes that an object names.
func shapesGiven(n *json.Node) (given []string) {
	for _, key := range n.Keys {
		switch key {
		case "area", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners":
			given = append(given, key)
		}
	}
	return given
}

// fields describes an area's fields. It is a function for the same reason as
// [Object].
func fields() doc.Fields {
	read := func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
		if len(n.Items) > maxPieces {
			r.Problem(doc.JobLarge, message.Of("at most {0} of these", strconv.Itoa(maxPieces)))
			return
		}
		r.Each(n, "areas", Object(), at, func(n *json.Node, a any) { readArea(r, n, a.(*Area)) })
	}
	list := &doc.Type{Takes: "list of areas", Form: "list", Of: Object, Read: read}
	fields := doc.Fields{
		{Name: "area", Type: plain(), About: `a plain area, "240 sq ft"`, At: func(a any) any { return &a.(*Area).Plain }},
		{Name: "strip", Type: &strip, About: "a bed along a line", At: func(a any) any { return &a.(*Area).Strip }},
		{Name: "corners", Type: &corners, About: `the outline, corner by corner: [["0 ft", "0 ft"], ["12 ft", "0 ft"], ...]`, At: func(a any) any { return &a.(*Area).Corners }},
		{Name: "count", Type: &doc.Count, About: "how many of this shape, 1 when left out", At: func(a any) any { return &a.(*Area).Count }},
		{Name: "plus", Type: list, About: "more ground", At: func(a any) any { return &a.(*Area).Plus }},
		{Name: "less", Type: list, About: "ground left out", At: func(a any) any { return &a.(*Area).Less }},
	}
	for _, sh := range shapes {
		fields = append(fields, doc.Field{Name: sh.word, Type: sidesOf(sh.word), About: string(sh.example),
			At: func(a any) any { return sides{a.(*Area), sh.word} }})
	}
	return fields
}

// plain returns the type of a plain area. A shape that stands there is told the field
// that it belongs in.
func plain() *doc.Type {
	t := doc.Area
	t.Read = func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
		shape, err := ParseArea(n.Text)
		_, wrong := units.ParseArea(n.Text)
		if n.Kind != json.String || err != nil || wrong == nil {
			doc.Area.Read(&doc.Area, r, n, at)
			return
		}
		e := *wrong.(*units.Error)
		e.Hint = message.Of(`area takes plain ground, such as "240 sq ft"; write "{0}": "{1}"`, shape.Shape, shape.lengths())
		r.Quantity(&e)
	}
	return &t
}

// lengths is what was typed of a shape, without its word.
func (a *Area) lengths() string {
	if word, rest, _ := strings.Cut(a.Text, " "); word[0] > '9' {
		return strings.TrimSpace(rest)
	}
	return a.Text
}

// sides is where the lengths of a shape are stored: one list for all shapes.
type sides struct {
	area *Area
	word string
}

// sidesOf returns the type that reads the lengths of a shape. The word for the
// shape is the name of the field.
func sidesOf(word string) *doc.Type {
	t := &doc.Type{Takes: "lengths", Form: "lengths", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
		readSides(r, n, at.(sides).area, word)
	}}
	if word == "ring" {
		t.Of = func() *doc.Object { return RingObject }
	}
	return t
}

// readSides reads the lengths. A ring can be an object, because its two lengths
// have names.
func readSides(r *doc.Reader, n *json.Node, a *Area, word string) {
	if word == "ring" && n.Kind == json.Object {
		a.Sides = make([]units.Length, 2)
		r.Object(n, "a ring", doc.Into{Table: ringFields, Object: &a.Sides})
		for i, name := range []string{"outer", "inner"} {
			if a.Sides[i] == 0 {
				r.ProblemAt(name, doc.FieldMissing, "give the diameter, such as \"6 ft\"")
			}
		}
		return
	}
	i := slices.IndexFunc(shapes, func(s shape) bool { return s.word == word })
	s, ok := r.Text(n, message.Of("its lengths, such as {=0}", string(shapes[i].example)))
	if !ok {
		return
	}
	parsed, err := parseShape(word, s, s)
	if err != nil {
		r.Quantity(err)
	}
	a.Sides = parsed.Sides
	if text := parsed.Kept(word); text != "" {
		a.Keep(word, text)
	}
}

// ringFields are the lengths of a ring that is an object. They go into its sides,
// rounded for good: what is round is not exact anyway.
var ringFields = doc.Fields{
	{Name: "outer", Type: &doc.Length, About: "the diameter outside", At: func(s any) any { return &(*s.(*[]units.Length))[0] }},
	{Name: "inner", Type: &doc.Length, About: "the diameter of the hole", At: func(s any) any { return &(*s.(*[]units.Length))[1] }},
}

// RingObject describes a ring in a document, when it is an object.
var RingObject = &doc.Object{ID: "ring", Name: "a ring", Tables: []doc.Fields{ringFields}}

// Clone returns a copy that shares nothing with a.
func (a *Area) Clone() Area {
	c := *a
	c.Sides, c.Corners = slices.Clone(a.Sides), slices.Clone(a.Corners)
	if s := a.Strip; s != nil {
		strip := *s
		strip.Along, strip.Gaps = slices.Clone(s.Along), slices.Clone(s.Gaps)
		if s.Corners != nil {
			corners := *s.Corners
			strip.Corners = &corners
		}
		c.Strip = &strip
	}
	c.Plus, c.Less = cloneAreas(a.Plus), cloneAreas(a.Less)
	return c
}

// cloneAreas clones every area of a list.
func cloneAreas(list []Area) []Area {
	out := slices.Clone(list)
	for i := range out {
		out[i] = out[i].Clone()
	}
	return out
}
