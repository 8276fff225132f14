package report

import (
	"strings"

	"example.org/barrow/mix/json"
)

// Schema returns the JSON Schema (draft 2020-12) of the document with that name; see
// [Shape]. The name must be one of [Shapes].
func Schema(name string) []byte {
	s := Shape(name)
	var w json.Writer
	w.BeginObject()
	text(&w, "$schema", "https://json-schema.org/draft/2020-12/schema")
	text(&w, "title", s.Name)
	object(&w, s)
	w.Key("$defs")
	w.BeginObject()
	for _, def := range named(s)[1:] {
		w.Key(def.Name)
		w.BeginObject()
		object(&w, def)
		w.EndObject()
	}
	w.EndObject()
	w.EndObject()
	return w.Bytes()
}

func text(w *json.Writer, key, s string) {
	w.Key(key)
	w.String(s)
}

// named lists a shape and the objects inside it, each once, in the order in which they
// are met. The order is always the same, so that a generated file changes only where
// a shape does.
func named(root *json.Shape) (list []*json.Shape) {
	seen := map[string]bool{}
	var walk func(s *json.Shape)
	walk = func(s *json.Shape) {
		switch {
		case s.Of != nil:
			walk(s.Of)
		case s.Name != "" && !seen[s.Name]:
			seen[s.Name] = true
			list = append(list, s)
			for _, f := range s.All() {
				walk(f.Shape)
			}
		}
	}
	walk(root)
	return list
}

// object writes the fields that an object may have, and that it has no others. Fields
// of a shape that it extends are written out, since JSON Schema has no inheritance that
// goes well with "no others".
func object(w *json.Writer, s *json.Shape) {
	text(w, "type", "object")
	text(w, "description", s.About)
	w.Key("properties")
	w.BeginObject()
	for _, f := range s.All() {
		w.Key(f.Name)
		w.BeginObject()
		text(w, "description", f.About)
		value(w, f.Shape)
		w.EndObject()
	}
	w.EndObject()
	w.Key("required")
	w.BeginArray()
	for _, f := range s.All() {
		if !f.Maybe {
			w.String(f.Name)
		}
	}
	w.EndArray()
	w.Key("additionalProperties")
	w.Bool(false)
}

// value writes what a value is, into an object that has been opened.
func value(w *json.Writer, s *json.Shape) {
	if s.Name != "" {
		text(w, "$ref", "#/$defs/"+s.Name)
		return
	}
	text(w, "type", s.Is)
	if len(s.Words) > 0 {
		w.Key("enum")
		w.BeginArray()
		for _, word := range s.Words {
			w.String(word)
		}
		w.EndArray()
	}
	if s.Of == nil {
		return
	}
	w.Key("items")
	w.BeginObject()
	value(w, s.Of)
	w.EndObject()
	if s.Count > 0 {
		for _, key := range []string{"minItems", "maxItems"} {
			w.Key(key)
			w.Int(int64(s.Count))
		}
	}
}

// Types returns the shapes of all documents as TypeScript declarations, so that the
// page's code can be checked for fields that no document has.
func Types() []byte {
	b := []byte(`// Written by go test ./mix/report -run TestTypes -update; do not edit.
//
// What the library answers, as JSON. Volumes are litres, masses kilograms,
// lengths millimetres, areas square metres, all as numbers; money is text, with a
// point.

/** The lowest and the highest that a figure may be. */
export type Range = [low: number, high: number];
`)
	seen := map[string]bool{}
	var declare func(s *json.Shape)
	declare = func(s *json.Shape) {
		for _, other := range append(s.Extends, named(s)[1:]...) {
			if !seen[other.Name] {
				declare(other)
			}
		}
		if !seen[s.Name] {
			seen[s.Name] = true
			b = append(b, declaration(s)...)
		}
	}
	for _, name := range Shapes {
		declare(Shape(name))
	}
	return b
}

// declaration is the TypeScript interface of one object.
func declaration(s *json.Shape) string {
	var b strings.Builder
	b.WriteString("\n/** " + s.About + " */\nexport interface " + s.Name)
	for i, other := range s.Extends {
		if i == 0 {
			b.WriteString(" extends " + other.Name)
		} else {
			b.WriteString(", " + other.Name)
		}
	}
	b.WriteString(" {\n")
	for _, f := range s.Fields {
		mark := ""
		if f.Maybe {
			mark = "?"
		}
		b.WriteString("  /** " + f.About + " */\n  " + f.Name + mark + ": " + typeOf(f.Shape) + ";\n")
	}
	b.WriteString("}\n")
	return b.String()
}

// typeOf is the TypeScript type of a shape. TypeScript has no integers, and a range is a
// type of its own for the sake of its two names.
func typeOf(s *json.Shape) string {
	switch {
	case s == json.ARange:
		return "Range"
	case s.Of != nil:
		return typeOf(s.Of) + "[]"
	case s.Name != "":
		return s.Name
	case len(s.Words) > 0:
		return "'" + strings.Join(s.Words, "' | '") + "'"
	case s.Is == "integer":
		return "number"
	}
	return s.Is
}
