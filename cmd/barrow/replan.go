package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
)

// yardFlags are what has changed at the yard, as it was typed.
type yardFlags struct {
	without []string
	only    string
	bought  []string
}

func (y *yardFlags) flags(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringArrayVar(&y.without, "without", nil, "an `OFFER` that is sold out: \"bark-fines:2 cu ft\"")
	f.StringVar(&y.only, "only-stock", "", "`COUNT` left of every offer that does not say")
	f.StringArrayVar(&y.bought, "bought", nil, "`OFFER=COUNT` bought already: \"peat:3.8 cu ft=2\"")
}

func (y *yardFlags) given() bool { return len(y.without)+len(y.bought) > 0 || y.only != "" }

// yard reads the flags.
func (y *yardFlags) yard() (*yard.Yard, error) {
	out := &yard.Yard{Without: y.without}
	if y.only != "" {
		n, err := strconv.ParseInt(y.only, 10, 64)
		if err != nil || n < 0 {
			return nil, fmt.Errorf("--only-stock %q: write a whole number", y.only)
		}
		out.Only = &n
	}
	for _, b := range y.bought {
		i := strings.LastIndex(b, "=")
		if i < 0 {
			return nil, fmt.Errorf(`--bought %q: write the offer and how many, such as "peat:3.8 cu ft=2"`, b)
		}
		n, err := strconv.ParseInt(strings.TrimSpace(b[i+1:]), 10, 64)
		if err != nil {
			return nil, fmt.Errorf("--bought %q: how many? write a whole number after the =", b)
		}
		out.Bought = append(out.Bought, yard.Bought{Offer: b[:i], Count: n})
	}
	return out, nil
}

// where turns the path of a problem in the yard into the flag it came from.
func (y *yardFlags) where(path string) string {
	for i, w := range y.without {
		if path == fmt.Sprintf("without[%d]", i) {
			return fmt.Sprintf("--without %q", w)
		}
	}
	for i, b := range y.bought {
		if path == fmt.Sprintf("bought[%d]", i) {
			return fmt.Sprintf("--bought %q", b)
		}
	}
	return path
}

// replan works out the job as it was and as it is now, and writes what changes.
func (a *app) replan(o *output, flags *yardFlags, doc []byte) error {
	changed, err := flags.yard()
	if err != nil {
		return err
	}
	job, err := mix.Decode(doc)
	if err != nil {
		return &problems{err: err, json: o.json}
	}
	o.override(job)
	before, _ := job.Plan() // nil when the job had problems, which may be why it is replanned
	left, err := job.At(changed)
	if err != nil {
		return &problems{err: err, where: flags.where, json: o.json}
	}
	after, err := left.Plan()
	if err != nil {
		return &problems{err: err, where: flags.where, json: o.json}
	}
	if o.json || o.csv || o.working {
		return a.write(o, after)
	}
	var b bytes.Buffer
	a.changes(&b, flags.bought, before, after)
	return a.send(o, after, b.Bytes())
}

// changes writes what replanning changes, short enough for one screen.
func (a *app) changes(b *bytes.Buffer, bought []string, before, after *mix.Plan) {
	r := &renderer{app: a, out: b, p: after}
	r.section("What changes")
	var rows [][]string
	for _, c := range after.ChangesFrom(before) {
		pack := c.Pack
		if c.Bulk {
			pack += " bulk"
		}
		rows = append(rows, []string{
			c.Material.Name, pack, fmt.Sprint(c.Before), fmt.Sprint(c.After), becomes[c.Kind()],
		})
	}
	table(b, []column{
		{head: "Material", most: 24}, {head: "Pack", most: 20},
		{head: "Before", right: true, most: 8}, {head: "To buy", right: true, most: 8}, {most: 8},
	}, rows)
	if len(bought) > 0 {
		r.lines("Bought already: "+strings.Join(bought, ", "), 2, width)
	}
	switch {
	case before == nil:
		r.lines("As it stood, the job could not be planned.", 2, width)
	case before.Load.Priced:
		r.lines("Before "+(&renderer{app: a, p: before}).bill(), 2, width)
	}
	if after.Load.Priced {
		r.lines("To pay "+r.bill(), 2, width)
	}
	if is := after.Load.DrivesText(after.Printer()); is != "" {
		r.lines("Still "+is, 2, width)
	}
	r.leftOut()
	for _, out := range after.LeftOut() {
		for _, s := range after.StandIns(out.Material.ID) {
			r.item("-", s+".")
		}
	}
	b.WriteByte('\n')
	r.trips()
}

// becomes are the words for what happens to a line.
var becomes = map[string]string{"new": "new", "gone": "no more", "more": "changed", "fewer": "changed"}
