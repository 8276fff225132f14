package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Codes of allowances, the same in every language.
const (
	Settle    = "settle"
	BlendLoss = "blend-loss"
	Spare     = "spare"
)

// Allowance is one step from what stands in place to what is shovelled or
// bought: a share, what it adds, and where the share comes from.
type Allowance struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Code   string       // Settle, BlendLoss or Spare
	Name   message.Text // the same for people: "settle", "blend loss", "spare"
	Share  units.Ratio
	Adds   units.Volume // to the planned volume
	Source catalog.Source
	// Common is the catalogue's allowance, with its range, where nobody has set
	// another; else nil.
	Common *catalog.Common
}

// In is what goes into a task, and the way from there to what is shovelled.
type In struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Task                     *Task
	Blend                    *catalog.Blend // nil when nothing goes in
	Settle, BlendLoss, Spare Allowance      // none when nothing goes in
}

// look looks up what goes into a task. The shares in use are each from the nearest
// of the task, the mix and the catalogue. A layer is measured loose, as spread, so
// nothing is lost from it unless the task says so.
func (in *In) look(r *doc.Reader, s *catalog.Scope, t *Task) {
	kind := t.Work.Kind()
	in.Task, in.Blend = t, s.Filling(r, t.Mix, t.Material, kind.Bare)
	if in.Blend == nil {
		return
	}
	in.Settle = Allowance{Code: Settle, Name: "settle", Source: catalog.AsSpread}
	switch {
	case t.Settle != nil:
		in.Settle.Share, in.Settle.Source = *t.Settle, catalog.FromJob
	case !kind.Settles:
	case in.Blend.Mix.Settle != nil:
		in.Settle.Share, in.Settle.Source = *in.Blend.Mix.Settle, in.Blend.SettleFrom
	default:
		in.Settle.take(s.Common("settle-pot"))
	}
	in.BlendLoss = Allowance{Code: BlendLoss, Name: "blend loss", Share: in.Blend.Loss, Source: in.Blend.From, Common: in.Blend.Common}
	if t.BlendLoss != nil {
		in.BlendLoss = Allowance{Code: BlendLoss, Name: "blend loss", Share: *t.BlendLoss, Source: catalog.FromJob}
	}
	in.Spare = Allowance{Code: Spare, Name: "spare", Share: t.Spare, Source: catalog.FromJob}
}

// take makes a the catalogue's common allowance.
func (a *Allowance) take(common *catalog.Common) {
	a.Share, a.Source, a.Common = common.Share, common.Source, common
}

// Allowances lists the three in the order in which they count; none where nothing
// goes in.
func (in *In) Allowances() []Allowance {
	if in.Blend == nil {
		return nil
	}
	list := append(make([]Allowance, 0, 3), in.Settle, in.BlendLoss, in.Spare)
	for i := range list {
		if shared := list[i].Common; shared != nil { // by every plan
			own := *shared
			list[i].Common = &own
		}
	}
	return list
}

// loose works out the loose volume: net / (1 - settle) / (1 - blend loss), then
// x (1 + spare), rounded to the nanolitre at each step, and what each step adds.
// ok is false past [units.MaxVolume].
func (in *In) loose(net units.Range) (loose units.Range, ok bool) {
	loose = net
	step := func(a *Allowance, n, d int64) bool {
		grown, ok := loose.MulDiv(n, d)
		a.Adds, loose = grown.Plan-loose.Plan, grown
		return ok
	}
	n, d := catalog.Without(in.Settle.Share)
	if !step(&in.Settle, n, d) {
		return loose, false
	}
	if n, d = catalog.Without(in.BlendLoss.Share); !step(&in.BlendLoss, n, d) {
		return loose, false
	}
	spare := in.Spare.Share
	return loose, step(&in.Spare, spare.Den()+spare.Num(), spare.Den())
}

// InPlace is what loose comes to in place: the allowances backwards, each
// rounded to the nanolitre.
func (in *In) InPlace(loose units.Volume) units.Volume {
	spare := in.Spare.Share
	v, _ := loose.MulDiv(spare.Den(), spare.Den()+spare.Num())
	for _, a := range []Allowance{in.BlendLoss, in.Settle} {
		n, d := catalog.Without(a.Share)
		v, _ = v.MulDiv(d, n)
	}
	return v
}
