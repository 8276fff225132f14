// Barrow works out how much of each soil material a job takes, what to buy and
// what it weighs: from trays of cuttings to an amended and mulched bed.
//
//	barrow plan --sample
//	barrow cover --area "60 ft x 4 ft" --layer "3 in" --material bark-mulch
//
// Results go to standard output and problems to standard error. The exit status
// is 0, 1 when the job has problems, or 2 when the command line is wrong.
package main

import (
	"os"
	"runtime/debug"
)

func main() {
	debug.SetGCPercent(50) // the largest job then stays below 300 MB; others do not notice
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
