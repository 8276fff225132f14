package mix

import (
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// Limits that decide whether a caution applies.
const (
	liftLimit = 23 * units.Kilogram // 51 lb under ideal conditions, NIOSH 94-110
	// loadLimit is what the placard's worked example leaves for cargo: 1400 lb
	// less five people of 150 lb, 49 CFR 575.6(a)(5).
	loadLimit = 650 * units.Pound
)

// Cautions about the whole of a job. Those about one kind of work are in its file
// in package task.
var (
	authority = task.Caution{Code: "authority", Place: 0,
		Text: "Product labels, local codes and licensed practice come before any figure here."}
	vehicle = task.Caution{Code: "vehicle", Place: 110,
		Text:   "The door placard's load, less the people, is the limit, and so are the axle and gross ratings; what fits in the bed is no guide. Cover the load.",
		Source: "49 CFR 571.110 and 575.6"}
	lifting = task.Caution{Code: "lifting", Place: 120,
		Text:   "A pack here may weigh more than 51 lb (23 kg), the most for one person under ideal conditions: share the lift, or split the pack.",
		Source: "NIOSH 94-110"}
)

// cautions collects those that apply, each once: first what goes for every job,
// then what is particular to this one, then what goes for all such work.
func (p *Plan) cautions() []task.Caution {
	list := []task.Caution{authority}
	if p.heavyLoad() {
		list = append(list, vehicle)
	}
	if p.heavyPack() {
		list = append(list, lifting)
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
	for i := range list { // a sort of so few, in place
		for k := i; k > 0 && list[k].Place < list[k-1].Place; k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
	return list
}

// heavyPack reports whether one pack of the order, or of those on offer where
// there is no order, may be too much to lift.
func (p *Plan) heavyPack() bool {
	for i := range p.Lines {
		l := &p.Lines[i]
		each, _ := l.Offer.Mass(l.Material, l.Each.Plan)
		if l.Offer.Bulk.Volume == 0 && each[1] > liftLimit {
			return true
		}
	}
	for i := range p.Needs {
		n := &p.Needs[i]
		if n.Buy.Plan > 0 && !p.Ordered(n.Material) && n.HeaviestPack() > liftLimit {
			return true
		}
	}
	return false
}

// heavyLoad reports whether what is to be hauled may be more than a car or a
// small truck has left, or is not known.
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
