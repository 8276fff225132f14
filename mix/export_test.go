package mix

// What the tests know besides what everybody may.
const (
	MaxMixes  = maxMixes
	NineInTen = nineInTen
)

// NewDocument is what the top of a job document is read into.
func NewDocument() any { return &document{} }
