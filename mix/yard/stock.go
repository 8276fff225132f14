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
	h.Volume = doc.Quantify(r, n, `a volume such as "2 cu ft", or packs such as "2 x 3.8 cu ft"`, false,
		units.ParseVolume)
	return h
}

// Stock returns the loose volume of each material on hand, by the scope's
// indexes.
func Stock(r *doc.Reader, s *catalog.Scope, hand []OnHand, offers []Offer) []units.Volume {
	stock := make([]units.Volume, s.Len())
	r.Enter("on_hand")
	for i := range hand {
		h := &hand[i]
		r.Enter(h.Material)
		if index, ok := s.Index(h.Material); !ok {
			s.UnknownMaterial(r, h.Material)
		} else if stock[index] += h.loose(r, s.Material(index), offers); stock[index] > units.MaxVolume {
			r.Problem(doc.VolumeLarge, "more than can be worked out")
		}
		r.Leave()
	}
	r.Leave()
	return stock
}

// loose is the loose volume of one entry, or 0 with a problem.
func (h *OnHand) loose(r *doc.Reader, m *catalog.Material, offers []Offer) units.Volume {
	if h.Volume < 0 || h.Volume > units.MaxVolume || h.Packs < 0 || h.Packs > 0 && h.Size.Volume <= 0 {
		r.Problem(units.QuantityNegative, "zero or more")
		return 0
	}
	if h.Packs == 0 {
		return h.Volume
	}
	each := h.Size.Volume
	switch opens := opensTo(offers, m.ID, each); {
	case opens > 0:
		each = opens
	case m.IsBale(each):
		each = m.Opened(each).Low
	}
	all, ok := each.Times(h.Packs)
	if !ok {
		r.Problem(doc.VolumeLarge, "more than can be worked out")
		return 0
	}
	return h.Volume + all
}

// opensTo returns what the offers say a pack of that size opens to, or 0.
func opensTo(offers []Offer, material string, size units.Volume) units.Volume {
	for i := range offers {
		if o := &offers[i]; o.Material == material && o.Pack.Volume == size && o.OpensTo > 0 {
			return o.OpensTo
		}
	}
	return 0
}

// Document returns the amount as a document has it: a number of packs, or a
// volume.
func (h *OnHand) Document() string {
	if h.Packs > 0 {
		return itoa(h.Packs) + " x " + h.Size.Document()
	}
	return h.Volume.String()
}
