package mix

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// Reach is how far the stock on hand goes in one task. A plan starts from the work and
// works out the materials; a Reach starts from the materials. Volumes are in
// nanolitres, rounded down, so that the stock suffices for them.
type Reach struct {
	Title   string
	Filling string       // the name of the mix or the material
	Printer lang.Printer // for texts in the job's measure and language

	Loose units.Volume      // how much of Filling the stock makes
	Net   units.Volume      // what Loose comes to in place, after the task's allowances
	Limit *catalog.Material // the material that runs out first
	Left  []Portion         // what is left of each material then
	// Unused is the stock of materials that Filling has none of.
	Unused []Portion
	task.Reached
	OneMore []OneMore // what one more pack of each material would add
}

// OneMore is one more pack of a material, and how much more of the mix it makes.
type OneMore struct {
	Material *catalog.Material
	Pack     catalog.Size
	Adds     units.Volume // of the mix, loose; 0 when another material runs out first
}

// Reach works out how far the job's stock goes in each task, as if that task were the
// only one. It ignores how many containers a task has and how deep its layer is, since
// these are what it answers. Tasks where nothing goes in, or where the question makes
// no sense, are left out. The error is [Problems]. A nil job is the zero Job.
func (j *Job) Reach() ([]Reach, error) {
	if j == nil {
		j = &Job{}
	}
	r := &doc.Reader{}
	j = j.Clone().atYard(r)
	e := j.evaluate(r)
	if len(j.OnHand) == 0 {
		r.ProblemAt("on_hand", doc.FieldMissing, `say what you have, such as {"peat": "7 cu ft"}`)
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

// reach works out one task; ok is false for a kind where the question makes no sense.
func (e *evaluated) reach(d *task.Evaluated) (reach Reach, ok bool) {
	p := lang.Printer{Measure: e.job.Measure, Language: e.job.Language}
	b := d.In.Blend
	hand := e.onHand()
	loose, first := e.most(b, hand)
	net := d.In.InPlace(loose)
	reached := d.Result.Reach(net, func(net units.Range) bool { return e.suffices(d, net) }, p)
	if reached == nil {
		return reach, false
	}
	reach = Reach{
		Title: d.Title(p), Filling: d.Filling(), Printer: p,
		Loose: loose, Net: net, Limit: e.material(first), Reached: *reached,
	}
	for i, left := range e.leftOf(b, loose, hand) {
		if b.Has(i) {
			reach.Left = append(reach.Left, Portion{e.material(i), units.Exactly(left)})
		}
	}
	for i, v := range e.hand {
		if v.Plan > 0 && !b.Has(i) {
			reach.Unused = append(reach.Unused, Portion{e.material(i), v})
		}
	}
	reach.OneMore = e.oneMore(b, loose)
	return reach, true
}

// onHand is the stock of each material, rounded.
func (e *evaluated) onHand() []units.Volume {
	hand := make([]units.Volume, len(e.hand))
	for i := range hand {
		hand[i] = e.hand[i].Plan
	}
	return hand
}

// suffices reports whether the stock makes net in place of what goes into a task. It
// asks the arithmetic of the plan, so that rounding decides nothing.
func (e *evaluated) suffices(d *task.Evaluated, net units.Range) bool {
	takes := make([]units.Range, len(e.hand))
	if !d.Takes(net, takes) {
		return false
	}
	for i, t := range takes {
		if t.FixedPlan().Over(e.hand[i].FixedPlan()) {
			return false
		}
	}
	return true
}

// most returns how much of the blend, loose, the stock makes, rounded down to the
// nanolitre, and the material that runs out first. It works out what a large trial
// volume takes, scales that to the stock and then corrects for rounding. So it uses
// the arithmetic of a plan, nested mixes with their losses included, and needs none
// for the way back.
func (e *evaluated) most(b *catalog.Blend, hand []units.Volume) (v units.Volume, first int) {
	const trial = 1_000_000 * units.Litre // large, so that rounding its parts hardly matters
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
	if v < 0 { // the stock of everything goes past the bound
		return units.MaxVolume, first
	}
	for v > 0 && e.leftOf(b, v, hand) == nil { // rounding has gone a few nanolitres over
		v--
	}
	return v, first
}

// leftOf is what is left of the stock when v of the blend is made from it, or nil when
// the stock does not suffice.
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

// oneMore works out what one more pack of each material would add: a pack of the job's
// first offer of it, or else the first bale or bag that it commonly comes in.
func (e *evaluated) oneMore(b *catalog.Blend, now units.Volume) (more []OneMore) {
	for i := range e.scope.Len() {
		if !b.Has(i) {
			continue
		}
		size, yield := e.onePack(i)
		if size.Volume == 0 {
			continue
		}
		hand := e.onHand()
		hand[i] = min(hand[i]+yield, units.MaxVolume)
		v, _ := e.most(b, hand)
		more = append(more, OneMore{e.material(i), size, v - now})
	}
	return more
}

// onePack is the pack to count with, and the least that it yields.
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
		return m.Bales[0], m.Opened(m.Bales[0]).Low
	case len(m.Packs) > 0:
		return m.Packs[0], m.Packs[0].Volume
	}
	return catalog.Size{}, 0
}
