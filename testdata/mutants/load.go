package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// listed is what go list says of a package.
type listed struct {
	ImportPath, Name, Dir, Export string
	GoFiles                       []string
	DepOnly                       bool
	Deps                          []string
}

// list runs go list in a folder, with what each package needs.
func list(dir string, patterns []string) ([]listed, error) {
	args := append([]string{"list", "-deps", "-export", "-json=ImportPath,Name,Dir,Export,GoFiles,DepOnly,Deps"}, patterns...)
	out, err := command(dir, nil, "go", args...)
	if err != nil {
		return nil, err
	}
	var all []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, p)
	}
}

// command runs a command and gives its output, or says what it said.
func command(dir string, env []string, name string, args ...string) ([]byte, error) {
	c := exec.Command(name, args...)
	c.Dir = dir
	c.Env = append(os.Environ(), env...)
	var said bytes.Buffer
	c.Stderr = &said
	out, err := c.Output()
	if err != nil {
		return out, fmt.Errorf("%s %s: %w\n%s%s", name, strings.Join(args, " "), err, said.Bytes(), out)
	}
	return out, nil
}

// sources reads the packages that were asked for and finds their mutants. All ids
// are below the second result.
func sources(root string, packages []listed) ([]*source, int32, error) {
	fset := token.NewFileSet()
	export := map[string]string{}
	for _, p := range packages {
		export[p.ImportPath] = p.Export
	}
	load := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(export[path]) })
	var next int32
	var all []*source
	for _, p := range packages {
		if p.DepOnly {
			continue
		}
		some, err := read(fset, root, &p, load, &next)
		if err != nil {
			return nil, 0, err
		}
		all = append(all, some...)
	}
	return all, next + 1, nil
}

// read parses and checks one package and walks its files.
func read(fset *token.FileSet, root string, p *listed, load types.Importer, next *int32) ([]*source, error) {
	var files []*ast.File
	var all []*source
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	for _, name := range p.GoFiles {
		path := filepath.Join(p.Dir, name)
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		f, err := parser.ParseFile(fset, path, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
		all = append(all, &source{file: filepath.ToSlash(rel), text: text, fset: fset, info: info, pkg: p.ImportPath, name: p.Name,
			next: next, same: map[string]int{}})
	}
	config := types.Config{Importer: load}
	if _, err := config.Check(p.ImportPath, fset, files, info); err != nil {
		return nil, err
	}
	for i, s := range all {
		if !ast.IsGenerated(files[i]) {
			s.walk(files[i])
		}
	}
	return all, nil
}
