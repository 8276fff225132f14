package mix_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
)

// codeFiles have the constants of all codes of problems, one block a package.
var codeFiles = []string{"units/code.go", "mix/json/code.go", "mix/doc/code.go", "wasm/answer/code.go"}

// codeConst is one constant.
type codeConst struct{ pkg, name, code string }

// TestCodes: every code of a problem is a constant, called as it is spelled; it
// is reported somewhere, never as a literal, and a test expects it. What tests
// expect is one of the constants.
func TestCodes(t *testing.T) {
	list := codeConsts(t)
	known := map[string]string{}
	for _, c := range list {
		if other, twice := known[c.code]; twice {
			t.Errorf("%s.%s is the code of %s, %s", c.pkg, c.name, other, c.code)
		}
		known[c.code] = c.pkg + "." + c.name
		if want := nameOfCode(c.pkg, c.code); c.name != want {
			t.Errorf("%s is called %s.%s, want %s", c.code, c.pkg, c.name, want)
		}
	}
	reported := reportedCodes(t, known)
	expected := expectedCodes(t)
	for _, c := range list {
		if !reported[c.pkg+"."+c.name] {
			t.Errorf("%s.%s is reported nowhere", c.pkg, c.name)
		}
		if !expected[c.code] {
			t.Errorf("no test expects %s", c.code)
		}
	}
	families := map[string]bool{}
	for _, c := range list {
		family, _, _ := strings.Cut(c.code, ".")
		families[family] = true
	}
	for word := range expected {
		family, rest, _ := strings.Cut(word, ".")
		file := rest == "json" || rest == "js"
		looks := families[family] && rest != "" && !strings.Contains(rest, ".") && !file
		if looks && known[word] == "" && !isPath(family, rest) {
			t.Errorf("a test expects %s, which is no code", word)
		}
	}
}

// codeConsts reads the constants, and that each has its one line.
func codeConsts(t *testing.T) (list []codeConst) {
	for _, name := range codeFiles {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", name), nil, parser.ParseComments)
		require.NoError(t, err)
		if len(file.Decls) != 1 {
			t.Errorf("%s: %d declarations, want one block of constants", name, len(file.Decls))
		}
		for _, spec := range file.Decls[0].(*ast.GenDecl).Specs {
			v := spec.(*ast.ValueSpec)
			code, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
			require.NoError(t, err)
			if v.Comment == nil || len(v.Comment.List) != 1 {
				t.Errorf("%s: %s has no line that says when it is reported", name, v.Names[0].Name)
			}
			list = append(list, codeConst{file.Name.Name, v.Names[0].Name, code})
		}
	}
	require.Greater(t, len(list), 90)
	return list
}

// nameOfCode is what a constant is called: FieldMissing for field.missing; in
// package json, Syntax for json.syntax.
func nameOfCode(pkg, code string) (name string) {
	between := func(r rune) bool { return r == '.' || r == '_' }
	for _, word := range strings.FieldsFunc(strings.TrimPrefix(code, pkg+"."), between) {
		switch word {
		case "id", "json", "utf8", "bom":
			name += strings.ToUpper(word)
		default:
			name += strings.ToUpper(word[:1]) + word[1:]
		}
	}
	return name
}

// reporters are the functions that report a problem, with which of their
// arguments is the code.
var reporters = map[string]int{"Problem": 0, "ProblemAt": 1, "Here": 0, "Unknown": 0, "fault": 0, "fail": 0,
	"refuse": 0, "report": 0, "problem": 0}

// reportedCodes lists the constants that the module uses, as package and name, and
// finds codes that are no constants.
func reportedCodes(t *testing.T, known map[string]string) map[string]bool {
	used := map[string]bool{}
	for _, name := range sources(t, func(name string) bool {
		return strings.HasSuffix(name, ".go") && !strings.HasSuffix(name, "_test.go") &&
			!slices.Contains(codeFiles, name)
	}) {
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, filepath.Join("..", name), nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BasicLit:
				if text, err := strconv.Unquote(n.Value); err == nil && known[text] != "" {
					t.Errorf("%s: %s is a literal, want %s", set.Position(n.Pos()), n.Value, known[text])
				}
			case *ast.CallExpr:
				if i, ok := reporters[lastName(n.Fun)]; ok && i < len(n.Args) {
					notLiteral(t, set, n.Args[i])
				}
			case *ast.CompositeLit:
				if slices.Contains([]string{"Problem", "Error", "Fault"}, lastName(n.Type)) {
					for _, e := range n.Elts {
						if field, ok := e.(*ast.KeyValueExpr); ok && lastName(field.Key) == "Code" {
							notLiteral(t, set, field.Value)
						}
					}
				}
			case *ast.SelectorExpr:
				used[lastName(n.X)+"."+n.Sel.Name] = true
			case *ast.Ident:
				used[file.Name.Name+"."+n.Name] = true
			}
			return true
		})
	}
	return used
}

func notLiteral(t *testing.T, set *token.FileSet, e ast.Expr) {
	if lit, ok := e.(*ast.BasicLit); ok && lit.Kind == token.STRING {
		t.Errorf("%s: a problem is reported as %s, which is no constant", set.Position(lit.Pos()), lit.Value)
	}
}

// lastName is the name at the end of an expression, "" where there is none.
func lastName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// expectedCodes lists the words that tests and command scripts have, made of the
// letters of codes.
func expectedCodes(t *testing.T) map[string]bool {
	words := map[string]bool{}
	add := func(text string) {
		between := func(r rune) bool { return !strings.ContainsRune(letters+".", r) }
		for _, word := range strings.FieldsFunc(text, between) {
			words[word] = true
		}
	}
	for _, name := range sources(t, func(name string) bool { return strings.HasSuffix(name, "_test.go") }) {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", name), nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				text, err := strconv.Unquote(lit.Value)
				require.NoError(t, err)
				add(text)
			}
			return true
		})
	}
	for _, name := range sources(t, func(name string) bool { return path.Ext(name) == ".txtar" }) {
		text, err := os.ReadFile(filepath.Join("..", name))
		require.NoError(t, err)
		for line := range strings.Lines(string(text)) {
			if strings.HasPrefix(line, "problems ") || strings.HasPrefix(line, "json ") {
				add(line)
			}
		}
	}
	return words
}

// letters are those of codes.
const letters = "abcdefghijklmnopqrstuvwxyz_0123456789"

// isPath reports whether a word is the path of a field in a job document.
func isPath(field, inner string) bool {
	top, deep := false, false
	for i, o := range mix.Objects() {
		for _, f := range o.Fields() {
			top = top || i == 0 && f.Name == field
			deep = deep || i > 0 && f.Name == inner
		}
	}
	return top && deep
}

// sources lists the files of the module that are wanted, by their paths in it.
func sources(t *testing.T, wanted func(name string) bool) (names []string) {
	t.Helper()
	err := fs.WalkDir(os.DirFS(".."), ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "node_modules" || strings.HasPrefix(d.Name(), ".") && name != "."):
			return fs.SkipDir
		case !d.IsDir() && wanted(name):
			names = append(names, name)
		}
		return nil
	})
	require.NoError(t, err)
	require.NotEmpty(t, names)
	return names
}
