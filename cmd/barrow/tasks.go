package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

func (a *app) fillCommand(k *task.Kind) *cobra.Command {
	q := &quick{kind: k, defaultMaterial: "potting-mix"}
	cmd := &cobra.Command{
		Use:   "fill COUNTxCONTAINER...",
		Short: "mix for pots, trays and boxes",
		Long: `Works out the mix for pots, trays and boxes. A container is so many times
a class      64x#1   10xtray-72           (barrow list containers)
a volume     12x"2.8 L"                   what one takes to the fill line
a pot        6x"12 in x 11 in"            straight across, and depth of mix
a box        3x"20 in x 10 in x 2 in"     length, width, depth of mix
its fields   8x"brim=3 L, below-rim=1 in, top=6 1/2 in"   as in a job file
Without --mix or --material it is worked out as ready-made potting mix.`,
		Example: `  barrow fill 64x#1 --mix "bark-fines 3, peat 1, perlite 1"
  barrow fill 64x#1 12x"2.8 L" --mix potting --spare 5%
  barrow fill 3x"20 in x 10 in x 2 in" --mix rooting --pack "peat=3.8 cu ft"
  barrow fill 40x#3 --mix "bark-fines 4, compost 1" --settle 0% --blend-loss 0%
  barrow fill 20x"brim=183 cu in" --mix potting`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return fmt.Errorf(`fill what? such as 64x#1 or 12x"2.8 L"; quote what starts with #`)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			lines := make([][2]string, len(args))
			for i, arg := range args {
				count, what, ok := splitCount(arg)
				if !ok {
					return fmt.Errorf("%q: write how many, x, and what: 64x#1 or 12x\"2.8 L\"", arg)
				}
				lines[i] = [2]string{count, what}
				q.where[fmt.Sprintf("tasks[0].containers[%d]", i)] = fmt.Sprintf("%q", arg)
			}
			q.containers = func(w *json.Writer) { containers(w, lines) }
			return q.plan(a)
		},
	}
	q.flags(cmd, k.Object.Fields())
	q.output.flags(cmd)
	cmd.ValidArgsFunction = completeWith(func() (ids []string) {
		for _, k := range catalog.BuiltIn().Containers {
			ids = append(ids, "1x"+k.ID)
		}
		return ids
	})
	return cmd
}

// kindOf is the kind of task with a name, which there is.
func kindOf(name string) *task.Kind {
	kinds := task.Kinds()
	return kinds[slices.IndexFunc(kinds, func(k *task.Kind) bool { return k.Name == name })]
}

// fieldOf is a field of a kind of task, which has it.
func fieldOf(k *task.Kind, name string) doc.Field {
	fields := k.Object.Fields()
	return fields[slices.IndexFunc(fields, func(f doc.Field) bool { return f.Name == name })]
}

// noArgs refuses what stands outside the flags, which as a rule has lost its
// quotes.
func noArgs(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf(`%q belongs to no flag: quote what has spaces, as in --area "60 ft x 4 ft"`, args[0])
}

// splitCount cuts 64x#1 into 64 and #1.
func splitCount(s string) (count, what string, ok bool) {
	s = strings.TrimSpace(s)
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	rest := strings.TrimSpace(s[n:])
	for _, x := range []string{"x", "X", "×"} {
		if what, ok := strings.CutPrefix(rest, x); ok && n > 0 && strings.TrimSpace(what) != "" {
			return s[:n], strings.TrimSpace(what), true
		}
	}
	return "", "", false
}

// containers writes the lines of a fill: what starts with a figure is a
// measure, by how many lengths it has; anything else is a class.
func containers(w *json.Writer, lines [][2]string) {
	w.Key("containers")
	w.BeginArray()
	for _, l := range lines {
		w.BeginObject()
		w.Key("count")
		number(w, l[0])
		what := l[1]
		switch figure, sides := units.Looks(what); {
		case strings.Contains(what, "="):
			containerFields(w, what)
		case !figure:
			text(w, "size", what)
		case sides == 2: // both from one text, so that a unit at the end serves both
			across, height := pair(what)
			text(w, "across", across)
			text(w, "height", height)
		case sides > 2:
			text(w, "box", what)
		case isLength(what): // how wide it is does not say what it holds
			text(w, "across", what)
		default:
			text(w, "holds", what)
		}
		w.EndObject()
	}
	w.EndArray()
}

// containerFields writes the fields of a container as they stand, for the job's check
// to read: "brim=3 L, below-rim=1 in". A comma may stand inside a value.
func containerFields(w *json.Writer, what string) {
	fields := fieldOf(kindOf("fill"), "containers").Type.Of().Fields()
	var pairs []string
	for part := range strings.SplitSeq(what, ",") {
		if strings.Contains(part, "=") || len(pairs) == 0 {
			pairs = append(pairs, part)
		} else {
			pairs[len(pairs)-1] += "," + part
		}
	}
	for _, pair := range pairs {
		name, typed, _ := strings.Cut(pair, "=")
		name, typed = strings.ReplaceAll(strings.TrimSpace(name), "-", "_"), strings.TrimSpace(typed)
		w.Key(name)
		if i := slices.IndexFunc(fields, func(f doc.Field) bool { return f.Name == name }); i >= 0 {
			value(w, fields[i].Type, typed)
		} else {
			w.String(typed)
		}
	}
}

// isLength reports whether what is a length and no volume.
func isLength(what string) bool {
	_, err := units.ParseLength(what)
	_, volume := units.ParseVolume(what)
	return err == nil && volume != nil
}

// pair reads two lengths, exactly; what does not read stands as it is, twice,
// for the job's check to refuse.
func pair(what string) (across, height string) {
	d, err := units.ParseDims(what)
	if err != nil || len(d) != 2 {
		return what, what
	}
	return d[0].String(), d[1].String()
}

// helps are what the commands of kinds of task say of themselves.
var helps = map[string]struct{ short, long, example string }{
	"amend": {"a layer worked into a bed",
		`Works out a layer worked into a bed. --into is the finished depth that holds the
layer: 3 in of 9 in is a third. --over is the depth of native soil loosened:
3 in over 6 in is the same third. Give one of the two; and --layer, or --share
and the layer follows.`, `  barrow amend --area "60 ft x 4 ft" --layer "3 in" --into "9 in" \
    --material bark-fines
  barrow amend --area "circle 14 ft" --share 25% --over "8 in" \
    --material compost
  barrow amend --area "240 sq ft" --layer "2 in" --into "8 in" \
    --mix "compost 1, bark-fines 1" --bulk "1/2 yd3"`},
	"backfill": {"soil and material round root balls",
		`Works out planting holes: the soil dug, what goes back round the root balls,
what is left over, and the material mixed in where --share asks for some.`,
		`  barrow backfill --holes 64 --width "18 in" --depth "6 in" \
    --ball "#1" --above-grade "1 in"
  barrow backfill --holes 12 --width "2 ft" --depth "8 in" \
    --ball "8 in x 9 in" --share 25% --material compost`},
	"cover": {"mulch over a bed",
		`Works out mulch over a bed, with the ground round stems left bare and
sheets of cardboard or paper underneath.`, `  barrow cover --area "60 ft x 4 ft" --layer "3 in" --material bark-mulch
  barrow cover --area "ring 6 ft x 1 ft" --layer "8 cm" \
    --material wood-chips --measure metric
  barrow cover --area "60 ft x 4 ft" --layer "3 in" \
    --material bark-mulch --stems "64 at 3 in" \
    --sheet "4 ft x 3 ft overlap 6 in"`},
}

// taskCommands are the commands that work out one task: one for every kind. Fill
// has its own, since containers are named without a flag.
func (a *app) taskCommands() (list []*cobra.Command) {
	for _, k := range task.Kinds() {
		if k.Name == "fill" {
			list = append(list, a.fillCommand(k))
		} else {
			list = append(list, a.taskCommand(k))
		}
	}
	return list
}

func (a *app) taskCommand(k *task.Kind) *cobra.Command {
	q := &quick{kind: k}
	help, ok := helps[k.Name]
	if !ok {
		help.short = k.Object.Name.String()
	}
	cmd := &cobra.Command{
		Use:     k.Name,
		Short:   help.short,
		Long:    help.long,
		Example: help.example,
		Args:    noArgs,
		RunE:    func(*cobra.Command, []string) error { return q.plan(a) },
	}
	q.flags(cmd, k.Object.Fields())
	q.output.flags(cmd)
	return cmd
}

// completeWith offers words to the shell.
func completeWith(words func() []string) cobra.CompletionFunc {
	return func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return words(), cobra.ShellCompDirectiveNoFileComp
	}
}

func materialIDs() (ids []string) {
	for _, m := range catalog.BuiltIn().Materials {
		ids = append(ids, m.ID+"\t"+m.Name)
	}
	return ids
}

func mixIDs() (ids []string) {
	for _, m := range catalog.BuiltIn().Mixes {
		ids = append(ids, m.ID+"\t"+m.Name)
	}
	return ids
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
