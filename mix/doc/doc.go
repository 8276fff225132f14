// Package doc reads and writes documents by tables of fields.
//
// A [Field] says once what a field is called, what is written there, what it is
// and where its value is kept. From the tables follow the reading, the hints,
// the help texts, the flags of the quick commands, the rows of the page's form,
// and the document's JSON schema. What the fields mean is for the packages that
// hold the tables; doc knows quantities and no trade.
//
// A [Reader] reads a whole document and collects every problem on the way, each
// with the path of its field. It is for one goroutine; tables and types are
// read-only and may be shared.
package doc
