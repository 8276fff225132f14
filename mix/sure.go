package mix

import (
	"math"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/sure"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Sureness is how sure an order is, from the ranges of what is uncertain: the
// sizes of pots known by their class, the common allowances, how far bales
// open, how full bags and buckets are. Package sure states the method; each
// range is taken as a triangle with its planned figure the likeliest, and the
// ranges as independent of each other.
type Sureness struct {
	Chance float64 // that the order is enough of everything
	Error  float64 // by which sampling may have it off
	// Enough is the order that is enough nine times in ten, empty when the order
	// itself is, and Bill what it costs.
	Enough []yard.Line
	Bill   yard.Bill
	At     float64 // the chance that Enough is enough
	// Ranges are what is uncertain, each with its range of its planned figure.
	Ranges []string
	// Matters are the figures that matter most, the first the most.
	Matters []Matter
}

// Odds writes the chance for people: "49 times in 100", never all or nothing
// where it is not.
func (s *Sureness) Odds(m lang.Printer) string {
	n := int64(math.Round(s.Chance * 100))
	switch {
	case s.Chance >= 1:
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

// SureMethod is how Sureness is worked out and what it takes for granted.
const SureMethod message.Text = "Each range is a triangle with its planned figure the likeliest, and how far bales open is even over its range; ranges are independent of each other, and all pots of one class are of one make. The chance is worked out over 16 x 1024 fixed points, the same every time. It is no better than the ranges."

// Matter is an uncertain figure and the volume that hangs on it between its
// 10th and 90th percentile.
type Matter struct {
	Name    string
	Measure string // what to do about it
	Moves   units.Volume
}

// nineInTen is how sure an order is to be.
const nineInTen = 0.9

// The spread of what is in a pack: a bag may hold a little less or more than
// its label, within what NIST Handbook 133 lets one package be short of, and a
// bucket of bulk has no standard size (common practice).
var (
	bagFill    = sure.Factor{Low: 0.95, Mode: 1, High: 1.03}
	bucketFill = sure.Factor{Low: 0.9, Mode: 1, High: 1.1}
)

// Sure works out how sure the order is; nil when there is no order, or when
// more is uncertain than can be worked out.
func (p *Plan) Sure() *Sureness {
	if len(p.Lines) == 0 || p.e == nil {
		return nil
	}
	m := newModel(p)
	model := m.with(p.Lines)
	if model.Check() != nil {
		return nil
	}
	chance := model.Chance()
	s := &Sureness{Chance: chance.All, Error: chance.Error}
	for _, one := range model.Matters(3) {
		s.Matters = append(s.Matters, Matter{model.Factors[one.Factor].Name, m.measures[one.Factor], litresOf(one.Moves)})
	}
	for _, f := range model.Factors {
		s.Ranges = append(s.Ranges, rangeOf(m.language, f))
	}
	if s.Chance < nineInTen {
		m.enough(s, model)
	}
	return s
}

// rangeOf writes a factor: of its planned figure, or for a loss of the volume.
func rangeOf(t *lang.Language, f sure.Factor) string {
	hundredths := func(x float64) string { return itoa(int64(math.Round(x*100))) + "%" }
	return t.Print("{0}: {1} to {2}", f.Name, hundredths(f.Low), hundredths(f.High))
}

func litresOf(f float64) units.Volume {
	v, _ := units.VolumeOfLitres(f)
	return v
}

// uncertain is a job's ranges as a model.
type uncertain struct {
	p        *Plan
	e        *evaluated
	language *lang.Language
	needs    []int       // index of the need, by item
	item     map[int]int // by material index; what is left out is not there
	model    sure.Model
	measures []string
	factors  map[any]int
}

// newModel writes the tasks' needs, and what is on hand, as terms. What no offer
// covers is left out, as the order itself does.
func newModel(p *Plan) *uncertain {
	e := p.e
	u := &uncertain{p: p, e: e, language: p.Language, item: map[int]int{}, factors: map[any]int{}}
	for i := range e.needs {
		if n := &e.needs[i]; n.Buy.Plan <= catalog.Slack || p.Ordered(n.Material) {
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
	return u
}

// factor returns the index of the factor known by key, made on first use.
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

// task writes what one task takes. Its parts share its losses; a root ball
// gives back what its pot does not take.
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
		u.spread(terms, d.In.Blend, t.Times*scale*t.Each.Plan.Litres(), u.size(uses, t.Class, t.Each))
		return true
	})
}

// sizeOf is the factor of a class by its id: how large it is.
type sizeOf string

// size adds the factor of a class, when its size is not certain.
func (u *uncertain) size(uses []sure.Use, class string, r units.Range) []sure.Use {
	if class == "" || r.Certain() {
		return uses
	}
	plan := r.Plan.Litres()
	f := sure.Factor{Name: u.language.Print("the size of {0}", class), Low: r.Low.Litres() / plan, Mode: 1, High: r.High.Litres() / plan}
	i := u.factor(sizeOf(class), f, message.Of("fill one with water and measure or weigh that (1 L is 1 kg, 1 gal {#0})", "8.34 lb"))
	return append(uses[:len(uses):len(uses)], sure.Use{Factor: i, Kind: sure.Times})
}

// allowance returns the factor of a common allowance.
func (u *uncertain) allowance(common *catalog.Common) int {
	name, measure := message.Text("how far the mix settles in pots"), message.Text("fill and water one pot and top it up, measuring both")
	if common.ID == "blend-loss" {
		name, measure = "what mixing loses", "mix one bucket of each part and measure what comes of it"
	}
	f := sure.Factor{Name: u.language.Text(name), Low: common.Low.Float(), Mode: common.Share.Float(), High: common.High.Float()}
	return u.factor(common, f, measure)
}

// named gives a factor its name.
func (u *uncertain) named(name message.Text, f sure.Factor) sure.Factor {
	f.Name = u.language.Text(name)
	return f
}

// spread writes litres of a blend as terms by material. A mix inside it loses
// its own volume.
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

// with returns the model with an order as its supply.
func (u *uncertain) with(lines []yard.Line) *sure.Model {
	m := u.model
	m.Supplies = append([]sure.Term(nil), u.model.Supplies...)
	for i := range lines {
		l := &lines[i]
		t := sure.Term{Item: u.item[u.index(l.Material)], Amount: l.Volume.Litres()}
		switch {
		case l.Offer.Bulk.Volume > 0:
			t.Uses = append(t.Uses, sure.Use{Factor: u.factor("bucket", u.named("how full a bucket of bulk is", bucketFill), "see the bucket filled level"), Kind: sure.Times})
		case !l.Each.Certain():
			f := sure.Factor{Name: u.language.Print("how far bales of {0} open", u.e.scope.Called(l.Material.ID)), Low: 1, High: l.Each.High.Litres() / l.Each.Low.Litres(), Flat: true}
			t.Uses = append(t.Uses, sure.Use{Factor: u.factor(l.Material, f, "fluff one bale and measure it"), Kind: sure.Times})
		default:
			t.Uses = append(t.Uses, sure.Use{Factor: u.factor("bag", u.named("how full bags are", bagFill), "empty one bag into a measured bucket"), Kind: sure.Times})
		}
		m.Supplies = append(m.Supplies, t)
	}
	m.Factors = u.model.Factors
	return &m
}

// enough finds the order that is enough nine times in ten: it plans for needs
// that are not exceeded so often, and for a little more, by steps, for packs
// that hold less than they should.
func (u *uncertain) enough(s *Sureness, model *sure.Model) {
	litres := model.Enough(0.95)
	for _, more := range []float64{1, 1.03, 1.06, 1.09, 1.12} {
		needs := append([]yard.Need(nil), u.e.needs...)
		for item, i := range u.needs {
			n := &needs[i]
			rest := litresOf(math.Max(litres[item]*more-n.OnHand.Litres(), 0))
			n.Buy = units.Exactly(max(rest, n.Buy.Plan))
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

// index is a material's in the scope.
func (u *uncertain) index(m *catalog.Material) int {
	index, _ := u.e.scope.Index(m.ID)
	return index
}
