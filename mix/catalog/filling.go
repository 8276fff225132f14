package catalog

import (
	"strings"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units/message"
)

// Filling returns what a task names, a mix or a material, ready to be split. It
// returns nil, with a problem, when the name is unknown; and nil without one
// when neither is given and the filling is optional.
func (s *Scope) Filling(r *doc.Reader, mix, material string, optional bool) *Blend {
	switch {
	case mix != "" && material != "":
		r.ProblemAt("material", doc.FieldBoth, "give mix or material, not both")
	case mix != "":
		return s.namedMix(r, mix)
	case material != "":
		return s.namedMaterial(r, material)
	case !optional && r.Clean("mix", "material"):
		r.ProblemAt("material", doc.FieldMissing, "say what goes in: a material, or a mix")
	}
	return nil
}

// namedMix looks a mix up. Text with a space or a comma is a mix that is
// spelled out.
func (s *Scope) namedMix(r *doc.Reader, mix string) *Blend {
	if b, ok := s.blends[mix]; ok {
		return b
	}
	if _, ok := s.mixes[mix]; ok {
		return nil // a mix with problems of its own
	}
	r.Enter("mix")
	defer r.Leave()
	if strings.ContainsAny(mix, " ,") {
		return s.spelledOut(r, mix)
	}
	if _, ok := s.material[mix]; ok {
		r.Problem(doc.MixUnknown, message.Of(`a material, not a mix: write "material": "{0}"`, mix))
	} else {
		r.Add(r.Unknown(doc.MixUnknown, mix, s.mixNames(),
			`no such mix; name its parts, such as "bark-fines 3, peat 1", or define it under mixes`))
	}
	return nil
}

// spelledOut prepares a mix that a task spells out in place of a name.
func (s *Scope) spelledOut(r *doc.Reader, text string) *Blend {
	m, err := ParseMix(text)
	if err != nil {
		r.Quantity(err)
		return nil
	}
	m.Name = s.language.Print(byNumbers, m.numbers)
	if s.checkParts(r, &m); !r.Sound() {
		return nil
	}
	if s.leaves(&m, map[string]int{}) > maxLeaves {
		r.Problem(doc.MixLarge, "too many materials once its mixes are opened up")
		return nil
	}
	return s.ready(&m)
}

// namedMaterial looks a material up. A mix by that name gets a hint of its own.
func (s *Scope) namedMaterial(r *doc.Reader, material string) *Blend {
	if index, ok := s.material[material]; ok {
		return s.pure(index)
	}
	r.Enter("material")
	if _, ok := s.mixes[material]; ok {
		r.Problem(doc.MaterialUnknown, message.Of(`a mix, not a material: write "mix": "{0}"`, material))
	} else {
		s.UnknownMaterial(r, material)
	}
	r.Leave()
	return nil
}

// MaterialsOf lists the materials in a mix, either one of the catalogue or one
// spelled out as [ParseMix] reads it. For any other text it returns none.
func MaterialsOf(mix string) (ids []string) {
	if b := plain().blends[mix]; b != nil {
		for i, m := range plain().materials {
			if b.Has(i) {
				ids = append(ids, m.ID)
			}
		}
		return ids
	}
	if m, err := ParseMix(mix); err == nil {
		for _, p := range m.Parts {
			ids = append(ids, p.Of)
		}
	}
	return ids
}
