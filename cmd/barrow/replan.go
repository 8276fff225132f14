package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
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
	f.StringVar(&y.only, "only-stock", "", "`COUNT` in stock of every offer that gives no stock")
	f.StringArrayVar(&y.bought, "bought", nil, "`OFFER=COUNT` bought already: \"peat:3.8 cu ft=2\", or \"peat:3.8 cu ft=2 for 40.00\" at another cost")
}

func (y *yardFlags) given() bool { return len(y.without)+len(y.bought) > 0 || y.only != "" }

// yard reads the flags.
func (y *yardFlags) yard(a *app) (*yard.Yard, error) {
	out := &yard.Yard{Without: y.without}
	if y.only != "" {
		n, err := strconv.ParseInt(y.only, 10, 64)
		if err != nil || n < 0 {
			return nil, fmt.Errorf("--only-stock %q: write a whole number", y.only)
		}
		out.Only = &n
	}
	for _, b := range y.bought {
		one, err := purchase(b)
		if err != nil {
			return nil, fmt.Errorf("--bought %q: %s", a.asTyped(b), a.asTyped(err.Error()))
		}
		out.Bought = append(out.Bought, one)
	}
	return out, nil
}

// purchase reads one --bought: the offer, how many, and what they cost where that is
// not the offer's price.
func purchase(typed string) (b yard.Bought, err error) {
	i := strings.LastIndex(typed, "=")
	if i < 0 {
		return b, errors.New(`write the offer and how many, such as "peat:3.8 cu ft=2"`)
	}
	count, cost, priced := strings.Cut(typed[i+1:], " for ")
	b.Offer = typed[:i]
	if b.Count, err = strconv.ParseInt(strings.TrimSpace(count), 10, 64); err != nil {
		return b, errors.New("how many? write a whole number after the =")
	}
	if priced {
		all, err := units.ParseMoney(strings.TrimPrefix(strings.TrimSpace(cost), "$"))
		if err != nil {
			return b, fmt.Errorf("what did they cost? %w", err)
		}
		b.Cost = &all
	}
	return b, nil
}

// where turns the path of a problem in the yard into the flag it came from, or "".
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
	return ""
}

// replan works out the job as it was and as it is now, and writes what changes.
func (a *app) replan(o *output, flags *yardFlags, doc []byte) error {
	changed, err := flags.yard(a)
	if err != nil {
		return err
	}
	places := locatorOf(doc)
	where := func(path string) string { return cmp.Or(flags.where(path), places.name(path)) }
	job, err := mix.Decode(doc)
	if err != nil {
		return &problems{err: err, where: places.name, json: o.json}
	}
	a.inLanguage(o)(job)
	before, _ := job.Plan() // nil when the job had problems, which may be why it is replanned
	left, err := job.At(changed)
	if err != nil {
		return &problems{err: err, where: where, json: o.json, typed: true}
	}
	after, err := left.Plan()
	if err != nil {
		return &problems{err: err, where: where, json: o.json}
	}
	if o.json || o.csv || o.working {
		return a.write(o, after)
	}
	var b bytes.Buffer
	a.changes(&b, before, after)
	return a.send(o, after, b.Bytes())
}

// changes writes what replanning changes, short enough for one screen.
func (a *app) changes(b *bytes.Buffer, before, after *mix.Plan) {
	r := &renderer{app: a, out: b, p: after}
	r.section("What changes")
	r.changesTable(after.ChangesFrom(before))
	r.boughtLines()
	r.toPay(before)
	r.toDrive(before)
	r.leftOut()
	for _, out := range after.LeftOut() {
		for _, s := range after.StandIns(out.Material.ID) {
			r.item("-", s+".")
		}
	}
	b.WriteByte('\n')
	r.trips()
}

// changesTable writes what changes, offer by offer.
func (r *renderer) changesTable(list []yard.Change) {
	var rows [][]string
	for i := range list {
		c := &list[i]
		pack := r.shown(c.Pack) + pick(c.Bulk, " bulk")
		rows = append(rows, []string{
			c.Material.Name, pack, fmt.Sprint(c.Before), pick(c.Bought != 0, fmt.Sprint(c.Bought)), fmt.Sprint(c.After), becomes(c),
		})
	}
	table(r.out, []column{
		{head: "Material", most: 19}, {head: "Pack", most: 16},
		{head: "Before", right: true, most: 6}, {head: r.ifAny(rows, 3, "Bought"), right: true, most: 6},
		{head: "To buy", right: true, most: 6}, {most: 14},
	}, rows)
}

// becomes says what happens to a line, and why.
func becomes(c *yard.Change) string {
	if why := whys[c.Why()]; why != "" {
		return why
	}
	return map[string]string{"new": "new", "more": "changed"}[c.Kind()]
}

// whys are the words for why fewer are to be bought. What is bought has a column
// of its own.
var whys = map[string]string{
	"sold-out": "sold out", "bought": "bought", "scarce": "all there are", "not-needed": "not needed",
}

// boughtLines lists what is bought already.
func (r *renderer) boughtLines() {
	p := r.p
	if len(p.Bought.Lines) == 0 {
		return
	}
	r.lines("Bought already, taken to be in the truck or at home; no drive below counts it:", 2, width)
	for i := range p.Bought.Lines {
		l := &p.Bought.Lines[i]
		text := fmt.Sprintf("%d x %s %s", l.Count, r.shown(l.Offer.Size().String()), l.Material.Name)
		if l.Priced {
			text += ", " + r.p.Amount(l.Cost)
		}
		r.item("-", text)
	}
}

// toPay writes what there was to pay, what is paid and what is still to pay, so that
// the three add up.
func (r *renderer) toPay(before *mix.Plan) {
	p := r.p
	switch {
	case before == nil:
		r.lines("As it stood, the job could not be planned.", 2, width)
	case before.Priced():
		was := &renderer{app: r.app, p: before}
		r.lines("Before "+was.bill(&before.Bill, before.Load.Unpriced)+was.withPaid(), 2, width)
	}
	if !p.Bought.Priced {
		if p.Priced() {
			r.lines("To pay "+r.bill(&p.Bill, p.Load.Unpriced), 2, width)
		}
		return
	}
	r.lines("Paid already "+r.bill(&p.Bought.Bill, p.Bought.Unpriced), 2, width)
	if p.Priced() {
		r.lines("Still to pay "+r.bill(&p.Bill, p.Load.Unpriced), 2, width)
		r.lines("In all "+r.inAll(), 2, width)
	}
}

// inAll writes what is paid and what is still to pay as one amount. What the drives
// cost that were made for what is bought, nobody knows.
func (r *renderer) inAll() string {
	return r.p.Amount(r.p.InAll()) + pick(r.p.Haul.TripCost > 0, ", without the drives made already")
}

// withPaid says what was paid even before, and what that comes to in all.
func (r *renderer) withPaid() string {
	p := r.p
	if !p.Bought.Priced {
		return ""
	}
	return "; with " + p.Amount(p.Bought.Bill.Total) + " paid, in all " + r.inAll()
}

// toDrive writes the drives still to make, and what they were before.
func (r *renderer) toDrive(before *mix.Plan) {
	is, was := r.p.Load.DrivesText(r.p.Printer()), ""
	if before != nil {
		was = before.Load.DrivesText(before.Printer())
	}
	switch {
	case is == "" && was == "":
		return
	case is == "":
		is = "no drive"
	}
	head := "To drive: "
	if len(r.p.Bought.Lines) > 0 {
		head = "Still to drive: "
	}
	if was != "" && was != is {
		is += "; before: " + was
	}
	r.lines(head+is, 2, width)
}
