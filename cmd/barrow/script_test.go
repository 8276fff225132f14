package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/testscript"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/barrow/units/message"
)

const (
	scriptDir = "../../testdata/script"
	jobDir    = "../../testdata/jobs"
)

// TestMain makes the test binary the program itself where a script calls
// barrow. Tests that run the program in their own process have decimal points, wherever
// the machine is.
func TestMain(m *testing.M) {
	commands := map[string]func(){
		"barrow": func() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) },
	}
	if commands[filepath.Base(os.Args[0])] == nil {
		for _, name := range []string{"LC_ALL", "LC_NUMERIC", "LANG"} {
			os.Unsetenv(name)
		}
	}
	testscript.Main(m, commands)
}

// TestScripts runs the command line as people do. Beside testscript's own
// commands a script may use
//
//	status N barrow ARG...  run the program and demand the exit status
//	problems FILE WANT...   demand the problems of a job, all and in order
//	json FILE PATH WANT     demand one value of a JSON document
//	width FILE N            demand that no line is longer
//	plain FILE              demand text that cannot move a cursor
//	bytes FILE TEXT         write a file; \xNN stands for a byte
//	visit N barrow ARG...   run a server, get its page, end it as ctrl-C does
//	                        and demand the exit status; what it printed is in
//	                        the file said, the page in the file got
//
// and $JOBS, the folder of job files.
func TestScripts(t *testing.T) {
	t.Parallel()
	jobs, err := filepath.Abs(jobDir)
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 scriptDir,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("JOBS", jobs)
			// The race detector sleeps for a second at every exit.
			env.Setenv("GORACE", "atexit_sleep_ms=0 "+os.Getenv("GORACE"))
			return nil
		},
		Condition: func(cond string) (bool, error) {
			if cond == "root" {
				return os.Geteuid() == 0, nil
			}
			return false, fmt.Errorf("no condition %q", cond)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status":   status,
			"problems": wantProblems,
			"json":     wantValue,
			"width":    wantWidth,
			"plain":    wantPlain,
			"bytes":    writeBytes,
			"visit":    visit,
		},
	})
}

// status runs the program. A status of 0 leaves nothing on standard error but notes; any
// other leaves nothing on standard output and says why on standard error.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N barrow args...")
	}
	got := 0
	var exit *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	stdout, stderr := ts.ReadFile("stdout"), ts.ReadFile("stderr")
	switch {
	case strconv.Itoa(got) != args[0]:
		ts.Fatalf("exit status %d, want %s", got, args[0])
	case got == exitDone && stderr != "" && !strings.HasPrefix(stderr, "note: "):
		ts.Fatalf("done, and yet something on standard error")
	case got != exitDone && stdout != "":
		ts.Fatalf("exit status %d, and yet something on standard output", got)
	case got != exitDone && stderr == "":
		ts.Fatalf("exit status %d, and nothing says why", got)
	case got != exitDone:
		if why := notPlain(stderr); why != "" {
			ts.Fatalf("standard error: %s", why)
		}
	}
}

// problem is one entry of {"problems": [...]}.
type problem struct{ Path, Code, Value, Hint string }

// wantProblems compares a job's problems with the list given, in order: path |
// code | value, and, where there is a fourth field, words of the hint. The text
// that people read must have every value and hint too, and name the places as a plan
// does, counted from 1.
func wantProblems(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: problems FILE 'path | code | value | hint'...")
	}
	status(ts, false, []string{"1", "barrow", "plan", args[0], "--json"})
	var doc struct{ Problems []problem }
	d := json.NewDecoder(strings.NewReader(ts.ReadFile("stderr")))
	d.DisallowUnknownFields()
	if err := d.Decode(&doc); err != nil {
		ts.Fatalf("problems are not JSON: %v", err)
	}
	var got, want []string
	for i, p := range doc.Problems {
		line := p.Path + " | " + p.Code + " | " + p.Value
		got = append(got, strings.TrimSpace(line))
		if i+1 < len(args) {
			fields := strings.SplitN(args[i+1], " | ", 4)
			if len(fields) == 4 && !strings.Contains(p.Hint, fields[3]) {
				ts.Fatalf("%s: the hint is %q, want %q in it", p.Path, p.Hint, fields[3])
			}
		}
	}
	for _, w := range args[1:] {
		fields := strings.SplitN(w, " | ", 4)
		want = append(want, strings.TrimSpace(strings.Join(fields[:min(len(fields), 3)], " | ")))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		ts.Fatalf("problems of %s, -want +got:\n%s", args[0], diff)
	}

	status(ts, false, []string{"1", "barrow", "plan", args[0]})
	text := words(ts.ReadFile("stderr"))
	head := fmt.Sprintf("error: %d problem", len(got))
	if !strings.HasPrefix(text, head) {
		ts.Fatalf("the text starts with %.40q, want %q", text, head)
	}
	for _, p := range doc.Problems {
		one := words(p.Hint)
		if p.Value != "" {
			one = words(": " + strconv.Quote(p.Value) + " " + p.Hint)
		}
		if !strings.Contains(text, one) {
			ts.Fatalf("the text lacks %q", one)
		}
		// People count from 1.
		for _, at := range regexp.MustCompile(`^(task|offer)s\[(\d+)\]`).FindAllStringSubmatch(p.Path, 1) {
			n, _ := strconv.Atoi(at[2])
			if place := fmt.Sprintf(`\b%s %d\b`, at[1], n+1); !regexp.MustCompile(place).MatchString(text) {
				ts.Fatalf("the text lacks %q, for %s", place, p.Path)
			}
		}
	}
	if path := regexp.MustCompile(`\w\[\d+\]`).FindString(text); path != "" {
		ts.Fatalf("the text counts from 0: %s", path)
	}
}

// words joins words with single spaces.
func words(s string) string { return strings.Join(strings.Fields(s), " ") }

// wantValue looks one value up, as in needs.0.material.
func wantValue(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: json FILE PATH WANT")
	}
	d := json.NewDecoder(strings.NewReader(ts.ReadFile(args[0])))
	d.UseNumber()
	var at any
	if err := d.Decode(&at); err != nil {
		ts.Fatalf("%s: %v", args[0], err)
	}
	if _, err := d.Token(); err != io.EOF {
		ts.Fatalf("%s: more than one document", args[0])
	}
	for step := range strings.SplitSeq(args[1], ".") {
		switch in := at.(type) {
		case map[string]any:
			at = in[step]
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i < 0 || i >= len(in) {
				ts.Fatalf("%s: no %s in a list of %d", args[1], step, len(in))
			}
			at = in[i]
		default:
			ts.Fatalf("%s: nothing at %s", args[1], step)
		}
	}
	got := fmt.Sprint(at)
	if list, is := at.([]any); is {
		got = fmt.Sprint(len(list)) + " elements"
	}
	if got != args[2] {
		ts.Fatalf("%s is %s, want %s", args[1], got, args[2])
	}
}

// wantWidth fails on a line longer than the terminal.
func wantWidth(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: width FILE N")
	}
	most, err := strconv.Atoi(args[1])
	ts.Check(err)
	text := ts.ReadFile(args[0])
	if text == "" {
		ts.Fatalf("%s is empty", args[0])
	}
	if line := tooLong(text, most); line != "" {
		ts.Fatalf("%s has a line of %d columns:\n%s", args[0], utf8.RuneCountInString(line), line)
	}
}

// tooLong returns the first line longer than most characters, or "".
func tooLong(text string, most int) string {
	for line := range strings.SplitSeq(text, "\n") {
		if utf8.RuneCountInString(line) > most {
			return line
		}
	}
	return ""
}

func wantPlain(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: plain FILE")
	}
	if why := notPlain(ts.ReadFile(args[0])); why != "" {
		ts.Fatalf("%s: %s", args[0], why)
	}
}

// notPlain returns what makes a text unfit for a terminal or a file, or "".
func notPlain(text string) string {
	switch i := strings.IndexFunc(text, func(r rune) bool { return message.IsControl(r) && r != '\n' }); {
	case text == "":
		return "empty"
	case i >= 0:
		return fmt.Sprintf("control character at byte %d: %q", i, text[i:min(i+20, len(text))])
	case !utf8.ValidString(text):
		return "not UTF-8"
	case !strings.HasSuffix(text, "\n"):
		return "does not end its last line"
	}
	return ""
}

// writeBytes writes a file that a text archive cannot contain.
func writeBytes(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: bytes FILE TEXT")
	}
	hex := regexp.MustCompile(`\\x[0-9a-f]{2}`)
	data := hex.ReplaceAllStringFunc(args[1], func(s string) string {
		b, _ := strconv.ParseUint(s[2:], 16, 8)
		return string([]byte{byte(b)})
	})
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(data), 0o666))
}

// TestEveryFlagIsScripted walks through the commands. It fails where no script
// would notice that a command or a flag has gone, or where no script checks an
// exit status that a command can end with. Commands and flags that come from the
// tables of the document are checked by the tests in tasks_test.go instead: a new
// field or kind of task needs no script.
func TestEveryFlagIsScripted(t *testing.T) {
	calls := scriptedCalls(t)
	root := (&app{in: strings.NewReader(""), out: io.Discard, err: io.Discard}).root()
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd("")
	seen := 0
	var walk func(c *cobra.Command)
	walk = func(c *cobra.Command) {
		seen++
		path := strings.Fields(c.CommandPath())[1:]
		c.InitDefaultHelpFlag()
		if !calls.any(path, "") && !isGenerated(c.Name()) {
			t.Errorf("no script calls %q", c.CommandPath())
		}
		check := func(f *pflag.Flag) {
			if !calls.any(path, "--"+f.Name) && !isField(f.Value) && !isGenerated(c.Name()) {
				t.Errorf("no script calls %q with --%s", c.CommandPath(), f.Name)
			}
		}
		c.Flags().VisitAll(check)
		c.PersistentFlags().VisitAll(check)
		if c.Runnable() && len(path) == 1 && !isGenerated(c.Name()) {
			if _, err := os.Stat(filepath.Join(scriptDir, path[0]+".txtar")); err != nil {
				t.Errorf("%s has no script of its own", path[0])
			}
			for _, n := range exitsOf(path[0]) {
				if !calls.exit(path, n) {
					t.Errorf("no script has %s end with status %s", path[0], n)
				}
			}
		}
		for _, sub := range c.Commands() {
			walk(sub)
		}
	}
	walk(root)
	if seen < 10 {
		t.Errorf("only %d commands walked", seen)
	}
}

// exitsOf lists the exit statuses that a command can end with.
func exitsOf(command string) []string {
	switch command {
	case "help", "completion":
		return []string{"0"}
	case "list", "sample", "serve":
		return []string{"0", "2"}
	}
	return []string{"0", "1", "2"}
}

// call is one call of the program in a script: its words, and the exit status
// demanded of it, "" for none.
type call struct {
	words []string
	exit  string
}

type callList []call

func (l callList) any(path []string, flag string) bool {
	return slices.ContainsFunc(l, func(c call) bool {
		return c.has(path) && (flag == "" || slices.ContainsFunc(c.words, func(w string) bool {
			return w == flag || strings.HasPrefix(w, flag+"=")
		}))
	})
}

func (l callList) exit(path []string, n string) bool {
	return slices.ContainsFunc(l, func(c call) bool { return c.has(path) && c.exit == n })
}

func (c call) has(path []string) bool {
	return len(c.words) >= len(path) && slices.Equal(c.words[:len(path)], path)
}

// scriptedCalls reads every call of the program from the scripts.
func scriptedCalls(t *testing.T) (calls callList) {
	scripts, err := filepath.Glob(filepath.Join(scriptDir, "*.txtar"))
	if err != nil || len(scripts) == 0 {
		t.Fatalf("no scripts in %s: %v", scriptDir, err)
	}
	for _, name := range scripts {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.SplitSeq(string(text), "\n") {
			if strings.HasPrefix(line, "-- ") {
				break // the files of the archive
			}
			w := scriptWords(line)
			i := slices.Index(w, "barrow")
			if i < 1 || strings.HasPrefix(line, "#") {
				continue
			}
			c := call{words: w[i+1:]}
			if i >= 2 && (w[i-2] == "status" || w[i-2] == "visit") {
				c.exit = w[i-1]
			}
			calls = append(calls, c)
		}
	}
	return calls
}

// scriptWords splits a line of a script, where ' ' holds words together.
func scriptWords(line string) (out []string) {
	word, in, quoted := "", false, false
	for i := 0; i <= len(line); i++ {
		switch {
		case i == len(line) || !quoted && (line[i] == ' ' || line[i] == '\t'):
			if in {
				out = append(out, word)
			}
			word, in = "", false
		case line[i] == '\'':
			quoted, in = !quoted, true
		default:
			word, in = word+line[i:i+1], true
		}
	}
	return out
}

// TestHugeFile gives the program a file of 100 MB, three times what a job may
// have. It must be refused without being held in memory.
func TestHugeFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "huge.json")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.WriteString(`{"schema": 1, "name": "`)
	for chunk := bytes.Repeat([]byte("mulch "), 1<<16); err == nil; {
		info, _ := f.Stat()
		if info.Size() > 100_000_000 {
			break
		}
		_, err = f.Write(chunk)
	}
	if err = errors.Join(err, f.Close()); err != nil {
		t.Fatal(err)
	}
	for _, way := range []string{"file", "stdin"} {
		t.Run(way, func(t *testing.T) {
			in, err := os.Open(name)
			if err != nil {
				t.Fatal(err)
			}
			defer in.Close()
			arg := name
			if way == "stdin" {
				arg = "-"
			}
			var out, errOut bytes.Buffer
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			got := run([]string{"plan", arg, "--json"}, in, &out, &errOut)
			runtime.ReadMemStats(&after)
			if got != exitProblems || out.Len() > 0 {
				t.Errorf("run = %d with %d bytes on standard output, want %d with none", got, out.Len(), exitProblems)
			}
			var doc struct{ Problems []problem }
			if err := json.Unmarshal(errOut.Bytes(), &doc); err != nil {
				t.Fatalf("%v in %.200q", err, errOut.String())
			}
			if len(doc.Problems) != 1 || doc.Problems[0].Code != "json.size" {
				t.Errorf("problems = %+v, want one json.size", doc.Problems)
			}
			if took := (after.TotalAlloc - before.TotalAlloc) >> 20; took > 200 {
				t.Errorf("refusing it took %d MB, want at most 200", took)
			}
		})
	}
}

// TestOutLeavesNothingBehind makes --out fail at each step that can fail.
// Afterwards the folder must hold what it held before.
func TestOutLeavesNothingBehind(t *testing.T) {
	for _, test := range []struct {
		name  string
		setUp func(t *testing.T, dir string) (file string)
		args  []string
		want  int
	}{
		{"bad job", func(t *testing.T, dir string) string {
			must(t, os.WriteFile(filepath.Join(dir, "plan.txt"), []byte("older"), 0o666))
			return filepath.Join(dir, "plan.txt")
		}, []string{"cover", "--area", "60 ft x 4 ft", "--layer", "3 inchs", "--material", "bark-mulch"}, exitProblems},
		{"bad command line", func(t *testing.T, dir string) string { return filepath.Join(dir, "plan.txt") },
			[]string{"plan", "--sample", "--json", "--csv"}, exitUsage},
		{"no folder", func(t *testing.T, dir string) string { return filepath.Join(dir, "none", "plan.txt") },
			[]string{"plan", "--sample"}, exitUsage},
		{"folder that cannot be written", func(t *testing.T, dir string) string {
			if os.Geteuid() == 0 {
				t.Skip("root may write anywhere")
			}
			closed := filepath.Join(dir, "closed")
			must(t, os.Mkdir(closed, 0o555))
			t.Cleanup(func() { os.Chmod(closed, 0o755) })
			return filepath.Join(closed, "plan.txt")
		}, []string{"plan", "--sample"}, exitUsage},
		{"a folder of that name", func(t *testing.T, dir string) string {
			must(t, os.MkdirAll(filepath.Join(dir, "plan.txt", "inside"), 0o777))
			return filepath.Join(dir, "plan.txt")
		}, []string{"plan", "--sample"}, exitUsage},
		{"a file in place of the folder", func(t *testing.T, dir string) string {
			must(t, os.WriteFile(filepath.Join(dir, "file"), []byte("older"), 0o666))
			return filepath.Join(dir, "file", "plan.txt")
		}, []string{"plan", "--sample"}, exitUsage},
	} {
		t.Run(test.name, func(t *testing.T) {
			dir := t.TempDir()
			file := test.setUp(t, dir)
			before := tree(t, dir)
			var out, errOut bytes.Buffer
			got := run(append(test.args, "--out", file), strings.NewReader(""), &out, &errOut)
			if got != test.want || out.Len() > 0 || errOut.Len() == 0 {
				t.Errorf("run = %d, %q, %q; want %d and only an error", got, out.String(), errOut.String(), test.want)
			}
			if diff := cmp.Diff(before, tree(t, dir)); diff != "" {
				t.Errorf("the folder has changed, -before +after:\n%s", diff)
			}
		})
	}
}

// TestFilesFailApart: of a plot and a plan that both go to files, each is written
// where it can be, and all that went wrong is told.
func TestFilesFailApart(t *testing.T) {
	for _, test := range []struct {
		plot, out string // below none nothing can be written
		status    int
		written   []string
	}{
		{"plot.svg", "plan.txt", exitDone, []string{"plan.txt", "plot.svg"}},
		{"none/plot.svg", "plan.txt", exitUsage, []string{"plan.txt"}},
		{"plot.svg", "none/plan.txt", exitUsage, []string{"plot.svg"}},
		{"none/plot.svg", "none/plan.txt", exitUsage, nil},
		{"none/plot.svg", "", exitUsage, nil},
	} {
		dir := t.TempDir()
		args := []string{"plan", "--sample", "--plot", filepath.Join(dir, test.plot)}
		if test.out != "" {
			args = append(args, "--out", filepath.Join(dir, test.out))
		}
		var out, errOut bytes.Buffer
		if got := run(args, strings.NewReader(""), &out, &errOut); got != test.status || out.Len() > 0 {
			t.Errorf("%v: run = %d, want %d, and %d bytes on standard output", args, got, test.status, out.Len())
		}
		var errs, want []string
		for line := range strings.Lines(errOut.String()) {
			if name, ok := strings.CutPrefix(line, "error: "+dir+"/"); ok {
				errs = append(errs, strings.TrimSpace(name))
			}
		}
		for _, name := range []string{test.plot, test.out} {
			if strings.HasPrefix(name, "none/") {
				want = append(want, name+": ")
			}
		}
		if len(errs) != len(want) {
			t.Errorf("%v: %q, want one error for each of %q", args, errOut.String(), want)
		}
		for i := range min(len(errs), len(want)) {
			if !strings.HasPrefix(errs[i], want[i]) {
				t.Errorf("%v: %q, want it to be about %s", args, errs[i], want[i])
			}
		}
		var written []string
		for name := range tree(t, dir) {
			if name != dir {
				written = append(written, filepath.Base(name))
			}
		}
		slices.Sort(written)
		if diff := cmp.Diff(test.written, written); diff != "" {
			t.Errorf("%v: the folder, -want +got:\n%s", args, diff)
		}
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// tree lists a folder: every file with what is in it.
func tree(t *testing.T, dir string) map[string]string {
	found := map[string]string{}
	must(t, filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			found[path] = "folder"
			return err
		}
		data, err := os.ReadFile(path)
		found[path] = string(data)
		return err
	}))
	return found
}
