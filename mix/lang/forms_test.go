package lang_test

import (
	"bytes"
	"encoding/json"
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

const module = "example.org/barrow"

// speaking are the patterns of the packages that may make sentences: the library
// and what answers the page.
var speaking = []string{module + "/units/...", module + "/mix/...", module + "/wasm/answer"}

// builtPackage is a package with its files as it is built here.
type builtPackage struct {
	path  string
	files []string
}

// speakingPackages lists the packages of speaking that are built.
func speakingPackages(t *testing.T) (list []builtPackage) {
	t.Helper()
	args := append([]string{"list", "-f", `{{.ImportPath}} {{.Dir}}{{range .GoFiles}} {{.}}{{end}}`}, speaking...)
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		pkg := builtPackage{path: words[0]}
		for _, name := range words[2:] {
			pkg.files = append(pkg.files, filepath.Join(words[1], name))
		}
		list = append(list, pkg)
	}
	return list
}

// formsInUse lists every form that the library uses: the constants of type
// message.Text, as the type checker finds them, and the catalogue's texts. The
// value is where it occurs.
func formsInUse(t *testing.T) map[string]string {
	t.Helper()
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	forms := map[string]string{}
	fset := token.NewFileSet()
	exports := exportFiles(t)
	find := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	for _, pkg := range speakingPackages(t) {
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
		files := pkg.parse(t, fset)
		if _, err := (&types.Config{Importer: find}).Check(pkg.path, fset, files, info); err != nil {
			t.Fatalf("%s: %v", pkg.path, err)
		}
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				e, ok := n.(ast.Expr)
				if !ok {
					return true
				}
				tv := info.Types[e]
				if tv.Value == nil || tv.Type.String() != module+"/units/message.Text" {
					return true
				}
				if form := constant.StringVal(tv.Value); form != "" {
					forms[form] = fset.Position(e.Pos()).String()
				}
				return false
			})
		}
	}
	cat := catalog.BuiltIn()
	add := func(text string) { forms[text] = "mix/catalog/catalog.json" }
	for _, s := range cat.Sources { // the name of a publication stays as it is
		add(s.String())
	}
	for _, r := range cat.Containers {
		add(r.Kind)
		add(r.Name)
	}
	for _, r := range cat.Materials {
		add(r.Kind)
		add(r.Name)
		add(r.Grade)
	}
	for _, r := range cat.Mixes {
		add(r.Name)
	}
	for _, r := range cat.Soils {
		add(r.Name)
	}
	for _, r := range cat.Substitutes {
		add(r.Changes)
	}
	return forms
}

// figureWords can occur in a figure. A language needs a form only for those
// that it writes differently.
func figureWords() []string {
	list := []string{"to", "or", "by", "bulk", "circle", "ellipse", "triangle", "ring", "rectangle"}
	for _, u := range units.Units() {
		list = append(list, u.Name)
	}
	return list
}

func exportFiles(t *testing.T) map[string]string {
	t.Helper()
	args := append([]string{"list", "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}"}, speaking...)
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for line := range strings.Lines(string(out)) {
		path, file, _ := strings.Cut(strings.TrimSpace(line), " ")
		files[path] = file
	}
	return files
}

// parse parses the package.
func (p *builtPackage) parse(t *testing.T, fset *token.FileSet) (files []*ast.File) {
	t.Helper()
	for _, name := range p.files {
		f, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return files
}

// TestForms compares every language file with the forms in use: none is missing
// and none is left over. [lang.Parse] compares their holes.
func TestForms(t *testing.T) {
	inUse := formsInUse(t)
	if len(inUse) < 100 {
		t.Fatalf("only %d forms found", len(inUse))
	}
	files, err := filepath.Glob("../../web/text/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no language files", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := lang.Parse(data); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		var file struct{ Library map[string]string }
		if err := json.Unmarshal(data, &file); err != nil {
			t.Fatal(err)
		}
		var missing []string
		for form, at := range inUse {
			if _, ok := file.Library[form]; !ok {
				missing = append(missing, jsonText(form)+"  "+at)
			}
		}
		slices.Sort(missing)
		for _, m := range missing {
			t.Errorf("%s lacks %s", name, m)
		}
		may := figureWords()
		for form := range file.Library {
			if _, ok := inUse[form]; !ok && !slices.Contains(may, form) {
				t.Errorf("%s has a form that nothing says: %s", name, jsonText(form))
			}
		}
	}
}

func jsonText(s string) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	_ = e.Encode(s)
	return strings.TrimSpace(b.String())
}
