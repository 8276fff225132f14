package doc

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Encoder writes an object as a document, from the same tables that read it. A field
// that holds its zero value is left out. Quantities are written exactly, so that
// reading the document back gives the same job. The zero value is ready to use; the
// document is in JSON.
type Encoder struct {
	JSON json.Writer
	// Other writes a value of a type that package doc does not know, or one that has
	// a shorter form than its table. at points to the value. Other calls key just
	// before it writes; where it returns false it must have written nothing, not
	// even the key, since another way of writing is tried then.
	Other func(e *Encoder, key func(), at any) (ok bool)
}

// Object writes an object in braces, with the fields of each table.
func (e *Encoder) Object(parts ...Into) {
	e.JSON.BeginObject()
	e.Fields(parts...)
	e.JSON.EndObject()
}

// Fields writes the fields of each table into an object that has been opened.
func (e *Encoder) Fields(parts ...Into) {
	for _, p := range parts {
		for i := range p.Table {
			f := &p.Table[i]
			var kept *AsTyped
			if k, ok := p.Object.(keeper); ok {
				kept = k.asTyped()
			}
			e.field(f, f.At(p.Object), kept)
		}
	}
}

// nothing is kept of an object that keeps nothing.
var nothing AsTyped

// field writes one field, unless it holds nothing.
func (e *Encoder) field(f *Field, at any, kept *AsTyped) {
	if kept == nil {
		kept = &nothing
	}
	key := func() { e.JSON.Key(f.Name) }
	switch {
	case e.plain(f, key, at, kept), e.optional(key, at), e.Other != nil && e.Other(e, key, at):
	case f.Type.Of != nil && f.Type.Of().Row != nil && f.Type.Form == "list":
		e.rows(f.Type.Of(), key, at)
	case f.Type.Of != nil && f.Type.Form == "object":
		e.one(f.Type.Of(), key, at)
	}
}

// plain writes a single value. ok is false for a type that it does not know. The key
// comes as a function because only the case that matches knows whether there is
// anything to write.
func (e *Encoder) plain(f *Field, key func(), at any, kept *AsTyped) (ok bool) {
	switch v := at.(type) {
	case *string:
		e.text(key, *v)
	case *bool:
		if *v {
			key()
			e.JSON.Bool(true)
		}
	case *int64:
		if *v != 0 {
			key()
			e.JSON.Int(*v)
		}
	case *units.Length:
		e.quantity(key, int64(*v), kept.WriteLength(f.Name, *v))
	case *units.Area:
		e.quantity(key, int64(*v), kept.WriteArea(f.Name, *v))
	case *units.Volume:
		e.quantity(key, int64(*v), kept.WriteVolume(f.Name, *v))
	case *units.Mass:
		e.quantity(key, int64(*v), v.String())
	case *units.Density:
		e.quantity(key, int64(*v), v.String())
	case *units.Money:
		e.quantity(key, int64(*v), v.String())
	case *units.Ratio:
		e.quantity(key, v.Num(), e.share(f.Type, *v))
	case *[]string:
		e.list(key, *v)
	case *[]units.Length:
		e.lengths(f, key, *v, kept)
	default:
		return false
	}
	return true
}

// share writes a share as a percentage. A plain number, such as a factor, is written
// as a fraction: [Factor] reads no percent sign, and a decimal could be inexact.
func (e *Encoder) share(t *Type, r units.Ratio) string {
	if t.Form != "number" {
		return r.String()
	}
	return itoa(r.Num()) + "/" + itoa(r.Den())
}

// optional writes a value that is kept as a pointer. Zero is written, since it
// differs from nil: a price of nothing is free, no price is unknown. ok is false for
// a type that it does not know.
func (e *Encoder) optional(key func(), at any) (ok bool) {
	switch v := at.(type) {
	case **int64:
		if *v != nil {
			key()
			e.JSON.Int(**v)
		}
	case **units.Money:
		if *v != nil {
			key()
			e.JSON.String((*v).String())
		}
	case **units.Ratio:
		if *v != nil {
			key()
			e.JSON.String((*v).String())
		}
	default:
		return false
	}
	return true
}

func (e *Encoder) text(key func(), s string) {
	if s != "" {
		key()
		e.JSON.String(s)
	}
}

func (e *Encoder) quantity(key func(), count int64, text string) {
	if count != 0 {
		e.text(key, text)
	}
}

func (e *Encoder) list(key func(), list []string) {
	if len(list) == 0 {
		return
	}
	key()
	e.JSON.BeginArray()
	for _, s := range list {
		e.JSON.String(s)
	}
	e.JSON.EndArray()
}

// lengths writes a list, or for a type such as [TwoLengths] one text, "4 ft x 3 ft".
func (e *Encoder) lengths(f *Field, key func(), list []units.Length, kept *AsTyped) {
	if f.Type.Form == "lengths" {
		e.text(key, kept.WriteDims(f.Name, list))
		return
	}
	texts := make([]string, len(list))
	for i, l := range list {
		texts[i] = kept.WriteLength(json.PathIndex(f.Name, i), l)
	}
	e.list(key, texts)
}

// rows writes a list of objects. The key is written with the first row, so that an
// empty list leaves no field behind.
func (e *Encoder) rows(o *Object, key func(), at any) {
	for i := 0; ; i++ {
		row := o.Row(at, i, 0)
		if row == nil && i > 0 {
			e.JSON.EndArray()
		}
		if row == nil {
			return
		}
		if i == 0 {
			key()
			e.JSON.BeginArray()
		}
		e.Object(o.into(row)...)
	}
}

// one writes a single object. An object behind a pointer is written unless it is
// nil; one that is part of its parent is written unless all its fields are empty.
func (e *Encoder) one(o *Object, key func(), at any) {
	if o.Maybe != nil {
		if at = o.Maybe(at, false); at == nil {
			return
		}
	} else if e.empty(o, at) {
		return
	}
	key()
	e.Object(o.into(at)...)
}

// empty reports whether no field of the object holds anything. It writes the object
// to find out: only the writing knows which values count as nothing.
func (e *Encoder) empty(o *Object, at any) bool {
	trial := Encoder{Other: e.Other}
	trial.Object(o.into(at)...)
	return string(trial.JSON.Bytes()) == "{}\n"
}
