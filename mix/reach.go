package mix

import (
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Reach is how far what is on hand goes in one task: the other way round of a
// plan.
type Reach struct {
	Title   string
	Filling string // the mix or the material
	Printer lang.Printer

	Loose   units.Volume // as much as there is for
	Net     units.Volume // in place, after the task's allowances
	Limit   *Material    // runs out first
	Left    []Portion    // of every material, when it does
	Pots    []ReachPot   // a fill: each line were it alone
	Area    units.Area   // of a layer
	Depth   units.Length // how deep over the whole of it, as spread
	OneMore []OneMore    // what one more pack of each material would add
}

// ReachPot is how many of one container line's containers are filled, were
// nothing else filled.
type ReachPot struct {
	Label string
	Count int64 // for the planned size; trays count whole
	Range [2]int64
}

// CountText writes the count, and where the container's size is not certain the
// counts for its largest and its smallest: "99 (68 to 113)".
func (p *ReachPot) CountText() string { return countText(p.Count, p.Range) }

// OneMore is one more pack of a material, and what it would add of the mix.
type OneMore struct {
	Material *Material
	Pack     Size
	Adds     units.Volume // loose, of the mix; nothing when something else runs out first
}

// Reach works out, task by task and each as if it were the only one, how far
// the job's on-hand materials go: counts and layers of the tasks are left
// aside. The error carries every problem; see [Problems].
func (j *Job) Reach() ([]Reach, error) {
	c := &checker{}
	j = j.atYard(c)
	w := j.work(c)
	if len(j.OnHand) == 0 {
		c.problemAt("on_hand", "field.missing", `say what there is, such as {"peat": "7 cu ft"}`)
	}
	if err := c.err(); err != nil {
		return nil, err
	}
	var out []Reach
	for i := range w.tasks {
		if w.tasks[i].in != nil && w.tasks[i].holes == nil {
			out = append(out, w.reach(&w.tasks[i]))
		}
	}
	return out, nil
}

// reach works one task out.
func (w *work) reach(t *worked) Reach {
	m := lang.Printer{Measure: w.job.Measure, Language: w.job.Language}
	r := Reach{Title: t.title(m), Filling: t.in.mix.Name, Printer: m}
	var index int
	r.Loose, index = w.most(t.in, w.hand)
	r.Limit = w.book.materials[index]
	for i, left := range w.leftOf(t.in, r.Loose, w.hand) {
		if t.in.holdsIndex(i) {
			r.Left = append(r.Left, Portion{w.book.materials[i], Exactly(left)})
		}
	}
	r.Net = t.inPlace(r.Loose)
	for i := range t.pots {
		r.Pots = append(r.Pots, t.pots[i].reach(r.Net, m))
	}
	if t.bed != nil {
		r.Area = t.bed.area
	}
	if t.cover != nil {
		r.Area = t.cover.area
	}
	if r.Area > 0 {
		r.Depth = deep(r.Net, r.Area)
	}
	r.OneMore = w.oneMore(t.in, r.Loose)
	return r
}

// most returns how much of the blend, loose, the stock makes, rounded down, and
// the material that runs out first.
func (w *work) most(in *blend, hand []units.Volume) (v units.Volume, first int) {
	const trial = 1_000_000 * units.Litre // large, so that its parts are nearly exact
	takes := make([]Span, len(hand))
	in.spread(Exactly(trial), takes)
	v, first = -1, -1
	for i, t := range takes {
		if t.Plan == 0 {
			continue
		}
		if first < 0 {
			first = i
		}
		if can, ok := hand[i].MulDiv(int64(trial), int64(t.Plan)); ok && (v < 0 || can < v) {
			v, first = can, i
		}
	}
	if v < 0 { // more of everything than can be worked out
		return units.MaxVolume, first
	}
	for v > 0 && w.leftOf(in, v, hand) == nil { // rounding took a nanolitre too many
		v--
	}
	return v, first
}

// leftOf is what of the stock is left when v of the blend is made of it; nil
// when it does not suffice.
func (w *work) leftOf(in *blend, v units.Volume, hand []units.Volume) []units.Volume {
	takes := make([]Span, len(hand))
	in.spread(Exactly(v), takes)
	left := make([]units.Volume, len(hand))
	for i := range hand {
		if left[i] = hand[i] - takes[i].Plan; left[i] < 0 {
			return nil
		}
	}
	return left
}

// holdsIndex reports whether the blend takes the material with the index.
func (b *blend) holdsIndex(index int) bool {
	for _, in := range b.of {
		if in.blend != nil && in.blend.holdsIndex(index) || in.blend == nil && in.material == index {
			return true
		}
	}
	return false
}

// inPlace is what loose comes to in place: the allowances backwards, each
// rounded to the nanolitre.
func (t *worked) inPlace(loose units.Volume) units.Volume {
	v, _ := loose.MulDiv(t.spare.Share.Den(), t.spare.Share.Den()+t.spare.Share.Num())
	for _, a := range []Allowance{t.blend, t.settle} {
		n, d := without(a.Share)
		v, _ = v.MulDiv(d, n)
	}
	return v
}

// reach counts the containers of one line that net fills: whole pots and whole
// trays.
func (p *pot) reach(net units.Volume, m lang.Printer) ReachPot {
	each, _ := p.each.minus(p.ball)
	one, _ := each.times(p.cells)
	count := func(v units.Volume) int64 {
		if v <= Slack {
			return 0
		}
		return int64((net + Slack) / v)
	}
	return ReachPot{p.one(m), count(one.Plan), [2]int64{count(one.High), count(one.Low)}}
}

// deep is how deep v lies over a, rounded down to the nanometre.
func deep(v units.Volume, a units.Area) units.Length {
	d, ok := v.MulDiv(1_000_000_000, int64(a))
	if !ok {
		return units.MaxLength
	}
	return units.Length(d)
}

// oneMore works out one more pack of each material: the job's first offer of
// it, else the first bag or bale it commonly comes in.
func (w *work) oneMore(in *blend, now units.Volume) (more []OneMore) {
	for i, mat := range w.book.materials {
		if !in.holdsIndex(i) {
			continue
		}
		size, yield := w.onePack(i)
		if size.Volume == 0 {
			continue
		}
		hand := append([]units.Volume(nil), w.hand...)
		hand[i] = min(hand[i]+yield, units.MaxVolume)
		v, _ := w.most(in, hand)
		more = append(more, OneMore{mat, size, v - now})
	}
	return more
}

// onePack is the pack to count with, and what it yields at the least.
func (w *work) onePack(index int) (Size, units.Volume) {
	mat := w.book.materials[index]
	for i := range w.job.Offers {
		if o := &w.job.Offers[i]; o.Material == mat.ID {
			each, _ := o.yield(mat)
			return o.Size(), each.Low
		}
	}
	switch {
	case len(mat.Bales) > 0:
		return mat.Bales[0], mat.opened(mat.Bales[0].Volume).Low
	case len(mat.Packs) > 0:
		return mat.Packs[0], mat.Packs[0].Volume
	}
	return Size{}, 0
}
