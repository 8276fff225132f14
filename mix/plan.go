package mix

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Plan is everything that a face shows of a job. Faces only lay it out: every
// figure has its text beside it, in the job's measure.
type Plan struct {
	Name     string
	Measure  units.Measure
	Language *lang.Language
	Currency string // as it stands before an amount

	Tasks  []TaskPlan
	Needs  []Need
	Order  []Line
	Others []Line // offers that were not chosen, each were it bought alone
	Trips  []Trip // drives
	Drops  []Trip // loads that the yard brings
	Bill   Bill
	// Priced is false when no line has a price; Unpriced names the materials
	// that have none beside others that do.
	Priced   bool
	Unpriced []string
	// Unproven says that the search stopped before it could show that no order
	// costs less; then none costs less than Bound.
	Unproven bool
	Bound    units.Money
	Load     Load
	Haul     Haul

	Notes    []Note
	Cautions []Caution

	work *work
	yard *Yard // what the job said of the yard, which is applied
}

// TaskPlan is one task of the plan.
type TaskPlan struct {
	Kind, Title string
	Filling     string // the name of what goes in, "" for nothing
	Net, Loose  Span   // in place, and as it leaves the shovel
	Allowances  []Allowance
	Parts       []Portion // of Loose, by material
	Facts       []Fact
}

// Portion is a material's share of a task.
type Portion struct {
	Material *Material
	Volume   Span // loose
}

// Fact is one more thing that a task works out, as label and figure. Code is
// stable: "area", "layer", "finished".
type Fact struct{ Code, Label, Figure string }

// Load is the whole order. Zero fields are unknown.
type Load struct {
	Volume units.Volume  // loose, as it will leave the shovel
	Packed units.Volume  // as it is carried: bales stay compressed
	Mass   [2]units.Mass // lightest and heaviest
	Drives int64         // at its heaviest
	Dry    int64         // drives at its lightest
	Loads  int64         // that the yard brings
}

// Plan checks the job and works it out. The error carries every problem at
// once, and then there is no plan; see [Problems]. The plan keeps hold of the
// job: do not change it while the plan is in use.
func (j *Job) Plan() (*Plan, error) {
	return j.plan(&checker{})
}

// PlanDocument reads a job document and works it out: [Read] and [Job.Plan] in
// one. Changes are made to the job between the two, as by flags of a command.
func PlanDocument(data []byte, changes ...func(*Job)) (*Plan, error) {
	c := &checker{}
	j := read(c, data)
	if j == nil {
		return nil, c.err()
	}
	for _, change := range changes {
		change(j)
	}
	return j.plan(c)
}

func (j *Job) plan(c *checker) (*Plan, error) {
	yard := j.Yard
	j = j.atYard(c)
	w := j.work(c)
	p := &Plan{Name: j.Name, Measure: j.Measure, Language: j.Language, Currency: sign(j.Currency), Needs: w.needs, Order: w.order, Others: w.others, Trips: w.drives, Drops: w.drops, Bill: w.bill,
		Unproven: w.unproven, Bound: w.bound, Haul: j.Haul, work: w, yard: yard}
	if c.sound() {
		p.load(c)
	}
	if err := c.err(); err != nil {
		return nil, err
	}
	p.Tasks = make([]TaskPlan, len(w.tasks))
	for i := range w.tasks {
		p.Tasks[i] = w.tasks[i].lay(p)
	}
	p.Notes = p.notes()
	p.Cautions = p.cautions()
	return p, nil
}

// Printer is how the plan speaks to its reader.
func (p *Plan) Printer() lang.Printer { return lang.Printer{Measure: p.Measure, Language: p.Language} }

// sign is a currency as it stands before an amount: letters keep their distance.
func sign(currency string) string {
	if last, _ := utf8.DecodeLastRuneInString(currency); spell.Letter(last) {
		return currency + " "
	}
	return currency
}

// load adds the order up.
func (p *Plan) load(c *checker) {
	var ok = true
	known := true
	for i := range p.Order {
		l := &p.Order[i]
		if p.Load.Volume += l.Volume; p.Load.Volume > units.MaxVolume {
			ok = false
		}
		packed, fits := l.Offer.Size().Volume.Times(l.Count)
		if p.Load.Packed += packed; !fits || p.Load.Packed > units.MaxVolume {
			ok = false
		}
		for k := range l.Mass {
			if p.Load.Mass[k] += l.Mass[k]; p.Load.Mass[k] > units.MaxMass {
				ok = false
			}
		}
		known = known && l.Mass[1] > 0
		p.Priced = p.Priced || l.Priced
		if !l.Priced {
			p.Unpriced = append(p.Unpriced, l.Material.ID)
		}
		if !ok {
			c.problemAt("offers", "order.large", "the order comes to more than can be worked out")
			return
		}
	}
	if !known {
		p.Load.Mass = [2]units.Mass{}
	}
	if p.Bill.Total > units.MaxMoney {
		c.problemAt("offers", "order.large", "the order costs more than can be worked out")
		return
	}
	p.Load.Loads = countTrips(p.Drops)
	if p.Haul != (Haul{}) {
		p.Load.Drives = countTrips(p.Trips)
		p.Load.Dry = p.dryTrips()
	}
}

// lay lays one task out.
func (w *worked) lay(p *Plan) TaskPlan {
	t := TaskPlan{Kind: w.task.Kind(), Title: w.title(p.Printer()), Net: w.net, Loose: w.loose, Facts: w.facts(p.Printer())}
	if w.in == nil {
		return t
	}
	t.Filling = w.in.mix.Name
	t.Allowances = []Allowance{w.settle, w.blend, w.spare}
	takes := make([]Span, len(p.work.takes))
	w.in.spread(w.loose, takes)
	for i, v := range takes {
		if v.High > 0 {
			t.Parts = append(t.Parts, Portion{p.work.book.materials[i], v})
		}
	}
	return t
}

// title is the task's name, or what it does in a few words.
func (w *worked) title(m lang.Printer) string {
	t := w.task
	name := ""
	if w.in != nil {
		name = w.in.mix.Name
	}
	switch {
	case t.Name != "":
		return t.Name
	case t.Fill != nil:
		return m.Print("Fill with {0}", name)
	case t.Amend != nil:
		return m.Print("Amend {0} with {1}", m.Area(w.bed.area), name)
	case t.Backfill != nil:
		return m.Count(t.Backfill.Holes, "Backfill {0} hole", "Backfill {0} holes")
	}
	return m.Print("Cover {0} with {1}", m.Area(w.cover.ground), name)
}

// facts are what a task works out besides its volumes.
func (w *worked) facts(m lang.Printer) (facts []Fact) {
	add := func(code string, label message.Text, figure string) {
		facts = append(facts, Fact{code, m.Text(label), figure})
	}
	switch {
	case w.task.Fill != nil:
		for i := range w.pots {
			facts = append(facts, Fact{"containers", w.pots[i].label(m), w.pots[i].figure(m)})
		}
	case w.task.Amend != nil:
		b := w.bed
		add("area", "Ground", m.Area(b.area))
		add("layer", "Layer, as spread", m.Length(b.layer))
		add("native", "Native soil loosened", m.Length(b.native))
		add("finished", "Finished depth", m.Length(max(b.finished, b.layer)))
		add("share", "Share of the finished bed", percent(m, b.share))
		add("rise", "Grade rises by up to", m.Length(w.rise()))
	case w.task.Backfill != nil:
		h := w.holes
		add("holes", "Holes", itoa(h.task.Holes)+" x "+m.Length(h.task.Width)+" x "+m.Length(h.task.Depth))
		add("dug", "Soil dug, in place", m.Volume(h.dug))
		add("round", "Filled round the balls", spanText(m, h.round))
		add("put-back", "Soil put back, in place", spanText(m, h.putBack))
		add("soil-left", "Soil left over, loose", spanText(m, h.left))
	default:
		k := w.cover
		add("area", "Ground", m.Area(k.area))
		add("layer", "Layer, as spread", m.Length(w.task.Cover.Layer))
		if k.bare > 0 {
			add("bare", "Left bare round the stems", m.Area(k.bare))
		}
		if k.sheets > 0 {
			label := message.Text("Sheets underneath")
			if !k.exact {
				label = "Sheets underneath, about"
			}
			add("sheets", label, itoa(k.sheets))
		}
	}
	return facts
}

// rise is how far the layer lifts the ground: the layer less what settles.
func (w *worked) rise() units.Length {
	n, d := w.settle.Share.Den()-w.settle.Share.Num(), w.settle.Share.Den()
	return part(w.bed.layer, n, d)
}

// label is a container line in words: 64 #1 nursery pots.
func (p *pot) label(m lang.Printer) string {
	k := p.line
	return itoa(k.Count) + " x " + p.one(m)
}

// one is what the line has many of: a #1 nursery pot.
func (p *pot) one(m lang.Printer) (s string) {
	k := p.line
	switch {
	case p.class != nil:
		s = p.class.Name
	case p.cells > 1:
		s = m.Print("{0}, {1} cells", k.words(m), itoa(p.cells))
	default:
		s = k.words(m)
	}
	if k.Ball != nil {
		s = m.Print("{0}, ball {1}", s, m.Figure(k.Ball.String()))
	}
	return s
}

// words describes a container by its measures.
func (k *Container) words(m lang.Printer) string {
	switch {
	case k.Holds > 0:
		holds := m.Figure(k.holdsText)
		if holds == "" {
			holds = m.Volume(k.Holds)
		}
		return m.Print("{0} pot", holds)
	case len(k.Box) == 3:
		return m.Print("{0} x {1} x {2} box", m.Length(k.Box[0]), m.Length(k.Box[1]), m.Length(k.Box[2]))
	}
	size := m.Length(k.Across)
	if k.Across == 0 {
		size = m.Print("{0} to {1}", m.Length(k.Top), m.Length(k.Bottom))
	}
	if k.Shape == "square" {
		return m.Print("square pot {0} x {1}", size, m.Length(k.Height))
	}
	return m.Print("round pot {0} x {1}", size, m.Length(k.Height))
}

// figure is what a line takes.
func (p *pot) figure(m lang.Printer) string {
	return spanText(m, p.total)
}

// spanText writes a span for people: the plan, and the range where there is
// one.
func spanText(m lang.Printer, s Span) string {
	switch {
	case s.Certain():
		return m.Volume(s.Plan)
	case m.Measure == units.Both: // it has brackets of its own
		return m.VolumeLike(s.Plan, s.High) + "; " + m.VolumeRange(s.Low, s.High)
	}
	return m.VolumeLike(s.Plan, s.High) + " (" + m.VolumeRange(s.Low, s.High) + ")"
}

// TaskText writes a volume of a task in the unit of what the task takes in
// all, with its range where there is one.
func (p *Plan) TaskText(t *TaskPlan, s Span) string {
	if s.Certain() {
		return p.Printer().VolumeLike(s.Plan, t.Loose.Plan)
	}
	return spanText(p.Printer(), s)
}

// Shown writes a volume as yards talk about it: cubic feet with cubic yards,
// litres with cubic metres, by the measure.
func Shown(m lang.Printer, v units.Volume) string {
	feet, yards, litres := m.Figure(units.CubicFeet(v)), m.Figure(units.CubicYards(v)), m.Figure(units.Litres(v))
	small := v < units.CubicYard/4
	switch {
	case m.Measure == units.Metric:
		return m.Volume(v)
	case m.Measure == units.Both && small:
		return m.Volume(v)
	case m.Measure == units.Both:
		return feet + " (" + yards + ", " + litres + ")"
	case small:
		return m.Volume(v)
	}
	return feet + " (" + yards + ")"
}

// percent writes a share: exactly where its percentage ends, else to a tenth.
func percent(m lang.Printer, r units.Ratio) string { return m.Figure(PercentText(r)) }

// PercentText writes a share for people: exactly where its percentage ends, else
// to a tenth.
func PercentText(r units.Ratio) string {
	if s := r.String(); strings.HasSuffix(s, "%") {
		return s
	}
	tenths, _ := units.Volume(1000).MulDiv(r.Num(), r.Den())
	s := itoa(int64(tenths) / 10)
	if d := int64(tenths) % 10; d > 0 {
		s += "." + itoa(d)
	}
	return s + "%"
}

// rangeText writes two counts: "2 to 5", or one where they are the same.
func rangeText(r [2]int64) string {
	if r[0] == r[1] {
		return itoa(r[0])
	}
	return itoa(r[0]) + " to " + itoa(r[1])
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// DrivesText writes the drives for people: "5 drives, 3 if it is dry", or ""
// when they are not known.
func (l *Load) DrivesText(m lang.Printer) string {
	text := m.Count(l.Drives, "{0} drive", "{0} drives")
	switch {
	case l.Drives == 0:
		return ""
	case l.Mass[1] == 0:
		return m.Print("at least {0}, weights not all known", text)
	case l.Dry < l.Drives && l.Dry > 0:
		return m.Print("{0}, {1} if it is dry", text, itoa(l.Dry))
	}
	return text
}

// CountText writes the count and, where that is not certain, the fewest and
// the most: "6 (5 to 7)".
func (c *Choice) CountText() string { return countText(c.Count, c.FewMany) }

// CountText writes the count and, where that is not certain, the fewest and
// the most: "6 (5 to 7)".
func (l *Line) CountText() string { return countText(l.Count, l.FewMany) }

func countText(n int64, fewMany [2]int64) string {
	if fewMany[0] == fewMany[1] {
		return itoa(n)
	}
	return itoa(n) + " (" + rangeText(fewMany) + ")"
}

// SpanText writes a volume for people, with its range where there is one.
func (p *Plan) SpanText(s Span) string { return spanText(p.Printer(), s) }
