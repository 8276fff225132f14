package mix

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// Reach is how far what is on hand goes in one task: the other way round of a
// plan.
type Reach struct {
	Title   string
	Filling string // the mix or the material
	Printer lang.Printer

	Loose units.Volume      // as much as there is for
	Net   units.Volume      // in place, after the task's allowances
	Limit *catalog.Material // runs out first
	Left  []Portion         // of every material, when it does
	task.Reached
	OneMore []OneMore // what one more pack of each material would add
}

// OneMore is one more pack of a material, and what it would add of the mix.
type OneMore struct {
	Material *catalog.Material
	Pack     catalog.Size
	Adds     units.Volume // loose, of the mix; nothing when something else runs out first
}

// Reach works out, task by task and each as if it were the only one, how far
// the job's on-hand materials go: counts and layers of the tasks are left
// aside. The error is [Problems]. A nil job has no tasks.
func (j *Job) Reach() ([]Reach, error) {
	if j == nil {
		j = &Job{}
	}
	r := &doc.Reader{}
	j = j.Clone().atYard(r)
	e := j.evaluate(r)
	if len(j.OnHand) == 0 {
		r.ProblemAt("on_hand", doc.FieldMissing, `say what there is, such as {"peat": "7 cu ft"}`)
	}
	if err := r.Err(); err != nil {
		return nil, err
	}
	var out []Reach
	for i := range e.tasks {
		if d := &e.tasks[i]; d.In.Blend != nil {
			if reach, ok := e.reach(d); ok {
				out = append(out, reach)
			}
		}
	}
	return out, nil
}

// reach works one task out; ok is false for a kind that it makes no sense for.
func (e *evaluated) reach(d *task.Evaluated) (reach Reach, ok bool) {
	p := lang.Printer{Measure: e.job.Measure, Language: e.job.Language}
	b := d.In.Blend
	loose, first := e.most(b, e.hand)
	net := d.In.InPlace(loose)
	reached := d.Result.Reach(net, p)
	if reached == nil {
		return reach, false
	}
	reach = Reach{Title: d.Title(p), Filling: d.Filling(), Printer: p, Loose: loose, Net: net, Limit: e.material(first), Reached: *reached}
	for i, left := range e.leftOf(b, loose, e.hand) {
		if b.Has(i) {
			reach.Left = append(reach.Left, Portion{e.material(i), units.Exactly(left)})
		}
	}
	reach.OneMore = e.oneMore(b, loose)
	return reach, true
}

// most returns how much of the blend, loose, the stock makes, rounded down, and
// the material that runs out first.
func (e *evaluated) most(b *catalog.Blend, hand []units.Volume) (v units.Volume, first int) {
	const trial = 1_000_000 * units.Litre // large, so that its parts are nearly exact
	takes := make([]units.Range, len(hand))
	b.Spread(units.Exactly(trial), takes)
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
	for v > 0 && e.leftOf(b, v, hand) == nil { // rounding took a nanolitre too many
		v--
	}
	return v, first
}

// leftOf is what of the stock is left when v of the blend is made of it; nil
// when it does not suffice.
func (e *evaluated) leftOf(b *catalog.Blend, v units.Volume, hand []units.Volume) []units.Volume {
	takes := make([]units.Range, len(hand))
	b.Spread(units.Exactly(v), takes)
	left := make([]units.Volume, len(hand))
	for i := range hand {
		if left[i] = hand[i] - takes[i].Plan; left[i] < 0 {
			return nil
		}
	}
	return left
}

// oneMore works out one more pack of each material: the job's first offer of
// it, else the first bag or bale it commonly comes in.
func (e *evaluated) oneMore(b *catalog.Blend, now units.Volume) (more []OneMore) {
	for i := range e.scope.Len() {
		if !b.Has(i) {
			continue
		}
		size, yield := e.onePack(i)
		if size.Volume == 0 {
			continue
		}
		hand := append([]units.Volume(nil), e.hand...)
		hand[i] = min(hand[i]+yield, units.MaxVolume)
		v, _ := e.most(b, hand)
		more = append(more, OneMore{e.material(i), size, v - now})
	}
	return more
}

// onePack is the pack to count with, and what it yields at the least.
func (e *evaluated) onePack(index int) (catalog.Size, units.Volume) {
	m := e.scope.Material(index)
	for i := range e.terms.Offers {
		if o := &e.terms.Offers[i]; o.Material == m.ID {
			each, _ := o.Yield(m)
			return o.Size(), each.Low
		}
	}
	switch {
	case len(m.Bales) > 0:
		return m.Bales[0], m.Opened(m.Bales[0].Volume).Low
	case len(m.Packs) > 0:
		return m.Packs[0], m.Packs[0].Volume
	}
	return catalog.Size{}, 0
}
