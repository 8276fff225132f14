package sure

import "math"

// sortVolumes sorts numbers of 0 or more by the bytes of their bits, from the
// last to the first. For as many as samples that is five times as fast as
// comparing them.
func sortVolumes(v []float64) {
	from, to := make([]uint64, len(v)), make([]uint64, len(v))
	for i, x := range v {
		from[i] = math.Float64bits(x)
	}
	for shift := 0; shift < 64; shift += 8 {
		if sortByte(to, from, shift) {
			from, to = to, from
		}
	}
	for i, b := range from {
		v[i] = math.Float64frombits(b)
	}
}

// sortByte sorts by one byte and keeps the order of equals. It does nothing
// when all have the same byte.
func sortByte(to, from []uint64, shift int) (moved bool) {
	var place [256]int
	for _, b := range from {
		place[byte(b>>shift)]++
	}
	at := 0
	for i, n := range place {
		if n == len(from) {
			return false
		}
		place[i] = at
		at += n
	}
	for _, b := range from {
		digit := byte(b >> shift)
		to[place[digit]] = b
		place[digit]++
	}
	return true
}
