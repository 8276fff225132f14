package order_test

import (
	"pgregory.net/rapid"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// drawRequest draws a request small enough to try every count.
func drawRequest(t *rapid.T) order.Request {
	n := func(low, high int64, what string) int64 { return rapid.Int64Range(low, high).Draw(t, what) }
	materials := n(1, 3, "materials")
	r := order.Request{Slack: units.Volume(n(0, 2, "slack")), TripCost: units.Money(n(0, 12, "trip cost"))}
	for range materials {
		r.Needs = append(r.Needs, units.Volume(n(0, 24, "need")))
	}
	if rapid.Bool().Draw(t, "payload?") {
		r.Payload = units.Mass(n(6, 30, "payload"))
	}
	if rapid.Bool().Draw(t, "room?") {
		r.Room = units.Volume(n(6, 30, "room"))
	}
	if rapid.Bool().Draw(t, "taxed") {
		r.Tax, _ = units.NewRatio(n(1, 40, "tax"), 100)
	}
	if n(0, 2, "delivery?") == 0 {
		r.Delivery = &order.Delivery{Fee: units.Money(n(0, 25, "fee")),
			Capacity: units.Volume(n(0, 1, "capped") * n(10, 50, "capacity")),
			Payload:  units.Mass(n(0, 1, "loaded") * n(10, 50, "load"))}
	}
	for range n(1, 5, "offers") {
		r.Offers = append(r.Offers, drawOffer(t, materials))
	}
	return r
}

// drawYard draws a request that can be met: every material has packs that fit,
// and the vehicle is small, so that several trips are needed.
func drawYard(t *rapid.T, materials, offers, most int64) order.Request {
	n := func(low, high int64, what string) int64 { return rapid.Int64Range(low, high).Draw(t, what) }
	r := order.Request{Slack: units.Volume(n(0, 1, "slack")), TripCost: units.Money(n(1, 15, "trip cost"))}
	r.Payload = units.Mass(n(0, 3, "payload?") / 2 * n(14, 40, "payload"))
	r.Room = units.Volume(n(0, 3, "room?") / 2 * n(14, 40, "room"))
	if n(0, 2, "delivery?") == 0 {
		r.Delivery = &order.Delivery{Fee: units.Money(n(0, 25, "fee")), Capacity: units.Volume(n(20, 60, "capacity"))}
	}
	for m := range n(1, materials, "materials") {
		r.Needs = append(r.Needs, units.Volume(n(5, most, "need")))
		for k := range n(1, offers, "offers") {
			o := drawOffer(t, 1)
			o.Material = int(m)
			if k == 0 {
				o.Limited = false
			}
			r.Offers = append(r.Offers, o)
		}
	}
	return r
}

func drawOffer(t *rapid.T, materials int64) order.Offer {
	n := func(low, high int64, what string) int64 { return rapid.Int64Range(low, high).Draw(t, what) }
	o := order.Offer{Material: int(n(0, materials-1, "material")), Yield: units.Volume(n(4, 14, "yield")),
		Room: units.Volume(n(0, 14, "takes")), Mass: units.Mass(n(0, 14, "mass")), Price: units.Money(n(0, 30, "price")),
		Deposit: units.Money(n(0, 2, "deposit"))}
	if n(0, 3, "break?") == 0 {
		o.Breaks = []order.Break{{From: n(2, 4, "from"), Price: units.Money(n(0, 30, "break"))}}
	}
	if n(0, 3, "least?") == 0 {
		o.Least = n(1, 3, "least")
	}
	if n(0, 2, "limited?") == 0 {
		o.Limited, o.Stock = true, n(0, 4, "stock")
	}
	o.CanDeliver, o.Machine = rapid.Bool().Draw(t, "delivered"), n(0, 2, "machine?") == 0
	return o
}
