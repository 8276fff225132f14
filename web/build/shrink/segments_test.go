package shrink

import (
	"bytes"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestJoinKeepsMemory: joined or not, segments lay the same memory out, in
// whatever order they come.
func TestJoinKeepsMemory(t *testing.T) {
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
		joined, err := join(list)
		require.NoError(t, err)
		require.LessOrEqual(t, len(joined), len(list))
		require.True(t, bytes.Equal(memoryOf(list), memoryOf(joined)))
		back, err := readSegments(writeSegments(joined))
		require.NoError(t, err)
		require.True(t, bytes.Equal(memoryOf(list), memoryOf(back)))
	}
	_, err := join([]segment{{10, make([]byte, 5)}, {14, []byte{1}}})
	require.ErrorContains(t, err, "over another")
	_, err = join([]segment{{1<<32 - 2, make([]byte, 5)}})
	require.ErrorContains(t, err, "past the end")
}

func memoryOf(list []segment) []byte {
	memory := make([]byte, 1<<19)
	for _, s := range list {
		copy(memory[s.at:], s.bytes)
	}
	return memory
}

// TestSegmentsPastHalf: addresses past 2 GB are negative as they are written.
func TestSegmentsPastHalf(t *testing.T) {
	list := []segment{{1 << 31, []byte{1}}, {1<<32 - 1, nil}}
	back, err := readSegments(writeSegments(list))
	require.NoError(t, err)
	require.Equal(t, list[0], back[0])
	require.Equal(t, list[1].at, back[1].at)
}
