package web_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	barrowjson "example.org/barrow/mix/json"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
	"example.org/barrow/web/test"
)

// TestNode runs the tests of the page's modules that need no browser.
func TestNode(t *testing.T) {
	node := test.Node(t)
	readModules(t)
	files, err := filepath.Glob("test/*.test.mjs")
	if err != nil || len(files) < 3 {
		t.Fatalf("tests of the modules: %v, %v", files, err)
	}
	// By itself node leaves one processor free, which on two is half.
	at := "--test-concurrency=" + strconv.Itoa(runtime.GOMAXPROCS(0))
	out, err := exec.Command(node, append([]string{"--test", at}, files...)...).CombinedOutput()
	if err != nil {
		t.Fatalf("node --test: %v\n%s", err, failures(string(out)))
	}
}

// failures keeps what node says about the tests that failed.
func failures(out string) string {
	var kept []string
	for _, part := range strings.Split(out, "\n# Subtest: ") {
		if strings.Contains(part, "not ok") {
			kept = append(kept, part)
		}
	}
	if len(kept) == 0 {
		return out
	}
	return strings.Join(kept, "\n")
}

// readModules reads what node will read. A result of the tests is then kept
// only as long as no module changes.
func readModules(t *testing.T) {
	t.Helper()
	for _, glob := range []string{"*.js", "*/*.js", "test/*.mjs", "testdata/*.json", "text/*.json",
		"../mix/sample.json", "../testdata/jobs/*.json"} {
		files, err := filepath.Glob(glob)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v, %v", glob, files, err)
		}
		for _, f := range files {
			if _, err := os.ReadFile(f); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// callNode runs a module that prints JSON, and decodes it.
func callNode(t *testing.T, program string, in, into any) {
	t.Helper()
	readModules(t)
	input, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(test.Node(t), "--input-type=module", "--eval", program)
	cmd.Stdin = bytes.NewReader(input)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(out, into); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
}

// TestPathText: the page writes paths as the library does, since it finds the
// field of a problem by them.
func TestPathText(t *testing.T) {
	letters := []rune("ab19_-.# \"\\[]<&>éß½…日\u00a0\u00ad\u200b\u2028\u202e\ufeff\ufffd" +
		"\x00\x01\n\t\x7f\u0085\U0001f331\U000e0001")
	random := rand.New(rand.NewPCG(1, 2))
	var paths [][]any
	var want []string
	for range 2000 {
		var path []any
		text := ""
		for range random.IntN(4) {
			if random.IntN(3) == 0 {
				i := random.IntN(200)
				path, text = append(path, i), barrowjson.PathIndex(text, i)
				continue
			}
			key := make([]rune, random.IntN(50))
			few := 1 + random.IntN(len(letters))
			for i := range key {
				key[i] = letters[random.IntN(few)]
			}
			path, text = append(path, string(key)), barrowjson.PathKey(text, string(key))
		}
		paths, want = append(paths, append([]any{}, path...)), append(want, text)
	}
	var got []string
	callNode(t, `
		import {readFileSync} from 'node:fs';
		import {pathText} from './state/path.js';
		console.log(JSON.stringify(JSON.parse(readFileSync(0, 'utf8')).map(pathText)));`, paths, &got)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("paths (-library +page)\n%s", diff)
	}
}

// TestJobText: the text that the page saves as a file is, to the library, the
// job that it was.
func TestJobText(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("jobs: %v, %v", files, err)
	}
	jobs := []string{string(mix.Sample())}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		jobs = append(jobs, string(data))
	}
	var texts []string
	callNode(t, `
		import {File} from 'node:buffer';
		import {readFileSync} from 'node:fs';
		import {jobText, readFile} from './store/file.js';
		const jobs = JSON.parse(readFileSync(0, 'utf8'));
		const read = await Promise.all(jobs.map(job => readFile(new File([job], 'job.json'))));
		console.log(JSON.stringify(read.map(({doc, why}) => why ?? jobText(doc))));`, jobs, &texts)
	for i, text := range texts {
		was, saved := answer(t, jobs[i]), answer(t, text)
		if diff := cmp.Diff(was, saved); diff != "" {
			t.Errorf("job %d as the page saves it (-as it was +saved)\n%s\n%s", i, diff, text)
		}
	}
}

// answer is the plan of a job; or what its problems are about, in one order:
// theirs is that of the fields in the text, and a number that is kept as text
// may be refused for that.
func answer(t *testing.T, job string) []string {
	plan := report.Handle([]byte(job))
	var bad struct {
		Problems []struct{ Path, Value string }
	}
	if err := json.Unmarshal(plan, &bad); err != nil {
		t.Fatal(err)
	}
	if len(bad.Problems) == 0 {
		return strings.Split(string(plan), "\n")
	}
	var lines []string
	for _, p := range bad.Problems {
		lines = append(lines, p.Path+" "+p.Value)
	}
	slices.Sort(lines)
	return lines
}

// entryRow is a row of testdata/entry.json: see its "about". That the page
// makes doc of typed is checked in test/entry.test.mjs.
type entryRow struct {
	Kind, Typed string
	Doc         json.RawMessage
	Is, Refused string
}

// TestEntryMeans: what the page makes of what was typed means, to the library,
// what was meant, or is refused.
func TestEntryMeans(t *testing.T) {
	data, err := os.ReadFile("testdata/entry.json")
	if err != nil {
		t.Fatal(err)
	}
	var table struct{ Rows []entryRow }
	if err := json.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	if len(table.Rows) < 100 {
		t.Fatalf("only %d rows", len(table.Rows))
	}
	for _, row := range table.Rows {
		if row.Kind == "text" {
			continue
		}
		got, code := meaning(row.Kind, row.Doc)
		if row.Refused != "" {
			if code != row.Refused {
				t.Errorf("%s %q is kept as %s, which the library reads as %s, %q; want it refused with %q", row.Kind,
					row.Typed, row.Doc, got, code, row.Refused)
			}
			continue
		}
		is, _ := json.Marshal(row.Is)
		if row.Kind == "count" {
			is = []byte(row.Is)
		}
		want, bad := meaning(row.Kind, is)
		if got != want || code != "" || bad != "" {
			t.Errorf("%s %q is kept as %s, which the library reads as %s, %q; want %s, %q", row.Kind, row.Typed,
				row.Doc, got, code, want, bad)
		}
	}
}

// meaning is what the library reads a value of the document as, exactly, or
// the code with which it refuses it.
func meaning(kind string, value json.RawMessage) (is, code string) {
	var s string
	if json.Unmarshal(value, &s) != nil {
		s = string(value)
	}
	var v any
	var err error
	switch kind {
	case "length":
		v, err = units.ParseLength(s)
	case "volume":
		v, err = units.ParseVolume(s)
	case "mass":
		v, err = units.ParseMass(s)
	case "density":
		v, err = units.ParseDensity(s)
	case "lengths":
		v, err = units.ParseDims(s)
	case "share":
		v, err = units.ParseRatio(s)
	case "money":
		v, err = units.ParseMoney(s)
	case "number":
		var n, d int64
		n, d, err = units.ParseNumber(s)
		v = fmt.Sprint(n, "/", d)
	case "area":
		var a ground.Area
		if a, err = ground.ParseArea(s); err == nil {
			v, err = a.Measure()
		}
	case "ball":
		var b task.Ball
		b, err = task.ParseBall(s)
		b.Text = ""
		v = fmt.Sprintf("%+v", b)
	case "parts":
		var m catalog.Mix
		m, err = catalog.ParseMix(s)
		v = m.Parts
	case "count":
		return inJob(value, `{"schema": 1, "tasks": [{"kind": "backfill", "holes": %s, "width": "18 in", `+
			`"depth": "6 in", "ball": "#1"}]}`, "tasks[0].holes")
	case "stock":
		return inJob(value, `{"schema": 1, "on_hand": {"peat": %s}, "tasks": [{"kind": "cover", `+
			`"area": "60 ft x 4 ft", "layer": "3 in", "material": "peat"}]}`, "on_hand.peat")
	}
	if e := (*units.Error)(nil); errors.As(err, &e) {
		return "", e.Code
	}
	if err != nil {
		return "", doc.ProblemsIn(err)[0].Code
	}
	return fmt.Sprint(v), ""
}

// inJob is the plan of a job with value in it, or the code of the problem at path.
func inJob(value json.RawMessage, job, path string) (is, code string) {
	p, err := mix.PlanDocument(fmt.Appendf(nil, job, value))
	for _, problem := range doc.ProblemsIn(err) {
		if problem.Path == path {
			return "", problem.Code
		}
	}
	if err != nil {
		return "", err.Error()
	}
	return string(report.Plan(p)), ""
}
