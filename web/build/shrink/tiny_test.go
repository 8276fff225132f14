package shrink

import (
	"encoding/binary"
	"math/rand/v2"
	"slices"
)

// tiny is a program as Go's linker writes one, of a few functions drawn at random:
// every pass finds something in it.
func tiny() module { return tinyOf(rand.New(rand.NewPCG(5, 6)), 4) }

func tinyOf(draw *rand.Rand, count int) module {
	var list []function
	kinds := []byte{byte(count + 1)}
	for k := range count {
		f, _ := drawFunction(draw, 0x1000+int64(k))
		for i := range f.code {
			if f.code[i].op == opCall {
				f.code[i].n %= int64(count) + 1 // the import and the Go functions
			}
		}
		list = append(list, f)
		kinds = append(kinds, goType)
	}
	list = append(list, function{locals: []byte{0}, code: []instr{{op: opGlobalGet}, {op: opReturn}, {op: opEnd}}})
	kinds = append(kinds, 1)
	memory := slices.Concat([]byte("some data"), make([]byte, 30), tinyTable())
	return module{version: "go1.26.8", sections: []section{
		{typeID, []byte{2, 0x60, 1, typeI32, 1, typeI32, 0x60, 0, 1, typeI32}},
		{importID, slices.Concat([]byte{1}, name("gojs"), name("f"), []byte{ofFunction, goType})},
		{functionID, kinds},
		{memoryID, []byte{1, 0, 2}},
		{globalID, slices.Concat([]byte{3}, global(typeI32), global(typeI64), global(typeI64))},
		{exportID, slices.Concat([]byte{2}, name("getsp"), []byte{ofFunction, byte(count + 1)}, name("mem"), []byte{ofMemory, 0})},
		{codeID, writeFunctions(list)},
		{dataID, writeSegments([]segment{{4096, memory}, {9000, []byte{1, 2}}, {100, []byte{3}}})},
		{customID, producers("go1.26.8")},
	}}
}

func name(s string) []byte { return append([]byte{byte(len(s))}, s...) }

func global(kind byte) []byte {
	if kind == typeI32 {
		return []byte{kind, 1, opI32Const, 0, opEnd}
	}
	return []byte{kind, 1, opI64Const, 0, opEnd}
}

func producers(version string) []byte {
	return slices.Concat(name("producers"), []byte{1}, name("language"), []byte{1}, name("Go"), name(version))
}

// Where things are in tinyTable.
const (
	tinyNames = pcHeaderSize
	tinyPCs   = tinyNames + 18 + 4 + 5
	tinyFuncs = tinyPCs + 14
	tinyFirst = tinyFuncs + 20 // the first function
)

// tinyTable is a table of two functions, with a list or two.
func tinyTable() []byte {
	b := make([]byte, pcHeaderSize)
	copy(b, pcHeader)
	for k, v := range []uint64{2, 1, 0, tinyNames, tinyNames + 18, tinyNames + 22, tinyPCs, tinyFuncs} {
		binary.LittleEndian.PutUint64(b[8*(k+1):], v)
	}
	b = append(b, "\x00main.main\x00main.f\x00"...)
	b = append(b, 1, 0, 0, 0)
	b = append(b, "a.go\x00"...)
	// Tables of positions: at 1 the stack pointer's, at 6 the lines, at 9 a list.
	b = append(b, 0, 2, 1, 4, 2, 0, 6, 3, 0, 8, 5, 9, 1, 0)
	u32 := func(list ...uint32) {
		for _, v := range list {
			b = binary.LittleEndian.AppendUint32(b, v)
		}
	}
	const first, second = tinyFirst - tinyFuncs, tinyFirst - tinyFuncs + funcSize + 12
	u32(0, first, 1, second, 2)
	u32(0, 1, 0, 0, 1, 6, 6, 2, 1, 7, 0x01000000, 9, 9, 5)
	u32(1, 11, 0, 0, 1, 0, 6, 0, 1, 8, 0)
	return b
}
