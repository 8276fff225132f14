package yard

import (
	"strconv"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// Line is one line of the order: a number of packs of one offer.
type Line struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Material  *catalog.Material
	Offer     *Offer
	Count     int64
	Delivered int64 // how many of Count the yard delivers
	// FewMany is the count for the least and the most that may be needed, on a
	// line that covers its need alone. On other lines both are Count.
	FewMany  [2]int64
	Each     units.Range    // loose volume of one
	From     catalog.Source // of Each, when that is not the size of the pack
	Volume   units.Volume   // loose volume of all, as planned
	Left     units.Volume   // more than is needed; on the material's last line
	Last     bool           // whether it is the last line of its material
	Cost     units.Money    // before tax
	Tax      units.Money
	Priced   bool
	Mass     [2]units.Mass // lightest and heaviest; zero when not known
	MassFrom catalog.Source

	index int // of the offer
}

// CountText writes the count in English and, when it is not certain, the fewest
// and the most: "6 (5 to 7)".
func (l *Line) CountText() string { return lang.Printer{}.CountRange(l.Count, l.FewMany) }

// Supply returns the loose volume of all before rounding, in nanolitres.
func (l *Line) Supply() units.Fixed { return l.Each.FixedPlan().MulDiv(l.Count, 1) }

// all is the loose volume of all, rounded once. ok is false past
// [units.MaxVolume].
func (l *Line) all() (v units.Volume, ok bool) {
	all, ok := l.Each.Planned().Times(l.Count)
	return all.Plan, ok
}

// Index returns the position of the line's offer in the job.
func (l *Line) Index() int { return l.index }

// take makes this a line of count packs, of which some are delivered.
func (l *Line) take(r *doc.Reader, count, delivered int64, asked *order.Offer, tax units.Ratio) {
	l.Count, l.Delivered, l.FewMany, l.Left = count, delivered, [2]int64{count, count}, 0
	l.Cost, l.Tax = asked.Paid(count, tax)
	var fits bool
	if l.Volume, fits = l.all(); !fits || !l.weigh() {
		r.ProblemAt("offers", doc.OrderLarge, "the order comes to more than can be worked out")
	}
}

// count works out how many packs cover the need alone, and their cost and mass.
func (l *Line) count(r *doc.Reader, need units.Range, tax units.Ratio) {
	l.Count = Count(need.FixedPlan(), l.Each.FixedPlan())
	if l.Count > 0 {
		l.Count = max(l.Count, l.Offer.Least)
	}
	l.FewMany = l.fewMany(need)
	var ok bool
	if l.Volume, ok = l.all(); !ok || l.Count > doc.MaxCount {
		r.Problem(doc.VolumeLarge, "that many of these come to more than can be worked out")
		return
	}
	l.Left = max(l.Volume-need.Plan, 0)
	if l.Priced {
		if cost, fits := l.Offer.Price.Times(l.Count); !fits || cost > units.MaxMoney {
			r.ProblemAt("price", doc.CostLarge, "that many of these cost more than can be worked out")
			return
		}
		asked := l.ask(0, false)
		l.Cost, l.Tax = asked.Paid(l.Count, tax)
	}
	if !l.weigh() {
		r.ProblemAt("weight", doc.WeightLarge, "that many of these weigh more than can be worked out")
	}
}

// fewMany returns the counts for the least and the most that may be needed.
func (l *Line) fewMany(need units.Range) (n [2]int64) {
	n = [2]int64{Count(need.FixedLow(), l.Each.FixedHigh()), Count(need.FixedHigh(), l.Each.FixedLow())}
	for i := range n {
		if n[i] > 0 {
			n[i] = max(n[i], l.Offer.Least)
		}
	}
	return n
}

// weigh works out the mass. The offer's own weight comes first, then the weight
// of such packs, then the material's dry and wet density. ok is false when the
// mass is out of range.
func (l *Line) weigh() (ok bool) {
	if w := l.Offer.Weight; w > 0 {
		l.MassFrom = catalog.FromJob
		l.Mass[0], ok = w.Times(l.Count)
		l.Mass[1] = l.Mass[0]
		return ok
	}
	each, from := l.Offer.Mass(l.Material, l.Each.Plan)
	l.MassFrom = from
	for i := range each {
		if l.Mass[i], ok = each[i].Times(l.Count); !ok {
			return false
		}
	}
	return true
}

// Mass returns the lightest and the heaviest that one pack may weigh, and where
// that figure comes from. Both are zero when it is not known. loose is the
// volume that one pack makes. A weight of the offer's own counts as it is given;
// any other comes from a range of densities and from how full such packs are.
func (o *Offer) Mass(m *catalog.Material, loose units.Volume) (mass [2]units.Mass, from catalog.Source) {
	if o.Weight > 0 {
		return [2]units.Mass{o.Weight, o.Weight}, catalog.FromJob
	}
	density, v, from := o.Density(m, loose)
	least, most := v, v
	if f, varies := o.Fullness(m); varies {
		least, most = f.Of(v)
	}
	for i, v := range [2]units.Volume{least, most} {
		var ok bool
		if mass[i], ok = v.Mass(density[i]); !ok {
			mass[i] = units.MaxMass // so that more than one is a problem
		}
	}
	return mass, from
}

// Density returns the range of density that a pack weighs by: as sold for a
// sealed pack, where that is known, and dry to wet for any other. It is of the
// volume v of one pack; loose is the volume that one makes.
func (o *Offer) Density(m *catalog.Material, loose units.Volume) (d [2]units.Density, v units.Volume, from catalog.Source) {
	if o.Bulk.Volume == 0 && m.PackedHigh > 0 {
		return m.Packed(loose > o.Pack.Volume), o.Pack.Volume, m.PackedSource
	}
	return [2]units.Density{m.Dry, m.Wet}, loose, m.Source
}

// Fullness returns how full packs of the offer are. varies is false for a bale
// by its compressed volume: what is uncertain about it is how far it opens, and
// its density says what it weighs.
func (o *Offer) Fullness(m *catalog.Material) (f catalog.Fullness, varies bool) {
	if o.Bulk.Volume > 0 {
		return m.BucketFullness(), true
	}
	each, _ := o.Yield(m)
	return catalog.BagFullness(), each.Certain()
}

// InStock reports whether the yard has as many as the line takes.
func (l *Line) InStock() bool { return l.Offer.Stock == nil || *l.Offer.Stock >= l.Count }

// lines works out one line for each offer of the need, as if only that were
// bought.
func (t *Terms) lines(r *doc.Reader, n *Need) (lines []Line) {
	r.Enter("offers")
	defer r.Leave()
	for _, i := range t.of[n.index] {
		o := &t.Offers[i]
		if o.gone {
			continue
		}
		r.EnterAt(i)
		l := Line{Material: n.Material, Offer: o, Priced: o.Price != nil, index: i}
		l.Each, l.From = o.Yield(n.Material)
		l.count(r, n.Buy, t.Tax)
		lines = append(lines, l)
		r.Leave()
	}
	return lines
}

// itoa writes n in decimal.
func itoa(n int64) string { return strconv.FormatInt(n, 10) }
