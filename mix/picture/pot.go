package picture

import (
	"math"

	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// section is a pot in section: widths and heights in any one unit.
type section struct {
	top, bottom, height float64 // straight across, inside
	depth               float64 // of the mix
	known               bool    // to scale; else only the volume is known
}

// sectionOf returns a pot's section from its measures, or the outline of a
// common nursery pot when it has none.
func sectionOf(t *task.Pot) section {
	l := t.Line
	wide := func(top, bottom, height units.Length) section {
		return section{float64(top), float64(bottom), float64(height), float64(t.Depth()), true}
	}
	switch {
	case t.ByClass() || l.Holds.Volume > 0 || l.Brim.Volume > 0:
		return section{top: 1, bottom: .8, height: .95, depth: .87}
	case len(l.Box) == 3:
		return wide(l.Box[0], l.Box[0], l.Box[2])
	case l.Across > 0:
		return wide(l.Across, l.Across, l.Height)
	}
	return wide(l.Top, l.Bottom, l.Height)
}

// at returns how wide the section is at a height above its base.
func (s *section) at(h float64) float64 { return s.bottom + (s.top-s.bottom)*h/s.height }

// ball returns the size of a root ball in the section's unit. When only its
// volume is known, it gets the shape of what is filled, reduced by its share of
// the volume.
func (s *section) ball(t *task.Pot) (across, height float64) {
	b := t.Line.Ball
	if b.Height > 0 && s.known {
		return float64(b.Across), float64(b.Height)
	}
	part := math.Cbrt(float64(t.Ball.Plan) / float64(t.Each.Plan))
	return (s.bottom + s.at(s.depth)) / 2 * part, s.depth * part
}

// pots draws the lines of a fill task below one another, each at its own scale.
func (k *pen) pots(p *task.Pots) {
	k.Kind = "pots"
	lines := p.Lines[:min(len(p.Lines), mostPots)]
	for i := range lines {
		k.pot(&lines[i])
	}
	if more := len(p.Lines) - len(lines); more > 0 {
		k.sentence(morePots).count(int64(more)).describe().note()
	}
}

// The room for one pot, and the most cells of a tray that are drawn.
const (
	potWide, potTall = 124.0, 92.0 // the room for one
	mostCells        = 5           // drawn of a tray
)

// pot draws one line: a pot, or a few cells of a tray, with its measures.
func (k *pen) pot(t *task.Pot) {
	s, label := sectionOf(t), t.Label(k.p.Printer())
	all := k.p.Printer().Range(t.Total)
	k.notes(aFigure, label, 3)
	k.sentence(potDesc).text(label).volume(t.Takes().Plan).text(all).describe()

	cells := float64(min(t.Cells, mostCells))
	pitch := max(s.top, s.bottom) * 1.1
	scale := min(potWide/(pitch*(cells-1)+max(s.top, s.bottom)), potTall/s.height)
	top := k.Height
	if s.known {
		top += step + 8 // its width stands above
	}
	floor := top + s.height*scale
	wide := (pitch*(cells-1) + max(s.top, s.bottom)) * scale
	first := left + 6 + (potWide-wide)/2 + max(s.top, s.bottom)*scale/2
	for i := range int(cells) {
		k.cell(t, &s, first+float64(i)*pitch*scale, floor, scale)
	}
	middle := left + 6 + potWide/2
	notes := []callout{}
	point := func(x, y float64, s *sentence) { notes = append(notes, callout{x, y, s}) }
	last := first + float64(cells-1)*pitch*scale // the middle of the last cell
	line := floor - s.depth*scale
	edge := last + s.at(s.depth)*scale/2
	if s.known {
		w := s.top * scale
		k.across(first-w/2, first+w/2, top-6)
		text := cut(k.length(units.Length(s.top)), potWide+12, aLabel)
		half := labelWide(text) / 2
		k.text(aLabel, atMiddle, min(max(first, left+half), middle+potWide/2+6-half), top-12, text)
	}
	switch rim := t.Line.BelowRim; {
	case rim > 0:
		point(edge, line, k.sentence(potRim).length(rim).describe())
	case !s.known:
		point(edge, line, k.sentence(potFill))
	}
	if t.Line.Ball != nil {
		across, _ := s.ball(t)
		size := t.Line.Ball.String()
		point(last+across*scale/2-2, line+6, k.sentence(potBall).figure(size))
		k.sentence(potBallDesc).figure(size).volume(t.Ball.Plan).describe()
	}
	takes := potTakes
	if t.Cells > 1 {
		takes = cellTakes
	}
	point(last+s.at(s.depth/3)*scale/2-3, floor-s.depth*scale/3, k.sentence(takes).volume(t.Takes().Plan))
	high := k.sentence(potGuess)
	switch {
	case !s.known:
		high.describe()
	case s.bottom == s.top:
		high = k.sentence(potHigh).length(units.Length(s.height))
	default:
		high = k.sentence(potHighBase).length(units.Length(s.height)).length(units.Length(s.bottom))
	}
	point(last+s.bottom*scale/2, floor, high)
	end := k.callouts(left+potWide+26, k.Height, notes)
	k.Height = max(end, floor+6)
	if t.Cells > cellsDrawn(t) {
		k.sentence(potCells).count(int64(cells)).count(t.Cells).note()
	}
	if t.Cells*t.Line.Count > 1 { // each is at most 1e9
		k.sentence(potAll).text(all).note()
	}
	k.Height += 8
}

// cellsDrawn is how many cells of a tray are drawn.
func cellsDrawn(t *task.Pot) int64 { return min(t.Cells, mostCells) }

// labelWide is the width of a label.
func labelWide(s string) float64 { return wide(s, aLabel) }

// cell draws one pot with its middle at x.
func (k *pen) cell(t *task.Pot, s *section, x, floor, scale float64) {
	half := func(h float64) float64 { return s.at(h) * scale / 2 }
	line := floor - s.depth*scale
	l, b := half(s.depth), half(0)
	k.path(aMix, true, x-l, line, x+l, line, x+b, floor, x-b, floor)
	var ballW, ballH float64
	if t.Line.Ball != nil {
		ballW, ballH = s.ball(t)
		ballW, ballH = ballW*scale, ballH*scale
		ball := aBall
		if t.Line.Ball.Height == 0 || !s.known {
			ball = aBallGuess
		}
		k.rect(ball, x-ballW/2, line, ballW, ballH)
	}
	r := half(s.height)
	pot := aPot
	if !s.known {
		pot = aPotGuess
	}
	k.path(pot, false, x-r, floor-s.height*scale, x-b, floor, x+b, floor, x+r, floor-s.height*scale)
	k.line(aFillLine, x-l, line, x+l, line)
	k.grain(aMixGrain, x-max(l, b)+3, line+2, 2*max(l, b)-3, s.depth*scale-4, func(u, v float64) bool {
		in := half((floor - v) / scale)
		ball := math.Abs(u-x) < ballW/2+2 && v < line+ballH+2
		return math.Abs(u-x) < in-2 && !ball
	})
}
