package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"example.org/barrow/web/build/shrink"
)

// TestReport: every file has its row, and the sum leaves out what a visit does
// not download.
func TestReport(t *testing.T) {
	made := files{"a.js": bytes.Repeat([]byte("a"), 3000), "barrow.html": []byte("not of a visit"),
		"text/b.json": bytes.Repeat([]byte("b"), 1000)}
	var out strings.Builder
	if err := report(&out, output{files: made}, make([]byte, 2000)); err != nil {
		t.Fatal(err)
	}
	rows := map[string][3]float64{}
	for line := range strings.Lines(out.String()) {
		var r [3]float64
		if n, _ := fmt.Sscan(line, &r[0], &r[1], &r[2]); n == 3 {
			rows[strings.Join(strings.Fields(line)[3:], " ")] = r
		}
	}
	visit := rows["a first visit: all but "+strings.Join(besides, ", ")]
	empty := rows["an empty Go program, as it is linked"]
	want := map[string]float64{"a.js": 3000, "barrow.html": 14, "text/b.json": 1000}
	for name, raw := range want {
		if rows[name][0] != raw {
			t.Errorf("%s has %v bytes, want %v\n%s", name, rows[name][0], raw, out.String())
		}
	}
	for i := range 3 {
		if sum := rows["a.js"][i] + rows["text/b.json"][i]; visit[i] != sum || sum == 0 {
			t.Errorf("column %d: a visit is %v, the files make %v\n%s", i, visit[i], sum, out.String())
		}
		got, want := fmt.Sprintf("%.2f", rows["times as much"][i]), fmt.Sprintf("%.2f", visit[i]/empty[i])
		if cmp.Diff(want, got) != "" {
			t.Errorf("column %d: %s times as much, want %s\n%s", i, got, want, out.String())
		}
	}
	if visit[1] >= visit[0] || visit[2] >= visit[1] {
		t.Errorf("brotli 11 is not below gzip, or gzip not below none: %v", visit)
	}
}

// TestReportSteps: each pass has its line, with what it saved or why it left the
// program alone.
func TestReportSteps(t *testing.T) {
	linked := bytes.Repeat([]byte("abc"), 1000)
	var out strings.Builder
	require.NoError(t, reportSteps(&out, linked, []shrink.Step{
		{Pass: "first", Program: linked[:2000]},
		{Pass: "second", Program: linked[:2000], Alone: errors.New("it is odd")},
		{Pass: "third", Program: linked[:2500]},
	}))
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, lines, 4)
	require.Regexp(t, `^\s*1000 +-?\d+ +first$`, lines[1])
	require.Regexp(t, `^\s*0 +0 +second: left alone: it is odd$`, lines[2])
	require.Regexp(t, `^\s*-500 +-?\d+ +third$`, lines[3])
}
