package mix

import (
	"strings"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// The limits above which a caution applies.
const (
	// liftLimit is the most for one person under ideal conditions, 51 lb in
	// NIOSH 94-110.
	liftLimit = 23 * units.Kilogram
	// loadLimit is what is left for cargo in the placard's worked example in
	// 49 CFR 575.6(a)(5): 1400 lb less five people of 150 lb. A car or a small truck
	// may have no more than that.
	loadLimit = 650 * units.Pound
)

// The cautions about a whole job. Those about one kind of work are in its file in
// package task.
var (
	authority = task.Caution{Code: "authority", Place: 0,
		Text: "Product labels, local codes and licensed practice come before any figure here."}
	vehicle = task.Caution{Code: "vehicle", Place: 110,
		Text:   "The door placard's load, less the people, is the limit, and so are the axle and gross ratings; what fits in the bed is no guide. Cover the load.",
		Source: "49 CFR 571.110 and 575.6"}
	lifting = task.Caution{Code: "lifting", Place: 120, Source: "NIOSH 94-110"}
)

// cautions collects the cautions that apply, each once however many tasks have it, in
// the order of their places. First comes the one for every job, since it overrides
// the rest; then what is wrong with this job, which the reader can still change; and
// last what is true of all such work, which many readers know.
func (p *Plan) cautions() []task.Caution {
	list := []task.Caution{authority}
	if p.heavyLoad() {
		list = append(list, vehicle)
	}
	if packs := p.heavyPacks(); len(packs) > 0 {
		lift := lifting
		lift.Text = message.Of("More than 51 lb (23 kg), the most for one person under ideal conditions, may weigh: {0}. Share the lift, or split the pack.",
			strings.Join(packs, "; "))
		list = append(list, lift)
	}
	seen := map[string]bool{}
	for i := range p.e.tasks {
		for _, c := range p.e.tasks[i].Cautions(p.e.scope) {
			if !seen[c.Code] {
				seen[c.Code] = true
				list = append(list, c)
			}
		}
	}
	// A stable insertion sort: the list is short, and this is less code to download
	// than package sort.
	for i := range list {
		for k := i; k > 0 && list[k].Place < list[k-1].Place; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
	return list
}

// heavyPacks names the packs that may be too heavy to lift, each with what it may
// weigh as it is sold: those of the order, and for a need that the order does not
// cover the heaviest that it commonly comes in, since any may be bought. Bulk is not
// lifted in one piece.
func (p *Plan) heavyPacks() (packs []string) {
	add := func(o *yard.Offer, m *catalog.Material, loose units.Volume) {
		mass, _ := o.Mass(m, loose)
		if o.Bulk.Volume == 0 && mass[1] > liftLimit {
			packs = append(packs, p.Printer().Print("{0} of {1}, {2}", p.Language.Figure(o.Pack.String()),
				m.Name, p.Printer().MassRange(mass[0], mass[1])))
		}
	}
	for i := range p.Lines {
		add(p.Lines[i].Offer, p.Lines[i].Material, p.Lines[i].Each.Plan)
	}
	for i := range p.Needs {
		n := &p.Needs[i]
		if n.Buy.Plan == 0 || p.Ordered(n.Material) {
			continue
		}
		if pack, ok := n.HeaviestPack(); ok {
			loose, _ := pack.Yield(n.Material)
			add(&pack, n.Material, loose.Plan)
		}
	}
	return packs
}

// heavyLoad reports whether what is to be hauled may weigh more than loadLimit. A
// weight that is not known counts as too much.
func (p *Plan) heavyLoad() bool {
	var heaviest units.Mass
	for i := range p.Needs {
		n := &p.Needs[i]
		mass := n.Mass()[1]
		if n.Buy.Plan > 0 && mass == 0 {
			return true
		}
		heaviest = min(heaviest+mass, units.MaxMass)
	}
	return heaviest > loadLimit || p.Load.Mass[1] > loadLimit
}
