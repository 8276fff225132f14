package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	var o options
	flag.IntVar(&o.sample, "sample", 0, "try so many, drawn by -seed; 0 tries all")
	flag.Uint64Var(&o.seed, "seed", 1, "draws another sample")
	flag.StringVar(&o.only, "only", "", "try those whose name has this in it")
	flag.StringVar(&o.tests, "tests", "./units/... ./mix/...", "the packages whose tests count")
	flag.IntVar(&o.workers, "workers", 0, "how many at a time; 0 is one a processor")
	flag.Float64Var(&o.atLeast, "at-least", 0, "exit with 1 when a smaller share is noticed, such as 0.95")
	flag.BoolVar(&o.list, "list", false, "list the mutants and try none")
	flag.Usage = func() {
		fmt.Fprintln(os.Stderr, "usage: go run ./testdata/mutants [flags] code PACKAGES... | catalogue")
		flag.PrintDefaults()
	}
	flag.Parse()
	enough, err := run(&o, flag.Args())
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(2)
	}
	if !enough {
		os.Exit(1)
	}
}

// options are the flags.
type options struct {
	sample  int
	seed    uint64
	only    string
	tests   string
	workers int
	atLeast float64
	list    bool
}
