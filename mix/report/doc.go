// Package report writes plans, problems and other answers as documents: JSON for
// programs and the page, CSV for a spreadsheet. The same job gives the same bytes on
// every machine, so that documents can be compared.
//
// In the documents, volumes are litres and exact, masses are kilograms to a tenth,
// lengths millimetres, areas square metres, and shares fractions. Money is text, since
// a program that reads a JSON number as a float could change it. A text beside a
// figure is in the job's measure and the reader's language. [Shape] says which fields
// a document may have.
package report
