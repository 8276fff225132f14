package main

import (
	"context"
	_ "embed"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"
)

// bench is a copy of the repository with its tests built, where mutants are
// switched on.
type bench struct {
	dir     string // a folder of its own
	tree    string // the copy
	pkgs    []listed
	tests   []*test
	workers int
}

// test is one test of a package.
type test struct {
	pkg     *listed
	name    string
	took    time.Duration
	reaches map[int32]bool
}

// last are tests that compare whole answers with what was written down: they
// notice much and say little, so they come last, and the table shows what only
// they notice.
var last = regexp.MustCompile(`Golden|Sample|Drawings`)

// newBench copies the repository.
func newBench(workers int) (*bench, error) {
	root, err := command(".", nil, "git", "rev-parse", "--show-toplevel")
	if err != nil {
		return nil, err
	}
	names, err := command(strings.TrimSpace(string(root)), nil, "git", "ls-files", "-z")
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	b := &bench{dir: dir, tree: filepath.Join(dir, "tree"), workers: workers}
	for name := range strings.SplitSeq(strings.TrimRight(string(names), "\x00"), "\x00") {
		if err := copyFile(filepath.Join(strings.TrimSpace(string(root)), name), filepath.Join(b.tree, name)); err != nil {
			return nil, err
		}
	}
	return b, nil
}

func (b *bench) close() error { return os.RemoveAll(b.dir) }

func copyFile(from, to string) error {
	text, err := os.ReadFile(from)
	if errors.Is(err, os.ErrNotExist) {
		return nil // removed, and not yet committed
	}
	if err != nil {
		return err
	}
	return write(to, text)
}

func write(path string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	return os.WriteFile(path, text, 0o600)
}

// binary is where the tests of a package are built to.
func (b *bench) binary(dir string, p *listed) string {
	return filepath.Join(dir, strings.ReplaceAll(p.ImportPath, "/", "_")+".test")
}

// build builds the tests of a package, with files in place of others if there are
// any. ok is false when the code does not compile.
func (b *bench) build(dir string, p *listed, overlay map[string]string) error {
	args := []string{"test", "-c", "-trimpath", "-vet=off", "-o", b.binary(dir, p)}
	if overlay != nil {
		text, err := json.Marshal(map[string]any{"Replace": overlay})
		if err != nil {
			return err
		}
		name := filepath.Join(dir, "overlay.json")
		if err := write(name, text); err != nil {
			return err
		}
		args = append(args, "-overlay", name)
	}
	_, err := command(b.tree, nil, "go", append(args, p.ImportPath)...)
	return err
}

// measure builds all tests, runs each by itself, and takes down what it reaches
// and how long it takes. A test that fails with nothing switched on is left out,
// and named.
func (b *bench) measure(patterns []string, ids int32) (left []string, err error) {
	if b.pkgs, err = list(b.tree, patterns); err != nil {
		return nil, err
	}
	b.pkgs = slices.DeleteFunc(b.pkgs, func(p listed) bool { return p.DepOnly })
	for i := range b.pkgs {
		p := &b.pkgs[i]
		if err := b.build(b.dir, p, nil); err != nil {
			return nil, err
		}
		if _, err := os.Stat(b.binary(b.dir, p)); err != nil {
			continue // it has no tests
		}
		names, err := command(p.Dir, nil, b.binary(b.dir, p), "-test.list", "^(Test|Example|Fuzz)")
		if err != nil {
			return nil, err
		}
		for name := range strings.FieldsSeq(string(names)) {
			b.tests = append(b.tests, &test{pkg: p, name: name})
		}
	}
	bad := make([]bool, len(b.tests))
	err = b.each(len(b.tests), func(i int) error {
		ok, err := b.tests[i].measure(b, i, ids)
		bad[i] = !ok
		return err
	})
	var good []*test
	for i, t := range b.tests {
		if bad[i] {
			left = append(left, t.pkg.ImportPath+" "+t.name)
		} else {
			good = append(good, t)
		}
	}
	b.tests = good
	slices.SortStableFunc(b.tests, func(x, y *test) int {
		if a, c := last.MatchString(x.name), last.MatchString(y.name); a != c {
			if a {
				return 1
			}
			return -1
		}
		return int(x.took - y.took)
	})
	return left, err
}

// measure runs one test with nothing switched on.
func (t *test) measure(b *bench, i int, ids int32) (ok bool, err error) {
	file := filepath.Join(b.dir, fmt.Sprintf("reached%d", i))
	start := time.Now()
	ok, _, _ = b.execute(b.dir, t.pkg, []*test{t}, 10*time.Minute, "MUTANTS_REACHED="+file)
	t.took = time.Since(start)
	reached, err := os.ReadFile(file)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		return false, err
	}
	t.reaches = map[int32]bool{}
	for ; len(reached) >= 4; reached = reached[4:] {
		if id := int32(binary.LittleEndian.Uint32(reached)); id <= ids {
			t.reaches[id] = true
		}
	}
	return ok, os.RemoveAll(file)
}

var failed = regexp.MustCompile(`(?m)^--- FAIL: (\S+)`)

// execute runs some tests of one package. ok is false when one failed, and late
// when they did not end in time; by is the one that failed, if it is known.
func (b *bench) execute(dir string, p *listed, tests []*test, limit time.Duration, env ...string) (ok bool, by string, late bool) {
	names := make([]string, len(tests))
	for i, t := range tests {
		names[i] = t.name
	}
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	c := exec.CommandContext(ctx, b.binary(dir, p), "-test.failfast", "-test.run", "^("+strings.Join(names, "|")+")$")
	c.Dir = p.Dir
	c.Env = append(os.Environ(), env...)
	c.WaitDelay = time.Second
	out, err := c.CombinedOutput()
	if err == nil {
		return true, "", false
	}
	if ctx.Err() != nil {
		return false, "", true
	}
	by = "a panic"
	if m := failed.FindSubmatch(out); m != nil {
		by = string(m[1])
	} else if len(tests) == 1 {
		by = tests[0].name
	}
	return false, strings.TrimPrefix(p.ImportPath, module) + " " + by, false
}

const module = "example.org/barrow/"

// limit is how long tests may take with a mutant switched on.
func limit(tests []*test) time.Duration {
	all := 10 * time.Second
	for _, t := range tests {
		all += 10 * t.took
	}
	return all
}

// each calls f for 0 to n-1, as many at a time as there are workers.
func (b *bench) each(n int, f func(int) error) error {
	jobs := make(chan int)
	errs := make([]error, n)
	var all sync.WaitGroup
	for range b.workers {
		all.Go(func() {
			for i := range jobs {
				errs[i] = f(i)
			}
		})
	}
	for i := range n {
		jobs <- i
	}
	close(jobs)
	all.Wait()
	return errors.Join(errs...)
}
