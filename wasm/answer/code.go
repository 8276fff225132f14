package answer

// Codes of the problems that a question itself may have. They do not change.
const (
	VerbUnknown = "verb.unknown" // no such question
	LanguageBad = "language.bad" // a language file that does not read
	Bug         = "bug"          // the program failed
)
