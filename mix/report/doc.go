// Package report writes plans, problems and answers as documents, the one form in
// which every face reads them: JSON for programs and the page, CSV for a
// spreadsheet. The same job gives the same bytes on every machine.
//
// Volumes are litres, exact; masses kilograms to a tenth; lengths millimetres;
// areas square metres; shares fractions. A text beside a figure is in the job's
// measure and the reader's language. What a document may have is in its schema:
// see [Shape].
package report
