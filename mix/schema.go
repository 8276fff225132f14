package mix

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/task"
)

// Schema returns the JSON Schema (draft 2020-12) of the job document, so that an
// editor can complete and check one. It is made from the tables that read the
// document, so the two cannot disagree. It says which fields there are and what kind
// of value each takes. Whether a quantity can be read, and which fields go together,
// only [Decode] and [Job.Plan] can tell.
func Schema() []byte {
	w := &doc.SchemaWriter{}
	w.JSON.BeginObject()
	w.Text("$schema", "https://json-schema.org/draft/2020-12/schema")
	w.Text("title", "Barrow job")
	w.Object(jobObject.Fields(), "schema", "tasks")
	w.JSON.Key("$defs")
	w.JSON.BeginObject()
	for _, o := range Objects()[1:] {
		switch {
		case o == task.Object:
			defineTask(w)
		case !isKind(o):
			define(w, o.ID, o.Fields())
		}
	}
	for _, k := range task.Kinds() {
		defineKind(w, k)
	}
	w.JSON.EndObject()
	w.JSON.EndObject()
	return w.JSON.Bytes()
}

// define writes the definition of one object.
func define(w *doc.SchemaWriter, id string, fields []doc.Field, required ...string) {
	w.JSON.Key(id)
	w.JSON.BeginObject()
	w.Object(fields, required...)
	w.JSON.EndObject()
}

// isKind reports whether the object has the fields of one kind of task. Those are not
// defined on their own: an editor completes a whole task, with the fields of both.
func isKind(o *doc.Object) bool {
	for _, k := range task.Kinds() {
		if k.Object == o {
			return true
		}
	}
	return false
}

// defineTask writes that a task is of one of the kinds.
func defineTask(w *doc.SchemaWriter) {
	w.JSON.Key(task.Object.ID)
	w.JSON.BeginObject()
	w.JSON.Key("oneOf")
	w.JSON.BeginArray()
	for _, k := range task.Kinds() {
		w.JSON.BeginObject()
		w.Text("$ref", "#/$defs/"+k.Object.ID)
		w.JSON.EndObject()
	}
	w.JSON.EndArray()
	w.JSON.EndObject()
}

// defineKind writes what a task of one kind has: its kind, the fields of every task,
// and those of this kind.
func defineKind(w *doc.SchemaWriter, k *task.Kind) {
	fields := append(task.Object.Fields(), k.Object.Fields()...)
	kind := *fields[0].Type // a copy, which takes no other kind's name
	kind.Words = []string{k.Name}
	fields[0].Type = &kind
	define(w, k.Object.ID, fields, "kind")
}
