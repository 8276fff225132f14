package shrink

import (
	"bytes"
	"encoding/binary"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"example.org/barrow/web/test"
	"github.com/stretchr/testify/require"
)

// foreign is a module that no Go compiler wrote: a function that adds, and memory
// with two pieces in it.
var foreign = []byte(magic +
	"\x01\x07\x01\x60\x02\x7f\x7f\x01\x7f" + // types
	"\x03\x02\x01\x00" + // functions
	"\x05\x03\x01\x00\x01" + // a memory
	"\x07\x07\x01\x03add\x00\x00" + // exports
	"\x0a\x09\x01\x07\x00\x20\x00\x20\x01\x6a\x0b" + // code
	"\x0b\x0f\x02\x00\x41\x08\x0b\x02hi\x00\x41\x20\x0b\x02ho") // data

// TestForeign: what Go did not make comes back as it is, with the reason.
func TestForeign(t *testing.T) {
	t.Parallel()
	linked := theLinked(t)
	for name, program := range map[string][]byte{
		"nothing":           nil,
		"text":              []byte("text"),
		"no sections":       []byte(magic),
		"another version":   []byte("\x00asm\x02\x00\x00\x00"),
		"another compiler":  foreign,
		"half a section":    linked[:1000],
		"cut off":           linked[:len(linked)-1],
		"data twice":        append(bytes.Clone(linked), dataID, 1, 0),
		"no language named": tiny().with(customID, name("producers")).bytes(),
		"another language":  tiny().with(customID, bytes.Replace(producers("1"), []byte("Go"), []byte("Ho"), 1)).bytes(),
	} {
		got, steps := Program(program)
		require.True(t, bytes.Equal(program, got), name)
		for k, p := range Passes {
			require.Error(t, steps[k].Alone, name)
			got, err := p.Run(program)
			require.Equal(t, steps[k].Alone, err, name)
			require.True(t, bytes.Equal(program, got), name)
		}
	}
}

// edit is the module with a section changed.
func edit(id byte, change func([]byte) []byte) func(module) module {
	return func(m module) module { return m.with(id, change(bytes.Clone(m.body(id)))) }
}

// swap writes one text for another, at the one place where it is.
func swap(old, new string) func([]byte) []byte {
	return func(b []byte) []byte {
		if bytes.Count(b, []byte(old)) != 1 {
			panic("not at one place: " + old)
		}
		return bytes.Replace(b, []byte(old), []byte(new), 1)
	}
}

// inTable changes a number of 32 bits in tiny's table of functions.
func inTable(at int, v uint32) func(module) module {
	return edit(dataID, func(b []byte) []byte {
		binary.LittleEndian.PutUint32(b[bytes.Index(b, pcHeader)+at:], v)
		return b
	})
}

// eachCode changes every function of Go's in tiny.
func eachCode(change func([]instr) []instr) func(module) module {
	return func(m module) module {
		list, _, err := m.functions()
		if err != nil {
			panic(err)
		}
		for k := range list[:len(list)-1] {
			list[k].code = change(list[k].code)
		}
		return m.with(codeID, writeFunctions(list))
	}
}

// alterations are changes to a program at one place, with the passes that then
// leave it alone, and why.
var alterations = map[string]struct {
	change func(module) module
	alone  map[string]string
}{
	"a memory from outside": {edit(importID, func([]byte) []byte {
		return slices.Concat([]byte{2}, name("gojs"), name("f"), []byte{ofFunction, goType}, name("env"),
			name("memory"), []byte{ofMemory, 0, 1})
	}), map[string]string{"segments": "not one memory of its own"}},
	"no memory":        {edit(memoryID, func([]byte) []byte { return []byte{0} }), map[string]string{"segments": "not one memory of its own"}},
	"segments counted": {func(m module) module { m.sections = append(m.sections, section{dataCountID, []byte{3}}); return m }, map[string]string{"segments": "counted elsewhere"}},
	"a segment over another": {edit(dataID, func(b []byte) []byte {
		list, _ := readSegments(b)
		return writeSegments(append(list, segment{4100, []byte{1}}))
	}), map[string]string{"segments": "over another"}},
	"a segment without an address": {edit(dataID, func(b []byte) []byte { b[1] = 1; return b }), map[string]string{"segments": "not all of memory 0", "symtab": "not all of memory 0"}},
	"imports of a new kind":        {edit(importID, func(b []byte) []byte { b[len(b)-2] = 4; return b }), map[string]string{"segments": "imports", "frame": "imports"}},

	"a newer Go":              {func(m module) module { m.version = "go1.27"; return m.with(customID, producers("go1.27")) }, map[string]string{"symtab": "go1.27 made it"}},
	"a much newer Go":         {func(m module) module { m.version = "go1.261"; return m.with(customID, producers("go1.261")) }, map[string]string{"symtab": "go1.261 made it"}},
	"another header":          {inTable(0, 0xfffffff2), map[string]string{"symtab": "no segment"}},
	"two headers":             {edit(dataID, func(b []byte) []byte { return writeSegments(append(must(readSegments(b)), segment{20000, pcHeader})) }), map[string]string{"symtab": "more than one start"}},
	"a word that was unused":  {inTable(24, 1), map[string]string{"symtab": "order known"}},
	"parts in another order":  {inTable(32, tinyPCs), map[string]string{"symtab": "order known"}},
	"more functions":          {inTable(8, 1000), map[string]string{"symtab": "order known"}},
	"a function past the end": {inTable(tinyFuncs+4, 1000), map[string]string{"symtab": "function 0 of its table: it lies past the end"}},
	"a function on the list":  {inTable(tinyFuncs+4, 4), map[string]string{"symtab": "function 0"}},
	"a function over another": {inTable(tinyFuncs+12, tinyFirst-tinyFuncs), map[string]string{"symtab": "function 1"}},
	"a function elsewhere":    {inTable(tinyFirst, 1), map[string]string{"symtab": "not where the list has it"}},
	"no name":                 {inTable(tinyFirst+4, 18), map[string]string{"symtab": "has no name"}},
	"more lists":              {inTable(tinyFirst+28, 6), map[string]string{"symtab": "more lists"}},
	"a list past the end":     {inTable(tinyFirst+funcSize, 14), map[string]string{"symtab": "does not end"}},
	"a list without an end":   {inTable(tinyFirst+16, 13), map[string]string{"symtab": "does not end"}},

	"another first type":     {edit(typeID, func(b []byte) []byte { b[3] = typeI64; return b }), whyCode("the first type")},
	"a function less":        {edit(functionID, func(b []byte) []byte { b[0]--; return b[:len(b)-1] }), whyCode("more or fewer functions")},
	"types without an end":   {edit(functionID, func(b []byte) []byte { return b[:len(b)-1] }), whyCode("list of the functions' types")},
	"an unknown instruction": {edit(codeID, func(b []byte) []byte { b[len(b)-2] = 0xfd; return b }), whyCode("code in it that is not known")},
	"another start":          {eachCode(func(c []instr) []instr { c[0].n = 1; return c }), whyCode("no function starts as Go's compiler")},

	"another getsp":   {edit(codeID, func(b []byte) []byte { b[len(b)-3] = 1; return b }), map[string]string{"frame": "something else than global 0"}},
	"no getsp":        {edit(exportID, swap("getsp", "getps")), map[string]string{"frame": "no getsp"}},
	"a wider pointer": {edit(globalID, func(b []byte) []byte { b[1] = typeI64; b[3] = opI64Const; return b }), map[string]string{"frame": "first global"}},
	"a fixed pointer": {edit(globalID, func(b []byte) []byte { b[2] = 0; return b }), map[string]string{"frame": "first global"}},
	"a pointer of another": {edit(importID, func([]byte) []byte {
		return slices.Concat([]byte{2}, name("gojs"), name("f"), []byte{ofFunction, goType}, name("gojs"), name("sp"),
			[]byte{ofGlobal, typeI32, 1})
	}), map[string]string{"frame": "first global"}},
	"a stack pointer from elsewhere": {eachCode(func(c []instr) []instr {
		return slices.Insert(c, 2, instr{op: opI32Const, n: 8}, instr{op: opLocalSet, n: 1})
	}), map[string]string{"frame": "nothing in it"}},
	"addresses of other functions": {eachCode(func(c []instr) []instr {
		for k := range c {
			if c[k].op == opI64Const {
				c[k].n &= 0xffff
			}
		}
		return c
	}), map[string]string{"address": "nothing in it"}},
	"another local first": {func(m module) module {
		list, _, _ := m.functions()
		for k := range list {
			list[k].locals = slices.Clone(list[k].locals)
			if len(list[k].locals) > 1 {
				list[k].locals[1] = 2
			}
		}
		return m.with(codeID, writeFunctions(list))
	}, map[string]string{"address": "nothing in it"}},
}

func must(list []segment, err error) []segment {
	if err != nil {
		panic(err)
	}
	return list
}

func whyCode(why string) map[string]string {
	return map[string]string{"jumps": why, "frame": why, "address": why}
}

// TestAltered: where a program is in one place not as a pass knows it, the pass
// leaves it alone and says so; the others do their work.
func TestAltered(t *testing.T) {
	for _, p := range Passes {
		_, err := p.Run(tiny().bytes())
		require.NoError(t, err, p.Name)
	}
	for about, a := range alterations {
		program := a.change(tiny()).bytes()
		for _, p := range Passes {
			got, err := p.Run(program)
			why, alone := a.alone[p.Name]
			if !alone {
				require.NoError(t, err, "%s: %s", about, p.Name)
				continue
			}
			require.ErrorContains(t, err, why, "%s: %s", about, p.Name)
			require.True(t, bytes.Equal(program, got), "%s: %s", about, p.Name)
		}
	}
}

// TestAlteredProgram: the same in a program that Go linked.
func TestAlteredProgram(t *testing.T) {
	t.Parallel()
	m, err := readModule(theLinked(t))
	require.NoError(t, err)
	joined, err := joinSegments(m)
	require.NoError(t, err)
	pass := map[string]Pass{}
	for _, p := range Passes {
		pass[p.Name] = p
	}
	// edited is the joined memory with the first 4 bytes changed that start where
	// from says, counted from the start of the table of functions.
	edited := func(from func(table []byte) int) module {
		return edit(dataID, func(b []byte) []byte {
			table := b[bytes.Index(b, pcHeader):]
			binary.LittleEndian.PutUint32(table[from(table):], 0x7fffffff)
			return b
		})(joined)
	}
	funcs := func(table []byte) int { return int(binary.LittleEndian.Uint64(table[64:])) }
	for _, a := range []struct {
		about, pass, why string
		program          module
	}{
		{"the 100th function of the table", "symtab", "function 100", edited(func(table []byte) int { return funcs(table) + 8*100 + 4 })},
		{"where the names start", "symtab", "order known", edited(func([]byte) int { return 32 })},
		{"the version", "symtab", "go1.99", joined.with(customID, producers("go1.99"))},
		{"getsp", "frame", "getsp", edit(exportID, swap("getsp", "getps"))(m)},
		{"the first type", "jumps", "first type", edit(typeID, func(b []byte) []byte { b[3] = typeI64; return b })(m)},
		{"one instruction", "address", "not known", edit(codeID, func(b []byte) []byte { b[len(b)-1] = 0xff; return b })(m)},
		{"one segment", "segments", "over another", edit(dataID, func(b []byte) []byte {
			list := must(readSegments(b))
			list[10].at = list[9].at
			return writeSegments(list)
		})(m)},
	} {
		program := a.program.bytes()
		got, err := pass[a.pass].Run(program)
		require.ErrorContains(t, err, a.why, a.about)
		require.True(t, bytes.Equal(program, got), a.about)
	}
}

// TestStillValid: what is a module to an engine still is one after the passes,
// however it was changed before. An engine checks the types of all code.
func TestStillValid(t *testing.T) {
	t.Parallel()
	node := test.Node(t)
	dir := t.TempDir()
	count := 0
	put := func(program []byte) {
		shrunk, _ := Program(program)
		for end, b := range map[string][]byte{"before": program, "after": shrunk} {
			require.NoError(t, os.WriteFile(filepath.Join(dir, strconv.Itoa(count)+"."+end), b, 0o666))
		}
		count++
	}
	put(foreign)
	put(tiny().bytes())
	for _, about := range slices.Sorted(maps.Keys(alterations)) {
		put(alterations[about].change(tiny()).bytes())
	}
	draw := rand.New(rand.NewPCG(9, 10))
	for range 300 {
		program := tinyOf(draw, 1+draw.IntN(6))
		put(program.bytes())
		put(damaged(draw, program.bytes()))
	}
	out, err := exec.Command(node, "testdata/valid.mjs", dir).CombinedOutput()
	require.NoError(t, err, "%s", out)
	valid, err := strconv.Atoi(string(bytes.TrimSpace(out)))
	require.NoError(t, err)
	require.Greater(t, valid, 300)
}

// damaged is a program with a few bytes changed, taken out or put in.
func damaged(draw *rand.Rand, b []byte) []byte {
	b = bytes.Clone(b)
	for range 1 + draw.IntN(3) {
		at := draw.IntN(len(b))
		switch v := byte(draw.IntN(256)); draw.IntN(4) {
		case 0:
			b = slices.Delete(b, at, at+1)
		case 1:
			b = slices.Insert(b, at, v)
		case 2:
			b[at] ^= 1 << (v % 8)
		default:
			b[at] = v
		}
	}
	return b
}

// checkSteps holds the passes to what they promise of any bytes: they come to an
// end, and what is left alone is the same.
func checkSteps(t *testing.T, program []byte) {
	t.Helper()
	before := bytes.Clone(program)
	got, steps := Program(program)
	require.True(t, bytes.Equal(before, program), "it was changed in place")
	for _, s := range steps {
		if s.Alone != nil {
			require.True(t, bytes.Equal(before, s.Program), s.Pass)
		}
		before = s.Program
	}
	require.True(t, bytes.Equal(before, got))
	for _, p := range Passes {
		alone, err := p.Run(program)
		if err != nil {
			require.True(t, bytes.Equal(program, alone), p.Name)
		}
	}
}

// TestDamaged: no bytes make a pass panic.
func TestDamaged(t *testing.T) {
	t.Parallel()
	draw := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		program := tinyOf(draw, 1+draw.IntN(3)).bytes()
		for range 10 {
			checkSteps(t, damaged(draw, program))
		}
		checkSteps(t, program[:draw.IntN(len(program))])
	}
}

func FuzzProgram(f *testing.F) {
	f.Add(foreign)
	f.Add(tiny().bytes())
	for _, a := range alterations {
		f.Add(a.change(tiny()).bytes())
	}
	f.Fuzz(checkSteps)
}
