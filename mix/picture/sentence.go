package picture

import (
	"strconv"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// sentence builds one sentence: first its form, then what fills its holes, in
// order, then where it goes. Drawings consist of such sentences, and a chain of
// small calls takes half the download of lists of strings.
type sentence struct {
	k    *pen
	form message.Text
	with []string
}

// sentence starts a sentence.
func (k *pen) sentence(form message.Text) *sentence { return &sentence{k: k, form: form} }

// text fills the next hole.
func (s *sentence) text(t string) *sentence {
	s.with = append(s.with, t)
	return s
}

// figure fills the next hole with a figure from package units.
func (s *sentence) figure(t string) *sentence { return s.text(s.k.p.Language.Figure(t)) }

// count fills the next hole with a number.
func (s *sentence) count(n int64) *sentence { return s.text(strconv.FormatInt(n, 10)) }

// length fills the next hole with a length.
func (s *sentence) length(l units.Length) *sentence { return s.text(s.k.length(l)) }

// volume fills the next hole with a volume.
func (s *sentence) volume(v units.Volume) *sentence { return s.text(s.k.p.Printer().Volume(v)) }

// like fills the next hole with a volume, in the unit in which another would be
// written.
func (s *sentence) like(v, other units.Volume) *sentence {
	return s.text(s.k.p.Printer().VolumeLike(v, other))
}

// String returns the sentence in the reader's language.
func (s *sentence) String() string { return s.k.p.Language.Print(s.form, s.with...) }

// describe adds the sentence to the drawing's description.
func (s *sentence) describe() *sentence {
	s.k.describe(s.String(), "")
	return s
}

// note writes the sentence across the whole width and moves below it.
func (s *sentence) note() { s.k.note(s.String()) }

// wrap breaks the sentence into the lines of a label.
func (s *sentence) wrap(room float64, most int) *para { return wrap(s.String(), room, most, aLabel) }

// length writes a length in the reader's units.
func (k *pen) length(l units.Length) string { return k.p.Printer().Length(l) }

// describe adds to the description; stop is the full stop where the text has
// none.
func (k *pen) describe(s, stop string) {
	if k.Description != "" {
		k.Description += " "
	}
	k.Description += s + stop
}
