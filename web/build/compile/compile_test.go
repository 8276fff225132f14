package compile

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	_ "example.org/barrow/wasm/answer" // so that a cached result is of the library as it is
)

// TestProgram: the same program each time, with no path of this machine in it, and
// the compiler's own words where it fails.
func TestProgram(t *testing.T) {
	first, err := Empty()
	require.NoError(t, err)
	again, err := Empty()
	require.NoError(t, err)
	require.Equal(t, "\x00asm", string(first[:4]))
	require.True(t, string(first) == string(again), "two builds of the empty program differ")

	program, err := Page()
	require.NoError(t, err)
	here, err := os.Getwd()
	require.NoError(t, err)
	for _, path := range []string{here, os.TempDir() + "/barrow-"} {
		require.False(t, strings.Contains(string(program), path), "%s is in the program", path)
	}
	require.Greater(t, len(program), len(first))

	small, err := Small()
	require.NoError(t, err)
	_, err = small.Program(Module + "/none")
	require.ErrorContains(t, err, "none")
}
