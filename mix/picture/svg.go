package picture

// SVG returns the drawing as a document of its own. style is a style sheet in
// CSS, "" for none; it is included unchanged, so it must be trusted.
func SVG(d *Drawing, style string) []byte {
	b := []byte(`<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 `)
	b = append(appendNumber(append(appendNumber(b, d.Width), ' '), d.Height), "\">\n<title>"...)
	b = append(appendText(b, d.Title), "</title>\n<desc>"...)
	b = append(appendText(b, d.Description), "</desc>\n"...)
	if style != "" {
		b = append(append(append(b, "<style>"...), style...), "</style>\n"...)
	}
	for i := range d.Shapes {
		s := &d.Shapes[i]
		b = append(append(b, '<'), s.Is...)
		s.attributes(func(name string, number float64, text string) {
			b = append(append(append(b, ' '), name...), `="`...)
			if text != "" {
				b = appendText(b, text)
			} else {
				b = appendNumber(b, number)
			}
			b = append(b, '"')
		})
		if s.Is == "text" {
			b = append(appendText(append(b, '>'), s.Text), "</text>\n"...)
		} else {
			b = append(b, "/>\n"...)
		}
	}
	return append(b, "</svg>\n"...)
}

// attributes calls add for each attribute of a shape, which is a number or a
// text.
func (s *Shape) attributes(add func(name string, number float64, text string)) {
	names := [...]string{"x", "y", "width", "height"}
	numbers := [...]float64{s.X, s.Y, s.W, s.H}
	count := len(names)
	switch s.Is {
	case "line":
		names = [...]string{"x1", "y1", "x2", "y2"}
		numbers[2] += s.X
		numbers[3] += s.Y
	case "path":
		count = 0
	case "text":
		count = 2
	}
	for i := range count {
		add(names[i], numbers[i], "")
	}
	switch s.Is {
	case "path":
		add("d", 0, s.D)
	case "text":
		add("text-anchor", 0, s.Anchor)
	}
	add("class", 0, s.Class)
}

// appendText appends text escaped for a document or an attribute.
func appendText(b []byte, s string) []byte {
	for _, c := range []byte(plain(s)) {
		switch c {
		case '&':
			b = append(b, "&amp;"...)
		case '<':
			b = append(b, "&lt;"...)
		case '>':
			b = append(b, "&gt;"...)
		case '"':
			b = append(b, "&quot;"...)
		default:
			b = append(b, c)
		}
	}
	return b
}
