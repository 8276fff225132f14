package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/web/build/compile"
)

// TestCompile: the same program each time, with no path of this machine in it, and
// the compiler's own words where it fails. Package compile has no tests of its own:
// these share what is compiled here.
func TestCompile(t *testing.T) {
	t.Parallel()
	first, err := compile.Empty()
	require.NoError(t, err)
	again, err := compile.Empty()
	require.NoError(t, err)
	require.Equal(t, "\x00asm", string(first[:4]))
	require.True(t, string(first) == string(again), "two builds of the empty program differ")

	made, err := once()
	require.NoError(t, err)
	here, err := os.Getwd()
	require.NoError(t, err)
	for _, path := range []string{here, os.TempDir() + "/barrow-"} {
		require.False(t, strings.Contains(string(made.linked), path), "%s is in the program", path)
		require.False(t, strings.Contains(string(made.files["barrow.wasm"]), path), "%s is in the program", path)
	}
	require.Greater(t, len(made.linked), len(first))

	small, err := compile.Small()
	require.NoError(t, err)
	_, err = small.Program(compile.Module + "/none")
	require.ErrorContains(t, err, "none")
}
