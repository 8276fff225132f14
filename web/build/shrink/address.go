package shrink

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// shareAddresses is a pass: see shareAddress.
func shareAddresses(m module) (module, error) { return m.eachFunction(shareAddress) }

// shareAddress writes once what all return addresses of a function have in common.
// An address is the number of the function over 16 bits for the place in it; every
// call stores its own. A local, set as the function is entered and never again,
// holds the number; a compiler that optimizes makes one constant of the two.
func shareAddress(f function, number int64) function {
	own := func(i instr) bool { return i.op == opI64Const && i.n>>16 == number }
	times := 0
	for _, i := range f.code {
		if own(i) {
			times++
		}
	}
	locals, ok := insertLocal(f.locals)
	if !ok || times < 2 {
		return f
	}
	const shared = 2 // after the parameter and the stack pointer
	const start = 2  // how many instructions read the stack pointer
	code := slices.Clone(f.code[:start])
	code = append(code, instr{op: opI64Const, n: number << 16}, instr{op: opLocalSet, n: shared})
	for _, i := range f.code[start:] {
		switch {
		case own(i):
			code = append(code, instr{op: opLocalGet, n: shared}, instr{op: opI64Const, n: i.n & 0xffff}, instr{op: opI64Or})
			continue
		case opLocalGet <= i.op && i.op <= opLocalTee && i.n >= shared:
			i.n++
		}
		code = append(code, i)
	}
	f.locals = locals
	return f.with(code)
}

// insertLocal declares one more local, 64 bits, after the first that a function
// declares, if that is one of 32 bits.
func insertLocal(locals []byte) ([]byte, bool) {
	kinds, n := binary.Uvarint(locals)
	if n <= 0 || !bytes.HasPrefix(locals[n:], []byte{1, typeI32}) {
		return nil, false
	}
	out := binary.AppendUvarint(nil, kinds+1)
	out = append(out, 1, typeI32, 1, typeI64)
	return append(out, locals[n+2:]...), true
}
