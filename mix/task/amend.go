package task

import (
	"cmp"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Amend is the work of digging a layer of material into a bed. Exactly one of Layer
// and Share is given, and exactly one of Into and Over: growers plan from either, and
// the other follows. The zero value is an amend task with nothing filled in, which
// planning reports.
type Amend struct {
	doc.AsTyped

	Area  ground.Area
	Layer units.Length // as spread, loose
	Share units.Ratio  // of the finished bed, by volume; the layer follows
	Into  units.Length // the finished depth, with the layer in it
	Over  units.Length // the depth of native soil loosened
	Soil  string       // "clay", "loam" or "sandy", or "" when not given
}

var amend = &Kind{
	Name:   "amend",
	Object: &doc.Object{ID: "amend", Name: "an amend task", Tables: []doc.Fields{amendFields}},
	New:    func() Work { return &Amend{} },
	Result: &Bed{},
}

// soil is the native soil that a bed or a hole is dug in.
var soil = doc.Type{Form: "choice", Words: []string{"clay", "loam", "sandy"}, Read: doc.ReadChoice}

var amendFields = doc.Fields{
	{Name: "area", Type: &ground.Type, About: `"60 ft x 4 ft", "circle 14 ft", "240 sq ft", or an object`, At: func(a any) any { return &a.(*Amend).Area }},
	{Name: "layer", Type: &doc.Length, About: "how deep it is spread; or share", At: func(a any) any { return &a.(*Amend).Layer }},
	{Name: "share", Type: &doc.SomeShare, About: "share of the finished bed by volume, which gives the layer; or layer", At: func(a any) any { return &a.(*Amend).Share }},
	{Name: "into", Type: &doc.Length, About: "the finished depth that holds the layer: 3 in of 9 in is a third; or over", At: func(a any) any { return &a.(*Amend).Into }},
	{Name: "over", Type: &doc.Length, About: "the depth of native soil loosened: 3 in over 6 in is a third; or into", At: func(a any) any { return &a.(*Amend).Over }},
	{Name: "soil", Type: &soil, About: "the bed's own soil", At: func(a any) any { return &a.(*Amend).Soil }},
}

// Kind is the kind "amend".
func (a *Amend) Kind() *Kind {
	if a == nil {
		return nil
	}
	return amend
}

// Clone returns a copy that shares nothing with a.
func (a *Amend) Clone() Work {
	if a == nil {
		return nil
	}
	c := *a
	c.Area = a.Area.Clone()
	return &c
}

// Bed is the result of an amend task. Lengths are rounded to the nanometre, the area
// to the square micrometre.
type Bed struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Area     units.Area
	Layer    units.Length // as spread, loose
	Native   units.Length // depth of soil loosened under the layer; 0 where the layer is all there is
	Finished units.Length // layer and soil together
	Rise     units.Length // how far the ground rises once the layer has settled, at most
	Share    units.Ratio  // Layer of Finished: exact, or else to the nearest millionth
	// Fresh and Settled are how far the ground rises, at least and at most: as it is
	// dug or tilled, and once it has been rolled or watered in.
	Fresh, Settled [2]units.Length

	work    *Amend
	blend   *catalog.Blend
	settle  units.Ratio
	swell   [2]units.Ratio // of the soil when it is dug, at least and at most
	ground  units.Fixed    // Area before rounding
	net     units.Range
	rounded bool // Share is not exact
}

// result takes in with its shares but before [In.loose] has filled in what they add,
// since the ground and the layer are what they add to.
func (a *Amend) result(r *doc.Reader, s *catalog.Scope, in *In) Result {
	b := &Bed{work: a, blend: in.Blend, settle: in.Settle.Share}
	b.swell[0], b.swell[1] = s.Swell(a.Soil)
	r.Enter("area")
	b.ground = a.Area.FixedIn(r)
	b.Area = units.Area(b.ground.Round())
	r.Leave()
	a.check(r)
	if !r.Sound() {
		return b
	}
	b.depths(in)
	if b.Layer == 0 {
		r.Problem(doc.LayerSmall, "the layer is too thin to measure")
		return b
	}
	v, ok := b.volume()
	if !ok {
		r.Problem(doc.VolumeLarge, tooMuch())
	}
	b.net = v
	return b
}

// check reports depths that are missing, and two that say the same thing, since it
// cannot know which of the two is meant.
func (a *Amend) check(r *doc.Reader) {
	switch {
	case !r.Clean("layer", "share"):
	case a.Layer > 0 && a.Share != (units.Ratio{}):
		r.ProblemAt("share", doc.FieldBoth, "give layer or share, not both: each follows from the other")
	case doc.Most.Less(a.Share):
		r.ProblemAt("share", doc.ShareRange, message.Of("at most {#0}", doc.Most.String()))
	case a.Layer <= 0 && a.Share == (units.Ratio{}):
		r.ProblemAt("layer", doc.FieldMissing, `how deep is it spread? such as "3 in"; or give share, such as "25%"`)
	}
	switch {
	case !r.Clean("into", "over"):
	case a.Into > 0 && a.Over > 0:
		r.ProblemAt("over", doc.FieldBoth,
			"give into (the finished depth) or over (the native soil loosened), not both")
	case a.Into <= 0 && a.Over <= 0:
		r.ProblemAt("into", doc.FieldMissing,
			`into what? the finished depth, such as "9 in"; or over, the depth of native soil loosened, such as "6 in"`)
	case r.Clean("layer") && a.Into > 0 && a.Layer > a.Into:
		r.ProblemAt("into", doc.LayerDeep,
			message.Of("the layer is deeper than the finished depth that holds it; did you mean over {0}?",
				cmp.Or(r.Typed("into"), units.Both.Length(a.Into))))
	}
}

// depths works out layer, native soil, finished depth and share from the two of them
// that are given.
func (b *Bed) depths(in *In) {
	a := b.work
	switch {
	case a.Layer > 0 && a.Into > 0:
		b.Layer, b.Native = a.Layer, a.Into-a.Layer
	case a.Layer > 0:
		b.Layer, b.Native = a.Layer, a.Over
	case a.Into > 0: // layer = share x finished
		b.Layer = part(a.Into, a.Share.Num(), a.Share.Den())
		b.Native = a.Into - b.Layer
	default: // layer = native x share / (1 - share)
		n, d := a.Share.Num(), a.Share.Den()-a.Share.Num()
		b.Layer, b.Native = part(a.Over, n, d), a.Over
	}
	b.Finished = b.Layer + b.Native
	if b.Share = a.Share; b.Share == (units.Ratio{}) {
		b.Share, b.rounded = shareOf(b.Layer, b.Finished)
	}
	n, d := catalog.Without(b.settle)
	b.Rise = part(b.Layer, d, n)
	b.rises(in.Task.Settle != nil)
}

// What becomes of a layer that is dug in, by the worked example of the City of
// Everett: up to a share filled of the loosened soil, the layer fills its pores and
// raises nothing; and rolling packs soil and layer to 1/1.2 of their depth, at most.
var (
	filled = units.Percent(15)
	rolled = [2]int64{10, 12}
	worked = catalog.Source{Text: "City of Everett (WA), Stormwater Management Manual, Table 12.1: compost fills up to 15% of the loosened soil, and rolling packs a bed to 1/1.2 of its depth; soil swells as for digging"}
)

// rises works out Fresh and Settled. Soil that is dug swells, by a range that depends
// on what soil it is. The least that it stands after rolling is not at an end of that
// range where the soil just comes back to the depth it had, at a swell of 20%. A layer
// whose settling the job gives settles by that and not by the rolling.
func (b *Bed) rises(given bool) {
	swells := []units.Ratio{b.swell[0], b.swell[1]}
	if back := units.Percent(20); b.swell[0].Less(back) && back.Less(b.swell[1]) {
		swells = append(swells, back)
	}
	least := b.Rise
	if !given {
		least = part(b.Layer, rolled[0], rolled[1])
	}
	b.Settled = [2]units.Length{b.Rise, b.Rise}
	for i, s := range swells {
		loose := part(b.Native, s.Den()+s.Num(), s.Den())
		in := min(part(loose, filled.Num(), filled.Den()), b.Layer)
		soil := max(part(loose, rolled[0], rolled[1])-b.Native, 0)
		b.Settled[0] = max(min(b.Settled[0], least+soil-in), 0)
		switch i {
		case 0:
			b.Fresh[0] = b.Layer + loose - b.Native - in
		case 1:
			b.Fresh[1] = b.Layer + loose - b.Native
		}
	}
}

// volume is the volume of the layer. For a share it is worked out from the depth that
// was given and not from Layer, so that it is rounded once, as a volume, and not
// first as a length and then multiplied by the ground.
func (b *Bed) volume() (v units.Range, ok bool) {
	a := b.work
	n, d := a.Share.Num(), a.Share.Den()
	depth := a.FixedLength("into", a.Into)
	switch {
	case a.Layer > 0:
		depth, n, d = a.FixedLength("layer", a.Layer), 1, 1
	case a.Over > 0: // a share of what is dug is n / (d - n) of the soil alone
		depth, d = a.FixedLength("over", a.Over), d-n
	}
	whole, ok := b.ground.Deep(depth)
	if !ok {
		return units.Range{}, false
	}
	return units.Known(whole).MulDiv(n, d)
}

// part returns l x n/d, rounded to the nanometre, at most [units.MaxLength]. It
// borrows the arithmetic of volumes, which multiplies without overflow.
func part(l units.Length, n, d int64) units.Length {
	v, ok := units.Volume(l).MulDiv(n, d)
	if !ok {
		return units.MaxLength
	}
	return units.Length(v)
}

// shareOf returns layer / finished: exactly where a [units.Ratio] can hold it, or
// else to the nearest millionth, and then rounded is true.
func shareOf(layer, finished units.Length) (r units.Ratio, rounded bool) {
	if r, err := units.NewRatio(int64(layer), int64(finished)); err == nil {
		return r, false
	}
	millionths := part(1_000_000, int64(layer), int64(finished))
	r, _ = units.NewRatio(int64(millionths), 1_000_000)
	return r, true
}

// Net is the ground times the layer, in nanolitres.
func (b *Bed) Net() units.Range { return b.net }

// Terms yields Net as one volume: the measures of a bed are taken as exact.
func (b *Bed) Terms(yield func(Term) bool) { yield(Term{Times: 1, Each: b.net}) }

// Reach is how deep net lies on the ground, rounded down to the nanometre.
func (b *Bed) Reach(net units.Volume, _ func(units.Range) bool, _ lang.Printer) *Reached {
	return deep(net, b.Area)
}

// Title names the ground and what goes in: "Amend 240 sq ft with compost".
func (b *Bed) Title(p lang.Printer, filling string) string {
	return p.Print("Amend {0} with {1}", p.Area(b.Area), filling)
}

// Facts are the ground, the depths and the share.
func (b *Bed) Facts(p lang.Printer) []Fact {
	f := facts{p: p}
	f.add("area", "Ground", p.Area(b.Area))
	f.add("layer", "Layer, as spread", p.Length(b.Layer))
	f.add("native", "Native soil loosened", p.Length(b.Native))
	f.add("finished", "Finished depth", p.Length(b.Finished))
	f.add("share", "Share of the finished bed", p.Share(b.Share))
	f.add("rise-fresh", "Grade rises, freshly dug, by", p.LengthRange(b.Fresh[0], b.Fresh[1]))
	f.add("rise-settled", "Grade rises, settled, by", p.LengthRange(b.Settled[0], b.Settled[1]))
	f.add("rise", "Grade rises, settled, by up to", p.Length(b.Rise))
	return f.list
}

// The two ways to work out the share of a bed, and where each comes from.
var (
	ofFinished = catalog.Source{Text: "share = layer / finished depth: Cornell advice"}
	ofBoth     = catalog.Source{Text: "share = layer / (layer + native soil): Cornell advice"}
)

// Steps writes the ground, then how the depths and the share follow from those that
// were given, so that a person can check them with a calculator.
func (b *Bed) Steps(s *Steps) {
	p, a := s.Printer, b.work
	s.Add("the bed: {0}", p.Area(b.Area), catalog.Arithmetic, a.Area.Words(p))
	switch {
	case a.Layer == 0 && a.Into > 0:
		s.Add("layer = {0} of {1} finished depth", p.Length(b.Layer), ofFinished,
			p.Figure(b.Share.String()), p.Length(b.Finished))
	case a.Layer == 0:
		s.Add("layer = {0} x share / (1 - share), share {1}", p.Length(b.Layer), ofBoth,
			p.Length(b.Native), p.Figure(b.Share.String()))
	case a.Into > 0:
		s.Add("share = {0} of {1} finished depth", p.Share(b.Share), ofFinished, p.Length(b.Layer), p.Length(b.Finished))
	default:
		s.Add("share = {0} over {1} of native soil, {2} together", p.Share(b.Share), ofBoth,
			p.Length(b.Layer), p.Length(b.Native), p.Length(b.Finished))
	}
	s.Add("{0} x {1} layer, as spread", p.Volume(b.net.Plan), catalog.Arithmetic, p.Area(b.Area), p.Length(b.Layer))
	s.Add("the grade rises by the layer less what settles, {0}", p.Print("up to {0}", p.Length(b.Rise)),
		catalog.Arithmetic, p.Share(b.settle))
	s.Add("freshly dug it stands higher: the soil swells by {0} to {1}, and the layer fills its pores in part",
		p.LengthRange(b.Fresh[0], b.Fresh[1]), worked, p.Share(b.swell[0]), p.Share(b.swell[1]))
	s.Add("rolled or watered in it stands lower", p.LengthRange(b.Settled[0], b.Settled[1]), worked)
}

// Notes adds none: what a bed has to say is a caution.
func (b *Bed) Notes(*Notes) {}

// Cautions are about the depths, about sand in clay and about digging. Soil that is
// not given is taken as clay here, where the mistake does the most harm.
func (b *Bed) Cautions(s *catalog.Scope) (list []Caution) {
	in := b.blend
	if units.Percent(50).Less(b.Share) {
		list = append(list, Caution{Code: "over-half", Place: 20,
			Text:   "More than half of the finished bed would be amendment: that is a raised bed, and as it rots it sinks.",
			Source: "Cornell depth advice; up to 40 % of an all-organic mix is lost in 24 months (horticulture course text)"})
	}
	if s.HasTrait(in, "sand") && (b.work.Soil == "clay" || b.work.Soil == "") {
		list = append(list, Caution{Code: "sand-clay", Place: 30,
			Text:   "Do not dig sand into clay: with less than about 60 % sand it sets hard.",
			Source: "Colorado State Univ. Extension and others; the figure is uncertain"})
	}
	return append(append(list, about(s, in, nitrogen, salt)...), digging)
}

// JSON writes the ground in square metres, the depths in millimetres, and the share
// as a fraction to six decimals.
func (b *Bed) JSON(w *lang.Writer) {
	w.Open("bed")
	w.SquareMetres("area_m2", b.Area)
	w.Millimetres("layer_mm", b.Layer)
	w.Millimetres("native_mm", b.Native)
	w.Millimetres("finished_mm", b.Finished)
	w.Number("share", b.Share.Float(), 6)
	w.Millimetres("rise_mm", b.Rise)
	w.MillimetreRange("rise_fresh_range_mm", b.Fresh)
	w.MillimetreRange("rise_settled_range_mm", b.Settled)
	w.Close()
}

// Shape describes what JSON writes, for the plan's schema.
func (b *Bed) Shape() *json.Member {
	shape := json.AnObject("Bed", "What only an amend task has.",
		json.Member{Name: "area_m2", Shape: json.ANumber, About: "the ground"},
		json.Member{Name: "layer_mm", Shape: json.ANumber, About: "the layer, as it is spread"},
		json.Member{Name: "native_mm", Shape: json.ANumber, About: "native soil loosened under it"},
		json.Member{Name: "finished_mm", Shape: json.ANumber, About: "layer and soil together"},
		json.Member{Name: "share", Shape: json.ANumber, About: "of the finished bed that is the layer"},
		json.Member{Name: "rise_mm", Shape: json.ANumber, About: "how far the ground rises at the most, once it has settled"},
		json.Member{Name: "rise_fresh_range_mm", Shape: json.ARange, About: "how far it rises freshly dug, at least and at most"},
		json.Member{Name: "rise_settled_range_mm", Shape: json.ARange, About: "how far it rises rolled or watered in, at least and at most"})
	return &json.Member{Name: "bed", About: "the amended bed", Maybe: true, Shape: shape}
}
