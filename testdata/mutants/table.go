package main

import (
	_ "embed"
	"fmt"
	"io"
	"strings"
	"sync"
)

// equivalentTable names mutants that change nothing which anybody could notice,
// each with the reason.
//
//go:embed equivalent.tsv
var equivalentTable string

// equivalents reads the table: a name and a reason a line.
func equivalents() (map[string]string, error) {
	all := map[string]string{}
	for i, line := range strings.Split(strings.TrimSpace(equivalentTable), "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, reason, ok := strings.Cut(line, "\t")
		if !ok || reason == "" {
			return nil, fmt.Errorf("equivalent.tsv:%d: a name, a tab and a reason", i+1)
		}
		all[name] = reason
	}
	return all, nil
}

// table writes what became of the mutants, each as soon as it is known, and then
// the sums.
type table struct {
	mu    sync.Mutex
	w     io.Writer
	all   int
	count map[fate]int
	last  int // killed by whole answers alone
}

func newTable(w io.Writer) *table { return &table{w: w, count: map[fate]int{}} }

// add writes a line.
func (t *table) add(r result) error {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.all++
	t.count[r.fate]++
	if r.fate == killed && last.MatchString(r.test) {
		t.last++
	}
	_, err := fmt.Fprintf(t.w, "%s\t%s\t%d\t%s\n", r.fate, r.name(), r.line, r.test)
	return err
}

// sums writes the sums, and gives the share that was noticed of those that could
// be.
func (t *table) sums() (share float64, err error) {
	c := t.count
	noticed := c[killed] + c[slow]
	could := noticed + c[survived] + c[unreached]
	share = 1
	if could > 0 {
		share = float64(noticed) / float64(could)
	}
	_, err = fmt.Fprintf(t.w, "%d mutants, %d do not compile, %d equivalent; of %d noticed %d: %.1f%% (%d too slow, %d by whole answers alone); %d survived, %d reached by no test\n",
		t.all, c[broken], c[equivalent], could, noticed, 100*share, c[slow], t.last, c[survived], c[unreached])
	return share, err
}
