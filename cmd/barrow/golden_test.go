package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files again")

const goldenDir = "../../testdata/golden"

// endings of the golden files of a job. A caution stands in the .json alone, so
// that a new one changes one file of a job:
//
//	.json         the plan document, whole
//	.csv          the spreadsheet, whole
//	.txt          the text, down to the heading over the cautions
//	.working.txt  what --working adds to that text
var endings = []string{".json", ".csv", ".txt", ".working.txt"}

// leastJobs is how many jobs there are at least, so that a moved folder does
// not pass for a test.
const leastJobs = 9

// TestGolden compares the plan of every good job, and of the sample, with its
// golden files byte for byte. go test ./cmd/barrow -run TestGolden -update
// writes them again.
func TestGolden(t *testing.T) {
	t.Parallel()
	cases := map[string]string{"sample": "--sample"}
	jobs, err := filepath.Glob(filepath.Join(jobDir, "good-*.json"))
	if err != nil || len(jobs) < leastJobs {
		t.Fatalf("%d good jobs in %s, want at least %d; %v", len(jobs), jobDir, leastJobs, err)
	}
	for _, job := range jobs {
		cases[strings.TrimSuffix(filepath.Base(job), ".json")] = job
	}
	known := map[string]bool{}
	for name, job := range cases {
		for _, ending := range endings {
			known[name+ending] = true
		}
		t.Run(name, func(t *testing.T) { goldenJob(t, name, job) })
	}
	stale(t, goldenDir, known)
}

// goldenJob holds one job's plan, in all the ways it is written, to its golden
// files and to each other.
func goldenJob(t *testing.T, name, job string) {
	of := func(ending string, flags ...string) string {
		text := planOf(t, append([]string{"plan", job}, flags...))
		if strings.HasSuffix(ending, ".txt") { // to be read at a terminal
			if line := tooLong(text, width); line != "" {
				t.Errorf("%s: a line of more than %d columns: %s", ending, width, line)
			}
		}
		return text
	}
	document, csv := of(".json", "--json"), of(".csv", "--csv")
	plain, working := of(".txt"), of(".working.txt", "--working")
	golden(t, filepath.Join(goldenDir, name+".json"), document)
	golden(t, filepath.Join(goldenDir, name+".csv"), csv)

	head, cautions := cutAfter(t, plain, "Take care\n")
	golden(t, filepath.Join(goldenDir, name+".txt"), head)
	if diff := cmp.Diff(cautionLines(t, document, false), cautions); diff != "" {
		t.Errorf("the text takes care of other things than the document, -document +text:\n%s", diff)
	}
	workingHead, rest := cutAfter(t, working, "Take care\n")
	cautions, steps := cutBefore(t, rest, "\nHow it is worked out\n")
	golden(t, filepath.Join(goldenDir, name+".working.txt"), added(t, head, workingHead)+steps)
	if diff := cmp.Diff(cautionLines(t, document, true), cautions); diff != "" {
		t.Errorf("with the working, the text takes care of other things than the document, -document +text:\n%s", diff)
	}
}

// cutAfter cuts text after the one line that mark is.
func cutAfter(t *testing.T, text, mark string) (head, tail string) {
	t.Helper()
	head, tail = cutBefore(t, text, "\n"+mark)
	return head + "\n" + mark, tail[len("\n"+mark):]
}

// cutBefore cuts text before mark, which stands in it once.
func cutBefore(t *testing.T, text, mark string) (head, tail string) {
	t.Helper()
	if n := strings.Count(text, mark); n != 1 {
		t.Fatalf("%q stands %d times in the text, want once", mark, n)
	}
	at := strings.Index(text, mark)
	return text[:at], text[at:]
}

// cautionLines are the cautions of a plan document as a text has them: each with
// a mark, wrapped, and with its source where the working is shown.
func cautionLines(t *testing.T, document string, working bool) string {
	t.Helper()
	var d struct {
		Cautions []struct{ Code, Text, Source string }
	}
	if err := json.Unmarshal([]byte(document), &d); err != nil || len(d.Cautions) == 0 {
		t.Fatalf("%d cautions in the document: %v", len(d.Cautions), err)
	}
	var b strings.Builder
	for _, c := range d.Cautions {
		if working && c.Source != "" {
			c.Text += " (" + c.Source + ")"
		}
		mark := "  ! "
		for _, line := range wrap(c.Text, width-len(mark)) {
			b.WriteString(mark + line + "\n")
			mark = "    "
		}
	}
	return b.String()
}

// added returns the lines that a text with the working has more than one
// without: at most one block, at the end of what is said of how sure the order
// is. All other lines are the same.
func added(t *testing.T, without, with string) string {
	t.Helper()
	start := len(without) - len(afterSame(without, with))
	start = strings.LastIndex(without[:start], "\n") + 1
	end := len(with) - (len(without) - start) // of the block
	if end < start || with[end:] != without[start:] {
		t.Errorf("the working changes lines of the text, -without +with:\n%s", cmp.Diff(without, with))
		return with
	}
	section := without[strings.LastIndex(without[:start], "\n\n")+len("\n\n"):]
	if end > start && !(strings.HasPrefix(section, "How sure\n") && strings.HasPrefix(with[end:], "\n")) {
		t.Errorf("the working adds lines elsewhere than at the end of how sure the order is:\n%s", with[start:end])
	}
	return with[start:end]
}

// afterSame is what s has after all that it starts with as with does.
func afterSame(s, with string) string {
	for len(s) > 0 && len(with) > 0 && s[0] == with[0] {
		s, with = s[1:], with[1:]
	}
	return s
}

// planOf runs the program twice: one job, one plan, the same bytes.
func planOf(t *testing.T, args []string) string {
	t.Helper()
	var plans [2]string
	for i := range plans {
		var out, errOut bytes.Buffer
		if got := run(args, strings.NewReader(""), &out, &errOut); got != exitDone || errOut.Len() > 0 {
			t.Fatalf("run(%q) = %d, and on standard error:\n%s", args, got, errOut.String())
		}
		plans[i] = out.String()
	}
	if diff := cmp.Diff(plans[0], plans[1]); diff != "" {
		t.Errorf("run(%q) twice, -first +second:\n%s", args, diff)
	}
	if why := notPlain(plans[0]); why != "" {
		t.Errorf("run(%q): %s", args, why)
	}
	return plans[0]
}

// golden compares with one golden file, or writes it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatalf("no golden file: %v", err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s, -want +got:\n%s", filepath.Base(name), diff)
	}
}

// stale reports golden files that no case has, or with -update removes them.
func stale(t *testing.T, dir string, known map[string]bool) {
	t.Helper()
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		switch name := filepath.Join(dir, f.Name()); {
		case known[f.Name()]:
		case *update:
			if err := os.Remove(name); err != nil {
				t.Error(err)
			}
		default:
			t.Errorf("%s belongs to no job", name)
		}
	}
}
