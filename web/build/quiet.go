package main

import (
	"bytes"
	"encoding/binary"
)

// The table of functions in a Go program, runtime/symtab.go and runtime2.go of
// Go 1.20 and later. Numbers are little-endian.
const (
	pcHeaderSize = 72
	funcSize     = 44 // of runtime._func, before its lists
)

// pcHeader is how the table starts on a machine with words of 8 bytes and
// instructions of 1.
var pcHeader = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// The lists of a function, internal/abi/symtab.go: those that only a traceback
// reads, or a preemption by signal, which a browser has not.
var (
	idlePCData   = []int{0, 2, 3}    // UnsafePoint, InlTreeIndex, ArgLiveIndex
	idleFuncData = []int{3, 5, 6, 7} // InlTree, ArgInfo, ArgLiveInfo, WrapInfo
)

// quiet takes the names, files and lines of functions out of the table in
// memory, if it is there: a traceback would print them, and nothing else looks.
// What unwinds the stack and what guides the collector stays. The runtime reads
// an offset of 0, in funcdata all ones, as "none" for each of them. A table of
// another form is left as it is.
func quiet(memory []byte) {
	at := bytes.Index(memory, pcHeader)
	if at < 0 || len(memory) < at+pcHeaderSize {
		return
	}
	t := memory[at:]
	word := func(k int) int { return int(binary.LittleEndian.Uint64(t[8*k:])) }
	count, names, units, files, pcs, funcs := word(1), word(4), word(5), word(6), word(7), word(8)
	if !(pcHeaderSize <= names && names < units && units < files && files < pcs && pcs < funcs && funcs+8*count+4 < len(t)) {
		return
	}
	kept := make([]bool, funcs-pcs) // bytes of the pc tables that are still read
	all := make([][]byte, count)
	for i := range all {
		f := funcs + int(binary.LittleEndian.Uint32(t[funcs+8*i+4:]))
		if f+funcSize > len(t) {
			return
		}
		size := funcSize + 4*int(binary.LittleEndian.Uint32(t[f+28:])) + 4*int(t[f+43])
		if size > len(t)-f {
			return
		}
		all[i] = t[f:][:size]
	}
	for _, f := range all {
		quietFunc(f)
		keepTables(f, t[pcs:funcs], kept)
	}
	clear(t[names:pcs])
	for i, k := range kept {
		if !k {
			t[pcs+i] = 0
		}
	}
}

// quietFunc takes out of one function what is idle here.
func quietFunc(f []byte) {
	for _, field := range [...]int{4, 20, 24, 32, 36} { // nameOff, pcfile, pcln, cuOffset, startLine
		clear(f[field : field+4])
	}
	pcdata := int(binary.LittleEndian.Uint32(f[28:]))
	for _, k := range idlePCData {
		if k < pcdata {
			clear(f[funcSize+4*k:][:4])
		}
	}
	for _, k := range idleFuncData {
		if k < int(f[43]) {
			binary.LittleEndian.PutUint32(f[funcSize+4*(pcdata+k):], ^uint32(0))
		}
	}
}

// keepTables marks the pc tables that one function still has.
func keepTables(f, pcs []byte, kept []bool) {
	keep := func(at int) {
		off := int(binary.LittleEndian.Uint32(f[at:]))
		if off == 0 || off >= len(pcs) {
			return
		}
		n := pcTableSize(pcs[off:])
		for i := range n {
			kept[off+i] = true
		}
	}
	keep(16) // pcsp
	for k := range int(binary.LittleEndian.Uint32(f[28:])) {
		keep(funcSize + 4*k)
	}
}

// pcTableSize is the length of a pc table: pairs of numbers, up to a first of 0
// that is not the table's own first.
func pcTableSize(b []byte) int {
	at := 0
	for first := true; ; first = false {
		value, n := binary.Uvarint(b[at:])
		if n <= 0 {
			return len(b)
		}
		at += n
		if value == 0 && !first {
			return at
		}
		if _, n = binary.Uvarint(b[at:]); n <= 0 {
			return len(b)
		}
		at += n
	}
}
