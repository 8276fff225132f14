package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/hashicorp/go-multierror"
	"github.com/stretchr/testify/require"
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

// TestPlaceTellsAll: each file that cannot be written is told, and then nothing is
// placed.
func TestPlaceTellsAll(t *testing.T) {
	dir := t.TempDir()
	made := files{"a": []byte("1"), "a/b": []byte("2"), "a/c/d": []byte("3"), "e": []byte("4")}
	err := place(made, filepath.Join(dir, "dist"))
	var list *multierror.Error
	require.ErrorAs(t, err, &list)
	require.Len(t, list.Errors, 2)
	require.Len(t, strings.Split(err.Error(), "\n"), 2)
	require.Empty(t, held(t, dir))
	require.NoError(t, files{"a": nil}.write(dir))
}
