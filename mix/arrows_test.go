package mix_test

import (
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strings"
	"testing"
)

const module = "example.org/barrow"

// Packages that most others know.
const (
	quantities = "/units /units/spell /units/message "
	leaves     = quantities + "/mix/json /mix/lang /mix/stable "
	rows       = leaves + "/mix/doc /mix/ground "
	work       = rows + "/mix/catalog "
	everything = work + "/mix /mix/task /mix/yard "
)

// arrows says what each package of the library imports at the most. It is closed:
// what is not in it is not imported, nor is any other module.
var arrows = map[string]string{
	"/units/spell":   "",
	"/units/message": "",
	"/units":         "/units/spell /units/message",
	"/units/convert": quantities,
	"/mix/json":      "/units/message",
	"/mix/lang":      quantities + "/mix/json",
	"/mix/stable":    "",
	"/mix/sure":      "/mix/stable",
	"/mix/order":     quantities + "/mix/stable",
	"/mix/doc":       leaves,
	"/mix/ground":    leaves + "/mix/doc",
	"/mix/catalog":   rows,
	"/mix/task":      work,
	"/mix/yard":      leaves + "/mix/doc /mix/catalog /mix/order",
	"/mix":           work + "/mix/task /mix/yard /mix/sure",
	"/mix/report":    everything,
	"/mix/picture":   everything,
	"/web/policy":    "",
}

// TestArrows: packages import one way. Kinds of work and the yard do not know each
// other, and only what shows a plan knows mix.
func TestArrows(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	imports := importsOf(t, "", "/...")
	for pkg, allowed := range arrows {
		list, ok := imports[pkg]
		if !ok {
			t.Errorf("there is no package %s", pkg)
		}
		for _, path := range list {
			if !slices.Contains(strings.Fields(allowed), path) {
				t.Errorf("%s imports %s", pkg, path)
			}
		}
	}
	for pkg := range imports {
		_, ok := arrows[pkg]
		if !ok && (strings.HasPrefix(pkg, "/units") || strings.HasPrefix(pkg, "/mix")) {
			t.Errorf("nothing says what %s may import", pkg)
		}
	}
	for pkg, list := range importsOf(t, "js", "/wasm/...") {
		imports[pkg] = list
	}
	for pkg, list := range imports {
		users := []string{"/mix/report", "/mix/picture", "/cmd/barrow", "/wasm/answer"}
		if slices.Contains(list, "/mix") && !slices.Contains(users, pkg) {
			t.Errorf("%s imports /mix", pkg)
		}
	}
}

// importsOf lists what the packages of a pattern import besides the standard
// library, those of this module without its name; goos is where they are built
// for, "" for here.
func importsOf(t *testing.T, goos, pattern string) map[string][]string {
	t.Helper()
	cmd := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, module+pattern)
	if goos == "js" {
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	}
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list %s: %v", pattern, err)
	}
	imports := map[string][]string{}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		list := []string{}
		for _, path := range words[1:] {
			if first, _, _ := strings.Cut(path, "/"); strings.Contains(first, ".") {
				list = append(list, strings.TrimPrefix(path, module))
			}
		}
		imports[strings.TrimPrefix(words[0], module)] = list
	}
	return imports
}

// TestFaces: no face imports another, and the command line imports nothing that
// builds the page.
func TestFaces(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	out, err := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}",
		module+"/cmd/barrow", module+"/web/build").CombinedOutput()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, out)
	}
	for dep := range strings.FieldsSeq(string(out)) {
		if dep == module+"/wasm" {
			t.Error("a face imports another face")
		}
	}
	out, err = exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}",
		module+"/cmd/barrow").CombinedOutput()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, out)
	}
	for dep := range strings.FieldsSeq(string(out)) {
		for _, builder := range []string{module + "/web/build", "github.com/evanw/", "github.com/andybalholm/",
			"golang.org/x/image/", "golang.org/x/net/"} {
			if strings.HasPrefix(dep, builder) {
				t.Errorf("the command line imports %s", dep)
			}
		}
	}
}

// TestLean: parts of the browser's download import little, and what they import
// is part of what they keep; mix/order is held to integers besides.
func TestLean(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	may := map[string]string{
		"/mix/json":    "cmp errors math slices strconv strings unicode/utf8",
		"/mix/order":   "cmp math math/bits slices strconv",
		"/mix/picture": "math strconv unicode/utf8",
	}
	for pkg, allowed := range may {
		out, err := exec.Command("go", "list", "-f", `{{join .Imports "\n"}}`, module+pkg).CombinedOutput()
		if err != nil {
			t.Fatalf("go list %s: %v\n%s", pkg, err, out)
		}
		for path := range strings.FieldsSeq(string(out)) {
			if !strings.HasPrefix(path, module) && !slices.Contains(strings.Fields(allowed), path) {
				t.Errorf("%s%s imports %s", module, pkg, path)
			}
		}
	}
}
