package main

import (
	"errors"
	"io/fs"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
)

// planCommand also replans: the flags of the yard only make sense for a whole
// job.
func (a *app) planCommand() *cobra.Command {
	var o output
	var sample bool
	var y yardFlags
	cmd := &cobra.Command{
		Use:   "plan JOB.json",
		Short: "work out a whole job",
		Long: `Works out a whole job: what it takes, what to buy, what it weighs and costs.
The job is a JSON file (see barrow help job); - reads standard input.

At the yard, --without, --only-stock and --bought plan again from what is left,
and show what changes, line by line. What is bought is taken to be in the truck
or at home: it is paid, and no drive counts it. With too little in stock, all of
it is bought, and the plan says what it leaves out.

In --csv one row is one thing, and the first column says what: need, order,
left-out, tax, driving (count is the drives), delivery (count is the loads),
total, deposit, bought, paid, in-all. The total is the cost of order, tax,
driving and delivery; sold is bag, bale or bulk.`,
		Example: `  barrow plan --sample
  barrow plan my-job.json --working
  barrow plan my-job.json --csv --out list.csv
  barrow plan my-job.json --without "bark-fines:2 cu ft"
  barrow plan my-job.json --bought "peat:3.8 cu ft=2" --only-stock 10`,
		Args: atMostOne("job"),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := o.check(); err != nil {
				return err
			}
			doc, from, err := a.chooseJob(args, sample)
			if err != nil {
				return err
			}
			if err := apart(from, o.files(nil, nil)); err != nil {
				return err
			}
			if y.given() {
				return a.replan(&o, &y, doc)
			}
			return a.plan(&o, doc, nil, nil)
		},
	}
	o.flags(cmd)
	cmd.Flags().BoolVar(&sample, "sample", false, "use the built-in job")
	y.flags(cmd)
	cmd.ValidArgsFunction = func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
	}
	return cmd
}

// chooseJob reads the job that the command line names, from a file or from nil.
func (a *app) chooseJob(args []string, sample bool) (data []byte, from fs.FileInfo, err error) {
	switch {
	case sample && len(args) > 0:
		return nil, nil, errors.New("give a job file or --sample, not both")
	case sample:
		return mix.Sample(), nil, nil
	case len(args) == 0:
		return nil, nil, errors.New("which job? name a job file, - for standard input, or --sample")
	}
	return a.readJob(args[0])
}

// sampleCommand never overwrites a file, because the name may be that of a job
// somebody has worked on.
func (a *app) sampleCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "sample [FILE]",
		Short: "write the built-in job, as a start for your own",
		Long: `Writes the built-in job to a file, or to standard output. A file that is there
already is left alone.`,
		Example: `  barrow sample my-job.json`,
		Args:    atMostOne("file"),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				return writeFile(args[0], mix.Sample(), true)
			}
			_, err := a.out.Write(mix.Sample())
			return err
		},
	}
}
