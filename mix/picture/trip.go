package picture

import (
	"example.org/barrow/mix"
	"example.org/barrow/units/say"
)

// Trips draws what every trip carries against its limits: one drawing of the
// drives and one of the deliveries, where there are limits to compare with.
func Trips(p *mix.Plan) (list []Drawing) {
	haul := mix.Delivery{Payload: p.Haul.Limit(), Capacity: p.Haul.Room}
	list = trips(list, p, p.Trips, &haul, tripsDrive)
	return trips(list, p, p.Drops, p.Delivery(), tripsDrop)
}

func trips(list []Drawing, p *mix.Plan, all []mix.Trip, limits *mix.Delivery, title say.Phrase) []Drawing {
	if len(all) == 0 || limits == nil || limits.Payload == 0 && limits.Capacity == 0 {
		return list
	}
	k := start(p, -1, "")
	k.Title = k.say(title)
	k.Kind = "trips"
	k.tell(tripsTold)
	one, many := tripDrive, tripDrives
	if title == tripsDrop {
		one, many = tripDrop, tripDrops
	}
	first, ranged := int64(1), false
	for i := range all[:min(len(all), mostTrips)] {
		t := &all[i]
		name := k.say(one, count(first))
		if t.Times > 1 {
			name = k.say(many, count(first), count(first+t.Times-1))
		}
		k.trip(t, limits, name)
		ranged = ranged || limits.Payload > 0 && t.Mass[0] < t.Mass[1]
		first += t.Times
	}
	left := int64(0)
	for i := min(len(all), mostTrips); i < len(all); i++ {
		left += all[i].Times
	}
	if ranged {
		k.note(k.say(tripRange))
	}
	if left > 0 {
		k.tell(moreTrips, count(left))
		k.note(k.say(moreTrips, count(left)))
	}
	return k.onto(list)
}

// trip draws one trip, or several alike: a bar of weight, from its lightest to
// its heaviest, and a bar of room, each as long as the limit when it is full.
func (k *pen) trip(t *mix.Trip, limits *mix.Delivery, name string) {
	m := k.p.Voice()
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
		name = k.say(tripFull, name, k.say(tripByMass))
	default:
		name = k.say(tripFull, name, k.say(tripByRoom))
	}
	k.notes("figure", name, 2)
	packs := ""
	for i := range t.Packs {
		if i > 0 {
			packs += ", "
		}
		if len(packs) > 4000 { // far past what is shown of it
			packs += "…"
			break
		}
		x := &t.Packs[i]
		packs += k.say(tripPack, count(x.Count), m.Figure(x.Offer.Size().String()), x.Material.Name)
	}
	k.notes("label", packs, 3)
	k.Description += " " + name + ", " + packs + "."
	switch {
	case limits.Payload == 0:
	case t.Mass[1] == 0:
		k.note(k.say(tripNoMass))
		k.tell(tripNoMass)
		k.Description += "."
	default:
		k.bar("mass", float64(t.Mass[0])/float64(limits.Payload), mass, k.say(tripMass, m.MassRange(t.Mass[0], t.Mass[1]), m.Mass(limits.Payload)))
	}
	if limits.Capacity > 0 {
		k.bar("room", room, room, k.say(tripRoom, m.VolumeLike(t.Packed, limits.Capacity), m.VolumeLike(limits.Capacity, limits.Capacity)))
	}
	k.Height += 6
}

// bar draws shares of a limit: low for certain, high at the most, and a line
// where the limit is.
func (k *pen) bar(class string, low, high float64, text string) {
	const full, tall = right - left - 6, 12.0
	k.note(text)
	k.Description += " " + text + "."
	y := k.Height - 1
	k.rect("bar", left, y, full, tall)
	k.rect(class, left, y, low*full, tall)
	if high > low {
		k.rect(class+" wet", left+low*full, y, (high-low)*full, tall)
		var t trace
		for x := left + low*full; x < left+high*full-4; x += 7 {
			t.move(x, y+tall)
			t.raw("l4-12")
		}
		k.trace("hatch", &t)
	}
	k.line("limit", left+full, y-4, left+full, y+tall+4)
	k.Height = y + tall + 8
}
