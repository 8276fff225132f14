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
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/barrow/web/build/compile"
)

func main() {
	set := flag.NewFlagSet("build", flag.ContinueOnError)
	out := set.String("out", "dist", "folder to write; what an earlier build wrote there is replaced")
	quiet := set.Bool("quiet", false, "leave out the table of sizes")
	flags := set.Bool("flags", false,
		"build nothing, and print the compiler's flags as JSON: plain, and those of the page")
	set.SetOutput(io.Discard) // its errors are put in our words
	err := set.Parse(os.Args[1:])
	switch {
	case errors.Is(err, flag.ErrHelp):
		set.SetOutput(os.Stdout)
		set.PrintDefaults()
		return
	case err != nil || set.NArg() > 0:
		fmt.Fprintln(os.Stderr, "error:", usageError(err, set.Args()))
		os.Exit(2)
	case *flags:
		err = printFlags(os.Stdout)
	default:
		err = run(*out, *quiet)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

// usageError says what is wrong with the command line, in one plain sentence.
func usageError(err error, rest []string) string {
	const these = "; there are -out FOLDER, -quiet and -flags"
	if err == nil {
		return fmt.Sprintf("%q belongs to no flag", rest[0]) + these
	}
	if name, ok := strings.CutPrefix(err.Error(), "flag provided but not defined: "); ok {
		return "there is no flag " + name + these
	}
	if name, ok := strings.CutPrefix(err.Error(), "flag needs an argument: "); ok {
		return name + " has nothing after it: write " + name + " FOLDER"
	}
	return "a flag is written wrongly" + these
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
