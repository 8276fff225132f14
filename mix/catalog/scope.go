package catalog

import (
	"sync"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Scope is what a job can name: the catalogue's rows and the job's own.
// Materials have an index, in the order of the catalogue and then of the job. A
// Scope is read-only once made, so goroutines can share it; scopes without rows
// of a job share what they hold.
type Scope struct {
	cat       *Catalog
	language  *lang.Language
	materials []*Material // volumes by material have the same indexes
	material  map[string]int
	class     map[string]*Class
	mixes     map[string]*Mix
	blends    map[string]*Blend
}

// plain is the scope of the catalogue alone, in English.
var plain = sync.OnceValue(func() *Scope { return scopeOf(builtIn()) })

// Plain returns the scope of the catalogue alone, with its names in language l;
// nil is English.
func Plain(l *lang.Language) *Scope {
	if l.Code() == "en" {
		return plain()
	}
	s := scopeOf(builtIn().in(l))
	s.language = l
	return s
}

// scopeOf returns a scope with every mix of the catalogue opened.
func scopeOf(cat *Catalog) *Scope {
	s := rowScope(cat)
	for id := range s.mixes {
		s.open(id)
	}
	return s
}

// rowScope returns a scope with the catalogue's rows, its mixes not opened yet.
func rowScope(cat *Catalog) *Scope {
	s := &Scope{cat: cat, material: map[string]int{}, class: map[string]*Class{},
		mixes: map[string]*Mix{}, blends: map[string]*Blend{}}
	for i := range cat.Materials {
		s.addMaterial(&cat.Materials[i])
	}
	for i := range cat.Containers {
		s.class[cat.Containers[i].ID] = &cat.Containers[i]
	}
	for i := range cat.Mixes {
		s.mixes[cat.Mixes[i].ID] = &cat.Mixes[i]
	}
	return s
}

// Own is a job's own rows.
type Own struct {
	Materials  []Material
	Containers []Class
	Mixes      []Mix
}

// NewScope checks a job's own rows and adds them to the catalogue's. When there
// are problems the scope still finds what it can, so that problems elsewhere in
// the job are reported too.
func NewScope(r *doc.Reader, l *lang.Language, own Own) *Scope {
	base := Plain(l)
	if len(own.Materials)+len(own.Containers)+len(own.Mixes) == 0 {
		return base
	}
	s := rowScope(base.cat)
	s.language = l
	taken := map[string]message.Text{}
	eachRow(r, "materials", own.Materials, func(m *Material) {
		m.check(r)
		claim(r, taken, m.ID, "material")
		if _, is := base.mixes[m.ID]; is && m.ID != "" {
			r.ProblemAt("id", doc.IDTaken,
				message.Of("{0} is a mix of the catalogue; give the material another id", m.ID))
		}
		s.addMaterial(m)
	})
	eachRow(r, "containers", own.Containers, func(k *Class) {
		k.check(r)
		claim(r, taken, k.ID, "container")
		s.class[k.ID] = k
	})
	eachRow(r, "mixes", own.Mixes, func(m *Mix) {
		m.check(r)
		claim(r, taken, m.ID, "mix")
		if _, is := s.material[m.ID]; is && m.ID != "" {
			r.ProblemAt("id", doc.IDTaken, message.Of("{0} is a material; give the mix another id", m.ID))
		}
		s.mixes[m.ID] = m
	})
	eachRow(r, "mixes", own.Mixes, func(m *Mix) { s.checkParts(r, m) })
	s.checkLeaves(r, own.Mixes)
	if r.Sound() {
		for id := range s.mixes {
			s.open(id)
		}
	}
	return s
}

// eachRow goes through a job's own rows. It hands out copies: a check fills in
// what a row leaves out, and the job must stay as it was written.
func eachRow[T any](r *doc.Reader, list string, rows []T, do func(*T)) {
	r.Enter(list)
	for i := range rows {
		r.EnterAt(i)
		row := rows[i]
		do(&row)
		r.Leave()
	}
	r.Leave()
}

// claim reports an id that another of the job's own rows has. Containers have a
// name space of their own; materials and mixes share one.
func claim(r *doc.Reader, taken map[string]message.Text, id string, kind message.Text) {
	key := id
	if kind == "container" {
		key = "container " + id
	}
	if other, is := taken[key]; is && id != "" {
		r.ProblemAt("id", doc.IDDuplicate, message.Of("another {=0} has this id", string(other)))
	}
	taken[key] = kind
}

// addMaterial adds a material. One with the id of an earlier one takes its
// name.
func (s *Scope) addMaterial(m *Material) {
	s.material[m.ID] = len(s.materials)
	s.materials = append(s.materials, m)
}

// Len returns how many materials there are.
func (s *Scope) Len() int { return len(s.materials) }

// Material returns the material with an index. It is shared and must not be
// changed.
func (s *Scope) Material(index int) *Material { return s.materials[index] }

// Index returns the index of the material with an id.
func (s *Scope) Index(id string) (index int, ok bool) {
	index, ok = s.material[id]
	return index, ok
}

// ClassOf returns the container with an id, or nil. It is shared and must not
// be changed.
func (s *Scope) ClassOf(id string) *Class { return s.class[id] }

// Soil returns the soil with an id, or clay when there is none.
func (s *Scope) Soil(id string) *Soil {
	if soil := s.cat.soil(id); soil != nil {
		return soil
	}
	return s.cat.soil("clay")
}

// Swell returns how much the soil with an id swells when it is dug, at least and
// at most; over all soils of the catalogue when there is none.
func (s *Scope) Swell(id string) (low, high units.Ratio) {
	if soil := s.cat.soil(id); soil != nil {
		return soil.SwellLow, soil.SwellHigh
	}
	for i, soil := range s.cat.Soils {
		if i == 0 || soil.SwellLow.Less(low) {
			low = soil.SwellLow
		}
		if high.Less(soil.SwellHigh) {
			high = soil.SwellHigh
		}
	}
	return low, high
}

// Common returns the common allowance with an id, which the catalogue must
// have.
func (s *Scope) Common(id string) *Common { return s.cat.common(id) }

// StandIns lists what the catalogue says can be used instead of a material.
func (s *Scope) StandIns(id string) (list []Substitute) {
	for _, sub := range s.cat.Substitutes {
		if sub.For == id {
			list = append(list, sub)
		}
	}
	return list
}
