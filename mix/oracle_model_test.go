package mix_test

// The files oracle_*_test.go are a second model of a job, in fractions, from the rules
// alone: it shares no arithmetic, no parsing and no figure with the package. Lengths are
// millimetres, areas square millimetres, volumes microlitres, which are cubic
// millimetres, so that no step of it converts.

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
		form         string // size, holds, brim, box, straight, taper
		class        string
		sides        []typed // holds; brim, and its width where belowRim is given; the box's three; across, height; top, bottom, height
		tapers       bool    // of a brim with its width
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
	return certain(disc(b.across.rounded(), b.across.rounded()).times(b.height.rounded()))
}

// buried is what of the ball stands below grade: a measured one loses the
// height that stands out, another is taken to be as wide all the way up.
func (t *modelTask) buried(j *modelJob) spread {
	above := exactly(0, 1)
	if t.above != nil {
		above = t.above.rounded()
	}
	depth := t.depth.rounded()
	if b := &t.ball; b.class == "" && b.volume == nil {
		across := b.across.rounded()
		return certain(disc(across, across).times(b.height.rounded().minus(above).atMost(depth)))
	}
	return j.volume(&t.ball).times(depth.over(depth.plus(above)))
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
	case "brim":
		return l.brim(rim)
	case "box":
		return certain(side(0).times(side(1)).times(side(2).minus(rim)))
	case "straight":
		if l.square {
			return certain(side(0).times(side(0)).times(side(1).minus(rim)))
		}
		across := l.sides[0].rounded()
		return certain(l.frustum(across, across, l.sides[1].rounded().minus(rim.whole(nanometre))))
	}
	top, bottom, height := l.sides[0].rounded(), l.sides[1].rounded(), l.sides[2].rounded()
	fill := height.minus(rim.whole(nanometre))
	width := bottom.plus(top.minus(bottom).times(fill).over(height))
	return certain(l.frustum(width, bottom, fill))
}

// brim is the mix in a pot of which the volume to the brim is known: a usual share of
// it; less a slice as wide as the rim where the sides are straight; or between that and
// what stands in a cone or a pyramid of the same volume and rim, which is the whole one
// made smaller in every direction.
func (l *modelLine) brim(rim exact) spread {
	all := exact{l.sides[0].value.whole(nanolitre).rat, true} // rounded on the way, as what is round
	rim = rim.whole(nanometre)
	if l.belowRim == nil {
		return spread{all.times(exactly(85, 100)), all.times(exactly(94, 100)), all.times(exactly(96, 100))}
	}
	wide := l.sides[1].rounded()
	mouth := wide.times(wide)
	if !l.square {
		mouth = disc(wide, wide)
	}
	straight := all.minus(mouth.times(rim))
	if !l.tapers {
		return certain(straight)
	}
	height := all.times(exactly(3, 1)).over(mouth)
	smaller := height.minus(rim).over(height)
	pointed := all.times(smaller).times(smaller).times(smaller)
	return spread{straight, straight.plus(pointed).over(exactly(2, 1)), pointed}
}

// frustum is a third of the height by the two ends and their geometric mean.
func (l *modelLine) frustum(top, bottom, height exact) exact {
	ends := top.times(top).plus(top.times(bottom)).plus(bottom.times(bottom))
	if l.square {
		return exact{ends.times(height).over(exactly(3, 1)).rat, true} // in floating point too
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
	return disc(t.width.rounded(), t.width.rounded()).times(t.depth.rounded()).taken(t.holes)
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
	return pi().times(t.clear.rounded()).times(t.clear.rounded()).taken(t.stems)
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

// loose is what one pack gives.
func (o *modelOffer) loose() exact {
	if o.opens != nil {
		return o.opens.value
	}
	return o.size.value
}

// densities are those of a material dry and wet, in micrograms a microlitre. The
// job's own row stands in for the catalogue's, and has none.
func (j *modelJob) densities(material string) (dry, wet exact) {
	for _, m := range j.materials {
		if m.id == material {
			return exactly(0, 1), exactly(0, 1)
		}
	}
	d := trade().density[material]
	return d[0], d[1]
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
