// Package lang says what the library has to say in the reader's language, and
// writes figures the reader's way. Numbers, codes and ids stay as they are.
package lang

import (
	"errors"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units/message"
)

// Language is a language, and the decimal mark that figures are written with. A
// nil Language is English with a point. A Language does not change once made.
type Language struct {
	language string
	comma    bool              // the decimal mark
	forms    map[uint32]string // by the Key of the English form
}

// MaxBytes bounds a language file.
const MaxBytes = 1 << 20

// Parse reads a language file:
//
//	{"language": "es", "decimal": ".", "page": {}, "library": {"no task takes {0}": "ninguna tarea lleva {0}"}}
//
// Decimal is "." when it is left out. "page" is for a page, and not looked at.
// A translation has the holes of its English form, in any order.
//
// The page downloads a file that is shorter: in place of an object, a list of
// all [Key]s in one string, six hexadecimal digits each, and then their texts.
func Parse(data []byte) (*Language, error) {
	root, faults := json.Parse(data, json.Limits{Bytes: MaxBytes, Depth: 4, Nodes: 20_000})
	if len(faults) > 0 {
		return nil, faults[0]
	}
	t := &Language{forms: map[uint32]string{}}
	language, decimal, library := root.Field("language"), root.Field("decimal"), root.Field("library")
	if language == nil || language.Kind != json.String || language.Text == "" {
		return nil, errors.New(`a language file has its language, such as "language": "es"`)
	}
	t.language = language.Text
	if decimal != nil {
		if decimal.Kind != json.String || decimal.Text != "." && decimal.Text != "," {
			return nil, errors.New(`the decimal mark is "." or ","`)
		}
		t.comma = decimal.Text == ","
	}
	var err error
	switch {
	case library != nil && library.Kind == json.Object:
		err = t.named(library)
	case library != nil && library.Kind == json.Array && len(library.Items) > 0:
		err = t.keyed(library.Items[0].Text, library.Items[1:])
	default:
		err = errors.New(`a language file has its forms in an object, "library"`)
	}
	if err != nil {
		return nil, err
	}
	return t, nil
}

// named takes forms in by their English.
func (t *Language) named(library *json.Node) error {
	for i, english := range library.Keys {
		n := &library.Items[i]
		switch {
		case n.Kind != json.String || n.Text == "":
			return errors.New("no text for: " + english)
		case message.Holes(n.Text) != message.Holes(english):
			return errors.New("other holes than the English: " + english)
		case t.forms[Key(english)] != "":
			return errors.New("another form has the same key, word it otherwise: " + english)
		}
		t.forms[Key(english)] = n.Text
	}
	return nil
}

// keyed takes forms in by their keys, as the build wrote them.
func (t *Language) keyed(keys string, texts []json.Node) error {
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
		t.forms[key] = texts[i].Text
	}
	return nil
}

const keyDigits = 6

// Key stands for an English form, in a download that would else have every form
// twice: FNV-1a, folded to 24 bits. The page has its own, keyOf in web/text/say.js.
func Key(english string) uint32 {
	h := uint32(0x811c9dc5)
	for i := range len(english) {
		h = (h ^ uint32(english[i])) * 0x01000193
	}
	return h>>24 ^ h&0xffffff
}

// Comma returns the language with a comma, or a point, as its decimal mark. t
// may be nil: English with a comma.
func (t *Language) Comma(comma bool) *Language {
	if (t != nil && t.comma) == comma {
		return t
	}
	out := &Language{comma: comma}
	if t != nil {
		out.language, out.forms = t.language, t.forms
	}
	return out
}

// Language is the code that the file gives, or "en".
func (t *Language) Code() string {
	if t == nil || t.language == "" {
		return "en"
	}
	return t.language
}

// Form is the translation of an English form, or the form itself where there is
// none.
func (t *Language) Form(english string) string {
	if t != nil {
		if form, ok := t.forms[Key(english)]; ok {
			return form
		}
	}
	return english
}

// Say says a form, its holes filled with texts that are the reader's already.
func (t *Language) Print(form message.Text, with ...string) string {
	return message.Fill(t, form, with)
}

// Tell says a phrase.
func (t *Language) Text(p message.Text) string { return p.In(t) }
