package sure

// The points are a rank-1 lattice: point k has the coordinates k z/1024 modulo
// 1, where z is the generator of the dimension. It fills many dimensions evenly
// and needs just one number for each. A Halton sequence leaves stripes past ten
// dimensions, and a Sobol sequence needs a table of direction numbers. The
// generators were found component by component with the weights 12/(j+1) in the
// shift-averaged measure of evenness; a test finds them again.
//
// Each shift moves the whole lattice by a constant random vector. So every
// shift is an unbiased answer of its own, and their scatter shows the error.
const (
	pointBits = 10
	points    = 1 << pointBits // of one shift
	shifts    = 16
	samples   = points * shifts
	block     = 256 // points worked on at once; they stay in the nearest cache
)

// coordinates fills u with the coordinates, in one dimension, of consecutive
// points, each strictly between 0 and 1. Dimensions past the generators are
// drawn at random; dimensions are ordered by influence, so those matter least.
func coordinates(u []float64, shift, first, dim int) {
	offset := scramble(uint64(shift)<<32 | uint64(dim))
	if dim >= len(generators) {
		for k := range u {
			u[k] = unit(scramble(offset + uint64(first+k)))
		}
		return
	}
	step := uint64(generators[dim]) << (64 - pointBits)
	at := offset + step*uint64(first)
	for k := range u {
		u[k] = unit(at)
		at += step
	}
}

// unit maps 64 bits to the middle of one of 2^52 cells of the unit interval,
// without rounding.
func unit(bits uint64) float64 { return (float64(bits>>12) + 0.5) * (1.0 / (1 << 52)) }

// scramble is the output of the splitmix64 generator at place n.
func scramble(n uint64) uint64 {
	z := 0x5eed0fba77063a5e + (n+1)*0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
