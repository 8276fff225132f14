package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// lists are what barrow list can show, each as rows under heads.
var lists = map[string]func(m units.Measure) list{
	"materials":  materials,
	"containers": classes,
	"mixes":      mixes,
	"soils":      soils,
	"units":      unitTable,
}

// list is rows with their sources; source and sure are "" where they do not
// apply.
type list struct {
	cols []column
	keys []string // of the JSON
	rows []listRow
}

type listRow struct {
	cells  []string
	source string
	sure   string
}

func (a *app) listCommand() *cobra.Command {
	var asJSON bool
	var measure string
	cmd := &cobra.Command{
		Use:       "list materials|containers|mixes|soils|units",
		Short:     "the catalogue, with sources",
		Long:      `Shows the catalogue: every row with its source and how sure it is.`,
		Example:   "  barrow list materials\n  barrow list containers --measure metric\n  barrow list units",
		ValidArgs: sortedKeys(lists),
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 || lists[args[0]] == nil {
				return fmt.Errorf("list what? one of %s", strings.Join(sortedKeys(lists), ", "))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			o := output{measure: measure}
			if err := o.check(); err != nil {
				return err
			}
			m, _ := units.ParseMeasure(measure)
			l := lists[args[0]](m)
			if asJSON {
				return l.json(a.out, args[0])
			}
			return l.text(a.out)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write the list as JSON")
	cmd.Flags().StringVar(&measure, "measure", "", "write in us, metric or both units")
	return cmd
}

// text writes the rows, and the sources they point at.
func (l *list) text(out io.Writer) error {
	number := map[string]int{}
	var sources []string
	var rows [][]string
	cols := l.cols
	sourced := false
	for _, r := range l.rows {
		sourced = sourced || r.source != ""
	}
	if sourced {
		cols = append(cols, column{head: "Sure", most: 6}, column{right: true, most: 4})
	}
	for _, r := range l.rows {
		row := r.cells
		if sourced {
			if number[r.source] == 0 {
				sources = append(sources, r.source)
				number[r.source] = len(sources)
			}
			row = append(row, r.sure, fmt.Sprintf("[%d]", number[r.source]))
		}
		rows = append(rows, row)
	}
	var b bytes.Buffer
	table(&b, cols, rows)
	if len(sources) > 0 {
		b.WriteByte('\n')
	}
	for i, s := range sources {
		mark := fmt.Sprintf("[%d]", i+1)
		for k, line := range wrap(s, width-8) {
			if k > 0 {
				mark = ""
			}
			fmt.Fprintf(&b, "  %-5s %s\n", mark, line)
		}
	}
	_, err := out.Write(b.Bytes())
	return err
}

func (l *list) json(out io.Writer, name string) error {
	var w json.Writer
	w.BeginObject()
	w.Key(name)
	w.BeginArray()
	for _, r := range l.rows {
		w.BeginObject()
		for i, key := range l.keys {
			text(&w, key, r.cells[i])
		}
		if r.source != "" {
			text(&w, "source", r.source)
			text(&w, "confidence", r.sure)
		}
		w.EndObject()
	}
	w.EndArray()
	w.EndObject()
	_, err := out.Write(w.Bytes())
	return err
}

func materials(m units.Measure) list {
	l := list{cols: []column{{head: "Material", most: 14}, {head: "What to ask for", most: 23}, {head: "Weight, dry to wet", most: 21}}, keys: []string{"id", "grade", "density"}}
	for _, row := range catalog.BuiltIn().Materials {
		l.rows = append(l.rows, listRow{[]string{row.ID, row.Grade, m.DensityRange(row.Dry, row.Wet)}, row.Source.String(), row.Confidence})
	}
	return l
}

func classes(m units.Measure) list {
	l := list{cols: []column{{head: "Size", most: 8}, {head: "Container", most: 20}, {head: "Takes", most: 11}, {head: "Between", most: 20}}, keys: []string{"id", "name", "takes", "between"}}
	for _, row := range catalog.BuiltIn().Containers {
		h := row.Whole()
		l.rows = append(l.rows, listRow{[]string{row.ID, row.Name, m.Volume(h.Plan), m.VolumeRange(h.Low, h.High)}, row.Source.String(), row.Confidence})
	}
	return l
}

func mixes(units.Measure) list {
	l := list{cols: []column{{head: "Mix", most: 12}, {head: "Parts by volume", most: 44}}, keys: []string{"id", "parts"}}
	for _, row := range catalog.BuiltIn().Mixes {
		var parts []string
		for _, p := range row.Parts {
			parts = append(parts, p.String())
		}
		l.rows = append(l.rows, listRow{[]string{row.ID, strings.Join(parts, ", ")}, row.Source.String(), row.Confidence})
	}
	return l
}

func soils(units.Measure) list {
	l := list{cols: []column{{head: "Soil", most: 12}, {head: "Swells when dug by", most: 18}, {head: "Between", most: 14}}, keys: []string{"id", "swell", "between"}}
	for _, row := range catalog.BuiltIn().Soils {
		l.rows = append(l.rows, listRow{[]string{row.ID, row.Swell.String(), row.SwellLow.String() + " to " + row.SwellHigh.String()}, row.Source.String(), row.Confidence})
	}
	return l
}

func unitTable(units.Measure) list {
	l := list{cols: []column{{head: "Unit", most: 10}, {head: "Of", most: 18}, {head: "Also written", most: 44}}, keys: []string{"unit", "kind", "also"}}
	for _, u := range units.Units() {
		l.rows = append(l.rows, listRow{cells: []string{u.Name, u.Kind, u.Also}})
	}
	return l
}

// jobTopic is the help on the job document: barrow help job.
func (a *app) jobTopic() *cobra.Command {
	var b strings.Builder
	b.WriteString("A job is one JSON file. Quantities are text, as people write them. barrow sample\nwrites one to start from. Unknown fields are refused. Its fields:\n")
	for _, o := range mix.Objects() {
		fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(o.Title()[:1])+o.Title()[1:])
		var rows [][]string
		for _, f := range o.Fields() {
			rows = append(rows, []string{f.Name, f.Type.InWords(), f.About})
		}
		table(&b, []column{{most: 11}, {most: 18}, {most: 43}}, rows)
	}
	return &cobra.Command{Use: "job", Short: "every field of a job file", Long: strings.TrimRight(b.String(), "\n")}
}
