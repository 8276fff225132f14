package answer

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// writer writes the rows of the catalogue.
type writer struct {
	json.Writer
	language *lang.Language
}

// translated writes a name from the catalogue in the reader's language.
func (w *writer) translated(key, english string) { w.text(key, w.language.Form(english)) }

// printer writes figures in one measure, in the reader's language.
func (w *writer) printer(m units.Measure) lang.Printer {
	return lang.Printer{Measure: m, Language: w.language}
}

// text writes text unless it is empty.
func (w *writer) text(key, s string) {
	if s != "" {
		w.Key(key)
		w.String(s)
	}
}

// list writes a list of n values; one writes value i.
func (w *writer) list(key string, n int, one func(i int)) {
	w.Key(key)
	w.BeginArray()
	for i := range n {
		one(i)
	}
	w.EndArray()
}

// rows writes a list of n objects; one writes the fields of object i.
func (w *writer) rows(key string, n int, one func(i int)) {
	w.list(key, n, func(i int) {
		w.BeginObject()
		one(i)
		w.EndObject()
	})
}

// sizes writes a list of sizes unless it is empty.
func (w *writer) sizes(key string, sizes []catalog.Size) {
	if len(sizes) > 0 {
		w.list(key, len(sizes), func(i int) { w.String(sizes[i].String()) })
	}
}

// origin writes where a figure comes from, and how certain it is.
func (w *writer) origin(s catalog.Source, confidence string) {
	w.text("source", s.In(w.language))
	w.text("confidence", confidence)
}

// catalogue writes what a form lets the user choose from, with sources.
func catalogue(l *lang.Language) []byte {
	cat := catalog.BuiltIn()
	w := &writer{language: l}
	w.BeginObject()
	w.rows("materials", len(cat.Materials), func(i int) { w.material(&cat.Materials[i]) })
	w.rows("containers", len(cat.Containers), func(i int) {
		k := &cat.Containers[i]
		w.text("id", k.ID)
		w.translated("kind", k.Kind)
		w.translated("name", k.Name)
		h := k.Whole()
		w.text("us", w.printer(units.US).VolumeRange(h.Low, h.High))
		w.text("metric", w.printer(units.Metric).VolumeRange(h.Low, h.High))
		w.origin(k.Source, k.Confidence)
	})
	w.rows("mixes", len(cat.Mixes), func(i int) {
		m := &cat.Mixes[i]
		w.text("id", m.ID)
		w.translated("name", m.Name)
		parts := make([]string, len(m.Parts))
		for k := range m.Parts {
			parts[k] = m.Parts[k].String()
		}
		w.text("parts", strings.Join(parts, ", "))
		w.origin(m.Source, m.Confidence)
	})
	w.rows("soils", len(cat.Soils), func(i int) {
		w.text("id", cat.Soils[i].ID)
		w.translated("name", cat.Soils[i].Name)
	})
	w.EndObject()
	return w.Bytes()
}

// material writes one material, with its density in both measures where that is
// known.
func (w *writer) material(m *catalog.Material) {
	w.text("id", m.ID)
	w.translated("kind", m.Kind)
	w.translated("name", m.Name)
	w.translated("grade", m.Grade)
	if m.Wet > 0 {
		w.text("us", w.printer(units.US).DensityRange(m.Dry, m.Wet))
		w.text("metric", w.printer(units.Metric).DensityRange(m.Dry, m.Wet))
	}
	w.sizes("packs", m.Packs)
	w.sizes("bales", m.Bales)
	if m.Bulk {
		w.Key("bulk")
		w.Bool(true)
	}
	w.origin(m.Source, m.Confidence)
}
