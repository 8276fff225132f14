package ground

import (
	"strconv"
	"strings"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// mostPieces is how many pieces of ground, and runs of a strip, are written out. The
// others are counted: nobody reads a line of a hundred thousand.
const mostPieces = 50

// Words returns the area as it was typed, or its shape and measures in the
// reader's language.
func (a *Area) Words(p lang.Printer) string {
	text := p.Figure(a.Text)
	if text == "" {
		text = a.shapeWords(p)
	}
	if a.Count > 1 {
		text = strconv.FormatInt(a.Count, 10) + " x " + text
	}
	for i := range a.Plus {
		if i == mostPieces {
			text = p.Print("{0}, and {1} more pieces", text, strconv.Itoa(len(a.Plus)-i))
			break
		}
		text = p.Print("{0}, and {1}", text, a.Plus[i].Words(p))
	}
	for i := range a.Less {
		if i == mostPieces {
			text = p.Print("{0}, less {1} more pieces", text, strconv.Itoa(len(a.Less)-i))
			break
		}
		text = p.Print("{0}, less {1}", text, a.Less[i].Words(p))
	}
	return text
}

// shapeWords writes the shape alone.
func (a *Area) shapeWords(p lang.Printer) string {
	switch a.Shape {
	case "plain":
		return p.Area(a.Plain)
	case "corners":
		return p.Print("an outline of {0} corners", strconv.Itoa(len(a.Corners)))
	case "strip":
		return a.Strip.words(p)
	case "rectangle":
		return lengths(p, a.Sides, " x ")
	}
	return p.Figure(a.Shape) + " " + lengths(p, a.Sides, " x ")
}

// words writes the strip's width, its runs and the line they follow.
func (s *Strip) words(p lang.Printer) string {
	along := lengths(p, s.Along, " + ")
	if len(s.Gaps) > 0 {
		along = p.Print("{0} less {1}", along, lengths(p, s.Gaps, " + "))
	}
	form := message.Text("a strip {0} wide along {1}, measured along its centre line, {2}")
	switch s.Edge {
	case "outer":
		form = "a strip {0} wide along {1}, measured along its outer line, {2}"
	case "inner":
		form = "a strip {0} wide along {1}, measured along its inner line, {2}"
	}
	return p.Print(form, p.Length(s.Width), along, p.Count(s.bends(), "{0} corner", "{0} corners"))
}

// lengths writes a list of lengths.
func lengths(p lang.Printer, list []units.Length, between string) string {
	text := make([]string, min(len(list), mostPieces))
	for i := range text {
		text[i] = p.Length(list[i])
	}
	joined := strings.Join(text, between)
	if rest := len(list) - len(text); rest > 0 {
		return p.Print("{0} + {1} more", joined, strconv.Itoa(rest))
	}
	return joined
}
