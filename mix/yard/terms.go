package yard

import (
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Aim is what comes first in choosing an order. The zero value is the lowest
// cost.
type Aim uint8

// The aims. Ties are broken by cost, then by what is left over, packs lifted
// and the sequence of the offers.
const (
	LeastCost    Aim = iota
	LeastLeft        // the least left over, then cost
	LeastLifting     // the fewest packs lifted by hand, then cost
)

// aims are the words that documents have for the aims.
var aims = []string{"cost", "left over", "lifting"}

// aimWords are the same words, ready to be translated.
var aimWords = [...]message.Text{"cost", "left over", "lifting"}

// String returns the word that a document has for the aim, or "cost" for an
// unknown one.
func (a Aim) String() string { return aims[a.index()] }

// Words returns what an order of this aim has least of.
func (a Aim) Words() message.Text { return aimWords[a.index()] }

// index is the position of the aim's words; an unknown aim counts as the lowest
// cost.
func (a Aim) index() int {
	if int(a) < len(aims) {
		return int(a)
	}
	return 0
}

// ParseAim reads the word for an aim. For any other word ok is false.
func ParseAim(word string) (a Aim, ok bool) {
	i := slices.Index(aims, word)
	return Aim(max(i, 0)), i >= 0
}

// AimType reads the word for an aim into an [Aim].
var AimType = doc.Type{Form: "choice", Words: aims, Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*Aim), _ = ParseAim(r.OneOf(n, aims...))
}}

// Terms is what a job says about buying: offers, how things come home, tax, and
// what comes first in choosing.
type Terms struct {
	Offers   []Offer
	Haul     Haul
	Delivery *Delivery   // nil when the yard brings nothing
	Tax      units.Ratio // on what is bought
	Aim      Aim

	of map[int][]int // the offers of each material, by its index in the scope
}

// Check reports what is wrong with how things come home, and with the aim.
// Offers are checked later, when it is known that there are not too many; see
// [Terms.CheckOffers].
func (t *Terms) Check(r *doc.Reader) {
	t.Haul.check(r)
	t.Delivery.check(r)
	if t.Aim > LeastLifting {
		r.ProblemAt("aim", doc.WordUnknown, message.Of("write {=0}", string(doc.Or(aims))))
	}
}

// CheckOffers reports what is wrong with each offer, and notes which material
// each one is for.
func (t *Terms) CheckOffers(r *doc.Reader, s *catalog.Scope) {
	r.Enter("offers")
	breaks := 0
	for i := range t.Offers {
		r.EnterAt(i)
		t.Offers[i].Check(r, s)
		if breaks += len(t.Offers[i].Breaks); breaks > allBreaks {
			r.ProblemAt("breaks", doc.JobLarge,
				message.Of("with the offers before it, more than {0} of these", itoa(allBreaks)))
		}
		r.Leave()
	}
	r.Leave()
	t.of = map[int][]int{}
	for i := range t.Offers {
		if index, ok := s.Index(t.Offers[i].Material); ok {
			t.of[index] = append(t.of[index], i)
		}
	}
}
