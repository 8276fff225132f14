package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/hashicorp/go-multierror"
	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
	"example.org/barrow/units"
)

// Exit statuses.
const (
	exitDone     = 0
	exitProblems = 1 // the job has problems
	exitUsage    = 2 // the command line is wrong
)

// app is one run of the program. Results go to out, problems to err.
type app struct {
	in       io.Reader
	out, err io.Writer
	colour   bool           // headings stand out
	language *lang.Language // the decimal mark; nil is a point
}

// problems is a job that has problems. where turns their paths into what was
// typed on the command line.
type problems struct {
	err   error
	where func(path string) string
	quiet map[string]bool // paths whose problem is reported at another path
	typed bool            // on the command line, and not in a file
	json  bool
}

func (p *problems) Error() string { return p.err.Error() }

// run runs the program and returns its exit status. Only the caller exits, so
// that tests can run it in their own process.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	result := &screen{to: out, bold: isTerminal(out)}
	a := &app{in: in, out: result, err: &screen{to: errOut}, colour: result.bold}
	root := a.root()
	root.SetArgs(args)
	err := commandError(root, root.Execute())
	if result.wrong != nil {
		err = result.wrong // help keeps the error to itself
	}
	return a.end(err)
}

// end says what went wrong, if anything, and returns the exit status.
func (a *app) end(err error) int {
	if err == nil {
		return exitDone
	}
	if p, ok := errors.AsType[*problems](err); ok {
		a.report(p)
		return exitProblems
	}
	list := []error{err}
	if many, ok := err.(*multierror.Error); ok {
		list = many.Errors
	}
	status := exitProblems
	for _, one := range list {
		if w, ok := errors.AsType[*writeError](one); ok {
			one = w
		} else {
			status = exitUsage
		}
		fmt.Fprintln(a.err, "error:", one)
	}
	if status == exitUsage {
		fmt.Fprintln(a.err, "hint: barrow --help shows the commands, barrow COMMAND --help one of them")
	}
	return status
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
  barrow reach "#1" --mix rooting --have "peat=7 cu ft" --have "perlite=4 cu ft"
  barrow convert "2 yd3" "cu ft"
  barrow serve                                the page, for a browser here
  barrow help job                             every field of a job file`,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
	}
	usage := strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages", ".FlagUsagesWrapped 80")
	usage = strings.ReplaceAll(usage, "{{rpad .CommandPath .CommandPathPadding}}", "barrow help {{rpad .Name 8}}")
	root.SetUsageTemplate(usage)
	root.SetFlagErrorFunc(flagError)
	root.DisableSuggestions = true // commandError makes one line of it
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { io.WriteString(a.out, helpText(cmd)) })
	root.SetHelpCommand(helpCommand(root))
	root.AddCommand(a.taskCommands()...)
	root.AddCommand(a.planCommand(), a.reachCommand(), a.convertCommand(), a.listCommand())
	for _, cmd := range root.Commands() {
		a.decimalFlag(cmd)
	}
	root.AddCommand(
		a.sampleCommand(), a.serveCommand(), a.jobTopic())
	root.SetIn(a.in)
	root.SetOut(a.out) // before completion, which keeps it
	root.SetErr(a.err)
	root.InitDefaultCompletionCmd("")
	for _, c := range root.Commands() {
		if c.Name() == "completion" { // it would take any word, and show its help
			c.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
		}
	}
	return root
}

// version is what the build says about itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "unknown"
	}
	return info.Main.Version
}

// helpText is the help on a command. Cobra's own help would put the error of a failed
// write beside ours.
func helpText(cmd *cobra.Command) string {
	text := strings.TrimRight(cmp.Or(cmd.Long, cmd.Short), " \n") + "\n\n"
	if cmd.Runnable() || cmd.HasSubCommands() { // not a topic, such as job
		text += cmd.UsageString()
	}
	return text
}

// helpCommand is cobra's, except that help on something unknown is an error.
func helpCommand(root *cobra.Command) *cobra.Command {
	var schema bool
	help := &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "help on a command, or on job files: barrow help job",
		RunE: func(_ *cobra.Command, args []string) error {
			cmd, rest, err := root.Find(args)
			switch {
			case err != nil || len(rest) > 0 && cmd == root:
				return fmt.Errorf("no help on %q", strings.Join(args, " "))
			case schema && cmd.Name() != "job":
				return errors.New("--schema is for help on job files: barrow help job --schema")
			case schema:
				_, err := root.OutOrStdout().Write(mix.Schema())
				return err
			}
			cmd.InitDefaultHelpFlag()
			return cmd.Help()
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			var names []string
			for _, c := range root.Commands() {
				names = append(names, c.Name()+"\t"+c.Short)
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
	}
	help.Flags().BoolVar(&schema, "schema", false, "with job: the JSON Schema of job files, for an editor")
	return help
}

// writeError means that a result could not be written.
type writeError struct{ err error }

func (w *writeError) Error() string { return "the result could not be written whole: " + w.err.Error() }

// report writes every problem: where it is, what was typed, what to write
// instead.
func (a *app) report(p *problems) {
	if p.json {
		a.err.Write(report.Problems(p.err, nil))
		return
	}
	list := doc.ProblemsIn(p.err)
	var blocks []string
	for _, one := range list {
		// One flag may fill several fields of the document.
		if block := a.block(p, one); !slices.Contains(blocks, block) && (!p.quiet[one.Path] || len(list) == 1) {
			blocks = append(blocks, block)
		}
	}
	fmt.Fprintf(a.err, "error: %d %s; nothing was worked out\n", len(blocks), plural(len(blocks), "problem"))
	for _, b := range blocks {
		io.WriteString(a.err, b)
	}
}

// listOf is the list that shows what there is, by the code of a problem. The hint
// itself names no command, since a page shows it too.
var listOf = map[string]string{
	doc.MaterialUnknown: "materials", doc.MixUnknown: "mixes", doc.ContainerUnknown: "containers",
}

// block writes one problem.
func (a *app) block(p *problems, one *mix.Problem) string {
	where, hint := one.Path, one.Hint
	if p.where != nil {
		where = p.where(where)
	}
	if where == "" {
		where = "the job"
	}
	if one.Value != "" {
		where += fmt.Sprintf(": %q", one.Value)
	}
	if p.typed {
		where = a.asTyped(where)
		if a.language.DecimalComma() && one.Code == units.NumberComma {
			hint = units.CommaHint
		}
	}
	var b strings.Builder
	b.WriteByte('\n')
	for _, l := range wrap(where, 76) {
		b.WriteString("  " + l + "\n")
	}
	said := hint.In(a.language)
	if list := listOf[one.Code]; list != "" && !strings.HasPrefix(said, "did you mean") {
		said += "; barrow list " + list + " shows what there is"
	}
	for _, l := range wrap(said, 74) {
		b.WriteString("    " + l + "\n")
	}
	return b.String()
}

func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}
