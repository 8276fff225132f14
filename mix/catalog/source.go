package catalog

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units/message"
)

// Source is where a figure comes from. The zero value is no source.
type Source struct {
	ID   string // in the catalogue, or "" for the job's own
	Text message.Text
	// Kind is "read" (read in the source named), "memory", "practice" (common
	// practice, no published source), "arithmetic" or "job".
	Kind string
}

// String gives the text. What is from memory or common practice says so in it;
// a test holds the catalogue to that.
func (s Source) String() string { return s.Text.String() }

// In gives the text in a language. The name of a publication stays as it is.
func (s Source) In(t *lang.Language) string { return s.Text.In(t) }

// sourceText reads the text of a source of the job's own into a [Source].
var sourceText = doc.Type{Takes: "text", Form: "text", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*Source) = jobSource(r.Name(n))
}}

func jobSource(text string) Source { return Source{Text: message.Text(text), Kind: "job"} }

// Sources that the program itself names.
var (
	FromJob    = Source{Text: "the job", Kind: "job"}
	Arithmetic = Source{Text: "arithmetic", Kind: "arithmetic"}
	AsSpread   = Source{Text: "a layer is measured as it is spread, loose", Kind: "practice"}
)
