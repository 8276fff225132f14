package picture

import "example.org/barrow/mix/json"

// Write writes drawings as a list, where w expects a value. The keys of a shape
// are "is", the name of its SVG element, then that element's attributes by
// name, and "text" for the words of a text:
//
//	[{"kind": "bed", "task": 2, "title": "Amend the clay", "desc": "The bed in section ...",
//	  "width": 320, "height": 290.5, "shapes": [
//	    {"is": "rect", "x": 8, "y": 44, "width": 148, "height": 56.67, "class": "layer"},
//	    {"is": "text", "x": 8, "y": 16, "text-anchor": "start", "class": "figure", "text": "Before"}]}]
//
// A drawing that belongs to no task has no "task".
func Write(w *json.Writer, list []Drawing) {
	w.BeginArray()
	for i := range list {
		d := &list[i]
		w.BeginObject()
		text(w, "kind", d.Kind)
		if d.Task >= 0 {
			w.Key("task")
			w.Int(int64(d.Task))
		}
		text(w, "title", plain(d.Title))
		text(w, "desc", plain(d.Description))
		number(w, "width", d.Width)
		number(w, "height", d.Height)
		w.Key("shapes")
		w.BeginArray()
		for k := range d.Shapes {
			s := &d.Shapes[k]
			w.BeginObject()
			text(w, "is", s.Is)
			s.attributes(func(name string, f float64, words string) {
				if words != "" {
					text(w, name, words)
				} else {
					number(w, name, f)
				}
			})
			if s.Is == "text" {
				text(w, "text", s.Text)
			}
			w.EndObject()
		}
		w.EndArray()
		w.EndObject()
	}
	w.EndArray()
}

// text writes a field of text.
func text(w *json.Writer, key, s string) { w.Key(key); w.String(s) }

// number writes a field that is a number, rounded like a coordinate.
func number(w *json.Writer, key string, f float64) { w.Key(key); w.Raw(string(appendNumber(nil, f))) }
