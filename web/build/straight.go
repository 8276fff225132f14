package main

import "slices"

// straighten makes a Go function shorter to send. It does the same, in fewer steps.
//
// WebAssembly has no goto, so Go's compiler (cmd/internal/obj/wasm) writes a
// function as a row of blocks, each ending where the next stretch of code begins,
// and before them a table with the block that a number leads out of. To go on
// elsewhere is to put a number into local 0 and to jump back to the table; to go
// on after a call, when a goroutine that stood in it gets its turn again, is to
// enter with the number. Local 1 is the stack pointer, read from global 0 first of
// all; what does not start with that the compiler did not write.
func straighten(f function, number int64) function {
	if len(f.code) < 2 || !f.code[0].is(opGlobalGet, 0) || !f.code[1].is(opLocalSet, 1) {
		return f
	}
	f.code = jumpDirectly(f.code)
	f.code = returnAtOnce(f.code)
	f.code = dropBlocks(f.code)
	f.code = moveOnce(f.code)
	f.code = reachFrame(f.code)
	return shareAddress(f, number)
}

// jumpDirectly lets jumps forward skip the table: the block that they would be
// led out of is around them already. A jump that is all that hangs on a condition
// becomes one under that condition, in both directions.
func jumpDirectly(code []instr) []instr {
	at := slices.IndexFunc(code, func(i instr) bool { return i.op == opBrTable })
	if at < 1 || !code[at-1].is(opLocalGet, 0) || readsNumber(code, at-1) {
		return code
	}
	table, head := code[at].table, at-2
	for head >= 0 && code[head].op == opBlock {
		head--
	}
	if head < 0 || code[head].op != opLoop {
		return code // no jumps
	}
	loop := code[head].n
	isJump := func(c []instr) bool {
		return len(c) >= 3 && c[0].op == opI32Const && c[1].is(opLocalSet, 0) && c[2].is(opBr, loop)
	}
	var out []instr
	ended := map[int64]bool{}
	for len(code) > 0 {
		jump, size := code, 3
		op := byte(opBr)
		if code[0].op == opIf && isJump(code[1:]) && len(code) > 4 && code[4].op == opEnd {
			jump, size, op = code[1:], 5, opBrIf
		}
		if !isJump(jump) {
			if code[0].op == opEnd {
				ended[code[0].n] = true
			}
			out = append(out, code[0])
			code = code[1:]
			continue
		}
		number := uint32(jump[0].n)
		if to := table[min(int(number), len(table)-1)]; !ended[to] {
			out = append(out, instr{op: op, n: to})
		} else {
			out = append(out, jump[0], jump[1], instr{op: op, n: loop})
		}
		code = code[size:]
	}
	return out
}

// readsNumber says whether local 0 is read but at the table, and where a call
// through a pointer lays it aside: it must not matter what a jump leaves there.
func readsNumber(code []instr, table int) bool {
	for k, i := range code {
		aside := k >= 2 && code[k-1].op == opI32Const && code[k-2].is(opLocalSet, 0)
		if i.is(opLocalTee, 0) || i.is(opLocalGet, 0) && k != table && !aside {
			return true
		}
	}
	return false
}

// returnAtOnce returns 1 where a call says that the goroutine gives up its turn,
// rather than after a jump to the end that does. It is more to write, but always
// the same: how far it is to the end would be another number at each call.
func returnAtOnce(code []instr) []instr {
	n := len(code)
	if n < 3 || code[n-3].op != opEnd || !code[n-2].is(opI32Const, 1) {
		return code
	}
	exit := code[n-3].n
	if !slices.ContainsFunc(code, func(i instr) bool { return i.is(opBlock, exit) }) {
		return code // the end of a loop, where a jump would go to its head
	}
	var out []instr
	names := int64(n) // more than there are
	for _, i := range code {
		if !i.is(opBrIf, exit) {
			out = append(out, i)
			continue
		}
		names++
		out = append(out,
			instr{op: opIf, n: names, rest: []byte{noResult}},
			instr{op: opI32Const, n: 1},
			instr{op: opReturn},
			instr{op: opEnd, n: names})
	}
	return out
}

// dropBlocks takes out the blocks that nothing jumps to.
func dropBlocks(code []instr) []instr {
	used := map[int64]bool{}
	for _, i := range code {
		switch i.op {
		case opBr, opBrIf:
			used[i.n] = true
		case opBrTable:
			for _, name := range i.table {
				used[name] = true
			}
		}
	}
	idle := map[int64]bool{}
	for _, i := range code {
		if (i.op == opBlock || i.op == opLoop) && !used[i.n] && i.rest[0] == noResult {
			idle[i.n] = true
		}
	}
	return slices.DeleteFunc(code, func(i instr) bool {
		return (i.op == opBlock || i.op == opLoop || i.op == opEnd) && idle[i.n]
	})
}
