package catalog

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Size is a volume with the words it was given in: "1 1/2 cu ft". The zero
// value is no size.
type Size struct {
	Text   string // "" for the volume's own
	Volume units.Volume
}

// String returns the words.
func (s Size) String() string {
	if s.Text == "" {
		return units.US.Volume(s.Volume)
	}
	return s.Text
}

// Fixed returns the volume before rounding, in nanolitres: what the words say, where
// they still match it.
func (s Size) Fixed() units.Fixed {
	if f, err := units.FixedVolume(s.Text); err == nil && f.Round() == int64(s.Volume) {
		return f
	}
	return units.FixedOf(s.Volume)
}

// SizeType reads a volume and its words into a [Size].
var SizeType = doc.Type{Takes: "volume", Form: "volume", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	size := at.(*Size)
	doc.Volume.Read(&doc.Volume, r, n, &size.Volume)
	size.Text = doc.OneLine(n.Text)
	if size.Volume > 0 && size.Volume <= Slack {
		r.Problem(doc.QuantitySmall, "a pack holds more than 1 mL")
	}
}}

// sizes reads a list of volumes into a []Size.
func sizes(t *doc.Type, r *doc.Reader, n *json.Node, at any) {
	r.Each(n, t.Such, sizeRows, at, func(n *json.Node, s any) { SizeType.Read(&SizeType, r, n, s) })
}

// sizeRows makes room for the sizes in a list.
var sizeRows = &doc.Object{Row: doc.RowOf[Size]}

// checkSizes reports packs too small or too large to be counted.
func checkSizes(r *doc.Reader, field string, sizes []Size) {
	r.Enter(field)
	for i, s := range sizes {
		r.EnterAt(i)
		if r.Sound() && (s.Volume <= Slack || s.Volume > units.MaxVolume) {
			r.Problem(doc.QuantitySmall, "a pack holds more than 1 mL")
		}
		r.Leave()
	}
	r.Leave()
}

// Slack is a shortfall too small to buy for: a millilitre, less than a
// teaspoon. Every count uses it, so that a need of seven bags and a drop buys
// seven. It is not there for rounding, which decides no count.
const Slack = units.Millilitre

// HoldsType reads what a container holds, a volume of any size, into a [Size].
var HoldsType = doc.Type{Takes: "volume", Form: "volume", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	size := at.(*Size)
	doc.Volume.Read(&doc.Volume, r, n, &size.Volume)
	size.Text = doc.OneLine(n.Text)
}}

// Document returns the size as a document has it: its words where they still
// match its volume, otherwise the exact volume.
func (s Size) Document() string {
	if v, err := units.ParseVolume(s.Text); err == nil && v == s.Volume {
		return s.Text
	}
	return s.Volume.String()
}
