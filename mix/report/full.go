package report

import (
	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// full writes what [Full] adds to a plan.
func (w *writer) full() {
	crossings := w.p.Crossings()
	w.Rows("bags_or_bulk", len(crossings), func(i int) { w.crossing(&crossings[i]) })
	options := w.p.Options(mix.MaxOptions)
	w.Rows("choices", len(options), func(i int) { w.option(&options[i]) })
	if others := w.p.Alternatives(); len(others) > 0 {
		w.Rows("alternatives", len(others), func(i int) { w.alternative(&others[i]) })
	}
	if s := w.p.Sure(); s != nil {
		w.Open("sure")
		w.sure(s)
		w.Close()
	}
}

// crossing writes what a material costs in bags and in bulk. Without
// "bulk_from_litres" bulk does not cost less at the end of what was looked at.
func (w *writer) crossing(k *yard.Crossing) {
	w.Text("material", k.Material.ID)
	w.Text("text", k.Sentence(w.Printer))
	w.Litres("need_litres", k.Need)
	w.alone("bags", k.Bags)
	w.alone("bulk", k.Bulk)
	w.Text("cheaper", k.Cheaper.String())
	if k.Always || k.From > 0 {
		w.Litres("bulk_from_litres", k.From)
	}
	w.Litres("looked_to_litres", k.Top)
	w.Rows("stretches", len(k.Stretches), func(i int) {
		w.Litres("over_litres", k.Stretches[i].Over)
		w.Litres("up_to_litres", k.Stretches[i].UpTo)
		w.Text("cheaper", k.Stretches[i].Cheaper.String())
	})
	w.Rows("points", len(k.Points), func(i int) {
		at := k.Points[i]
		w.Litres("litres", at.Volume)
		w.price("bags", at.Bags)
		w.price("bulk", at.Bulk)
	})
}

// alone writes what the need costs in one kind alone. A negative one means that the offers do
// not cover the need, and is left out.
func (w *writer) alone(key string, m units.Money) {
	if m >= 0 {
		w.Figure(key, m.String())
	}
}

// price writes an amount. A negative one means that the stock cannot cover the
// volume, and is left out.
func (w *writer) price(key string, m units.Money) {
	if m >= 0 {
		w.Text(key, m.String())
	}
}

// option writes an order to choose from. Without prices it has no total, and is still
// worth comparing by what is left over.
func (w *writer) option(o *yard.Option) {
	if w.p.Load.Priced {
		w.Figure("total", o.Bill.Total.String())
	}
	w.left(o.Left)
	w.Int("packs", o.Packs)
	w.Int("trips", o.Trips)
	w.lines("order", o.Lines)
}

// alternative writes what the whole order comes to with another offer. With "none_below"
// the search stopped before it could show that no such order costs less.
func (w *writer) alternative(a *yard.Alternative) {
	w.Text("material", a.Line.Material.ID)
	w.offer(a.Line.Offer)
	w.Int("offer", int64(a.Line.Index()))
	w.Int("count", a.Line.Count)
	w.Figure("total", a.Bill.Total.String())
	if a.Unproven {
		w.Figure("none_below", a.Bound.String())
	}
	w.left(a.Line.Left)
	w.Int("trips", a.Trips)
}

// lines writes an order as materials, packs and counts alone.
func (w *writer) lines(key string, lines []yard.Line) {
	w.Rows(key, len(lines), func(i int) {
		w.Text("material", lines[i].Material.ID)
		w.offer(lines[i].Offer)
		w.Int("count", lines[i].Count)
	})
}

// sure writes how likely the order is to be enough. The chance has four decimals and
// its error six, which is finer than either is known.
func (w *writer) sure(s *mix.Sureness) {
	w.Number("chance", s.Chance, 4)
	w.Number("error", s.Error, 6)
	w.Text("shown", s.Odds(w.Printer))
	w.Text("method", w.Printer.Text(mix.SureMethod))
	w.List("assumes", len(s.Assumes), func(i int) { w.JSON.String(s.Assumes[i]) })
	w.List("ranges", len(s.Ranges), func(i int) { w.JSON.String(s.Ranges[i]) })
	if len(s.Enough) > 0 {
		w.lines("enough", s.Enough)
		if w.p.Load.Priced {
			w.Figure("enough_total", s.Bill.Total.String())
		}
		w.Number("enough_chance", s.At, 4)
	}
	w.Rows("matters", len(s.Matters), func(i int) {
		w.Text("name", s.Matters[i].Name)
		w.Litres("moves_litres", s.Matters[i].Moves)
		w.Text("moves_shown", w.Printer.Volume(s.Matters[i].Moves))
		w.Text("measure", s.Matters[i].Measure)
	})
}
