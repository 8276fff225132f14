package lang

import (
	"strconv"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Writer writes a document with figures in it: each as data, the same in every
// language, and beside it, where that differs, as the reader writes it. Volumes
// are exact litres; masses are kilograms to a tenth; lengths are millimetres
// and areas square metres, both to six decimals. The zero value is ready to
// use, in English and US units.
type Writer struct {
	JSON    json.Writer
	Printer Printer
	buf     []byte
}

// Open starts an object in a field. [Writer.Close] ends it.
func (w *Writer) Open(key string) {
	w.JSON.Key(key)
	w.JSON.BeginObject()
}

// Close ends the object started last.
func (w *Writer) Close() { w.JSON.EndObject() }

// Text writes text.
func (w *Writer) Text(key, s string) {
	w.JSON.Key(key)
	w.JSON.String(s)
}

// Optional writes text unless it is empty.
func (w *Writer) Optional(key, s string) {
	if s != "" {
		w.Text(key, s)
	}
}

// Figure writes a figure as data, and beside it the way the reader writes it,
// where that differs: "pack": "2 cu ft", "pack_shown": "2 pies³".
func (w *Writer) Figure(key, s string) {
	w.Text(key, s)
	if shown := w.Printer.Figure(s); shown != s {
		w.Text(key+"_shown", shown)
	}
}

// Int writes a whole number.
func (w *Writer) Int(key string, n int64) {
	w.JSON.Key(key)
	w.JSON.Int(n)
}

// Bool writes true or false.
func (w *Writer) Bool(key string, b bool) {
	w.JSON.Key(key)
	w.JSON.Bool(b)
}

// Pair writes two whole numbers as a list.
func (w *Writer) Pair(key string, pair [2]int64) {
	w.JSON.Key(key)
	w.JSON.BeginArray()
	w.JSON.Int(pair[0])
	w.JSON.Int(pair[1])
	w.JSON.EndArray()
}

// List writes a list of n values; one writes value i.
func (w *Writer) List(key string, n int, one func(i int)) {
	w.JSON.Key(key)
	w.JSON.BeginArray()
	for i := range n {
		one(i)
	}
	w.JSON.EndArray()
}

// Rows writes a list of n objects; one writes the fields of object i.
func (w *Writer) Rows(key string, n int, one func(i int)) {
	w.List(key, n, func(i int) {
		w.JSON.BeginObject()
		one(i)
		w.JSON.EndObject()
	})
}

// Litres writes a volume.
func (w *Writer) Litres(key string, v units.Volume) {
	w.JSON.Key(key)
	w.litres(v)
}

// litres writes a volume exactly, as a value without a key.
func (w *Writer) litres(v units.Volume) {
	w.buf = v.AppendLitres(w.buf[:0])
	w.JSON.Raw(string(w.buf))
}

// Range writes the planned volume as prefix+"litres" and, when it is not
// certain, its bounds as prefix+"range_litres".
func (w *Writer) Range(prefix string, r units.Range) {
	w.Litres(prefix+"litres", r.Plan)
	if r.Certain() {
		return
	}
	w.JSON.Key(prefix + "range_litres")
	w.JSON.BeginArray()
	w.litres(r.Low)
	w.litres(r.High)
	w.JSON.EndArray()
}

// Number writes f with at most places digits after the point.
func (w *Writer) Number(key string, f float64, places int) {
	w.JSON.Key(key)
	w.number(f, places)
}

// number writes f as a value without a key, with no zeros at its end.
func (w *Writer) number(f float64, places int) {
	b := strconv.AppendFloat(w.buf[:0], f, 'f', places, 64)
	if places > 0 {
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
		if b[len(b)-1] == '.' {
			b = b[:len(b)-1]
		}
	}
	w.buf = b
	w.JSON.Raw(string(b))
}

// Millimetres writes a length.
func (w *Writer) Millimetres(key string, l units.Length) {
	w.Number(key, float64(l)/float64(units.Millimetre), 6)
}

// MillimetreRange writes the least and the most of a length.
func (w *Writer) MillimetreRange(key string, l [2]units.Length) {
	w.JSON.Key(key)
	w.JSON.BeginArray()
	for _, end := range l {
		w.number(float64(end)/float64(units.Millimetre), 6)
	}
	w.JSON.EndArray()
}

// SquareMetres writes an area.
func (w *Writer) SquareMetres(key string, a units.Area) {
	w.Number(key, float64(a)/float64(units.SquareMetre), 6)
}

// Mass writes a range of mass, lightest and heaviest, in kilograms and as text.
// It writes nothing when the mass is not known.
func (w *Writer) Mass(mass [2]units.Mass) {
	if mass[1] == 0 {
		return
	}
	w.JSON.Key("mass_kg")
	w.JSON.BeginArray()
	for _, m := range mass {
		w.number(float64(m)/float64(units.Kilogram), 1)
	}
	w.JSON.EndArray()
	w.Text("mass_shown", w.Printer.MassRange(mass[0], mass[1]))
}
