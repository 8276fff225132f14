package mix_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
)

const (
	publishedFiles  = "../testdata/published/*.tsv"
	publishedReadme = "../testdata/published/README.md"
	publishedSlips  = "slips.tsv" // figures that are wrong in print

	// publishedOutside is the least number of figures, read in a source, that go
	// through the plan of a job. It only grows.
	publishedOutside = 400
)

// TestPublished works every published figure out as a user would, and compares.
// testdata/published/README.md says what the columns are.
func TestPublished(t *testing.T) {
	for _, r := range readPublished(t) {
		t.Run(r.id, r.check)
	}
}

// TestPublishedCounts holds the counts in the README, and writes them anew with
// -update.
func TestPublishedCounts(t *testing.T) {
	rows := readPublished(t)
	outside := 0
	for _, r := range rows {
		if r.outside() {
			outside++
		}
	}
	want := countPublished(rows, outside)
	t.Logf("%d rows\n%s", len(rows), want)
	if outside < publishedOutside {
		t.Errorf("%d figures from outside go through a plan, want at least %d: rows were lost", outside, publishedOutside)
	}
	for kind := range publishedKinds(t) {
		if !slices.ContainsFunc(rows, func(r *published) bool { return r.kind == kind }) {
			t.Errorf("no row is of kind %s", kind)
		}
	}
	data, err := os.ReadFile(publishedReadme)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	before, old, found := strings.Cut(text, "## Counts\n\n")
	if !found {
		t.Fatalf("%s has no section Counts", publishedReadme)
	}
	if *update {
		if err := os.WriteFile(publishedReadme, []byte(before+"## Counts\n\n"+want), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if old != want {
		t.Errorf("the counts of %s are not those of the rows: run with -update", publishedReadme)
	}
}

// outside reports whether the row is a figure that was read in a source, is right and is
// worked out through the plan of a job.
func (r *published) outside() bool {
	return r.tag == "R" && r.kind != "convert" && r.file != publishedSlips
}

func countPublished(rows []*published, outside int) string {
	var b strings.Builder
	sources := map[string]bool{}
	for _, r := range rows {
		sources[r.source] = true
	}
	fmt.Fprintf(&b, "%d rows from %d sources; %d figures read in a source go through the plan of a job.\n",
		len(rows), len(sources), outside)
	for _, by := range []struct {
		title string
		of    func(*published) string
	}{
		{"kind", func(r *published) string { return r.kind }},
		{"tag", func(r *published) string { return r.tag }},
		{"printed as", func(r *published) string { return r.rounding.name() }},
		{"file", func(r *published) string { return r.file }},
	} {
		n := map[string]int{}
		for _, r := range rows {
			n[by.of(r)]++
		}
		fmt.Fprintf(&b, "\n| %s | rows |\n|---|---|\n", by.title)
		for _, name := range slices.Sorted(maps.Keys(n)) {
			fmt.Fprintf(&b, "| %s | %d |\n", name, n[name])
		}
	}
	return b.String()
}

// check compares the plan's figure with the exact one, and the exact one, rounded
// as its source rounds, with the printed one.
func (r *published) check(t *testing.T) {
	if r.kind == "convert" {
		r.checkConverted(t)
	} else {
		r.checkPlanned(t)
	}
	if wrong := r.rounding.check(r.low, r.high, r.exact, r.places); wrong != "" {
		t.Errorf("%s(%s) is %s %s, printed %s by %s: %s", r.kind, r.input, r.exact.FloatString(9), r.unit, r.printed,
			r.source, wrong)
	}
}
