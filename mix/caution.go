package mix

import (
	"slices"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Caution is a warning that applies to this plan. Code is stable; Text may be
// reworded.
type Caution struct {
	Code         string
	Text, Source message.Text
}

// Limits that decide whether a caution applies.
const (
	liftLimit = 23 * units.Kilogram // 51 lb under ideal conditions, NIOSH 94-110
	// loadLimit is what the placard's worked example leaves for cargo: 1400 lb
	// less five people of 150 lb, 49 CFR 575.6(a)(5).
	loadLimit  = 650 * units.Pound
	mulchLimit = 4 * units.Inch // more harms, several extension services
)

// cautions lists every caution with when it applies: the first always, then
// what is particular to a job, then what goes for all such work.
var cautions = []struct {
	Caution
	applies func(p *Plan) bool
}{
	{Caution{"authority", "Product labels, local codes and licensed practice come before any figure here.", ""}, func(*Plan) bool { return true }},
	{Caution{"layer-deep", "The layer is deeper than the finished depth that is to hold it: check the two depths.", ""}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Amend != nil && w.bed.tooDeep() })
	}},
	{Caution{"over-half", "More than half of the finished bed would be amendment: that is a raised bed, and as it rots it sinks.", "Cornell depth advice; up to 40 % of an all-organic mix is lost in 24 months (horticulture course text)"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Amend != nil && units.Percent(50).Less(w.bed.share) })
	}},
	{Caution{"sand-clay", "Sand into clay is warned against: short of about 60 % sand it sets hard.", "Colorado State Univ. Extension and others; the figure is uncertain"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool {
			return w.task.Amend != nil && w.holds(p, "sand") && (w.task.Amend.Soil == "clay" || w.task.Amend.Soil == "")
		})
	}},
	{Caution{"hole-only", "Amending single holes is a common error, most of all in heavy clay: water stands in them and roots stay in them. Amend the whole bed.", "Univ. of Georgia newswire, 2002; Univ. of Idaho 2012 allows 3 parts soil to 1 organic"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Backfill != nil && w.in != nil })
	}},
	{Caution{"soil-in-pots", "Topsoil in pots packs down and drains badly: keep it for beds.", "common practice"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Fill != nil && w.holds(p, "soil") })
	}},
	{Caution{"mulch-deep", "More than 3 to 4 in of mulch harms roots.", "several extension services"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Cover != nil && w.task.Cover.Layer > mulchLimit })
	}},
	{Caution{"mulch-stems", "Keep mulch 1 to 4 in clear of stems, 12 to 18 in of trunks and 1 ft of walls: give the stems to leave them bare.", "UF/IFAS Polk, Alachua and Miami-Dade, which differ"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool {
			return w.task.Cover != nil && (w.task.Cover.Stems == nil || w.task.Cover.Stems.Clear < units.Inch)
		})
	}},
	{Caution{"nitrogen", "Woody material dug in ties up nitrogen as it rots: test the soil, feed by the label.", "Oregon State Univ. Extension"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return (w.task.Amend != nil || w.task.Backfill != nil) && w.holds(p, "woody") })
	}},
	{Caution{"salt", "Compost can be salty: ask for its test, or try it on a few plants.", "Oregon State Univ. EM 9308"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Cover == nil && w.holds(p, "salt") })
	}},
	{Caution{"digging", "Before digging or tilling, have buried lines located: 811 in the US, some days ahead.", "state one-call services"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Amend != nil || w.task.Backfill != nil })
	}},
	{Caution{"vehicle", "The door placard's load, less the people, is the limit, and so are the axle and gross ratings; what fits in the bed is no guide. Cover the load.", "49 CFR 571.110 and 575.6"}, (*Plan).heavyLoad},
	{Caution{"lifting", "A pack here may weigh more than 51 lb (23 kg), the most for one person under ideal conditions: share the lift, or split the pack.", "NIOSH 94-110"}, (*Plan).heavyPack},
	{Caution{"legionella", "Potting mix and compost can carry Legionella: open bags outdoors and away from the face, dampen, wear gloves and a mask, wash hands.", "NSW Health 2018; Health NZ"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.task.Fill != nil || w.holds(p, "legionella") })
	}},
	{Caution{"dust", "Perlite, peat, bark and other dry materials give off dust: dampen before mixing, work in moving air, wear a mask.", "NIOSH and OSHA: perlite 15 mg/m3 total dust, 5 respirable"}, func(p *Plan) bool {
		return p.any(func(w *worked) bool { return w.holds(p, "dust") })
	}},
}

// cautions returns those that apply.
func (p *Plan) cautions() []Caution {
	var out []Caution
	for i := range cautions {
		if cautions[i].applies(p) {
			out = append(out, cautions[i].Caution)
		}
	}
	return out
}

// any reports whether a task of the plan is as is says.
func (p *Plan) any(is func(*worked) bool) bool {
	for i := range p.work.tasks {
		if is(&p.work.tasks[i]) {
			return true
		}
	}
	return false
}

// holds reports whether a material with the trait goes into the task.
func (w *worked) holds(p *Plan, trait string) bool {
	return w.in != nil && w.in.holds(p.work.book, trait)
}

func (b *blend) holds(bk *book, trait string) bool {
	for _, in := range b.of {
		if in.blend != nil && in.blend.holds(bk, trait) || in.blend == nil && bk.materials[in.material].has(trait) {
			return true
		}
	}
	return false
}

// heavyPack reports whether one pack of the order, or of those on offer where
// there is no order, may be too much to lift.
func (p *Plan) heavyPack() bool {
	for i := range p.Order {
		l := &p.Order[i]
		each := l.Offer.Weight
		if each == 0 {
			one, _ := l.Offer.mass(l.Material, l.Each.Plan)
			each = one[1]
		}
		if l.Offer.Bulk.Volume == 0 && each > liftLimit {
			return true
		}
	}
	for i := range p.Needs {
		n := &p.Needs[i]
		if n.Buy.Plan == 0 || p.Ordered(n.Material) {
			continue
		}
		for _, size := range append(slices.Clone(n.Material.Packs), n.Material.Bales...) {
			one := Offer{Pack: size}
			loose, _ := one.yield(n.Material)
			if each, _ := one.mass(n.Material, loose.Plan); each[1] > liftLimit {
				return true
			}
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
