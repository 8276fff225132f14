// Package compile has the go command make programs for a browser.
package compile

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Module is the path of this module.
const Module = "example.org/barrow"

// Settings are how a program is compiled: arguments of go build, and what they
// need in the environment.
type Settings struct {
	Flags []string          `json:"flags"`
	Env   map[string]string `json:"env"`
}

// Plain compiles a program as Go does it: but no symbols, no paths of this machine,
// nothing of the state of the clone.
func Plain() Settings {
	return Settings{
		Flags: []string{"-trimpath", "-buildvcs=false", "-ldflags=-s -w"},
		Env:   map[string]string{"GOOS": "js", "GOARCH": "wasm"},
	}
}

// Small compiles a program as small as the compiler makes it: nothing inlined,
// which is a tenth less to send, and no second copy of the code around every make
// of a size known only when it runs, half a per cent.
func Small() (Settings, error) {
	s := Plain()
	s.Flags = append(s.Flags, "-gcflags=all=-l -d=variablemakethreshold=0")
	s.Env["GOEXPERIMENT"] = ""
	version, err := Tool(nil, "env", "GOVERSION")
	if strings.HasPrefix(version, "go1.26") {
		// The collector of before, 8 kB smaller; later versions have no choice.
		s.Env["GOEXPERIMENT"] = "nogreenteagc"
	}
	return s, err
}

// Program compiles a package, or a file, into a program.
func (s Settings) Program(pkg string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "barrow-wasm-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "out.wasm")
	args := append([]string{"build", "-o", out}, s.Flags...)
	if _, err := Tool(s.Env, append(args, pkg)...); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// Page compiles the library for the page.
func Page() ([]byte, error) {
	s, err := Small()
	if err != nil {
		return nil, err
	}
	return s.Program(Module + "/wasm")
}

// Empty compiles a program that does nothing: the least that Go can be in a
// browser.
func Empty() ([]byte, error) {
	dir, err := os.MkdirTemp("", "barrow-empty-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	name := filepath.Join(dir, "main.go")
	if err := os.WriteFile(name, []byte("package main\n\nfunc main() {}\n"), 0o666); err != nil {
		return nil, err
	}
	return Plain().Program(name)
}

// Loader is Go's own loader, of the Go that compiles, since the two must match.
func Loader(goroot string) string { return filepath.Join(goroot, "lib", "wasm", "wasm_exec.js") }

// Tool runs the go command and returns the line it prints.
func Tool(env map[string]string, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Env = os.Environ()
	for name, value := range env {
		cmd.Env = append(cmd.Env, name+"="+value)
	}
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", args[0], err, said.Bytes())
	}
	return strings.TrimSpace(out.String()), nil
}
