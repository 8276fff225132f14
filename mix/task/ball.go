package task

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Ball is the root ball of a plant. It is given by one of Size, Volume, and Across
// with Height; the other fields are zero.
type Ball struct {
	Text           string       // as typed, "" for a ball made in Go
	Size           string       // the class of the pot that it grew in: "#1"
	Volume         units.Volume // in nanolitres
	Across, Height units.Length // the diameter and the height of a cylinder
}

// String returns the ball as typed, or in US units where nothing was typed. See
// [Ball.Document] for a text that can be read back.
func (b *Ball) String() string {
	switch {
	case b.Text != "":
		return b.Text
	case b.Size != "":
		return b.Size
	case b.Volume > 0:
		return units.US.Volume(b.Volume)
	}
	return units.US.Length(b.Across) + " x " + units.US.Length(b.Height)
}

// ball reads a root ball into a *Ball, which stays nil where there is none.
var ball = doc.Type{Takes: "size, volume or lengths", Form: "ball", Read: readBall}

func readBall(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	s, ok := r.Text(n, `a root ball such as "#1", "2.8 L" or "6 in x 6 in"`)
	if !ok {
		return
	}
	b, err := ParseBall(s)
	if err != nil {
		r.Quantity(err)
	}
	*at.(**Ball) = &b
}

// ParseBall reads a root ball: a class ("#1"), a volume ("2.8 L"), or across by
// height ("6 in x 6 in"), each rounded once to its unit. It does not check that a
// class exists, since a job may have its own. The error is a [*units.Error].
func ParseBall(s string) (Ball, error) {
	text := strings.TrimSpace(s)
	b := Ball{Text: text}
	figure, sides := units.Looks(text)
	if !figure {
		b.Size = text
		if text == "" {
			return b, &units.Error{Code: units.QuantityEmpty, Value: s,
				Hint: `write a class, a volume or lengths, such as "#1", "2.8 L" or "6 in x 6 in"`}
		}
		return b, nil
	}
	if sides > 1 {
		d, err := units.ParseDims(text)
		if err == nil && len(d) != 2 {
			err = &units.Error{Code: units.DimsCount, Value: doc.Clip(s), Hint: "across by height, such as 6 in x 6 in"}
		}
		if err != nil {
			return b, err
		}
		b.Across, b.Height = d[0], d[1]
		return b, nil
	}
	v, err := units.ParseVolume(text)
	if err == nil && v == 0 {
		err = &units.Error{Code: units.QuantityZero, Value: doc.Clip(s),
			Hint: "a root ball is more than nothing; leave it out"}
	}
	b.Volume = v
	return b, err
}

// volume is the volume of the ball, and the source of that figure. ok is false with a
// problem. Only a ball known by its class has a range.
func (b *Ball) volume(r *doc.Reader, s *catalog.Scope) (v units.Range, from catalog.Source, ok bool) {
	switch {
	case b.Size != "":
		if k := s.Class(r, b.Size); k != nil {
			return k.Holds, k.Source, true
		}
		return units.Range{}, catalog.Source{}, false
	case b.Volume > 0:
		return units.Known(b.fixed()), catalog.FromJob, true
	}
	one, ok := ground.Cylinder(b.Across, b.Height)
	if !ok {
		r.Problem(doc.VolumeLarge, message.Of("larger than {#0}", units.Both.Volume(units.MaxVolume)))
	}
	return units.Exactly(one), catalog.Arithmetic, ok
}

// fixed is Volume before rounding: what Text says, where it still matches.
func (b *Ball) fixed() units.Fixed {
	if f, err := units.FixedVolume(b.Text); err == nil && f.Round() == int64(b.Volume) {
		return f
	}
	return units.FixedOf(b.Volume)
}

func (b *Ball) clone() *Ball {
	if b == nil {
		return nil
	}
	c := *b
	return &c
}

// Document returns the ball as a document has it, so that reading gives the same ball:
// as typed where that still says what the ball is, or else in exact metric units. A
// Go program may have changed the ball and left Text as it was.
func (b *Ball) Document() string {
	if typed, err := ParseBall(b.Text); err == nil && typed == *b {
		return b.Text
	}
	switch {
	case b.Size != "":
		return b.Size
	case b.Volume > 0:
		return b.Volume.String()
	}
	return b.Across.String() + " x " + b.Height.String()
}
