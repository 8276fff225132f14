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

// Ball is the root ball of a plant: what its pot held, or its own measure.
type Ball struct {
	Text           string // as typed
	Size           string // a class
	Volume         units.Volume
	Across, Height units.Length // straight across and from top to bottom
}

// String gives the ball as typed, or what it is.
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

// ball reads a root ball into a *Ball.
var ball = doc.Type{Takes: "size, volume or lengths", Form: "ball", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	s, ok := r.Text(n, `a root ball such as "#1", "2.8 L" or "6 in x 6 in"`)
	if !ok {
		return
	}
	b, err := ParseBall(s)
	if err != nil {
		r.Quantity(err)
	}
	*at.(**Ball) = &b
}}

// ParseBall reads a root ball: a class ("#1"), a volume ("2.8 L"), or across
// by height ("6 in x 6 in"). Whether a class exists is for the job to say. The
// error is a [*units.Error].
func ParseBall(s string) (Ball, error) {
	text := strings.TrimSpace(s)
	b := Ball{Text: text}
	figure, sides := units.Looks(text)
	if !figure {
		b.Size = text
		if text == "" {
			return b, &units.Error{Code: units.QuantityEmpty, Value: s, Hint: `write a class, a volume or lengths, such as "#1", "2.8 L" or "6 in x 6 in"`}
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
		err = &units.Error{Code: units.QuantityZero, Value: doc.Clip(s), Hint: "a root ball is more than nothing; leave it out"}
	}
	b.Volume = v
	return b, err
}

// volume is the ball's, and where it comes from.
func (b *Ball) volume(r *doc.Reader, s *catalog.Scope) (v units.Range, from catalog.Source, ok bool) {
	switch {
	case b.Size != "":
		if k := s.Class(r, b.Size); k != nil {
			return k.Holds, k.Source, true
		}
		return units.Range{}, catalog.Source{}, false
	case b.Volume > 0:
		return units.Exactly(b.Volume), catalog.FromJob, true
	}
	one, ok := ground.Cylinder(b.Across, b.Height)
	if !ok {
		r.Problem(doc.VolumeLarge, message.Of("larger than {#0}", units.Both.Volume(units.MaxVolume)))
	}
	return units.Exactly(one), catalog.Arithmetic, ok
}

func (b *Ball) clone() *Ball {
	if b == nil {
		return nil
	}
	c := *b
	return &c
}

// Document is how a document says the ball: as typed, where that still says what
// it is, else exactly.
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
