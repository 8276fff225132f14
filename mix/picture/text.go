package picture

import "unicode/utf8"

// size is the height of all text.
const size = 14

// glyph is the width of a character as a part of the height of the text. It is
// the mean over a class of characters in DejaVu Sans, the widest of the common
// typefaces, so that what fits with it fits with others. A label does not need
// more precision.
func glyph(r rune) float64 {
	switch {
	case r >= 0x250:
		return 1 // at most a square, in nearly every script
	case r >= 0x7f:
		return .75
	case r >= 'A' && r <= 'Z':
		switch r {
		case 'I', 'J':
			return .36
		case 'M', 'W':
			return .95
		}
		return .72
	}
	switch r {
	case 'i', 'j', 'l', 't', 'f', 'I', 'J', ' ', '.', ',', ':', ';', '\'', '!', '|', '/', '(', ')', '[', ']', '-':
		return .37
	case 'm', 'w', '%', '@', '&', '#', '+', '=', '<', '>', '~', '^', '_', '"':
		return .95
	}
	return .62
}

// wide is how wide a line of text is. Figures are set in a bolder face.
func wide(s string, c class) (w float64) {
	for _, r := range s {
		w += glyph(r)
	}
	if c == aFigure {
		w *= 1.1
	}
	return w * size
}

// extent returns the left and right end of a text.
func (s *Shape) extent() (l, r float64) {
	c := aLabel
	if s.Class == classNames[aFigure] {
		c = aFigure
	}
	w := wide(s.Text, c)
	switch s.Anchor {
	case "middle":
		return s.X - w/2, s.X + w/2
	case "end":
		return s.X - w, s.X
	}
	return s.X, s.X + w
}

// para is a text in lines, all of one class.
type para struct {
	class class
	lines []string
}

// tall is the height of its lines.
func (p *para) tall() float64 { return step * float64(len(p.lines)) }

// fits reports whether it fits into a region of that height.
func (p *para) fits(high float64) bool { return p.tall()+4 <= high }

// add adds the lines of another.
func (p *para) add(q *para) { p.lines = append(p.lines, q.lines...) }

// wrap breaks a text into at most that many lines that fit. A word that is too
// long, and a text with more lines, end in an ellipsis.
func wrap(s string, room float64, most int, c class) *para {
	p := &para{class: c}
	s = plain(s)
	for len(p.lines) < most-1 {
		n := fitting(s, room, c)
		if n == len(s) {
			break
		}
		end := lastSpace(s, n)
		if end == 0 { // one word, too long
			for end = n; end < len(s) && s[end] != ' '; end++ {
			}
		}
		p.lines = append(p.lines, cut(s[:end], room, c))
		s = s[min(end+1, len(s)):]
	}
	if s != "" {
		p.lines = append(p.lines, cut(s, room, c))
	}
	return p
}

// lastSpace returns where to break s so that at most n bytes come before: at
// the last space that does not separate a figure from its unit, otherwise at
// the last space; 0 when there is none.
func lastSpace(s string, n int) (end int) {
	for i := n; i > 0; i-- {
		if s[i] != ' ' {
			continue
		}
		if !tied(s, i) {
			return i
		}
		end = max(end, i)
	}
	return end
}

// tied reports whether the space at n should not be a line break: after a
// number, after the first half of "cu ft", and on both sides of an x.
func tied(s string, n int) bool {
	before := s[max(0, n-3):n]
	return s[n-1] >= '0' && s[n-1] <= '9' || before == " cu" || before == " sq" ||
		len(before) > 1 && before[len(before)-2:] == " x" || len(s) > n+2 && s[n+1:n+3] == "x "
}

// fitting returns how many bytes of s fit.
func fitting(s string, room float64, c class) int {
	if c == aFigure {
		room /= 1.1
	}
	room /= size
	for i, r := range s {
		if room -= glyph(r); room < -1e-9 {
			return i
		}
	}
	return len(s)
}

// cut shortens a line that does not fit.
func cut(s string, room float64, c class) string {
	if fitting(s, room, c) == len(s) {
		return s
	}
	return s[:fitting(s, room-1.1*size, c)] + "…"
}

// plain replaces every run of characters that cannot be in a line of text by a
// space: controls, and what XML does not allow.
func plain(s string) string {
	var b []byte
	gap := false
	for _, r := range s {
		if r <= ' ' || r >= 0x7f && r < 0xa0 || r >= 0xfffe && r <= 0xffff || r == 0x2028 || r == 0x2029 {
			gap = len(b) > 0
			continue
		}
		if gap {
			b, gap = append(b, ' '), false
		}
		b = utf8.AppendRune(b, r)
	}
	return string(b)
}
