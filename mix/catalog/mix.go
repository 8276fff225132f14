package catalog

import (
	"slices"
	"strconv"
	"strings"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Mix is materials, or other mixes, in parts by volume.
type Mix struct {
	ID, Name string
	Parts    []Part
	// BlendLoss is the share of the parts' total volume that is lost because
	// fine particles fill the gaps between coarse ones; nil means the
	// catalogue's common allowance.
	BlendLoss *units.Ratio
	// Settle is the share of the loose mix that is lost in a pot after
	// watering; nil means the catalogue's common allowance.
	Settle     *units.Ratio
	Source     Source
	Confidence string

	numbers string // 3:1:1, for a mix that a task spells out
}

// Part is one ingredient of a mix: Num/Den parts of a material or a mix.
type Part struct {
	Of       string
	Num, Den int64
}

// String writes the part as [ParseMix] reads it: "bark-fines 3", "sand 1/2".
func (p Part) String() string {
	if p.Den == 1 {
		return p.Of + " " + itoa(p.Num)
	}
	return p.Of + " " + itoa(p.Num) + "/" + itoa(p.Den)
}

// Limits on mixes. They keep every split within 64 bits, and a hostile job from
// taking memory without end.
const (
	maxParts  = 50         // of one mix
	maxLeaves = 200        // parts of a mix once its mixes are opened up
	maxWhole  = 10_000_000 // sum of the parts of one mix as whole numbers
)

// MixObject describes a job's own mix in a document.
var MixObject = &doc.Object{Row: doc.RowOf[Mix], ID: "mix", Name: "a mix", Help: "a mix of your own", Tables: []doc.Fields{mixFields}}

// mixFields are the fields of a mix, for a job's own and for the catalogue's.
var mixFields = doc.Fields{
	{Name: "id", Type: &doc.ID, About: "what tasks call it", At: func(m any) any { return &m.(*Mix).ID }},
	{Name: "name", Type: &doc.Name, About: "what lists show", At: func(m any) any { return &m.(*Mix).Name }},
	{Name: "parts", Type: &parts, About: `materials (or mixes) and how many parts by volume: {"bark-fines": 3, "peat": 1}`, At: func(m any) any { return &m.(*Mix).Parts }},
	{Name: "blend_loss", Type: &doc.Loss, About: "volume lost when the parts are mixed", At: func(m any) any { return &m.(*Mix).BlendLoss }},
	{Name: "settle", Type: &doc.Loss, About: "loose volume lost in a pot after watering", At: func(m any) any { return &m.(*Mix).Settle }},
	{Name: "source", Type: &sourceText, About: "where the recipe comes from", At: func(m any) any { return &m.(*Mix).Source }},
}

// parts reads materials, and the number of parts of each, into a []Part.
var parts = doc.Type{Takes: "object", Form: "keyed",
	Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) { *at.(*[]Part) = readParts(r, n) }}

// readParts reads an object: each key is a material or a mix.
func readParts(r *doc.Reader, n *json.Node) []Part {
	if n.Kind != json.Object {
		r.Problem(doc.JSONKind,
			message.Of(`parts are an object such as {"bark-fines": 3, "peat": 1}, not {=0}`, n.Kind.String()))
		return nil
	}
	parts := make([]Part, len(n.Keys))
	for i, key := range n.Keys {
		r.Enter(key)
		num, den := r.Number(&n.Items[i])
		if num == 0 && r.Sound() {
			r.Problem(units.QuantityZero, "more than zero parts; leave out what is not in the mix")
		}
		parts[i] = Part{key, num, den}
		r.Leave()
	}
	return parts
}

// byNumbers names a mix that has no name.
const byNumbers message.Text = "{0} mix"

// ParseMix reads a mix in one line, "bark-fines 3, peat 1, perlite 1": each
// part is a name and a number, in either order. The mix is named after its
// numbers. The error is a [*units.Error]. Whether the parts exist is checked in
// a [Scope].
func ParseMix(s string) (Mix, error) {
	m := Mix{ID: doc.OneLine(s), Source: FromJob}
	bad := func(hint message.Text) (Mix, error) {
		return Mix{}, &units.Error{Code: doc.MixForm, Value: doc.Clip(s), Hint: hint}
	}
	var numbers []string
	seen := map[string]bool{}
	for text := range strings.SplitSeq(s, ",") {
		var name, number []string
		for word := range strings.FieldsSeq(text) {
			if figure, _ := units.Looks(word); figure && word[0] != '-' {
				number = append(number, word)
			} else {
				name = append(name, word)
			}
		}
		id := strings.Join(name, "-")
		num, den, err := units.ParseNumber(strings.Join(number, " "))
		switch {
		case id == "" || len(number) == 0:
			return bad(`write each part as a name and a number, such as "bark-fines 3, peat 1"`)
		case err != nil:
			return bad(message.Of("the parts of {0}: {=1}", id, string(err.(*units.Error).Hint)))
		case num == 0:
			return bad(message.Of("more than zero parts of {0}", id))
		case seen[id]:
			return bad(message.Of("{0} stands twice: give each part once", id))
		}
		seen[id] = true
		m.Parts = append(m.Parts, Part{id, num, den})
		numbers = append(numbers, strings.Join(number, " "))
	}
	m.numbers = strings.Join(numbers, ":")
	m.Name = message.Of(byNumbers, m.numbers).String()
	return m, nil
}

// check reports what is wrong with a mix by itself. The names of its parts are
// looked up later, when every mix is known.
func (m *Mix) check(r *doc.Reader) {
	if m.ID == "" {
		r.ProblemAt("id", doc.FieldMissing, `name it, such as "id": "potting"`)
	}
	if len(m.Parts) == 0 {
		r.ProblemAt("parts", doc.MixEmpty, `a mix has parts, such as {"bark-fines": 3, "peat": 1}`)
	}
	r.Enter("parts")
	for _, p := range m.Parts { // a document's parts are checked as they are read
		if p.Num < 1 || p.Den < 1 {
			r.ProblemAt(p.Of, units.QuantityZero, "more than zero parts")
		}
		if p.Num > maxWhole || p.Den > maxWhole {
			r.ProblemAt(p.Of, units.QuantityLarge, "write the parts as smaller numbers")
		}
	}
	r.Leave()
	if len(m.Parts) > maxParts {
		r.ProblemAt("parts", doc.MixLarge, "at most 50 parts")
	}
	if m.Name == "" {
		m.Name = m.ID
	}
	if m.Source == (Source{}) {
		m.Source = FromJob
	}
}

// itoa writes n in decimal.
func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// Clone returns a copy that shares nothing with m.
func (m *Mix) Clone() Mix {
	c := *m
	c.Parts = slices.Clone(m.Parts)
	if m.BlendLoss != nil {
		loss := *m.BlendLoss
		c.BlendLoss = &loss
	}
	if m.Settle != nil {
		settle := *m.Settle
		c.Settle = &settle
	}
	return c
}
