package mix_test

import (
	"math/big"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const publishedHeader = "id\tkind\tinput\tpublished\texact\trounding\ttag\tsource\tnote"

// published is one figure met in print.
type published struct {
	file, id, kind, input, tag, source, note string

	in        map[string]string // the input, key by key
	printed   string            // the published figure, or two, with its unit
	unit      string
	low, high *big.Rat
	places    int // after the point of the published figure
	exact     *big.Rat
	rounding  rounding
}

// readPublished reads every row of every file, and stops the test if any is
// unfit.
func readPublished(t *testing.T) (rows []*published) {
	t.Helper()
	files, err := filepath.Glob(publishedFiles)
	if err != nil || len(files) == 0 {
		t.Fatalf("Glob(%s) = %v, %v, want files", publishedFiles, files, err)
	}
	ids := map[string]string{}
	for _, file := range files {
		of := readPublishedFile(t, file)
		if len(of) == 0 {
			t.Errorf("%s has no rows", file)
		}
		for _, r := range of {
			if other, taken := ids[r.id]; taken {
				t.Errorf("%s: id %s is taken in %s", r.file, r.id, other)
			}
			ids[r.id] = r.file
		}
		rows = append(rows, of...)
	}
	if t.Failed() {
		t.FailNow()
	}
	return rows
}

func readPublishedFile(t *testing.T, file string) (rows []*published) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	lines := slices.DeleteFunc(strings.Split(text, "\n"), func(s string) bool { return s == "" || s[0] == '#' })
	if len(lines) == 0 || lines[0] != publishedHeader {
		t.Fatalf("%s: want the header %q", file, publishedHeader)
	}
	kinds := publishedKinds(t)
	for _, line := range lines[1:] {
		r := &published{file: filepath.Base(file)}
		wrong := r.parse(strings.Split(line, "\t"))
		if _, known := kinds[r.kind]; wrong == "" && !known {
			wrong = "unknown kind " + r.kind
		}
		if wrong != "" {
			t.Errorf("%s: %q: %s", file, line, wrong)
		}
		rows = append(rows, r)
	}
	return rows
}

// parse reads the columns and says what makes the row unfit.
func (r *published) parse(col []string) (wrong string) {
	if len(col) != 9 {
		return "want 9 columns, have " + strconv.Itoa(len(col))
	}
	r.id, r.kind, r.input, r.tag, r.source, r.note = col[0], col[1], col[2], col[6], col[7], col[8]
	r.in = map[string]string{}
	for pair := range strings.SplitSeq(r.input, "; ") {
		key, value, _ := strings.Cut(pair, "=")
		r.in[key] = value
	}
	if wrong := r.figures(col[3], col[4]); wrong != "" {
		return wrong
	}
	if r.rounding, wrong = parseRounding(col[5]); wrong != "" {
		return wrong
	}
	switch {
	case strings.Trim(r.id, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-") != "" || r.id == "":
		return "an id is letters, digits, - and ."
	case strings.TrimSpace(r.source) == "":
		return "every row names its source"
	case !slices.Contains([]string{"R", "M", "P", "A"}, r.tag):
		return "the tag is R, M, P or A"
	case (r.rounding.way == "wrong") != (r.file == publishedSlips):
		return "what is wrong in print stands in " + publishedSlips + ", and nothing else does"
	case r.rounding.way != "exact" && r.rounding.way != "nearest" && r.rounding.way != "range" && r.note == "":
		return "a note tells how the figure was rounded, or why it is none of ours"
	}
	return ""
}

// figures reads "3.7 cu yd" or "2.7 to 2.84 L", and the exact "100/27 cu yd" or
// "314.159265359 sq ft".
func (r *published) figures(printed, exact string) (wrong string) {
	low, rest, isRange := strings.Cut(printed, " to ")
	if !isRange {
		rest = printed
	}
	high, unit, _ := strings.Cut(rest, " ")
	if !isRange {
		low = high
	}
	number, exactUnit, _ := strings.Cut(exact, " ")
	if unit == "" || exactUnit != unit {
		return "published and exact are in one unit"
	}
	r.printed, r.unit = printed, unit
	if _, fraction, found := strings.Cut(high, "."); found {
		r.places = len(fraction)
	}
	for _, f := range []struct {
		into **big.Rat
		text string
	}{{&r.low, low}, {&r.high, high}, {&r.exact, number}} {
		var ok bool
		if *f.into, ok = new(big.Rat).SetString(f.text); !ok {
			return "not a number: " + f.text
		}
	}
	return ""
}
