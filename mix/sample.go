package mix

// Sample returns the built-in job document, as JSON. It is the invented berry walk of
// a community orchard, from cuttings in trays to a mulched bed, and uses every kind of
// task. The bytes are the caller's.
func Sample() []byte { return []byte(sampleJSON) }
