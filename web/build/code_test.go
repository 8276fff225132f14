package main

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestCodeReadsBack: what is written is what was read, all of a linked program.
func TestCodeReadsBack(t *testing.T) {
	linked, err := emptyProgram()
	require.NoError(t, err)
	m, err := readModule(linked)
	require.NoError(t, err)
	section, err := m.find(codeID)
	require.NoError(t, err)
	list, err := readFunctions(section.body)
	require.NoError(t, err)
	require.Greater(t, len(list), 1000)
	written := writeFunctions(list)
	again, err := readFunctions(written)
	require.NoError(t, err)
	require.Equal(t, list, again)
	require.Equal(t, written, writeFunctions(again))
	for cut := range 10 {
		_, err := readFunctions(section.body[:len(section.body)-1-cut])
		require.ErrorIs(t, err, errNotGo)
	}
}

// TestCodeRefuses: bodies that are not as the format has them.
func TestCodeRefuses(t *testing.T) {
	for name, body := range map[string][]byte{
		"nothing":                   {},
		"no end":                    {0},
		"more after the end":        {0, opEnd, opEnd},
		"a block that does not end": {0, opBlock, noResult, opEnd},
		"a jump out of the body":    {0, opBr, 1, opEnd},
		"a type of the module's":    {0, opBlock, 0, opEnd, opEnd},
		"a long number":             slices.Concat([]byte{0, opI64Const}, slices.Repeat([]byte{0x80}, 10), []byte{0, opEnd}),
		"half a load":               {0, 0x28, 2},
		"an unknown instruction":    {0, 0xfb, opEnd},
	} {
		_, err := readFunctions(slices.Concat([]byte{1, byte(len(body))}, body))
		require.ErrorIs(t, err, errNotGo, name)
	}
}
