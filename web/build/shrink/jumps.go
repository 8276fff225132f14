package shrink

import "slices"

// jumpDirectly makes the jumps of Go functions shorter to send. They do the same,
// in fewer steps.
//
// WebAssembly has no goto, so Go's compiler (cmd/internal/obj/wasm) writes a
// function as a row of blocks, each ending where the next stretch of code begins,
// and before them a table with the block that a number leads out of. To go on
// elsewhere is to put a number into local 0 and to jump back to the table; to go
// on after a call, when a goroutine that stood in it gets its turn again, is to
// enter with the number.
func jumpDirectly(m module) (module, error) {
	return m.eachFunction(func(f function, _ int64) function {
		return dropBlocks(returnAtOnce(skipTable(f)))
	})
}

// skipTable lets jumps forward skip the table: the block that they would be led
// out of is around them already. A jump that is all that hangs on a condition
// becomes one under that condition, in both directions.
func skipTable(f function) function {
	table, loop := f.jumpTable()
	if table == nil || !f.onlyJumps(loop) {
		return f
	}
	code := f.code
	out := make([]instr, 0, len(code))
	ended := map[int64]bool{}
	for len(code) > 0 {
		jump, size := code, 3
		op := byte(opBr)
		if code[0].op == opIf && isJump(code[1:], loop) && len(code) > 4 && code[4].op == opEnd {
			jump, size, op = code[1:], 5, opBrIf
		}
		if !isJump(jump, loop) {
			if code[0].op == opEnd {
				ended[code[0].n] = true
			}
			out = append(out, code[0])
			code = code[1:]
			continue
		}
		number := int64(uint32(jump[0].n))
		if to := table[min(number, int64(len(table)-1))]; !ended[to] {
			out = append(out, instr{op: op, n: to})
		} else {
			out = append(out, jump[0], jump[1], instr{op: op, n: loop})
		}
		code = code[size:]
	}
	return f.with(out)
}

// jumpTable returns where the table of a function leads, and the loop that jumps
// go back to; no table where there is none, or not as the compiler has it.
func (f function) jumpTable() (table []int64, loop int64) {
	code := f.code
	at := slices.IndexFunc(code, func(i instr) bool { return i.op == opBrTable })
	if at < 1 || !code[at-1].is(opLocalGet, 0) || readsNumber(code, at-1) {
		return nil, 0
	}
	head := at - 2
	blocks := map[int64]bool{}
	for head >= 0 && code[head].op == opBlock && code[head].opens() {
		blocks[code[head].n] = true
		head--
	}
	if head < 0 || code[head].op != opLoop || !code[head].opens() {
		return nil, 0 // no jumps
	}
	table = f.tables[code[at].n]
	for _, name := range table {
		if !blocks[name] {
			return nil, 0
		}
	}
	return table, code[head].n
}

// isJump says whether code starts with a jump by way of the table.
func isJump(code []instr, loop int64) bool {
	return len(code) >= 3 && code[0].op == opI32Const && code[1].is(opLocalSet, 0) && code[2].is(opBr, loop)
}

// onlyJumps says whether all that goes back to the loop puts a number into local 0
// right before.
func (f function) onlyJumps(loop int64) bool {
	for k, i := range f.code {
		if (i.is(opBrIf, loop) || i.is(opBr, loop)) &&
			(k < 2 || !f.code[k-1].is(opLocalSet, 0) || f.code[k-2].op != opI32Const) {
			return false
		}
	}
	return !slices.ContainsFunc(f.tables, func(table []int64) bool { return slices.Contains(table, loop) })
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
func returnAtOnce(f function) function {
	code, n := f.code, len(f.code)
	if n < 3 || code[n-3].op != opEnd || !code[n-2].is(opI32Const, 1) {
		return f
	}
	exit, last := code[n-3].n, int64(0)
	isBlock := false // it may be the end of a loop, where a jump would go to its head
	for _, i := range code {
		isBlock = isBlock || i.is(opBlock, exit) && i.opens()
		if i.op == opEnd {
			last = max(last, i.n)
		}
	}
	if !isBlock {
		return f
	}
	out := make([]instr, 0, n)
	for _, i := range code {
		if !i.is(opBrIf, exit) {
			out = append(out, i)
			continue
		}
		last++ // a name that no block has
		out = append(out,
			instr{op: opIf, n: last, kind: noResult},
			instr{op: opI32Const, n: 1},
			instr{op: opReturn},
			instr{op: opEnd, n: last})
	}
	return f.with(out)
}

// dropBlocks takes out the blocks that nothing jumps to.
func dropBlocks(f function) function {
	used := map[int64]bool{}
	for _, i := range f.code {
		if i.op == opBr || i.op == opBrIf {
			used[i.n] = true
		}
	}
	for _, table := range f.tables {
		for _, name := range table {
			used[name] = true
		}
	}
	idle := map[int64]bool{}
	for _, i := range f.code {
		if i.op != opIf && i.opens() && !used[i.n] {
			idle[i.n] = true
		}
	}
	out := make([]instr, 0, len(f.code))
	for _, i := range f.code {
		if block := i.op == opBlock || i.op == opLoop || i.op == opEnd; !block || !idle[i.n] {
			out = append(out, i)
		}
	}
	return f.with(out)
}
