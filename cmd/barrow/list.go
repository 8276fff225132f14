package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"
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

// list is rows with their sources.
type list struct {
	note string // what the figures mean, or ""
	cols []column
	keys []string // of the JSON
	rows []listRow
}

// listRow is one row; kind, source and sure are "" where they do not apply.
type listRow struct {
	kind   string // the heading that it stands under
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
			return l.text(a)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "write the list as JSON")
	cmd.Flags().StringVar(&measure, "measure", "", "write in us, metric or both units")
	return cmd
}

// text writes the rows, and the sources they point at.
func (l *list) text(a *app) error {
	var b bytes.Buffer
	if l.note != "" {
		for _, line := range wrap(l.note, width-2) {
			fmt.Fprintf(&b, "  %s\n", line)
		}
		b.WriteByte('\n')
	}
	cols := l.cols
	if l.rows[0].source != "" {
		cols = append(cols, column{head: "Sure", most: 6}, column{right: true, most: 4})
	}
	rows, sources := l.grouped()
	for _, row := range rows {
		for i := 1; i < len(row); i++ { // the first cell is an id
			row[i] = a.shown(row[i])
		}
	}
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
	_, err := a.out.Write(b.Bytes())
	return err
}

// grouped lists the rows under the headings of their kinds, in the order in which
// the kinds first occur, and the sources by the numbers that the rows give them.
func (l *list) grouped() (rows [][]string, sources []string) {
	var kinds []string
	for _, r := range l.rows {
		if !slices.Contains(kinds, r.kind) {
			kinds = append(kinds, r.kind)
		}
	}
	for _, kind := range kinds {
		if kind != "" {
			rows = append(rows, []string{kind})
		}
		for _, r := range l.rows {
			if r.kind == kind {
				rows = append(rows, r.sourced(&sources))
			}
		}
	}
	return rows, sources
}

// sourced returns the cells of a row, and behind them how sure it is and the
// number of its source, which it adds to sources if it is new.
func (r *listRow) sourced(sources *[]string) []string {
	if r.source == "" {
		return r.cells
	}
	if !slices.Contains(*sources, r.source) {
		*sources = append(*sources, r.source)
	}
	return append(r.cells, r.sure, fmt.Sprintf("[%d]", slices.Index(*sources, r.source)+1))
}

func (l *list) json(out io.Writer, name string) error {
	var w json.Writer
	w.BeginObject()
	w.Key(name)
	w.BeginArray()
	for _, r := range l.rows {
		w.BeginObject()
		if r.kind != "" {
			text(&w, "kind", r.kind)
		}
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
		l.rows = append(l.rows, listRow{row.Kind, []string{row.ID, row.Grade, m.DensityRange(row.Dry, row.Wet)}, row.Source.String(), row.Confidence})
	}
	return l
}

func classes(m units.Measure) list {
	l := list{note: `A pot takes mix to its fill line, 94 % of its brim; a nursery class has its brim in the middle of the class. Trays, cells, bands and flats are filled level, and a tray counts all its cells. Between is what the makes hold.`, cols: []column{{head: "Size", most: 8}, {head: "Container", most: 19}, {head: "Takes", most: 11}, {head: "Between", most: 20}}, keys: []string{"id", "name", "takes", "between"}}
	for _, row := range catalog.BuiltIn().Containers {
		h := row.Whole()
		l.rows = append(l.rows, listRow{row.Kind, []string{row.ID, row.Name, m.Volume(h.Plan), m.VolumeRange(h.Low, h.High)}, row.Source.String(), row.Confidence})
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
		l.rows = append(l.rows, listRow{"", []string{row.ID, strings.Join(parts, ", ")}, row.Source.String(), row.Confidence})
	}
	return l
}

func soils(units.Measure) list {
	l := list{cols: []column{{head: "Soil", most: 12}, {head: "Swells when dug by", most: 18}, {head: "Between", most: 14}}, keys: []string{"id", "swell", "between"}}
	for _, row := range catalog.BuiltIn().Soils {
		l.rows = append(l.rows, listRow{"", []string{row.ID, row.Swell.String(), row.SwellLow.String() + " to " + row.SwellHigh.String()}, row.Source.String(), row.Confidence})
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
