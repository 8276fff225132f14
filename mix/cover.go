package mix

import (
	"math"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Cover is a task that lays mulch over a bed.
type Cover struct {
	Area  Area
	Layer units.Length // as spread, loose
	Stems *Stems
	Sheet *Sheet
}

// Stems are plants whose stems are kept clear of mulch.
type Stems struct {
	Count int64
	Clear units.Length // kept bare from the stem outwards, all round
}

// Sheet is cardboard or paper laid under the mulch.
type Sheet struct {
	Size    []units.Length
	Overlap units.Length
}

var coverFields = []field[*Task]{
	{"area", "area", `"60 ft x 4 ft", "circle 14 ft", "240 sq ft", or an object`, func(c *checker, n *json.Node, t *Task) { readArea(c, n, &t.Cover.Area) }},
	{"layer", "length", "how deep it is spread", func(c *checker, n *json.Node, t *Task) { t.Cover.Layer = readLength(c, n) }},
	{"stems", "object", `plants kept clear: {"count": 64, "clear": "3 in"}`, func(c *checker, n *json.Node, t *Task) {
		t.Cover.Stems = &Stems{}
		readObject(c, n, t.Cover.Stems, "stems", stemFields)
	}},
	{"sheet", "object", `cardboard or paper under it: {"size": "4 ft x 3 ft", "overlap": "6 in"}`, func(c *checker, n *json.Node, t *Task) {
		t.Cover.Sheet = &Sheet{}
		readObject(c, n, t.Cover.Sheet, "a sheet", sheetFields)
	}},
}

var stemFields = []field[*Stems]{
	{"count", "whole number", "how many plants", func(c *checker, n *json.Node, s *Stems) { s.Count = readCount(c, n, 1) }},
	{"clear", "length", "bare ground from the stem outwards, all round", func(c *checker, n *json.Node, s *Stems) { s.Clear = readLength(c, n) }},
}

var sheetFields = []field[*Sheet]{
	{"size", "lengths", `one sheet, "4 ft x 3 ft"`, func(c *checker, n *json.Node, s *Sheet) { s.Size = readDims(c, n, 2) }},
	{"overlap", "length", "how far each lies over the next", func(c *checker, n *json.Node, s *Sheet) { s.Overlap = readMargin(c, n) }},
}

// cover is a mulched bed worked out.
type cover struct {
	task   *Cover
	ground units.Area // the bed
	bare   units.Area // round the stems
	area   units.Area // what is mulched
	sheets int64
	exact  bool // the sheets are laid out, not estimated from the area
}

// work measures the mulch: the bed less the stems, times the layer.
func (v *Cover) work(c *checker) (k *cover, net Span) {
	k = &cover{task: v}
	c.path.push("area")
	k.ground = v.Area.measure(c)
	c.path.pop()
	if v.Layer <= 0 {
		c.problemAt("layer", "field.missing", `how deep? such as "3 in"`)
	}
	v.Stems.check(c)
	v.Sheet.check(c)
	k.clear(c)
	if !c.sound() {
		return k, Span{}
	}
	if v.Sheet != nil {
		k.sheets, k.exact = v.Sheet.cover(c, &v.Area, k.ground)
	}
	vol, ok := k.area.Deep(v.Layer)
	if !ok {
		c.problem("volume.large", tooMuch())
	}
	return k, Exactly(vol)
}

// clear takes the circles round the stems from the ground, when both are known.
func (k *cover) clear(c *checker) {
	k.area = k.ground
	s := k.task.Stems
	if s == nil || k.ground == 0 || s.Count <= 0 || s.Clear <= 0 {
		return
	}
	round := float64(math.Pi*square(s.Clear)) * float64(s.Count)
	if round >= float64(k.ground) {
		c.problemAt("stems", "stems.large", message.Of("the clear circles cover the whole bed, {#0}", units.Both.Area(k.ground)))
		return
	}
	k.bare = units.Area(math.Round(round))
	k.area -= k.bare
}

func (s *Stems) check(c *checker) {
	if s == nil {
		return
	}
	c.path.push("stems")
	if s.Count <= 0 {
		c.problemAt("count", "field.missing", "how many plants?")
	}
	if s.Clear <= 0 {
		c.problemAt("clear", "field.missing", `how much bare ground round each stem? such as "3 in"`)
	}
	c.path.pop()
}

func (s *Sheet) check(c *checker) {
	if s == nil {
		return
	}
	c.path.push("sheet")
	defer c.path.pop()
	if len(s.Size) != 2 {
		c.problemAt("size", "field.missing", `how large is a sheet? such as "4 ft x 3 ft"`)
		return
	}
	if s.Overlap < 0 || s.Overlap >= min(s.Size[0], s.Size[1]) {
		c.problemAt("overlap", "sheet.overlap", "less than the sheet's shorter side")
	}
}

// cover counts the sheets: in rows over a rectangle, the better way round;
// elsewhere from the area, since the edges are cut to fit.
func (s *Sheet) cover(c *checker, a *Area, ground units.Area) (n int64, exact bool) {
	l, w := s.Size[0], s.Size[1]
	if a.Shape == "rectangle" && max(a.Count, 1) == 1 && len(a.Plus)+len(a.Less) == 0 {
		one := s.rows(a.Sides[0], l, a.Sides[1], w)
		two := s.rows(a.Sides[0], w, a.Sides[1], l)
		n, exact = min(one, two), true
	} else if each, _ := (l - s.Overlap).By(w - s.Overlap); each > 0 {
		n = int64((ground + each - 1) / each)
	} else {
		n = maxCount + 1
	}
	if n > maxCount {
		c.problemAt("sheet", "sheet.small", "the overlap leaves too little of a sheet")
		return 0, false
	}
	return n, exact
}

// rows counts sheets laid in rows, side a along length, side b along width; past
// maxCount it counts no further.
func (s *Sheet) rows(length, a, width, b units.Length) int64 {
	along, across := s.row(length, a), s.row(width, b)
	if along > maxCount || across > maxCount || along*across > maxCount {
		return maxCount + 1
	}
	return along * across
}

// row counts sheets of side in a row over length: the first covers its side,
// every other its side less the overlap. A micrometre short buys nothing: a
// third of a metre is not a whole number of nanometres.
func (s *Sheet) row(length, side units.Length) int64 {
	const slack = units.Millimetre / 1000
	if length <= side+slack {
		return 1
	}
	step := side - s.Overlap
	return 1 + int64((length-side-slack+step-1)/step)
}
