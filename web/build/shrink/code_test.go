package shrink

import (
	"bytes"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestCodeReadsBack: what is written is what was read, all of a linked program.
func TestCodeReadsBack(t *testing.T) {
	t.Parallel()
	m, err := readModule(theLinked(t))
	require.NoError(t, err)
	body := m.body(codeID)
	list, err := readFunctions(body)
	require.NoError(t, err)
	require.Greater(t, len(list), 1000)
	written := writeFunctions(list)
	again, err := readFunctions(written)
	require.NoError(t, err)
	require.True(t, slices.EqualFunc(list, again, function.equal))
	require.True(t, bytes.Equal(written, writeFunctions(again)))
	_, err = readFunctions(body[:len(body)-1])
	require.ErrorIs(t, err, errCode)
}

// TestCodeCut: nothing that is cut off is read.
func TestCodeCut(t *testing.T) {
	m, err := readModule(tiny().bytes())
	require.NoError(t, err)
	body := m.body(codeID)
	for cut := range body {
		_, err := readFunctions(body[:cut])
		require.ErrorIs(t, err, errCode, cut)
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
		"another memory":            {0, 0x28, 0x42, 1, 0, opEnd},
		"many locals":               {0xff, 0xff, 0xff, 0xff, 7, 1, typeI32, opEnd},
	} {
		_, err := readFunctions(slices.Concat([]byte{1, byte(len(body))}, body))
		require.ErrorIs(t, err, errCode, name)
	}
}
