package main

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestSlimRuns: a program that grows stacks, collects garbage, unwinds panics,
// jumps about and switches goroutines prints the same after slim as before.
// TestSameBytes does the same for the library.
func TestSlimRuns(t *testing.T) {
	node := needNode(t)
	linked, err := compileSmall("./testdata/slim")
	require.NoError(t, err)
	small, err := slim(linked)
	require.NoError(t, err)
	goroot, err := goTool(nil, "env", "GOROOT")
	require.NoError(t, err)
	loader, err := os.ReadFile(loaderOf(goroot))
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "wasm_exec.js"), loader, 0o666))
	run := func(name string, program []byte) string {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), program, 0o666))
		out, err := exec.Command(node, "testdata/run.mjs", dir, name).CombinedOutput()
		require.NoError(t, err, "%s", out)
		return string(out)
	}
	want := run("linked.wasm", linked)
	require.Contains(t, want, "997")
	require.Equal(t, want, run("slim.wasm", small))
}

// TestSlimKeepsMemory: joined or not, segments lay the same memory out, in
// whatever order they come.
func TestSlimKeepsMemory(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		var list []segment
		at := int64(0)
		for range draw.IntN(40) {
			at += draw.Int64N(9000)
			b := make([]byte, 1+draw.IntN(50))
			for i := range b {
				b[i] = byte(draw.IntN(256))
			}
			list = append(list, segment{at, b})
			at += int64(len(b))
		}
		draw.Shuffle(len(list), func(i, k int) { list[i], list[k] = list[k], list[i] })
		joined, err := joinSegments(list)
		require.NoError(t, err)
		require.LessOrEqual(t, len(joined), len(list))
		require.True(t, bytes.Equal(memoryOf(list), memoryOf(joined)))
		back, err := readSegments(writeSegments(joined))
		require.NoError(t, err)
		require.True(t, bytes.Equal(memoryOf(list), memoryOf(back)))
	}
	_, err := joinSegments([]segment{{10, make([]byte, 5)}, {14, []byte{1}}})
	require.ErrorIs(t, err, errNotGo, "one segment over another")
}

func memoryOf(list []segment) []byte {
	memory := make([]byte, 1<<19)
	for _, s := range list {
		copy(memory[s.at:], s.bytes)
	}
	return memory
}

// TestSlimTakesNamesOut: no name of a function and no file is left, and the
// program is as the format has it: what was read is read again.
func TestSlimTakesNamesOut(t *testing.T) {
	linked, err := compileSmall("./testdata/slim")
	require.NoError(t, err)
	require.Contains(t, string(linked), "main.unwind")
	small, err := slim(linked)
	require.NoError(t, err)
	require.NotContains(t, string(small), "main.unwind")
	require.NotContains(t, string(small), "runtime/symtab.go")
	again, err := slim(small)
	require.NoError(t, err)
	require.True(t, bytes.Equal(small, again), "slim of what is slim changes it")
}

// TestSlimRefuses: what is not as the linker writes it is refused, never half
// rewritten.
func TestSlimRefuses(t *testing.T) {
	linked, err := emptyProgram()
	require.NoError(t, err)
	for _, bad := range [][]byte{nil, []byte("text"), []byte(magic), linked[:len(linked)-1], linked[:1000], append(bytes.Clone(linked), dataCountID, 1, 0)} {
		_, err := slim(bad)
		require.ErrorIs(t, err, errNotGo)
	}
}
