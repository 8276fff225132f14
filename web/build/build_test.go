package main

import (
	"bytes"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/wasm/answer"
	"example.org/barrow/web/test"
)

var once = sync.OnceValues(func() (output, error) {
	source, err := sourceDir()
	if err != nil {
		return output{}, err
	}
	return build(source)
})

// built is everything, built once for all tests, for each to change.
func built(t *testing.T) files {
	t.Helper()
	made, err := once()
	if err != nil {
		t.Fatal(err)
	}
	return maps.Clone(made.files)
}

// TestSameEveryTime: a second build has the same bytes, so that a version is
// new only when something is.
func TestSameEveryTime(t *testing.T) {
	t.Parallel()
	first := built(t)
	source, err := sourceDir()
	if err != nil {
		t.Fatal(err)
	}
	second, err := build(source)
	if err != nil {
		t.Fatal(err)
	}
	again := second.files
	if diff := cmp.Diff(first.names(), again.names()); diff != "" {
		t.Fatalf("files differ (-first +again)\n%s", diff)
	}
	for name := range first {
		if !bytes.Equal(first[name], again[name]) {
			t.Errorf("%s differs", name)
		}
	}
}

// TestBuildTellsAll: of steps that do not need one another, all that fail are told.
func TestBuildTellsAll(t *testing.T) {
	t.Parallel()
	source := filepath.Join(t.TempDir(), "web")
	if err := os.MkdirAll(filepath.Join(source, "text"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(source, "text", "xx.json"), []byte("no language"), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"a.webmanifest", "b.webmanifest"} { // folders, not files
		if err := os.Mkdir(filepath.Join(source, name), 0o777); err != nil {
			t.Fatal(err)
		}
	}
	_, err := pageFiles(source)
	for _, want := range []string{"early.js", "start.js", "worker.js", "style.css", "text/xx.json", "LICENSE",
		"a.webmanifest", "b.webmanifest"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("nothing about %s in %v", want, err)
		}
	}
	err = files{"style.css": []byte("</style>")}.wrap(mustSource(t))
	for _, want := range []string{"index.html: ", "barrow.html: "} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("nothing about %s in %v", want, err)
		}
	}
}

// TestSameBytes: the library answers a job with the same bytes in the built
// worker as compiled for this machine, whether the job is sound or not.
func TestSameBytes(t *testing.T) {
	t.Parallel()
	node := test.Node(t)
	dist := t.TempDir()
	if err := place(built(t), dist); err != nil {
		t.Fatal(err)
	}
	jobs := map[string][]byte{
		"sample":    mix.Sample(),
		"empty":     nil,
		"bad field": []byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 inchs", "material": "bark-mulhc"}]}`),
		"not UTF-8": []byte("{\"name\": \"\xff\"}"),
	}
	found, _ := filepath.Glob("../../testdata/jobs/*.json")
	if len(found) == 0 {
		t.Fatal("no jobs in testdata")
	}
	for _, f := range found {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(f)] = data
	}
	dir := t.TempDir()
	for name, job := range jobs {
		if err := os.WriteFile(filepath.Join(dir, name), job, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	verbs := []string{"plan", "full", "csv", "catalog", "no verb"}
	cmd := exec.Command(node, append([]string{"testdata/call.mjs", dist, dir}, verbs...)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, verb := range verbs {
		t.Run(verb, func(t *testing.T) {
			for name, job := range jobs {
				got, err := os.ReadFile(filepath.Join(dir, name+"."+verb+".reply"))
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff(string(new(answer.Session).Answer(verb, job)), string(got)); diff != "" {
					t.Errorf("the reply to %s differs (-native +wasm)\n%s", name, diff)
				}
			}
		})
	}
}
