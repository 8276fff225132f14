package main

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const sample = `package p

const most = 3*10 + 2.5

func f(a, b int, n *int, m map[string]int, s string) (bool, int) {
	for i := 0; i < a; i++ {
		m[s]++
	}
	if a-b*2 >= -b && s+"x" != "y" || a == b {
		return 1<<uint(a)-1 > b, -a % (b + 1)
	}
	*n--
	return a <= b, a / b
}

func g[T int | float64](a, b T) bool { return a > b }

func Run(a, b int) (bool, int, int) {
	n, m := 5, map[string]int{}
	is, x := f(a, b, &n, m, "s")
	return is != g(a, b), x, n
}
`

// parse finds the mutants of a source.
func parse(t *testing.T, text string) *source {
	t.Helper()
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "p.go", text, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	config := types.Config{Importer: importer.Default()}
	if _, err := config.Check("p", fset, []*ast.File{f}, info); err != nil {
		t.Fatal(err)
	}
	var next int32
	s := &source{file: "p.go", text: []byte(text), fset: fset, info: info, pkg: "p", name: "p", next: &next, same: map[string]int{}}
	s.walk(f)
	return s
}

func TestSites(t *testing.T) {
	var got []string
	for _, m := range parse(t, sample).found {
		got = append(got, m.in+": "+m.from+" -> "+m.to)
	}
	want := []string{
		"declarations: 3*10 + 2.5 -> 4*10 + 2.5",
		"declarations: 3*10 + 2.5 -> 3*11 + 2.5",
		"declarations: 3*10 + 2.5 -> 3*10 + 2.75",
		"declarations: 3*10 + 2.5 -> 3*10 - 2.5",
		"declarations: 3*10 -> 3/10",
		"f: i < a -> i <= a",
		"f: i < a -> i >= a",
		"f: i++ -> i--",
		"f: m[s]++ -> m[s]--",
		"f: a-b*2 >= -b -> a-b*2 > -b",
		"f: a-b*2 >= -b -> a-b*2 < -b",
		"f: a-b*2 -> a+b*2",
		"f: b*2 -> b/2",
		"f: -b -> +b",
		`f: s+"x" != "y" -> s+"x" == "y"`,
		"f: a == b -> a != b",
		"f: 1<<uint(a)-1 > b -> 1<<uint(a)-1 >= b",
		"f: 1<<uint(a)-1 > b -> 1<<uint(a)-1 <= b",
		"f: 1<<uint(a)-1 -> 1<<uint(a)+1",
		"f: -a % (b + 1) -> -a * (b + 1)",
		"f: -a -> +a",
		"f: b + 1 -> b - 1",
		"f: *n-- -> *n++",
		"f: a <= b -> a < b",
		"f: a <= b -> a > b",
		"f: a / b -> a * b",
		"g: a > b -> a >= b",
		"g: a > b -> a <= b",
		"Run: is != g(a, b) -> is == g(a, b)",
	}
	if a, b := strings.Join(got, "\n"), strings.Join(want, "\n"); a != b {
		t.Errorf("found\n%s\nwant\n%s", a, b)
	}
}

// TestSwitches holds a program with all its mutants compiled in to the same
// program with one of them written out: each must do the same.
func TestSwitches(t *testing.T) {
	s := parse(t, sample)
	dir := t.TempDir()
	put := func(name, text string) {
		if err := write(filepath.Join(dir, name), []byte(text)); err != nil {
			t.Fatal(err)
		}
	}
	const main = `
func main() {
	for a := range 5 {
		for b := 1; b < 5; b++ {
			is, x, n := Run(a, b)
			println(is, x, n)
		}
	}
}
`
	asMain := func(text []byte) string { return strings.Replace(string(text), "package p", "package main", 1) + main }
	put("go.mod", "module m\n\ngo 1.26\n")
	put("all/p.go", asMain(s.changed()))
	put("all/switch.go", strings.NewReplacer("PACKAGE", "main", "MUTANTS+1", "100").Replace(switches))
	if _, err := command(dir, nil, "go", "build", "-o", "all.exe", "./all"); err != nil {
		t.Fatal(err)
	}
	plain := output(dir, "./all.exe", "MUTANT=0")
	if strings.Count(plain, "\n") != 20 {
		t.Fatalf("with nothing switched on it prints\n%s", plain)
	}
	tried, differ := 0, 0
	for i, m := range s.found {
		if m.id == 0 || m.from == "i < a" && m.to == "i >= a" || m.from == "i++" {
			continue // built by itself, or without end
		}
		tried++
		name := "one" + strconv.Itoa(i)
		put(name+"/p.go", asMain([]byte(sample[:m.start]+m.with+sample[m.end:])))
		if _, err := command(dir, nil, "go", "build", "-o", name+".exe", "./"+name); err != nil {
			t.Fatal(err)
		}
		want := output(dir, "./"+name+".exe", "MUTANT=0")
		if got := output(dir, "./all.exe", "MUTANT="+strconv.Itoa(int(m.id))); got != want {
			t.Errorf("%s: switched on it prints\n%s, written out\n%s", m.name(), got, want)
		} else if got != plain {
			differ++
		}
	}
	if tried < 15 || differ < 12 {
		t.Errorf("%d mutants tried, %d of them with an effect", tried, differ)
	}
}

// output is what a program prints, up to where it panics if it does.
func output(dir, name, env string) string {
	c := exec.Command(name)
	c.Dir, c.Env = dir, append(os.Environ(), env)
	out, _ := c.CombinedOutput() // a panic is an output too
	text, _, _ := strings.Cut(string(out), "goroutine")
	return text
}

func TestFigures(t *testing.T) {
	const doc = `{
  "sources": [{"id": "s", "text": "1 of 2", "kind": "read"}],
  "containers": [{"id": "#1", "also": ["1 gal"], "cells": 50, "low": "6.5 cu in"}],
  "materials": [{"id": "peat", "packs": ["1/2 cu ft"], "bulk": true, "traits": ["dust", "salt"]}, {"id": "sand", "traits": ["sand"]}],
  "mixes": [{"id": "m", "parts": {"peat": 2}}],
  "soils": [{"id": "clay", "swell": "40%"}]
}`
	all, err := figures([]byte(doc))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, m := range all {
		changed := doc[:m.start] + m.with + doc[m.end:]
		line := strings.Split(changed, "\n")[m.line-1]
		got = append(got, m.in+" "+strings.TrimSpace(line))
	}
	want := []string{
		`sources s kind "sources": [{"id": "s", "text": "1 of 2", "kind": "memory"}],`,
		`containers #1 cells "containers": [{"id": "#1", "also": ["1 gal"], "cells": 51, "low": "6.5 cu in"}],`,
		`containers #1 low "containers": [{"id": "#1", "also": ["1 gal"], "cells": 50, "low": "6.63 cu in"}],`,
		`materials peat packs 0 "materials": [{"id": "peat", "packs": ["0.51 cu ft"], "bulk": true, "traits": ["dust", "salt"]}, {"id": "sand", "traits": ["sand"]}],`,
		`materials peat bulk "materials": [{"id": "peat", "packs": ["1/2 cu ft"], "bulk": false, "traits": ["dust", "salt"]}, {"id": "sand", "traits": ["sand"]}],`,
		`materials peat traits 0 "materials": [{"id": "peat", "packs": ["1/2 cu ft"], "bulk": true, "traits": [ "salt"]}, {"id": "sand", "traits": ["sand"]}],`,
		`materials peat traits 1 "materials": [{"id": "peat", "packs": ["1/2 cu ft"], "bulk": true, "traits": ["dust"]}, {"id": "sand", "traits": ["sand"]}],`,
		`materials sand traits 0 "materials": [{"id": "peat", "packs": ["1/2 cu ft"], "bulk": true, "traits": ["dust", "salt"]}, {"id": "sand", "traits": []}],`,
		`mixes m parts peat "mixes": [{"id": "m", "parts": {"peat": 3}}],`,
		`soils clay swell "soils": [{"id": "clay", "swell": "40.8%"}]`,
	}
	if a, b := strings.Join(got, "\n"), strings.Join(want, "\n"); a != b {
		t.Errorf("found\n%s\nwant\n%s", a, b)
	}
}

// TestCatalogueFile finds figures in the catalogue that there is.
func TestCatalogueFile(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", filepath.FromSlash(catalogueFile)))
	if err != nil {
		t.Fatal(err)
	}
	all, err := figures(text)
	if err != nil || len(all) < 200 {
		t.Errorf("%d figures, %v", len(all), err)
	}
}

func TestTable(t *testing.T) {
	one := func(f fate, test string) result {
		return result{&mutant{file: "f.go", in: "f", from: "a", to: "b"}, f, test}
	}
	var out strings.Builder
	sums := newTable(&out)
	for _, r := range []result{one(killed, "mix TestA"), one(killed, "mix TestGolden"), one(slow, "mix"),
		one(survived, ""), one(unreached, ""), one(equivalent, ""), one(broken, "")} {
		if err := sums.add(r); err != nil {
			t.Fatal(err)
		}
	}
	share, err := sums.sums()
	if err != nil {
		t.Fatal(err)
	}
	if share != 0.6 {
		t.Errorf("share %v, want 3 of 5", share)
	}
	const want = "7 mutants, 1 do not compile, 1 equivalent; of 5 noticed 3: 60.0% (1 too slow, 1 by whole answers alone); 1 survived, 1 reached by no test\n"
	if !strings.HasSuffix(out.String(), want) {
		t.Errorf("printed\n%s", out.String())
	}
}
