// Command build makes the folder that a browser loads: the page, its scripts
// and the library as WebAssembly; and the same in one file, barrow.html. Any
// host of files can serve it.
//
//	go run ./web/build -out dist
package main

import (
	"flag"
	"fmt"
	"os"

	"example.org/barrow/web/build/compile"
)

func main() {
	out := flag.String("out", "dist", "folder to write; what an earlier build wrote there is replaced")
	quiet := flag.Bool("quiet", false, "leave out the table of sizes")
	flag.Parse()
	if err := run(*out, *quiet); err != nil {
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
