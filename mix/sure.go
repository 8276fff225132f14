package mix

import (
	"math"
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/sure"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Sureness is how likely an order is to be enough. It follows from the ranges of what
// is uncertain: the sizes of pots known by their class, the common allowances, how far
// bales open, and how full bags and buckets are, in common and each by itself. Each range is taken as a triangle
// with the planned figure the likeliest, and the ranges as independent of each other;
// package sure describes the method. Chances are from 0 to 1.
type Sureness struct {
	Chance float64 // that the order is enough of every material
	Error  float64 // by how much sampling may have Chance wrong, either way
	// Enough is an order that is enough nine times in ten. It is empty when the order
	// itself is, or when none was found.
	Enough []yard.Line
	Bill   yard.Bill // what Enough costs
	At     float64   // the chance that Enough is enough
	// Assumes says what is taken for granted of the packs of the order, in sentences
	// without a stop: what they have in common, and by how much each differs.
	Assumes []string
	// Ranges says what is uncertain, in sentences: each figure with its range, in
	// whole percent of the planned figure.
	Ranges []string
	// Matters are the figures that matter most, at most three, the first the most.
	Matters []Matter
}

// Odds writes the chance for people: "49 times in 100". It says "for certain" and "in
// no case" only where that is exact, and not where rounding would make it so.
func (s *Sureness) Odds(m lang.Printer) string {
	n := int64(math.Round(s.Chance * 100))
	switch {
	case s.Chance >= 1 && s.Error == 0:
		return m.Print("for certain")
	case s.Chance <= 0:
		return m.Print("in no case")
	case n >= 100:
		return m.Print("more than 99 times in 100")
	case n < 1:
		return m.Print("less than once in 100 times")
	}
	return m.Count(n, "{0} time in 100", "{0} times in 100")
}

// SureMethod tells a reader how Sureness is worked out and what it assumes.
const SureMethod message.Text = "Each range is a triangle with its planned figure the likeliest, and how far bales open is even over its range; ranges are independent of each other, and all pots of one class are of one make. Bags, bales and buckets differ from each other: each is drawn by itself about the average of its lot, its make or its loader. The chance is worked out over 16 x 1024 fixed points, the same every time. It is no better than the ranges."

// Matter is an uncertain figure that the need depends on.
type Matter struct {
	Name    string       // the figure, in the reader's language
	Measure string       // what to measure to make it certain
	Moves   units.Volume // how far it moves the need between its 10th and its 90th percentile
}

// mostMatters is how many figures are listed as worth measuring.
const mostMatters = 3

// nineInTen is the chance from which an order counts as enough.
const nineInTen = 0.9

// What is assumed of packs, in words; see [Sureness.Assumes].
const (
	assumesPacks   message.Text = "Packs are taken to hold what their label says on average: a lot bought together to within about 1%, and each pack up to 5% less or more by itself"
	assumesBuckets message.Text = "Buckets of bulk are taken to be within 10% of full, and of soil to be up to 20% over: about half of it by the habit of the loader, and half each by itself"
	assumesBales   message.Text = "Bales of one material are taken to be of one make, and each up to 5% less or more than the others by itself"
)

// Sure works out how likely the order is to be enough of the materials that it does not
// leave out. It is nil when there is no order, when it leaves something out of every
// material, or when more is uncertain than package sure can work out. It takes some
// milliseconds, and gives the same result every time.
func (p *Plan) Sure() *Sureness {
	if len(p.Lines) == 0 || p.e == nil {
		return nil
	}
	m := newModel(p)
	if len(m.needs) == 0 {
		return nil
	}
	model := m.with(p.Lines)
	if tooUncertain(model) {
		return nil
	}
	chance := model.Chance()
	s := &Sureness{Chance: chance.All, Error: chance.Error}
	for _, one := range model.Matters(len(model.Factors)) {
		name, measure := model.Factors[one.Factor].Name, m.measures[one.Factor]
		if measure != "" && len(s.Matters) < mostMatters {
			s.Matters = append(s.Matters, Matter{name, measure, volumeOf(one.Moves)})
		}
	}
	for _, f := range model.Factors {
		if text := rangeOf(m.language, f); !slices.Contains(s.Ranges, text) {
			s.Ranges = append(s.Ranges, text)
		}
	}
	s.Assumes = m.assumes(p.Lines)
	if s.Chance < nineInTen {
		m.enough(s, model)
	}
	return s
}

// How many figures may be uncertain, and in how many terms, for the answer to come in
// a second in a browser. Past these, a note says that there is none.
const (
	mostUncertain = 200
	mostTerms     = 2000
)

// tooUncertain reports whether more is uncertain than is worked out.
func tooUncertain(m *sure.Model) bool {
	return len(m.Factors) > mostUncertain || len(m.Needs)+len(m.Supplies) > mostTerms || m.Check() != nil
}

// rangeOf writes a factor with its range: in percent of the planned figure, or for a
// loss in percent of the volume.
func rangeOf(t *lang.Language, f sure.Factor) string {
	hundredths := func(x float64) string { return itoa(int64(math.Round(x*100))) + "%" }
	return t.Print("{0}: {1} to {2}", f.Name, hundredths(f.Low), hundredths(f.High))
}

// volumeOf is a number of litres as a volume, rounded to the nanolitre.
func volumeOf(litres float64) units.Volume {
	v, _ := units.VolumeOfLitres(litres)
	return v
}

// uncertain builds the model of package sure from a plan. That package knows numbers
// only: its items are the materials of the order, and its factors the ranges.
type uncertain struct {
	p        *Plan
	e        *evaluated
	language *lang.Language
	needs    []int       // the index of the need, by item
	item     map[int]int // the item, by the scope's materials; only materials of the order
	model    sure.Model
	measures []string    // what to measure, by factor
	factors  map[any]int // the index of each factor, by what it is about; see factor
	ofNeeds  int         // the number of factors of the needs; those of an order follow
}

// newModel makes terms of what the tasks need and of what is on hand. It leaves out
// materials that the order leaves out, all of them or a part: it could never be enough
// of them, and its chance would always be zero.
func newModel(p *Plan) *uncertain {
	e := p.e
	u := &uncertain{p: p, e: e, language: p.Language, item: map[int]int{}, factors: map[any]int{}}
	out := map[*catalog.Material]bool{}
	for _, one := range p.LeftOut() {
		out[one.Material] = true
	}
	for i := range e.needs {
		if n := &e.needs[i]; !out[n.Material] {
			u.item[n.Index()] = len(u.needs)
			u.needs = append(u.needs, i)
		}
	}
	u.model.Items = len(u.needs)
	for i := range e.tasks {
		if e.tasks[i].In.Blend != nil {
			u.task(&e.tasks[i])
		}
	}
	for item, i := range u.needs {
		if v := e.needs[i].OnHand; v > 0 {
			u.model.Supplies = append(u.model.Supplies, sure.Term{Item: item, Amount: v.Litres()})
		}
	}
	u.ofNeeds = len(u.model.Factors)
	return u
}

// factor returns the index of the factor for key, adding f on first use. Terms with
// the same key share one factor, since they vary together: the bags of a lot, and all
// pots of a class, which are of one make. A key is any value that can be compared,
// such as a pointer to a row of the catalogue. Without a measure there is nothing that
// somebody could measure beforehand.
func (u *uncertain) factor(key any, f sure.Factor, measure message.Text) int {
	i, ok := u.factors[key]
	if !ok {
		i = len(u.model.Factors)
		u.factors[key] = i
		u.model.Factors = append(u.model.Factors, f)
		u.measures = append(u.measures, u.language.Text(measure))
	}
	return i
}

// task adds the terms of one task. All its parts share the factors of its losses. A
// root ball counts as a supply, since the model has no negative needs. Allowances
// that the job sets are exact and only scale the terms.
func (u *uncertain) task(d *task.Evaluated) {
	var uses []sure.Use
	scale := 1.0
	for _, a := range []task.Allowance{d.In.Settle, d.In.BlendLoss} {
		if a.Common != nil {
			uses = append(uses, sure.Use{Factor: u.allowance(a.Common), Kind: sure.Loss})
		} else {
			scale /= 1 - a.Share.Float()
		}
	}
	scale *= 1 + d.In.Spare.Share.Float()
	d.Result.Terms(func(t task.Term) bool {
		terms := &u.model.Needs
		if t.Less {
			terms = &u.model.Supplies
		}
		u.spread(terms, d.In.Blend, t.Times*scale*t.Each.Plan.Litres(), u.size(uses, &t))
		return len(u.model.Needs)+len(u.model.Supplies) <= mostTerms // past that there is no answer
	})
}

// sizeOf is the key of the factor for the size of a class, by the id of the class. It
// is a type of its own so that no other string is the same key.
type sizeOf string

// size returns uses with the factor for the size of a class or for how full a pot is
// filled, or uses itself when the size is certain. It never appends in place, because
// other terms have the same uses.
func (u *uncertain) size(uses []sure.Use, t *task.Term) []sure.Use {
	class, r := t.Class, t.Each
	if class == "" && t.Usual == nil || r.Certain() {
		return uses
	}
	plan := r.Plan.Litres()
	f := sure.Factor{Low: r.Low.Litres() / plan, Mode: 1, High: r.High.Litres() / plan}
	if t.Usual != nil {
		i := u.factor(t.Usual, u.named("how full the pots are filled", f),
			"measure how far below the rim you fill one, and how wide it is there")
		return append(uses[:len(uses):len(uses)], sure.Use{Factor: i, Kind: sure.Times})
	}
	f.Name = u.language.Print("the size of {0}", class)
	measure := message.Of("fill one with water and measure or weigh that (1 L is 1 kg, 1 gal {#0})", "8.34 lb")
	i := u.factor(sizeOf(class), f, measure)
	return append(uses[:len(uses):len(uses)], sure.Use{Factor: i, Kind: sure.Times})
}

// allowance returns the factor of a common allowance.
func (u *uncertain) allowance(common *catalog.Common) int {
	name := message.Text("how far the mix settles in pots")
	measure := message.Text("fill and water one pot and top it up, measuring both")
	if common.ID == "blend-loss" {
		name, measure = "what mixing loses", "mix one bucket of each part and measure what comes of it"
	}
	f := sure.Factor{
		Name: u.language.Text(name),
		Low:  common.Low.Float(), Mode: common.Share.Float(), High: common.High.Float(),
	}
	return u.factor(common, f, measure)
}

// named returns a factor with a name in the reader's language.
func (u *uncertain) named(name message.Text, f sure.Factor) sure.Factor {
	f.Name = u.language.Text(name)
	return f
}

// spread adds terms for litres of a blend, one for each material. A mix inside the
// blend has its own blend loss.
func (u *uncertain) spread(terms *[]sure.Term, b *catalog.Blend, litres float64, uses []sure.Use) {
	for i, in := range b.Of {
		part := litres * (float64(b.Parts[i]) / float64(b.Whole))
		if in.Blend == nil {
			if item, ok := u.item[in.Material]; ok {
				*terms = append(*terms, sure.Term{Item: item, Amount: part, Uses: uses})
			}
			continue
		}
		inner := uses
		if common := in.Blend.Common; common != nil {
			inner = append(uses[:len(uses):len(uses)], sure.Use{Factor: u.allowance(common), Kind: sure.Loss})
		} else {
			part /= 1 - in.Blend.Loss.Float()
		}
		u.spread(terms, in.Blend, part, inner)
	}
}

// with returns the model with an order, and what is on hand, as its supply.
func (u *uncertain) with(lines []yard.Line) *sure.Model {
	u.forget()
	m := u.model
	m.Supplies = append([]sure.Term(nil), u.model.Supplies...)
	for i := range lines {
		l := &lines[i]
		item, ok := u.item[u.index(l.Material)]
		if !ok {
			continue
		}
		t := sure.Term{Item: item, Amount: l.Volume.Litres()}
		t.Uses = []sure.Use{{Factor: u.common(l)}, {Factor: u.apart(l)}}
		m.Supplies = append(m.Supplies, t)
	}
	m.Factors = u.model.Factors // with those that the lines have just added
	return &m
}

// forget removes the factors of an order, and leaves those of the needs.
func (u *uncertain) forget() {
	for key, i := range u.factors {
		if i >= u.ofNeeds {
			delete(u.factors, key)
		}
	}
	u.model.Factors = u.model.Factors[:u.ofNeeds:u.ofNeeds] // another order's stay as they are
	u.measures = u.measures[:u.ofNeeds]
}

// lotOf is the key of the factor of a lot: packs of one material and size that are
// bought together.
type lotOf struct {
	material *catalog.Material
	size     units.Volume
}

// common returns the factor for what the packs of a line have in common: how full
// their lot is, how the loader fills, or how far their make of bales opens. An order
// counts bales at the least that they open to, so their factor starts at one; nothing
// is known of where in their range they are, so it is flat.
func (u *uncertain) common(l *yard.Line) int {
	called := u.e.scope.Called(l.Material.ID)
	full, varies := l.Offer.Fullness(l.Material)
	lot := sure.Factor{Low: full.Lot[0].Float(), Mode: 1, High: full.Lot[1].Float()}
	switch {
	case l.Offer.Bulk.Volume > 0 && l.Material.Has("soil"):
		return u.factor("soil", u.named("how full buckets of soil are on average", lot), "see that the buckets are filled level")
	case l.Offer.Bulk.Volume > 0:
		return u.factor("loader", u.named("how full buckets of bulk are on average", lot), "see that the buckets are filled level")
	case !varies:
		f := sure.Factor{
			Name: u.language.Print("how far bales of {0} open", called),
			Low:  1, High: l.Each.High.Litres() / l.Each.Low.Litres(), Flat: true,
		}
		return u.factor(l.Material, f, "fluff one bale and measure it")
	}
	lot.Name = u.language.Print("how full the {1} packs of {0} are on average", called,
		u.language.Figure(l.Offer.Size().String()))
	return u.factor(lotOf{l.Material, l.Offer.Size().Volume}, lot, "empty a dozen into a measured bucket")
}

// apart returns the factor for how the packs of a line differ from each other: the
// mean of so many. There is one for every line of an order.
func (u *uncertain) apart(l *yard.Line) int {
	full, varies := l.Offer.Fullness(l.Material)
	name := message.Text("each pack by itself, about the average")
	switch {
	case l.Offer.Bulk.Volume > 0:
		name = "each bucket by itself, about the average"
	case !varies:
		name = "each bale by itself, about the average"
	}
	f := u.named(name, sure.Factor{Low: full.Each[0].Float(), High: full.Each[1].Float(), Pieces: l.Count})
	return u.factor(pieces{l.Index(), l.Count}, f, "")
}

// pieces is the key of the factor for so many packs of an offer.
type pieces struct {
	offer int
	count int64
}

// assumes says what is taken for granted of the packs of an order.
func (u *uncertain) assumes(lines []yard.Line) (list []string) {
	for i := range lines {
		text := assumesPacks
		switch l := &lines[i]; {
		case l.Offer.Bulk.Volume > 0:
			text = assumesBuckets
		case !l.Each.Certain():
			text = assumesBales
		}
		if s := u.language.Text(text); !slices.Contains(list, s) {
			list = append(list, s)
		}
	}
	return list
}

// enough finds an order that is enough nine times in ten. It orders for needs that are
// exceeded once in ten times, and adds to them, up to 12%, until the chance is reached:
// whole packs leave something over, but may hold too little. Each step is a whole
// search for an order, so their number is bounded; without success Enough stays empty.
func (u *uncertain) enough(s *Sureness, model *sure.Model) {
	litres := model.Enough(nineInTen)
	for _, more := range []float64{1, 1.02, 1.04, 1.08, 1.12} {
		needs := append([]yard.Need(nil), u.e.needs...)
		for item, i := range u.needs {
			n := &needs[i]
			rest := volumeOf(math.Max(litres[item]*more-n.OnHand.Litres(), 0))
			if n.Buy = units.Known(n.Buy.FixedPlan()); rest > n.Buy.Plan {
				n.Buy = units.Exactly(rest)
			}
		}
		order, ok := u.e.terms.BuyAgain(needs)
		if !ok {
			return
		}
		surer := u.with(order.Lines)
		if surer.Check() != nil {
			return
		}
		if c := surer.Chance(); c.All >= nineInTen {
			s.Enough, s.Bill, s.At = order.Lines, order.Bill, c.All
			return
		}
	}
}

// index is the index of a material in the scope.
func (u *uncertain) index(m *catalog.Material) int {
	index, _ := u.e.scope.Index(m.ID)
	return index
}
