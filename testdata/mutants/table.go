package main

import (
	_ "embed"
	"fmt"
	"io"
	"strings"
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

// table writes the mutants and what became of them, then the sums. It gives the
// share that was noticed of those that could be.
func table(w io.Writer, results []result) (share float64, err error) {
	count := map[fate]int{}
	lastOnly := 0
	for _, r := range results {
		count[r.fate]++
		if r.fate == killed && last.MatchString(r.test) {
			lastOnly++
		}
		if _, err := fmt.Fprintf(w, "%s\t%s\t%d\t%s\n", r.fate, r.name(), r.line, r.test); err != nil {
			return 0, err
		}
	}
	noticed := count[killed] + count[slow]
	could := noticed + count[survived] + count[unreached]
	if could == 0 {
		return 1, nil
	}
	share = float64(noticed) / float64(could)
	_, err = fmt.Fprintf(w, "%d mutants, %d do not compile, %d equivalent; of %d noticed %d: %.1f%% (%d too slow, %d by whole answers alone); %d survived, %d reached by no test\n",
		len(results), count[broken], count[equivalent], could, noticed, 100*share, count[slow], lastOnly, count[survived], count[unreached])
	return share, err
}
