package picture

// Extent is the left and right end of a text, by the table of widths.
func Extent(s *Shape) (l, r float64) { return s.extent() }
