package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
)

// TestSameBytes: the library answers a job with the same bytes compiled for a
// browser as compiled for this machine, whether the job is sound or not.
func TestSameBytes(t *testing.T) {
	node, err := exec.LookPath("node")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("node is not installed; on CI it must be")
		}
		t.Skip("node is not installed")
	}
	dist := t.TempDir()
	if err := build(dist); err != nil {
		t.Fatal(err)
	}
	jobs := map[string][]byte{
		"sample":    mix.Sample(),
		"empty":     nil,
		"bad field": []byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 inchs", "material": "bark-mulhc"}]}`),
		"not UTF-8": []byte("{\"name\": \"\xff\"}"),
	}
	files, _ := filepath.Glob("../../testdata/jobs/*.json")
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		jobs[filepath.Base(f)] = data
	}
	for name, job := range jobs {
		t.Run(name, func(t *testing.T) {
			cmd := exec.Command(node, "testdata/call.mjs", dist)
			cmd.Stdin = bytes.NewReader(job)
			cmd.Stderr = os.Stderr
			got, err := cmd.Output()
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(mix.Handle(job)), string(got)); diff != "" {
				t.Errorf("the reply differs (-native +wasm)\n%s", diff)
			}
		})
	}
}
