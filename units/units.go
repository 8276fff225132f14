package units

// Unit describes one row of the unit table, for a list to show.
type Unit struct {
	Name string // as printed; parses
	Kind string // "length", "area", "volume", ...
	Also string // other spellings, separated by commas
}

// Units returns every unit that quantities can be written in, grouped by kind.
// The slice is the caller's.
func Units() []Unit {
	out := make([]Unit, len(table))
	for i, u := range table {
		out[i] = Unit{u.name, string(kinds[u.kind].name), commas(u.also)}
	}
	return out
}

// commas writes a list that | separates with commas.
func commas(list string) string {
	var b []byte
	for i := range len(list) {
		if b = append(b, list[i]); list[i] == '|' {
			b = append(b[:len(b)-1], ", "...)
		}
	}
	return string(b)
}
