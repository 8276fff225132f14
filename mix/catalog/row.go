package catalog

import (
	"example.org/barrow/mix/doc"
)

// object describes the catalogue's own document.
var object = &doc.Object{Name: "the catalogue", Tables: []doc.Fields{{
	{Name: "sources", Type: &doc.Type{Such: "sources", Of: func() *doc.Object {
		return &doc.Object{Name: "a source", Row: doc.RowOf[Source], Tables: []doc.Fields{sourceFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Sources }},
	{Name: "allowances", Type: &doc.Type{Such: "allowances", Of: func() *doc.Object {
		return &doc.Object{Name: "an allowance", Row: doc.RowOf[Common], Tables: []doc.Fields{commonFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Allowances }},
	{Name: "containers", Type: &doc.Type{Such: "containers", Of: func() *doc.Object {
		return &doc.Object{Name: "a container", Row: ClassObject.Row, Tables: []doc.Fields{ownClassFields, classFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Containers }},
	{Name: "materials", Type: &doc.Type{Such: "materials", Of: func() *doc.Object {
		return &doc.Object{Name: "a material", Row: MaterialObject.Row,
			Tables: []doc.Fields{ownMaterialFields, materialFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Materials }},
	{Name: "mixes", Type: &doc.Type{Such: "mixes", Of: func() *doc.Object {
		return &doc.Object{Name: "a mix", Row: MixObject.Row, Tables: []doc.Fields{ownMixFields, mixFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Mixes }},
	{Name: "substitutes", Type: &doc.Type{Such: "substitutes", Of: func() *doc.Object {
		return &doc.Object{Name: "a substitute", Row: doc.RowOf[Substitute], Tables: []doc.Fields{substituteFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Substitutes }},
	{Name: "soils", Type: &doc.Type{Such: "soils", Of: func() *doc.Object {
		return &doc.Object{Name: "a soil", Row: doc.RowOf[Soil], Tables: []doc.Fields{soilFields}}
	}, Read: doc.ReadEach}, At: func(cat any) any { return &cat.(*Catalog).Soils }},
}}}

// The fields below are those that only the catalogue's own rows have.

// sourceFields are the fields of a source. Its text is translated when it is
// shown.
var sourceFields = doc.Fields{
	{Name: "id", Type: &doc.ID, At: func(s any) any { return &s.(*Source).ID }},
	{Name: "text", Type: &doc.Text, At: func(s any) any { return (*string)(&s.(*Source).Text) }},
	{Name: "kind", Type: &sourceKind, At: func(s any) any { return &s.(*Source).Kind }},
}

// The types of fields that occur in several rows.
var (
	share      = doc.MostShare
	swell      = doc.Share
	sourceKind = doc.Type{Form: "choice", Read: doc.ReadChoice,
		Words: []string{"read", "memory", "practice", "arithmetic"}}
	confidence = doc.Type{Form: "choice", Words: []string{"high", "medium", "low"}, Read: doc.ReadChoice}
)

// commonFields are the fields of a common allowance.
var commonFields = doc.Fields{
	{Name: "id", Type: &doc.ID, At: func(a any) any { return &a.(*Common).ID }},
	{Name: "share", Type: &share, At: func(a any) any { return &a.(*Common).Share }},
	{Name: "low", Type: &share, At: func(a any) any { return &a.(*Common).Low }},
	{Name: "high", Type: &share, At: func(a any) any { return &a.(*Common).High }},
	{Name: "source", Type: &sourceText, At: func(a any) any { return &a.(*Common).Source }},
	{Name: "confidence", Type: &confidence, At: func(a any) any { return &a.(*Common).Confidence }},
}

// ownClassFields adds a heading, other names and a confidence. A pot has its
// brim, from which its fill line follows; what is filled level has fill.
var ownClassFields = doc.Fields{
	{Name: "kind", Type: &doc.Name, At: func(k any) any { return &k.(*Class).Kind }},
	{Name: "brim", Type: &doc.Volume, At: func(k any) any { return &k.(*Class).Brim }},
	{Name: "also", Type: &doc.Names, At: func(k any) any { return &k.(*Class).Also }},
	{Name: "fill", Type: &doc.Volume, At: func(k any) any { return &k.(*Class).Holds.Plan }},
	{Name: "confidence", Type: &confidence, At: func(k any) any { return &k.(*Class).Confidence }},
}

// ownMaterialFields adds a heading, and the ranges for which the catalogue has
// sources.
var ownMaterialFields = doc.Fields{
	{Name: "kind", Type: &doc.Name, At: func(m any) any { return &m.(*Material).Kind }},
	{Name: "baled", Type: &doc.Density, At: func(m any) any { return &m.(*Material).Baled }},
	{Name: "bales_from", Type: &doc.Volume, At: func(m any) any { return &m.(*Material).BalesFrom }},
	{Name: "packed_low", Type: &doc.Density, At: func(m any) any { return &m.(*Material).PackedLow }},
	{Name: "packed_high", Type: &doc.Density, At: func(m any) any { return &m.(*Material).PackedHigh }},
	{Name: "packed_source", Type: &sourceText, At: func(m any) any { return &m.(*Material).PackedSource }},
	{Name: "settle_low", Type: &share, At: func(m any) any { return &m.(*Material).SettleLow }},
	{Name: "settle_high", Type: &share, At: func(m any) any { return &m.(*Material).SettleHigh }},
	{Name: "settle_source", Type: &sourceText, At: func(m any) any { return &m.(*Material).SettleSource }},
	{Name: "opens_source", Type: &sourceText, At: func(m any) any { return &m.(*Material).OpensSource }},
	{Name: "confidence", Type: &confidence, At: func(m any) any { return &m.(*Material).Confidence }},
}

// ownMixFields adds a confidence. A mix of the catalogue has the same parts as
// a job's own.
var ownMixFields = doc.Fields{
	{Name: "confidence", Type: &confidence, At: func(m any) any { return &m.(*Mix).Confidence }},
}

// soilFields are the fields of a soil. A job cannot define soils.
var soilFields = doc.Fields{
	{Name: "id", Type: &doc.ID, At: func(s any) any { return &s.(*Soil).ID }},
	{Name: "name", Type: &doc.Name, At: func(s any) any { return &s.(*Soil).Name }},
	{Name: "swell", Type: &swell, At: func(s any) any { return &s.(*Soil).Swell }},
	{Name: "swell_low", Type: &swell, At: func(s any) any { return &s.(*Soil).SwellLow }},
	{Name: "swell_high", Type: &swell, At: func(s any) any { return &s.(*Soil).SwellHigh }},
	{Name: "source", Type: &sourceText, At: func(s any) any { return &s.(*Soil).Source }},
	{Name: "confidence", Type: &confidence, At: func(s any) any { return &s.(*Soil).Confidence }},
}

// substituteFields are the fields of a substitute.
var substituteFields = doc.Fields{
	{Name: "for", Type: &doc.ID, At: func(s any) any { return &s.(*Substitute).For }},
	{Name: "use", Type: &doc.ID, At: func(s any) any { return &s.(*Substitute).Use }},
	{Name: "changes", Type: &doc.Text, At: func(s any) any { return &s.(*Substitute).Changes }},
	{Name: "source", Type: &sourceText, At: func(s any) any { return &s.(*Substitute).Source }},
	{Name: "confidence", Type: &confidence, At: func(s any) any { return &s.(*Substitute).Confidence }},
}
