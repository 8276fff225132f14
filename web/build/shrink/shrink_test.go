package shrink

import (
	"bytes"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/require"

	"example.org/barrow/web/build/compile"
	"example.org/barrow/web/test"
)

// linked is a program as Go links it, with the page's flags, made once for all
// tests. Nobody changes it.
var linked = sync.OnceValues(func() ([]byte, error) {
	// Reading the source makes go test run again when it changes, and not use a cached result.
	if _, err := os.ReadFile("testdata/program/main.go"); err != nil {
		return nil, err
	}
	small, err := compile.Small()
	if err != nil {
		return nil, err
	}
	return small.Program("./testdata/program")
})

// shrunk is what all passes make of it.
var shrunk = sync.OnceValue(func() []byte {
	program, err := linked()
	if err != nil {
		return nil
	}
	program, _ = Program(program)
	return program
})

func theLinked(t *testing.T) []byte {
	t.Helper()
	program, err := linked()
	require.NoError(t, err)
	return program
}

// TestRuns: a program that grows stacks, collects garbage, unwinds panics, jumps
// about and switches goroutines prints the same as Go links it, after all passes,
// and where a newer Go made it and one pass leaves it alone.
func TestRuns(t *testing.T) {
	t.Parallel()
	node := test.Node(t)
	goroot, err := compile.Tool(nil, "env", "GOROOT")
	require.NoError(t, err)
	loader, err := os.ReadFile(compile.Loader(goroot))
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "wasm_exec.js"), loader, 0o666))
	newer, steps := Program(bytes.ReplaceAll(theLinked(t), []byte("go1.26"), []byte("go1.27")))
	require.ErrorContains(t, steps[1].Alone, "go1.27")
	const want = "10937260 997 \"40\"\n"
	for name, program := range map[string][]byte{"linked": theLinked(t), "shrunk": shrunk(), "newer": newer} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			require.NoError(t, os.WriteFile(filepath.Join(dir, name), program, 0o666))
			out, err := exec.Command(node, "testdata/run.mjs", dir, name).CombinedOutput()
			require.NoError(t, err, "%s", out)
			require.Equal(t, want, string(out))
		})
	}
}

// TestTakesNamesOut: no name of a function and no file is left, and the program is
// as the format has it: what was read is read again, and nothing is left to do.
func TestTakesNamesOut(t *testing.T) {
	t.Parallel()
	require.True(t, bytes.Contains(theLinked(t), []byte("main.unwind")))
	for _, name := range []string{"main.unwind", "runtime/symtab.go"} {
		require.False(t, bytes.Contains(shrunk(), []byte(name)), name)
	}
	again, steps := Program(shrunk())
	require.True(t, bytes.Equal(shrunk(), again), "a second time changes it")
	for _, s := range steps {
		require.ErrorIs(t, s.Alone, errNothing, s.Pass)
	}
}

// TestSteps: each step is a pass, and the last one is the result.
func TestSteps(t *testing.T) {
	t.Parallel()
	_, steps := Program(theLinked(t))
	require.Len(t, steps, len(Passes))
	for k, s := range steps {
		require.Equal(t, Passes[k].Name, s.Pass)
		require.NoError(t, s.Alone, s.Pass)
	}
	require.True(t, bytes.Equal(shrunk(), steps[len(steps)-1].Program))
}

var savings = flag.Bool("savings", false, "measure what each pass saves of the page's program; takes minutes")

// TestSavings prints the table in doc.go.
func TestSavings(t *testing.T) {
	if !*savings {
		t.Skip("takes minutes: -savings asks for it")
	}
	program, err := compile.Page()
	require.NoError(t, err)
	first := brotliSize(t, program)
	_, steps := Program(program)
	before := first
	for k, p := range Passes {
		alone := "-"
		if out, err := p.Run(program); err == nil {
			alone = strconv.Itoa(first - brotliSize(t, out))
		}
		after := brotliSize(t, steps[k].Program)
		t.Logf("%-9s %7s %7d", p.Name, alone, before-after)
		before = after
	}
	t.Logf("%d as it is linked, %d after all", first, before)
}

func brotliSize(t *testing.T, b []byte) int {
	t.Helper()
	var out bytes.Buffer
	w := brotli.NewWriterLevel(&out, brotli.BestCompression)
	_, err := w.Write(b)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return out.Len()
}
