package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/task"
)

const helpDir = "../../testdata/help"

// TestHelp holds what every command says of itself to a file, so that no flag
// comes or goes unseen; go test ./cmd/barrow -run TestHelp -update writes them.
func TestHelp(t *testing.T) {
	known := map[string]bool{}
	for _, c := range (&app{}).root().Commands() {
		name := c.Name() + ".txt"
		known[name] = true
		text := succeed(t, "help", c.Name())
		if line := tooLong(text, width); line != "" {
			t.Errorf("%s: a line of more than %d columns: %s", name, width, line)
		}
		golden(t, filepath.Join(helpDir, name), text)
	}
	stale(t, helpDir, known)
}

// TestTaskFlags: every field that can be written in one line is a flag of the
// commands whose tasks have it, and what is wrong with it is told at that flag.
func TestTaskFlags(t *testing.T) {
	for _, k := range task.Kinds() {
		command := []string{k.Name}
		if k.Name == "fill" {
			command = append(command, "1x#1")
		}
		for _, f := range append(k.Object.Fields(), task.Object.Fields()...) {
			if f.Name == "kind" || f.Name == "name" || !inOneLine(f.Type) {
				continue
			}
			flag := "--" + flagName(f.Name)
			var out, errOut bytes.Buffer
			got := run(append(command, flag, "3 oddities"), strings.NewReader(""), &out, &errOut)
			if got != exitProblems || out.Len() > 0 || !strings.Contains(errOut.String(), "\n  "+flag) {
				t.Errorf("barrow %s %s, a value that is none: exit status %d, %s", k.Name, flag, got, errOut.String())
			}
		}
	}
}

// TestTaskCommands: a task of a good job gives the same plan on the command line
// as in a document of its own. Every kind that takes flags alone has such a task.
func TestTaskCommands(t *testing.T) {
	same := map[string]int{}
	for _, one := range goodTasks(t) {
		args, ok := one.flags()
		if !ok {
			continue
		}
		document := `{"schema": 1, "tasks": [` + one.text(t) + `]}`
		var plan, errOut bytes.Buffer
		if run([]string{"plan", "-", "--json"}, strings.NewReader(document), &plan, &errOut) != exitDone {
			continue // it needs its job's own mixes, materials or containers
		}
		if diff := cmp.Diff(plan.String(), succeed(t, append(args, "--json")...)); diff != "" {
			t.Errorf("barrow %q, -document +flags:\n%s", args, diff)
		}
		same[args[0]]++
	}
	for _, name := range task.Names() {
		if name == "fill" { // its containers stand outside the flags
			continue
		}
		if same[name] == 0 {
			t.Errorf("no good job has a task of kind %s that can be written as flags", name)
		}
		if got := run([]string{name}, strings.NewReader(""), &bytes.Buffer{}, &bytes.Buffer{}); got != exitProblems {
			t.Errorf("barrow %s, with nothing said: exit status %d, want %d", name, got, exitProblems)
		}
		if got := run([]string{name, "stray"}, strings.NewReader(""), &bytes.Buffer{}, &bytes.Buffer{}); got != exitUsage {
			t.Errorf("barrow %s stray: exit status %d, want %d", name, got, exitUsage)
		}
	}
}

// jobTask is a task as its document has it.
type jobTask map[string]any

// goodTasks are the tasks of the sample and of every good job, without names.
func goodTasks(t *testing.T) (list []jobTask) {
	t.Helper()
	docs := [][]byte{mix.Sample()}
	files, err := filepath.Glob(filepath.Join(jobDir, "good-*.json"))
	must(t, err)
	for _, name := range files {
		data, err := os.ReadFile(name)
		must(t, err)
		docs = append(docs, data)
	}
	for _, data := range docs {
		d := json.NewDecoder(bytes.NewReader(data))
		d.UseNumber()
		var job struct{ Tasks []jobTask }
		must(t, d.Decode(&job))
		for _, one := range job.Tasks {
			delete(one, "name")
			list = append(list, one)
		}
	}
	return list
}

func (j jobTask) text(t *testing.T) string {
	t.Helper()
	data, err := json.Marshal(j)
	must(t, err)
	return string(data)
}

// flags writes the task as a command; ok is false when a field is more than one
// line.
func (j jobTask) flags() (args []string, ok bool) {
	k := kindOf(j["kind"].(string))
	args = []string{k.Name}
	for _, f := range append(k.Object.Fields(), task.Object.Fields()...) {
		value, has := j[f.Name]
		if !has || f.Name == "kind" {
			continue
		}
		typed, ok := asTyped(f.Type, value)
		if !ok {
			return nil, false
		}
		args = append(args, "--"+flagName(f.Name), typed)
	}
	return args, true
}

// asTyped is a value of a document in one line.
func asTyped(of *doc.Type, value any) (typed string, ok bool) {
	switch v := value.(type) {
	case string:
		return v, inOneLine(of)
	case json.Number:
		return v.String(), inOneLine(of)
	case map[string]any:
		if of.Form != "object" || len(of.Between) == 0 {
			return "", false
		}
		var parts []string
		for i, f := range of.Of().Fields() {
			if part, has := v[f.Name]; has {
				text, ok := asTyped(f.Type, part)
				if !ok || i > len(of.Between) {
					return "", false
				}
				if i > 0 {
					parts = append(parts, of.Between[i-1])
				}
				parts = append(parts, text)
			}
		}
		return strings.Join(parts, " "), true
	}
	return "", false
}

// succeed runs the program and gives what it writes.
func succeed(t *testing.T, args ...string) string {
	t.Helper()
	var out, errOut bytes.Buffer
	if got := run(args, strings.NewReader(""), &out, &errOut); got != exitDone || errOut.Len() > 0 {
		t.Fatalf("barrow %q: exit status %d, %s", args, got, errOut.String())
	}
	return out.String()
}

// isField reports whether a flag is a field of the document, which TestTaskFlags
// holds, and TestHelp to its name.
func isField(value any) bool {
	_, ok := value.(*field)
	return ok
}

// isGenerated reports whether a command is made from the table of its kind alone,
// which TestTaskCommands holds.
func isGenerated(name string) bool { return name != "fill" && slices.Contains(task.Names(), name) }
