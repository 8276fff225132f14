package shrink

import (
	"bytes"
	"errors"
)

// A Pass makes one thing of a program smaller. Where the program is not as the
// pass knows it, the pass leaves all of it alone.
type Pass struct {
	Name string
	run  func(module) (module, error)
}

// Passes lists the passes in the order in which they go.
var Passes = []Pass{
	{"segments", joinSegments},
	{"symtab", clearNames},
	{"jumps", jumpDirectly},
	{"frame", reachFrames},
	{"address", shareAddresses},
}

// A Step is what one pass did.
type Step struct {
	Pass    string
	Program []byte // after the pass
	Alone   error  // why the pass left the program alone, nil where it did not
}

// Program runs all passes, each over what the one before it left. The program
// does afterwards what it did before.
func Program(wasm []byte) ([]byte, []Step) {
	steps := make([]Step, 0, len(Passes))
	m, err := readModule(wasm)
	for _, p := range Passes {
		alone := err
		if err == nil {
			var next module
			if next, alone = p.run(m); alone == nil {
				m, wasm = next, next.bytes()
			}
		}
		steps = append(steps, Step{p.Name, wasm, alone})
	}
	return wasm, steps
}

// Run runs one pass alone. Where it leaves the program alone, the same bytes come
// back with the reason.
func (p Pass) Run(wasm []byte) ([]byte, error) {
	m, err := readModule(wasm)
	if err != nil {
		return wasm, err
	}
	if m, err = p.run(m); err != nil {
		return wasm, err
	}
	return m.bytes(), nil
}

// errNothing is why a pass leaves a program alone that is as it knows it, and has
// nothing to make smaller. So is a program that it went over before.
var errNothing = errors.New("nothing in it is as this pass would change it")

// eachFunction is a pass over the functions that Go's compiler wrote. What the
// runtime has in assembly with parameters of its own, and what does not start as
// the compiler starts a function, is written out as it was read.
func (m module) eachFunction(rewrite func(f function, number int64) function) (module, error) {
	list, kinds, err := m.functions()
	if err != nil {
		return m, err
	}
	const firstNumber = 0x1000 // of the first function, cmd/link/internal/wasm
	known, changed := false, false
	out := make([]function, len(list))
	for k, f := range list {
		out[k] = f
		if kinds[k] != goType || !f.startsAsGo() {
			continue
		}
		known = true
		out[k] = rewrite(f, firstNumber+int64(k))
		changed = changed || !out[k].equal(f)
	}
	switch {
	case !known:
		return m, errors.New("no function starts as Go's compiler starts one")
	case !changed:
		return m, errNothing
	}
	return m.withFunctions(out), nil
}

// startsAsGo says whether f reads the stack pointer first of all, into local 1.
func (f function) startsAsGo() bool {
	return len(f.code) >= 2 && f.code[0].is(opGlobalGet, 0) && f.code[1].is(opLocalSet, 1)
}

// goType is the number of the type of Go functions. Its one parameter is where
// in the function to go on; its one result is 1 where a goroutine gives up its
// turn, and 0 where the function is done.
const goType = 0

// functions returns the functions with the number of each one's type.
func (m module) functions() ([]function, []int, error) {
	types, code := m.body(typeID), m.body(codeID)
	r := reader{rest: types}
	r.count()
	if r.bad || !bytes.HasPrefix(r.rest, []byte{0x60, 1, typeI32, 1, typeI32}) {
		return nil, nil, errors.New("the first type is not that of Go functions, a number in and a number out")
	}
	list := m.decoded
	if list == nil {
		var err error
		if list, err = readFunctions(code); err != nil {
			return nil, nil, err
		}
	}
	r = reader{rest: m.body(functionID)}
	kinds := make([]int, len(list))
	if r.count() != len(list) {
		return nil, nil, errors.New("there are more or fewer functions than it says")
	}
	for k := range kinds {
		kinds[k] = r.count()
	}
	if r.bad || len(r.rest) > 0 {
		return nil, nil, errors.New("the list of the functions' types is not as WebAssembly has it")
	}
	return list, kinds, nil
}
