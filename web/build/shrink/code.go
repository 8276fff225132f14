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
	opLocalGet      = 0x20
	opLocalSet      = 0x21
	opLocalTee      = 0x22
	opGlobalGet     = 0x23
	opGlobalSet     = 0x24
	opI32Const      = 0x41
	opI64Const      = 0x42
	opI32Add        = 0x6a
	opI64Add        = 0x7c
	opI64Or         = 0x84
	opI32WrapI64    = 0xa7
	opI64ExtendI32U = 0xad

	noResult = 0x40 // the type of a block that leaves nothing on the stack
)

// instr is an instruction. What the format writes as a depth, how many blocks out
// a jump goes, is here the name of a block: a number that it has for itself, so
// that blocks come and go without a change to jumps past them.
type instr struct {
	op    byte
	n     int64   // a block's name, where it opens, ends or is gone to; a local, a constant, a function
	table []int64 // the names that opBrTable goes to, the last for all other numbers
	rest  []byte  // what else is written after it, in a slice that nobody changes
}

// is says whether i is op with n.
func (i instr) is(op byte, n int64) bool { return i.op == op && i.n == n }

func (i instr) equal(j instr) bool {
	return i.op == j.op && i.n == j.n && slices.Equal(i.table, j.table) && bytes.Equal(i.rest, j.rest)
}

// opens says whether i opens a block that leaves nothing on the stack.
func (i instr) opens() bool {
	return (i.op == opBlock || i.op == opLoop || i.op == opIf) && len(i.rest) == 1 && i.rest[0] == noResult
}

// function is one function's body.
type function struct {
	locals []byte // as they are written
	code   []instr
}

func (f function) equal(g function) bool {
	return bytes.Equal(f.locals, g.locals) && slices.EqualFunc(f.code, g.code, instr.equal)
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
	for _, f := range list {
		body := appendCode(slices.Clone(f.locals), f.code)
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
func (r *reader) count() int {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > math.MaxInt32 {
		r.fail()
		return 0
	}
	r.rest = r.rest[n:]
	return int(v)
}

// offset reads an unsigned number of 32 bits.
func (r *reader) offset() uint32 {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > math.MaxUint32 {
		r.fail()
		return 0
	}
	r.rest = r.rest[n:]
	return uint32(v)
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
	f := function{locals: r.since(from)}
	open, names := []int64{outermost}, int64(outermost) // the blocks around
	for len(open) > 0 && !r.bad {
		f.code = append(f.code, r.instr(&open, &names))
	}
	if len(r.rest) > 0 {
		r.fail()
	}
	return f
}

// instr reads one instruction within the blocks that are open, and names the one
// that it opens.
func (r *reader) instr(open *[]int64, names *int64) instr {
	label := func() int64 {
		depth := r.count()
		if depth >= len(*open) {
			r.fail()
			return 0
		}
		return (*open)[len(*open)-1-depth]
	}
	i := instr{op: r.byte()}
	switch op := i.op; {
	case op == opBlock || op == opLoop || op == opIf:
		*names++
		i.n = *names
		*open = append(*open, i.n)
		if i.rest = r.bytes(1); !r.bad && i.rest[0] < noResult {
			r.fail() // a type of the section of types, which Go's linker has no use for
		}
	case op == opElse:
		i.n = (*open)[len(*open)-1]
	case op == opEnd:
		i.n = (*open)[len(*open)-1]
		*open = (*open)[:len(*open)-1]
	case op == opBr || op == opBrIf:
		i.n = label()
	case op == opBrTable:
		for range min(r.count(), len(r.rest)) + 1 {
			i.table = append(i.table, label())
		}
	case op == opCall || opLocalGet <= op && op <= opGlobalSet:
		i.n = int64(r.count())
	case op == opI32Const || op == opI64Const:
		i.n = r.signed()
	case op == 0x11: // call_indirect
		from := r.rest
		r.count()
		r.count()
		i.rest = r.since(from)
	case isLoad(op) || isStore(op):
		from := r.rest
		if align := r.count(); align > 4 {
			r.fail() // of another memory, or of none
		}
		r.offset()
		i.rest = r.since(from)
	case op == 0x3f || op == 0x40: // the size of memory
		i.rest = r.bytes(1)
	case op == 0x43: // f32.const
		i.rest = r.bytes(4)
	case op == 0x44: // f64.const
		i.rest = r.bytes(8)
	case op == 0xfc:
		from := r.rest
		switch kind := r.count(); {
		case kind < 8: // conversions
		case kind == 10: // memory.copy
			r.bytes(2)
		case kind == 11: // memory.fill
			r.bytes(1)
		default:
			r.fail()
		}
		i.rest = r.since(from)
	case op <= 0x01 || op == opReturn || op == 0x1a || op == 0x1b: // unreachable, nop, drop, select
	case 0x45 <= op && op <= 0xc4: // arithmetic
	default:
		r.fail()
	}
	return i
}

// appendCode writes instructions out.
func appendCode(b []byte, code []instr) []byte {
	var open []int64 // names of the blocks around, less the body
	depth := func(name int64) uint64 {
		for d := range open {
			if open[len(open)-1-d] == name {
				return uint64(d)
			}
		}
		return uint64(len(open))
	}
	for _, i := range code {
		b = append(b, i.op)
		switch op := i.op; {
		case op == opBlock || op == opLoop || op == opIf:
			open = append(open, i.n)
		case op == opEnd:
			open = open[:max(len(open)-1, 0)]
		case op == opBr || op == opBrIf:
			b = binary.AppendUvarint(b, depth(i.n))
		case op == opBrTable:
			b = binary.AppendUvarint(b, uint64(len(i.table)-1))
			for _, name := range i.table {
				b = binary.AppendUvarint(b, depth(name))
			}
		case op == opCall || opLocalGet <= op && op <= opGlobalSet:
			b = binary.AppendUvarint(b, uint64(i.n))
		case op == opI32Const || op == opI64Const:
			b = appendSigned(b, i.n)
		}
		b = append(b, i.rest...)
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
