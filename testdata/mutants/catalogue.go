package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// The catalogue, and the code that has a copy of it inside.
const (
	catalogueFile = "mix/catalog/catalog.json"
	embeddedFile  = "mix/catalog/embedded.go"
	figuresTest   = "mix/oracle_trade_test.go"
)

// copies are tests that compare the two, and would notice nothing but that one of
// them was changed.
var copies = regexp.MustCompile(`Embedded`)

// catalogue tries mutants of the catalogue. In the copy the embedded text gives
// way to a file that the environment names.
func (b *bench) catalogue(o *options, equal map[string]string) (bool, error) {
	text, err := os.ReadFile(filepath.Join(b.tree, filepath.FromSlash(catalogueFile)))
	if err != nil {
		return false, err
	}
	all, err := figures(text)
	if err != nil {
		return false, err
	}
	chosen := o.choose(all)
	if o.list {
		return true, b.names(chosen)
	}
	if err := b.openEmbedded(); err != nil {
		return false, err
	}
	return b.report(o, 0, chosen, equal, func(m *mutant) (result, error) {
		changed := slices.Concat(text[:m.start], []byte(m.with), text[m.end:])
		name := filepath.Join(b.dir, fmt.Sprintf("catalogue-%d", m.start))
		if err := write(name, changed); err != nil {
			return result{}, err
		}
		users := b.users(module + "mix/catalog")
		tests := slices.DeleteFunc(slices.Clone(b.tests), func(t *test) bool {
			return copies.MatchString(t.name) || !slices.Contains(users, t.pkg)
		})
		return b.decide(m, b.dir, tests, "MUTANT_CATALOGUE="+name), os.Remove(name)
	})
}

// openEmbedded lets a file stand in for the catalogue in the copy, and for the file
// that a test of its figures reads.
func (b *bench) openEmbedded() error {
	const reads = `os.ReadFile("catalog/catalog.json")`
	const instead = `os.ReadFile(map[bool]string{true: "catalog/catalog.json", false: os.Getenv("MUTANT_CATALOGUE")}[os.Getenv("MUTANT_CATALOGUE") == ""])`
	if err := b.change(figuresTest, reads, instead); err != nil {
		return err
	}
	if err := b.change(embeddedFile, "const catalogJSON = ", "const catalogEmbedded = "); err != nil {
		return err
	}
	beside := filepath.Join(b.tree, filepath.Dir(filepath.FromSlash(embeddedFile)), "mutant_catalogue.go")
	return write(beside, []byte(`package catalog

import "os"

var catalogJSON = func() string {
	name := os.Getenv("MUTANT_CATALOGUE")
	if name == "" {
		return catalogEmbedded
	}
	text, err := os.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return string(text)
}()
`))
}

// change replaces the one place of a file of the copy that has a text.
func (b *bench) change(file, from, to string) error {
	path := filepath.Join(b.tree, filepath.FromSlash(file))
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if bytes.Count(text, []byte(from)) != 1 {
		return fmt.Errorf("%s: not one %q", file, from)
	}
	return write(path, bytes.Replace(text, []byte(from), []byte(to), 1))
}

// reader walks the catalogue's document, with the keys and ids on the way.
type reader struct {
	text  []byte
	d     *json.Decoder
	path  []string
	found []*mutant
	same  map[string]int
}

// figures finds the mutants of a catalogue: its numbers, quantities, switches and
// traits, and the kinds of its sources.
func figures(text []byte) ([]*mutant, error) {
	r := &reader{text: text, d: json.NewDecoder(bytes.NewReader(text)), same: map[string]int{}}
	r.d.UseNumber()
	if err := r.value(); err != nil {
		return nil, err
	}
	return r.found, nil
}

func (r *reader) value() error {
	before := int(r.d.InputOffset())
	t, err := r.d.Token()
	if err != nil {
		return err
	}
	switch t := t.(type) {
	case json.Delim:
		return r.inside(t)
	case json.Number:
		r.add(before, t.String(), more(t.String(), 1))
	case bool:
		r.add(before, fmt.Sprint(t), fmt.Sprint(!t))
	case string:
		r.words(before, t)
	}
	return nil
}

// inside walks a list or an object.
func (r *reader) inside(open json.Delim) error {
	for i := 0; r.d.More(); i++ {
		step := fmt.Sprint(i)
		if open == '{' {
			key, err := r.d.Token()
			if err != nil {
				return err
			}
			step = fmt.Sprint(key)
		}
		r.path = append(r.path, step)
		if err := r.value(); err != nil {
			return err
		}
		r.path = r.path[:len(r.path)-1]
	}
	_, err := r.d.Token()
	return err
}

// quantity is a text that starts with a number: "1/2 cu ft", "10%".
var quantity = regexp.MustCompile(`^(\d+/\d+|\d+(?:\.\d+)?)(.*)$`)

func (r *reader) words(before int, s string) {
	key := r.path[len(r.path)-1]
	if len(r.path) > 1 {
		switch r.path[len(r.path)-2] {
		case "traits":
			r.add(before, quoted(s), "")
			return
		case "also":
			return
		}
	}
	switch {
	case key == "kind" && r.path[0] == "sources" && s != "memory":
		r.add(before, quoted(s), quoted("memory"))
	case key == "kind" || key == "id" || key == "name" || key == "grade" || key == "text":
	default:
		if q := quantity.FindStringSubmatch(s); q != nil {
			r.add(before, quoted(s), quoted(more(q[1], 50)+q[2]))
		}
	}
}

// more is a number with a part of it more: itself plus 1/parts of it, and for a
// whole one where parts is 1 the next.
func more(n string, parts int64) string {
	x, ok := new(big.Rat).SetString(n)
	if !ok {
		panic(n) // the catalogue's numbers are numbers
	}
	if parts == 1 {
		return x.Add(x, big.NewRat(1, 1)).RatString()
	}
	x.Mul(x, big.NewRat(parts+1, parts))
	return strings.TrimRight(strings.TrimRight(x.FloatString(6), "0"), ".")
}

func quoted(s string) string { return `"` + s + `"` }

// add takes down a mutant of the value that stands after an offset.
func (r *reader) add(before int, from, to string) {
	at := before + bytes.Index(r.text[before:], []byte(from))
	m := &mutant{file: catalogueFile, line: 1 + bytes.Count(r.text[:at], []byte("\n")), start: at, end: at + len(from), with: to,
		in: r.row(), from: from, to: to}
	if to == "" { // out of its list, with the comma beside it
		m.to = "left out"
		if after := bytes.TrimLeft(r.text[m.end:], " "); after[0] == ',' {
			m.end = len(r.text) - len(after) + 1
		} else {
			m.start = max(bytes.LastIndexByte(r.text[:at], ','), bytes.LastIndexByte(r.text[:at], '[')+1)
		}
	}
	key := m.name()
	m.nth = r.same[key]
	r.same[key]++
	r.found = append(r.found, m)
}

// row names the row that is walked and the place in it: "containers #1 low".
func (r *reader) row() string {
	path := slices.Clone(r.path)
	if len(path) > 1 {
		var doc map[string]json.RawMessage
		var rows []struct{ ID, For string }
		_ = json.Unmarshal(r.text, &doc)
		_ = json.Unmarshal(doc[path[0]], &rows)
		for i, row := range rows {
			if path[1] == fmt.Sprint(i) {
				path[1] = row.ID + row.For
			}
		}
	}
	return strings.Join(path, " ")
}
