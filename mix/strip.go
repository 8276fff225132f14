package mix

import (
	"slices"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Strip is a bed of one width along a line: beside a fence, round a house.
type Strip struct {
	Along   []units.Length // the straight runs, one after the other
	Width   units.Length
	Corners *int64 // right angles; nil for one between every two runs
	Edge    string // where Along was measured: "centre" (also ""), "outer" or "inner"
	Gaps    []units.Length
}

var stripFields = []field[*Strip]{
	{"along", "list of lengths", "the straight runs, one after the other", func(c *checker, n *json.Node, s *Strip) { s.Along = readLengths(c, n) }},
	{"width", "length", "across the strip", func(c *checker, n *json.Node, s *Strip) { s.Width = readLength(c, n) }},
	{"corners", "whole number", "right angles; one fewer than the runs when left out", func(c *checker, n *json.Node, s *Strip) {
		k := readCount(c, n, 0)
		s.Corners = &k
	}},
	{"edge", "centre, outer or inner", "the line along which the runs are measured; centre when left out", func(c *checker, n *json.Node, s *Strip) {
		s.Edge = oneOf(c, n, "centre", "outer", "inner")
	}},
	{"gaps", "list of lengths", "runs left out: a gate, a door", func(c *checker, n *json.Node, s *Strip) { s.Gaps = readLengths(c, n) }},
}

func readLengths(c *checker, n *json.Node) []units.Length {
	return readList(c, n, "lengths", func(c *checker, n *json.Node, l *units.Length) { *l = readLength(c, n) })
}

// measure is length times width. Along the centre line the corners come out
// right by themselves; along the outer edge each square corner is counted
// twice, along the inner edge not at all.
func (s *Strip) measure(c *checker) units.Area {
	c.path.push("strip")
	defer c.path.pop()
	if len(s.Along) > 0 && slices.Min(s.Along) < 0 || len(s.Gaps) > 0 && slices.Min(s.Gaps) < 0 {
		c.problemAt("along", "quantity.negative", "every run and gap is more than zero")
	}
	if s.Width <= 0 {
		c.problemAt("width", "field.missing", `how wide is the strip? such as "3 ft"`)
	}
	if len(s.Along) == 0 {
		c.problemAt("along", "field.missing", `give its runs, such as ["20 ft", "15 ft"]`)
	}
	if !c.sound() {
		return 0
	}
	run := sum(s.Along)
	open := sum(s.Gaps)
	if open >= run {
		c.problemAt("gaps", "area.gaps", "the gaps are as long as the strip itself")
		return 0
	}
	ground, ok := (run - open).By(s.Width)
	square, ok2 := s.Width.By(s.Width)
	corners := units.Area(s.Bends())
	if !ok || !ok2 || run > units.MaxLength || square > units.MaxArea/max(corners, 1) {
		c.problem("area.large", "more ground than 400 ha")
		return 0
	}
	switch s.Edge {
	case "outer":
		ground -= corners * square
	case "inner":
		ground += corners * square
	}
	if ground <= 0 || ground > units.MaxArea {
		c.problem("area.strip", "the corners leave nothing of the strip: are the runs longer than it is wide?")
		return 0
	}
	return ground
}

// Bends is how many right angles the strip has: as given, or one between
// every two runs.
func (s *Strip) Bends() int64 {
	if s.Corners != nil {
		return max(*s.Corners, 0)
	}
	return int64(max(len(s.Along)-1, 0))
}

// sum adds lengths, no further than past what any strip may have.
func sum(list []units.Length) (total units.Length) {
	for _, l := range list {
		if total += l; total > units.MaxLength {
			return units.MaxLength + 1
		}
	}
	return total
}
