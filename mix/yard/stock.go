package yard

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// OnHand is material that the grower already has: loose, as it would leave the
// shovel, or in packs. A pack of a size in which the material is sold
// compressed counts as a bale, with the least that it opens to.
type OnHand struct {
	Material string
	Volume   units.Volume // loose
	Packs    int64        // this many packs of Size as well
	Size     catalog.Size

	fixed units.Fixed // Volume before rounding, where it is no whole count
	text  string      // what fixed was typed as, or "" for what was bought at the yard
}

// known is Volume before rounding, unless a program has set another.
func (h *OnHand) known() units.Range {
	if h.fixed.Round() == int64(h.Volume) {
		return units.Known(h.fixed)
	}
	return units.Exactly(h.Volume)
}

// OnHandType reads an object, with the amount on hand for each material, into
// an []OnHand.
var OnHandType = doc.Type{Takes: "object", Form: "keyed", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	if n.Kind != json.Object {
		r.Problem(doc.JSONKind,
			message.Of(`on_hand is an object such as {"perlite": "2 cu ft"}, not {=0}`, n.Kind.String()))
		return
	}
	list := make([]OnHand, len(n.Keys))
	for i, key := range n.Keys {
		r.Enter(key)
		list[i] = readStock(r, &n.Items[i])
		list[i].Material = key
		r.Leave()
	}
	*at.(*[]OnHand) = list
}}

// readStock reads "2 cu ft", which is loose, or "2 x 3.8 cu ft", which is
// packs.
func readStock(r *doc.Reader, n *json.Node) (h OnHand) {
	text := doc.OneLine(n.Text)
	digits := 0
	for digits < len(text) && '0' <= text[digits] && text[digits] <= '9' {
		digits++
	}
	rest := strings.TrimSpace(text[digits:])
	if size, packs := strings.CutPrefix(rest, "x "); packs && digits > 0 && n.Kind == json.String {
		h.Packs = r.Count(&json.Node{Kind: json.Number, Text: text[:digits]}, 1)
		catalog.SizeType.Read(&catalog.SizeType, r, &json.Node{Kind: json.String, Text: size}, &h.Size)
		return h
	}
	h.Volume = units.Volume(doc.Quantify(r, n, `a volume such as "2 cu ft", or packs such as "2 x 3.8 cu ft"`, false,
		func(s string) (f units.Fixed, err error) {
			if f, err = units.FixedVolume(s); !f.Whole() && f.Round() > 0 {
				h.fixed, h.text = f, s
			}
			return f, err
		}))
	return h
}

// Stock returns the loose volume of each material on hand, by the scope's
// indexes. It is known, so that its figures are all three the same.
func Stock(r *doc.Reader, s *catalog.Scope, hand []OnHand, offers []Offer) []units.Range {
	stock := make([]units.Range, s.Len())
	r.Enter("on_hand")
	for i := range hand {
		h := &hand[i]
		r.Enter(h.Material)
		if index, ok := s.Index(h.Material); !ok {
			s.UnknownMaterial(r, h.Material)
		} else {
			var ok bool
			if stock[index], ok = stock[index].Plus(h.loose(r, s.Material(index), offers)); !ok {
				r.Problem(doc.VolumeLarge, "more than can be worked out")
			}
		}
		r.Leave()
	}
	r.Leave()
	return stock
}

// loose is the loose volume of one entry, or 0 with a problem.
func (h *OnHand) loose(r *doc.Reader, m *catalog.Material, offers []Offer) units.Range {
	if h.Volume < 0 || h.Volume > units.MaxVolume || h.Packs < 0 || h.Packs > 0 && h.Size.Volume <= 0 {
		r.Problem(units.QuantityNegative, "zero or more")
		return units.Range{}
	}
	loose := h.known()
	if h.Packs == 0 {
		return loose
	}
	each := units.Known(h.Size.Fixed())
	switch o := opensTo(offers, m.ID, h.Size.Volume); {
	case o != nil:
		each = units.Known(o.FixedVolume("opens_to", o.OpensTo))
	case m.IsBale(h.Size.Volume):
		each = m.Opened(h.Size).Planned()
	}
	all, ok := each.Times(h.Packs)
	if ok {
		loose, ok = loose.Plus(all)
	}
	if !ok {
		r.Problem(doc.VolumeLarge, "more than can be worked out")
		return units.Range{}
	}
	return loose
}

// opensTo returns the offer that says what a pack of that size opens to, or nil.
func opensTo(offers []Offer, material string, size units.Volume) *Offer {
	for i := range offers {
		if o := &offers[i]; o.Material == material && o.Pack.Volume == size && o.OpensTo > 0 {
			return o
		}
	}
	return nil
}

// Document returns the amount as a document has it: a number of packs, or a
// volume.
func (h *OnHand) Document() string {
	if h.Packs > 0 {
		return itoa(h.Packs) + " x " + h.Size.Document()
	}
	if h.text != "" && h.fixed.Round() == int64(h.Volume) {
		return h.text
	}
	return h.Volume.String()
}
