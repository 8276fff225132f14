package mix_test

import (
	"math"
	"math/big"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// drawGround draws a shape some s to 4 s wide; a whole one has more ground and
// ground left out, so small that something stays.
func drawGround(t *rapid.T, s float64, whole bool) modelGround {
	shapes := []string{"area", "rectangle", "circle", "ellipse", "triangle", "ring", "strip", "corners"}
	g := modelGround{shape: rapid.SampledFrom(shapes).Draw(t, "shape"), count: 1, asObject: often(t, "as an object")}
	side := func(name string) typed { return typedLength(t, name, s, 4*s) }
	switch g.shape {
	case "area":
		g.sides = []typed{typedOn(t, "area", areas, s*s/2, 20*s*s)}
	case "circle":
		g.sides = []typed{side("diameter")}
	case "rectangle", "ellipse":
		g.sides = []typed{side("long"), side("wide")}
	case "triangle":
		g.sides = drawTriangle(t, side("a"), side("b"))
	case "ring":
		outer := typedLength(t, "outer", 2*s, 4*s)
		g.sides = []typed{outer, typedLength(t, "inner", outer.value.float()*0.2, outer.value.float()*0.8)}
	case "strip":
		g.drawStrip(t, s)
	default:
		g.points = drawOutline(t, s)
	}
	if !whole {
		return g
	}
	g.count = rapid.Int64Range(1, 5).Draw(t, "how many of it")
	for range rapid.IntRange(0, 2).Draw(t, "more ground") {
		g.plus = append(g.plus, drawGround(t, s, false))
	}
	for range rapid.IntRange(0, 2).Draw(t, "left out") {
		g.less = append(g.less, drawGround(t, s/40, false))
	}
	return g
}

func drawTriangle(t *rapid.T, a, b typed) []typed {
	if often(t, "base and height") {
		return []typed{a, b}
	}
	x, y := a.value.float(), b.value.float()
	return []typed{a, b, typedLength(t, "c", math.Abs(x-y)+0.2*min(x, y), 0.9*(x+y))}
}

func (g *modelGround) drawStrip(t *rapid.T, s float64) {
	n := rapid.IntRange(1, 4).Draw(t, "runs")
	for range n {
		g.sides = append(g.sides, typedLength(t, "run", s, 4*s))
	}
	g.width = typedLength(t, "width", s/10, s/4)
	if often(t, "a gap") {
		g.gaps = []typed{typedLength(t, "gap", s/10, s/3)}
	}
	if often(t, "corners given") {
		corners := rapid.Int64Range(0, int64(n)).Draw(t, "corners")
		g.corners = &corners
	}
	g.edge = rapid.SampledFrom([]string{"", "centre", "outer", "inner"}).Draw(t, "edge")
}

// drawOutline goes east below a line and west above it, so that it never
// crosses itself; the line itself lies anywhere.
func drawOutline(t *rapid.T, s float64) [][2]typed {
	grid := s / 100
	step := func(name string) int64 { return rapid.Int64Range(20, 150).Draw(t, name) }
	x0, y0 := rapid.Int64Range(-500, 500).Draw(t, "east"), rapid.Int64Range(-500, 500).Draw(t, "north")
	at := func(x, y int64) [2]typed { return [2]typed{onGrid(x0+x, grid), onGrid(y0+y, grid)} }
	points := [][2]typed{at(0, 0)}
	var east []int64
	x := int64(0)
	for range rapid.IntRange(1, 4).Draw(t, "bends") {
		x += step("on")
		points = append(points, at(x, -step("south")))
		east = append(east, x)
	}
	points = append(points, at(x+step("on"), 0))
	for _, x := range slices.Backward(east) {
		points = append(points, at(x+7, step("north")))
	}
	if often(t, "the other way round") {
		slices.Reverse(points)
	}
	return points
}

func onGrid(n int64, grid float64) typed {
	value := exactly(n, 1).times(exact{rat: new(big.Rat).SetFloat64(grid)})
	return typed{value.rat.FloatString(3) + " mm", value.whole(nanometre)}
}

// area is what the ground covers: so many of the shape, and what is added, less
// what is left out.
func (g *modelGround) area() exact {
	sum := g.one().taken(g.count)
	for i := range g.plus {
		sum = sum.plus(g.plus[i].area())
	}
	for i := range g.less {
		sum = sum.minus(g.less[i].area())
	}
	return sum
}

func (g *modelGround) one() exact {
	side := func(i int) exact { return g.sides[i].value }
	round := func(i int) exact { return side(i).whole(nanometre) }
	switch g.shape {
	case "area":
		return side(0)
	case "rectangle":
		return side(0).times(side(1))
	case "circle":
		return disc(round(0), round(0))
	case "ellipse":
		return disc(round(0), round(1))
	case "ring":
		return disc(round(0), round(0)).minus(disc(round(1), round(1)))
	case "triangle":
		if len(g.sides) == 2 {
			return side(0).times(side(1)).over(exactly(2, 1))
		}
		return heron(round(0), round(1), round(2))
	case "strip":
		return g.strip()
	}
	return g.polygon()
}

func heron(a, b, c exact) exact {
	s := a.plus(b).plus(c).over(exactly(2, 1))
	return s.times(s.minus(a)).times(s.minus(b)).times(s.minus(c)).root()
}

// strip counts the square at every corner once: runs measured along the outer
// edge have it twice, along the inner edge never.
func (g *modelGround) strip() exact {
	run := exactly(0, 1)
	for _, r := range g.sides {
		run = run.plus(r.value)
	}
	for _, gap := range g.gaps {
		run = run.minus(gap.value)
	}
	bends := int64(len(g.sides)) - 1
	if g.corners != nil {
		bends = *g.corners
	}
	squares := g.width.value.times(g.width.value).taken(bends)
	area := run.times(g.width.value)
	switch g.edge {
	case "outer":
		return area.minus(squares)
	case "inner":
		return area.plus(squares)
	}
	return area
}

// polygon is the shoelace rule; the outline may go round either way.
func (g *modelGround) polygon() exact {
	twice := exactly(0, 1)
	for i, p := range g.points {
		q := g.points[(i+1)%len(g.points)]
		twice = twice.plus(p[0].value.times(q[1].value)).minus(q[0].value.times(p[1].value))
	}
	return exact{twice.rat.Abs(twice.rat), false}.over(exactly(2, 1))
}

// document writes a shape in one line where one line can say it.
func (g *modelGround) document() any {
	object := object{}
	switch g.shape {
	case "strip":
		object["strip"] = g.along()
	case "corners":
		object["corners"] = each(g.points, func(p *[2]typed) []string { return []string{p[0].text, p[1].text} })
	default:
		line := dims(g.sides...)
		if !g.asObject && g.count == 1 && g.plus == nil && g.less == nil {
			return strings.TrimPrefix(strings.TrimPrefix(g.shape+" "+line, "area "), "rectangle ")
		}
		object[g.shape] = line
	}
	if g.shape == "ring" {
		object["ring"] = map[string]string{"outer": g.sides[0].text, "inner": g.sides[1].text}
	}
	if g.count > 1 {
		object["count"] = g.count
	}
	if g.plus != nil {
		object["plus"] = each(g.plus, (*modelGround).document)
	}
	if g.less != nil {
		object["less"] = each(g.less, (*modelGround).document)
	}
	return object
}

func (g *modelGround) along() object {
	text := func(s *typed) string { return s.text }
	o := object{"along": each(g.sides, text), "width": g.width.text}
	if g.gaps != nil {
		o["gaps"] = each(g.gaps, text)
	}
	if g.corners != nil {
		o["corners"] = *g.corners
	}
	if g.edge != "" {
		o["edge"] = g.edge
	}
	return o
}
