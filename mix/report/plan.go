package report

import (
	"strings"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// schema is the version of the documents, so that a program can refuse one that it does
// not know.
const schema = 1

// Plan writes a plan as JSON. The document has the shape "Plan".
func Plan(p *mix.Plan) []byte { return write(p, false) }

// Full writes what [Plan] writes and also what takes some milliseconds to work out: how
// sure the order is, bags or bulk, and other orders. The document has the shape
// "FullPlan".
func Full(p *mix.Plan) []byte { return write(p, true) }

// write writes the fields in the order in which a person would read them: what to buy,
// how to bring it home, then the tasks and how everything was worked out.

func write(p *mix.Plan, full bool) []byte {
	w := &writer{Writer: lang.Writer{Printer: p.Printer()}, p: p}
	w.JSON.BeginObject()
	w.Int("schema", schema)
	w.Optional("name", p.Name)
	w.Text("measure", p.Measure.String())
	w.Rows("needs", len(p.Needs), func(i int) { w.need(&p.Needs[i]) })
	w.Rows("order", len(p.Lines), func(i int) { w.line(&p.Lines[i]) })
	if len(p.Others) > 0 {
		w.Rows("others", len(p.Others), func(i int) { w.line(&p.Others[i]) })
	}
	w.Rows("trips", len(p.Trips), func(i int) { w.trip(&p.Trips[i]) })
	if len(p.Drops) > 0 {
		w.Rows("deliveries", len(p.Drops), func(i int) { w.trip(&p.Drops[i]) })
	}
	w.Rows("batches", 0, nil) // always empty, so that programs can expect the field
	w.cost()
	w.leftOut()
	w.load()
	if full {
		w.full()
	}
	w.Rows("tasks", len(p.Tasks), func(i int) { w.task(&p.Tasks[i]) })
	w.Rows("notes", len(p.Notes), func(i int) { w.note(&p.Notes[i]) })
	w.Rows("cautions", len(p.Cautions), func(i int) { w.caution(&p.Cautions[i]) })
	w.JSON.Key("working")
	w.JSON.BeginArray()
	for s := range p.Working() {
		w.step(&s)
	}
	w.JSON.EndArray()
	w.JSON.EndObject()
	return w.JSON.Bytes()
}

// writer writes the objects of a plan. The embedded [lang.Writer] writes fields with
// their units and texts.
type writer struct {
	lang.Writer
	p *mix.Plan
}

// need writes one material to buy. Cubic feet and yards come as numbers besides litres,
// because yards sell by them and a program should not have to know the factors.
func (w *writer) need(n *yard.Need) {
	p := w.Printer
	w.Text("material", n.Material.ID)
	w.Text("name", n.Material.Name)
	w.Optional("grade", n.Material.Grade)
	w.Range("", n.Buy)
	w.Text("shown", p.TradeVolume(n.Buy.Plan))
	if !n.Buy.Certain() {
		w.Text("range_shown", p.VolumeRange(n.Buy.Low, n.Buy.High))
	}
	w.Number("cu_ft", float64(n.Buy.Plan)/float64(units.CubicFoot), 6)
	w.Number("cu_yd", float64(n.Buy.Plan)/float64(units.CubicYard), 6)
	w.Litres("takes_litres", n.Takes.Plan)
	if n.OnHand > 0 {
		w.Litres("on_hand_litres", n.OnHand)
		w.Text("on_hand_shown", p.Volume(n.OnHand))
	}
	w.Mass(n.Mass())
	packs := n.Packs(p.Measure)
	w.Rows("packs", len(packs), func(i int) { w.pack(&packs[i]) })
}

// pack writes a common pack of a need, under a key that says what it is.
func (w *writer) pack(k *yard.Pack) {
	key := "pack"
	switch {
	case k.Bulk:
		key = "bulk"
	case k.Bale:
		key = "bale"
	}
	w.Figure(key, k.Size.Text)
	w.Int("count", k.Count)
	w.countRange(k.FewMany)
	w.left(k.Left)
}

// countRange writes the fewest and the most, where they differ.
func (w *writer) countRange(fewMany [2]int64) {
	if fewMany[0] != fewMany[1] {
		w.Pair("count_range", fewMany)
	}
}

// left writes what is left over.
func (w *writer) left(v units.Volume) {
	w.Litres("left_litres", v)
	w.Text("left_shown", w.Printer.Volume(v))
}

// line writes one line of the order, or an offer that is not taken. What is left over
// belongs to a material, so only the last of its lines has it.
func (w *writer) line(l *yard.Line) {
	w.Text("material", l.Material.ID)
	w.offer(l.Offer)
	w.Int("offer", int64(l.Index()))
	w.Int("count", l.Count)
	w.countRange(l.FewMany)
	w.Litres("litres", l.Volume)
	if l.Priced {
		w.Figure("cost", l.Cost.String())
	}
	if l.Delivered > 0 {
		w.Int("delivered", l.Delivered)
	}
	if !l.InStock() {
		w.Int("stock", *l.Offer.Stock)
	}
	if l.Last {
		w.left(l.Left)
	}
	w.Mass(l.Mass)
}

// offer writes what an offer is sold in, as it was typed.
func (w *writer) offer(o *yard.Offer) {
	if o.Bulk.Volume > 0 {
		w.Figure("bulk", o.Bulk.String())
	} else {
		w.Figure("pack", o.Pack.String())
	}
}

// trip writes a drive or a delivered load. The packed volume is smaller than the loose
// one where bales are carried unopened.
func (w *writer) trip(t *yard.Trip) {
	w.Rows("packs", len(t.Packs), func(i int) {
		w.Text("material", t.Packs[i].Material.ID)
		w.offer(t.Packs[i].Offer)
		w.Int("count", t.Packs[i].Count)
	})
	if t.Times > 1 {
		w.Int("times", t.Times)
	}
	w.Mass(t.Mass)
	w.Litres("litres", t.Volume)
	w.Litres("packed_litres", t.Packed)
	w.Text("packed_shown", w.Printer.TradeVolume(t.Packed))
	w.Optional("limit", t.Limit)
}

// cost writes what there is to pay: for the goods, for everything else, and in all.
// Amounts of nothing are left out, but for the goods and the total. Without prices
// there is no cost; with some missing, "unpriced" says what the cost leaves out.
func (w *writer) cost() {
	p, b := w.p, &w.p.Bill
	if p.Priced() {
		w.Optional("currency", strings.TrimSpace(p.Currency))
		w.Figure("cost", b.Goods.String())
		for _, part := range []struct {
			key string
			m   units.Money
		}{{"tax", b.Tax}, {"driving", b.Driving}, {"delivery", b.Fees}, {"deposit", b.Deposit}} {
			if part.m > 0 {
				w.Figure(part.key, part.m.String())
			}
		}
		w.Figure("total", b.Total.String())
	}
	if list := p.Bought.Lines; len(list) > 0 {
		w.Rows("bought", len(list), func(i int) { w.line(&list[i]) })
	}
	w.paid(p)
	if p.Unproven {
		w.Figure("none_below", p.Bound.String())
	}
	if without := p.Load.Unpriced; len(without) > 0 {
		w.List("unpriced", len(without), func(i int) { w.JSON.String(without[i]) })
	}
}

// leftOut writes the materials to buy that the order does not have, with what can be
// used in their place. A job without offers has no order to leave anything out of.
func (w *writer) leftOut() {
	out := w.p.LeftOut()
	if len(out) == 0 || !w.p.Offered() {
		return
	}
	w.Rows("left_out", len(out), func(i int) {
		m := out[i].Material
		w.Text("material", m.ID)
		w.Text("name", m.Name)
		w.Litres("litres", out[i].Volume)
		w.Text("shown", w.Printer.Volume(out[i].Volume))
		in := w.p.StandIns(m.ID)
		w.List("stand_ins", len(in), func(k int) { w.JSON.String(in[k]) })
	})
}

// load writes the whole order as it has to be carried. The drives are counted with the
// materials at their heaviest; "drives_dry" counts them at their lightest.
func (w *writer) load() {
	l := &w.p.Load
	if len(w.p.Lines) == 0 {
		return
	}
	w.Open("load")
	w.Litres("litres", l.Volume)
	w.Litres("packed_litres", l.Packed)
	w.Text("shown", w.Printer.TradeVolume(l.Packed))
	w.Mass(l.Mass)
	if l.Drives > 0 {
		w.Int("drives", l.Drives)
		w.Int("drives_dry", l.Dry)
		w.Text("drives_shown", l.DrivesText(w.Printer))
	}
	if l.Loads > 0 {
		w.Int("deliveries", l.Loads)
	}
	w.Close()
}

// task writes one task. What only its kind has is written by the result itself, so that
// this package need not know the kinds.
func (w *writer) task(t *mix.TaskPlan) {
	w.Text("kind", t.Kind)
	w.Text("title", t.Title)
	w.Optional("filling", t.Filling)
	w.Range("net_", t.Net)
	w.Text("net_shown", w.Printer.Range(t.Net))
	w.Range("loose_", t.Loose)
	w.Text("loose_shown", w.Printer.Range(t.Loose))
	if len(t.Allowances) > 0 {
		w.Rows("allowances", len(t.Allowances), func(i int) { w.allowance(t, &t.Allowances[i]) })
	}
	if len(t.Parts) > 0 {
		w.Rows("parts", len(t.Parts), func(i int) {
			w.Text("material", t.Parts[i].Material.ID)
			w.Range("", t.Parts[i].Volume)
			w.Text("shown", w.p.TaskText(t, t.Parts[i].Volume))
		})
	}
	t.Result.JSON(&w.Writer)
	w.Rows("facts", len(t.Facts), func(i int) {
		w.Text("code", t.Facts[i].Code)
		w.Text("label", t.Facts[i].Label)
		w.Text("figure", t.Facts[i].Figure)
	})
}

// allowance writes one step from net to loose. The code is for programs: the name is in
// the reader's language.
func (w *writer) allowance(t *mix.TaskPlan, a *task.Allowance) {
	w.Text("code", a.Code)
	w.Text("name", w.Printer.Text(a.Name))
	w.Figure("share", a.Share.String())
	if low, high, uncertain := a.Range(); uncertain {
		w.Figure("low", low.String())
		w.Figure("high", high.String())
	}
	w.Litres("adds_litres", a.Adds)
	w.Text("adds_shown", w.p.TaskText(t, units.Exactly(a.Adds)))
	w.Text("source", a.Source.In(w.Printer.Language))
}

// note writes a note; one about the whole job has no "task".
func (w *writer) note(n *task.Note) {
	if n.Task >= 0 {
		w.Int("task", int64(n.Task))
	}
	w.Optional("path", n.Path)
	w.Text("code", n.Code)
	w.Text("text", n.Text)
}

func (w *writer) caution(c *task.Caution) {
	w.Text("code", c.Code)
	w.Text("text", w.Printer.Text(c.Text))
	w.Optional("source", w.Printer.Text(c.Source))
}

// step writes a step of the working; one over all tasks has no "task".
func (w *writer) step(s *task.Step) {
	w.JSON.BeginObject()
	if s.Task >= 0 {
		w.Int("task", int64(s.Task))
	}
	w.Optional("material", s.Material)
	w.Text("step", s.Step)
	w.Text("figure", s.Figure)
	w.Text("source", s.Source)
	w.JSON.EndObject()
}
