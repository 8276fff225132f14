package shrink

import (
	"errors"
	"math"
	"slices"
)

// reachFrames lets functions reach into their frames in fewer steps. It must know
// the stack pointer for one: what getsp returns, for the loader.
func reachFrames(m module) (module, error) {
	if err := m.stackPointer(); err != nil {
		return m, err
	}
	return m.eachFunction(func(f function, _ int64) function {
		if !followsStackPointer(f.code) {
			return f
		}
		return f.with(reachFrame(moveOnce(f.code)))
	})
}

// stackPointer checks that global 0 is the stack pointer: of 32 bits, the
// program's own, and what the loader gets of it.
func (m module) stackPointer() error {
	list, _, err := m.functions()
	if err != nil {
		return err
	}
	from, err := m.imports()
	if err != nil {
		return err
	}
	globals := reader{rest: m.body(globalID)}
	if globals.count() < 1 || globals.byte() != typeI32 || globals.byte() != 1 || from[ofGlobal] > 0 {
		return errors.New("its first global is no number of 32 bits that changes")
	}
	k := m.export("getsp") - from[ofFunction]
	if k < 0 || k >= len(list) {
		return errors.New("it exports no getsp, which returns the stack pointer")
	}
	if code := list[k].code; len(code) < 2 || !code[0].is(opGlobalGet, 0) || code[1].op != opReturn {
		return errors.New("its getsp returns something else than global 0")
	}
	return nil
}

// followsStackPointer says whether local 1 always has what the stack pointer was
// when it was set.
func followsStackPointer(code []instr) bool {
	for k, i := range code {
		if i.is(opLocalSet, 1) && (k == 0 || !code[k-1].is(opGlobalGet, 0)) ||
			i.is(opLocalTee, 1) && (k+1 == len(code) || !code[k+1].is(opGlobalSet, 0)) {
			return false
		}
	}
	return true
}

// reachFrame lets loads and stores reach into a function's frame by their own
// offset, where Go's compiler adds the offset to the stack pointer first, in 64
// bits. A frame lies in memory, so that the sum does not wrap around.
func reachFrame(code []instr) []instr {
	code = slices.Clone(code)
	out := make([]instr, 0, len(code))
	for len(code) > 0 {
		offset, size := frameAddress(code)
		if size == 0 {
			out = append(out, code[0])
			code = code[1:]
			continue
		}
		out = append(out, code[0])
		code = code[size:]
		at := user(code)
		if at >= 0 {
			if moved, ok := code[at].moved(offset); ok {
				code[at] = moved
				continue
			}
		}
		if offset != 0 {
			out = append(out, instr{op: opI32Const, n: offset}, instr{op: opI32Add})
		}
	}
	return out
}

// frameAddress returns the offset of the address in a frame that code starts with,
// and how many instructions work it out, 0 if it does not start so.
func frameAddress(code []instr) (offset int64, size int) {
	if len(code) < 5 || !code[0].is(opLocalGet, 1) || code[1].op != opI64ExtendI32U {
		return 0, 0
	}
	if code[2].op == opI32WrapI64 {
		return 0, 3
	}
	if code[2].op == opI64Const && 0 <= code[2].n && code[2].n <= math.MaxInt32 &&
		code[3].op == opI64Add && code[4].op == opI32WrapI64 {
		return code[2].n, 5
	}
	return 0, 0
}

// user finds the load or store whose address is on the stack where code starts.
func user(code []instr) int {
	above := 0 // values over the address
	for k, i := range code {
		takes, gives := i.effect()
		switch {
		case isLoad(i.op) && above == 0, isStore(i.op) && above == 1:
			return k
		case gives < 0 || takes > above:
			return -1
		}
		above += gives - takes
	}
	return -1
}

func isLoad(op byte) bool  { return 0x28 <= op && op <= 0x35 }
func isStore(op byte) bool { return 0x36 <= op && op <= 0x3e }

// effect is how many values an instruction takes off the stack and how many it
// lays there, gives < 0 for those that do more than that.
func (i instr) effect() (takes, gives int) {
	switch op := i.op; {
	case op == opLocalGet || op == opGlobalGet || 0x41 <= op && op <= 0x44:
		return 0, 1
	case isLoad(op) || op == opLocalTee || op == 0x45 || op == 0x50 ||
		0x67 <= op && op <= 0x69 || 0x79 <= op && op <= 0x7b ||
		0x8b <= op && op <= 0x91 || 0x99 <= op && op <= 0x9f || 0xa7 <= op && op <= 0xc4:
		return 1, 1
	case 0x46 <= op && op <= 0xa6:
		return 2, 1
	}
	return 0, -1
}

// moved is a load or store with so much more offset, which has 32 bits.
func (i instr) moved(offset int64) (instr, bool) {
	i.n += offset
	return i, i.n <= math.MaxUint32
}

// moveOnce joins two moves of the stack pointer: at its end a function gives back
// what it took for itself, and then the return address.
func moveOnce(code []instr) []instr {
	const size = 5
	isMove := func(c []instr) bool {
		return len(c) >= size && c[0].is(opLocalGet, 1) && c[1].op == opI32Const && c[2].op == opI32Add &&
			c[3].is(opLocalTee, 1) && c[4].is(opGlobalSet, 0)
	}
	code = slices.Clone(code)
	out := make([]instr, 0, len(code))
	for len(code) > 0 {
		if isMove(code) && isMove(code[size:]) {
			sum := int64(int32(code[1].n + code[size+1].n)) // as i32.add wraps
			code = code[size:]
			code[1].n = sum
			continue
		}
		out = append(out, code[0])
		code = code[1:]
	}
	return out
}
