// Package message keeps sentences apart from the language they are said in.
//
// A sentence is written in the code in English, where it is used, with numbered
// holes for what goes in: "the hole is {0} deeper than the ball reaches". That
// English text is its key in the table of any other language. What has a
// language at hand fills the holes at once ([Fill]); what has none, as a parser
// deep down, hands on a [Text].
//
// A hole takes its text as it stands, {0}; or as a figure, {#0}, whose decimal
// mark and units become the reader's; or as a phrase, {=0}, said in the same
// language.
package message

import "strings"

// Text is a sentence that is not said yet: its form and what goes in, in one
// string. A constant without holes is a Text as it stands, two phrases
// compare with ==, and the zero value says nothing. Every constant of this type
// is a form that a language may translate.
type Text string

// What [Of] puts round a form and between what goes in. No text of a reader has
// them: see clean.
const (
	opens  = '\x02'
	divide = '\x1f'
	closes = '\x03'
)

// Of is the phrase with its holes filled, each with the text of its number.
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

// clean puts a sign for every control character, so that what somebody typed
// cannot pass for the parts of a phrase.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' {
			return '\uFFFD'
		}
		return r
	}, s)
}

// Language is a language: a form in it, and a figure.
type Language interface {
	Form(english string) string
	Figure(english string) string
}

// String says the phrase in English.
func (p Text) String() string { return p.In(nil) }

// In says the phrase in a language; nil is English.
func (p Text) In(t Language) string {
	form, with := p.split()
	return Fill(t, form, with)
}

// split takes a phrase apart.
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

// Fill says a form in a language and fills its holes; nil is English. A hole
// without a text stays empty.
func Fill(t Language, form Text, with []string) string {
	text := string(form)
	if t != nil {
		text = t.Form(text)
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
				w = Text(w).In(t)
			case kind == '#' && t != nil:
				w = t.Figure(w)
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

// nextHole finds the first hole of text: where it starts, '=' or '#' or 0, and
// its number; -1 when there is none, and then the text has no more.
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

// Holes lists the holes of a form, each once: what a translation must have too.
// A hole's bit is its number, plus 10 for a figure and 20 for a phrase.
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
