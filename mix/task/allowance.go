package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// The codes of allowances. They are the same in every language, so that a program
// can find one.
const (
	Settle    = "settle"     // what the material settles by once it is in place
	BlendLoss = "blend-loss" // what mixing loses, as fine parts fill the gaps between coarse ones
	Spare     = "spare"      // what the grower wants on top
)

// Allowance is one step from the volume in place to the loose volume that is bought:
// a share, what it adds, and where the share comes from.
type Allowance struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Code   string       // Settle, BlendLoss or Spare
	Name   message.Text // the same for people: "settle", "blend loss", "spare"
	Share  units.Ratio  // of the loose volume for a loss, of the volume before it for Spare
	Adds   units.Volume // in nanolitres, to the planned volume; 0 until the task is measured
	Source catalog.Source
	// Common is the catalogue's allowance, with its range, where neither the task
	// nor the mix sets another; otherwise nil.
	Common *catalog.Common
}

// In is what goes into a task, with the allowances that lead from the volume in
// place to the loose volume.
type In struct {
	_ [0]func() // makes the type not comparable, which keeps comparing code out of the download

	Task                     *Task
	Blend                    *catalog.Blend // nil when nothing goes in
	Settle, BlendLoss, Spare Allowance      // zero when nothing goes in
}

// resolve finds what goes into a task and which shares apply: the task's own before
// the mix's, and the mix's before the catalogue's. A layer is measured loose, as it
// is spread, so it loses nothing unless the task says so.
//
// It leaves every Adds at zero. What an allowance adds depends on the volume of the
// work, and the work needs its allowances before it is measured: a bed's rise, for
// example, depends on how far the layer settles. [In.loose] fills Adds in.
func (in *In) resolve(r *doc.Reader, s *catalog.Scope, t *Task) {
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
	in.BlendLoss = Allowance{Code: BlendLoss, Name: "blend loss"}
	if t.BlendLoss != nil {
		in.BlendLoss.Share, in.BlendLoss.Source = *t.BlendLoss, catalog.FromJob
	} else {
		in.BlendLoss.Share, in.BlendLoss.Source, in.BlendLoss.Common = in.Blend.Loss, in.Blend.From, in.Blend.Common
	}
	in.Spare = Allowance{Code: Spare, Name: "spare", Share: t.Spare, Source: catalog.FromJob}
}

// Range returns the least and the most that Share may be. uncertain is false for a
// share that the job sets, which counts as it is given.
func (a *Allowance) Range() (low, high units.Ratio, uncertain bool) {
	if a.Common == nil {
		return a.Share, a.Share, false
	}
	return a.Common.Low, a.Common.High, true
}

// ShareText writes the share for people and, where it is uncertain, its range:
// "10% (4.76% to 35.5%)".
func (a *Allowance) ShareText(p lang.Printer) string {
	low, high, uncertain := a.Range()
	if !uncertain {
		return p.Share(a.Share)
	}
	return p.Print("{0} ({1} to {2})", p.Share(a.Share), p.Share(low), p.Share(high))
}

// take sets the share to the catalogue's common one.
func (a *Allowance) take(common *catalog.Common) {
	a.Share, a.Source, a.Common = common.Share, common.Source, common
}

// Allowances lists the three in the order in which they are applied, or nil where
// nothing goes in. The list is the caller's to change: it holds a copy of every row
// of the catalogue, which all plans share.
func (in *In) Allowances() []Allowance {
	if in.Blend == nil {
		return nil
	}
	list := append(make([]Allowance, 0, 3), in.Settle, in.BlendLoss, in.Spare)
	for i := range list {
		if shared := list[i].Common; shared != nil {
			own := *shared
			list[i].Common = &own
		}
	}
	return list
}

// loose works out the loose volume from the net volume in place: / (1 - settle)
// / (1 - blend loss) x (1 + spare). It rounds to the nanolitre at each step and not
// once at the end, so that what the steps add, which it keeps in Adds, comes to the
// difference exactly. ok is false past [units.MaxVolume].
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

// InPlace returns what a loose volume comes to in place: the allowances backwards,
// rounded to the nanolitre at each step.
func (in *In) InPlace(loose units.Volume) units.Volume {
	spare := in.Spare.Share
	v, _ := loose.MulDiv(spare.Den(), spare.Den()+spare.Num())
	for _, a := range []Allowance{in.BlendLoss, in.Settle} {
		n, d := catalog.Without(a.Share)
		v, _ = v.MulDiv(d, n)
	}
	return v
}
