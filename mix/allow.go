package mix

import (
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Allowance is one step from what stands in place to what is shovelled or
// bought: a share, what it adds, and where the share comes from.
type Allowance struct {
	Name   message.Text // "settle", "blend loss", "spare"
	Share  units.Ratio
	Adds   units.Volume // to the planned volume
	Source Source
}

// spareName is what is on top of what is lost.
const spareName message.Text = "spare"

// allowed is a task's way from net to loose.
type allowed struct {
	settle, blend, spare Allowance
	loose                Span
}

// allow works out the loose volume: net / (1 - settle) / (1 - blend loss),
// then x (1 + spare), rounded to the nanolitre at each step. ok is false past
// [units.MaxVolume].
func allow(net Span, settle, blend, spare Allowance) (a allowed, ok bool) {
	a = allowed{settle, blend, spare, net}
	step := func(one *Allowance, n, d int64) bool {
		grown, ok := a.loose.mulDiv(n, d)
		one.Adds, a.loose = grown.Plan-a.loose.Plan, grown
		return ok
	}
	n, d := without(settle.Share)
	if !step(&a.settle, n, d) {
		return a, false
	}
	if n, d = without(blend.Share); !step(&a.blend, n, d) {
		return a, false
	}
	return a, step(&a.spare, spare.Share.Den()+spare.Share.Num(), spare.Share.Den())
}

// allowances are the shares in use for a task, each from the nearest of the
// task, the mix and the catalogue. A layer is measured loose, as spread, so
// nothing is lost from it unless the task says so.
func (t *Task) allowances(b *book, in *blend) (settle, blend, spare Allowance) {
	settle = Allowance{Name: "settle", Source: asSpread}
	switch {
	case t.Settle != nil:
		settle.Share, settle.Source = *t.Settle, fromJob
	case t.Fill == nil && t.Backfill == nil:
	case in.mix.Settle != nil:
		settle.Share, settle.Source = *in.mix.Settle, in.settleFrom
	default:
		common := b.cat.allowed("settle-pot")
		settle.Share, settle.Source = common.Share, common.Source
	}
	blend = Allowance{Name: "blend loss", Share: in.loss, Source: in.from}
	if t.BlendLoss != nil {
		blend.Share, blend.Source = *t.BlendLoss, fromJob
	}
	return settle, blend, Allowance{Name: spareName, Share: t.Spare, Source: fromJob}
}
