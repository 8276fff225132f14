package main

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/web/build/compile"
)

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
