package mix_test

import (
	"os/exec"
	"runtime"
	"slices"
	"strings"
	"testing"
)

const module = "example.org/barrow"

// TestArrows: packages import one way. units and mix/json know the standard
// library alone, mix knows them and collects problems with go-multierror, the
// faces know mix, and nothing knows a face.
func TestArrows(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	may := map[string][]string{
		"/units/spell":   {},
		"/units/message": {},
		"/units":         {"/units/spell", "/units/message"},
		"/units/convert": {"/units", "/units/spell", "/units/message"},
		"/mix/json":      {"/units/message"},
		"/mix/lang":      {"/units", "/units/spell", "/units/message", "/mix/json"},
		"/mix/stable":    {},
		"/mix/sure":      {"/mix/stable"},
		"/mix/order":     {"/mix/stable", "/units", "/units/spell", "/units/message"},
		"/mix":           {"/units", "/units/spell", "/units/message", "/mix/json", "/mix/lang", "/mix/order", "/mix/sure", "/mix/stable", "github.com/hashicorp/go-multierror", "github.com/hashicorp/errwrap"},
		"/mix/picture":   {"/mix", "/units", "/units/spell", "/units/message", "/mix/json", "/mix/lang", "/mix/order", "/mix/sure", "/mix/stable", "github.com/hashicorp/go-multierror", "github.com/hashicorp/errwrap"},
		"/web/policy":    {},
	}
	for pkg, allowed := range may {
		out, err := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}", module+pkg).CombinedOutput()
		if err != nil {
			t.Fatalf("go list %s: %v\n%s", pkg, err, out)
		}
		ok := map[string]bool{module + pkg: true}
		for _, a := range allowed {
			if strings.HasPrefix(a, "/") {
				a = module + a
			}
			ok[a] = true
		}
		for dep := range strings.FieldsSeq(string(out)) {
			if !ok[dep] {
				t.Errorf("%s%s imports %s", module, pkg, dep)
			}
		}
	}
	out, err := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}", module+"/cmd/barrow", module+"/web/build").CombinedOutput()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, out)
	}
	for dep := range strings.FieldsSeq(string(out)) {
		if dep == module+"/wasm" {
			t.Error("a face imports another face")
		}
	}
	out, err = exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}}{{end}}", module+"/cmd/barrow").CombinedOutput()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, out)
	}
	for dep := range strings.FieldsSeq(string(out)) {
		for _, builder := range []string{module + "/web/build", "github.com/evanw/", "github.com/andybalholm/", "golang.org/x/image/", "golang.org/x/net/"} {
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
