package doc

import "example.org/barrow/mix/json"

// SchemaWriter writes the JSON Schema (draft 2020-12) of a document, so that an
// editor can complete and check one. A schema can say less than reading checks: that
// a length is text, for example, but not that it is a length. The zero value is
// ready to use.
type SchemaWriter struct {
	JSON json.Writer
}

// Text writes a keyword whose value is text.
func (w *SchemaWriter) Text(key, s string) {
	w.JSON.Key(key)
	w.JSON.String(s)
}

// Object writes the fields that an object may have, and that it may have no others,
// into an object that has been opened. required names the fields that must be there.
func (w *SchemaWriter) Object(fields []Field, required ...string) {
	w.Text("type", "object")
	w.JSON.Key("properties")
	w.JSON.BeginObject()
	for i := range fields {
		f := &fields[i]
		w.JSON.Key(f.Name)
		w.JSON.BeginObject()
		w.Text("description", f.Type.InWords()+": "+f.About)
		w.value(f.Type)
		w.JSON.EndObject()
	}
	w.JSON.EndObject()
	w.Words("required", required)
	w.JSON.Key("additionalProperties")
	w.JSON.Bool(false)
}

// Words writes a keyword whose value is a list of words.
func (w *SchemaWriter) Words(key string, words []string) {
	w.JSON.Key(key)
	w.JSON.BeginArray()
	for _, s := range words {
		w.JSON.String(s)
	}
	w.JSON.EndArray()
}

// idPattern is the form that plainID accepts.
const idPattern = "^[A-Za-z0-9#._-]{1,64}$"

// value writes what a field of a type may hold, into an object that has been opened.
func (w *SchemaWriter) value(t *Type) {
	switch t.Form {
	case "count", "fixed":
		w.Text("type", "integer")
		w.number("minimum", t.Least)
		w.number("maximum", MaxCount)
	case "switch":
		w.Text("type", "boolean")
	case "money", "share", "number": // these have no unit, so a bare number is clear
		w.Words("type", []string{"string", "number"})
	case "choice":
		w.Words("enum", t.Words)
	case "traits":
		w.list(func() { w.Words("enum", t.Words) })
	case "id":
		w.Text("type", "string")
		w.Text("pattern", idPattern)
	case "object":
		w.ref(t.Of())
	case "list":
		w.rows(t)
	case "keyed":
		w.Text("type", "object")
		w.JSON.Key("additionalProperties")
		w.JSON.BeginObject()
		w.Words("type", []string{"string", "number"})
		w.JSON.EndObject()
	default:
		w.text(t)
	}
}

// text writes that a value is text or, where the type has an object, text or that
// object: an area may be "60 ft x 4 ft" or spelled out.
func (w *SchemaWriter) text(t *Type) {
	if t.Of == nil {
		w.Text("type", "string")
		return
	}
	w.JSON.Key("anyOf")
	w.JSON.BeginArray()
	w.JSON.BeginObject()
	w.Text("type", "string")
	w.JSON.EndObject()
	w.JSON.BeginObject()
	w.ref(t.Of())
	w.JSON.EndObject()
	w.JSON.EndArray()
}

// rows writes a list: of objects, of values of one type, or of lists of texts, which
// is how the corners of a polygon are written.
func (w *SchemaWriter) rows(t *Type) {
	w.list(func() {
		switch {
		case t.Of != nil && t.Of().Line:
			w.text(t)
		case t.Of != nil:
			w.ref(t.Of())
		case t.Items != nil:
			w.value(t.Items)
		default:
			w.list(func() { w.Text("type", "string") })
		}
	})
}

func (w *SchemaWriter) list(item func()) {
	w.Text("type", "array")
	w.JSON.Key("items")
	w.JSON.BeginObject()
	item()
	w.JSON.EndObject()
}

func (w *SchemaWriter) ref(o *Object) { w.Text("$ref", "#/$defs/"+o.ID) }

func (w *SchemaWriter) number(key string, n int64) {
	w.JSON.Key(key)
	w.JSON.Int(n)
}
