package main

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"slices"
)

// slim makes a Go program's WebAssembly smaller to send, and changes nothing of
// what it does. The linker writes its memory as tens of thousands of segments,
// one between any two runs of zeros, whose heads say little and pack badly: here
// they are few. And it takes out what only the text of a traceback would show,
// as -s takes out the symbols. Last it rewrites the code, see straighten.
func slim(wasm []byte) ([]byte, error) {
	m, err := readModule(wasm)
	if err != nil {
		return nil, err
	}
	segments, err := readSegments(m[dataSection].body)
	if err != nil {
		return nil, err
	}
	if segments, err = joinSegments(segments); err != nil {
		return nil, err
	}
	for _, s := range segments {
		quiet(s.bytes)
	}
	m[dataSection].body = writeSegments(segments)
	if err := m.straighten(); err != nil {
		return nil, err
	}
	return m.bytes(), nil
}

// Numbers of the format that are met here; WebAssembly core specification 2.0,
// sections 5.4 and 5.5.
const (
	magic       = "\x00asm\x01\x00\x00\x00"
	typeID      = 1
	functionID  = 3
	codeID      = 10
	dataID      = 11
	dataCountID = 12
)

// module is a program's sections in order. dataSection is where the data is.
type module []section

type section struct {
	id   byte
	body []byte
}

// dataSection is the index at which readModule puts the data section.
const dataSection = 0

var errNotGo = errors.New("not WebAssembly as Go's linker writes it")

func readModule(wasm []byte) (module, error) {
	rest, ok := bytes.CutPrefix(wasm, []byte(magic))
	if !ok {
		return nil, errNotGo
	}
	m := module{{id: dataID}}
	for len(rest) > 0 {
		id := rest[0]
		size, n := binary.Uvarint(rest[1:])
		if n <= 0 || size > uint64(len(rest)-1-n) || id == dataCountID {
			return nil, errNotGo
		}
		s := section{id, rest[1+n:][:size]}
		rest = rest[1+n:][size:]
		if id == dataID {
			m[dataSection] = s
		} else {
			m = append(m, s)
		}
	}
	if m[dataSection].body == nil {
		return nil, errNotGo
	}
	return m, nil
}

// bytes writes the module with the data after the code, as the order of the
// format has it.
func (m module) bytes() []byte {
	b := []byte(magic)
	put := func(s section) {
		b = append(b, s.id)
		b = binary.AppendUvarint(b, uint64(len(s.body)))
		b = append(b, s.body...)
	}
	for _, s := range m[1:] {
		put(s)
		if s.id == codeID {
			put(m[dataSection])
		}
	}
	return b
}

// find returns the one section with an id.
func (m module) find(id byte) (*section, error) {
	at := slices.IndexFunc(m, func(s section) bool { return s.id == id })
	if at < 0 {
		return nil, errNotGo
	}
	return &m[at], nil
}

// straighten rewrites the Go functions. What the runtime has in assembly with
// parameters of its own stays as it is.
func (m module) straighten() error {
	types, err := m.find(typeID)
	if err != nil {
		return err
	}
	kinds, err := m.find(functionID)
	if err != nil {
		return err
	}
	section, err := m.find(codeID)
	if err != nil {
		return err
	}
	list, err := readFunctions(section.body)
	if err != nil {
		return err
	}
	// Type 0 is a Go function: one parameter and one result, each of 32 bits.
	if _, n := binary.Uvarint(types.body); n <= 0 || !bytes.HasPrefix(types.body[n:], []byte{0x60, 1, 0x7f, 1, 0x7f}) {
		return errNotGo
	}
	r := reader{rest: kinds.body}
	if r.count() != len(list) {
		return errNotGo
	}
	const firstNumber = 0x1000 // of the first function, cmd/link/internal/wasm
	for k := range list {
		if r.count() == 0 && !r.bad {
			list[k] = straighten(list[k], firstNumber+int64(k))
		}
	}
	section.body = writeFunctions(list)
	return nil
}

// segment is bytes that memory starts with, from an address on.
type segment struct {
	at    int64
	bytes []byte
}

func readSegments(b []byte) ([]segment, error) {
	count, n := binary.Uvarint(b)
	if n <= 0 {
		return nil, errNotGo
	}
	b = b[n:]
	var list []segment
	for range count {
		if len(b) < 2 || b[0] != 0 || b[1] != opI32Const { // memory 0, at a constant
			return nil, errNotGo
		}
		at, n := signed(b[2:])
		if n <= 0 || len(b) < 3+n || b[2+n] != opEnd {
			return nil, errNotGo
		}
		b = b[3+n:]
		size, n := binary.Uvarint(b)
		if n <= 0 || size > uint64(len(b)-n) {
			return nil, errNotGo
		}
		list = append(list, segment{at, b[n:][:size]})
		b = b[n:][size:]
	}
	if len(b) > 0 {
		return nil, errNotGo
	}
	return list, nil
}

// joinSegments writes zeros out where that is shorter, packed, than to start a
// segment. Memory is zero before the segments are laid into it. The linker lays
// some out of order, so that zeros between two may be where a third one lies:
// they are joined by address.
func joinSegments(list []segment) ([]segment, error) {
	const gap = 4096
	var out []segment
	for _, s := range slices.SortedFunc(slices.Values(list), func(a, b segment) int { return cmp.Compare(a.at, b.at) }) {
		if k := len(out) - 1; k >= 0 {
			last := &out[k]
			zeros := s.at - last.at - int64(len(last.bytes))
			if zeros < 0 {
				return nil, errNotGo // one over another: which is last would matter
			}
			if zeros <= gap {
				last.bytes = append(append(last.bytes, make([]byte, zeros)...), s.bytes...)
				continue
			}
		}
		out = append(out, segment{s.at, bytes.Clone(s.bytes)})
	}
	return out, nil
}

func writeSegments(list []segment) []byte {
	b := binary.AppendUvarint(nil, uint64(len(list)))
	for _, s := range list {
		b = append(b, 0, opI32Const)
		b = appendSigned(b, s.at)
		b = append(b, opEnd)
		b = binary.AppendUvarint(b, uint64(len(s.bytes)))
		b = append(b, s.bytes...)
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
