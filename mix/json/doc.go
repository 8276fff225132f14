// Package json reads and writes the JSON in which plans and answers travel.
//
// It exists beside encoding/json for three reasons. The program also runs as
// WebAssembly in a browser, where encoding/json costs some 230 kB of
// compressed download. A plan must come back as it was typed, so a number is
// kept as its literal ("1.50" stays "1.50") and an object keeps the order of
// its keys. And the reader of a fault is a gardener who edited a file by hand:
// a fault names the place and says what to write instead.
//
// # Reading
//
// [Parse] accepts exactly the documents of RFC 8259, less these, which are
// grammatical but do not mean one thing to every reader:
//
//   - an object with the same key twice;
//   - text that is not UTF-8, or an escape that is half of a surrogate pair;
//   - a document that starts with a byte order mark;
//   - a document beyond [Limits].
//
// Time and memory are linear in the length of the document, whatever it
// holds. The tree shares its text with one copy of the document, and all its
// nodes with one allocation, so keeping any part of it keeps the whole.
//
// # Writing
//
// [Writer] appends values one after the other. The layout is fixed: the two
// outer levels of containers take a line for each member, deeper ones stay on
// one line, so that a list of things reads as a table:
//
//	{
//	  "schema": 1,
//	  "needs": [
//	    {"material": "bark-fines", "litres": 812.4, "mass_kg": [270, 410]}
//	  ],
//	  "batches": []
//	}
//
// What Writer wrote, Parse reads back to the same tree.
package json
