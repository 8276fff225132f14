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

var update = flag.Bool("update", false, "write the golden files anew")

const goldenDir = "../../testdata/golden"

// formats are the ways a plan is written, by the golden file's ending.
var formats = []struct {
	ending string
	flags  []string
	people bool // to be read at a terminal
}{
	{".txt", nil, true},
	{".working.txt", []string{"--working"}, true},
	{".json", []string{"--json"}, false},
	{".csv", []string{"--csv"}, false},
}

// leastJobs is how many jobs there are at least, so that a moved folder does
// not pass for a test.
const leastJobs = 9

// TestGolden holds the plan of every good job, and of the sample, to its
// golden files byte for byte; go test ./cmd/barrow -run TestGolden -update
// writes them anew.
func TestGolden(t *testing.T) {
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
		for _, f := range formats {
			known[name+f.ending] = true
			t.Run(name+f.ending, func(t *testing.T) {
				got := planOf(t, append([]string{"plan", job}, f.flags...))
				if f.people {
					if line := tooLong(got, width); line != "" {
						t.Errorf("a line of more than %d columns: %s", width, line)
					}
				}
				if f.ending == ".json" && !json.Valid([]byte(got)) {
					t.Error("not JSON")
				}
				golden(t, filepath.Join(goldenDir, name+f.ending), got)
			})
		}
	}
	stale(t, known)
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
func stale(t *testing.T, known map[string]bool) {
	files, err := os.ReadDir(goldenDir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		switch name := filepath.Join(goldenDir, f.Name()); {
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
