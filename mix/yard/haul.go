package yard

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Haul is what can be carried home, and what each trip costs. Fields that are
// zero are unknown.
type Haul struct {
	Payload  units.Mass   // weight limit of one trip
	Placard  units.Mass   // the door placard's figure, instead of Payload
	People   units.Mass   // what the people weigh, who share the placard's figure
	Room     units.Volume // volume limit of one trip
	TripCost units.Money  // paid for every trip, the first included
}

// HaulObject describes haul in a document.
var HaulObject = &doc.Object{ID: "haul", Name: "haul", Tables: []doc.Fields{{
	{Name: "payload", Type: &doc.Mass, About: "what may be loaded; or placard", At: func(h any) any { return &h.(*Haul).Payload }},
	{Name: "placard", Type: &doc.Mass, About: "the door placard's figure for people and cargo; or payload", At: func(h any) any { return &h.(*Haul).Placard }},
	{Name: "people", Type: &doc.Mass, About: "of all who ride, taken from the placard's figure", At: func(h any) any { return &h.(*Haul).People }},
	{Name: "room", Type: &doc.Volume, About: "what fits, level", At: func(h any) any { return &h.(*Haul).Room }},
	{Name: "trip_cost", Type: &doc.Money, About: "paid for every drive, the first included", At: func(h any) any { return &h.(*Haul).TripCost }},
}}}

// Limit returns what may be loaded: the payload, or what the people leave of
// the figure on the placard (49 CFR 575.6). Zero means unknown.
func (h *Haul) Limit() units.Mass {
	if h.Placard > 0 {
		return max(h.Placard-h.People, 0)
	}
	return h.Payload
}

// check reports figures out of range, and a job that gives both a payload and a
// placard, or a placard without people.
func (h *Haul) check(r *doc.Reader) {
	r.Enter("haul")
	switch {
	case h.Payload > 0 && h.Placard > 0:
		r.ProblemAt("placard", doc.FieldBoth, "give payload, or placard and people, not both")
	case h.People > 0 && h.Placard == 0:
		r.ProblemAt("people", doc.FieldAlone, "people are taken off the placard's figure: give placard too")
	case h.Placard > 0 && h.People == 0:
		r.ProblemAt("people", doc.FieldMissing,
			"what do the people weigh? the placard's figure is for them and the cargo")
	case h.Placard > 0 && h.People >= h.Placard:
		r.ProblemAt("people", doc.HaulFull, "the people weigh as much as the placard allows: nothing is left for cargo")
	}
	r.Leave()
	for _, part := range []struct {
		name string
		v    int64
		most int64
	}{
		{"payload", int64(h.Payload), int64(units.MaxMass)},
		{"placard", int64(h.Placard), int64(units.MaxMass)},
		{"people", int64(h.People), int64(units.MaxMass)},
		{"room", int64(h.Room), int64(units.MaxVolume)},
		{"trip_cost", int64(h.TripCost), int64(units.MaxMoney)},
	} {
		if part.v < 0 || part.v > part.most {
			r.ProblemAt("haul", units.QuantityLarge, message.Of("{0} is out of range", part.name))
		}
	}
}

// Delivery is the yard's own vehicle, with a fee for every load. A capacity or
// payload of zero is no limit.
type Delivery struct {
	Fee      units.Money
	Capacity units.Volume
	Payload  units.Mass
}

// DeliveryObject describes delivery in a document.
var DeliveryObject = &doc.Object{ID: "delivery", Name: "delivery", Maybe: doc.MaybeOf[Delivery], Tables: []doc.Fields{{
	{Name: "fee", Type: &doc.Money, About: "for every load", At: func(d any) any { return &d.(*Delivery).Fee }},
	{Name: "capacity", Type: &doc.Volume, About: "of one load", At: func(d any) any { return &d.(*Delivery).Capacity }},
	{Name: "payload", Type: &doc.Mass, About: "of one load", At: func(d any) any { return &d.(*Delivery).Payload }},
}}}

// check reports figures out of range.
func (d *Delivery) check(r *doc.Reader) {
	if d != nil && (d.Fee < 0 || d.Fee > units.MaxMoney || d.Capacity < 0 || d.Capacity > units.MaxVolume ||
		d.Payload < 0 || d.Payload > units.MaxMass) {
		r.ProblemAt("delivery", units.QuantityLarge, "fee, capacity and payload are zero or more")
	}
}
