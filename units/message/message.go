// Package message keeps a sentence apart from its language.
//
// The code holds each sentence in English, where it is used, with numbered
// holes for what varies: "the hole is {0} deeper than the ball reaches". That
// English form is also its key in the table of every other language. Code that
// knows the language fills the holes at once with [Fill]. Code that does not,
// such as a parser, returns a [Text].
//
// A hole takes its text unchanged, {0}; or as a figure, {#0}, written with the
// reader's decimal mark and units; or as another Text, {=0}, in the same
// language.
//
// Nothing here changes after it is made, so all of it is safe for concurrent
// use.
package message

import "strings"

// Text is a sentence that has no language yet: its form and what fills the
// holes, in one string. A constant without holes is a Text as it stands, two
// Texts compare with ==, and the zero value is empty. Every constant of this
// type is a form that a language can translate.
type Text string

// What [Of] puts around the form and between the texts. No text from a user
// contains them; see clean.
const (
	opens  = '\x02'
	divide = '\x1f'
	closes = '\x03'
)

// Of returns the sentence with hole i filled by with[i].
func Of(form Text, with ...string) Text {
	b := append([]byte{opens}, form...)
	for i, w := range with {
		b = append(b, divide)
		if i < 10 && !strings.Contains(string(form), "{="+string(rune('0'+i))+"}") {
			w = clean(w)
		}
		b = append(b, w...)
	}
	return Text(append(b, closes))
}

// clean replaces every control character by a sign, so that text somebody typed
// cannot pass for a part of a sentence, nor change how the rest of it shows.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if IsControl(r) {
			return '\uFFFD'
		}
		return r
	}, s)
}

// IsControl reports whether r is no letter or sign of a text but could move a
// terminal's cursor or turn the text around it: the controls C0 (tab and line end
// among them), delete and C1, the separators of lines and paragraphs, and the marks,
// embeddings, overrides and isolates of the Unicode bidirectional algorithm
// (UAX #9, section 2).
func IsControl(r rune) bool {
	switch {
	case r < ' ', 0x7f <= r && r < 0xa0, 0x2028 <= r && r <= 0x202e, 0x2066 <= r && r <= 0x2069:
		return true
	}
	return r == 0x200e || r == 0x200f || r == 0x061c
}

// Language translates forms and figures. Form returns the form in the language,
// or the English when it has none.
type Language interface {
	Form(english string) string
	Figure(english string) string
}

// String returns the sentence in English.
func (p Text) String() string { return p.In(nil) }

// In returns the sentence in language l; nil is English.
func (p Text) In(l Language) string {
	form, with := p.split()
	return Fill(l, form, with)
}

// split separates the form from what fills its holes. Texts nest, so it counts
// the marks.
func (p Text) split() (form Text, with []string) {
	if p == "" || p[0] != opens {
		return p, nil
	}
	start, depth := 1, 0
	for i := 1; i < len(p); i++ {
		switch c := p[i]; {
		case c == opens:
			depth++
		case c == closes && depth > 0:
			depth--
		case depth == 0 && (c == divide || c == closes):
			with = append(with, string(p[start:i]))
			start = i + 1
		}
	}
	if len(with) == 0 {
		return p, nil
	}
	return Text(with[0]), with[1:]
}

// Fill returns a form in language l with its holes filled; a nil l is English.
// A hole without a text stays empty.
func Fill(l Language, form Text, with []string) string {
	text := string(form)
	if l != nil {
		text = l.Form(text)
	}
	if len(with) == 0 {
		return text
	}
	var b []byte
	for len(text) > 0 {
		before, kind, number := nextHole(text)
		b = append(b, text[:before]...)
		if number < 0 {
			break
		}
		if number < len(with) {
			w := with[number]
			switch {
			case kind == '=':
				w = Text(w).In(l)
			case kind == '#' && l != nil:
				w = l.Figure(w)
			}
			b = append(b, w...)
		}
		text = text[before+len("{0}"):]
		if kind != 0 {
			text = text[1:]
		}
	}
	return string(b)
}

// nextHole finds the first hole of text: where it starts, its kind ('=', '#' or
// 0) and its number. The number is -1 when there is no hole.
func nextHole(text string) (before int, kind byte, number int) {
	for i := 0; i+2 < len(text); i++ {
		if text[i] != '{' {
			continue
		}
		kind, at := byte(0), i+1
		if text[at] == '=' || text[at] == '#' {
			kind = text[at]
			at++
		}
		if at+1 < len(text) && '0' <= text[at] && text[at] <= '9' && text[at+1] == '}' {
			return i, kind, int(text[at] - '0')
		}
	}
	return len(text), 0, -1
}

// Holes returns the set of holes in a form, which a translation must have too.
// A hole's bit is its number, plus 10 for a figure and 20 for a Text.
func Holes(form string) (set uint32) {
	for {
		before, kind, number := nextHole(form)
		if number < 0 {
			return set
		}
		bit := number
		switch kind {
		case '#':
			bit += 10
		case '=':
			bit += 20
		}
		set |= 1 << bit
		form = form[before+1:]
	}
}
