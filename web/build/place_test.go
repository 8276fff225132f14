package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// held lists a folder's files and what is in them.
func held(t *testing.T, dir string) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		found[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// TestPlace: a build is there whole, and nothing of the one before; what is no
// build is left alone.
func TestPlace(t *testing.T) {
	build := files{"barrow.wasm": []byte("1"), "text/es.json": []byte("2")}
	want := map[string]string{"dist/barrow.wasm": "1", "dist/text/es.json": "2"}
	for _, test := range []struct {
		name   string
		before map[string]string
		fails  bool
	}{
		{"nothing there", nil, false},
		{"an older build", map[string]string{"dist/barrow.wasm": "0", "dist/old.js": "0"}, false},
		{"somebody's folder", map[string]string{"dist/letter.txt": "0"}, true},
		{"a file of that name", map[string]string{"dist": "0"}, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			dir := t.TempDir()
			for name, data := range test.before {
				path := filepath.Join(dir, name)
				if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path, []byte(data), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			err := place(build, filepath.Join(dir, "dist"))
			if test.fails != (err != nil) {
				t.Fatalf("place: %v", err)
			}
			after := want
			if test.fails {
				after = test.before
			}
			if diff := cmp.Diff(after, held(t, dir)); diff != "" {
				t.Errorf("the folder (-want +got)\n%s", diff)
			}
		})
	}
}
