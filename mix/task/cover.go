package task

import (
	"math"
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Cover is the work of laying mulch over a bed. The zero value is a cover task with
// nothing filled in, which planning reports.
type Cover struct {
	doc.AsTyped

	Area  ground.Area
	Layer units.Length // as spread, loose
	Stems *Stems       // nil for none
	Sheet *Sheet       // nil for none
}

// Stems are plants whose stems are kept clear of mulch. Both fields must be more than
// zero.
type Stems struct {
	Count int64
	Clear units.Length // the radius of the ground left bare around each stem
}

// Sheet is one sheet of the cardboard or paper that is laid under the mulch.
type Sheet struct {
	Size    []units.Length // two sides
	Overlap units.Length   // how far each sheet lies over the next; 0 or more
}

var cover = &Kind{
	Name:   "cover",
	Object: &doc.Object{ID: "cover", Name: "a cover task", Tables: []doc.Fields{coverFields}},
	New:    func() Work { return &Cover{} },
	Result: &Mulch{},
}

var coverFields = doc.Fields{
	{Name: "area", Type: &ground.Type, About: `"60 ft x 4 ft", "circle 14 ft", "240 sq ft", or an object`, At: func(v any) any { return &v.(*Cover).Area }},
	{Name: "layer", Type: &doc.Length, About: "how deep it is spread", At: func(v any) any { return &v.(*Cover).Layer }},
	{Name: "stems", Type: &stemsType, About: `plants kept clear: {"count": 64, "clear": "3 in"}`, At: func(v any) any { return &v.(*Cover).Stems }},
	{Name: "sheet", Type: &sheetType, About: `cardboard or paper under it: {"size": "4 ft x 3 ft", "overlap": "6 in"}`, At: func(v any) any { return &v.(*Cover).Sheet }},
}

var (
	stemsType = doc.Type{Takes: "object", Form: "object", Of: func() *doc.Object { return stems },
		Between: []string{"at"}, Read: doc.ReadOne}
	sheetType = doc.Type{Takes: "object", Form: "object", Of: func() *doc.Object { return sheet },
		Between: []string{"overlap"}, Read: doc.ReadOne}
)

var stems = &doc.Object{ID: "stems", Name: "stems", Maybe: doc.MaybeOf[Stems], Tables: []doc.Fields{{
	{Name: "count", Type: &doc.Count, About: "how many plants", At: func(s any) any { return &s.(*Stems).Count }},
	{Name: "clear", Type: &doc.Length, About: "bare ground from the stem outwards, all round", At: func(s any) any { return &s.(*Stems).Clear }},
}}}

var sheet = &doc.Object{ID: "sheet", Name: "a sheet", Maybe: doc.MaybeOf[Sheet], Tables: []doc.Fields{{
	{Name: "size", Type: &doc.TwoLengths, About: `one sheet, "4 ft x 3 ft"`, At: func(s any) any { return &s.(*Sheet).Size }},
	{Name: "overlap", Type: &doc.Margin, About: "how far each lies over the next", At: func(s any) any { return &s.(*Sheet).Overlap }},
}}}

// Kind is the kind "cover".
func (v *Cover) Kind() *Kind {
	if v == nil {
		return nil
	}
	return cover
}

// Clone returns a copy that shares nothing with v.
func (v *Cover) Clone() Work {
	if v == nil {
		return nil
	}
	c := *v
	c.Area = v.Area.Clone()
	if v.Stems != nil {
		stems := *v.Stems
		c.Stems = &stems
	}
	if v.Sheet != nil {
		c.Sheet = &Sheet{slices.Clone(v.Sheet.Size), v.Sheet.Overlap}
	}
	return &c
}

// Mulch is the result of a cover task. Areas are rounded to the square micrometre.
type Mulch struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Ground  units.Area   // the whole bed
	Bare    units.Area   // the part left bare around the stems
	Covered units.Area   // Ground less Bare
	Layer   units.Length // as spread, loose
	Stems   int64        // how many; 0 for none
	Clear   units.Length // the radius left bare around each; 0 without stems
	Sheets  int64        // how many lie underneath; 0 for none
	Exact   bool         // Sheets counts sheets as they lie, and is not an estimate

	work   *Cover
	ground units.Fixed // Ground before rounding
	net    units.Range
	rows   bool  // Sheets are laid in rows
	pieces int64 // how many pieces of ground have rows of their own
}

func (v *Cover) result(r *doc.Reader, _ *catalog.Scope, _ *In) Result {
	m := &Mulch{work: v, Layer: v.Layer}
	r.Enter("area")
	m.ground = v.Area.FixedIn(r)
	m.Ground = units.Area(m.ground.Round())
	r.Leave()
	if v.Layer <= 0 {
		r.ProblemAt("layer", doc.FieldMissing, `how deep? such as "3 in"`)
	}
	v.Stems.check(r)
	v.Sheet.check(r)
	m.clear(r)
	if !r.Sound() {
		return m
	}
	if v.Sheet != nil {
		v.Sheet.cover(r, m)
	}
	vol, ok := m.ground.Minus(units.FixedOf(m.Bare)).Deep(v.FixedLength("layer", v.Layer))
	if !ok {
		r.Problem(doc.VolumeLarge, tooMuch())
	}
	m.net = units.Known(vol)
	return m
}

// clear takes the circles around the stems away from the ground. It adds up whole
// circles and ignores where they overlap or cross the edge: the plan does not know
// where the plants are.
func (m *Mulch) clear(r *doc.Reader) {
	m.Covered = m.Ground
	s := m.work.Stems
	if s == nil {
		return
	}
	m.Stems, m.Clear = s.Count, s.Clear
	if m.Ground == 0 || s.Count <= 0 || s.Clear <= 0 {
		return
	}
	radius := float64(s.Clear) / 1000 // in micrometres, since areas are in square micrometres
	// The conversions round each product, so that every machine gives the same area.
	round := float64(math.Pi*float64(radius*radius)) * float64(s.Count)
	if round >= float64(m.Ground) {
		r.ProblemAt("stems", doc.StemsLarge,
			message.Of("the clear circles cover the whole bed, {#0}", units.Both.Area(m.Ground)))
		return
	}
	m.Bare = units.Area(math.Round(round))
	m.Covered -= m.Bare
}

func (s *Stems) check(r *doc.Reader) {
	if s == nil {
		return
	}
	r.Enter("stems")
	if s.Count <= 0 {
		r.ProblemAt("count", doc.FieldMissing, "how many plants?")
	}
	if s.Clear <= 0 {
		r.ProblemAt("clear", doc.FieldMissing, `how much bare ground round each stem? such as "3 in"`)
	}
	r.Leave()
}

func (s *Sheet) check(r *doc.Reader) {
	if s == nil {
		return
	}
	r.Enter("sheet")
	defer r.Leave()
	if len(s.Size) != 2 {
		r.ProblemAt("size", doc.FieldMissing, `how large is a sheet? such as "4 ft x 3 ft"`)
		return
	}
	if s.Overlap < 0 || s.Overlap >= min(s.Size[0], s.Size[1]) {
		r.ProblemAt("overlap", doc.SheetOverlap, "less than the sheet's shorter side")
	}
}

// cover counts the sheets on the ground of m. A rectangle or a strip is laid in rows,
// the better way round, and each of several pieces by itself. A strip that turns or
// has gaps is laid as if it were straight, which is an estimate, since nobody knows
// where the sheets meet its corners. Other ground is the area divided by what one
// sheet adds: sheets are cut along the edges and the pieces used elsewhere, so rows
// would count too many.
func (s *Sheet) cover(r *doc.Reader, m *Mulch) {
	a, n := &m.work.Area, int64(doc.MaxCount+1)
	l, w := s.Size[0], s.Size[1]
	length, width, straight := a.Oblong()
	if m.rows = length > 0 && len(a.Plus)+len(a.Less) == 0; m.rows {
		m.Exact, m.pieces = straight, max(a.Count, 1)
		n = min(s.rows(length, l, width, w), s.rows(length, w, width, l))
		if n <= doc.MaxCount {
			n *= m.pieces // both at most a thousand million
		}
	} else if each, _ := (l - s.Overlap).By(w - s.Overlap); each > 0 {
		n = int64((m.Ground + each - 1) / each)
	}
	if n > doc.MaxCount {
		r.ProblemAt("sheet", doc.SheetSmall, "the overlap leaves too little of a sheet")
		return
	}
	m.Sheets = n
}

// rows counts sheets laid in rows, side a along length and side b along width. Past
// [doc.MaxCount] it stops at one more, so that nothing overflows.
func (s *Sheet) rows(length, a, width, b units.Length) int64 {
	along, across := s.row(length, a), s.row(width, b)
	if along > doc.MaxCount || across > doc.MaxCount || along*across > doc.MaxCount {
		return doc.MaxCount + 1
	}
	return along * across
}

// row counts sheets of one side in a row over length: the first covers its side, each
// of the others its side less the overlap. A gap of up to a micrometre needs no
// further sheet. It comes from rounding: a third of a metre is not a whole number of
// nanometres, so three of them can fall short of the metre.
func (s *Sheet) row(length, side units.Length) int64 {
	const slack = units.Millimetre / 1000
	if length <= side+slack {
		return 1
	}
	step := side - s.Overlap
	return 1 + int64((length-side-slack+step-1)/step)
}

// Net is the covered ground times the layer, in nanolitres.
func (m *Mulch) Net() units.Range { return m.net }

// Terms yields Net as one volume: the measures of a bed are taken as exact.
func (m *Mulch) Terms(yield func(Term) bool) { yield(Term{Times: 1, Each: m.net}) }

// Reach is how deep net lies on the covered ground, rounded down to the nanometre.
func (m *Mulch) Reach(net units.Volume, _ func(units.Range) bool, _ lang.Printer) *Reached {
	return deep(net, m.Covered)
}

// Title names the ground and what covers it: "Cover 240 sq ft with bark mulch".
func (m *Mulch) Title(p lang.Printer, filling string) string {
	return p.Print("Cover {0} with {1}", p.Area(m.Ground), filling)
}

// Facts are the ground, the layer and the sheets.
func (m *Mulch) Facts(p lang.Printer) []Fact {
	f := facts{p: p}
	f.add("area", "Ground", p.Area(m.Covered))
	f.add("layer", "Layer, as spread", p.Length(m.Layer))
	if m.Bare > 0 {
		f.add("bare", "Left bare round the stems", p.Area(m.Bare))
	}
	if m.Sheets > 0 {
		label := message.Text("Sheets underneath")
		if !m.Exact {
			label = "Sheets underneath, about"
		}
		f.add("sheets", label, itoa(m.Sheets))
	}
	return f.list
}

// Steps writes the ground, the layer and the sheets.
func (m *Mulch) Steps(s *Steps) {
	p, v := s.Printer, m.work
	s.Add("the bed: {0}", p.Area(m.Ground), catalog.Arithmetic, v.Area.Words(p))
	if m.Bare > 0 {
		s.Add("less {0} circles kept bare, {1} from each stem: pi r^2", p.Area(m.Bare), catalog.Arithmetic,
			itoa(m.Stems), p.Length(m.Clear))
	}
	s.Add("{0} x {1} layer, as spread", p.Volume(m.net.Plan), catalog.Arithmetic, p.Area(m.Covered), p.Length(v.Layer))
	if v.Sheet == nil {
		return
	}
	form := message.Text("sheets {0} x {1}, overlap {2}: area / (sheet less overlap), rounded up; edges are cut to fit")
	switch {
	case m.Exact:
		form = "sheets {0} x {1}, overlap {2}: laid in rows, the better way round"
	case m.rows:
		form = "sheets {0} x {1}, overlap {2}: laid in rows as if the strip were straight and in one piece"
	}
	one := m.Sheets
	if m.rows {
		one /= m.pieces
	}
	size := v.Sheet.Size
	s.Add(form, itoa(one), catalog.Arithmetic, p.Length(size[0]), p.Length(size[1]), p.Length(v.Sheet.Overlap))
	if one < m.Sheets {
		s.Add("{0} pieces of ground, each with sheets of its own", itoa(m.Sheets), catalog.Arithmetic, itoa(m.pieces))
	}
}

// Notes counts the layer in for the note on settling. A task that gives its own
// settling has planned for it already, even with 0%.
func (m *Mulch) Notes(n *Notes) {
	if n.current.Task.Settle == nil {
		n.settling()
	}
}

// mulchLimit is the deepest mulch without a caution: the upper of the two figures that
// extension services give.
const mulchLimit = 4 * units.Inch

// Cautions are about the depth of the mulch and about mulch against stems.
func (m *Mulch) Cautions(*catalog.Scope) (list []Caution) {
	if m.Layer > mulchLimit {
		list = append(list, Caution{Code: "mulch-deep", Place: 60,
			Text: "More than 3 to 4 in of mulch harms roots.", Source: "several extension services"})
	}
	if m.work.Stems == nil || m.Clear < units.Inch {
		list = append(list, Caution{Code: "mulch-stems", Place: 70,
			Text:   "Keep mulch 1 to 4 in clear of stems, 12 to 18 in of trunks and 1 ft of walls: give the stems to leave them bare.",
			Source: "UF/IFAS Polk, Alachua and Miami-Dade, which differ"})
	}
	return list
}

// JSON writes the covered and the bare ground in square metres, the layer in
// millimetres, and the sheets where there are any.
func (m *Mulch) JSON(w *lang.Writer) {
	w.Open("cover")
	w.SquareMetres("area_m2", m.Covered)
	w.SquareMetres("bare_m2", m.Bare)
	w.Millimetres("layer_mm", m.Layer)
	if m.Sheets > 0 {
		w.Int("sheets", m.Sheets)
		w.Bool("sheets_about", !m.Exact)
	}
	w.Close()
}

// Shape describes what JSON writes, for the plan's schema.
func (m *Mulch) Shape() *json.Member {
	shape := json.AnObject("Cover", "What only a cover task has.",
		json.Member{Name: "area_m2", Shape: json.ANumber, About: "the ground that is covered, the bare circles left out"},
		json.Member{Name: "bare_m2", Shape: json.ANumber, About: "the ground left bare round the stems"},
		json.Member{Name: "layer_mm", Shape: json.ANumber, About: "how deep it is spread"},
		json.Member{Name: "sheets", Shape: json.AnInt, About: "sheets underneath", Maybe: true},
		json.Member{Name: "sheets_about", Shape: json.ABool, About: "whether sheets is an estimate: it is exact on a rectangle and on a straight strip", Maybe: true})
	return &json.Member{Name: "cover", About: "what is covered", Maybe: true, Shape: shape}
}
