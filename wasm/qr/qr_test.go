package qr

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	published "rsc.io/qr"
)

// TestAsPublished checks that every module is as rsc.io/qr makes it, for texts
// of every version. Small letters keep that one in 8-bit mode.
func TestAsPublished(t *testing.T) {
	for n := 1; n <= Most; n += 11 {
		text := strings.Repeat("https://x.example/#job=aZ-_", n/27+1)[:n]
		want, err := published.Encode(text, published.L)
		require.NoError(t, err)
		got := encode(text)
		require.NotNil(t, got, n)
		require.Equal(t, want.Size, got.size, n)
		for y := range want.Size {
			for x := range want.Size {
				if want.Black(x, y) != got.dark(x, y) {
					t.Fatalf("%d bytes: the module at %d, %d differs", n, x, y)
				}
			}
		}
	}
}

// TestPath checks that the path covers the dark modules and no other, inside a
// quiet zone of four.
func TestPath(t *testing.T) {
	size, d, ok := Path("https://x.example/#job=abc")
	require.True(t, ok)
	c := encode("https://x.example/#job=abc")
	require.Equal(t, c.size+8, size)
	dark := map[[2]int]bool{}
	for _, run := range strings.Split(strings.TrimSuffix(string(d), "z"), "z") {
		var x, y, n int
		for i, part := range strings.FieldsFunc(run, func(r rune) bool { return strings.ContainsRune("M hv", r) }) {
			v, err := strconv.Atoi(part)
			require.NoError(t, err, run)
			switch i {
			case 0:
				x = v
			case 1:
				y = v
			case 2:
				n = v
			}
		}
		require.Positive(t, n, run)
		for i := range n {
			dark[[2]int{x + i - 4, y - 4}] = true
		}
	}
	for y := range c.size {
		for x := range c.size {
			require.Equal(t, c.dark(x, y), dark[[2]int{x, y}], "%d %d", x, y)
			delete(dark, [2]int{x, y})
		}
	}
	require.NotContains(t, dark, true)
}

// TestTooLong checks that text too long for any code is refused.
func TestTooLong(t *testing.T) {
	_, _, ok := Path(strings.Repeat("a", Most+1))
	require.False(t, ok)
	_, _, ok = Path(strings.Repeat("a", Most))
	require.True(t, ok)
}
