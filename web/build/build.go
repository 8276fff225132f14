package main

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/barrow/web/build/compile"
	"example.org/barrow/web/build/shrink"
)

// files is a built folder: what is in each file, by its path with slashes.
type files map[string][]byte

// names lists the files in order.
func (f files) names() []string { return slices.Sorted(maps.Keys(f)) }

// Files that a visit does not download.
var besides = []string{"barrow.html", "licences.txt"}

// visited lists what a first visit downloads, the service worker's script too.
func (f files) visited() []string {
	return slices.DeleteFunc(f.names(), func(name string) bool { return slices.Contains(besides, name) })
}

// output is a built folder, and how its program came about.
type output struct {
	files  files
	linked []byte        // the program as Go links it
	steps  []shrink.Step // what made it smaller
}

// build makes everything from the page's sources. The same sources, Go and
// modules make the same bytes.
func build(source string) (output, error) {
	linked, err := compile.Page()
	if err != nil {
		return output{}, err
	}
	program, steps := shrink.Program(linked)
	made, err := pageFiles(source, program)
	return output{made, linked, steps}, err
}

// pageFiles makes the files of the page around its program.
func pageFiles(source string, program []byte) (files, error) {
	goroot, err := compile.Tool(nil, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	loader := compile.Loader(goroot)
	made := files{"barrow.wasm": program}
	for _, b := range []struct{ name, from string }{
		{"early.js", "shell/early.js"},
		{"main.js", "app/start.js"},
		{"worker.js", "shell/worker.js"},
		{"style.css", "style.css"},
	} {
		if made[b.name], err = bundle(filepath.Join(source, filepath.FromSlash(b.from)), loader, nil); err != nil {
			return nil, err
		}
	}
	for _, pattern := range []string{"*.webmanifest", "text/*.json", "icons/*.svg", "icons/*.png"} {
		if err := made.copy(source, pattern); err != nil {
			return nil, err
		}
	}
	for _, name := range made.names() {
		if strings.HasPrefix(name, "text/") {
			if made[name], err = short(made[name]); err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
		}
	}
	if made["licences.txt"], err = licences(source, goroot); err != nil {
		return nil, err
	}
	html, err := os.ReadFile(filepath.Join(source, "index.html"))
	if err != nil {
		return nil, err
	}
	if made["index.html"], err = page(html, made); err != nil {
		return nil, fmt.Errorf("index.html: %w", err)
	}
	if made["barrow.html"], err = single(html, made); err != nil {
		return nil, fmt.Errorf("barrow.html: %w", err)
	}
	if made["sw.js"], err = keeper(filepath.Join(source, "sw.js"), made); err != nil {
		return nil, err
	}
	return made, nil
}

// copy takes files over as they are.
func (f files) copy(source, pattern string) error {
	found, err := filepath.Glob(filepath.Join(source, filepath.FromSlash(pattern)))
	if err != nil {
		return err
	}
	for _, path := range found {
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(source, path)
		if err != nil {
			return err
		}
		f[filepath.ToSlash(name)] = data
	}
	return nil
}

// sourceDir finds the page's sources, from anywhere in a clone.
func sourceDir() (string, error) {
	dir, err := compile.Tool(nil, "list", "-f", "{{.Dir}}", compile.Module+"/web/build")
	return filepath.Dir(dir), err
}
