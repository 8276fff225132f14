// Package lang translates what the library says, and writes figures the way the
// reader does. Numbers, codes and ids stay as they are.
//
//	es, err := lang.Parse(file)
//	p := lang.Printer{Measure: units.Metric, Language: es}
//	text := p.Volume(30 * units.Litre)
//
// A nil [Language] is English with a decimal point. A Language does not change
// once made, so goroutines can share one. A [Writer] is for one goroutine at a
// time.
package lang

import (
	"errors"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
)

// Language is a table of translations and the decimal mark of figures. A nil
// Language is English with a point. A Language does not change once made.
type Language struct {
	language string
	comma    bool              // the decimal mark
	forms    map[uint32]string // by the Key of the English form
}

// MaxBytes is the largest language file.
const MaxBytes = 1 << 20

// Parse reads a language file:
//
//	{"language": "es", "decimal": ".", "page": {}, "library": {"no task takes {0}": "ninguna tarea lleva {0}"}}
//
// The decimal mark is "." when it is left out. "page" is for the page and is
// ignored here. A translation has the same holes as its English form, in any
// order. The error says what is wrong with the file.
//
// The page downloads a shorter file. There, "library" is a list: first all
// [Key]s in one string, six hexadecimal digits each, and then their texts.
func Parse(data []byte) (*Language, error) {
	root, faults := json.Parse(data, json.Limits{Bytes: MaxBytes, Depth: 4, Nodes: 20_000})
	if len(faults) > 0 {
		return nil, faults[0]
	}
	l := &Language{forms: map[uint32]string{}}
	language, decimal, library := root.Field("language"), root.Field("decimal"), root.Field("library")
	if language == nil || language.Kind != json.String || language.Text == "" {
		return nil, errors.New(`a language file has its language, such as "language": "es"`)
	}
	l.language = language.Text
	if decimal != nil {
		if decimal.Kind != json.String || decimal.Text != "." && decimal.Text != "," {
			return nil, errors.New(`the decimal mark is "." or ","`)
		}
		l.comma = decimal.Text == ","
	}
	var err error
	switch {
	case library != nil && library.Kind == json.Object:
		err = l.named(library)
	case library != nil && library.Kind == json.Array && len(library.Items) > 0:
		err = l.keyed(library.Items[0].Text, library.Items[1:])
	default:
		err = errors.New(`a language file has its forms in an object, "library"`)
	}
	if err != nil {
		return nil, err
	}
	return l, nil
}

// named reads forms by their English.
func (l *Language) named(library *json.Node) error {
	for i, english := range library.Keys {
		n := &library.Items[i]
		switch {
		case n.Kind != json.String || n.Text == "":
			return errors.New("no text for: " + english)
		case message.Holes(n.Text) != message.Holes(english):
			return errors.New("other holes than the English: " + english)
		case l.forms[Key(english)] != "":
			return errors.New("another form has the same key, word it otherwise: " + english)
		}
		l.forms[Key(english)] = n.Text
	}
	return nil
}

// keyed reads forms by their keys, as the build wrote them.
func (l *Language) keyed(keys string, texts []json.Node) error {
	if len(keys) != keyDigits*len(texts) {
		return errors.New("a language file has as many keys as texts")
	}
	for i := range texts {
		key := uint32(0)
		for _, c := range []byte(keys[keyDigits*i:][:keyDigits]) {
			digit := strings.IndexByte("0123456789abcdef", c)
			if digit < 0 {
				return errors.New("a key of a language file has six hexadecimal digits")
			}
			key = key<<4 | uint32(digit)
		}
		l.forms[key] = texts[i].Text
	}
	return nil
}

// keyDigits is how many hexadecimal digits a key has.
const keyDigits = 6

// Key is a short key for an English form: FNV-1a, folded to 24 bits. Without it
// the download would contain every form twice. The page has its own, keyOf in
// web/text/say.js.
func Key(english string) uint32 {
	h := uint32(0x811c9dc5)
	for i := range len(english) {
		h = (h ^ uint32(english[i])) * 0x01000193
	}
	return h>>24 ^ h&0xffffff
}

// Comma returns the language with a comma as its decimal mark, or with a point.
// The language may be nil: English with a comma.
func (l *Language) Comma(comma bool) *Language {
	if (l != nil && l.comma) == comma {
		return l
	}
	out := &Language{comma: comma}
	if l != nil {
		out.language, out.forms = l.language, l.forms
	}
	return out
}

// DecimalComma reports whether the decimal mark is a comma.
func (l *Language) DecimalComma() bool { return l != nil && l.comma }

// Code returns the language's code from its file, or "en".
func (l *Language) Code() string {
	if l == nil || l.language == "" {
		return "en"
	}
	return l.language
}

// Form returns the translation of an English form, or the form itself when
// there is none.
func (l *Language) Form(english string) string {
	if l != nil {
		if form, ok := l.forms[Key(english)]; ok {
			return form
		}
	}
	return english
}

// Print returns a form with its holes filled by texts that are in the reader's
// language already.
func (l *Language) Print(form message.Text, with ...string) string {
	return message.Fill(l, form, with)
}

// Text returns a sentence in the language.
func (l *Language) Text(p message.Text) string { return p.In(l) }
