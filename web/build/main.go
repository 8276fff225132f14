// Command build makes the folder that a browser loads: the page, its scripts
// and the library as WebAssembly; and the same in one file, barrow.html. Any
// host of files can serve it.
//
//	go run ./web/build -out dist
//
// With -flags it prints how programs are compiled, for what compares other programs
// with the page's.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"

	"example.org/barrow/web/build/compile"
)

func main() {
	out := flag.String("out", "dist", "folder to write; what an earlier build wrote there is replaced")
	quiet := flag.Bool("quiet", false, "leave out the table of sizes")
	flags := flag.Bool("flags", false,
		"build nothing, and print the compiler's flags as JSON: plain, and those of the page")
	flag.Parse()
	var err error
	if *flags {
		err = printFlags(os.Stdout)
	} else {
		err = run(*out, *quiet)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

func run(out string, quiet bool) error {
	source, err := sourceDir()
	if err != nil {
		return err
	}
	made, err := build(source)
	if err != nil {
		return err
	}
	if err := place(made.files, out); err != nil || quiet {
		return err
	}
	empty, err := compile.Empty()
	if err != nil {
		return err
	}
	return report(os.Stdout, made, empty)
}

// printFlags writes how an empty program is compiled to compare with, and how the
// page's is.
func printFlags(w io.Writer) error {
	page, err := compile.Small()
	if err != nil {
		return err
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(map[string]compile.Settings{"plain": compile.Plain(), "page": page})
}
