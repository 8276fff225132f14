package mix_test

import (
	"encoding/json"
	"maps"
	"math/big"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"
)

// This file is a second model of a job, in fractions, from the rules alone: it
// shares no arithmetic, no parsing and no catalogue decoding with the package.
// Lengths are millimetres, areas square millimetres, volumes microlitres, which
// are cubic millimetres, so that no step of it converts.

// exact is a fraction. A curved one came through pi or a root, which the model
// takes to 200 bits and the program takes through floating point.
type exact struct {
	rat    *big.Rat
	curved bool
}

func exactly(num, den int64) exact { return exact{rat: big.NewRat(num, den)} }

// decimal reads a fraction from a constant of this test.
func decimal(s string) exact {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic("not a number: " + s)
	}
	return exact{rat: r}
}

func (a exact) plus(b exact) exact {
	return exact{new(big.Rat).Add(a.rat, b.rat), a.curved || b.curved}
}
func (a exact) minus(b exact) exact {
	return exact{new(big.Rat).Sub(a.rat, b.rat), a.curved || b.curved}
}
func (a exact) times(b exact) exact {
	return exact{new(big.Rat).Mul(a.rat, b.rat), a.curved || b.curved}
}
func (a exact) over(b exact) exact {
	return exact{new(big.Rat).Quo(a.rat, b.rat), a.curved || b.curved}
}
func (a exact) taken(n int64) exact { return a.times(exactly(n, 1)) }
func (a exact) rest() exact         { return exactly(1, 1).minus(a) } // what a share leaves of the whole
func (a exact) less(b exact) bool   { return a.rat.Cmp(b.rat) < 0 }
func (a exact) float() float64      { f, _ := a.rat.Float64(); return f }

func (a exact) atLeast(b exact) exact {
	if a.less(b) {
		return b
	}
	return a
}

func (a exact) atMost(b exact) exact {
	if b.less(a) {
		return b
	}
	return a
}

// whole rounds half away from zero to a multiple of step, as parsing does.
func (a exact) whole(step exact) exact {
	q := a.over(step)
	twice := new(big.Int).Mul(q.rat.Num(), big.NewInt(2))
	if q.rat.Sign() < 0 {
		twice.Sub(twice, q.rat.Denom())
	} else {
		twice.Add(twice, q.rat.Denom())
	}
	n := twice.Quo(twice, new(big.Int).Mul(q.rat.Denom(), big.NewInt(2)))
	return exact{new(big.Rat).SetInt(n), a.curved}.times(step)
}

// ceil is the least whole number that is not below a.
func (a exact) ceil() int64 {
	n, rest := new(big.Int).DivMod(a.rat.Num(), a.rat.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		n.Add(n, big.NewInt(1))
	}
	return n.Int64()
}

func rooted(f *big.Float) exact {
	r, _ := f.Rat(nil)
	return exact{r, true}
}

func (a exact) root() exact {
	f := new(big.Float).SetPrec(200).SetRat(a.rat)
	return rooted(f.Sqrt(f))
}

var pi = sync.OnceValue(func() exact {
	f, _, err := big.ParseFloat("3.14159265358979323846264338327950288419716939937510582097494459230781640629", 10, 200,
		big.ToNearestEven)
	if err != nil {
		panic(err)
	}
	return rooted(f)
})

// disc is the area of a circle or ellipse by its two diameters.
func disc(a, b exact) exact { return pi().times(a).times(b).over(exactly(4, 1)) }

// spread is a figure with the least and the most it may be.
type spread struct{ low, plan, high exact }

func certain(a exact) spread { return spread{a, a, a} }

func (s spread) plus(o spread) spread {
	return spread{s.low.plus(o.low), s.plan.plus(o.plan), s.high.plus(o.high)}
}

// minus leaves the least where the most is taken away. Nothing is below zero.
func (s spread) minus(o spread) spread {
	zero := exactly(0, 1)
	return spread{
		s.low.minus(o.high).atLeast(zero),
		s.plan.minus(o.plan).atLeast(zero),
		s.high.minus(o.low).atLeast(zero),
	}
}
func (s spread) times(a exact) spread {
	return spread{s.low.times(a), s.plan.times(a), s.high.times(a)}
}
func (s spread) over(a exact) spread { return spread{s.low.over(a), s.plan.over(a), s.high.over(a)} }
func (s spread) taken(n int64) spread {
	return s.times(exactly(n, 1))
}

// typed is a quantity as text and as the count that the text stands for.
type typed struct {
	text  string
	value exact
}

// A job of the model. A nil pointer is a field left out.
type (
	modelJob struct {
		materials []modelMaterial
		pots      []modelPot
		mixes     []modelMix
		tasks     []modelTask
		onHand    map[string]typed
		offers    []modelOffer
	}
	modelMaterial struct {
		id     string
		settle *typed
	}
	modelPot struct {
		id               string
		cells            int64
		holds, low, high *typed
	}
	modelMix struct {
		id            string
		parts         []modelPart
		blend, settle *typed
	}
	modelPart struct {
		of     string
		amount typed
	}
	modelOffer struct {
		material    string
		bulk        bool
		size, opens *typed
		cents       *int64
	}
	modelTask struct {
		kind                 string
		filling              string // "" when only soil goes back
		isMix                bool
		settle, blend, spare *typed

		lines []modelLine // fill

		ground modelGround // amend, cover
		layer  *typed
		stems  int64
		clear  typed

		share, into, over *typed // amend; share backfill too
		holes             int64
		width, depth      typed
		ball              modelBall
		above             *typed
		soil              string
	}
	modelLine struct {
		count, cells int64
		form         string // size, holds, box, straight, taper
		class        string
		sides        []typed // holds; the box's three; across, height; top, bottom, height
		square       bool
		belowRim     *typed
		ball         *modelBall
	}
	modelBall struct {
		class          string
		volume         *typed
		across, height typed
	}
	modelGround struct {
		shape      string
		asObject   bool
		sides      []typed
		gaps       []typed // of a strip, whose runs are sides
		width      typed
		corners    *int64
		edge       string
		points     [][2]typed
		count      int64
		plus, less []modelGround
	}
)

// area is what the ground covers: so many of the shape, and what is added, less
// what is left out.
func (g *modelGround) area() exact {
	sum := g.one().taken(g.count)
	for i := range g.plus {
		sum = sum.plus(g.plus[i].area())
	}
	for i := range g.less {
		sum = sum.minus(g.less[i].area())
	}
	return sum
}

func (g *modelGround) one() exact {
	side := func(i int) exact { return g.sides[i].value }
	switch g.shape {
	case "area":
		return side(0)
	case "rectangle":
		return side(0).times(side(1))
	case "circle":
		return disc(side(0), side(0))
	case "ellipse":
		return disc(side(0), side(1))
	case "ring":
		return disc(side(0), side(0)).minus(disc(side(1), side(1)))
	case "triangle":
		if len(g.sides) == 2 {
			return side(0).times(side(1)).over(exactly(2, 1))
		}
		return heron(side(0), side(1), side(2))
	case "strip":
		return g.strip()
	}
	return g.polygon()
}

func heron(a, b, c exact) exact {
	s := a.plus(b).plus(c).over(exactly(2, 1))
	return s.times(s.minus(a)).times(s.minus(b)).times(s.minus(c)).root()
}

// strip counts the square at every corner once: runs measured along the outer
// edge have it twice, along the inner edge never.
func (g *modelGround) strip() exact {
	run := exactly(0, 1)
	for _, r := range g.sides {
		run = run.plus(r.value)
	}
	for _, gap := range g.gaps {
		run = run.minus(gap.value)
	}
	bends := int64(len(g.sides)) - 1
	if g.corners != nil {
		bends = *g.corners
	}
	squares := g.width.value.times(g.width.value).taken(bends)
	area := run.times(g.width.value)
	switch g.edge {
	case "outer":
		return area.minus(squares)
	case "inner":
		return area.plus(squares)
	}
	return area
}

// polygon is the shoelace rule; the outline may go round either way.
func (g *modelGround) polygon() exact {
	twice := exactly(0, 1)
	for i, p := range g.points {
		q := g.points[(i+1)%len(g.points)]
		twice = twice.plus(p[0].value.times(q[1].value)).minus(q[0].value.times(p[1].value))
	}
	return exact{twice.rat.Abs(twice.rat), false}.over(exactly(2, 1))
}

// catalogue is what the model reads of mix/catalog/catalog.json, by itself.
type catalogue struct {
	pots   map[string]modelPot
	mixes  map[string]modelMix
	settle map[string]exact
	swell  map[string]spread
	common map[string]exact // allowances
}

type catalogueRows struct {
	Allowances []struct{ ID, Share string }
	Containers []struct {
		ID, Low, Fill, High string
		Cells               int64
	}
	Materials []struct{ ID, Settle string }
	Mixes     []struct {
		ID    string
		Parts map[string]json.Number
	}
	Soils []struct {
		ID, Swell string
		Low       string `json:"swell_low"`
		High      string `json:"swell_high"`
	}
}

var trade = sync.OnceValue(func() *catalogue {
	data, err := os.ReadFile("catalog/catalog.json")
	if err != nil {
		panic(err)
	}
	var rows catalogueRows
	if err := json.Unmarshal(data, &rows); err != nil {
		panic(err)
	}
	return rows.read()
})

func (rows *catalogueRows) read() *catalogue {
	c := &catalogue{map[string]modelPot{}, map[string]modelMix{}, map[string]exact{}, map[string]spread{},
		map[string]exact{}}
	for _, r := range rows.Allowances {
		c.common[r.ID] = percent(r.Share)
	}
	for _, r := range rows.Containers {
		c.pots[r.ID] = modelPot{r.ID, max(1, r.Cells), row(r.Fill), row(r.Low), row(r.High)}
	}
	for _, r := range rows.Materials {
		if r.Settle != "" {
			c.settle[r.ID] = percent(r.Settle)
		}
	}
	for _, r := range rows.Mixes {
		m := modelMix{id: r.ID}
		for _, of := range slices.Sorted(maps.Keys(r.Parts)) {
			m.parts = append(m.parts, modelPart{of, typed{value: decimal(r.Parts[of].String())}})
		}
		c.mixes[r.ID] = m
	}
	for _, r := range rows.Soils {
		c.swell[r.ID] = spread{percent(r.Low), percent(r.Swell), percent(r.High)}
	}
	return c
}

func percent(s string) exact { return decimal(strings.TrimSuffix(s, "%")).over(exactly(100, 1)) }

// row reads a volume of the catalogue's container rows.
func row(s string) *typed {
	number, unit, _ := strings.Cut(s, " ")
	size := map[string]exact{"cu in": decimal("16387.064"), "mL": exactly(1000, 1)}[unit]
	return &typed{s, decimal(number).times(size).whole(nanolitre)}
}

// The steps that quantities are rounded to when they are read.
var (
	nanolitre   = exactly(1, 1000)      // of a microlitre
	nanometre   = exactly(1, 1_000_000) // of a millimetre
	micrometre2 = exactly(1, 1_000_000) // of a square millimetre
)

// pot finds a container by its id, the job's own before the catalogue's.
func (j *modelJob) pot(id string) modelPot {
	for _, p := range j.pots {
		if p.id == id {
			return p
		}
	}
	return trade().pots[id]
}

func (p *modelPot) span() spread {
	s := certain(p.holds.value)
	if p.low != nil {
		s.low = p.low.value
	}
	if p.high != nil {
		s.high = p.high.value
	}
	return s
}

func (j *modelJob) mix(id string) (modelMix, bool) {
	for _, m := range j.mixes {
		if m.id == id {
			return m, true
		}
	}
	m, ok := trade().mixes[id]
	return m, ok
}

// volume is the whole ball.
func (j *modelJob) volume(b *modelBall) spread {
	switch {
	case b == nil:
		return certain(exactly(0, 1))
	case b.class != "":
		p := j.pot(b.class)
		return p.span()
	case b.volume != nil:
		return certain(b.volume.value)
	}
	return certain(disc(b.across.value, b.across.value).times(b.height.value))
}

// buried is what of the ball stands below grade: a measured one loses the
// height that stands out, another is taken to be as wide all the way up.
func (t *modelTask) buried(j *modelJob) spread {
	above := exactly(0, 1)
	if t.above != nil {
		above = t.above.value
	}
	if b := &t.ball; b.class == "" && b.volume == nil {
		return certain(disc(b.across.value, b.across.value).times(b.height.value.minus(above).atMost(t.depth.value)))
	}
	return j.volume(&t.ball).times(t.depth.value.over(t.depth.value.plus(above)))
}

// holds is the mix to the fill line of one pot or one cell.
func (l *modelLine) holds(j *modelJob) spread {
	side := func(i int) exact { return l.sides[i].value }
	rim := exactly(0, 1)
	if l.belowRim != nil {
		rim = l.belowRim.value
	}
	switch l.form {
	case "size":
		p := j.pot(l.class)
		return p.span()
	case "holds":
		return certain(side(0))
	case "box":
		return certain(side(0).times(side(1)).times(side(2).minus(rim)))
	case "straight":
		return certain(l.frustum(side(0), side(0), side(1).minus(rim)))
	}
	top, bottom, height := side(0), side(1), side(2)
	fill := height.minus(rim)
	width := bottom.plus(top.minus(bottom).times(fill).over(height))
	return certain(l.frustum(width, bottom, fill))
}

// frustum is a third of the height by the two ends and their geometric mean.
func (l *modelLine) frustum(top, bottom, height exact) exact {
	ends := top.times(top).plus(top.times(bottom)).plus(bottom.times(bottom))
	if l.square {
		return ends.times(height).over(exactly(3, 1))
	}
	return pi().times(ends).times(height).over(exactly(12, 1))
}

func (l *modelLine) net(j *modelJob) spread {
	return l.holds(j).minus(j.volume(l.ball)).taken(l.of(j)).taken(l.count)
}

// of is how many cells one of the line has.
func (l *modelLine) of(j *modelJob) int64 {
	if l.form == "size" {
		return max(1, j.pot(l.class).cells)
	}
	return max(1, l.cells)
}

// deep is the layer of an amended bed, as given or by the share of the bed.
func (t *modelTask) deep() exact {
	switch {
	case t.layer != nil:
		return t.layer.value
	case t.into != nil:
		return t.share.value.times(t.into.value)
	}
	return t.over.value.times(t.share.value).over(t.share.value.rest())
}

// bedShare is the material's share of the finished bed.
func (t *modelTask) bedShare() exact {
	if t.into != nil {
		return t.deep().over(t.into.value)
	}
	return t.deep().over(t.deep().plus(t.over.value))
}

func (t *modelTask) dug() exact {
	return disc(t.width.value, t.width.value).times(t.depth.value).taken(t.holes)
}

// back is what goes back round the balls, soil and material.
func (t *modelTask) back(j *modelJob) spread {
	return certain(t.dug()).minus(t.buried(j).taken(t.holes))
}

func (t *modelTask) materialShare() exact {
	if t.share == nil {
		return exactly(0, 1)
	}
	return t.share.value
}

// leftOver is the soil that does not go back, loose.
func (t *modelTask) leftOver(j *modelJob) spread {
	soil := t.soil
	if soil == "" {
		soil = "clay"
	}
	s := certain(t.dug()).minus(t.back(j).times(t.materialShare().rest()))
	swell := trade().swell[soil]
	one := exactly(1, 1)
	return spread{s.low.times(one.plus(swell.low)), s.plan.times(one.plus(swell.plan)),
		s.high.times(one.plus(swell.high))}
}

// net is what the task's material takes up in place.
func (t *modelTask) net(j *modelJob) spread {
	sum := certain(exactly(0, 1))
	switch t.kind {
	case "fill":
		for i := range t.lines {
			sum = sum.plus(t.lines[i].net(j))
		}
	case "amend":
		sum = certain(t.ground.area().times(t.deep()))
	case "cover":
		sum = certain(t.ground.area().minus(t.bare()).times(t.layer.value))
	case "backfill":
		sum = t.back(j).times(t.materialShare())
	}
	return sum
}

// bare is kept clear round the stems. Without stems no pi comes in.
func (t *modelTask) bare() exact {
	if t.stems == 0 {
		return exactly(0, 1)
	}
	return pi().times(t.clear.value).times(t.clear.value).taken(t.stems)
}

// settles is the share lost in place: a layer's is zero unless given.
func (t *modelTask) settles(j *modelJob) exact {
	if t.settle != nil {
		return t.settle.value
	}
	if t.kind == "amend" || t.kind == "cover" {
		return exactly(0, 1)
	}
	if t.isMix {
		if m, _ := j.mix(t.filling); m.settle != nil {
			return m.settle.value
		}
		return trade().common["settle-pot"]
	}
	for _, m := range j.materials {
		if m.id == t.filling && m.settle != nil {
			return m.settle.value
		} else if m.id == t.filling {
			return trade().common["settle-pot"] // the job's own row stands in for the catalogue's
		}
	}
	if s, ok := trade().settle[t.filling]; ok {
		return s
	}
	return trade().common["settle-pot"]
}

func (m *modelMix) loss() exact {
	switch {
	case m.blend != nil:
		return m.blend.value
	case len(m.parts) > 1:
		return trade().common["blend-loss"]
	}
	return exactly(0, 1)
}

// losses is the share lost in mixing.
func (t *modelTask) losses(j *modelJob) exact {
	if t.blend != nil {
		return t.blend.value
	}
	if m, ok := j.mix(t.filling); ok && t.isMix {
		return m.loss()
	}
	return exactly(0, 1)
}

func (t *modelTask) spares() exact {
	if t.spare != nil {
		return t.spare.value
	}
	return exactly(0, 1)
}

// loose is what leaves the shovel, summed over the task's own parts.
func (t *modelTask) loose(j *modelJob) spread {
	return t.net(j).times(t.grows(j))
}

// grows is how many times the net volume leaves the shovel.
func (t *modelTask) grows(j *modelJob) exact {
	return exactly(1, 1).plus(t.spares()).over(t.settles(j).rest()).over(t.losses(j).rest())
}

// split adds volume of a mix or material to needs. A mix inside a mix is made
// first, and loses its own share then.
func (j *modelJob) split(needs map[string]spread, of string, volume spread) {
	m, ok := j.mix(of)
	if !ok {
		if had, ok := needs[of]; ok {
			volume = volume.plus(had)
		}
		needs[of] = volume
		return
	}
	whole := exactly(0, 1)
	for _, p := range m.parts {
		whole = whole.plus(p.amount.value)
	}
	for _, p := range m.parts {
		part := volume.times(p.amount.value).over(whole)
		if inner, ok := j.mix(p.of); ok {
			part = part.over(inner.loss().rest())
		}
		j.split(needs, p.of, part)
	}
}

// takes is what every material takes over all tasks.
func (j *modelJob) takes() map[string]spread {
	needs := map[string]spread{}
	for i := range j.tasks {
		if t := &j.tasks[i]; t.filling != "" {
			j.split(needs, t.filling, t.loose(j))
		}
	}
	return needs
}

// buy is what is taken less what is there already.
func (j *modelJob) buy(material string, takes spread) spread {
	if have, ok := j.onHand[material]; ok {
		return takes.minus(certain(have.value))
	}
	return takes
}

// lines counts what is rounded on the way to a need.
func (j *modelJob) lines() int64 {
	n := int64(len(j.tasks))
	for i := range j.tasks {
		n += int64(len(j.tasks[i].lines))
	}
	return n
}

// onesOf counts the pots and holes of a task. The program keeps the volume of one
// as a whole count of nanolitres, which rounds it, and its ball, before they are
// taken so many times.
func (t *modelTask) onesOf(j *modelJob) exact {
	n := t.holes
	for i := range t.lines {
		n += t.lines[i].count * t.lines[i].of(j)
	}
	return exactly(n, 1)
}

// rounding is the most that whole nanolitres in each pot and hole come to in a
// need: half of one for the pot and half for its ball, grown by the allowances,
// and again where a mix is part of a mix.
func (j *modelJob) rounding() exact {
	sum, nested := exactly(0, 1), exactly(1, 1)
	for i := range j.mixes {
		nested = nested.over(j.mixes[i].loss().rest())
	}
	for i := range j.tasks {
		sum = sum.plus(j.tasks[i].onesOf(j).times(j.tasks[i].grows(j)))
	}
	return sum.times(nested).over(trade().common["blend-loss"].rest())
}

// packs is the least count that covers need but for a millilitre.
func packs(need, size exact) int64 {
	return max(0, need.minus(exactly(1000, 1)).over(size).ceil())
}

// TestModelKnowsTheTrade holds the model against figures worked by hand, so
// that a slip in it is not taken for one of the program.
func TestModelKnowsTheTrade(t *testing.T) {
	ft := func(n int64) exact { return exactly(n*3048, 10) }
	foot := decimal("28316846.592") // microlitres
	bed := modelGround{shape: "rectangle", count: 1, sides: []typed{{value: ft(60)}, {value: ft(4)}}}
	if got, want := bed.area().times(ft(1)).over(foot), exactly(240, 1); got.rat.Cmp(want.rat) != 0 {
		t.Errorf("60 ft x 4 ft x 1 ft is %v cu ft, want 240", got.rat)
	}
	right := modelGround{shape: "triangle", count: 2, sides: []typed{{value: ft(3)}, {value: ft(4)}, {value: ft(5)}}}
	if got := right.area().over(ft(1)).over(ft(1)).float(); got != 12 {
		t.Errorf("two triangles of 3, 4, 5 ft are %v sq ft, want 12", got)
	}
	if got := packs(foot.taken(189), foot); got != 189 {
		t.Errorf("189 cu ft are %d bags of 1 cu ft", got)
	}
	if got := exactly(-5, 2).whole(exactly(1, 1)); got.rat.Cmp(big.NewRat(-3, 1)) != 0 {
		t.Errorf("-2 1/2 rounds to %v, want -3", got.rat)
	}
	// facts of the trade: 100 L net at 10 % and 10 % needs 123.46 L.
	task := modelTask{kind: "fill", filling: "rooting", isMix: true,
		lines: []modelLine{{count: 1, form: "holds", sides: []typed{{value: exactly(100_000_000, 1)}}}}}
	if got := task.loose(&modelJob{}).plan.over(exactly(1_000_000, 1)).rat.FloatString(2); got != "123.46" {
		t.Errorf("100 L net takes %s L, want 123.46", got)
	}
}
