package doc

import (
	"slices"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// The types of text. Each reads into a string, Names into a []string.
var (
	// Name is a name that people read: one line without control characters.
	Name = Type{Takes: "a name", Form: "text", Read: ReadName}
	// ID is a short name that other fields refer to.
	ID = Type{Takes: "a short name", Form: "id", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
		*at.(*string) = r.id(n)
	}}
	// Names is a list of names.
	Names = Type{Takes: "list", Form: "list", Items: &Name, Read: func(_ *Type, r *Reader, n *json.Node, at any) {
		*at.(*[]string) = List(r, n, "names", func(r *Reader, n *json.Node, s *string) { *s = r.Name(n) })
	}}
	// Text is any text.
	Text = Type{Takes: "text", Form: "text", Read: func(_ *Type, r *Reader, n *json.Node, at any) {
		*at.(*string), _ = r.Text(n, "text")
	}}
)

// ReadName is the Read of [Name].
func ReadName(_ *Type, r *Reader, n *json.Node, at any) { *at.(*string) = r.Name(n) }

// ReadWord is the Read of a type whose text names something and has no unit, into a
// string. The type's Such is what to write, in words.
func ReadWord(t *Type, r *Reader, n *json.Node, at any) { *at.(*string) = r.Word(n, t.Such) }

// ReadChoice is the Read of a type that takes one of its Words, into a string.
func ReadChoice(t *Type, r *Reader, n *json.Node, at any) { *at.(*string) = r.OneOf(n, t.Words...) }

// ReadChoices is the Read of a type that takes a list of its Words, into a []string.
// The type's Such is the elements in words.
func ReadChoices(t *Type, r *Reader, n *json.Node, at any) {
	*at.(*[]string) = List(r, n, t.Such, func(r *Reader, n *json.Node, s *string) {
		*s = r.OneOf(n, t.Words...)
	})
}

// Text returns n's text as a person typed it, without the space around it. ok is
// false, with a problem, for anything but text. such is what to write, in words.
func (r *Reader) Text(n *json.Node, such message.Text) (text string, ok bool) {
	text = OneLine(n.Text)
	switch {
	case n.Kind == json.String && text == "":
		r.Problem(units.QuantityEmpty, message.Of("write {=0}", string(such)))
	case n.Kind == json.String:
		return text, true
	case n.Kind == json.Number:
		r.Problem(JSONKind, message.Of("write {=0} as text in quotes, with its unit", string(such)))
	default:
		r.Problem(JSONKind, message.Of("write {=0}, not {=1}", string(such), n.Kind.String()))
	}
	return "", false
}

// Word reads text that names something, and has no unit.
func (r *Reader) Word(n *json.Node, such message.Text) string {
	if n.Kind != json.String {
		r.Problem(JSONKind, message.Of("write {=0} in quotes, not {=1}", string(such), n.Kind.String()))
		return ""
	}
	return OneLine(n.Text)
}

// OneOf reads one of words, exactly as it is spelled there. It returns "" with a
// problem for any other text.
func (r *Reader) OneOf(n *json.Node, words ...string) string {
	s, ok := r.Text(n, message.Of("one of {=0}", string(Or(words))))
	if !ok || slices.Contains(words, s) {
		return s
	}
	if meant := spell.Word(s, words); meant != "" {
		r.Problem(WordUnknown, DidYouMean(meant))
	} else {
		r.Problem(WordUnknown, message.Of("write {=0}", string(Or(words))))
	}
	return ""
}

// maxName is the most letters of a name, so that tables and drawings keep their
// width.
const maxName = 120

// Name reads a name that people read: one line without control characters, of at
// most 120 letters. It returns "" with a problem for anything else.
func (r *Reader) Name(n *json.Node) string {
	if n.Kind != json.String {
		r.Problem(JSONKind, message.Of("write a name in quotes, not {=0}", n.Kind.String()))
		return ""
	}
	name := strings.TrimSpace(n.Text)
	switch {
	case len([]rune(name)) > maxName:
		r.Problem(NameLong, message.Of("at most {0} letters", itoa(maxName)))
		return ""
	case strings.ContainsFunc(name, message.IsControl):
		r.Problem(NameControl, "a name is one line, without control characters")
		return ""
	}
	return name
}

// id reads a name that other fields refer to.
func (r *Reader) id(n *json.Node) string {
	id := r.Name(n)
	switch {
	case !r.Sound():
	case !plainID(id):
		r.Problem(IDForm, `an id is letters, digits, "-", "#" or ".", such as "bark-fines"`)
	case strings.Trim(id, "0123456789") == "":
		// In a line of parts it could not be told from a number of parts, and
		// JavaScript moves keys of digits to the front, which reorders the parts.
		r.Problem(IDForm, message.Of(`an id needs more than digits, such as "no-{0}"`, id))
	}
	return id
}

// plainID reports whether an id has the form of idPattern. A regular expression would
// say the same, but package regexp is large for a browser to download.
func plainID(id string) bool {
	if id == "" || len(id) > 64 {
		return false
	}
	for _, r := range id {
		letter := 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z'
		if !letter && (r < '0' || r > '9') && !strings.ContainsRune("-_#.", r) {
			return false
		}
	}
	return true
}
