package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// heavy are packages that the browser's library must not import, and what they
// bring with them, in kB of the download. An import is enough, called or not:
// a package's init function, and all that it reaches, is always linked.
var heavy = map[string]string{
	"embed":         "io/fs, time and syscall, 29 kB; keep the text as a constant, see mix/embedded_test.go",
	"encoding/json": "reflect and fmt, 270 kB; use mix/wire",
	"fmt":           "os and reflect, 120 kB; join strings, or use units/say",
	"io/fs":         "time and syscall, 29 kB",
	"math/big":      "fmt and os, 19 kB before it is used; exact conversion is in units/convert",
	"os":            "syscall, time and internal/poll, 19 kB",
	"reflect":       "every method of every type that is linked",
	"regexp":        "its own machine, and sort and reflect",
	"syscall":       "a file system that no page has",
	"syscall/js":    "12 kB; functions are exported, and memory is written to",
	"time":          "internal/godebug and zones; the library knows no clock",

	"github.com/hashicorp/go-multierror": "fmt; mix/problem_list_js.go stands in for it",
}

// TestLinked holds what the browser downloads to packages that earn their size.
func TestLinked(t *testing.T) {
	cmd := exec.Command("go", "list", "-deps", "example.org/barrow/wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	var said strings.Builder
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, said.String())
	}
	linked := map[string]bool{}
	for pkg := range strings.FieldsSeq(string(out)) {
		linked[pkg] = true
		if why, bad := heavy[pkg]; bad {
			t.Errorf("the browser's library imports %s, which brings %s", pkg, why)
		}
	}
	if !linked["example.org/barrow/mix"] {
		t.Errorf("go list names %d packages, without the library", len(linked))
	}
}
