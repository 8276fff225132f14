package wire_test

import (
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The package is there to keep the download small, so what it imports is part
// of its contract.
func TestImports(t *testing.T) {
	allowed := []string{"cmp", "errors", "math", "slices", "strconv", "strings", "unicode/utf8", "example.org/barrow/units/say"}
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
			if path, _ := strconv.Unquote(spec.Path.Value); !slices.Contains(allowed, path) {
				t.Errorf("%s imports %s, which is not one of %v", e.Name(), path, allowed)
			}
		}
	}
	if files == 0 {
		t.Error("no files to check")
	}
}
