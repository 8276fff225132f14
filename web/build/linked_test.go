package main

import (
	"bytes"
	"strings"
	"testing"

	_ "example.org/barrow/wasm/answer" // so that a cached result is of the library as it is
	"example.org/barrow/web/build/compile"
)

// heavy are packages that the browser's library must not import, and what they
// bring with them, in kB of the download. An import is enough, called or not:
// a package's init function, and all that it reaches, is always linked.
var heavy = map[string]string{
	"embed":         "io/fs, time and syscall, 29 kB; keep the text as a constant, see mix/embedded_test.go",
	"encoding/json": "reflect and fmt, 270 kB; use mix/json",
	"fmt":           "os and reflect, 120 kB; join strings, or use units/message",
	"io/fs":         "time and syscall, 29 kB",
	"math/big":      "fmt and os, 19 kB before it is used; exact conversion is in units/convert",
	"os":            "syscall, time and internal/poll, 19 kB",
	"reflect":       "every method of every type that is linked",
	"regexp":        "its own machine, and sort and reflect",
	"syscall":       "a file system that no page has",
	"syscall/js":    "values and callbacks, 12 kB; wasm/main.go exports its functions without it",
	"time":          "internal/godebug and zones; the library knows no clock",

	"github.com/hashicorp/go-multierror": "fmt; several problems are doc.Problems",
}

// reached are functions that nothing may call, of packages that must be there.
var reached = map[string]string{
	"slices.pdqsort":                         "slices.Sort and SortFunc are compiled again for every type; use mix/stable",
	"slices.stableCmpFunc":                   "slices.SortStableFunc is compiled again for every type; use mix/stable",
	"sort.":                                  "package sort; use mix/stable",
	"internal/reflectlite.haveIdenticalType": "errors.As and errors.Is reflect, 10 kB; use errors.AsType",
}

// TestLinked holds what the browser downloads to packages and functions that
// earn their size.
func TestLinked(t *testing.T) {
	t.Parallel()
	deps, err := compile.Tool(compile.Plain().Env, "list", "-deps", compile.Module+"/wasm")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(deps, compile.Module+"/mix\n") {
		t.Error("go list names no library")
	}
	for pkg := range strings.FieldsSeq(deps) {
		if why, bad := heavy[pkg]; bad {
			t.Errorf("the browser's library imports %s: %s", pkg, why)
		}
	}
	made, err := once()
	if err != nil {
		t.Fatal(err)
	}
	// The table of functions has their names, each after the 0 that ends another.
	if !bytes.Contains(made.linked, []byte("\x00"+compile.Module+"/mix/stable.Sort[")) {
		t.Error("the program has no names of functions to look at")
	}
	for name, why := range reached {
		if bytes.Contains(made.linked, []byte("\x00"+name)) {
			t.Errorf("the browser's library calls %s: %s", name, why)
		}
	}
}
