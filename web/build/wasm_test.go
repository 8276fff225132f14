package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestCompile: the same program each time, with no path of this machine in it,
// and the compiler's own words where it fails.
func TestCompile(t *testing.T) {
	first, err := emptyProgram()
	if err != nil {
		t.Fatal(err)
	}
	again, err := emptyProgram()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(first, []byte("\x00asm")) || !bytes.Equal(first, again) {
		t.Error("two builds of the empty program differ, or are no programs")
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	program := built(t)["barrow.wasm"]
	for _, path := range []string{here, os.TempDir() + "/barrow-"} {
		if bytes.Contains(program, []byte(path)) {
			t.Errorf("%s is in the program", path)
		}
	}
	if len(program) <= len(first) {
		t.Errorf("the program has %d bytes, an empty one %d", len(program), len(first))
	}
	if _, err := compileSmall(modulePath + "/none"); err == nil || !strings.Contains(err.Error(), "none") {
		t.Errorf("compile of nothing: %v", err)
	}
}
