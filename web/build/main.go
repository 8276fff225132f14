// Command build makes the folder that a browser loads: the library as
// WebAssembly and the loader that Go ships for it.
//
//	go run ./web/build -out dist
package main

import (
	"compress/gzip"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

func main() {
	out := flag.String("out", "dist", "folder to write")
	flag.Parse()
	if err := build(*out); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
	if err := report(*out); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

// build writes barrow.wasm and wasm_exec.js to out. The loader comes from the
// Go that compiles, since the two must match.
func build(out string) error {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", filepath.Join(out, "barrow.wasm"), "example.org/barrow/wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("go build: %w", err)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("go env: %w", err)
	}
	loader, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(out, "wasm_exec.js"), loader, 0o644)
}

// report prints what there is to download.
func report(out string) error {
	for _, name := range []string{"barrow.wasm", "wasm_exec.js"} {
		data, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			return err
		}
		var small counter
		z, err := gzip.NewWriterLevel(&small, gzip.BestCompression)
		if err != nil {
			return err
		}
		if _, err := z.Write(data); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		fmt.Printf("%-14s %9d bytes, %8d with gzip\n", name, len(data), small)
	}
	return nil
}

// counter counts what is written to it.
type counter int

func (c *counter) Write(b []byte) (int, error) {
	*c += counter(len(b))
	return len(b), nil
}
