package answer

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// writer writes rows.
type writer struct {
	json.Writer
	language *lang.Language
}

// said writes what the catalogue calls something, in the reader's language.
func (w *writer) said(key, english string) { w.text(key, w.language.Form(english)) }

func (w *writer) voice(m units.Measure) lang.Printer {
	return lang.Printer{Measure: m, Language: w.language}
}

func (w *writer) text(key, s string) {
	if s != "" {
		w.Key(key)
		w.String(s)
	}
}

func (w *writer) list(key string, n int, one func(i int)) {
	w.Key(key)
	w.BeginArray()
	for i := range n {
		one(i)
	}
	w.EndArray()
}

// rows writes a list of objects.
func (w *writer) rows(key string, n int, one func(i int)) {
	w.list(key, n, func(i int) {
		w.BeginObject()
		one(i)
		w.EndObject()
	})
}

func (w *writer) sizes(key string, sizes []catalog.Size) {
	if len(sizes) > 0 {
		w.list(key, len(sizes), func(i int) { w.String(sizes[i].String()) })
	}
}

func (w *writer) origin(s catalog.Source, confidence string) {
	w.text("source", s.In(w.language))
	w.text("confidence", confidence)
}

// catalogue writes what a form offers to choose from, with sources.
func catalogue(t *lang.Language) []byte {
	cat := catalog.BuiltIn()
	w := &writer{language: t}
	w.BeginObject()
	w.rows("materials", len(cat.Materials), func(i int) { w.material(&cat.Materials[i]) })
	w.rows("containers", len(cat.Containers), func(i int) {
		k := &cat.Containers[i]
		w.text("id", k.ID)
		w.said("name", k.Name)
		h := k.Whole()
		w.text("us", w.voice(units.US).VolumeRange(h.Low, h.High))
		w.text("metric", w.voice(units.Metric).VolumeRange(h.Low, h.High))
		w.origin(k.Source, k.Confidence)
	})
	w.rows("mixes", len(cat.Mixes), func(i int) {
		m := &cat.Mixes[i]
		w.text("id", m.ID)
		w.said("name", m.Name)
		parts := make([]string, len(m.Parts))
		for k := range m.Parts {
			parts[k] = m.Parts[k].String()
		}
		w.text("parts", strings.Join(parts, ", "))
		w.origin(m.Source, m.Confidence)
	})
	w.rows("soils", len(cat.Soils), func(i int) {
		w.text("id", cat.Soils[i].ID)
		w.said("name", cat.Soils[i].Name)
	})
	w.EndObject()
	return w.Bytes()
}

func (w *writer) material(m *catalog.Material) {
	w.text("id", m.ID)
	w.said("name", m.Name)
	w.said("grade", m.Grade)
	if m.Wet > 0 {
		w.text("us", w.voice(units.US).DensityRange(m.Dry, m.Wet))
		w.text("metric", w.voice(units.Metric).DensityRange(m.Dry, m.Wet))
	}
	w.sizes("packs", m.Packs)
	w.sizes("bales", m.Bales)
	if m.Bulk {
		w.Key("bulk")
		w.Bool(true)
	}
	w.origin(m.Source, m.Confidence)
}
