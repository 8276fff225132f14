package mix

import "example.org/barrow/units"

// notes are what the plan has to say that is neither caution nor problem:
// nothing that a job lists is passed over in silence.
func (p *Plan) notes() []Note {
	w := p.work
	var notes []Note
	add := func(path, code, text string) { notes = append(notes, Note{path, code, text}) }
	told := map[*Class]bool{}
	for i := range w.tasks {
		w.tasks[i].sizeNotes(p, i, told, add)
		w.tasks[i].gallonNotes(p, i, add)
		w.tasks[i].notes(p, i, add)
	}
	for _, h := range w.job.OnHand {
		if w.takes[w.book.material[h.Material]].High == 0 {
			add("on_hand."+h.Material, "on_hand.unused", "no task takes "+h.Material)
		}
	}
	p.offerNotes(add)
	if len(p.Unpriced) > 0 && p.Priced {
		add("", "cost.partial", "the cost leaves out "+listed(p.Unpriced, "and")+": no price is given")
	}
	if drives := p.Load.DrivesText(); p.Haul.TripCost > 0 && drives != "" {
		add("haul.trip_cost", "cost.drives", "the cost leaves out driving: "+drives+", at "+p.Currency+p.Haul.TripCost.String()+" each")
	}
	return notes
}

// sizeNotes says once of every class that its pots differ.
func (w *worked) sizeNotes(p *Plan, i int, told map[*Class]bool, add func(path, code, text string)) {
	for k := range w.pots {
		class := w.pots[k].class
		if class == nil || class.Holds.Certain() || told[class] {
			continue
		}
		told[class] = true
		path := "tasks[" + itoa(int64(i)) + "].containers[" + itoa(int64(k)) + "].size"
		add(path, "size.range", class.Name+"s differ: "+p.Measure.VolumeRange(class.Holds.Low, class.Holds.High)+" each. Fill one with water, measure that, and write it as holds")
	}
}

// gallonNotes says of a pot given in whole gallons that the trade's gallon pot
// takes less.
func (w *worked) gallonNotes(p *Plan, i int, add func(path, code, text string)) {
	for k := range w.pots {
		holds := w.pots[k].line.Holds
		class := p.work.book.class["#"+itoa(int64(holds/units.Gallon))]
		if holds == 0 || holds%units.Gallon != 0 || class == nil {
			continue
		}
		path := "tasks[" + itoa(int64(i)) + "].containers[" + itoa(int64(k)) + "].holds"
		add(path, "gallon.liquid", "a full "+units.US.Volume(holds)+" is taken; the "+class.ID+" pot that the trade calls by that name takes about "+p.Measure.Volume(class.Holds.Plan)+": write it as size "+class.ID)
		return
	}
}

// notes are about one task.
func (w *worked) notes(p *Plan, i int, add func(path, code, text string)) {
	path := "tasks[" + itoa(int64(i)) + "]"
	m := p.Measure
	if w.task.Cover != nil && w.task.Settle == nil && w.in != nil {
		w.mulchNote(p, path, add)
	}
	if h := &w.holes; w.task.Backfill != nil {
		if h.deep > 0 {
			add(path+".depth", "hole.deep", "the hole is "+m.Length(h.deep)+" deeper than the ball reaches: firm soil under it, or dig less")
		}
		if h.proud > 0 {
			add(path+".ball", "ball.proud", "the ball stands "+m.Length(h.proud)+" higher than above_grade says: dig deeper, or say so")
		}
		if w.task.Backfill.Soil == "" {
			add(path+".soil", "soil.assumed", "the soil left over is worked out for clay; say soil for another")
		}
	}
}

// mulchNote says what a layer comes to if it is to be that deep after it has
// settled.
func (w *worked) mulchNote(p *Plan, path string, add func(path, code, text string)) {
	for _, in := range w.in.of {
		if in.blend != nil {
			continue
		}
		mat := p.work.book.materials[in.material]
		if mat.SettleHigh == (units.Ratio{}) {
			continue
		}
		low, _ := w.loose.mulDiv(without(mat.SettleLow))
		high, _ := w.loose.mulDiv(without(mat.SettleHigh))
		add(path+".settle", "mulch.settles", mat.Name+" settles by "+mat.SettleLow.String()+" to "+mat.SettleHigh.String()+": to have this depth after that, it takes "+p.Measure.VolumeRange(low.Plan, high.Plan)+"; give settle to plan for it")
		return
	}
}

// offerNotes speaks of offers that are not in the order, and of needs without
// one.
func (p *Plan) offerNotes(add func(path, code, text string)) {
	w := p.work
	for i := range w.job.Offers {
		o := &w.job.Offers[i]
		path := "offers[" + itoa(int64(i)) + "]"
		if w.takes[w.book.material[o.Material]].High == 0 {
			add(path+".material", "offer.unused", "no task takes "+o.Material)
		}
		if _, from := o.yield(w.book.materials[w.book.material[o.Material]]); from != (Source{}) && o.OpensTo == 0 {
			each, _ := o.yield(w.book.materials[w.book.material[o.Material]])
			add(path+".opens_to", "bale.range", o.Pack.Text+" of "+o.Material+" is taken as a compressed bale that opens to "+p.Measure.VolumeRange(each.Low, each.High)+"; counted by the least. Give opens_to if you know it")
		}
	}
	if len(w.job.Offers) == 0 {
		return
	}
	for i := range p.Needs {
		n := &p.Needs[i]
		if n.Buy.Plan > 0 && !p.ordered(n.Material) {
			add("offers", "offer.missing", "no offer for "+n.Material.ID+": see what packs it comes in")
		}
	}
}

// ordered reports whether the order has a line of the material.
func (p *Plan) ordered(m *Material) bool {
	for i := range p.Order {
		if p.Order[i].Material == m {
			return true
		}
	}
	return false
}
