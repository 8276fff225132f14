package catalog

import "example.org/barrow/units"

// Split divides whole among parts in proportion, by largest remainder, ties to
// the earlier part. The shares add up to whole, each is within a nanolitre of
// its exact value, and a share that can be exact is. It panics unless the parts
// are zero or more and add up to 1 to 1e18.
func Split(whole units.Volume, parts []int64) []units.Volume {
	return appendSplit(make([]units.Volume, 0, len(parts)), whole, parts)
}

// appendSplit appends the shares to out.
func appendSplit(out []units.Volume, whole units.Volume, parts []int64) []units.Volume {
	var sum int64
	for _, p := range parts {
		if p < 0 {
			panic("catalog: Split of a negative part")
		}
		sum += p
	}
	if sum < 1 || sum > 1e18 {
		panic("catalog: Split needs parts that add up to 1 to 1e18")
	}
	var room [16]int64
	rests := append(room[:0], parts...)
	left, first := whole, len(out)
	for i, p := range parts {
		share, rest := whole.Share(p, sum)
		out, left, rests[i] = append(out, share), left-share, rest
	}
	for ; left > 0; left-- { // fewer than len(parts) times
		most := 0
		for i, r := range rests {
			if r > rests[most] {
				most = i
			}
		}
		out[first+most]++
		rests[most] = -1
	}
	return out
}
