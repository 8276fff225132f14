package yard

import (
	"strconv"

	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

// Load is the sums of a whole order. Fields that are zero are unknown.
type Load struct {
	Volume units.Volume  // loose, as it will leave the shovel
	Packed units.Volume  // as it is carried: bales stay compressed
	Mass   [2]units.Mass // lightest and heaviest
	Drives int64         // at its heaviest
	Dry    int64         // drives at its lightest
	Loads  int64         // that the yard brings
	// Priced is false when no line has a price. Unpriced names the materials on
	// lines without one.
	Priced   bool
	Unpriced []string
}

// Load adds the order up, and reports sums that are out of range.
func (o *Order) Load(r *doc.Reader, h *Haul) (load Load) {
	known := true
	for i := range o.Lines {
		l := &o.Lines[i]
		if !load.add(l) {
			r.ProblemAt("offers", doc.OrderLarge, "the order comes to more than can be worked out")
			return load
		}
		known = known && l.Mass[1] > 0
		load.Priced = load.Priced || l.Priced
		if !l.Priced {
			load.Unpriced = append(load.Unpriced, l.Material.ID)
		}
	}
	if !known {
		load.Mass = [2]units.Mass{}
	}
	if o.Bill.Total > units.MaxMoney {
		r.ProblemAt("offers", doc.OrderLarge, "the order costs more than can be worked out")
		return load
	}
	load.Loads = countTrips(o.Drops)
	if *h != (Haul{}) {
		load.Drives = countTrips(o.Trips)
		load.Dry = o.dryTrips(h)
	}
	return load
}

// add adds one line. ok is false when a sum is out of range.
func (l *Load) add(line *Line) (ok bool) {
	ok = true
	if l.Volume += line.Volume; l.Volume > units.MaxVolume {
		ok = false
	}
	packed, fits := line.Offer.Size().Volume.Times(line.Count)
	if l.Packed += packed; !fits || l.Packed > units.MaxVolume {
		ok = false
	}
	for k := range l.Mass {
		if l.Mass[k] += line.Mass[k]; l.Mass[k] > units.MaxMass {
			ok = false
		}
	}
	return ok
}

// DrivesText writes the number of drives for people: "5 drives, 3 if it is
// dry". It is "" when that is not known.
func (l *Load) DrivesText(p lang.Printer) string {
	text := p.Count(l.Drives, "{0} drive", "{0} drives")
	switch {
	case l.Drives == 0:
		return ""
	case l.Mass[1] == 0:
		return p.Print("at least {0}, weights not all known", text)
	case l.Dry < l.Drives && l.Dry > 0:
		return p.Print("{0}, {1} if it is dry", text, strconv.FormatInt(l.Dry, 10))
	}
	return text
}
