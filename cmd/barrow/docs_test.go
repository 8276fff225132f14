package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

const repository = "../.."

// TestDocumentedCommands runs every command of the program that README.md and
// DEVELOPERS.md show, and every example of the help texts: each is done, with
// nothing on standard error. The files of one text are in one folder, in order.
func TestDocumentedCommands(t *testing.T) {
	texts := map[string][]string{}
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text := readFile(t, name)
		texts[name] = indented(text, "    ")
		for _, found := range inSentence.FindAllStringSubmatch(text, -1) {
			texts[name] = append(texts[name], strings.ReplaceAll(found[1], "\n", " "))
		}
	}
	for _, c := range allCommands((&app{}).root()) {
		if c.Example != "" {
			example := strings.ReplaceAll(c.Example, "\\\n    ", "")
			texts["barrow "+c.Name()+" --help"] = indented(example, "  ")
		}
	}
	count := 0
	for name, lines := range texts {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			if !slices.ContainsFunc(lines, func(line string) bool { return strings.HasPrefix(line, "barrow sample my-job.json") }) {
				succeed(t, "sample", "my-job.json") // a reader has it by then
			}
			for _, line := range lines {
				words := shellWords(line)
				if len(words) < 2 || words[0] != "barrow" || words[1] == "serve" {
					continue // serve has tests of its own
				}
				count++
				succeed(t, words[1:]...)
			}
		})
	}
	if count < 30 {
		t.Errorf("only %d commands were run", count)
	}
}

// inSentence finds a command of the program in the middle of a text.
var inSentence = regexp.MustCompile("`(barrow [^`]+)`")

// allCommands lists a command and those below it.
func allCommands(c *cobra.Command) []*cobra.Command {
	list := []*cobra.Command{c}
	for _, sub := range c.Commands() {
		list = append(list, allCommands(sub)...)
	}
	return list
}

// TestCommandsOnCI: every other command that the texts and the package comments
// show is one that .ci/run runs, but for where it writes and for how long it may
// take; and so is every fuzz test.
func TestCommandsOnCI(t *testing.T) {
	run := map[string]bool{}
	for line := range strings.Lines(readFile(t, ".ci/run")) {
		run[same(shellWords(line))] = true
	}
	want := map[string]string{}
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		for _, line := range indented(readFile(t, name), "    ") {
			want[line] = name
		}
	}
	fuzz := regexp.MustCompile(`(?m)^func (Fuzz\w+)\(`)
	for _, name := range goFiles(t) {
		text := readFile(t, name)
		for _, line := range indented(text, "//\t") {
			want[line] = name
		}
		for _, found := range fuzz.FindAllStringSubmatch(text, -1) {
			want["go test ./"+filepath.ToSlash(filepath.Dir(name))+" -run '^$' -fuzz "+found[1]+" -fuzztime 100000x -fuzzminimizetime 10x"] = name
		}
	}
	count := 0
	for line, name := range want {
		words := shellWords(line)
		switch {
		case len(words) < 2 || words[0] != "go" && words[0] != "npm":
		case slices.Equal(words, []string{"go", "run", "./cmd/barrow", "serve"}): // it has tests of its own
		case slices.Contains([]string{"test", "run", "vet", "install", "--prefix"}, words[1]):
			count++
			if !run[same(words)] {
				t.Errorf("%s: .ci/run does not run %q", name, strings.Join(words, " "))
			}
		default:
			t.Errorf("%s: nothing holds %q", name, line)
		}
	}
	if count < 12 {
		t.Errorf("only %d commands were found", count)
	}
	if info, err := os.Stat(filepath.Join(repository, ".ci/run")); err != nil || info.Mode()&0o111 == 0 {
		t.Errorf(".ci/run cannot be run: %v", err)
	}
}

func readFile(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(repository, name))
	must(t, err)
	return string(data)
}

// goFiles lists the Go files of the repository, from its root.
func goFiles(t *testing.T) (list []string) {
	t.Helper()
	must(t, filepath.WalkDir(repository, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "node_modules" || d.Name() == ".git"):
			return filepath.SkipDir
		case strings.HasSuffix(path, ".go"):
			name, err := filepath.Rel(repository, path)
			list = append(list, name)
			return err
		}
		return nil
	}))
	return list
}

// indented are the lines of a text that start with so much, without it.
func indented(text, start string) (lines []string) {
	for line := range strings.Lines(text) {
		if rest, ok := strings.CutPrefix(line, start); ok {
			lines = append(lines, strings.TrimRight(rest, "\n"))
		}
	}
	return lines
}

// shellWords are the words of a command line, without quotes. A comment ends it,
// and so do two spaces before what the command does.
func shellWords(line string) (words []string) {
	var word []byte
	in, quote := false, byte(0)
	end := func() {
		if in {
			words = append(words, string(word))
		}
		word, in = word[:0], false
	}
	line = strings.TrimSpace(line)
	for i := 0; i < len(line); i++ {
		c := line[i]
		switch {
		case quote == '"' && c == '\\' && i+1 < len(line):
			i++
			word = append(word, line[i])
		case quote != 0 && c == quote:
			quote = 0
		case quote == 0 && (c == '"' || c == '\''):
			quote, in = c, true
		case quote == 0 && c == ' ':
			end()
			if strings.HasPrefix(line[i:], "  ") {
				return words
			}
		case quote == 0 && c == '#' && !in:
			return words
		default:
			word, in = append(word, c), true
		}
	}
	end()
	return words
}

// mayDiffer are flags, each with a value, that a text and .ci/run may give in
// different ways.
var mayDiffer = []string{"-out", "-timeout", "-solver"}

// same is a command less what may differ: a limit of time before it, and where
// its output goes after it.
func same(words []string) string {
	if len(words) > 2 && words[0] == "timeout" {
		words = words[2:]
	}
	var kept bytes.Buffer
	for i := 0; i < len(words); i++ {
		switch w := words[i]; {
		case slices.Contains(mayDiffer, w):
			i++
		case strings.HasPrefix(w, ">"):
		default:
			kept.WriteString(w + "\n")
		}
	}
	return kept.String()
}
