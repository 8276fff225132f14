// Package doc reads and writes documents by tables of fields.
//
// A [Field] describes one field in one place: its name, what may be written in it,
// what it is for, and where its value is stored. Everything else is made from these
// tables: reading, hints, help texts, the flags of the quick commands, the rows of
// the page's form and the JSON Schema, so that none of them can disagree with
// another. What a field means is the business of the package that has the table;
// package doc knows quantities, but nothing about soil.
//
// A [Reader] reads a whole document and collects every problem in it, each with the
// path of its field, so that a person can fix them all in one go. A Reader belongs
// to one goroutine. Tables and types are read-only and may be shared.
package doc
