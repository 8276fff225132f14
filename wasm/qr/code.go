package qr

// code is a square of modules, by rows. A module is 0 until it is drawn.
type code struct {
	size    int
	modules []byte
}

// The values of a module that is drawn.
const (
	light = 1
	black = 2
)

// set draws a module, black for an odd bit. Outside the square it does nothing,
// so that finders can overlap the edge.
func (c *code) set(x, y, bit int) {
	if c.inside(x, y) {
		c.modules[y*c.size+x] = byte(light + bit&1)
	}
}

// inside reports whether a module is part of the square.
func (c *code) inside(x, y int) bool { return 0 <= min(x, y) && max(x, y) < c.size }

// dark reports whether a module is black.
func (c *code) dark(x, y int) bool { return c.inside(x, y) && c.modules[y*c.size+x] == black }

// drawn returns a code of a version with everything but its data. Patterns
// drawn later replace earlier ones.
func drawn(version int) *code {
	size := 17 + 4*version
	c := &code{size, make([]byte, size*size)}
	for i := range size { // timing
		c.set(6, i, i+1)
		c.set(i, 6, i+1)
	}
	const finder, alignment = 0b01011, 0b101
	far := size - 7
	c.rings(3, 3, 4, finder)
	c.rings(far+3, 3, 4, finder)
	c.rings(3, far+3, 4, finder)
	if version > 1 {
		// The middles are evenly spaced back from far, and the first is at 6: table E.1.
		n := version/7 + 1
		step := (far - 6 + 2*n - 1) / (2 * n) * 2
		if version == 32 {
			step = 26 // the only version that does not follow the rule
		}
		middle := func(i int) int {
			if i == 0 {
				return 6
			}
			return far - step*(n-i)
		}
		for i := range n + 1 {
			for k := range n + 1 {
				if corners := i%n + k%n; corners > 0 || i+k == 2*n { // otherwise a finder is there
					c.rings(middle(i), middle(k), 2, alignment)
				}
			}
		}
	}
	if version >= 7 {
		bits := version<<12 | rest(version<<12, 0x1f25)
		for i := range 18 {
			c.set(i/3, size-11+i%3, bits>>i)
			c.set(size-11+i%3, i/3, bits>>i)
		}
	}
	const format = 0x77c4 // level L and mask 0, with its check bits: table C.1
	for i := range 15 {
		bit := format >> i
		switch {
		case i < 6:
			c.set(8, i, bit)
		case i < 8:
			c.set(8, i+1, bit)
		case i < 9:
			c.set(7, 8, bit)
		default:
			c.set(14-i, 8, bit)
		}
		if i < 8 {
			c.set(size-1-i, 8, bit)
		} else {
			c.set(8, size-15+i, bit)
		}
	}
	c.set(8, size-8, 1)
	return c
}

// rings draws squares around a middle, one around the other. Bit i of pattern
// says whether the square at distance i is black.
func (c *code) rings(x, y, most, pattern int) {
	for v := -most; v <= most; v++ {
		for u := -most; u <= most; u++ {
			c.set(x+u, y+v, pattern>>max(u, -u, v, -v))
		}
	}
}

// rest returns the remainder of bits divided by a polynomial of degree 12.
func rest(bits, poly int) int {
	for i := 17; i >= 12; i-- {
		if bits>>i&1 > 0 {
			bits ^= poly << (i - 12)
		}
	}
	return bits
}

// fill draws the data, masked, into the modules that are not drawn yet: in
// columns two wide from the right, up and down in turn, skipping the column of
// the timing pattern. Modules without data get a 0.
func (c *code) fill(data []byte) {
	at := 0
	up := true
	for right := c.size - 1; right > 0; right -= 2 {
		if right == 6 {
			right--
		}
		for i := range 2 * c.size {
			x, y := right-i%2, i/2
			if up {
				y = c.size - 1 - y
			}
			if c.modules[y*c.size+x] > 0 {
				continue
			}
			bit := x + y + 1 // the mask
			if at/8 < len(data) {
				bit += int(data[at/8] >> (7 - at%8))
			}
			at++
			c.set(x, y, bit)
		}
		up = !up
	}
}
