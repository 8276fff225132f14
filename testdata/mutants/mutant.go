package main

import "fmt"

// mutant is one change at one point.
type mutant struct {
	id         int32  // what switches it on, from 1; 0 when it is built by itself
	reached    int32  // the id that is taken down when a test comes by
	pkg        string // import path of the package that it changes
	file       string // path in the repository
	line       int
	in         string // the function or declaration around it, or the catalogue's row
	from, to   string // source before and after
	nth        int    // which of those with the same text in that function, from 0
	start, end int    // what is replaced in the file, of a mutant that is built by itself
	with       string // what it is replaced with
}

// name says which mutant it is and stays the same when lines move.
func (m *mutant) name() string {
	name := fmt.Sprintf("%s %s: %s -> %s", m.file, m.in, m.from, m.to)
	if m.nth > 0 {
		name += fmt.Sprintf(" #%d", m.nth+1)
	}
	return name
}

// fate is what became of a mutant.
type fate string

const (
	killed     fate = "killed"     // a test failed
	slow       fate = "slow"       // a test did not end in its time
	survived   fate = "survived"   // every test that reaches it passed
	unreached  fate = "unreached"  // no test reaches it
	equivalent fate = "equivalent" // listed with the reason
	broken     fate = "broken"     // it does not compile, and counts for nothing
)

// result is a mutant with its fate and the test that told.
type result struct {
	*mutant
	fate fate
	test string
}
