package report

import (
	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Changes writes how the order differs between two plans of a job, offer by offer, and
// what there is to pay and to drive before and after. before may be nil. The document
// has the shape "Changes".
func Changes(before, after *mix.Plan) []byte {
	w := &writer{Writer: lang.Writer{Printer: after.Printer()}, p: after}
	w.JSON.BeginObject()
	changes := after.ChangesFrom(before)
	w.Rows("changes", len(changes), func(i int) {
		c := &changes[i]
		w.Text("material", c.Material.ID)
		w.Text("name", c.Material.Name)
		if c.Bulk {
			w.Figure("bulk", c.Pack)
		} else {
			w.Figure("pack", c.Pack)
		}
		w.Int("before", c.Before)
		w.Int("after", c.After)
		w.Text("is", c.Kind())
		if c.Bought != 0 {
			w.Int("bought", c.Bought)
		}
		w.Optional("why", c.Why())
		if c.Priced {
			w.amount("price_before", c.Prices[0])
			w.amount("price_after", c.Prices[1])
		}
	})
	if before != nil {
		w.side("before", before)
	}
	w.side("after", after)
	w.JSON.EndObject()
	return w.JSON.Bytes()
}

// side writes what there is to pay and to drive in one of two plans.
func (w *writer) side(key string, p *mix.Plan) {
	w.Open(key)
	if p.Priced() {
		w.Figure("goods", p.Bill.Goods.String())
		w.Figure("total", p.Bill.Total.String())
		if p.Bill.Driving > 0 || p.Bought.Priced {
			w.Figure("driving", p.Bill.Driving.String())
		}
	}
	w.paid(p)
	w.Optional("drives_shown", p.Load.DrivesText(w.Printer))
	w.Close()
}

// paid writes what was paid already, and that with what is still to pay.
func (w *writer) paid(p *mix.Plan) {
	if p.Bought.Priced {
		w.Figure("paid", p.Bought.Bill.Total.String())
		w.Figure("in_all", p.InAll().String())
	}
}

// amount writes an amount that is known.
func (w *writer) amount(key string, m *units.Money) {
	if m != nil {
		w.Figure(key, m.String())
	}
}

// idOf is a material's id, "" of none.
func idOf(m *catalog.Material) string {
	if m == nil {
		return ""
	}
	return m.ID
}

// Reach writes how far a stock goes in one task. The document has the shape "Reach".
func Reach(r *mix.Reach) []byte {
	w := &lang.Writer{Printer: r.Printer}
	w.JSON.BeginObject()
	w.Int("schema", schema)
	w.Text("filling", r.Filling)
	w.Litres("loose_litres", r.Loose)
	w.Litres("net_litres", r.Net)
	w.Text("limit", idOf(r.Limit))
	w.Rows("left", len(r.Left), func(i int) {
		w.Text("material", r.Left[i].Material.ID)
		w.Litres("litres", r.Left[i].Volume.Plan)
	})
	if len(r.Unused) > 0 {
		w.Rows("unused", len(r.Unused), func(i int) {
			w.Text("material", r.Unused[i].Material.ID)
			w.Litres("litres", r.Unused[i].Volume.Plan)
		})
	}
	w.Rows("containers", len(r.Pots), func(i int) {
		p := &r.Pots[i]
		w.Text("label", p.Label)
		w.Int("count", p.Count)
		if p.Range[0] != p.Range[1] {
			w.Pair("count_range", p.Range)
		}
	})
	if r.Area > 0 {
		w.SquareMetres("area_m2", r.Area)
		w.Millimetres("depth_mm", r.Depth)
	}
	w.Rows("one_more", len(r.OneMore), func(i int) {
		o := &r.OneMore[i]
		w.Text("material", o.Material.ID)
		w.Figure("pack", o.Pack.String())
		w.Litres("adds_litres", o.Adds)
	})
	w.JSON.EndObject()
	return w.JSON.Bytes()
}

// Problems writes the problems that err is or wraps, with the hints in the language l;
// nil is English. For any other error the list is empty. The document has the shape
// "Problems", which differs from a plan in its first key, so that a program can tell
// the two apart.
func Problems(err error, l *lang.Language) []byte {
	w := &lang.Writer{}
	problems := doc.ProblemsIn(err)
	w.JSON.BeginObject()
	w.Rows("problems", len(problems), func(i int) {
		p, hint := problems[i], problems[i].Hint
		if p.Code == units.NumberComma && l.DecimalComma() {
			hint = units.CommaHint
		}
		w.Text("path", p.Path)
		w.Text("code", p.Code)
		w.Text("value", p.Value)
		w.Text("hint", hint.In(l))
	})
	w.JSON.EndObject()
	return w.JSON.Bytes()
}

// Handle works out a job document and returns the document of its plan, or that of its
// problems in English. It takes and returns bytes, for callers that cannot hold a Go
// value, such as a page or another process. It panics only for a bug in this program.
func Handle(job []byte) []byte {
	p, err := mix.PlanIn(nil, job)
	if err != nil {
		return Problems(err, nil)
	}
	return Plan(p)
}
