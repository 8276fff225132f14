package doc

import (
	"strings"

	"example.org/barrow/units"
)

// AsTyped keeps quantities of an object as they were typed, where a whole count of
// their unit does not hold them: a third of an inch is no whole number of nanometres.
// An object embeds it beside its fields. The fields have the rounded quantities, for
// people and for Go programs; AsTyped has what is needed to count exactly and to
// write the document again. It counts for a field only while that still has the
// quantity that was typed.
//
// The zero value keeps nothing: every quantity is as its field has it. Copies share
// what is kept, which nobody can change once the object is read.
type AsTyped struct {
	texts map[string]string // by field; for a list "along[1]"
}

// keeper is an object that embeds AsTyped.
type keeper interface{ asTyped() *AsTyped }

func (t *AsTyped) asTyped() *AsTyped { return t }

// Keep keeps the text of a field. It is for objects that read a field in a way of
// their own; [Quantify] keeps what it reads by itself.
func (t *AsTyped) Keep(field, text string) {
	if t.texts == nil {
		t.texts = map[string]string{}
	}
	t.texts[field] = text
}

// Kept returns the text of a field, or "" where its quantity is whole.
func (t *AsTyped) Kept(field string) string { return t.texts[field] }

// FixedLength returns the length of a field, which has l, before rounding.
func (t *AsTyped) FixedLength(field string, l units.Length) units.Fixed {
	return fixed(t, field, l, units.FixedOffset)
}

// FixedArea returns the area of a field, which has a, before rounding.
func (t *AsTyped) FixedArea(field string, a units.Area) units.Fixed {
	return fixed(t, field, a, units.FixedArea)
}

// FixedVolume returns the volume of a field, which has v, before rounding.
func (t *AsTyped) FixedVolume(field string, v units.Volume) units.Fixed {
	return fixed(t, field, v, units.FixedVolume)
}

func fixed[T ~int64](t *AsTyped, field string, v T, parse func(string) (units.Fixed, error)) units.Fixed {
	if text := t.texts[field]; text != "" {
		if f, err := parse(text); err == nil && f.Round() == int64(v) {
			return f
		}
	}
	return units.FixedOf(v)
}

// FixedDims returns the lengths of a field that holds several in one text, and has
// sides, before rounding.
func (t *AsTyped) FixedDims(field string, sides []units.Length) []units.Fixed {
	if text := t.texts[field]; text != "" {
		if dims, err := units.FixedDims(text); err == nil && rounded(dims, sides) {
			return dims
		}
	}
	dims := make([]units.Fixed, len(sides))
	for i, l := range sides {
		dims[i] = units.FixedOf(l)
	}
	return dims
}

// rounded reports whether dims come to sides.
func rounded(dims []units.Fixed, sides []units.Length) bool {
	if len(dims) != len(sides) {
		return false
	}
	for i, l := range sides {
		if dims[i].Round() != int64(l) {
			return false
		}
	}
	return true
}

// WriteDims returns the text for a field that holds several lengths: as it was typed,
// or the rounded sides.
func (t *AsTyped) WriteDims(field string, sides []units.Length) string {
	if text := t.texts[field]; text != "" {
		if dims, err := units.FixedDims(text); err == nil && rounded(dims, sides) {
			return text
		}
	}
	texts := make([]string, len(sides))
	for i, l := range sides {
		texts[i] = l.String()
	}
	return strings.Join(texts, " x ")
}

// WriteLength returns the text for a field that has l: as it was typed where no whole
// count is all of that, or else exactly l.
func (t *AsTyped) WriteLength(field string, l units.Length) string {
	if t.FixedLength(field, l).Whole() {
		return l.String()
	}
	return t.texts[field]
}

// WriteArea is WriteLength for an area.
func (t *AsTyped) WriteArea(field string, a units.Area) string {
	if t.FixedArea(field, a).Whole() {
		return a.String()
	}
	return t.texts[field]
}

// WriteVolume is WriteLength for a volume.
func (t *AsTyped) WriteVolume(field string, v units.Volume) string {
	if t.FixedVolume(field, v).Whole() {
		return v.String()
	}
	return t.texts[field]
}

// keep keeps the text at the reader's path, in the object that is being read.
func (r *Reader) keep(text string) {
	if r.kept != nil {
		r.kept.Keep(r.path[r.keptFrom:].String(), text)
	}
}
