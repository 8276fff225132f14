package mix

// Source is where a figure comes from. The zero value is no source.
type Source struct {
	ID   string // in the catalogue, or "" for the job's own
	Text string
	// Kind is "read" (read in the source named), "memory", "practice" (common
	// practice, no published source), "arithmetic" or "job".
	Kind string
}

// String gives the text. What is from memory or common practice says so in it;
// a test holds the catalogue to that.
func (s Source) String() string { return s.Text }

func jobSource(text string) Source { return Source{Text: text, Kind: "job"} }

// Sources that the program itself names.
var (
	fromJob    = Source{Text: "the job", Kind: "job"}
	arithmetic = Source{Text: "arithmetic", Kind: "arithmetic"}
	asSpread   = Source{Text: "a layer is measured as it is spread, loose", Kind: "practice"}
)
