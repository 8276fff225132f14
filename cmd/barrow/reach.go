package main

import (
	"bytes"
	"cmp"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/report"
	"example.org/barrow/units"
)

// reachCommand takes what is on hand with --have and the rest as the quick
// commands do.
func (a *app) reachCommand() *cobra.Command {
	q := &quick{kind: kindOf("fill")}
	var have []string
	cmd := &cobra.Command{
		Use:   "reach CONTAINER...",
		Short: "how far what you have goes",
		Long: `Works out how far what you have goes: how many of each container if nothing
else is filled, or how deep over a bed; what runs out first, and what one more
pack of each material would add.`,
		Example: `  barrow reach "#1" "2.8 L" --mix potting --have "bark-fines=6 cu ft" \
    --have "peat=1 x 3.8 cu ft" --have "perlite=4 cu ft"
  barrow reach --area "60 ft x 4 ft" --material bark-mulch \
    --have "bark-mulch=1 cu yd"`,
		RunE: func(_ *cobra.Command, args []string) error {
			return q.reach(a, args, have)
		},
	}
	q.flags(cmd, []doc.Field{fieldOf(kindOf("cover"), "area")})
	q.output.answerFlags(cmd, "the answer")
	cmd.Flags().StringVar(&q.aim, "aim", "", "")
	cmd.Flags().MarkHidden("aim") // changes nothing; older scripts give it
	cmd.Flags().StringArrayVar(&have, "have", nil,
		"`WHAT` you have: \"peat=7 cu ft\" loose, or \"peat=2 x 3.8 cu ft\" in packs")
	return cmd
}

// reach writes a document from the flags, works out how far the stock goes, and
// writes the result.
func (q *quick) reach(a *app, args, have []string) error {
	if err := q.check(); err != nil {
		return err
	}
	area := q.fields["area"].text
	var wants []string
	switch {
	case len(args) == 0 && area == "":
		return fmt.Errorf(`reach to what? name containers, such as "#1", or give --area`)
	case len(args) > 0 && area != "":
		return fmt.Errorf("give containers or --area, not both")
	}
	if area != "" {
		q.kind = kindOf("cover")
		q.extra = map[string]string{"layer": "1 in"} // any: what is asked for is the depth
	} else {
		lines := make([][2]string, len(args))
		for i, arg := range args {
			count, what := wanted(arg)
			lines[i] = [2]string{cmp.Or(count, "1"), what}
			q.where[fmt.Sprintf("tasks[0].containers[%d]", i)] = fmt.Sprintf("%q", arg)
			wants = append(wants, count)
		}
		q.containers = func(w *json.Writer) { containers(w, lines) }
	}
	q.have = have
	doc, err := q.document()
	if err != nil {
		return err
	}
	job, err := mix.Decode(doc)
	if err != nil {
		return &problems{err: err, where: q.path, quiet: q.quiet, json: q.json, typed: true}
	}
	a.inLanguage(&q.output)(job)
	list, err := job.Reach()
	if err != nil {
		return &problems{err: err, where: q.path, quiet: q.quiet, json: q.json, typed: true}
	}
	return a.writeReach(q, &list[0], wants)
}

// wanted cuts what is asked for into how many, "" where it is not said, and of what: 64
// and #1. The first of two or three lengths is no count.
func wanted(arg string) (count, what string) {
	if _, err := units.ParseDims(arg); err == nil {
		return "", arg
	}
	if count, what, ok := splitCount(arg); ok {
		return count, what
	}
	return "", arg
}

// writeReach writes how far the stock goes, as JSON or as text. wants is how many of
// each container were asked for, "" where it was not said.
func (a *app) writeReach(q *quick, r *mix.Reach, wants []string) error {
	var b bytes.Buffer
	if q.json {
		b.Write(report.Reach(r))
	} else {
		a.reachText(&b, r, wants)
	}
	if q.file != "" {
		return writeFile(q.file, b.Bytes(), false)
	}
	_, err := a.out.Write(b.Bytes())
	return err
}

// reachText lays the result out for a terminal.
func (a *app) reachText(b *bytes.Buffer, r *mix.Reach, wants []string) {
	m := r.Printer
	fmt.Fprintln(b, a.heading("How far it goes"))
	rows := [][]string{{"Loose, " + r.Filling, m.TradeVolume(r.Loose)}}
	if r.Net != r.Loose {
		rows = append(rows, []string{"In place", m.Volume(r.Net)})
	}
	for i, p := range r.Pots {
		count := p.CountText()
		if wants[i] != "" {
			count += "; " + wants[i] + " asked for"
		}
		rows = append(rows, []string{p.Label, count})
	}
	if r.Area > 0 {
		rows = append(rows, []string{"Over " + m.Area(r.Area), m.Length(r.Depth) + " deep"})
	}
	rows = append(rows, []string{"Runs out first", r.Limit.Name})
	for _, p := range r.Left {
		if p.Volume.Plan > 0 {
			rows = append(rows, []string{"Left over, " + p.Material.Name, m.Volume(p.Volume.Plan)})
		}
	}
	for _, p := range r.Unused {
		rows = append(rows, []string{"Not in it, " + p.Material.Name, m.Volume(p.Volume.Plan)})
	}
	table(b, []column{{most: 44}, {most: 30}}, rows)
	if len(r.OneMore) == 0 {
		return
	}
	fmt.Fprintln(b, "\n"+a.heading("One more pack would add"))
	rows = nil
	for _, o := range r.OneMore {
		adds := m.Volume(o.Adds) + " of " + r.Filling
		if o.Adds == 0 {
			adds = "nothing: something else runs out first"
		}
		rows = append(rows, []string{o.Material.Name, m.Figure(o.Pack.Text), adds})
	}
	table(b, []column{{most: 24}, {most: 14}, {most: 34}}, rows)
}
