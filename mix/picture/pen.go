package picture

import (
	"math"
	"strconv"

	"example.org/barrow/mix"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// The measures of every drawing.
const (
	page   = 320.0 // the width of every drawing
	margin = 8.0
	left   = margin
	right  = page - margin
	step   = 17.0 // from one line of text to the next
	ascent = 12.0 // of a text above its baseline; the rest of step is below it
)

// pen draws from the top down. Height is how far it has come.
type pen struct {
	Drawing
	p *mix.Plan
}

// newPen returns a pen for a task of the plan, or for none with -1.
func newPen(p *mix.Plan, task int, title string) *pen {
	return &pen{Drawing{Task: task, Title: title, Width: page, Height: 4}, p}
}

// onto adds the drawing to a list.
func (k *pen) onto(list []Drawing) []Drawing { return append(list, k.Drawing) }

// round rounds a coordinate to a hundredth. The limits keep a damaged plan from
// writing numbers that SVG cannot read.
func round(f float64) float64 { return math.Round(min(max(f, -1e6), 1e6)*100) / 100 }

// add draws a shape and returns it, so that the caller can set its other
// fields.
func (k *pen) add(is string, c class, x, y, w, h float64) *Shape {
	k.Shapes = append(k.Shapes, Shape{Is: is, Class: classNames[c], X: round(x), Y: round(y), W: round(w), H: round(h)})
	return &k.Shapes[len(k.Shapes)-1]
}

// rect draws a rectangle with its top left corner at x, y.
func (k *pen) rect(c class, x, y, w, h float64) { k.add("rect", c, x, y, w, h) }

// line draws a line from x, y to x2, y2.
func (k *pen) line(c class, x, y, x2, y2 float64) { k.add("line", c, x, y, x2-x, y2-y) }

// path draws a line through points. A closed path is a region.
func (k *pen) path(c class, closed bool, points ...float64) {
	var t trace
	for i := 0; i < len(points); i += 2 {
		t.to(points[i], points[i+1])
	}
	if closed {
		t.raw("Z")
	}
	k.trace(c, &t)
}

// trace is a path while it grows: move starts a part of it, to continues that
// part.
type trace struct {
	d    []byte
	open bool
}

// move starts a new part of the path.
func (t *trace) move(x, y float64) {
	t.open = false
	t.to(x, y)
}

// to draws a line to a point, or starts there when no part is open.
func (t *trace) to(x, y float64) {
	command := byte('L')
	if !t.open {
		command, t.open = 'M', true
	}
	t.d = appendNumber(append(appendNumber(append(t.d, command), x), ' '), y)
}

// box draws a rectangle whose lower side may be shorter.
func (t *trace) box(x, y, w, h, foot float64) {
	t.move(x, y)
	t.to(x+w, y)
	t.to(x+foot, y+h)
	t.to(x, y+h)
	t.raw("Z")
}

// raw adds relative commands as they are.
func (t *trace) raw(s string) { t.d = append(t.d, s...) }

// trace draws a path, unless it is empty.
func (k *pen) trace(c class, t *trace) {
	if len(t.d) > 0 {
		k.add("path", c, 0, 0, 0, 0).D = string(t.d)
	}
}

// appendNumber writes a coordinate without zeros at its end.
func appendNumber(b []byte, f float64) []byte {
	b = strconv.AppendFloat(b, round(f)+0, 'f', 2, 64) // + 0: no minus before a zero
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	return b
}

// text writes one line that is known to fit.
func (k *pen) text(c class, a anchor, x, y float64, s string) {
	t := k.add("text", c, x, y, 0, 0)
	t.Text, t.Anchor = s, anchorNames[a]
}

// head writes a heading above y.
func (k *pen) head(x, y float64, s *sentence) {
	k.text(aFigure, atStart, x, y-step+ascent, s.String())
}

// put writes lines of text below one another, starting at top, and returns
// where they end.
func (k *pen) put(p *para, x, top float64) (bottom float64) { return k.lines(p, atStart, x, top) }

// above writes lines of text that end at bottom.
func (k *pen) above(p *para, x, bottom float64) { k.put(p, x, bottom-p.tall()) }

// inside writes lines in the middle of a region's height.
func (k *pen) inside(p *para, x, top, high float64) { k.put(p, x, top+(high-p.tall())/2) }

// lines writes each line, one step below the other.
func (k *pen) lines(p *para, a anchor, x, top float64) (bottom float64) {
	for _, s := range p.lines {
		k.text(p.class, a, x, top+ascent, s)
		top += step
	}
	return top
}

// note writes a text across the whole width and moves below it.
func (k *pen) note(s string) { k.notes(aLabel, s, 4) }

// notes is note with a class and a limit on the number of lines.
func (k *pen) notes(c class, s string, most int) {
	k.Height = k.put(wrap(s, right-left, most, c), left, k.Height) + 4
}

// upright draws a vertical dimension line, from y to y2.
func (k *pen) upright(x, y, y2 float64) {
	k.dimension(x, y, x, y2, 3, 0)
}

// across draws a horizontal dimension line, from x to x2.
func (k *pen) across(x, x2, y float64) {
	k.dimension(x, y, x2, y, 0, 3)
}

// dimension draws a line with a stroke across each end; u and v say how far the
// strokes reach.
func (k *pen) dimension(x, y, x2, y2, u, v float64) {
	var t trace
	t.move(x-u, y-v)
	t.to(x+u, y+v)
	t.move(x, y)
	t.to(x2, y2)
	t.move(x2-u, y2-v)
	t.to(x2+u, y2+v)
	k.trace(aDimension, &t)
}

// callout is a text beside a drawing that belongs to a point in it.
type callout struct {
	x, y float64 // the point
	text *sentence
}

// callouts writes texts in a column from x to the right edge, with a line from
// each to its point, and returns where the last one ends. Each is as close to
// the height of its point as the ones above it allow. They must be in order of
// y.
func (k *pen) callouts(x, top float64, list []callout) (bottom float64) {
	bottom = top
	for i := range list {
		c := &list[i]
		bottom = max(bottom, c.y-step/2)
		k.line(aLeader, c.x, c.y, x-3, bottom+step/2)
		bottom = k.put(c.text.wrap(right-x, 6), x, bottom) + 2
	}
	return bottom
}

// grain marks a region with small signs, so that it can be told from others
// without colour. Signs that would touch a text are left out.
func (k *pen) grain(c class, x, y, w, h float64, inside func(x, y float64) bool) {
	mark := "h4"
	switch c {
	case aMulchGrain, aLayerGrain:
		mark = "l5-3"
	case aMixGrain:
		mark = "h.01"
	}
	var t trace
	dx, dy := 16.0, 9.0
	for n := 0; (w/dx)*(h/dy) > mostMarks && n < 9; n++ {
		dx, dy = dx*1.5, dy*1.5
	}
	odd := false
	for v := y + dy/2; v < y+h-2; v += dy {
		u := x + dx/4
		if odd {
			u += dx / 2
		}
		odd = !odd
		for ; u < x+w-6; u += dx {
			if (inside == nil || inside(u, v) && inside(u+5, v)) && !k.onText(u, v) {
				t.move(u, v)
				t.raw(mark)
			}
		}
	}
	k.trace(c, &t)
}

// onText reports whether a sign at the point would touch a text.
func (k *pen) onText(x, y float64) bool {
	for i := range k.Shapes {
		s := &k.Shapes[i]
		if s.Is != "text" {
			continue
		}
		l, r := s.extent()
		if x > l-8 && x < r+3 && y > s.Y-ascent-1 && y < s.Y+6 {
			return true
		}
	}
	return false
}

// ruler shows the scale with a bar of a round length; scale is units per
// nanometre.
func (k *pen) ruler(scale float64, sentence message.Text) {
	l := roundLength(k.p.Measure, 14/scale)
	h := float64(l) * scale
	k.Height += 4
	text := k.sentence(sentence).length(l).wrap(right-left-16, 3)
	tall := max(h, text.tall())
	y := k.Height + (tall-h)/2
	k.upright(left+5, y, y+h)
	k.inside(text, left+16, k.Height, tall)
	k.Height += tall + 6
}

// roundLength returns the shortest round length of at least so many nanometres.
func roundLength(m units.Measure, least float64) units.Length {
	if m == units.Metric {
		return units.Length(roundUp(int64(units.Millimetre), least))
	}
	for _, eighths := range [...]units.Length{1, 2, 4, 8, 16, 24, 48} {
		if l := units.Inch / 8 * eighths; float64(l) >= least {
			return l
		}
	}
	return units.Length(roundUp(int64(units.Foot), least))
}

// roundUp returns the least of base times 1, 2, 5, 10, 20 and so on that is at
// least least.
func roundUp(base int64, least float64) int64 {
	for {
		for _, n := range [...]int64{1, 2, 5} {
			if float64(base*n) >= least || base > math.MaxInt64/100 {
				return base * n
			}
		}
		base *= 10
	}
}
