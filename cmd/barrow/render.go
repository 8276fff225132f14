package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// render writes a plan for an 80-column terminal: first what to buy, then each
// task, then what to take care of. It only lays out what the plan says.
func (a *app) render(out io.Writer, p *mix.Plan, working bool) {
	r := &renderer{app: a, out: out, p: p}
	if p.Name != "" {
		r.lines(p.Name, 0, width)
		fmt.Fprintln(out)
	}
	r.needs()
	r.order()
	r.trips()
	r.yard(working)
	r.packs()
	r.tasks()
	r.notes()
	r.cautions(working)
	if working {
		r.working()
	}
}

// renderer writes one plan.
type renderer struct {
	*app
	out io.Writer
	p   *mix.Plan
}

func (r *renderer) section(s string) { fmt.Fprintln(r.out, r.heading(s)) }

// lines writes text indented by n and wrapped at column to.
func (r *renderer) lines(text string, n, to int) {
	for _, l := range wrap(text, to-n) {
		fmt.Fprintln(r.out, strings.Repeat(" ", n)+l)
	}
}

// item writes wrapped text behind a mark.
func (r *renderer) item(mark, text string) {
	for i, l := range wrap(text, width-2-len(mark)-1) {
		if i > 0 {
			mark = strings.Repeat(" ", len(mark))
		}
		fmt.Fprintln(r.out, "  "+mark+" "+l)
	}
}

// needs writes what the job takes.
func (r *renderer) needs() {
	if len(r.p.Needs) == 0 {
		return
	}
	r.section("What it takes, loose, as it leaves the shovel")
	var rows [][]string
	for i := range r.p.Needs {
		n := &r.p.Needs[i]
		figure := r.p.Printer().TradeVolume(n.Buy.Plan)
		if n.OnHand > 0 {
			figure += " besides " + r.p.Printer().Volume(n.OnHand) + " on hand"
		}
		if n.Buy.Plan == 0 {
			figure = "none: " + r.p.Printer().Volume(n.OnHand) + " on hand"
		}
		between := ""
		if !n.Buy.Certain() {
			between = r.p.Printer().VolumeRange(n.Buy.Low, n.Buy.High)
		}
		mass := n.Mass()
		rows = append(rows, []string{n.Material.Name, figure, between, r.weight(mass)})
	}
	table(r.out, []column{
		{head: "Material", most: 16}, {head: "To buy", most: 23},
		{head: r.ifAny(rows, 2, "As makes differ"), most: 18},
		{head: r.ifAny(rows, 3, "Weight, dry-wet"), most: 15},
	}, rows)
	fmt.Fprintln(r.out)
}

// ifAny returns the head of a column when any row has text there: a column
// without text takes no room.
func (r *renderer) ifAny(rows [][]string, col int, head string) string {
	for _, row := range rows {
		if row[col] != "" {
			return head
		}
	}
	return ""
}

// weight writes a range of mass, or "" when it is not known.
func (r *renderer) weight(m [2]units.Mass) string {
	if m[1] == 0 {
		return ""
	}
	return r.p.Printer().MassRange(m[0], m[1])
}

// order writes what to buy, and the offers that were not chosen.
func (r *renderer) order() {
	p := r.p
	if len(p.Lines) > 0 {
		r.section("What to buy")
		r.linesTable("Cost", p.Lines, func(l *yard.Line) string { return pick(l.Priced, r.shown(l.Cost.String())) })
		r.total()
		fmt.Fprintln(r.out)
	} else if len(p.Bought.Lines) > 0 {
		r.section("What to buy")
		r.lines("Nothing more.", 2, width)
		r.paid()
		fmt.Fprintln(r.out)
	}
	r.others()
}

// others writes the offers that were not chosen. The figure beside each is the whole
// order's, since the cost of its packs alone would leave out tax, driving and delivery.
func (r *renderer) others() {
	lines := slices.Clone(r.p.Others)
	if len(lines) == 0 {
		return
	}
	inAll := map[int]string{}
	for _, a := range r.p.Alternatives() {
		i := slices.IndexFunc(lines, func(l yard.Line) bool { return l.Index() == a.Line.Index() })
		lines[i] = a.Line
		inAll[a.Line.Index()] = pick(a.Unproven, "up to ") + r.shown(a.Bill.Total.String())
	}
	r.section("Other offers, each in place of all that is bought of its material")
	r.linesTable(r.whole(), lines, func(l *yard.Line) string { return inAll[l.Index()] })
	fmt.Fprintln(r.out)
}

// whole heads what a whole order costs, which leaves out what is paid already.
func (r *renderer) whole() string {
	if len(r.p.Bought.Lines) > 0 {
		return "To pay"
	}
	return "In all"
}

// linesTable writes lines of an order, each with a figure of money.
func (r *renderer) linesTable(money string, lines []yard.Line, figure func(*yard.Line) string) {
	p := r.p
	var rows [][]string
	for i := range lines {
		l := &lines[i]
		size := r.shown(l.Offer.Size().String())
		if l.Offer.Bulk.Volume > 0 {
			size += " bulk"
		}
		if !l.InStock() {
			size += ", too few in stock"
		}
		over := ""
		if l.Last {
			over = p.Printer().Volume(l.Left)
		}
		if l.Delivered > 0 {
			size += fmt.Sprintf(", %d delivered", l.Delivered)
		}
		rows = append(rows, []string{l.Material.Name, l.CountText() + " x " + size, figure(l), over, r.weight(l.Mass)})
	}
	table(r.out, []column{
		{head: "Material", most: 15}, {head: "Buy", most: 18},
		{head: r.ifAny(rows, 2, strings.TrimSpace(money+" "+p.Currency)), right: true, most: 11}, {head: "Over", most: 11},
		{head: r.ifAny(rows, 4, "Weight"), most: 15},
	}, rows)
}

// total writes the sums of the order in one line.
func (r *renderer) total() {
	p := r.p
	var parts []string
	if p.Load.Priced {
		parts = append(parts, r.bill(&p.Bill, p.Load.Unpriced))
	}
	parts = append(parts, p.Printer().TradeVolume(p.Load.Packed)+" as packed")
	if w := r.weight(p.Load.Mass); w != "" {
		parts = append(parts, w)
	}
	if d := p.Load.DrivesText(p.Printer()); d != "" {
		parts = append(parts, d)
	}
	if p.Load.Loads > 0 {
		parts = append(parts, fmt.Sprintf("%d delivered", p.Load.Loads))
	}
	r.lines("Together "+strings.Join(parts, "; "), 2, width)
	r.paid()
	r.leftOut()
}

// paid says what was paid already, and what that and the rest come to.
func (r *renderer) paid() {
	if p := r.p; p.Bought.Priced && p.Priced() {
		r.lines("Paid already "+r.bill(&p.Bought.Bill, p.Bought.Unpriced)+"; in all "+r.inAll(), 2, width)
	}
}

// leftOut says what the order does not have.
func (r *renderer) leftOut() {
	var out []string
	for _, one := range r.p.LeftOut() {
		out = append(out, one.Material.Name+", "+r.p.Printer().Volume(one.Volume))
	}
	if len(out) > 0 {
		r.lines("All of this LEAVES OUT "+strings.Join(out, "; ")+": the offers do not cover it.", 2, width)
	}
}

// bill writes a bill in one phrase, and whether it leaves out what has no price.
func (r *renderer) bill(b *yard.Bill, unpriced []string) string {
	text := r.p.Amount(b.Goods)
	if len(unpriced) > 0 {
		text += " and what has no price"
	}
	for _, part := range []struct {
		name string
		m    units.Money
	}{{"tax", b.Tax}, {"driving", b.Driving}, {"delivery", b.Fees}} {
		if part.m > 0 {
			text += " + " + r.p.Amount(part.m) + " " + part.name
		}
	}
	if b.Total > b.Goods {
		text += " = " + r.p.Amount(b.Total)
	}
	if b.Deposit > 0 {
		text += " (and " + r.p.Amount(b.Deposit) + " deposit)"
	}
	return text
}

// trips lists what goes on each drive, and what the yard delivers.
func (r *renderer) trips() {
	var rows [][]string
	add := func(what string, trips []yard.Trip) {
		n := int64(0)
		for i := range trips {
			t := &trips[i]
			label := fmt.Sprintf("%s %d", what, n+1)
			if t.Times > 1 {
				label = fmt.Sprintf("%s %d-%d", what, n+1, n+t.Times)
			}
			n += t.Times
			var packs []string
			for _, k := range t.Packs {
				packs = append(packs, fmt.Sprintf("%d x %s %s", k.Count, r.shown(k.Offer.Size().String()), k.Material.Name))
			}
			rows = append(rows, []string{label, strings.Join(packs, ", "), r.weight(t.Mass), t.Limit})
		}
	}
	if r.p.Load.Drives > 0 {
		add("Drive", r.p.Trips)
	}
	add("Load", r.p.Drops)
	if len(rows) == 0 {
		return
	}
	r.section("Trips, with every pack at its heaviest")
	table(r.out, []column{
		{most: 12}, {most: 36},
		{head: r.ifAny(rows, 2, "Weight"), most: 15},
		{head: r.ifAny(rows, 3, "Nearer limit"), most: 12},
	}, rows)
	fmt.Fprintln(r.out)
}

// yard writes what helps to decide at the yard: bags or bulk, other orders, and
// how sure this one is.
func (r *renderer) yard(working bool) {
	p := r.p
	if len(p.Lines) == 0 {
		return
	}
	if list := p.Crossings(); len(list) > 0 {
		r.section("Bags or bulk")
		for i := range list {
			r.item("-", list[i].Sentence(p.Printer())+".")
		}
		fmt.Fprintln(r.out)
	}
	r.options()
	r.sure(working)
}

// options lists other orders to choose from, if there are any.
func (r *renderer) options() {
	list := r.p.Options(mix.MaxOptions)
	if len(list) < 2 || !r.p.Load.Priced {
		return
	}
	r.section("Other choices between the least cost and the least left over")
	trips := "Trips"
	if r.p.Haul == (yard.Haul{}) {
		trips = ""
	}
	var rows [][]string
	for i := range list {
		o := &list[i]
		rows = append(rows, []string{
			r.shown(o.Bill.Total.String()), r.p.Printer().Volume(o.Left), fmt.Sprint(o.Packs),
			pick(trips != "", fmt.Sprint(o.Trips)), r.instead(o.Lines),
		})
	}
	table(r.out, []column{
		{head: strings.TrimSpace(r.whole() + " " + r.p.Currency), right: true, most: 12}, {head: "Over", most: 11},
		{head: "To lift", right: true, most: 7}, {head: trips, right: true, most: 5},
		{head: "Instead", most: 34},
	}, rows)
	fmt.Fprintln(r.out)
}

// pick returns text where it applies, else "".
func pick(applies bool, text string) string {
	if applies {
		return text
	}
	return ""
}

// instead writes how an order differs from the plan's.
func (r *renderer) instead(lines []yard.Line) string {
	count := map[*yard.Offer]int64{}
	for i := range lines {
		count[lines[i].Offer] = lines[i].Count
	}
	var text []string
	for i := range r.p.Lines {
		l := &r.p.Lines[i]
		if n := count[l.Offer]; n != l.Count {
			text = append(text, fmt.Sprintf("%d x %s %s", n, r.shown(l.Offer.Size().String()), l.Material.ID))
		}
		delete(count, l.Offer)
	}
	for i := range lines {
		if l := &lines[i]; count[l.Offer] > 0 {
			text = append(text, fmt.Sprintf("%d x %s %s", l.Count, r.shown(l.Offer.Size().String()), l.Material.ID))
		}
	}
	if len(text) == 0 {
		return "as planned"
	}
	return strings.Join(text, ", ")
}

// buys writes an order in one line.
func (r *renderer) buys(lines []yard.Line) string {
	var text []string
	for i := range lines {
		l := &lines[i]
		text = append(text, fmt.Sprintf("%d x %s %s", l.Count, r.shown(l.Offer.Size().String()), l.Material.ID))
	}
	return strings.Join(text, ", ")
}

// sure writes how sure the order is, and what would make it surer.
func (r *renderer) sure(working bool) {
	s := r.p.Sure()
	if s == nil {
		return
	}
	r.section("How sure")
	what := "this order is enough"
	if len(r.p.LeftOut()) > 0 {
		what = "of what it has, this order is enough"
	}
	r.lines(fmt.Sprintf("If the ranges are right, %s %s.", what, s.Odds(r.p.Printer())), 2, width)
	for _, one := range s.Assumes {
		r.lines(one+".", 2, width)
	}
	switch {
	case len(s.Enough) > 0:
		cost := ""
		if r.p.Load.Priced {
			cost = "; " + r.p.Amount(s.Bill.Total) + " in all"
			if len(r.p.Bought.Lines) > 0 {
				cost = "; " + r.p.Amount(s.Bill.Total) + " still to pay"
			}
		}
		r.lines("To have enough 9 times in 10: "+r.buys(s.Enough)+cost+".", 2, width)
	case s.Chance < 0.9:
		r.lines("These offers do not go as far as 9 times in 10.", 2, width)
	}
	for i := range s.Matters {
		m := &s.Matters[i]
		r.item("-", title(m.Name)+" may change the need by "+r.p.Printer().Volume(m.Moves)+". To be surer, "+m.Measure+".")
	}
	if working {
		r.lines(mix.SureMethod.In(r.p.Language), 2, width)
		for _, one := range s.Ranges {
			r.item("~", title(one)+".")
		}
	}
	fmt.Fprintln(r.out)
}

// packs lists common packs for every need that no offer covers.
func (r *renderer) packs() {
	var rows [][]string
	for i := range r.p.Needs {
		n := &r.p.Needs[i]
		if n.Buy.Plan == 0 || r.p.Ordered(n.Material) {
			continue
		}
		v := n.Buy.Plan
		all := r.shown(units.Litres(v) + " = " + units.CubicFeet(v) + " = " + units.CubicYards(v))
		rows = append(rows, []string{n.Material.Name, "loose", all})
		bags, bulk := []string{}, []string{}
		for _, c := range n.Packs(r.p.Measure) {
			text := c.CountText() + " x " + r.shown(c.Size.String())
			switch {
			case c.Bulk:
				bulk = append(bulk, text)
			case c.Bale:
				bags = append(bags, text+" bale"+r.metric(c.Size))
			default:
				bags = append(bags, text)
			}
		}
		if len(bags) > 0 {
			rows = append(rows, []string{"", "bags", strings.Join(bags, ", or ")})
		}
		if len(bulk) > 0 {
			rows = append(rows, []string{"", "bulk", strings.Join(bulk, ", or ")})
		}
	}
	if len(rows) == 0 {
		return
	}
	r.section("In common packs, any one of these")
	table(r.out, []column{{most: 20}, {most: 5}, {most: 48}}, rows)
	fmt.Fprintln(r.out)
}

// metric adds litres to a size that is sold by the cubic foot.
func (r *renderer) metric(s catalog.Size) string {
	if r.p.Measure == units.US || strings.HasSuffix(s.Text, " L") {
		return ""
	}
	return " (" + r.shown(units.Litres(s.Volume)) + ")"
}

// tasks writes the facts and volumes of every task.
func (r *renderer) tasks() {
	r.section("The work")
	for i := range r.p.Tasks {
		t := &r.p.Tasks[i]
		r.item(fmt.Sprintf("%d.", i+1), t.Title)
		var rows [][]string
		for _, f := range t.Facts {
			rows = append(rows, []string{f.Label, f.Figure})
		}
		if t.Filling != "" {
			rows = append(rows, r.loose(t)...)
		}
		table(indent{r.out}, []column{{most: 36}, {most: 38}}, rows)
	}
	fmt.Fprintln(r.out)
}

// loose writes the steps from the net volume to the loose one, and the parts.
func (r *renderer) loose(t *mix.TaskPlan) (rows [][]string) {
	if t.Net != t.Loose { // otherwise the layer, as it is spread, is the loose volume
		rows = append(rows, []string{"In place", r.p.TaskText(t, t.Net)})
	}
	for _, al := range t.Allowances {
		if al.Adds > 0 {
			name := title(al.Name.In(r.p.Language)) + " " + al.ShareText(r.p.Printer())
			rows = append(rows, []string{name, "+ " + r.p.TaskText(t, units.Exactly(al.Adds))})
		}
	}
	rows = append(rows, []string{"Loose, " + t.Filling, r.p.TaskText(t, t.Loose)})
	if len(t.Parts) > 1 {
		for _, part := range t.Parts {
			rows = append(rows, []string{"  " + part.Material.Name, r.p.TaskText(t, part.Volume)})
		}
	}
	return rows
}

// title writes text with a capital at its start.
func title(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

func (r *renderer) notes() {
	if len(r.p.Notes) == 0 {
		return
	}
	r.section("Worth knowing")
	for _, n := range r.p.Notes {
		mark := "-"
		if n.Task >= 0 {
			mark = fmt.Sprintf("%d.", n.Task+1)
		}
		r.item(mark, title(n.Text)+".")
	}
	fmt.Fprintln(r.out)
}

func (r *renderer) cautions(working bool) {
	r.section("Take care")
	for _, c := range r.p.Cautions {
		text := c.Text.In(r.p.Language)
		if working && c.Source != "" {
			text += " (" + c.Source.In(r.p.Language) + ")"
		}
		r.item("!", text)
	}
}

// stepColumns are the same for every step, so that steps line up.
var stepColumns = []column{{most: 38, least: 38}, {most: 30, least: 30}, {right: true, most: 4, least: 4}}

// working writes every step, with a number for its source, and the list of
// sources.
func (r *renderer) working() {
	fmt.Fprintln(r.out)
	r.section("How it is worked out")
	last, sources := -2, map[string]int{}
	var order []string
	for s := range r.p.Working() {
		if s.Task != last {
			last = s.Task
			if s.Task >= 0 {
				r.item(fmt.Sprintf("%d.", s.Task+1), r.p.Tasks[s.Task].Title)
			} else {
				r.item("=", "All tasks together")
			}
		}
		n, ok := sources[s.Source]
		if !ok {
			n = len(order) + 1
			sources[s.Source] = n
			order = append(order, s.Source)
		}
		table(indent{r.out}, stepColumns, [][]string{{s.Step, s.Figure, fmt.Sprintf("[%d]", n)}})
	}
	fmt.Fprintln(r.out)
	r.section("Where the figures come from")
	for i, s := range order {
		r.item(fmt.Sprintf("[%d]", i+1), s)
	}
}

// indent writes every line two columns further to the right.
type indent struct{ out io.Writer }

func (w indent) Write(b []byte) (int, error) {
	for line := range strings.Lines(string(b)) {
		if _, err := io.WriteString(w.out, "  "+line); err != nil {
			return 0, err
		}
	}
	return len(b), nil
}
