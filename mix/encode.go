package mix

import (
	"strconv"
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// JSON writes the plan as the one document that every face reads: the same
// bytes from the library, the command line and a browser. Volumes are litres,
// exact; masses are kilograms to a tenth; lengths millimetres; areas square
// metres. The text beside a figure is in the job's measure.
func (p *Plan) JSON() []byte { return p.json(false) }

// FullJSON writes what [Plan.JSON] does and, beside it, what takes some
// milliseconds to work out: how sure the order is, bags or bulk, and other
// choices.
func (p *Plan) FullJSON() []byte { return p.json(true) }

func (p *Plan) json(full bool) []byte {
	e := encoder{p: p, m: p.Printer()}
	w := &e.w
	w.BeginObject()
	e.int("schema", schema)
	e.optional("name", p.Name)
	e.text("measure", p.Measure.String())
	e.list("needs", len(p.Needs), func(i int) { e.need(&p.Needs[i]) })
	e.list("order", len(p.Order), func(i int) { e.line(&p.Order[i]) })
	if len(p.Others) > 0 {
		e.list("others", len(p.Others), func(i int) { e.line(&p.Others[i]) })
	}
	e.list("trips", len(p.Trips), func(i int) { e.trip(&p.Trips[i]) })
	if len(p.Drops) > 0 {
		e.list("deliveries", len(p.Drops), func(i int) { e.trip(&p.Drops[i]) })
	}
	e.list("batches", 0, nil) // not worked out yet
	if p.Priced {
		e.optional("currency", strings.TrimSpace(p.Currency))
		e.figure("cost", p.Bill.Goods.String())
		e.bill()
	}
	if p.Unproven {
		e.figure("none_below", p.Bound.String())
	}
	if len(p.Unpriced) > 0 {
		e.list("unpriced", len(p.Unpriced), func(i int) { w.String(p.Unpriced[i]) })
	}
	e.leftOut()
	e.load()
	if full {
		e.full()
	}
	e.list("tasks", len(p.Tasks), func(i int) { e.task(&p.Tasks[i], &p.work.tasks[i]) })
	e.list("notes", len(p.Notes), func(i int) {
		n := p.Notes[i]
		w.BeginObject()
		if n.Task >= 0 {
			e.int("task", int64(n.Task))
		}
		e.optional("path", n.Path)
		e.text("code", n.Code)
		e.text("text", n.Text)
		w.EndObject()
	})
	e.list("cautions", len(p.Cautions), func(i int) {
		w.BeginObject()
		e.text("code", p.Cautions[i].Code)
		e.text("text", e.m.Text(p.Cautions[i].Text))
		e.optional("source", e.m.Text(p.Cautions[i].Source))
		w.EndObject()
	})
	w.Key("working")
	w.BeginArray()
	for s := range p.Working() {
		e.step(s)
	}
	w.EndArray()
	w.EndObject()
	return w.Bytes()
}

// encoder writes a plan.
type encoder struct {
	w   json.Writer
	p   *Plan
	m   lang.Printer
	buf []byte
}

func (e *encoder) text(key, s string) { e.w.Key(key); e.w.String(s) }

// figure writes a figure that is data, and beside it how the reader writes it,
// where that differs: "pack": "2 cu ft", "pack_shown": "2 pies³".
func (e *encoder) figure(key, s string) {
	e.text(key, s)
	if shown := e.m.Figure(s); shown != s {
		e.text(key+"_shown", shown)
	}
}

func (e *encoder) optional(key, s string) {
	if s != "" {
		e.text(key, s)
	}
}

func (e *encoder) int(key string, n int64) { e.w.Key(key); e.w.Int(n) }

func (e *encoder) list(key string, n int, one func(i int)) {
	e.w.Key(key)
	e.w.BeginArray()
	for i := range n {
		one(i)
	}
	e.w.EndArray()
}

func (e *encoder) litres(key string, v units.Volume) { e.w.Key(key); e.litre(v) }

func (e *encoder) litre(v units.Volume) {
	e.buf = v.AppendLitres(e.buf[:0])
	e.w.Raw(string(e.buf))
}

// span writes the planned volume, and the range where there is one.
func (e *encoder) span(name string, s Span) {
	e.litres(name+"litres", s.Plan)
	if !s.Certain() {
		e.w.Key(name + "range_litres")
		e.w.BeginArray()
		e.litre(s.Low)
		e.litre(s.High)
		e.w.EndArray()
	}
}

// number writes f with at most places digits after the point.
func (e *encoder) number(key string, f float64, places int) {
	e.w.Key(key)
	e.raw(f, places)
}

func (e *encoder) raw(f float64, places int) {
	b := strconv.AppendFloat(e.buf[:0], f, 'f', places, 64)
	if places > 0 {
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
		if b[len(b)-1] == '.' {
			b = b[:len(b)-1]
		}
	}
	e.buf = b
	e.w.Raw(string(b))
}

// mass writes a range of mass in kilograms where it is known.
func (e *encoder) mass(mass [2]units.Mass) {
	if mass[1] == 0 {
		return
	}
	e.w.Key("mass_kg")
	e.w.BeginArray()
	for _, m := range mass {
		e.raw(float64(m)/float64(units.Kilogram), 1)
	}
	e.w.EndArray()
	e.text("mass_shown", e.m.MassRange(mass[0], mass[1]))
}

func (e *encoder) need(n *Need) {
	w := &e.w
	w.BeginObject()
	e.text("material", n.Material.ID)
	e.text("name", n.Material.Name)
	e.optional("grade", n.Material.Grade)
	e.span("", n.Buy)
	e.text("shown", Shown(e.m, n.Buy.Plan))
	if !n.Buy.Certain() {
		e.text("range_shown", e.m.VolumeRange(n.Buy.Low, n.Buy.High))
	}
	e.number("cu_ft", float64(n.Buy.Plan)/float64(units.CubicFoot), 6)
	e.number("cu_yd", float64(n.Buy.Plan)/float64(units.CubicYard), 6)
	e.litres("takes_litres", n.Takes.Plan)
	if n.OnHand > 0 {
		e.litres("on_hand_litres", n.OnHand)
		e.text("on_hand_shown", e.m.Volume(n.OnHand))
	}
	e.mass(n.Mass())
	choices := n.Choices(e.m.Measure)
	e.list("packs", len(choices), func(i int) { e.choice(&choices[i]) })
	w.EndObject()
}

func (e *encoder) choice(c *Choice) {
	e.w.BeginObject()
	switch {
	case c.Bulk:
		e.figure("bulk", c.Size.Text)
	case c.Bale:
		e.figure("bale", c.Size.Text)
	default:
		e.figure("pack", c.Size.Text)
	}
	e.int("count", c.Count)
	if c.FewMany[0] != c.FewMany[1] {
		e.counts(c.FewMany)
	}
	e.litres("left_litres", c.Left)
	e.text("left_shown", e.m.Volume(c.Left))
	e.w.EndObject()
}

func (e *encoder) counts(c [2]int64) {
	e.w.Key("count_range")
	e.pair(c)
}

func (e *encoder) pair(c [2]int64) {
	e.w.BeginArray()
	e.w.Int(c[0])
	e.w.Int(c[1])
	e.w.EndArray()
}

func (e *encoder) line(l *Line) {
	w := &e.w
	w.BeginObject()
	e.text("material", l.Material.ID)
	e.pack(l.Offer)
	e.int("offer", int64(l.index))
	e.int("count", l.Count)
	if l.FewMany[0] != l.FewMany[1] {
		e.counts(l.FewMany)
	}
	e.litres("litres", l.Volume)
	if l.Priced {
		e.figure("cost", l.Cost.String())
	}
	if l.Delivered > 0 {
		e.int("delivered", l.Delivered)
	}
	if l.Last {
		e.litres("left_litres", l.Left)
		e.text("left_shown", e.m.Volume(l.Left))
	}
	e.mass(l.Mass)
	w.EndObject()
}

// bill writes what there is to pay besides the goods, and the total.
func (e *encoder) bill() {
	b := &e.p.Bill
	for _, part := range []struct {
		key string
		m   units.Money
	}{{"tax", b.Tax}, {"driving", b.Driving}, {"delivery", b.Fees}, {"deposit", b.Deposit}} {
		if part.m > 0 {
			e.figure(part.key, part.m.String())
		}
	}
	e.figure("total", b.Total.String())
}

func (e *encoder) trip(t *Trip) {
	w := &e.w
	w.BeginObject()
	e.list("packs", len(t.Packs), func(i int) {
		w.BeginObject()
		e.text("material", t.Packs[i].Material.ID)
		e.pack(t.Packs[i].Offer)
		e.int("count", t.Packs[i].Count)
		w.EndObject()
	})
	if t.Times > 1 {
		e.int("times", t.Times)
	}
	e.mass(t.Mass)
	e.litres("litres", t.Volume)
	e.litres("packed_litres", t.Packed)
	e.text("packed_shown", Shown(e.m, t.Packed))
	e.optional("limit", t.Limit)
	w.EndObject()
}

// pack writes what an offer is sold in, as typed.
func (e *encoder) pack(o *Offer) {
	if o.Bulk.Volume > 0 {
		e.figure("bulk", o.Bulk.String())
	} else {
		e.figure("pack", o.Pack.String())
	}
}

// leftOut writes the materials to buy that the order does not have, and what
// can stand in.
func (e *encoder) leftOut() {
	out := e.p.LeftOut()
	if len(out) == 0 || len(e.p.work.job.Offers) == 0 {
		return
	}
	e.list("left_out", len(out), func(i int) {
		e.w.BeginObject()
		e.text("material", out[i].ID)
		e.text("name", out[i].Name)
		in := e.p.StandIns(out[i].ID)
		e.list("stand_ins", len(in), func(k int) { e.w.String(e.p.Sentence(&in[k])) })
		e.w.EndObject()
	})
}

func (e *encoder) load() {
	l := &e.p.Load
	if len(e.p.Order) == 0 {
		return
	}
	e.w.Key("load")
	e.w.BeginObject()
	e.litres("litres", l.Volume)
	e.litres("packed_litres", l.Packed)
	e.text("shown", Shown(e.m, l.Packed))
	e.mass(l.Mass)
	if l.Drives > 0 {
		e.int("drives", l.Drives)
		e.int("drives_dry", l.Dry)
		e.text("drives_shown", l.DrivesText(e.m))
	}
	if l.Loads > 0 {
		e.int("deliveries", l.Loads)
	}
	e.w.EndObject()
}

func (e *encoder) task(t *TaskPlan, k *worked) {
	w := &e.w
	w.BeginObject()
	e.text("kind", t.Kind)
	e.text("title", t.Title)
	e.optional("filling", t.Filling)
	e.span("net_", t.Net)
	e.text("net_shown", spanText(e.m, t.Net))
	e.span("loose_", t.Loose)
	e.text("loose_shown", spanText(e.m, t.Loose))
	if len(t.Allowances) > 0 {
		e.list("allowances", len(t.Allowances), func(i int) { e.allowance(t, &t.Allowances[i]) })
	}
	if len(t.Parts) > 0 {
		e.list("parts", len(t.Parts), func(i int) {
			w.BeginObject()
			e.text("material", t.Parts[i].Material.ID)
			e.span("", t.Parts[i].Volume)
			e.text("shown", e.p.TaskText(t, t.Parts[i].Volume))
			w.EndObject()
		})
	}
	e.extra(k)
	e.list("facts", len(t.Facts), func(i int) {
		w.BeginObject()
		e.text("code", t.Facts[i].Code)
		e.text("label", t.Facts[i].Label)
		e.text("figure", t.Facts[i].Figure)
		w.EndObject()
	})
	w.EndObject()
}

func (e *encoder) allowance(t *TaskPlan, a *Allowance) {
	e.w.BeginObject()
	e.text("name", e.m.Text(a.Name))
	e.figure("share", a.Share.String())
	e.litres("adds_litres", a.Adds)
	e.text("adds_shown", e.p.TaskText(t, Exactly(a.Adds)))
	e.text("source", a.Source.In(e.m.Language))
	e.w.EndObject()
}

// extra writes what only one kind of task has.
func (e *encoder) extra(k *worked) {
	switch {
	case k.task.Amend != nil:
		b := k.bed
		e.w.Key("bed")
		e.w.BeginObject()
		e.number("area_m2", float64(b.area)/float64(units.SquareMetre), 6)
		e.millimetres("layer_mm", b.layer)
		e.millimetres("native_mm", b.native)
		e.millimetres("finished_mm", max(b.finished, b.layer))
		e.number("share", b.share.Float(), 6)
		e.millimetres("rise_mm", k.rise())
		e.w.EndObject()
	case k.task.Backfill != nil:
		h := k.holes
		e.w.Key("backfill")
		e.w.BeginObject()
		e.litres("dug_litres", h.dug)
		e.span("put_back_", h.putBack)
		e.span("left_over_loose_", h.left)
		e.w.EndObject()
	case k.task.Cover != nil:
		c := k.cover
		e.w.Key("cover")
		e.w.BeginObject()
		e.number("area_m2", float64(c.area)/float64(units.SquareMetre), 6)
		e.number("bare_m2", float64(c.bare)/float64(units.SquareMetre), 6)
		e.millimetres("layer_mm", k.task.Cover.Layer)
		if c.sheets > 0 {
			e.int("sheets", c.sheets)
		}
		e.w.EndObject()
	}
}

func (e *encoder) millimetres(key string, l units.Length) {
	e.number(key, float64(l)/float64(units.Millimetre), 6)
}

func (e *encoder) step(s Step) {
	e.w.BeginObject()
	if s.Task >= 0 {
		e.int("task", int64(s.Task))
	}
	e.optional("material", s.Material)
	e.text("step", s.Step)
	e.text("figure", s.Figure)
	e.text("source", s.Source)
	e.w.EndObject()
}

// full writes what [Plan.FullJSON] adds.
func (e *encoder) full() {
	p, w := e.p, &e.w
	crossings := p.Crossings()
	e.list("bags_or_bulk", len(crossings), func(i int) {
		k := &crossings[i]
		w.BeginObject()
		e.text("material", k.Material.ID)
		e.text("text", k.Sentence(e.m))
		if k.From > 0 {
			e.litres("bulk_from_litres", k.From)
		}
		e.list("points", len(k.Points), func(i int) {
			at := k.Points[i]
			w.BeginObject()
			e.litres("litres", at.Volume)
			e.price("bags", at.Bags)
			e.price("bulk", at.Bulk)
			w.EndObject()
		})
		w.EndObject()
	})
	options := p.Options(Choices)
	e.list("choices", len(options), func(i int) {
		o := &options[i]
		w.BeginObject()
		if p.Priced {
			e.figure("total", o.Bill.Total.String())
		}
		e.litres("left_litres", o.Left)
		e.text("left_shown", e.m.Volume(o.Left))
		e.int("packs", o.Packs)
		e.int("trips", o.Trips)
		e.lines("order", o.Lines)
		w.EndObject()
	})
	s := p.Sure()
	if s == nil {
		return
	}
	w.Key("sure")
	w.BeginObject()
	e.number("chance", s.Chance, 4)
	e.number("error", s.Error, 6)
	e.text("shown", s.Odds(e.m))
	e.text("method", e.m.Text(SureMethod))
	e.list("ranges", len(s.Ranges), func(i int) { w.String(s.Ranges[i]) })
	if len(s.Enough) > 0 {
		e.lines("enough", s.Enough)
		if p.Priced {
			e.figure("enough_total", s.Bill.Total.String())
		}
		e.number("enough_chance", s.At, 4)
	}
	e.list("matters", len(s.Matters), func(i int) {
		w.BeginObject()
		e.text("name", s.Matters[i].Name)
		e.litres("moves_litres", s.Matters[i].Moves)
		e.text("moves_shown", e.m.Volume(s.Matters[i].Moves))
		e.text("measure", s.Matters[i].Measure)
		w.EndObject()
	})
	w.EndObject()
}

// price writes an amount, or nothing where there is none.
func (e *encoder) price(key string, m units.Money) {
	if m >= 0 {
		e.text(key, m.String())
	}
}

// lines writes an order in short.
func (e *encoder) lines(key string, lines []Line) {
	e.list(key, len(lines), func(i int) {
		e.w.BeginObject()
		e.text("material", lines[i].Material.ID)
		e.pack(lines[i].Offer)
		e.int("count", lines[i].Count)
		e.w.EndObject()
	})
}

// ChangesJSON writes what became of the order between two plans of a job, offer
// by offer, and what there is to pay before and after; before may be nil.
func ChangesJSON(before, after *Plan) []byte {
	e := encoder{p: after, m: after.Printer()}
	w := &e.w
	w.BeginObject()
	changes := Changes(before, after)
	e.list("changes", len(changes), func(i int) {
		c := &changes[i]
		w.BeginObject()
		e.text("material", c.Material.ID)
		e.text("name", c.Material.Name)
		if c.Bulk {
			e.figure("bulk", c.Pack)
		} else {
			e.figure("pack", c.Pack)
		}
		e.int("before", c.Before)
		e.int("after", c.After)
		e.text("is", c.Kind())
		w.EndObject()
	})
	for _, side := range [...]struct {
		key string
		p   *Plan
	}{{"before", before}, {"after", after}} {
		if side.p == nil {
			continue
		}
		w.Key(side.key)
		w.BeginObject()
		if side.p.Priced {
			e.figure("goods", side.p.Bill.Goods.String())
			e.figure("total", side.p.Bill.Total.String())
		}
		e.optional("drives_shown", side.p.Load.DrivesText(e.m))
		w.EndObject()
	}
	w.EndObject()
	return w.Bytes()
}

// ReachJSON writes how far a stock goes, in the units of [Plan.JSON].
func ReachJSON(r *Reach) []byte {
	e := encoder{m: r.Printer}
	w := &e.w
	w.BeginObject()
	e.int("schema", schema)
	e.text("filling", r.Filling)
	e.litres("loose_litres", r.Loose)
	e.litres("net_litres", r.Net)
	e.text("limit", r.Limit.ID)
	e.list("left", len(r.Left), func(i int) {
		w.BeginObject()
		e.text("material", r.Left[i].Material.ID)
		e.litres("litres", r.Left[i].Volume.Plan)
		w.EndObject()
	})
	e.list("containers", len(r.Pots), func(i int) {
		p := &r.Pots[i]
		w.BeginObject()
		e.text("label", p.Label)
		e.int("count", p.Count)
		if p.Range[0] != p.Range[1] {
			e.counts(p.Range)
		}
		w.EndObject()
	})
	if r.Area > 0 {
		e.number("area_m2", float64(r.Area)/float64(units.SquareMetre), 6)
		e.millimetres("depth_mm", r.Depth)
	}
	e.list("one_more", len(r.OneMore), func(i int) {
		o := &r.OneMore[i]
		w.BeginObject()
		e.text("material", o.Material.ID)
		e.figure("pack", o.Pack.String())
		e.litres("adds_litres", o.Adds)
		w.EndObject()
	})
	w.EndObject()
	return w.Bytes()
}

// ProblemsJSON writes the problems that err carries as the document that every
// face reads: {"problems": [{"path", "code", "value", "hint"}]}, the hints in the
// reader's language; nil is English.
func ProblemsJSON(err error, t *lang.Language) []byte {
	var e encoder
	problems := Problems(err)
	e.w.BeginObject()
	e.list("problems", len(problems), func(i int) {
		p := problems[i]
		e.w.BeginObject()
		e.text("path", p.Path)
		e.text("code", p.Code)
		e.text("value", p.Value)
		e.text("hint", p.Hint.In(t))
		e.w.EndObject()
	})
	e.w.EndObject()
	return e.w.Bytes()
}

// Handle works out a job document: bytes in, bytes out, for faces on the far
// side of an edge. The reply is the plan's JSON or the problems'. It panics
// only on a bug of the program.
func Handle(job []byte) []byte {
	p, err := PlanDocument(job)
	if err != nil {
		return ProblemsJSON(err, nil)
	}
	return p.JSON()
}
