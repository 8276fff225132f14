package shrink

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
)

// The table of functions in a Go program, runtime/symtab.go and runtime2.go.
// Numbers are little-endian.
const (
	pcHeaderSize = 72
	funcSize     = 44 // of runtime._func, before its lists
)

// pcHeader is how the table starts on a machine with words of 8 bytes and
// instructions of 1, since Go 1.20.
var pcHeader = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// knownGo are the versions whose lists of a function were read, in
// internal/abi/symtab.go. Their numbers are nowhere in a program: another version
// may have put something else under them, and kept the header.
var knownGo = []string{"go1.26"}

// The lists that only a traceback reads, or a preemption by signal, which a browser
// has not, and how many lists there are.
var (
	idlePCData   = []int{0, 2, 3}    // UnsafePoint, InlTreeIndex, ArgLiveIndex
	idleFuncData = []int{3, 5, 6, 7} // InlTree, ArgInfo, ArgLiveInfo, WrapInfo
)

const pcDataLists, funcDataLists = 5, 8

// clearNames takes the names, files and lines of functions out of the table in
// memory, as -s takes out the symbols: a traceback would print them. Of a name the
// runtime reads one thing more, whether it starts with "runtime." (isSystemGoroutine):
// while the world is stopped for the collector, only such goroutines run, those that
// mark among them. So that much is kept of those names. What unwinds the stack and what guides the collector stays. The
// runtime reads an offset of 0, in funcdata all ones, as "none" for each of them.
func clearNames(m module) (module, error) {
	if !isKnown(m.version) {
		return m, fmt.Errorf("its tables are known as %s has them, and %s made it", strings.Join(knownGo, " or "), m.version)
	}
	list, err := readSegments(m.body(dataID))
	if err != nil {
		return m, err
	}
	in, at, err := findTable(list)
	if err != nil {
		return m, err
	}
	list[in].bytes = bytes.Clone(list[in].bytes)
	t, err := readTable(list[in].bytes[at:])
	if err != nil {
		return m, err
	}
	t.clear()
	body := writeSegments(list)
	if bytes.Equal(body, m.body(dataID)) {
		return m, errNothing
	}
	return m.with(dataID, body), nil
}

// isKnown says whether a version is one of knownGo, or a release of it.
func isKnown(version string) bool {
	for _, known := range knownGo {
		if rest, ok := strings.CutPrefix(version, known); ok && (rest == "" || rest[0] < '0' || rest[0] > '9') {
			return true
		}
	}
	return false
}

// findTable returns the segment in which the table of functions starts, and where
// there.
func findTable(list []segment) (in, at int, err error) {
	found := 0
	for k, s := range list {
		if n := bytes.Count(s.bytes, pcHeader); n > 0 {
			in, at = k, bytes.Index(s.bytes, pcHeader)
			found += n
		}
	}
	switch found {
	case 0:
		return 0, 0, errors.New("no segment of its memory has the start of a table of functions")
	case 1:
		return in, at, nil
	}
	return 0, 0, errors.New("its memory has more than one start of a table of functions")
}

// table is a table of functions in memory.
type table struct {
	names []byte   // of the functions
	idle  []byte   // names, units and files
	pcs   []byte   // the tables of positions
	list  [][]byte // each function with its lists
	kept  []bool   // bytes of pcs that are still read
}

// readTable checks all of a table before anything of it is changed.
func readTable(b []byte) (*table, error) {
	if len(b) < pcHeaderSize {
		return nil, errors.New("its table of functions is not in one piece")
	}
	word := func(k int) int { return int(min(binary.LittleEndian.Uint64(b[8*k:]), uint64(len(b)))) }
	count, unused, names, units, files, pcs, funcs := word(1), word(3), word(4), word(5), word(6), word(7), word(8)
	if !(unused == 0 && pcHeaderSize <= names && names < units && units < files && files < pcs && pcs < funcs &&
		count < (len(b)-funcs)/8) {
		return nil, errors.New("the parts of its table of functions are not in the order known")
	}
	t := &table{names: b[names:units], pcs: b[pcs:funcs], idle: b[names:pcs], kept: make([]bool, funcs-pcs)}
	list := b[funcs:]
	end := 8*count + 4 // of what is known of the list
	for k := range count {
		f, at, err := t.function(list, k)
		if err == nil && at < end {
			err = errors.New("it lies over another")
		}
		if err != nil {
			return nil, fmt.Errorf("function %d of its table: %w", k, err)
		}
		end = at + len(f)
		t.list = append(t.list, f)
	}
	return t, nil
}

// number reads a number that counts bytes, or lists.
func number(b []byte) int { return int(min(binary.LittleEndian.Uint32(b), math.MaxInt32)) }

// function returns the k-th function of the list with its own lists, where it is,
// and marks what it needs of the tables of positions.
func (t *table) function(list []byte, k int) (f []byte, at int, err error) {
	entry, next := binary.LittleEndian.Uint32(list[8*k:]), binary.LittleEndian.Uint32(list[8*k+8:])
	at = number(list[8*k+4:])
	if at > len(list)-funcSize {
		return nil, 0, errors.New("it lies past the end")
	}
	f = list[at:]
	pcdata, funcdata := number(f[28:]), int(f[43])
	if pcdata > pcDataLists || funcdata > funcDataLists {
		return nil, 0, errors.New("it has more lists than are known")
	}
	size := funcSize + 4*pcdata + 4*funcdata
	if size > len(f) {
		return nil, 0, errors.New("it lies past the end")
	}
	f = f[:size:size]
	if binary.LittleEndian.Uint32(f) != entry || entry >= next || number(f[4:]) >= len(t.names) {
		return nil, 0, errors.New("it is not where the list has it, or has no name")
	}
	tables := []int{16, 20, 24} // pcsp, pcfile, pcln
	for k := range pcdata {
		tables = append(tables, funcSize+4*k)
	}
	for k, at := range tables {
		needed := k == 0 || k > 2 && !slices.Contains(idlePCData, k-3)
		if !t.keep(number(f[at:]), needed) {
			return nil, 0, errors.New("it has a table of positions that does not end")
		}
	}
	return f, at, nil
}

// keep marks a table of positions as one that is read, if needed, and says
// whether it is one.
func (t *table) keep(at int, needed bool) bool {
	if at == 0 {
		return true // none
	}
	if at >= len(t.pcs) {
		return false
	}
	n := positionsSize(t.pcs[at:])
	if needed {
		for i := range n {
			t.kept[at+i] = true
		}
	}
	return n > 0
}

// positionsSize is the length of a table of positions: pairs of numbers, up to a
// first of 0 that is not the table's own first. It is 0 for one without an end.
func positionsSize(b []byte) int {
	for at, first := 0, true; ; first = false {
		value, n := binary.Uvarint(b[at:])
		if n <= 0 {
			return 0
		}
		at += n
		if value == 0 && !first {
			return at
		}
		if _, n = binary.Uvarint(b[at:]); n <= 0 {
			return 0
		}
		at += n
	}
}

// ofRuntime is what is kept of the names of the runtime's own functions, and where.
const (
	ofRuntime   = "runtime."
	atOfRuntime = 1 // 0 is the name of the others, which is none
)

// clear takes out what is idle here.
func (t *table) clear() {
	var own [][]byte // functions of the runtime
	for _, f := range t.list {
		if bytes.HasPrefix(t.names[number(f[4:]):], []byte(ofRuntime)) && len(t.names) > atOfRuntime+len(ofRuntime) {
			own = append(own, f)
		}
		for _, field := range [...]int{4, 20, 24, 32, 36} { // nameOff, pcfile, pcln, cuOffset, startLine
			clear(f[field : field+4])
		}
		pcdata := number(f[28:])
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
	clear(t.idle)
	if len(own) > 0 {
		copy(t.names[atOfRuntime:], ofRuntime)
	}
	for _, f := range own {
		binary.LittleEndian.PutUint32(f[4:], atOfRuntime)
	}
	for i, k := range t.kept {
		if !k {
			t.pcs[i] = 0
		}
	}
}
