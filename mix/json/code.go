package json

// Codes of a [Fault]. They do not change.
const (
	Syntax    = "json.syntax"    // not JSON
	Duplicate = "json.duplicate" // a key that its object already has
	Depth     = "json.depth"     // more containers inside one another than Limits.Depth
	Size      = "json.size"      // more bytes or values than Limits allows
	UTF8      = "json.utf8"      // a byte that is not UTF-8, or half a surrogate pair
	BOM       = "json.bom"       // a byte order mark at the start
	Empty     = "json.empty"     // nothing but white space
	Trailing  = "json.trailing"  // something after the end of the value
)
