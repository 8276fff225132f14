package picture_test

import (
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestImports: the package goes into a browser's download, so what it imports is
// part of what it keeps.
func TestImports(t *testing.T) {
	allowed := []string{"math", "strconv", "unicode/utf8"}
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	files := 0
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		files++
		file, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range file.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			if !slices.Contains(allowed, path) && !strings.HasPrefix(path, "example.org/barrow/") {
				t.Errorf("%s imports %s, which is not one of %v", e.Name(), path, allowed)
			}
		}
	}
	if files == 0 {
		t.Error("no files to check")
	}
}
