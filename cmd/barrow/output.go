package main

import (
	"bytes"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// output is how a plan should be written.
type output struct {
	json, csv, working bool
	measure            string
	file               string
	plot               string // file of the plot
	sure               bool   // in JSON
	aim                string
}

// answerFlags adds the flags that every command has that works a job out; what is
// what it writes.
func (o *output) answerFlags(cmd *cobra.Command, what string) {
	f := cmd.Flags()
	f.BoolVar(&o.json, "json", false, "write "+what+" as JSON")
	f.StringVar(&o.measure, "measure", "", "`UNITS` to write in: us, metric or both")
	f.StringVar(&o.file, "out", "", "`FILE` to write to instead, whole or not at all")
	cmd.RegisterFlagCompletionFunc("measure", oneOfWords("us", "metric", "both"))
}

// oneOfWords offers words to the shell.
func oneOfWords(list ...string) cobra.CompletionFunc {
	return cobra.FixedCompletions(list, cobra.ShellCompDirectiveNoFileComp)
}

// flags adds the flags that every command that writes a plan has.
func (o *output) flags(cmd *cobra.Command) {
	o.answerFlags(cmd, "the plan")
	f := cmd.Flags()
	f.BoolVar(&o.csv, "csv", false, "write needs, order, trips and cost as CSV, for a spreadsheet")
	f.BoolVar(&o.working, "working", false, "show every step and its source (in JSON always)")
	f.StringVar(&o.plot, "plot", "", "`FILE.svg` to plot bags against bulk in")
	f.BoolVar(&o.sure, "sure", false, "with --json: how sure, bags or bulk, and other choices")
	f.StringVar(&o.aim, "aim", "", "an `AIM` for choosing packs: cost, left over or lifting")
	cmd.RegisterFlagCompletionFunc("aim", oneOfWords("cost", "left over", "lifting"))
}

// check reports flags that do not go together, before any file is read.
func (o *output) check() error {
	switch {
	case o.json && o.csv:
		return errors.New("give --json or --csv, not both")
	case o.working && o.csv:
		return errors.New("--working has no place in a spreadsheet: give it without --csv")
	}
	if _, ok := yard.ParseAim(o.aim); o.aim != "" && !ok {
		return fmt.Errorf("--aim %q: write cost, left over or lifting", o.aim)
	}
	if _, ok := units.ParseMeasure(o.measure); o.measure != "" && !ok {
		return fmt.Errorf("--measure %q: write us, metric or both", o.measure)
	}
	return apart(nil, o.files(nil, nil))
}

// files are the files to write: the plot, then the result, each if it was asked for.
func (o *output) files(plot, result []byte) (list []file) {
	if o.plot != "" {
		list = append(list, file{"plot", o.plot, plot})
	}
	if o.file != "" {
		list = append(list, file{"out", o.file, result})
	}
	return list
}

// override replaces what the job says by what the command line says.
func (o *output) override(job *mix.Job) {
	if o.measure != "" {
		job.Measure, _ = units.ParseMeasure(o.measure)
	}
	if o.aim != "" {
		job.Aim, _ = yard.ParseAim(o.aim)
	}
}

// plan works out a document and writes the plan.
func (a *app) plan(o *output, doc []byte, where func(string) string, quiet map[string]bool) error {
	p, err := mix.PlanDocument(doc, a.inLanguage(o))
	if err != nil {
		typed := where != nil
		if !typed {
			where = locatorOf(doc).name
		}
		return &problems{err: err, where: where, quiet: quiet, json: o.json, typed: typed}
	}
	return a.write(o, p)
}

// write writes a plan in the form that was asked for.
func (a *app) write(o *output, p *mix.Plan) error {
	var b bytes.Buffer
	switch {
	case o.json && o.sure:
		b.Write(report.Full(p))
	case o.json:
		b.Write(report.Plan(p))
	case o.csv:
		b.Write(report.CSV(p))
	default:
		face := *a
		face.colour = a.colour && o.file == ""
		face.render(&b, p, o.working)
	}
	return a.send(o, p, b.Bytes())
}

// notes says on standard error where a flag has nothing to show.
func (a *app) notes(o *output, p *mix.Plan) {
	note := func(text string) { fmt.Fprintln(a.err, "note: "+text) }
	switch {
	case o.sure && !o.json:
		note("--sure adds to --json; the text says how sure the order is without it")
	case o.sure && len(p.Lines) == 0:
		note("--sure has nothing to show: there is no order, since nothing to buy is offered")
	case o.sure && p.Sure() == nil:
		note("--sure has nothing to show: too much is uncertain to work out the chances")
	}
	if o.plot != "" && len(p.Crossings()) == 0 {
		note("--plot has nothing to show: no material is offered both in bags and in bulk, with prices")
	}
}

// send writes a result to where it was asked for, and the plot of its plan, if
// one was asked for, to its own file. When the plot cannot be written, nothing
// goes to standard output.
func (a *app) send(o *output, p *mix.Plan, result []byte) error {
	var drawing []byte
	if o.plot != "" {
		drawing = plot(p)
	}
	if err := writeFiles(o.files(drawing, result)); err != nil {
		return err
	}
	a.notes(o, p)
	if o.file != "" {
		return nil
	}
	_, err := a.out.Write(result)
	return err
}
