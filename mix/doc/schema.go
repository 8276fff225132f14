package doc

import "example.org/barrow/mix/json"

// SchemaWriter writes the JSON Schema of a document, so that an editor can complete
// and check one: what a schema can say of it, which is less than reading does.
type SchemaWriter struct {
	JSON json.Writer
}

// Text writes a keyword with text.
func (w *SchemaWriter) Text(key, s string) {
	w.JSON.Key(key)
	w.JSON.String(s)
}

// Object writes what an object may have, and that it has nothing else, into an
// object that is begun. Required are fields that are always there.
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

// Words writes a keyword with a list of words.
func (w *SchemaWriter) Words(key string, words []string) {
	w.JSON.Key(key)
	w.JSON.BeginArray()
	for _, s := range words {
		w.JSON.String(s)
	}
	w.JSON.EndArray()
}

// idPattern is what plainID takes.
const idPattern = "^[A-Za-z0-9#._-]{1,64}$"

// value writes what a value is, into an object that is begun.
func (w *SchemaWriter) value(t *Type) {
	switch t.Form {
	case "count", "fixed":
		w.Text("type", "integer")
		w.number("minimum", t.Least)
		w.number("maximum", MaxCount)
	case "switch":
		w.Text("type", "boolean")
	case "money", "share", "number": // bare, a number is as clear as in quotes
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

// text writes what is text, or an object where the type has one.
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

// rows writes a list: of objects, of a type, or of lists of texts, as corners are.
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
