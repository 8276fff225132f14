package picture

// Extent is from where to where a text reaches, by the table of widths.
func Extent(s *Shape) (l, r float64) { return s.extent() }
