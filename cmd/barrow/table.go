package main

import (
	"io"
	"regexp"
	"strings"
	"unicode/utf8"
)

// width is the terminal that every table must fit: 80 columns.
const width = 80

// column is the layout of one column: its least and greatest width in
// characters. A longer cell is wrapped.
type column struct {
	head  string
	right bool // figures line up at the right
	most  int
	least int
}

// table writes rows under their heads, indented by two columns. A column
// without a head and without text takes no room. A row of one cell among longer
// ones is a heading: it stands by itself, with a line left free above.
func table(out io.Writer, cols []column, rows [][]string) error {
	wide := make([]int, len(cols))
	for i, c := range cols {
		wide[i] = max(utf8.RuneCountInString(c.head), c.least)
		for _, row := range rows {
			if len(row) < len(cols) {
				continue
			}
			for _, line := range wrap(row[i], c.most) {
				wide[i] = max(wide[i], utf8.RuneCountInString(line))
			}
		}
	}
	var b strings.Builder
	write := func(cells [][]string) {
		for k := 0; ; k++ {
			line, more := "", false
			for i, c := range cols {
				text := ""
				if k < len(cells[i]) {
					text, more = cells[i][k], true
				}
				if wide[i] == 0 {
					continue
				}
				line += "  " + pad(text, wide[i], c.right)
			}
			if !more {
				return
			}
			b.WriteString(strings.TrimRight(line, " ") + "\n")
		}
	}
	heads := make([][]string, len(cols))
	headed := false
	for i, c := range cols {
		heads[i] = []string{c.head}
		headed = headed || c.head != ""
	}
	if headed {
		write(heads)
	}
	for _, row := range rows {
		if len(row) < len(cols) {
			b.WriteString("\n  " + row[0] + "\n")
			continue
		}
		cells := make([][]string, len(cols))
		for i := range cols {
			cells[i] = wrap(row[i], cols[i].most)
		}
		write(cells)
	}
	_, err := io.WriteString(out, b.String())
	return err
}

// pad fills a cell up to its width.
func pad(s string, n int, right bool) string {
	gap := strings.Repeat(" ", max(n-utf8.RuneCountInString(s), 0))
	if right {
		return gap + s
	}
	return s + gap
}

// glued stands for a space between a figure and its unit, at which a line must
// not break.
const glued = "\x00"

// figures finds a figure with its fraction and its unit: 66 2/3 cu ft.
var figures = regexp.MustCompile(`\d( \d+/\d+)?` +
	`( (cu|sq|dry|liq) (ft|in|yd|m|qt|pt)` +
	`| (lb/cu yd|kg/m3|in|ft|yd|mm|cm|m3|m|L|mL|gal|lb|oz|kg|g|t)\b)?`)

// glue keeps figures together with their fractions and units.
func glue(s string) string {
	return figures.ReplaceAllStringFunc(s, func(f string) string { return strings.ReplaceAll(f, " ", glued) })
}

// pieces splits s at spaces, except for spaces inside figures that fit into n.
func pieces(s string, n int) (out []string) {
	for word := range strings.SplitSeq(glue(s), " ") {
		word = strings.ReplaceAll(word, glued, " ")
		if utf8.RuneCountInString(word) > n {
			out = append(out, strings.Split(word, " ")...)
		} else {
			out = append(out, word)
		}
	}
	return out
}

// wrap breaks s at spaces into lines of at most n characters. A longer word is
// cut.
func wrap(s string, n int) []string {
	if n <= 0 || utf8.RuneCountInString(s) <= n {
		return []string{s}
	}
	var lines []string
	line := ""
	for _, word := range pieces(s, n) {
		for utf8.RuneCountInString(word) > n {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			cut := string([]rune(word)[:n])
			lines, word = append(lines, cut), word[len(cut):]
		}
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= n:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
