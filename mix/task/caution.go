package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units/message"
)

// Caution is a warning that applies to a plan. Code never changes; the wording of
// Text may.
type Caution struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Code   string
	Text   message.Text
	Source message.Text // who says so, or ""
	// Place orders the cautions of a plan, the lowest first. What is wrong with this
	// job comes before what is true of all such work, because people read the first
	// lines and skim the rest. The places have gaps for new cautions.
	Place int

	trait string // of a material that the caution is about; see about
}

// The cautions that more than one kind of task has. One with a trait applies where a
// material with that trait goes in.
var (
	nitrogen = Caution{Code: "nitrogen", Place: 80, trait: "woody",
		Text:   "Woody material dug in ties up nitrogen as it rots: test the soil, feed by the label.",
		Source: "Oregon State Univ. Extension"}
	salt = Caution{Code: "salt", Place: 90, trait: "salt",
		Text:   "Compost can be salty: ask for its test, or try it on a few plants.",
		Source: "Oregon State Univ. EM 9308"}
	digging = Caution{Code: "digging", Place: 100,
		Text:   "Before digging or tilling, have buried lines located: 811 in the US, some days ahead.",
		Source: "state one-call services"}
	legionella = Caution{Code: "legionella", Place: 130, trait: "legionella",
		Text:   "Potting mix and compost can carry Legionella: open bags outdoors and away from the face, dampen, wear gloves and a mask, wash hands.",
		Source: "NSW Health 2018; Health NZ"}
	dust = Caution{Code: "dust", Place: 140, trait: "dust",
		Text:   "Perlite, peat, bark and other dry materials give off dust: dampen before mixing, work in moving air, wear a mask.",
		Source: "NIOSH and OSHA: perlite 15 mg/m3 total dust, 5 respirable"}
)

// about returns those of some whose trait a material of the blend has. Traits are in
// the catalogue, so a material of the job's own brings its cautions with it.
func about(s *catalog.Scope, b *catalog.Blend, some ...Caution) (list []Caution) {
	for _, c := range some {
		if s.HasTrait(b, c.trait) {
			list = append(list, c)
		}
	}
	return list
}
