// Command mutants asks whether the tests would notice a slip. It changes the
// code or the catalogue at one point at a time, a mutant, runs the tests that
// reach that point, quickest first, and lists the mutants that none of them
// notices.
//
//	go run ./testdata/mutants -sample 30 -at-least 0.75 code ./units/... ./mix/...
//	go run ./testdata/mutants -sample 30 -at-least 0.8 catalogue
//
// Without -sample it tries them all. -only tries those whose name has a text in
// it, and -tests counts the tests of some packages alone, which is quicker.
//
// A mutant of the code is an operator in place of another: + for -, * for /, <=
// for < and its like, == for !=, a sign, ++ for --. All mutants are compiled
// into the tests at once and one is switched on by a variable of the environment,
// so that each costs a run of a few tests and no build. Where Go wants a
// constant, the source is changed and built again instead; there a figure of a
// constant's declaration is changed as well.
//
// A mutant of the catalogue is one figure of catalog.json in place of another:
// a fiftieth more, or one more where it counts, a source's kind, a trait left out.
//
// What nothing can notice, because the program does the same, is in
// equivalent.tsv with the reason. The table goes to standard output, one line a
// mutant, then the sums; the exit code is 1 when a smaller share is noticed than
// -at-least asks for.
//
// The tool go-gremlins 0.6.0 makes the same mutants of the code. It builds the
// package's tests anew for each and runs all of them, but none of another
// package, or with -integration those of all: days for the 5,000 mutants
// here.
package main
