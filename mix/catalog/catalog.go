package catalog

import (
	"slices"
	"sync"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Catalog is the set of rows that comes with the program.
type Catalog struct {
	Sources    []Source
	Allowances []Common
	Containers []Class
	Materials  []Material
	Mixes      []Mix
	Soils      []Soil

	Substitutes []Substitute
}

// Substitute is a material that can be used instead of another, and what
// changes then. The program never substitutes by itself.
type Substitute struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	For, Use   string // ids
	Changes    string
	Source     Source
	Confidence string
}

// Common is an allowance for jobs that set none, with the range it is found in:
// "settle-pot" and "blend-loss".
type Common struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	ID               string
	Share, Low, High units.Ratio
	Source           Source
	Confidence       string
}

// BuiltIn returns a copy of the catalogue that comes with the program. The
// caller owns it.
func BuiltIn() Catalog { return *decode() }

// builtIn is the catalogue that plans use. It never leaves the package.
var builtIn = sync.OnceValue(decode)

// in returns the catalogue with its names in language l. Sources are translated
// when they are written.
func (cat *Catalog) in(l *lang.Language) *Catalog {
	out := *cat
	out.Containers, out.Materials = slices.Clone(cat.Containers), slices.Clone(cat.Materials)
	out.Mixes, out.Soils = slices.Clone(cat.Mixes), slices.Clone(cat.Soils)
	out.Substitutes = slices.Clone(cat.Substitutes)
	name := func(s *string) { *s = l.Form(*s) }
	for i := range out.Containers {
		name(&out.Containers[i].Name)
		name(&out.Containers[i].Kind)
	}
	for i := range out.Materials {
		name(&out.Materials[i].Name)
		name(&out.Materials[i].Kind)
		name(&out.Materials[i].Grade)
	}
	for i := range out.Mixes {
		name(&out.Mixes[i].Name)
	}
	for i := range out.Soils {
		name(&out.Soils[i].Name)
	}
	for i := range out.Substitutes {
		name(&out.Substitutes[i].Changes)
	}
	return &out
}

// decode reads the embedded rows. It panics on a problem: a test makes sure
// that they are sound.
func decode() *Catalog {
	root, faults := json.Parse([]byte(catalogJSON), json.Limits{})
	if len(faults) > 0 {
		panic("catalog: " + faults[0].Error())
	}
	r := doc.Over(&root)
	cat := &Catalog{}
	r.Object(&root, object.Name, doc.Into{Table: object.Tables[0], Object: cat})
	cat.citeAll(r)
	if err := r.Err(); err != nil {
		panic("catalog: " + err.Error())
	}
	return cat
}

// citeAll replaces the ids of sources by the sources, and makes the same checks
// as for a job's own rows.
func (cat *Catalog) citeAll(r *doc.Reader) {
	for i := range cat.Allowances {
		cat.cite(r, "source", &cat.Allowances[i].Source)
	}
	for i := range cat.Containers {
		cat.cite(r, "source", &cat.Containers[i].Source)
		cat.Containers[i].fill()
		cat.Containers[i].check(r)
	}
	for i := range cat.Materials {
		m := &cat.Materials[i]
		cat.cite(r, "source", &m.Source)
		cat.cite(r, "settle_source", &m.SettleSource)
		cat.cite(r, "opens_source", &m.OpensSource)
		cat.cite(r, "packed_source", &m.PackedSource)
		m.check(r)
	}
	for i := range cat.Mixes {
		cat.cite(r, "source", &cat.Mixes[i].Source)
		cat.Mixes[i].check(r)
	}
	for i := range cat.Substitutes {
		cat.cite(r, "source", &cat.Substitutes[i].Source)
	}
	for i := range cat.Soils {
		cat.cite(r, "source", &cat.Soils[i].Source)
	}
}

// cite replaces the id of a source, read into its text, by the source.
func (cat *Catalog) cite(r *doc.Reader, field string, s *Source) {
	if s.Text == "" && field != "source" {
		return
	}
	for _, known := range cat.Sources {
		if known.ID == string(s.Text) {
			*s = known
			return
		}
	}
	r.ProblemAt(field, doc.SourceUnknown, "every row names a source of the catalogue")
}

// common returns the common allowance id. The catalogue must have it.
func (cat *Catalog) common(id string) *Common {
	for i := range cat.Allowances {
		if cat.Allowances[i].ID == id {
			return &cat.Allowances[i]
		}
	}
	panic("catalog: the catalogue has no allowance " + id)
}

// soil returns the soil id, or nil.
func (cat *Catalog) soil(id string) *Soil {
	for i := range cat.Soils {
		if cat.Soils[i].ID == id {
			return &cat.Soils[i]
		}
	}
	return nil
}
