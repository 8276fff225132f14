package ground

import (
	"slices"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
)

// Typed reports whether the area's text says everything about it.
func (a *Area) Typed() bool {
	if a.Text == "" || a.Count > 0 || len(a.Plus)+len(a.Less) > 0 {
		return false
	}
	b, err := ParseArea(a.Text)
	return err == nil && b.Shape == a.Shape && b.Plain == a.Plain && slices.Equal(b.Sides, a.Sides)
}

// Encode writes the area as an object of a document, which reads back equal.
func (a *Area) Encode(e *doc.Encoder) {
	e.JSON.BeginObject()
	switch a.Shape {
	case "plain":
		e.JSON.Key("area")
		e.JSON.String(a.WriteArea("area", a.Plain))
	case "strip":
		e.JSON.Key("strip")
		e.Object(doc.Into{Table: StripObject.Tables[0], Object: a.strip()})
	case "corners":
		e.JSON.Key("corners")
		a.encodeCorners(e)
	default:
		e.JSON.Key(a.Shape)
		e.JSON.String(a.WriteDims(a.Shape, a.Sides))
	}
	if a.Count != 0 {
		e.JSON.Key("count")
		e.JSON.Int(a.Count)
	}
	encodeAreas(e, "plus", a.Plus)
	encodeAreas(e, "less", a.Less)
	e.JSON.EndObject()
}

// strip returns the area's strip, or an empty one.
func (a *Area) strip() *Strip {
	if a.Strip == nil {
		return &Strip{}
	}
	return a.Strip
}

// encodeCorners writes the corners as pairs of lengths.
func (a *Area) encodeCorners(e *doc.Encoder) {
	e.JSON.BeginArray()
	for i, corner := range a.Corners {
		field := json.PathIndex("corners", i)
		e.JSON.BeginArray()
		e.JSON.String(a.WriteLength(json.PathIndex(field, 0), corner[0]))
		e.JSON.String(a.WriteLength(json.PathIndex(field, 1), corner[1]))
		e.JSON.EndArray()
	}
	e.JSON.EndArray()
}

// encodeAreas writes a list, each area as text where its text says everything.
func encodeAreas(e *doc.Encoder, key string, list []Area) {
	if len(list) == 0 {
		return
	}
	e.JSON.Key(key)
	e.JSON.BeginArray()
	for i := range list {
		if list[i].Typed() {
			e.JSON.String(list[i].Text)
		} else {
			list[i].Encode(e)
		}
	}
	e.JSON.EndArray()
}
