package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

const modulePath = "example.org/barrow"

// compilerFlags are for size: nothing inlined, which is a tenth less to send, and
// no second copy of the code around every make of a size known only when it
// runs, half a per cent.
const compilerFlags = "all=-l -d=variablemakethreshold=0"

// compileSmall builds a program for a browser as small as the compiler makes it.
func compileSmall(pkg string) ([]byte, error) {
	env := []string{"GOEXPERIMENT="}
	if version, err := goTool(nil, "env", "GOVERSION"); err != nil {
		return nil, err
	} else if strings.HasPrefix(version, "go1.26") {
		// The collector of before, 8 kB smaller; later versions have no choice.
		env = []string{"GOEXPERIMENT=nogreenteagc"}
	}
	return compile(pkg, env, "-gcflags="+compilerFlags)
}

// compile builds a program for a browser: no symbols, no paths of this
// machine, nothing of the state of the clone.
func compile(pkg string, env []string, flags ...string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "barrow-wasm-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "out.wasm")
	args := append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", out}, flags...)
	if _, err := goTool(append([]string{"GOOS=js", "GOARCH=wasm"}, env...), append(args, pkg)...); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// emptyProgram compiles a program that does nothing: the least that Go can be
// in a browser.
func emptyProgram() ([]byte, error) {
	dir, err := os.MkdirTemp("", "barrow-empty-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	name := filepath.Join(dir, "main.go")
	if err := os.WriteFile(name, []byte("package main\n\nfunc main() {}\n"), 0o666); err != nil {
		return nil, err
	}
	return compile(name, nil)
}

// loaderOf is Go's own loader, of the Go that compiles, since the two must match.
func loaderOf(goroot string) string { return filepath.Join(goroot, "lib", "wasm", "wasm_exec.js") }

// sourceDir finds the page's sources, from anywhere in a clone.
func sourceDir() (string, error) {
	dir, err := goTool(nil, "list", "-f", "{{.Dir}}", modulePath+"/web/build")
	return filepath.Dir(dir), err
}

// goTool runs the go command and returns the line it prints.
func goTool(env []string, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Env = append(os.Environ(), env...)
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", args[0], err, said.Bytes())
	}
	return strings.TrimSpace(out.String()), nil
}
