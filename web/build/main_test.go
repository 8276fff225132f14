package main

import (
	"bytes"
	"encoding/json"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/web/build/compile"
)

// TestUsage: a wrong command line is told in a sentence, and ends with 2.
func TestUsage(t *testing.T) {
	program := filepath.Join(t.TempDir(), "build")
	said, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput()
	require.NoError(t, err, string(said))
	for _, tt := range []struct{ arg, want string }{
		{"-oot", "error: there is no flag -oot; there are -out FOLDER, -quiet and -flags\n"},
		{"-out", "error: -out has nothing after it: write -out FOLDER\n"},
		{"-quiet=maybe", "error: a flag is written wrongly; there are -out FOLDER, -quiet and -flags\n"},
		{"dist", "error: \"dist\" belongs to no flag; there are -out FOLDER, -quiet and -flags\n"},
	} {
		said, err := exec.Command(program, tt.arg).CombinedOutput()
		var exit *exec.ExitError
		require.ErrorAs(t, err, &exit)
		require.Equal(t, 2, exit.ExitCode(), tt.arg)
		require.Equal(t, tt.want, string(said))
	}
}

// TestPrintFlags: what is printed is how the build compiles.
func TestPrintFlags(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, printFlags(&out))
	var got struct{ Plain, Page compile.Settings }
	require.NoError(t, json.Unmarshal(out.Bytes(), &got))
	small, err := compile.Small()
	require.NoError(t, err)
	require.Equal(t, small, got.Page)
	require.Equal(t, compile.Plain(), got.Plain)
	require.Greater(t, len(got.Page.Flags), len(got.Plain.Flags))
}
