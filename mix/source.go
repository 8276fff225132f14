package mix

import (
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

func jobSource(text string) Source { return Source{Text: message.Text(text), Kind: "job"} }

// Sources that the program itself names.
var (
	fromJob    = Source{Text: "the job", Kind: "job"}
	arithmetic = Source{Text: "arithmetic", Kind: "arithmetic"}
	asSpread   = Source{Text: "a layer is measured as it is spread, loose", Kind: "practice"}
)
