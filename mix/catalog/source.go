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

// String returns the text in English. A figure from memory or common practice
// says so in its text; a test makes sure of that.
func (s Source) String() string { return s.Text.String() }

// In returns the text in a language. The name of a publication is not
// translated.
func (s Source) In(l *lang.Language) string { return s.Text.In(l) }

// sourceText reads the text of a job's own source into a [Source].
var sourceText = doc.Type{Takes: "text", Form: "text", Read: func(_ *doc.Type, r *doc.Reader, n *json.Node, at any) {
	*at.(*Source) = jobSource(r.Name(n))
}}

// jobSource is a source that a job names.
func jobSource(text string) Source { return Source{Text: message.Text(text), Kind: "job"} }

// The sources that the program itself names.
var (
	FromJob    = Source{Text: "the job", Kind: "job"}
	Arithmetic = Source{Text: "arithmetic", Kind: "arithmetic"}
	AsSpread   = Source{Text: "a layer is measured as it is spread, loose", Kind: "practice"}
)
