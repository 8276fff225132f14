// Barrow works out how much of each soil material a job takes, what to buy and
// what it weighs: from trays of cuttings to an amended and mulched bed.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
