package mix

// Sample returns the built-in job document: an invented community orchard's
// berry walk, from cuttings in trays to a mulched bed. The copy is the
// caller's.
func Sample() []byte { return []byte(sampleJSON) }
