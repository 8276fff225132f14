package catalog

import (
	"strings"
	"unicode/utf8"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/stable"
	"example.org/barrow/units/spell"
)

// materialNames lists the ids of all materials, for hints.
func (s *Scope) materialNames() []string {
	names := make([]string, 0, len(s.materials)+len(s.mixes))
	for _, m := range s.materials {
		names = append(names, m.ID)
	}
	return names
}

// mixNames lists the ids of all mixes, for hints.
func (s *Scope) mixNames() []string {
	return sortedKeys(s.mixes)
}

// sortedKeys lists the keys of a map in order, so that hints are the same every
// time.
func sortedKeys[T any](m map[string]T) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	stable.Sort(keys, strings.Compare)
	return keys
}

// classNames lists the id and every other name of each container, and gives the
// id for each name.
func (s *Scope) classNames() (names []string, owners map[string]string) {
	owners = map[string]string{}
	for _, id := range sortedKeys(s.class) {
		k := s.class[id]
		names = append(names, id)
		owners[id] = id
		for _, also := range k.Also {
			names = append(names, also)
			owners[also] = id
		}
	}
	return names, owners
}

// UnknownMaterial reports that word, at the current path, is not the name of a
// material.
func (s *Scope) UnknownMaterial(r *doc.Reader, word string) {
	if !r.Full() {
		r.Add(r.Unknown(doc.MaterialUnknown, word, s.materialNames(),
			"no such material; a job may add its own under materials"))
	}
}

// Class looks up a container for the field at the reader's current path. It
// returns nil, with a problem, when there is none.
func (s *Scope) Class(r *doc.Reader, id string) *Class {
	if k, ok := s.class[id]; ok {
		return k
	}
	if r.Full() {
		return nil
	}
	names, owners := s.classNames()
	p := r.Unknown(doc.ContainerUnknown, id, names,
		`no such size; give what the pot holds, such as "2.8 L", or its own measures`)
	for _, name := range names {
		if spell.Lower(name) == spell.Lower(id) || p.Hint == doc.DidYouMean(name) {
			p.Hint = doc.DidYouMean(owners[name])
			break
		}
	}
	if number := "#" + id; s.class[number] != nil {
		p.Hint = doc.DidYouMean(number)
	}
	r.Add(p)
	return nil
}

// Called returns what a sentence calls a material: its id, which is an English
// word, or in another language its name there.
func (s *Scope) Called(id string) string {
	if s.language.Code() != "en" {
		switch index, ok := s.material[id]; {
		case ok && index < len(s.cat.Materials):
			return small(s.materials[index].Name)
		case ok && s.materials[index].Name != "": // the job's own, as it is written there
			return s.materials[index].Name
		}
	}
	return id
}

// Sentence says that one material can be used instead of another, and what
// changes.
func (s *Scope) Sentence(sub *Substitute) string {
	return s.language.Print("{0} can stand in: {1}", title(s.Called(sub.Use)), sub.Changes)
}

// small writes a name for use inside a sentence: without its first capital,
// unless it is all capitals.
func small(name string) string {
	first, n := utf8.DecodeRuneInString(name)
	if second, _ := utf8.DecodeRuneInString(name[n:]); spell.Small(second) != second {
		return name
	}
	return string(spell.Small(first)) + name[n:]
}

// title writes an id as words at the start of a sentence.
func title(id string) string {
	id = strings.ReplaceAll(id, "-", " ")
	if id == "" {
		return ""
	}
	first, n := utf8.DecodeRuneInString(id)
	return string(spell.Capital(first)) + id[n:]
}
