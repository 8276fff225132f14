package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"
)

// batches cuts tests into runs of one package each: a few of the quickest first,
// since these notice most, then those that take little, then the rest.
func batches(tests []*test) [][]*test {
	var all [][]*test
	cut := func(some []*test) {
		var of []*listed
		by := map[*listed][]*test{}
		for _, t := range some {
			if by[t.pkg] == nil {
				of = append(of, t.pkg)
			}
			by[t.pkg] = append(by[t.pkg], t)
		}
		for _, p := range of {
			all = append(all, by[p])
		}
	}
	ordinary := slices.IndexFunc(tests, func(t *test) bool { return last.MatchString(t.name) })
	if ordinary < 0 {
		ordinary = len(tests)
	}
	few := min(6, ordinary)
	quick := few
	for quick < ordinary && tests[quick].took < time.Second {
		quick++
	}
	for _, some := range [][]*test{tests[:few], tests[few:quick], tests[quick:ordinary], tests[ordinary:]} {
		cut(some)
	}
	return all
}

// try runs the tests that reach a mutant which is compiled in.
func (b *bench) try(m *mutant) result {
	var reach []*test
	for _, t := range b.tests {
		if t.reaches[m.reached] {
			reach = append(reach, t)
		}
	}
	if len(reach) == 0 {
		return result{m, unreached, ""}
	}
	return b.decide(m, b.dir, reach, fmt.Sprintf("MUTANT=%d", m.id))
}

// decide runs tests until one notices.
func (b *bench) decide(m *mutant, dir string, tests []*test, env ...string) result {
	for _, some := range batches(tests) {
		switch ok, by, late := b.execute(dir, some[0].pkg, some, limit(some), env...); {
		case late:
			return result{m, slow, some[0].pkg.ImportPath}
		case !ok:
			return result{m, killed, by}
		}
	}
	return result{m, survived, ""}
}

// rebuild tries a mutant that must be built: the tests of its own package first,
// then of those that use it.
func (b *bench) rebuild(s *source, m *mutant) (r result, err error) {
	dir, err := os.MkdirTemp(b.dir, "one")
	if err != nil {
		return r, err
	}
	defer func() { _ = os.RemoveAll(dir) }() // goes with the bench at the latest
	one := *s
	one.edits = append(slices.Clone(s.edits), edit{start: m.start, end: m.end, with: m.with})
	changed := filepath.Join(dir, "changed.go")
	if err := write(changed, one.changed()); err != nil {
		return r, err
	}
	overlay := map[string]string{filepath.Join(b.tree, filepath.FromSlash(m.file)): changed}
	for _, p := range b.users(m.pkg) {
		tests := slices.DeleteFunc(slices.Clone(b.tests), func(t *test) bool { return t.pkg != p })
		if len(tests) == 0 {
			continue
		}
		if err := b.build(dir, p, overlay); err != nil {
			return result{m, broken, ""}, nil
		}
		r := b.decide(m, dir, tests)
		if err := os.Remove(b.binary(dir, p)); err != nil {
			return r, err
		}
		if r.fate != survived {
			return r, nil
		}
	}
	return result{m, survived, ""}, nil
}

// users are a package and those that need it, in the order of what they need.
func (b *bench) users(pkg string) []*listed {
	var all []*listed
	for i := range b.pkgs {
		if p := &b.pkgs[i]; p.ImportPath == pkg || slices.Contains(p.Deps, pkg) {
			all = append(all, p)
		}
	}
	slices.SortStableFunc(all, func(x, y *listed) int { return len(x.Deps) - len(y.Deps) })
	return all
}
