package json

// The value of each field of [Limits] when it is zero.
const (
	DefaultBytes  = 16 << 20
	DefaultDepth  = 32
	DefaultNodes  = 4_000_000
	DefaultFaults = 20
)

// MaxDepth is the deepest nesting that [Limits] can allow. The parser calls
// itself once for each level; a browser's stack is small, and overflowing it
// ends the program.
const MaxDepth = 1000

// MaxFaults is the most faults that [Limits] can ask for. Each one costs a look
// back through the document, and nobody reads more.
const MaxFaults = 1000

// Limits bounds what [Parse] accepts. A field that is zero or negative stands
// for its default, so the zero value is ready to use. Nodes is what limits
// memory: a node takes 80 bytes, and a list of digits makes one of every two
// bytes.
type Limits struct {
	Bytes  int // length of the document
	Depth  int // containers inside one another; at most MaxDepth
	Nodes  int // values in the document, containers included
	Faults int // faults reported before the parse stops; at most MaxFaults
}

// filled replaces what is not set by the defaults.
func (l Limits) filled() Limits {
	return Limits{
		Bytes:  positive(l.Bytes, DefaultBytes),
		Depth:  min(positive(l.Depth, DefaultDepth), MaxDepth),
		Nodes:  positive(l.Nodes, DefaultNodes),
		Faults: min(positive(l.Faults, DefaultFaults), MaxFaults),
	}
}

// positive returns n, or otherwise when n is not positive.
func positive(n, otherwise int) int {
	if n > 0 {
		return n
	}
	return otherwise
}
