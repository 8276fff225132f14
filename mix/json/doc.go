// Package json reads and writes the JSON of jobs, plans and answers.
//
//	root, faults := json.Parse(data, json.Limits{})
//	for _, f := range faults {
//		fmt.Println(f) // line 3, column 3: schema: ...
//	}
//
// It exists beside encoding/json for three reasons. The program also runs as
// WebAssembly in a browser, where encoding/json costs some 230 kB of compressed
// download. A plan must come back as it was typed, so a number keeps its
// literal ("1.50" stays "1.50") and an object keeps the order of its keys. And
// the reader of a fault is a gardener who edited a file by hand: a fault names
// the place and says what to write instead.
//
// # Reading
//
// [Parse] accepts exactly the documents of RFC 8259, except for these, which
// are grammatical but mean different things to different readers:
//
//   - an object with the same key twice;
//   - text that is not UTF-8, or an escape that is half of a surrogate pair;
//   - a document that starts with a byte order mark;
//   - a document beyond its [Limits].
//
// Time and memory are linear in the length of the document, whatever it holds.
// The tree shares its text with one copy of the document, and all its nodes are
// in one allocation, so keeping any part of it keeps everything. A tree is the
// caller's own; any number of goroutines can parse and read.
//
// # Writing
//
// [Writer] appends one value after the other. The layout is fixed: in the two
// outer levels of containers every member has a line of its own, and deeper
// containers stay on one line, so that a list of things reads as a table:
//
//	{
//	  "schema": 1,
//	  "needs": [
//	    {"material": "bark-fines", "litres": 812.4, "mass_kg": [270, 410]}
//	  ],
//	  "batches": []
//	}
//
// Parse reads what a Writer wrote back to the same tree.
package json
