package main

import (
	"strings"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
)

// field is a field of a task as a flag. It is a [pflag.Value].
type field struct {
	doc.Field
	text string
}

// flag adds a flag for a field that can be written in one line.
func (q *quick) flag(f doc.Field) {
	if !inOneLine(f.Type) {
		return
	}
	q.fields[f.Name] = &field{Field: f}
	q.set.Var(q.fields[f.Name], flagName(f.Name), usage(f))
}

// inOneLine reports whether a value of the type is one line: no list, and no
// object but one whose fields have words between them.
func inOneLine(t *doc.Type) bool {
	return t.Form != "list" && t.Form != "keyed" && (t.Form != "object" || len(t.Between) > 0)
}

// flagName is the flag of a field of a document.
func flagName(name string) string { return strings.ReplaceAll(name, "_", "-") }

// usage is what a help text says of a field: what it is, with the example as it is
// written here.
func usage(f doc.Field) string {
	about := strings.TrimSuffix(f.About, ", or an object")
	if head, example, found := strings.Cut(about, ": {"); found && len(f.Type.Between) > 0 {
		about = head + ": \"" + oneLine(f.Type, "{"+example) + "\""
	}
	if f.Type.Form == "choice" && !strings.Contains(about, f.Type.Words[0]+",") {
		about += ": " + f.Type.InWords()
	}
	return about
}

// oneLine writes an example of an object, as its table has it, in one line.
func oneLine(t *doc.Type, object string) string {
	root, _ := json.Parse([]byte(object), json.Limits{})
	var words []string
	for i := range root.Items {
		if i > 0 && i <= len(t.Between) {
			words = append(words, t.Between[i-1])
		}
		words = append(words, root.Items[i].Text)
	}
	return strings.Join(words, " ")
}

// String is what was typed.
func (f *field) String() string { return f.text }

// Set keeps what was typed, for the job's check to read.
func (f *field) Set(text string) error {
	f.text = text
	return nil
}

// Type is what stands for the value in a help text: LENGTH, or the field's name
// where its kind says less.
func (f *field) Type() string {
	switch form := f.Field.Type.Form; form {
	case "length", "share", "area", "count", "ball", "volume", "mass", "money", "lengths", "number":
		return strings.ToUpper(form)
	case "object": // so many of them
		return strings.ToUpper(strings.TrimSuffix(f.Name, "s") + "s")
	}
	return strings.ToUpper(f.Name)
}

func (f *field) flag() string { return flagName(f.Name) }

// write writes the field as the document has it: counts are numbers, an object
// has its fields, with the words between them taken away.
func (f *field) write(w *json.Writer) {
	w.Key(f.Name)
	if f.Field.Type.Form != "object" {
		value(w, f.Field.Type, f.text)
		return
	}
	w.BeginObject()
	rest, more := f.text, true
	for i, part := range f.Field.Type.Of().Fields() {
		if !more {
			break
		}
		var typed string
		if i < len(f.Field.Type.Between) {
			typed, rest, more = strings.Cut(rest, " "+f.Field.Type.Between[i]+" ")
		} else {
			typed, more = rest, false
		}
		w.Key(part.Name)
		value(w, part.Type, typed)
	}
	w.EndObject()
}

// value writes what was typed, a count as a number.
func value(w *json.Writer, t *doc.Type, typed string) {
	if t.Form == "count" {
		number(w, typed)
	} else {
		w.String(typed)
	}
}
