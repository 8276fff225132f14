// Package words says what the library has to say in the reader's language, and
// writes figures the reader's way. Numbers, codes and ids stay as they are.
package words

import (
	"errors"

	"example.org/barrow/mix/wire"
	"example.org/barrow/units/say"
)

// Tongue is a language, and the decimal mark that figures are written with. A
// nil Tongue is English with a point. A Tongue does not change once made.
type Tongue struct {
	language string
	comma    bool // the decimal mark
	forms    map[string]string
}

// MaxBytes bounds a language file.
const MaxBytes = 1 << 20

// Parse reads a language file:
//
//	{"language": "es", "decimal": ".", "page": {}, "library": {"no task takes {0}": "ninguna tarea lleva {0}"}}
//
// Decimal is "." when it is left out. "page" is for a page, and not looked at.
// A translation has the holes of its English form, in any order.
func Parse(data []byte) (*Tongue, error) {
	root, faults := wire.Parse(data, wire.Limits{Bytes: MaxBytes, Depth: 4, Nodes: 20_000})
	if len(faults) > 0 {
		return nil, faults[0]
	}
	t := &Tongue{forms: map[string]string{}}
	language, decimal, library := root.Field("language"), root.Field("decimal"), root.Field("library")
	if language == nil || language.Kind != wire.String || language.Text == "" {
		return nil, errors.New(`a language file has its language, such as "language": "es"`)
	}
	t.language = language.Text
	if decimal != nil {
		if decimal.Kind != wire.String || decimal.Text != "." && decimal.Text != "," {
			return nil, errors.New(`the decimal mark is "." or ","`)
		}
		t.comma = decimal.Text == ","
	}
	if library == nil || library.Kind != wire.Object {
		return nil, errors.New(`a language file has its forms in an object, "library"`)
	}
	for i, english := range library.Keys {
		n := &library.Items[i]
		if n.Kind != wire.String || n.Text == "" {
			return nil, errors.New("no text for: " + english)
		}
		if say.Holes(n.Text) != say.Holes(english) {
			return nil, errors.New("other holes than the English: " + english)
		}
		t.forms[english] = n.Text
	}
	return t, nil
}

// Comma returns the language with a comma, or a point, as its decimal mark. t
// may be nil: English with a comma.
func (t *Tongue) Comma(comma bool) *Tongue {
	if (t != nil && t.comma) == comma {
		return t
	}
	out := &Tongue{comma: comma}
	if t != nil {
		out.language, out.forms = t.language, t.forms
	}
	return out
}

// Language is the code that the file gives, or "en".
func (t *Tongue) Language() string {
	if t == nil || t.language == "" {
		return "en"
	}
	return t.language
}

// Form is the translation of an English form, or the form itself where there is
// none.
func (t *Tongue) Form(english string) string {
	if t != nil {
		if form, ok := t.forms[english]; ok {
			return form
		}
	}
	return english
}

// Say says a form, its holes filled with texts that are the reader's already.
func (t *Tongue) Say(form say.Phrase, with ...string) string { return say.Fill(t, form, with) }

// Tell says a phrase.
func (t *Tongue) Tell(p say.Phrase) string { return p.In(t) }
