package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestLicences: the terms of every script in web/vendor, of Go and of the
// project are in the folder, and in the single file.
func TestLicences(t *testing.T) {
	made := built(t)
	scripts, err := filepath.Glob(filepath.Join(mustSource(t), "vendor", "*.js"))
	if err != nil || len(scripts) == 0 {
		t.Fatalf("no scripts in web/vendor: %v", err)
	}
	for _, s := range scripts {
		terms := strings.TrimSuffix(s, ".js") + ".LICENSE.txt"
		if _, err := os.Stat(terms); err != nil {
			t.Errorf("%s has no terms: %v", filepath.Base(s), err)
		}
		title := "== " + strings.TrimSuffix(filepath.Base(s), ".js") + " =="
		if !strings.Contains(string(made["licences.txt"]), title) {
			t.Errorf("licences.txt lacks %q", title)
		}
	}
	for _, holder := range []string{"Barrow", "The Go Authors"} {
		if !strings.Contains(string(made["licences.txt"]), holder) {
			t.Errorf("licences.txt lacks %s", holder)
		}
	}
	for _, e := range elements(t, made["barrow.html"]) {
		if attr(e.Token, "id") == "licences" {
			if e.text != string(made["licences.txt"]) {
				t.Errorf("the single file has other terms: %.80q", e.text)
			}
			return
		}
	}
	t.Error("the single file has no terms")
}
