package order_test

import (
	"math/rand/v2"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// decilitre is the unit of the random yards. A need ends half a unit off, so
// that no solver's tolerance decides whether it is met.
const decilitre = 100 * units.Millilitre

// sizes are packs as they are sold, bags first: decilitres, kilograms, and the
// price of a middling material in cents. The masses divide one another, so that
// packs fill a vehicle without a gap whatever the choice, and the number of
// trips is the total mass over the payload: the model that a solver can hold.
var sizes = []struct {
	volume units.Volume
	mass   units.Mass
	price  int64
}{
	{250, 10, 395}, {283, 10, 425}, {400, 20, 560}, {425, 20, 575}, {500, 20, 650}, {566, 20, 700},
	{700, 20, 880}, {750, 40, 930}, {849, 40, 1010}, {1982, 40, 2290}, {1911, 160, 1450}, {2500, 160, 1900}, {3823, 320, 2600},
}

// randomYard returns a request with that many materials, each with about that
// many offers.
func randomYard(rng *rand.Rand, materials, offers int) order.Request {
	r := order.Request{TripCost: units.Money(300 + rng.Int64N(2500)),
		Payload: units.Mass(1+rng.Int64N(4)) * 320 * units.Kilogram}
	if rng.IntN(5) == 0 {
		r.Delivery = &order.Delivery{Fee: units.Money(2000 + rng.Int64N(6000)),
			Payload: units.Mass(3+rng.Int64N(8)) * 320 * units.Kilogram}
	}
	for m := range materials {
		r.Needs = append(r.Needs, units.Volume(500+rng.Int64N(15_000))*decilitre+decilitre/2)
		dear := 60 + rng.Int64N(120)
		for k := range 1 + rng.IntN(2*offers-1) {
			r.Offers = append(r.Offers, randomOffer(rng, m, dear, k > 0))
		}
	}
	return r
}

func randomOffer(rng *rand.Rand, m int, dear int64, bounded bool) order.Offer {
	s := sizes[rng.IntN(len(sizes))]
	price := s.price * dear * (85 + rng.Int64N(31)) / 10_000
	o := order.Offer{Material: m, Yield: s.volume * decilitre, Room: s.volume * decilitre,
		Mass: s.mass * units.Kilogram, Price: units.Money(price), Machine: s.mass >= 160,
		CanDeliver: rng.IntN(2) == 0}
	if rng.IntN(6) == 0 {
		o.Breaks = []order.Break{{From: 5 + rng.Int64N(16), Price: o.Price * units.Money(80+rng.Int64N(17)) / 100}}
	}
	if rng.IntN(10) == 0 {
		o.Least = 2 + rng.Int64N(3)
	}
	if bounded && rng.IntN(5) == 0 {
		o.Limited, o.Stock = true, rng.Int64N(15)
	}
	return o
}
