package catalog

import (
	"strconv"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units/message"
)

// checkParts reports parts that do not exist, mixes that contain themselves,
// and parts that cannot be made whole numbers.
func (s *Scope) checkParts(r *doc.Reader, m *Mix) {
	r.Enter("parts")
	defer r.Leave()
	for _, p := range m.Parts {
		r.Enter(p.Of)
		if _, ok := s.material[p.Of]; !ok {
			inner, ok := s.mixes[p.Of]
			switch {
			case !ok:
				s.UnknownMaterial(r, p.Of)
			case inner.ID == m.ID:
				r.Problem(doc.MixItself, "a mix cannot be a part of itself")
			case s.reaches(inner, m.ID, map[string]bool{}):
				r.Problem(doc.MixItself, message.Of("{0} is made with {1}, so neither can be mixed", p.Of, m.ID))
			}
		}
		r.Leave()
	}
	if !r.Sound() {
		return
	}
	if _, _, ok := wholeParts(m.Parts); !ok {
		r.Problem(doc.MixParts, "write the parts as smaller numbers")
	}
}

// checkLeaves reports mixes that have too many parts once their mixes are
// opened up. It runs when every mix is sound, so that no mix leads back to
// itself.
func (s *Scope) checkLeaves(r *doc.Reader, mixes []Mix) {
	r.Enter("mixes")
	defer r.Leave()
	if !r.Sound() {
		return
	}
	known := map[string]int{}
	for i := range mixes {
		if s.leaves(&mixes[i], known) > maxLeaves {
			r.EnterAt(i)
			r.ProblemAt("parts", doc.MixLarge,
				message.Of("more than {0} materials once its mixes are opened up", strconv.Itoa(maxLeaves)))
			r.Leave()
		}
	}
}

// reaches reports whether m contains the mix id, at any depth.
func (s *Scope) reaches(m *Mix, id string, seen map[string]bool) bool {
	if seen[m.ID] {
		return false
	}
	seen[m.ID] = true
	for _, p := range m.Parts {
		if p.Of == id {
			return true
		}
		if inner, ok := s.mixes[p.Of]; ok && s.reaches(inner, id, seen) {
			return true
		}
	}
	return false
}

// leaves counts the parts of m with its mixes opened up, no further than just
// past maxLeaves. known holds the counts made before, so that the work grows
// with the number of mixes and not with the number of ways through them.
func (s *Scope) leaves(m *Mix, known map[string]int) int {
	if n, ok := known[m.ID]; ok {
		return n
	}
	n := 0
	for _, p := range m.Parts {
		if n++; n > maxLeaves {
			break
		}
		if inner, ok := s.mixes[p.Of]; ok { // a mix counts in addition to its parts
			n = min(n+s.leaves(inner, known), maxLeaves+1)
		}
	}
	known[m.ID] = n
	return n
}

// open prepares the mix id. Every part that it names must be in the scope, and
// none may lead back to it.
func (s *Scope) open(id string) *Blend {
	if b, ok := s.blends[id]; ok {
		return b
	}
	b := s.ready(s.mixes[id])
	s.blends[id] = b
	return b
}

// ready opens the mixes inside m and works out its parts.
func (s *Scope) ready(m *Mix) *Blend {
	b := &Blend{Mix: m, Of: make([]Ingredient, len(m.Parts))}
	b.Parts, b.Whole, _ = wholeParts(m.Parts)
	for i, p := range m.Parts {
		if index, ok := s.material[p.Of]; ok {
			b.Of[i].Material = index
		} else {
			b.Of[i].Blend = s.open(p.Of)
		}
	}
	for i := range b.Of {
		b.Steps++
		if inner := b.Of[i].Blend; inner != nil {
			b.Steps += inner.Steps
		}
	}
	s.lose(b, m)
	b.SettleFrom = Source{Text: message.Of("the mix, {0}", m.ID), Kind: "job"}
	return b
}

// lose sets what mixing m loses, and the source of that figure.
func (s *Scope) lose(b *Blend, m *Mix) {
	switch {
	case m.BlendLoss != nil:
		b.Loss, b.From = *m.BlendLoss, Source{Text: message.Of("the mix, {0}", m.ID), Kind: "job"}
	case len(m.Parts) < 2:
		b.From = Arithmetic
	default:
		b.Common = s.cat.common("blend-loss")
		b.Loss, b.From = b.Common.Share, b.Common.Source
	}
}

// pure returns a material alone, as a blend of one part without loss.
func (s *Scope) pure(index int) *Blend {
	m := s.materials[index]
	return &Blend{
		Mix:   &Mix{ID: m.ID, Name: m.Name, Settle: m.Settle, Source: m.Source},
		Parts: []int64{1}, Whole: 1, Of: []Ingredient{{Material: index}},
		From: Arithmetic, SettleFrom: m.SettleSource,
	}
}
