package picture

import "example.org/barrow/mix/wire"

// Write writes drawings as a list, where w expects a value. A shape's keys are
// "is", the name of its SVG element, then that element's attributes by name,
// and "text" for what a text says:
//
//	[{"kind": "bed", "task": 2, "title": "Amend the clay", "desc": "The bed in section ...",
//	  "width": 320, "height": 290.5, "shapes": [
//	    {"is": "rect", "x": 8, "y": 44, "width": 148, "height": 56.67, "class": "layer"},
//	    {"is": "text", "x": 8, "y": 16, "text-anchor": "start", "class": "figure", "text": "Before"}]}]
//
// A drawing of no task has no "task".
func Write(w *wire.Writer, list []Drawing) {
	text := func(key, s string) { w.Key(key); w.String(s) }
	number := func(key string, f float64) { w.Key(key); w.Raw(string(appendNumber(nil, f))) }
	w.BeginArray()
	for i := range list {
		d := &list[i]
		w.BeginObject()
		text("kind", d.Kind)
		if d.Task >= 0 {
			w.Key("task")
			w.Int(int64(d.Task))
		}
		text("title", plain(d.Title))
		text("desc", plain(d.Description))
		number("width", d.Width)
		number("height", d.Height)
		w.Key("shapes")
		w.BeginArray()
		for k := range d.Shapes {
			s := &d.Shapes[k]
			w.BeginObject()
			text("is", s.Is)
			s.attributes(func(name string, f float64, words string) {
				if words != "" {
					text(name, words)
				} else {
					number(name, f)
				}
			})
			if s.Is == "text" {
				text("text", s.Text)
			}
			w.EndObject()
		}
		w.EndArray()
		w.EndObject()
	}
	w.EndArray()
}
