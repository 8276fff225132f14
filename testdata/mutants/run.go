package main

import (
	_ "embed"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
)

// switches is the source that a package needs for its mutants.
//
//go:embed switch.go.txt
var switches string

// run does what the command line asks for, and tells whether enough mutants were
// noticed.
func run(o *options, args []string) (enough bool, err error) {
	if o.workers == 0 {
		o.workers = runtime.GOMAXPROCS(0)
	}
	if len(args) == 0 {
		return false, errors.New("code PACKAGES..., or catalogue")
	}
	b, err := newBench(o.workers)
	if err != nil {
		return false, err
	}
	defer func() { err = errors.Join(err, b.close()) }()
	listed, err := equivalents()
	if err != nil {
		return false, err
	}
	switch args[0] {
	case "code":
		return b.code(o, args[1:], listed)
	case "catalogue":
		return b.catalogue(o, listed)
	}
	return false, fmt.Errorf("%s: code PACKAGES..., or catalogue", args[0])
}

// code tries mutants of packages.
func (b *bench) code(o *options, patterns []string, equal map[string]string) (bool, error) {
	packages, err := list(b.tree, patterns)
	if err != nil {
		return false, err
	}
	all, ids, err := sources(b.tree, packages)
	if err != nil {
		return false, err
	}
	of := map[*mutant]*source{}
	var chosen []*mutant
	for _, s := range all {
		for _, m := range s.found {
			of[m] = s
			chosen = append(chosen, m)
		}
	}
	chosen = o.choose(chosen)
	if o.list {
		return true, b.names(chosen)
	}
	if err := b.install(all, ids); err != nil {
		return false, err
	}
	return b.report(o, ids, chosen, equal, func(m *mutant) (result, error) {
		if m.id > 0 {
			return b.try(m), nil
		}
		return b.rebuild(of[m], m)
	})
}

// install writes the changed sources into the copy, and beside them what switches
// their mutants on.
func (b *bench) install(all []*source, ids int32) error {
	for _, s := range all {
		if len(s.edits) == 0 {
			continue
		}
		path := filepath.Join(b.tree, filepath.FromSlash(s.file))
		if err := write(path, s.changed()); err != nil {
			return err
		}
		text := strings.NewReplacer("PACKAGE", s.name, "MUTANTS+1", strconv.Itoa(int(ids)+1)).Replace(switches)
		if err := write(filepath.Join(filepath.Dir(path), "mutant_switch.go"), []byte(text)); err != nil {
			return err
		}
	}
	return nil
}

// choose draws a sample, if one is asked for, and keeps the order.
func (o *options) choose(all []*mutant) []*mutant {
	if o.only != "" {
		all = slices.DeleteFunc(all, func(m *mutant) bool { return !strings.Contains(m.name(), o.only) })
	}
	if o.sample == 0 || o.sample >= len(all) {
		return all
	}
	random := rand.New(rand.NewPCG(o.seed, 0))
	keep := map[int]bool{}
	for _, i := range random.Perm(len(all))[:o.sample] {
		keep[i] = true
	}
	var some []*mutant
	for i, m := range all {
		if keep[i] {
			some = append(some, m)
		}
	}
	return some
}

func (b *bench) names(all []*mutant) error {
	for _, m := range all {
		how := "compiled in"
		if m.id == 0 {
			how = "built"
		}
		if _, err := fmt.Printf("%s\t%d\t%s\n", m.name(), m.line, how); err != nil {
			return err
		}
	}
	return nil
}

// report measures the tests, tries the mutants and writes the table.
func (b *bench) report(o *options, ids int32, chosen []*mutant, equal map[string]string, try func(*mutant) (result, error)) (bool, error) {
	left, err := b.measure(strings.Fields(o.tests), ids)
	if err != nil {
		return false, err
	}
	for _, name := range left {
		fmt.Fprintln(os.Stderr, "left out, since it fails in a copy:", name)
	}
	t := newTable(os.Stdout)
	err = b.each(len(chosen), func(i int) error {
		m := chosen[i]
		if _, ok := equal[m.name()]; ok {
			return t.add(result{m, equivalent, ""})
		}
		r, err := try(m)
		if err != nil {
			return err
		}
		return t.add(r)
	})
	if err != nil {
		return false, err
	}
	share, err := t.sums()
	return share >= o.atLeast, err
}
