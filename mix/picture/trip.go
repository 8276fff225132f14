package picture

import (
	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units/message"
)

// Trips draws what every trip carries against its limits: one drawing of the
// drives and one of the deliveries, where there are limits to compare with.
func Trips(p *mix.Plan) (list []Drawing) {
	haul := yard.Delivery{Payload: p.Haul.Limit(), Capacity: p.Haul.Room}
	list = trips(list, p, p.Trips, &haul, tripsDrive)
	return trips(list, p, p.Drops, p.Delivery(), tripsDrop)
}

// trips adds the drawing of one vehicle's trips.
func trips(list []Drawing, p *mix.Plan, all []yard.Trip, limits *yard.Delivery, title message.Text) []Drawing {
	if len(all) == 0 || limits == nil || limits.Payload == 0 && limits.Capacity == 0 {
		return list
	}
	k := newPen(p, -1, "")
	k.Title = k.sentence(title).String()
	k.Kind = "trips"
	k.sentence(tripsDesc).describe()
	one, many := tripDrive, tripDrives
	if title == tripsDrop {
		one, many = tripDrop, tripDrops
	}
	first, ranged := int64(1), false
	for i := range all[:min(len(all), mostTrips)] {
		t := &all[i]
		name := k.sentence(one).count(first)
		if t.Times > 1 {
			name = k.sentence(many).count(first).count(first + t.Times - 1)
		}
		k.trip(t, limits, name.String())
		ranged = ranged || limits.Payload > 0 && t.Mass[0] < t.Mass[1]
		first += t.Times
	}
	left := int64(0)
	for i := min(len(all), mostTrips); i < len(all); i++ {
		left += all[i].Times
	}
	if ranged {
		k.sentence(tripRange).note()
	}
	if left > 0 {
		k.sentence(moreTrips).count(left).describe().note()
	}
	return k.onto(list)
}

// trip draws one trip, or several equal ones: a bar of weight, from the
// lightest to the heaviest, and a bar of room. A full bar is the limit.
func (k *pen) trip(t *yard.Trip, limits *yard.Delivery, name string) {
	m := k.p.Printer()
	var mass, room float64
	if limits.Payload > 0 {
		mass = float64(t.Mass[1]) / float64(limits.Payload)
	}
	if limits.Capacity > 0 {
		room = float64(t.Packed) / float64(limits.Capacity)
	}
	const nearly = .9
	switch {
	case max(mass, room) < nearly:
	case mass >= room:
		name = k.sentence(tripFull).text(name).text(k.sentence(tripByMass).String()).String()
	default:
		name = k.sentence(tripFull).text(name).text(k.sentence(tripByRoom).String()).String()
	}
	k.notes(aFigure, name, 2)
	packs := ""
	for i := range t.Packs {
		if i > 0 {
			packs += ", "
		}
		if len(packs) > 4000 { // much more than is shown
			packs += "…"
			break
		}
		x := &t.Packs[i]
		packs += k.sentence(tripPack).count(x.Count).figure(x.Offer.Size().String()).text(x.Material.Name).String()
	}
	k.notes(aLabel, packs, 3)
	k.describe(name+", "+packs, ".")
	switch {
	case limits.Payload == 0:
	case t.Mass[1] == 0:
		none := k.sentence(tripNoMass).String()
		k.note(none)
		k.describe(none, ".")
	default:
		k.bar(aMass, float64(t.Mass[0])/float64(limits.Payload), mass,
			k.sentence(tripMass).text(m.MassRange(t.Mass[0], t.Mass[1])).text(m.Mass(limits.Payload)))
	}
	if limits.Capacity > 0 {
		k.bar(aRoom, room, room,
			k.sentence(tripRoom).like(t.Packed, limits.Capacity).like(limits.Capacity, limits.Capacity))
	}
	k.Height += 6
}

// bar draws shares of a limit: certain up to low, possible up to high, and a
// line at the limit.
func (k *pen) bar(c class, low, high float64, s *sentence) {
	const full, tall = right - left - 6, 12.0
	text := s.String()
	k.note(text)
	k.describe(text, ".")
	y := k.Height - 1
	k.rect(aBar, left, y, full, tall)
	k.rect(c, left, y, low*full, tall)
	if high > low {
		k.rect(aMassWet, left+low*full, y, (high-low)*full, tall)
		var t trace
		for x := left + low*full; x < left+high*full-4; x += 7 {
			t.move(x, y+tall)
			t.raw("l4-12")
		}
		k.trace(aHatch, &t)
	}
	k.line(aLimit, left+full, y-4, left+full, y+tall+4)
	k.Height = y + tall + 8
}
