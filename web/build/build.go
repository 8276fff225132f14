package main

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/hashicorp/go-multierror"

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
// modules make the same bytes. Where it fails, it says all that is wrong as far as
// it came.
func build(source string) (output, error) {
	linked, err := compile.Page()
	program, steps := shrink.Program(linked)
	made, err2 := pageFiles(source)
	if err := together(multierror.Append(err, err2)); err != nil {
		return output{}, err
	}
	made["barrow.wasm"] = program
	return output{made, linked, steps}, made.wrap(source)
}

// pageFiles makes what needs no other file of the build.
func pageFiles(source string) (files, error) {
	goroot, err := compile.Tool(nil, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	var errs *multierror.Error
	made := files{}
	put := func(name string, data []byte, err error) {
		errs = multierror.Append(errs, err)
		made[name] = data
	}
	for _, b := range []struct{ name, from string }{
		{"early.js", "shell/early.js"},
		{"main.js", "app/start.js"},
		{"worker.js", "shell/worker.js"},
		{"style.css", "style.css"},
	} {
		data, err := bundle(filepath.Join(source, filepath.FromSlash(b.from)), compile.Loader(goroot), nil)
		put(b.name, data, err)
	}
	for _, pattern := range []string{"*.webmanifest", "text/*.json", "icons/*.svg", "icons/*.png"} {
		errs = multierror.Append(errs, made.copy(source, pattern))
	}
	for _, name := range made.names() {
		if strings.HasPrefix(name, "text/") {
			data, err := short(made[name])
			put(name, data, about(name, err))
		}
	}
	data, err := licences(source, goroot)
	put("licences.txt", data, err)
	return made, together(errs)
}

// wrap adds the page itself, the page in one file, and the list of all that works
// without a network, which comes last.
func (f files) wrap(source string) error {
	html, err := os.ReadFile(filepath.Join(source, "index.html"))
	if err != nil {
		return err
	}
	index, err := page(html, f)
	one, err2 := single(html, f)
	errs := multierror.Append(about("index.html", err), about("barrow.html", err2))
	if err := together(errs); err != nil {
		return err
	}
	f["index.html"], f["barrow.html"] = index, one
	f["sw.js"], err = keeper(filepath.Join(source, "sw.js"), f)
	return err
}

// about says which file an error is about, if there is one.
func about(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", name, err)
}

// together is several failures as one error, a line for each, or nil.
func together(errs *multierror.Error) error {
	if errs != nil {
		errs.ErrorFormat = func(list []error) string { return errors.Join(list...).Error() }
	}
	return errs.ErrorOrNil() // errs itself is no error that is nil
}

// copy takes files over as they are.
func (f files) copy(source, pattern string) error {
	found, err := filepath.Glob(filepath.Join(source, filepath.FromSlash(pattern)))
	if err != nil {
		return err
	}
	var errs *multierror.Error
	for _, path := range found {
		data, err := os.ReadFile(path)
		name, err2 := filepath.Rel(source, path)
		f[filepath.ToSlash(name)] = data
		errs = multierror.Append(errs, err, err2)
	}
	return together(errs)
}

// sourceDir finds the page's sources, from anywhere in a clone.
func sourceDir() (string, error) {
	dir, err := compile.Tool(nil, "list", "-f", "{{.Dir}}", compile.Module+"/web/build")
	return filepath.Dir(dir), err
}
