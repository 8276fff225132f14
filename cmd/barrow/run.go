package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
)

// Exit statuses.
const (
	exitDone     = 0
	exitProblems = 1 // the job has problems
	exitUsage    = 2 // the command line is wrong
)

// app is one run of the program. Results go to out; problems go to err.
type app struct {
	in       io.Reader
	out, err io.Writer
	colour   bool // headings stand out
}

// problems is a job that has problems; where maps their paths to what was
// typed on the command line.
type problems struct {
	err   error
	where func(path string) string
	json  bool
}

func (p *problems) Error() string { return p.err.Error() }

// run runs the program and returns its exit status.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	a := &app{in: in, out: out, err: errOut, colour: isTerminal(out)}
	root := a.root()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.Execute()
	var p *problems
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &p):
		a.report(p)
		return exitProblems
	}
	fmt.Fprintf(errOut, "error: %v\nhint: barrow --help shows the commands, barrow COMMAND --help one of them\n", err)
	return exitUsage
}

func (a *app) root() *cobra.Command {
	root := &cobra.Command{
		Use:   "barrow",
		Short: "how much soil material a job takes, what to buy, what it weighs",
		Long: `Barrow works out how much of each soil material a job takes and what to buy:
trays of cuttings, dozens of pots, a bed amended with bark, planted and mulched.

Quantities are written as people write them: "3 in", "2' 6\"", "1 1/2 cu ft",
"1/2 yd3", "30 L", "10%". Quote what has a space or a # at the start.`,
		Example: `  barrow plan --sample                        the built-in job, worked out
  barrow sample my-job.json                   the same job as a file to change
  barrow plan my-job.json                     your job
  barrow fill 64x#1 --mix "bark-fines 3, peat 1, perlite 1"
  barrow amend --area "60 ft x 4 ft" --layer "3 in" --into "9 in" \
    --material bark-fines
  barrow cover --area "60 ft x 4 ft" --layer "3 in" --material bark-mulch
  barrow convert "2 yd3" "cu ft"
  barrow help job                             every field of a job file`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.NoArgs,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages", ".FlagUsagesWrapped 80"))
	root.AddCommand(a.planCommand(), a.fillCommand(), a.amendCommand(), a.backfillCommand(), a.coverCommand(), a.convertCommand(), a.listCommand(), a.sampleCommand(), a.jobTopic())
	return root
}

// report writes every problem: where, what was typed, what would do.
func (a *app) report(p *problems) {
	if p.json {
		a.err.Write(mix.ProblemsJSON(p.err))
		return
	}
	list := mix.Problems(p.err)
	fmt.Fprintf(a.err, "error: %d %s; nothing was worked out\n", len(list), plural(len(list), "problem"))
	for _, one := range list {
		where := one.Path
		if p.where != nil {
			where = p.where(where)
		}
		if where == "" {
			where = "the job"
		}
		line := where
		if one.Value != "" {
			line += fmt.Sprintf(": %q", one.Value)
		}
		fmt.Fprintf(a.err, "\n  %s\n", line)
		for _, l := range wrap(one.Hint, 74) {
			fmt.Fprintf(a.err, "    %s\n", l)
		}
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}
