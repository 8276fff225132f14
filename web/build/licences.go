package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
)

// licences puts together the terms of everything that is in the build: this
// project's own, Go's, and those of the scripts in web/vendor.
func licences(source, goroot string) ([]byte, error) {
	paths := []string{filepath.Join(source, "..", "LICENSE"), filepath.Join(goroot, "LICENSE")}
	titles := []string{"Barrow", "Go's library and loader"}
	found, err := filepath.Glob(filepath.Join(source, "vendor", "*.LICENSE.txt"))
	if err != nil {
		return nil, err
	}
	for _, path := range found {
		paths = append(paths, path)
		name, _, _ := bytes.Cut([]byte(filepath.Base(path)), []byte("."))
		titles = append(titles, string(name))
	}
	var b bytes.Buffer
	for i, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "== %s ==\n\n%s\n\n", titles[i], bytes.TrimSpace(text))
	}
	return b.Bytes(), nil
}
