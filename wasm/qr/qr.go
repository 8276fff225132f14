// Package qr makes the QR code of a link according to ISO/IEC 18004, in 8-bit
// mode, with error correction level L and mask 0.
//
//	size, path, ok := qr.Path("https://example.org/")
//
// The tests compare it with rsc.io/qr, module by module. Its functions are
// pure.
package qr

import "strconv"

// Most is the number of bytes in the largest code: version 40, level L.
const Most = 2953

// Path encodes text as the d attribute of an SVG path. The path covers the dark
// modules in a square of size units, one unit to a module, with the quiet zone
// of four units around it. ok is false when text is longer than [Most].
func Path(text string) (size int, d []byte, ok bool) {
	c := encode(text)
	if c == nil {
		return 0, nil, false
	}
	const quiet = 4
	for y := range c.size {
		for x := 0; x < c.size; x++ {
			run := 0
			for c.dark(x+run, y) {
				run++
			}
			if run == 0 {
				continue
			}
			d = strconv.AppendInt(append(d, 'M'), int64(x+quiet), 10)
			d = strconv.AppendInt(append(d, ' '), int64(y+quiet), 10)
			d = strconv.AppendInt(append(d, 'h'), int64(run), 10)
			d = strconv.AppendInt(append(d, "v1h-"...), int64(run), 10)
			d = append(d, 'z')
			x += run
		}
	}
	return c.size + 2*quiet, d, true
}

// encode makes the smallest code that holds text, or returns nil.
func encode(text string) *code {
	if len(text) > Most { // so that version 40 is large enough
		return nil
	}
	for version := 1; ; version++ {
		c := drawn(version)
		free := 0
		for _, m := range c.modules {
			if m == 0 {
				free++
			}
		}
		check, blocks := int(checks[version]), int(blocks[version])
		room := free/8 - check*blocks
		if data := stream(text, version, room); data != nil {
			c.fill(interleave(data, check, blocks))
			return c
		}
	}
}

// checks is how many check bytes each block has, and blocks how many blocks
// there are, by version at level L: table 9 of the standard.
const (
	checks = "\x00\x07\x0a\x0f\x14\x1a\x12\x14\x18\x1e\x12\x14\x18\x1a\x1e\x16\x18" +
		"\x1c\x1e\x1c\x1c\x1c\x1c\x1e\x1e\x1a\x1c\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e\x1e"
	blocks = "\x00\x01\x01\x01\x01\x01\x02\x02\x02\x02\x04\x04\x04\x04\x04\x06\x06\x06\x06" +
		"\x07\x08\x08\x09\x09\x0a\x0c\x0c\x0c\x0d\x0e\x0f\x10\x11\x12\x13\x13\x14\x15\x16\x18\x19"
)

// stream returns text as room bytes of data, or nil when it is too long: the
// mode in four bits, the length, the bytes, four zero bits, and padding.
func stream(text string, version, room int) []byte {
	data := []byte{byte(len(text) >> 8), byte(len(text))}
	if version < 10 {
		data = data[1:] // a longer text does not fit such a version
	}
	data = append(data, text...)
	if len(data) >= room {
		return nil
	}
	high := byte(4) // bytes, the mode
	for i, b := range data {
		data[i] = high<<4 | b>>4
		high = b
	}
	data = append(data, high<<4)
	for pad := byte(0xec); len(data) < room; pad ^= 0xec ^ 0x11 {
		data = append(data, pad)
	}
	return data
}

// interleave splits data into blocks, the last ones a byte longer when it does
// not divide evenly. It takes the first byte of each block, then the second and
// so on, and after that the check bytes in the same way.
func interleave(data []byte, check, blocks int) []byte {
	all := make([]byte, len(data)+check*blocks)
	short, at := len(data)/blocks, 0
	long := blocks - len(data)%blocks // the first of the longer ones
	poly := generator(check)
	for k := range blocks {
		n := short
		if k >= long {
			n++
		}
		block := data[at:][:n]
		at += n
		for i, b := range block {
			to := i*blocks + k
			if i == short { // only the longer ones have it
				to -= long
			}
			all[to] = b
		}
		for i, b := range remainder(block, poly) {
			all[len(data)+i*blocks+k] = b
		}
	}
	return all
}

// mul multiplies in the field of 256 elements over x^8 + x^4 + x^3 + x^2 + 1.
func mul(a, b byte) (p byte) {
	for ; b > 0; b >>= 1 {
		if b&1 > 0 {
			p ^= a
		}
		high := a >> 7
		a = a<<1 ^ high*0x1d
	}
	return p
}

// generator returns the polynomial for n check bytes, highest power first,
// without its leading 1: the product of x - 2^i for i below n.
func generator(n int) []byte {
	g := make([]byte, n)
	g[n-1] = 1
	for root := byte(1); n > 0; n-- {
		for i := range g {
			g[i] = mul(g[i], root)
			if i+1 < len(g) {
				g[i] ^= g[i+1]
			}
		}
		root = mul(root, 2)
	}
	return g
}

// remainder returns the check bytes of a block: what is left of block, times
// x^len(g), after dividing by g.
func remainder(block, g []byte) []byte {
	r := make([]byte, len(g)+1) // the last stays 0
	for _, b := range block {
		q := b ^ r[0]
		for i, c := range g {
			r[i] = r[i+1] ^ mul(c, q)
		}
	}
	return r[:len(g)]
}
