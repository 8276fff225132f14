package order

import "example.org/barrow/units"

// Request is what is needed, what is for sale and what it costs to bring home.
// The zero value needs nothing and orders nothing.
type Request struct {
	Needs  []units.Volume // loose, by material; they add up to at most units.MaxVolume
	Offers []Offer
	Tax    units.Ratio // on each line, rounded half up to the minor unit

	Payload  units.Mass   // of the grower's vehicle; zero is no limit
	Room     units.Volume // of the grower's vehicle; zero is no limit
	TripCost units.Money  // of every trip, the first included
	Delivery *Delivery    // nil: nothing is delivered

	Slack  units.Volume // a shortfall too small to buy for
	Aim    Aim
	Budget int64 // units of work before the search stops; zero is DefaultBudget
}

// Delivery is the yard's own vehicle. Each load costs Fee. A Capacity or
// Payload of zero is no limit.
type Delivery struct {
	Capacity units.Volume
	Payload  units.Mass
	Fee      units.Money
}

// Aim is what comes first in choosing an order. The zero value is the lowest
// cost.
type Aim uint8

// The aims.
const (
	LeastCost    Aim = iota
	LeastLeft        // least volume left over, then cost
	LeastLifting     // fewest packs lifted by hand, then cost
)

// DefaultBudget is the work that a Request without a Budget may take: about a
// tenth of a second on a desktop computer. A unit of work is one partial
// choice.
const DefaultBudget = 4_000_000

// These limits keep every sum in the search within an int64.
const (
	mostOffers    = 1 << 15
	mostMaterials = 1 << 11
	mostCount     = 1_000_000_000 // of one offer
	mostDriving   = 1 << 50       // minor units for all trips and loads
)

// check refuses a request with a figure out of range.
func (r *Request) check() error {
	if len(r.Offers) > mostOffers || len(r.Needs) > mostMaterials || r.Aim > LeastLifting || r.Budget < 0 {
		return &Error{Code: ErrRange, Offer: -1, Material: -1}
	}
	if !within(r.Payload, units.MaxMass) || !within(r.Room, units.MaxVolume) ||
		!within(r.TripCost, units.MaxMoney) || !within(r.Slack, units.MaxVolume) {
		return &Error{Code: ErrRange, Offer: -1, Material: -1}
	}
	if d := r.Delivery; d != nil && (!within(d.Capacity, units.MaxVolume) ||
		!within(d.Payload, units.MaxMass) || !within(d.Fee, units.MaxMoney)) {
		return &Error{Code: ErrRange, Offer: -1, Material: -1}
	}
	return r.checkLists()
}

// checkLists checks the needs and the offers.
func (r *Request) checkLists() error {
	var sum units.Volume
	for i, need := range r.Needs {
		if !within(need, units.MaxVolume) || !within(sum+need, units.MaxVolume) {
			return &Error{Code: ErrRange, Offer: -1, Material: i}
		}
		sum += need
	}
	for i := range r.Offers {
		if o := &r.Offers[i]; !o.sound(len(r.Needs)) {
			return &Error{Code: ErrRange, Offer: i, Material: o.Material}
		}
	}
	return nil
}

// sound reports whether every figure of o is in range and its breaks rise.
func (o *Offer) sound(materials int) bool {
	from := int64(1)
	for _, b := range o.Breaks {
		if b.From <= from || !within(b.Price, units.MaxMoney) {
			return false
		}
		from = b.From
	}
	return o.Material >= 0 && o.Material < materials && o.Yield > 0 && within(o.Yield, units.MaxVolume) &&
		within(o.Room, units.MaxVolume) && within(o.Mass, units.MaxMass) && within(o.Price, units.MaxMoney) &&
		within(o.Deposit, units.MaxMoney) && o.Least >= 0 && o.Stock >= 0
}

// within reports whether v is from zero to most.
func within[T ~int64](v, most T) bool { return v >= 0 && v <= most }
