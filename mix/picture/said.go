package picture

import (
	"strconv"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// said is a sentence as it is put together: its form, then what fills its holes
// in order, then where it goes. The drawings are made of such sentences, and a
// chain of small calls is half the download of a list of strings.
type said struct {
	k    *pen
	form message.Text
	with []string
}

func (k *pen) say(form message.Text) *said { return &said{k: k, form: form} }

func (s *said) text(t string) *said {
	s.with = append(s.with, t)
	return s
}

// figure is a figure as package units writes it.
func (s *said) figure(t string) *said { return s.text(s.k.p.Language.Figure(t)) }

func (s *said) count(n int64) *said { return s.text(strconv.FormatInt(n, 10)) }

func (s *said) length(l units.Length) *said { return s.text(s.k.length(l)) }

func (s *said) volume(v units.Volume) *said { return s.text(s.k.p.Printer().Volume(v)) }

// like is a volume in the unit in which another would be written.
func (s *said) like(v, other units.Volume) *said {
	return s.text(s.k.p.Printer().VolumeLike(v, other))
}

// String is the sentence in the reader's language.
func (s *said) String() string { return s.k.p.Language.Print(s.form, s.with...) }

// tell adds the sentence to the description.
func (s *said) tell() *said {
	s.k.describe(s.String(), "")
	return s
}

// note writes it across the whole width and comes down below it.
func (s *said) note() { s.k.note(s.String()) }

// wrap breaks it into a label's lines.
func (s *said) wrap(room float64, most int) *para { return wrap(s.String(), room, most, aLabel) }

func (k *pen) length(l units.Length) string { return k.p.Printer().Length(l) }

// describe adds to the description, a full stop too where there is none.
func (k *pen) describe(s, stop string) {
	if k.Description != "" {
		k.Description += " "
	}
	k.Description += s + stop
}
