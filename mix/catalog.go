package mix

import (
	"sync"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"slices"
)

// Catalogue is the trade's rows that come with the program.
type Catalogue struct {
	Sources    []Source
	Allowances []Allowed
	Containers []Class
	Materials  []Material
	Mixes      []Mix
	Soils      []Soil

	Substitutes []Substitute
}

// Substitute is a material that can stand in for another, and what changes
// then. It is never swapped in by itself.
type Substitute struct {
	For, Use   string // ids
	Changes    string
	Source     Source
	Confidence string
}

// Allowed is a common allowance with the range it was met in.
type Allowed struct {
	ID               string
	Share, Low, High units.Ratio
	Source           Source
	Confidence       string
}

// Catalog returns the built-in catalogue: a copy of the caller's own.
func Catalog() Catalogue { return *decodeCatalogue() }

// catalogue is the one that plans are made with; nobody outside can reach it.
var catalogue = sync.OnceValue(decodeCatalogue)

// in is the catalogue with its names in a language. Sources are said in it when
// they are written.
func (cat *Catalogue) in(t *lang.Language) *Catalogue {
	out := *cat
	out.Containers, out.Materials, out.Mixes = slices.Clone(cat.Containers), slices.Clone(cat.Materials), slices.Clone(cat.Mixes)
	out.Soils, out.Substitutes = slices.Clone(cat.Soils), slices.Clone(cat.Substitutes)
	name := func(s *string) { *s = t.Form(*s) }
	for i := range out.Containers {
		name(&out.Containers[i].Name)
	}
	for i := range out.Materials {
		name(&out.Materials[i].Name)
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

// decodeCatalogue decodes the embedded rows. They are tested to be sound.
func decodeCatalogue() *Catalogue {
	root, faults := json.Parse([]byte(catalogJSON), json.Limits{})
	if len(faults) > 0 {
		panic("mix: catalogue: " + faults[0].Error())
	}
	c := &checker{root: &root}
	cat := &Catalogue{}
	readObject(c, &root, cat, "the catalogue", catalogFields)
	if err := c.err(); err != nil {
		panic("mix: catalogue: " + err.Error())
	}
	return cat
}

var catalogFields = []field[*Catalogue]{
	{"sources", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Sources = readList(c, n, "sources", func(c *checker, n *json.Node, s *Source) { readObject(c, n, s, "a source", sourceFields) })
	}},
	{"allowances", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Allowances = readList(c, n, "allowances", func(c *checker, n *json.Node, a *Allowed) {
			readObject(c, n, a, "an allowance", allowedFields)
			cat.cite(c, "source", &a.Source)
		})
	}},
	{"containers", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Containers = readList(c, n, "containers", func(c *checker, n *json.Node, k *Class) {
			readObject(c, n, k, "a container", catalogClassFields, classFields)
			cat.cite(c, "source", &k.Source)
			k.check(c)
		})
	}},
	{"materials", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Materials = readList(c, n, "materials", func(c *checker, n *json.Node, m *Material) {
			readObject(c, n, m, "a material", catalogMaterialFields, materialFields)
			cat.cite(c, "source", &m.Source)
			cat.cite(c, "settle_source", &m.SettleSource)
			cat.cite(c, "opens_source", &m.OpensSource)
			cat.cite(c, "packed_source", &m.PackedSource)
			m.check(c)
		})
	}},
	{"mixes", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Mixes = readList(c, n, "mixes", func(c *checker, n *json.Node, m *Mix) {
			readObject(c, n, m, "a mix", catalogMixFields, mixFields)
			cat.cite(c, "source", &m.Source)
			m.check(c)
		})
	}},
	{"substitutes", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Substitutes = readList(c, n, "substitutes", func(c *checker, n *json.Node, s *Substitute) {
			readObject(c, n, s, "a substitute", substituteFields)
			cat.cite(c, "source", &s.Source)
		})
	}},
	{"soils", "", "", func(c *checker, n *json.Node, cat *Catalogue) {
		cat.Soils = readList(c, n, "soils", func(c *checker, n *json.Node, s *Soil) {
			readObject(c, n, s, "a soil", soilFields)
			cat.cite(c, "source", &s.Source)
		})
	}},
}

// cite turns the source id that a row named into the source.
func (cat *Catalogue) cite(c *checker, field string, s *Source) {
	if s.Text == "" && field != "source" {
		return
	}
	for _, known := range cat.Sources {
		if known.ID == string(s.Text) {
			*s = known
			return
		}
	}
	c.problemAt(field, "source.unknown", "every row names a source of the catalogue")
}

// The fields that only the catalogue's own rows have.

var sourceFields = []field[*Source]{
	{"id", "", "", func(c *checker, n *json.Node, s *Source) { s.ID = readID(c, n) }},
	{"text", "", "", func(c *checker, n *json.Node, s *Source) {
		text, _ := readText(c, n, "text")
		s.Text = message.Text(text)
	}},
	{"kind", "", "", func(c *checker, n *json.Node, s *Source) {
		s.Kind = oneOf(c, n, "read", "memory", "practice", "arithmetic")
	}},
}

var allowedFields = []field[*Allowed]{
	{"id", "", "", func(c *checker, n *json.Node, a *Allowed) { a.ID = readID(c, n) }},
	{"share", "", "", func(c *checker, n *json.Node, a *Allowed) { a.Share = readShare(c, n, most) }},
	{"low", "", "", func(c *checker, n *json.Node, a *Allowed) { a.Low = readShare(c, n, most) }},
	{"high", "", "", func(c *checker, n *json.Node, a *Allowed) { a.High = readShare(c, n, most) }},
	{"source", "", "", func(c *checker, n *json.Node, a *Allowed) { a.Source = jobSource(readName(c, n)) }},
	{"confidence", "", "", func(c *checker, n *json.Node, a *Allowed) { a.Confidence = readConfidence(c, n) }},
}

var catalogClassFields = []field[*Class]{
	{"also", "", "", func(c *checker, n *json.Node, k *Class) {
		k.Also = readList(c, n, "names", func(c *checker, n *json.Node, s *string) { *s = readName(c, n) })
	}},
	{"fill", "", "", func(c *checker, n *json.Node, k *Class) { k.Holds.Plan = readVolume(c, n) }},
	{"confidence", "", "", func(c *checker, n *json.Node, k *Class) { k.Confidence = readConfidence(c, n) }},
}

var catalogMaterialFields = []field[*Material]{
	{"packed_low", "", "", func(c *checker, n *json.Node, m *Material) { m.PackedLow = readDensity(c, n) }},
	{"packed_high", "", "", func(c *checker, n *json.Node, m *Material) { m.PackedHigh = readDensity(c, n) }},
	{"packed_source", "", "", func(c *checker, n *json.Node, m *Material) { m.PackedSource = jobSource(readName(c, n)) }},
	{"settle_low", "", "", func(c *checker, n *json.Node, m *Material) { m.SettleLow = readShare(c, n, most) }},
	{"settle_high", "", "", func(c *checker, n *json.Node, m *Material) { m.SettleHigh = readShare(c, n, most) }},
	{"settle_source", "", "", func(c *checker, n *json.Node, m *Material) { m.SettleSource = jobSource(readName(c, n)) }},
	{"opens_source", "", "", func(c *checker, n *json.Node, m *Material) { m.OpensSource = jobSource(readName(c, n)) }},
	{"confidence", "", "", func(c *checker, n *json.Node, m *Material) { m.Confidence = readConfidence(c, n) }},
}

var catalogMixFields = []field[*Mix]{
	{"confidence", "", "", func(c *checker, n *json.Node, m *Mix) { m.Confidence = readConfidence(c, n) }},
}

var soilFields = []field[*Soil]{
	{"id", "", "", func(c *checker, n *json.Node, s *Soil) { s.ID = readID(c, n) }},
	{"name", "", "", func(c *checker, n *json.Node, s *Soil) { s.Name = readName(c, n) }},
	{"swell", "", "", func(c *checker, n *json.Node, s *Soil) { s.Swell = readShare(c, n, whole) }},
	{"swell_low", "", "", func(c *checker, n *json.Node, s *Soil) { s.SwellLow = readShare(c, n, whole) }},
	{"swell_high", "", "", func(c *checker, n *json.Node, s *Soil) { s.SwellHigh = readShare(c, n, whole) }},
	{"source", "", "", func(c *checker, n *json.Node, s *Soil) { s.Source = jobSource(readName(c, n)) }},
	{"confidence", "", "", func(c *checker, n *json.Node, s *Soil) { s.Confidence = readConfidence(c, n) }},
}

var substituteFields = []field[*Substitute]{
	{"for", "", "", func(c *checker, n *json.Node, s *Substitute) { s.For = readID(c, n) }},
	{"use", "", "", func(c *checker, n *json.Node, s *Substitute) { s.Use = readID(c, n) }},
	{"changes", "", "", func(c *checker, n *json.Node, s *Substitute) { s.Changes, _ = readText(c, n, "text") }},
	{"source", "", "", func(c *checker, n *json.Node, s *Substitute) { s.Source = jobSource(readName(c, n)) }},
	{"confidence", "", "", func(c *checker, n *json.Node, s *Substitute) { s.Confidence = readConfidence(c, n) }},
}

func readConfidence(c *checker, n *json.Node) string { return oneOf(c, n, "high", "medium", "low") }

// Materials lists the materials of a mix: one of the catalogue, or one spelled
// out as [ParseMix] reads it. It lists nothing for text that is neither.
func Materials(mixText string) (ids []string) {
	if bl := stock().blends[mixText]; bl != nil {
		for i, m := range stock().materials {
			if bl.holdsIndex(i) {
				ids = append(ids, m.ID)
			}
		}
		return ids
	}
	if m, err := ParseMix(mixText); err == nil {
		for _, p := range m.Parts {
			ids = append(ids, p.Of)
		}
	}
	return ids
}

// allowed returns the common allowance id, which the catalogue has.
func (cat *Catalogue) allowed(id string) *Allowed {
	for i := range cat.Allowances {
		if cat.Allowances[i].ID == id {
			return &cat.Allowances[i]
		}
	}
	panic("mix: the catalogue has no allowance " + id)
}

// soil returns the soil id, or nil.
func (cat *Catalogue) soil(id string) *Soil {
	for i := range cat.Soils {
		if cat.Soils[i].ID == id {
			return &cat.Soils[i]
		}
	}
	return nil
}
