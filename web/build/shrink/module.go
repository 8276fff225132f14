package shrink

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// Numbers of the format that are met here; WebAssembly core specification 2.0,
// sections 5.3 to 5.5.
const (
	magic = "\x00asm\x01\x00\x00\x00"

	customID    = 0
	typeID      = 1
	importID    = 2
	functionID  = 3
	memoryID    = 5
	globalID    = 6
	exportID    = 7
	codeID      = 10
	dataID      = 11
	dataCountID = 12

	typeI32 = 0x7f
	typeI64 = 0x7e
)

// module is a program's sections in order. It is never changed: a pass makes
// another one.
type module struct {
	sections []section
	decoded  []function // of the code section, where a pass has read it
	version  string     // of the Go that made it, as in go1.26.8
}

type section struct {
	id   byte
	body []byte
}

// readModule takes a program apart that says of itself that Go made it.
func readModule(wasm []byte) (module, error) {
	rest, ok := bytes.CutPrefix(wasm, []byte(magic))
	if !ok {
		return module{}, errors.New("it is not WebAssembly, version 1")
	}
	var m module
	seen := map[byte]bool{}
	for r := (reader{rest: rest}); len(r.rest) > 0; {
		s := section{id: r.byte()}
		s.body = r.bytes(r.count())
		if r.bad {
			return module{}, errors.New("a section of it is cut off")
		}
		if s.id != customID && seen[s.id] {
			return module{}, fmt.Errorf("it has two sections %d", s.id)
		}
		seen[s.id] = true
		m.sections = append(m.sections, s)
		if v := goVersion(s); v != "" {
			m.version = v
		}
	}
	if m.version == "" {
		return module{}, errors.New("it does not say that Go made it")
	}
	return m, nil
}

// goVersion returns the version of Go that a section names as the language, ""
// where it does not. It is the custom section "producers" of the tool conventions.
func goVersion(s section) (version string) {
	r := reader{rest: s.body}
	if s.id != customID || r.name() != "producers" {
		return ""
	}
	for fields := r.count(); fields > 0 && !r.bad; fields-- {
		field := r.name()
		for values := r.count(); values > 0 && !r.bad; values-- {
			if name, v := r.name(), r.name(); field == "language" && name == "Go" {
				version = v
			}
		}
	}
	if r.bad {
		return ""
	}
	return version
}

// body is what is in a section, nil where there is none.
func (m module) body(id byte) []byte {
	for _, s := range m.sections {
		if s.id == id {
			return s.body
		}
	}
	return nil
}

// with is the module with another body for a section that it has.
func (m module) with(id byte, body []byte) module {
	m.sections = slices.Clone(m.sections)
	for k := range m.sections {
		if m.sections[k].id == id {
			m.sections[k].body = body
		}
	}
	return m
}

// withFunctions is the module with other functions.
func (m module) withFunctions(list []function) module {
	m = m.with(codeID, writeFunctions(list))
	m.decoded = list
	return m
}

func (m module) bytes() []byte {
	b := []byte(magic)
	for _, s := range m.sections {
		b = append(b, s.id)
		b = binary.AppendUvarint(b, uint64(len(s.body)))
		b = append(b, s.body...)
	}
	return b
}

// What is imported and exported, WebAssembly core specification 2.0, section 5.5.
const (
	ofFunction = 0
	ofTable    = 1
	ofMemory   = 2
	ofGlobal   = 3
)

// imports counts what comes from outside, by kind.
func (m module) imports() (counts [4]int, err error) {
	body := m.body(importID)
	if body == nil {
		return counts, nil
	}
	r := reader{rest: body}
	for k := r.count(); k > 0 && !r.bad; k-- {
		r.name()
		r.name()
		kind := r.byte()
		if kind > ofGlobal {
			r.fail()
			break
		}
		counts[kind]++
		switch kind {
		case ofFunction:
			r.count() // its type
		case ofTable:
			r.byte() // of what
			r.limits()
		case ofMemory:
			r.limits()
		case ofGlobal:
			r.bytes(2) // its type, and whether it changes
		}
	}
	if r.bad || len(r.rest) > 0 {
		return counts, errors.New("its imports are not as WebAssembly has them")
	}
	return counts, nil
}

// export returns the number of the function that is exported under a name, -1 for
// none.
func (m module) export(name string) int {
	r := reader{rest: m.body(exportID)}
	for k := r.count(); k > 0 && !r.bad; k-- {
		found, kind, number := r.name(), r.byte(), r.count()
		if found == name && kind == ofFunction && !r.bad {
			return number
		}
	}
	return -1
}
