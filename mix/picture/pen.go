package picture

import (
	"math"
	"strconv"

	"example.org/barrow/mix"
	"example.org/barrow/units"
	"example.org/barrow/units/say"
)

const (
	page   = 320.0 // the width of every drawing
	margin = 8.0
	left   = margin
	right  = page - margin
	step   = 17.0 // from one line of text to the next
	ascent = 12.0 // of a text above its baseline; the rest of step is below it
)

// The helpers below are kept from being inlined: the drawings are made of calls
// to them, and copies of them would weigh in the download.

// pen draws from the top down: Height is how far it has come.
type pen struct {
	Drawing
	p *mix.Plan
}

//go:noinline
func start(p *mix.Plan, task int, title string) *pen {
	return &pen{Drawing{Task: task, Title: title, Width: page, Height: 4}, p}
}

// onto adds the drawing to those before it.
//
//go:noinline
func (k *pen) onto(list []Drawing) []Drawing { return append(list, k.Drawing) }

// round takes a coordinate to a hundredth.
//
//go:noinline
func round(f float64) float64 { return math.Round(min(max(f, -1e6), 1e6)*100) / 100 }

func (k *pen) add(s Shape) {
	s.X, s.Y, s.W, s.H = round(s.X), round(s.Y), round(s.W), round(s.H)
	k.Shapes = append(k.Shapes, s)
}

//go:noinline
func (k *pen) rect(class string, x, y, w, h float64) {
	k.add(Shape{Is: "rect", Class: class, X: x, Y: y, W: w, H: h})
}

//go:noinline
func (k *pen) line(class string, x, y, x2, y2 float64) {
	k.add(Shape{Is: "line", Class: class, X: x, Y: y, W: x2 - x, H: y2 - y})
}

// path draws through points; a path that is closed is a region.
func (k *pen) path(class string, closed bool, points ...float64) {
	var t trace
	for i := 0; i < len(points); i += 2 {
		t.to(points[i], points[i+1])
	}
	if closed {
		t.raw("Z")
	}
	k.trace(class, &t)
}

// trace is a path as it grows: move starts a part of it, to goes on with it.
type trace struct {
	d    []byte
	open bool
}

//go:noinline
func (t *trace) move(x, y float64) {
	t.open = false
	t.to(x, y)
}

//go:noinline
func (t *trace) to(x, y float64) {
	command := byte('L')
	if !t.open {
		command, t.open = 'M', true
	}
	t.d = appendNumber(append(appendNumber(append(t.d, command), x), ' '), y)
}

// box draws a rectangle, its foot as wide as said.
//
//go:noinline
func (t *trace) box(x, y, w, h, foot float64) {
	t.move(x, y)
	t.to(x+w, y)
	t.to(x+foot, y+h)
	t.to(x, y+h)
	t.raw("Z")
}

// raw adds commands that are relative.
//
//go:noinline
func (t *trace) raw(s string) { t.d = append(t.d, s...) }

// trace draws a path, if there is anything of it.
//
//go:noinline
func (k *pen) trace(class string, t *trace) {
	if len(t.d) > 0 {
		k.add(Shape{Is: "path", Class: class, D: string(t.d)})
	}
}

// appendNumber writes a coordinate, without zeros at its end.
//
//go:noinline
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
//
//go:noinline
func (k *pen) text(class, anchor string, x, y float64, s string) {
	k.add(Shape{Is: "text", Class: class, X: x, Y: y, Anchor: anchor, Text: s})
}

// lines writes lines of text below one another, the first below top.
func (k *pen) lines(class, anchor string, x, top float64, lines []string) (bottom float64) {
	for _, s := range lines {
		k.text(class, anchor, x, top+ascent, s)
		top += step
	}
	return top
}

// note writes a text across the whole width and comes down below it.
//
//go:noinline
func (k *pen) note(s string) { k.notes("label", s, 4) }

func (k *pen) notes(class, s string, most int) {
	k.Height = k.lines(class, "start", left, k.Height, wrap(s, right-left, most, class)) + 4
}

// tell adds a sentence to the description.
//
//go:noinline
func (k *pen) tell(sentence say.Phrase, args ...string) {
	if k.Description != "" {
		k.Description += " "
	}
	k.Description += k.say(sentence, args...)
}

// upright draws a dimension line from y to y2, across a dimension line from x
// to x2.
func (k *pen) upright(x, y, y2 float64) {
	k.dimension(x, y, x, y2, 3, 0)
}

func (k *pen) across(x, x2, y float64) {
	k.dimension(x, y, x2, y, 0, 3)
}

// dimension draws a line with a stroke over each of its ends, so far to the
// sides.
//
//go:noinline
func (k *pen) dimension(x, y, x2, y2, u, v float64) {
	var t trace
	t.move(x-u, y-v)
	t.to(x+u, y+v)
	t.move(x, y)
	t.to(x2, y2)
	t.move(x2-u, y2-v)
	t.to(x2+u, y2+v)
	k.trace("dimension", &t)
}

// callout is a text beside a drawing that belongs to a point of it.
type callout struct {
	x, y  float64 // the point
	class string
	text  string
}

// callouts writes texts in a column from x to the right edge, each as near the
// height of its point as those above it leave room, with a line from it to the
// point, and returns where the last ends. They come in order of y.
func (k *pen) callouts(x, top float64, list ...callout) (bottom float64) {
	bottom = top
	for _, c := range list {
		lines := wrap(c.text, right-x, 6, c.class)
		bottom = max(bottom, c.y-step/2)
		k.line("leader", c.x, c.y, x-3, bottom+step/2)
		bottom = k.lines(c.class, "start", x, bottom, lines) + 2
	}
	return bottom
}

// grain marks a region so that it is told from others without colour: with
// marks of its own, as many as leave its texts free.
func (k *pen) grain(class string, x, y, w, h float64, inside func(x, y float64) bool) {
	mark := "h4"
	switch class {
	case "mulch-grain", "layer-grain":
		mark = "l5-3"
	case "mix-grain":
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
	k.trace(class, &t)
}

// onText reports whether a mark at the point would touch a text or a dimension.
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

// ruler says the scale: a bar of a round length, scale units to a nanometre.
func (k *pen) ruler(scale float64, sentence say.Phrase) {
	l := roundLength(k.p.Measure, 14/scale)
	h := float64(l) * scale
	k.Height += 4
	lines := wrap(k.say(sentence, k.length(l)), right-left-16, 3, "label")
	tall := max(h, step*float64(len(lines)))
	y := k.Height + (tall-h)/2
	k.upright(left+5, y, y+h)
	k.lines("label", "start", left+16, k.Height+(tall-step*float64(len(lines)))/2, lines)
	k.Height += tall + 6
}

// roundLength is the least round length that is at least so many nanometres.
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

// roundUp is the least of 1, 2, 5, 10, 20 and so on times base that is at least
// so much.
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

func count[T int | int64](n T) string { return strconv.FormatInt(int64(n), 10) }
