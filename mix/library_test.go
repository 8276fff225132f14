package mix_test

import (
	"bytes"
	"go/format"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

// libraryMain is a program round the README's lines: they stand in its function
// plan.
const libraryMain = `package main

import (
	"errors"
	"fmt"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

func plan(document []byte, bed ground.Area) error {
README
	return nil
}

func main() {
	bed, err := ground.ParseArea("60 ft x 4 ft")
	if err != nil {
		panic(err)
	}
	for _, layer := range []string{"2 in", "2 inchs"} {
		document := []byte(` + "`" + `{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "` + "` + layer + `" + `", "material": "bark-fines"}]}` + "`" + `)
		if err := plan(document, bed); err != nil {
			fmt.Println(err)
			var first *mix.Problem
			fmt.Println(errors.As(err, &first) && first.Code == units.UnitUnknown, first.Path)
		}
	}
}
`

// TestLibrary: another module builds and runs with the very lines that the README
// has for it, with nothing downloaded. It stands beside a link to this module, as
// it would beside a clone.
func TestLibrary(t *testing.T) {
	if runtime.GOOS == "js" {
		t.Skip("needs the go command")
	}
	prose, code := librarySection(t)
	beside := t.TempDir()
	dir := filepath.Join(beside, "garden")
	root, err := filepath.Abs("..")
	require.NoError(t, err)
	require.NoError(t, os.Symlink(root, filepath.Join(beside, "barrow")))
	require.NoError(t, os.Mkdir(dir, 0o755))
	source := []byte(strings.Replace(libraryMain, "README", code, 1))
	pretty, err := format.Source(source)
	require.NoError(t, err)
	if diff := cmp.Diff(string(pretty), string(source)); diff != "" {
		t.Errorf("the README's lines are not as gofmt has them, -want +got:\n%s", diff)
	}
	write := func(name string, text []byte) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	write("main.go", source)
	write("go.mod", []byte("module example.org/garden\n\ngo 1.26.0\n\n"+
		inlined(t, prose, "require .*")+"\n\n"+inlined(t, prose, "replace .*")+"\n"))

	cmd := exec.Command("go", "run", ".")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "PWD="+dir, "GOFLAGS=-modcacherw", "GOPROXY=off", "GONOSUMDB=*",
		"GOWORK=off", "GOTOOLCHAIN=local",
		"GOMODCACHE="+filepath.Join(beside, "modules"))
	var out, said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &said
	require.NoError(t, cmd.Run(), "go run: %s", said.String())
	for _, want := range []string{
		"240 sq ft x 3 in layer, as spread = 60 cu ft by ",
		"1 problems: tasks[0].layer: 2 inchs: did you mean \"in\"?\ntrue tasks[0].layer\n",
	} {
		require.Contains(t, out.String(), want)
	}
}

// librarySection returns the README's section on Go: its prose on one line, and
// its lines of code, as they stand in a function.
func librarySection(t *testing.T) (prose, code string) {
	t.Helper()
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(readme), "\n## In Go\n")
	require.True(t, ok, "the README has no section on Go")
	section, _, _ := strings.Cut(rest, "\n## ")
	var lines, words []string
	for line := range strings.Lines(section) {
		if in, is := strings.CutPrefix(line, "    "); is {
			lines = append(lines, "\t"+in)
		} else {
			words = append(words, strings.TrimSpace(line))
		}
	}
	return strings.Join(words, " "), strings.TrimRight(strings.Join(lines, ""), "\n")
}

// inlined is the one piece of code in the prose that has the pattern.
func inlined(t *testing.T, prose, pattern string) string {
	t.Helper()
	found := regexp.MustCompile("`("+strings.ReplaceAll(pattern, ".", "[^`]")+")`").FindAllStringSubmatch(prose, -1)
	require.Len(t, found, 1, "%s in the README", pattern)
	return found[0][1]
}

// TestREADMEIsShort: it is read from top to bottom.
func TestREADMEIsShort(t *testing.T) {
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	if n := bytes.Count(readme, []byte("\n")); n > 110 {
		t.Errorf("the README has %d lines, want at most 110", n)
	}
}
