package shrink

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// allPasses is what the passes make of one function.
func allPasses(f function, number int64) function {
	f = dropBlocks(returnAtOnce(skipTable(f)))
	return shareAddress(f.with(reachFrame(moveOnce(f.code))), number)
}

// TestSame: functions as Go's compiler writes them, drawn at random, do
// the same after each step as before: call the same with the same stack, store the
// same, return the same, wherever they are entered and whatever calls answer.
func TestSame(t *testing.T) {
	t.Parallel()
	const number = 0x1234
	draw := rand.New(rand.NewPCG(3, 4))
	shorter := 0
	for range 1000 {
		f, entries := drawFunction(draw, number)
		short := allPasses(f, number)
		if len(short.code) < len(f.code) {
			shorter++
		}
		// What is written is what runs: the names of blocks are depths there.
		back, err := readFunctions(writeFunctions([]function{short}))
		require.NoError(t, err)
		for range 4 {
			entry, seed := draw.Int64N(int64(entries)+1), draw.Uint64()
			require.Equal(t, trace(f, entry, seed), trace(back[0], entry, seed))
		}
		again := allPasses(back[0], number)
		require.Equal(t, short.appendTo(nil), again.appendTo(nil))
	}
	require.Greater(t, shorter, 500)
}

// drawFunction is a Go function: stretches of code that end in a call, in a jump,
// or where another jump leads.
func drawFunction(draw *rand.Rand, number int64) (f function, entries int) {
	stretches := 1 + draw.IntN(8)
	const exit, loop, first = 1, 2, 3 // names; the i-th stretch starts at the end of first+i
	other := int64(first + stretches + 1)
	emit := func(list ...instr) { f.code = append(f.code, list...) }
	open := func(op byte, name int64) { emit(instr{op: op, n: name, kind: noResult}) }
	num := func(op byte, n int64) instr { return instr{op: op, n: n} }
	memory := func(op byte, offset byte) instr { return instr{op: op, kind: 3, n: int64(offset)} }
	frame := func(offset int64) { // an address in the frame
		emit(num(opLocalGet, 1), num(opI64ExtendI32U, 0))
		if offset > 0 {
			emit(num(opI64Const, offset), num(opI64Add, 0))
		}
		emit(num(opI32WrapI64, 0))
	}
	move := func(by int64) {
		emit(num(opLocalGet, 1), num(opI32Const, by), num(opI32Add, 0), num(opLocalTee, 1), num(opGlobalSet, 0))
	}
	jump := func() {
		emit(num(opI32Const, draw.Int64N(int64(stretches)+1)), num(opLocalSet, 0), num(opBr, loop))
	}

	f.locals = []byte{2, 1, 0x7f, 2, 0x7e}
	emit(num(opGlobalGet, 0), num(opLocalSet, 1))
	open(opBlock, exit)
	open(opLoop, loop)
	var table []int64
	for i := range stretches + 1 {
		open(opBlock, int64(first+stretches-i))
		table = append(table, int64(first+i))
	}
	f.tables = [][]int64{table}
	emit(num(opLocalGet, 0), num(opBrTable, 0), num(opEnd, first))
	for i := range stretches {
		for range draw.IntN(4) {
			offset := draw.Int64N(5) * 8
			switch draw.IntN(6) {
			case 0: // a value into the frame
				frame(offset)
				emit(num(opLocalGet, 2), num(opI64Const, draw.Int64N(9)), num(opI64Add, 0), memory(0x37, 0))
			case 1: // one out of it
				frame(offset)
				emit(memory(0x29, 8), num(opLocalSet, 2))
			case 2: // from one place to another
				frame(offset)
				emit(num(opLocalGet, 1), memory(0x29, 16), memory(0x37, 8))
			case 3: // its address
				frame(offset)
				emit(num(opI64ExtendI32U, 0), num(opLocalSet, 3))
			case 4: // what is in a local
				emit(num(opLocalGet, 1), num(opLocalGet, 3), memory(0x37, 0))
			case 5: // an address that waits while something else is stored
				frame(offset)
				emit(num(opLocalGet, 1), num(opI64Const, 7), memory(0x37, 24))
				emit(num(opI64Const, 6), memory(0x37, 0))
			}
		}
		switch draw.IntN(5) {
		case 0: // a call that may give up its turn
			move(-8)
			emit(num(opLocalGet, 1), num(opI64Const, number<<16|int64(i+1)), memory(0x37, 0))
			emit(num(opI32Const, 0), num(opCall, draw.Int64N(200)), num(opGlobalGet, 0), num(opLocalSet, 1),
				num(opBrIf, exit))
		case 1: // a jump on a condition
			emit(num(opI32Const, 0), num(opCall, 1))
			other++
			open(opIf, other)
			if draw.IntN(3) == 0 {
				move(8)
			}
			name := other
			jump()
			emit(num(opEnd, name))
		case 2:
			jump()
		case 3: // the return, and what was taken for the frame given back
			move(32)
			move(8)
			emit(num(opI32Const, 0), num(opReturn, 0))
		}
		emit(num(opEnd, int64(first+i+1)))
	}
	jump()
	emit(num(opEnd, loop), num(0, 0), num(opEnd, exit), num(opI32Const, 1), num(opEnd, outermost))
	return f, stretches
}

// trace does what a function does when it is entered with a number, and tells of it what
// others see. Calls answer at random, mostly 0, and may move the stack.
func trace(f function, entry int64, seed uint64) (seen []string) {
	code := f.code
	answers := rand.New(rand.NewPCG(seed, 0))
	ends := map[int64]int{}
	starts := map[int64]int{}
	for at, i := range code {
		switch i.op {
		case opBlock, opIf:
			starts[i.n] = -1
		case opLoop:
			starts[i.n] = at
		case opEnd:
			ends[i.n] = at
		}
	}
	see := func(format string, args ...any) { seen = append(seen, fmt.Sprintf(format, args...)) }
	locals, stackPointer := [9]int64{0: entry}, int64(1<<16)
	memory := map[int64]int64{}
	var stack []int64
	push := func(v int64) { stack = append(stack, v) }
	pop := func() int64 {
		v := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		return v
	}
	// Jumps in a circle come to an end after what is many times what 20 things take.
	for at, steps := 0, 0; len(seen) < 20 && steps < 8000; at, steps = at+1, steps+1 {
		i := code[at]
		branch := func(name int64) {
			if at = ends[name]; name != outermost && starts[name] >= 0 {
				at = starts[name]
			}
			stack = nil
		}
		switch i.op {
		case 0:
			see("unreachable")
			return seen
		case opBlock, opLoop, opEnd:
			if i.op == opEnd && i.n == outermost {
				see("end with %d at %d", pop(), stackPointer)
				return seen
			}
		case opIf:
			if pop() == 0 {
				at = ends[i.n]
			}
		case opBr:
			branch(i.n)
		case opBrIf:
			if pop() != 0 {
				branch(i.n)
			}
		case opBrTable:
			table := f.tables[i.n]
			branch(table[min(uint32(pop()), uint32(len(table)-1))])
		case opReturn:
			see("end with %d at %d", pop(), stackPointer)
			return seen
		case opCall:
			pop()
			see("call %d at %d", i.n, stackPointer)
			if stackPointer -= 64 * answers.Int64N(2); answers.IntN(4) == 0 {
				push(1)
			} else {
				push(0)
			}
		case opLocalGet:
			push(locals[i.n])
		case opLocalSet:
			locals[i.n] = pop()
		case opLocalTee:
			locals[i.n] = stack[len(stack)-1]
		case opGlobalGet:
			push(stackPointer)
		case opGlobalSet:
			stackPointer = pop()
		case opI32Const, opI64Const:
			push(i.n)
		case opI32Add:
			push(int64(int32(pop() + pop())))
		case opI64Add:
			push(pop() + pop())
		case opI64Or:
			push(pop() | pop())
		case opI32WrapI64:
			push(int64(int32(pop())))
		case opI64ExtendI32U:
			push(int64(uint32(pop())))
		case 0x29: // i64.load
			push(memory[int64(uint32(pop()))+i.n])
		case 0x37: // i64.store
			v := pop()
			to := int64(uint32(pop())) + i.n
			memory[to] = v
			see("%d to %d", v, to)
		default:
			panic(i.op)
		}
	}
	return seen
}

// TestJumpsLeftAlone: a function that is in one place not as the compiler writes
// one keeps its table, and all jumps to it.
func TestJumpsLeftAlone(t *testing.T) {
	const loop = 2 // as drawFunction names it
	draw := rand.New(rand.NewPCG(11, 12))
	for about, change := range map[string]func(f function, k int) bool{
		"a jump with no number": func(f function, k int) bool {
			ok := f.code[k].is(opLocalSet, 0)
			if ok {
				f.code[k] = instr{op: 0x1a} // drop
			}
			return ok
		},
		"a number that is read": func(f function, k int) bool {
			ok := f.code[k].is(opLocalSet, 0)
			if ok {
				f.code[k].op = opLocalTee
			}
			return ok
		},
		"a table that leads back": func(f function, k int) bool {
			ok := f.code[k].op == opBrTable
			if ok {
				f.tables[0][0] = loop
			}
			return ok
		},
		"a block with a result": func(f function, k int) bool {
			ok := f.code[k].op == opBlock && k > 3
			if ok {
				f.code[k].kind = typeI32
			}
			return ok
		},
		"a table of another number": func(f function, k int) bool {
			ok := f.code[k].op == opBrTable
			if ok {
				f.code[k-1].n = 2
			}
			return ok
		},
	} {
		for seen := 0; seen < 50; {
			f, _ := drawFunction(draw, 0x1234)
			if skipTable(f).equal(f) {
				continue // it has no jump forward
			}
			seen++
			for k := range f.code {
				if change(f, k) {
					break
				}
			}
			require.True(t, skipTable(f).equal(f), about)
		}
	}
}
