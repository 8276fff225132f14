package shrink

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"slices"
)

// Instructions that are looked for, WebAssembly core specification 2.0, section 5.4.
const (
	opBlock         = 0x02
	opLoop          = 0x03
	opIf            = 0x04
	opElse          = 0x05
	opEnd           = 0x0b
	opBr            = 0x0c
	opBrIf          = 0x0d
	opBrTable       = 0x0e
	opReturn        = 0x0f
	opCall          = 0x10
	opCallIndirect  = 0x11
	opLocalGet      = 0x20
	opLocalSet      = 0x21
	opLocalTee      = 0x22
	opGlobalGet     = 0x23
	opGlobalSet     = 0x24
	opMemorySize    = 0x3f
	opMemoryGrow    = 0x40
	opI32Const      = 0x41
	opI64Const      = 0x42
	opF32Const      = 0x43
	opF64Const      = 0x44
	opI32Add        = 0x6a
	opI64Add        = 0x7c
	opI64Or         = 0x84
	opI32WrapI64    = 0xa7
	opI64ExtendI32U = 0xad
	opWide          = 0xfc // and a number

	noResult = 0x40 // the type of a block that leaves nothing on the stack
)

// instr is an instruction. What the format writes as a depth, how many blocks out
// a jump goes, is here the name of a block: a number that it has for itself, so
// that blocks come and go without a change to jumps past them.
//
// There are a million of them, so that they are small and have no pointers.
type instr struct {
	op   byte
	kind byte  // of a block's result, of an access to memory (its alignment), of an opWide
	n    int64 // a block's name, where it opens, ends or is gone to; a table; a local, a constant, a function; an offset
}

// is says whether i is op with n.
func (i instr) is(op byte, n int64) bool { return i.op == op && i.n == n }

// opens says whether i opens a block that leaves nothing on the stack.
func (i instr) opens() bool {
	return (i.op == opBlock || i.op == opLoop || i.op == opIf) && i.kind == noResult
}

// function is one function's body.
type function struct {
	locals []byte // as they are written
	code   []instr
	tables [][]int64 // the names that each opBrTable goes to, the last for all other numbers
}

func (f function) equal(g function) bool {
	return bytes.Equal(f.locals, g.locals) && slices.Equal(f.code, g.code) &&
		slices.EqualFunc(f.tables, g.tables, slices.Equal)
}

// with is f with other code.
func (f function) with(code []instr) function {
	f.code = code
	return f
}

// outermost is the name of the block that a function's body is.
const outermost = 0

var errCode = errors.New("there is code in it that is not known here")

func readFunctions(section []byte) ([]function, error) {
	r := reader{rest: section}
	list := make([]function, 0, min(r.count(), len(section)))
	for range cap(list) {
		body := reader{rest: r.bytes(r.count())}
		list = append(list, body.function())
		if r.bad || body.bad {
			return nil, errCode
		}
	}
	if r.bad || len(r.rest) > 0 {
		return nil, errCode
	}
	return list, nil
}

func writeFunctions(list []function) []byte {
	b := binary.AppendUvarint(nil, uint64(len(list)))
	var body []byte
	for _, f := range list {
		body = f.appendTo(body[:0])
		b = binary.AppendUvarint(b, uint64(len(body)))
		b = append(b, body...)
	}
	return b
}

// reader reads numbers and instructions. Once something is not as the format has
// it, bad is set and there is nothing left to read.
type reader struct {
	rest []byte
	bad  bool
}

func (r *reader) fail() {
	r.bad, r.rest = true, nil
}

// bytes reads n bytes.
func (r *reader) bytes(n int) []byte {
	if n < 0 || n > len(r.rest) {
		r.fail()
		return nil
	}
	b := r.rest[:n:n]
	r.rest = r.rest[n:]
	return b
}

func (r *reader) byte() byte {
	if b := r.bytes(1); b != nil {
		return b[0]
	}
	return 0
}

// count reads an unsigned number that counts or names something. None that is
// met goes past 31 bits.
func (r *reader) count() int { return int(r.unsigned(math.MaxInt32)) }

// offset reads an unsigned number of 32 bits.
func (r *reader) offset() uint32 { return uint32(r.unsigned(math.MaxUint32)) }

func (r *reader) unsigned(most uint64) uint64 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > most {
		r.fail()
		return 0
	}
	r.rest = r.rest[n:]
	return v
}

func (r *reader) signed() int64 {
	v, n := signed(r.rest)
	if n <= 0 {
		r.fail()
		return 0
	}
	r.rest = r.rest[n:]
	return v
}

// since returns what was read of from, as it is written.
func (r *reader) since(from []byte) []byte {
	n := len(from) - len(r.rest)
	return from[:n:n]
}

func (r *reader) name() string { return string(r.bytes(r.count())) }

// limits reads how much there is of a table or a memory.
func (r *reader) limits() {
	if most := r.byte(); most > 1 {
		r.fail()
	} else if r.count(); most == 1 {
		r.count()
	}
}

// function reads a function's body, to its end.
func (r *reader) function() function {
	from := r.rest
	for k := r.count(); k > 0 && !r.bad; k-- {
		r.count() // locals
		r.byte()  // of a type
	}
	f := function{locals: r.since(from), code: make([]instr, 0, len(r.rest)/2)}
	open, names := []int64{outermost}, int64(outermost) // the blocks around
	for len(open) > 0 && !r.bad {
		f.code = append(f.code, r.instr(&f, &open, &names))
	}
	if len(r.rest) > 0 {
		r.fail()
	}
	return f
}

// instr reads one instruction of f within the blocks that are open, and names the
// one that it opens.
func (r *reader) instr(f *function, open *[]int64, names *int64) instr {
	i := instr{op: r.byte()}
	switch op := i.op; {
	case op == opBlock || op == opLoop || op == opIf:
		*names++
		i.n = *names
		*open = append(*open, i.n)
		if i.kind = r.byte(); i.kind < noResult {
			r.fail() // a type of the section of types, which Go's linker has no use for
		}
	case op == opElse:
		i.n = (*open)[len(*open)-1]
	case op == opEnd:
		i.n = (*open)[len(*open)-1]
		*open = (*open)[:len(*open)-1]
	case op == opBr || op == opBrIf:
		i.n = r.label(*open)
	case op == opBrTable:
		i.n = int64(len(f.tables))
		var table []int64
		for range min(r.count(), len(r.rest)) + 1 {
			table = append(table, r.label(*open))
		}
		f.tables = append(f.tables, table)
	case op == opCall || opLocalGet <= op && op <= opGlobalSet:
		i.n = int64(r.count())
	case op == opI32Const || op == opI64Const:
		i.n = r.signed()
	case op == opCallIndirect:
		if i.n = int64(r.count()); r.byte() != 0 {
			r.fail() // through another table
		}
	case isLoad(op) || isStore(op):
		if i.kind = r.byte(); i.kind > 4 {
			r.fail() // no alignment: of another memory
		}
		i.n = int64(r.offset())
	case op == opF32Const:
		i.n = fixed(r.bytes(4))
	case op == opF64Const:
		i.n = fixed(r.bytes(8))
	case op == opWide:
		i.kind = r.byte()
		zeros, known := wide[i.kind]
		if !known || slices.ContainsFunc(r.bytes(zeros), func(b byte) bool { return b != 0 }) {
			r.fail()
		}
	case op == opMemorySize || op == opMemoryGrow:
		if r.byte() != 0 {
			r.fail() // of another memory
		}
	case op <= 0x01 || op == opReturn || op == 0x1a || op == 0x1b: // unreachable, nop, drop, select
	case 0x45 <= op && op <= 0xc4: // arithmetic
	default:
		r.fail()
	}
	return i
}

// wide are the instructions that start with opWide, and after how many zeros, for
// memory 0, each of them ends: conversions, memory.copy and memory.fill.
var wide = map[byte]int{0: 0, 1: 0, 2: 0, 3: 0, 4: 0, 5: 0, 6: 0, 7: 0, 10: 2, 11: 1}

// label reads how many blocks out a jump goes.
func (r *reader) label(open []int64) int64 {
	depth := r.count()
	if depth >= len(open) {
		r.fail()
		return 0
	}
	return open[len(open)-1-depth]
}

// fixed is up to 8 bytes as a number.
func fixed(b []byte) (v int64) {
	for k, c := range b {
		v |= int64(c) << (8 * k)
	}
	return v
}

// appendTo writes a function's body out.
func (f function) appendTo(b []byte) []byte {
	b = append(b, f.locals...)
	var open []int64 // names of the blocks around, less the body
	depth := func(name int64) uint64 {
		for d := range open {
			if open[len(open)-1-d] == name {
				return uint64(d)
			}
		}
		return uint64(len(open))
	}
	for _, i := range f.code {
		b = append(b, i.op)
		switch op := i.op; {
		case op == opBlock || op == opLoop || op == opIf:
			open = append(open, i.n)
			b = append(b, i.kind)
		case op == opEnd:
			open = open[:max(len(open)-1, 0)]
		case op == opBr || op == opBrIf:
			b = binary.AppendUvarint(b, depth(i.n))
		case op == opBrTable:
			table := f.tables[i.n]
			b = binary.AppendUvarint(b, uint64(len(table)-1))
			for _, name := range table {
				b = binary.AppendUvarint(b, depth(name))
			}
		case op == opCall || opLocalGet <= op && op <= opGlobalSet:
			b = binary.AppendUvarint(b, uint64(i.n))
		case op == opI32Const || op == opI64Const:
			b = appendSigned(b, i.n)
		case op == opCallIndirect:
			b = append(binary.AppendUvarint(b, uint64(i.n)), 0)
		case isLoad(op) || isStore(op):
			b = binary.AppendUvarint(append(b, i.kind), uint64(i.n))
		case op == opF32Const:
			b = binary.LittleEndian.AppendUint32(b, uint32(i.n))
		case op == opF64Const:
			b = binary.LittleEndian.AppendUint64(b, uint64(i.n))
		case op == opWide:
			b = append(b, i.kind)
			b = append(b, make([]byte, wide[i.kind])...)
		case op == opMemorySize || op == opMemoryGrow:
			b = append(b, 0)
		}
	}
	return b
}

// signed reads a signed LEB128 number and how many bytes it has, 0 for none.
func signed(b []byte) (v int64, n int) {
	for shift := 0; n < len(b) && shift < 64; shift += 7 {
		c := b[n]
		n++
		v |= int64(c&0x7f) << shift
		if c&0x80 == 0 {
			if c&0x40 != 0 && shift+7 < 64 {
				v |= -1 << (shift + 7)
			}
			return v, n
		}
	}
	return 0, 0
}

// appendSigned appends v as signed LEB128.
func appendSigned(b []byte, v int64) []byte {
	for {
		c := byte(v & 0x7f)
		v >>= 7
		if v == 0 && c&0x40 == 0 || v == -1 && c&0x40 != 0 {
			return append(b, c)
		}
		b = append(b, c|0x80)
	}
}
