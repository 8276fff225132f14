package catalog

import (
	"slices"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// Material is what goes into a pot or onto a bed: bark fines, peat, mulch. A
// job can define its own. Fields that are zero are unknown.
type Material struct {
	ID, Name string
	Kind     string // the heading that lists put it under; "" for the job's own
	Grade    string // what to ask for at the yard
	// Dry and Wet bound the density when loose: as light as its sources say, dried
	// out, and as heavy, drained after rain or watering. Bulk that stands in the
	// open may be anything between.
	Dry, Wet units.Density
	// PackedLow and PackedHigh bound the density of a sealed pack as sold, by its
	// own volume: plastic keeps the rain out, and a bale is compressed. Where
	// they are zero, a pack counts from Dry to Wet.
	PackedLow, PackedHigh units.Density

	// Settle is the share of the loose volume that is lost in place; nil means
	// the catalogue's common allowance. SettleLow and SettleHigh are its
	// bounds.
	Settle                *units.Ratio
	SettleLow, SettleHigh units.Ratio

	Packs []Size // loose bags commonly sold
	Bulk  bool   // sold loose by the yard
	Bales []Size // commonly sold compressed; they open by OpensLow to OpensHigh
	// BalesFrom is the size from which on a sealed pack is a bale though it is
	// not in Bales, since loose bags are smaller. Zero is none.
	BalesFrom units.Volume
	// Baled is the density of a bale by its own volume, where bags of the same
	// material are not compressed. It is zero when PackedLow and PackedHigh are
	// of bales too. Its source is OpensSource.
	Baled units.Density
	// OpensLow and OpensHigh are the least and the most times its compressed
	// volume that a bale opens to. They are zero when the material is not sold
	// compressed.
	OpensLow, OpensHigh units.Ratio

	Traits     []string // see [traits]
	Source     Source
	Confidence string // "high", "medium", "low"

	SettleSource, OpensSource, PackedSource Source
}

// traits are the properties that cautions depend on.
var traits = []string{"dust", "legionella", "mulch", "salt", "sand", "soil", "woody"}

// Has reports whether m has a trait.
func (m *Material) Has(trait string) bool {
	for _, t := range m.Traits {
		if t == trait {
			return true
		}
	}
	return false
}

// The types of fields of a material. traitWords accepts only words that some
// caution depends on.
var (
	gradeText  = doc.Type{Takes: "text", Form: "text", Read: doc.ReadName}
	packs      = doc.Type{Takes: "list of volumes", Form: "list", Such: "packs", Items: &SizeType, Read: sizes}
	bales      = doc.Type{Takes: "list of volumes", Form: "list", Such: "bales", Items: &SizeType, Read: sizes}
	traitWords = doc.Type{Takes: "list of words", Form: "traits", Such: "traits", Words: traits, Read: doc.ReadChoices}
)

// MaterialWord reads the name of a material.
var MaterialWord = doc.Type{Takes: "a material", Form: "material", Such: "a material", Read: doc.ReadWord}

// MaterialObject describes a job's own material in a document.
var MaterialObject = &doc.Object{Row: doc.RowOf[Material], ID: "material", Name: "a material", Help: "a material of your own", Tables: []doc.Fields{materialFields}}

// materialFields are the fields of a material, for a job's own and for the
// catalogue's.
var materialFields = doc.Fields{
	{Name: "id", Type: &doc.ID, About: "what mixes, tasks and offers call it", At: func(m any) any { return &m.(*Material).ID }},
	{Name: "name", Type: &doc.Name, About: "what lists show", At: func(m any) any { return &m.(*Material).Name }},
	{Name: "grade", Type: &gradeText, About: "what to ask for at the yard", At: func(m any) any { return &m.(*Material).Grade }},
	{Name: "dry", Type: &doc.Density, About: `the lightest it comes, "303 lb/cu yd"`, At: func(m any) any { return &m.(*Material).Dry }},
	{Name: "wet", Type: &doc.Density, About: "the heaviest it comes, drained", At: func(m any) any { return &m.(*Material).Wet }},
	{Name: "settle", Type: &doc.Loss, About: "the loose volume lost in a pot after watering", At: func(m any) any { return &m.(*Material).Settle }},
	{Name: "packs", Type: &packs, About: "bags commonly sold", At: func(m any) any { return &m.(*Material).Packs }},
	{Name: "bulk", Type: &doc.Bool, About: "whether it is sold loose by the yard", At: func(m any) any { return &m.(*Material).Bulk }},
	{Name: "bales", Type: &bales, About: "compressed bales commonly sold", At: func(m any) any { return &m.(*Material).Bales }},
	{Name: "opens_low", Type: &doc.Factor, About: "a bale opens to at least this many times its volume", At: func(m any) any { return &m.(*Material).OpensLow }},
	{Name: "opens_high", Type: &doc.Factor, About: "and to at most this many", At: func(m any) any { return &m.(*Material).OpensHigh }},
	{Name: "traits", Type: &traitWords, About: "dust, legionella, mulch, salt, sand, soil or woody", At: func(m any) any { return &m.(*Material).Traits }},
	{Name: "source", Type: &sourceText, About: "where the figures come from", At: func(m any) any { return &m.(*Material).Source }},
}

// check reports what is wrong with a job's own material, and fills in what it
// leaves out.
func (m *Material) check(r *doc.Reader) {
	if m.ID == "" {
		r.ProblemAt("id", doc.FieldMissing, `name it, such as "id": "my-bark"`)
	}
	if m.Wet > 0 && m.Dry > m.Wet {
		r.ProblemAt("wet", doc.DensityOrder, "wet is at least as heavy as dry")
	}
	if m.Dry > 0 && m.Wet == 0 {
		r.ProblemAt("wet", doc.FieldMissing, "give wet beside dry: the weight to haul lies between")
	}
	if m.Wet > 0 && m.Dry == 0 {
		r.ProblemAt("dry", doc.FieldMissing, "give dry beside wet: the weight to haul lies between")
	}
	checkSizes(r, "packs", m.Packs)
	checkSizes(r, "bales", m.Bales)
	for i, s := range m.Bales {
		if _, ok := s.Volume.MulDiv(m.OpensHigh.Num(), m.OpensHigh.Den()); !ok {
			r.Enter("bales")
			r.EnterAt(i)
			r.Problem(doc.VolumeLarge, "it opens to more than can be worked out")
			r.Leave()
			r.Leave()
		}
	}
	if m.OpensHigh.Less(m.OpensLow) {
		r.ProblemAt("opens_high", units.NumberRange, "at least opens_low")
	}
	if len(m.Bales) > 0 && m.OpensLow == (units.Ratio{}) {
		r.ProblemAt("opens_low", doc.FieldMissing,
			"say how far a bale opens: opens_low and opens_high, such as 1.5 and 2")
	}
	if m.Name == "" {
		m.Name = m.ID
	}
	if m.Source == (Source{}) {
		m.Source = FromJob
	}
	if m.OpensSource == (Source{}) {
		m.OpensSource = m.Source
	}
	if m.SettleSource == (Source{}) {
		m.SettleSource = m.Source
	}
}

// IsBale reports whether the material is commonly sold compressed in packs of
// that size.
func (m *Material) IsBale(size units.Volume) bool {
	if m.BalesFrom > 0 && size >= m.BalesFrom-Slack {
		return true
	}
	for _, b := range m.Bales {
		if d := b.Volume - size; -Slack <= d && d <= Slack {
			return true
		}
	}
	return false
}

// Opened returns what a bale of a size opens to. It plans with the least, so
// that the bale does not run short.
func (m *Material) Opened(size Size) units.Range {
	v := units.Known(size.Fixed())
	low, _ := v.MulDiv(m.OpensLow.Num(), m.OpensLow.Den())
	high, ok := v.MulDiv(m.OpensHigh.Num(), m.OpensHigh.Den())
	if !ok {
		high = units.Exactly(units.MaxVolume)
	}
	return units.Between(low, low, high)
}

// Packed returns the range of density of a sealed pack, by its own volume. A
// pack of a material that is also sold compressed, and that is not known to
// open to more than its volume, may be either: loose and dry, or compressed.
func (m *Material) Packed(opens bool) [2]units.Density {
	if opens && m.Baled > 0 {
		return [2]units.Density{m.Baled, m.Baled}
	}
	low := m.PackedLow
	if m.OpensLow != (units.Ratio{}) && !opens {
		low = min(m.Dry, low)
	}
	return [2]units.Density{low, m.PackedHigh}
}

// Mass returns what v of the material weighs when loose, dry and wet. Both are
// zero when that is not known. ok is false when it is more than
// [units.MaxMass].
func (m *Material) Mass(v units.Volume) (mass [2]units.Mass, ok bool) {
	mass[0], ok = v.Mass(m.Dry)
	if ok {
		mass[1], ok = v.Mass(m.Wet)
	}
	return mass, ok
}

// Clone returns a copy that shares nothing with m.
func (m *Material) Clone() *Material {
	c := *m
	if m.Settle != nil {
		settle := *m.Settle
		c.Settle = &settle
	}
	c.Packs, c.Bales, c.Traits = slices.Clone(m.Packs), slices.Clone(m.Bales), slices.Clone(m.Traits)
	return &c
}
