package order_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// bag is an offer of material 0 whose room is its yield.
func bag(yield units.Volume, price units.Money) order.Offer {
	return order.Offer{Yield: yield, Room: yield, Price: price}
}

func with(o order.Offer, change func(*order.Offer)) order.Offer {
	change(&o)
	return o
}

func TestSearch(t *testing.T) {
	tenth, _ := units.NewRatio(1, 10)
	limited := func(n int64) func(*order.Offer) {
		return func(o *order.Offer) { o.Limited, o.Stock = true, n }
	}
	heavy := func(m units.Mass) func(*order.Offer) { return func(o *order.Offer) { o.Mass = m } }
	brought := func(o *order.Offer) { o.Mass, o.CanDeliver = 10, true }
	broken := with(bag(1, 100), func(o *order.Offer) { o.Breaks = []order.Break{{From: 10, Price: 80}} })
	for _, tt := range []struct {
		name          string
		r             order.Request
		haul, deliver []int64
		cost          units.Money
		trips, loads  int64
	}{
		{"nothing needed", order.Request{Needs: []units.Volume{0}, Offers: []order.Offer{bag(1, 100)}},
			[]int64{0}, []int64{0}, 0, 0, 0},
		{"exactly seven", order.Request{Needs: []units.Volume{70}, Offers: []order.Offer{bag(10, 100)}},
			[]int64{7}, []int64{0}, 700, 1, 0},
		{"short by the slack", order.Request{Needs: []units.Volume{71}, Slack: 1, Offers: []order.Offer{bag(10, 100)}},
			[]int64{7}, []int64{0}, 700, 1, 0},
		{"short by more", order.Request{Needs: []units.Volume{72}, Slack: 1, Offers: []order.Offer{bag(10, 100)}},
			[]int64{8}, []int64{0}, 800, 1, 0},
		{"a break is worth two bags too many", order.Request{Needs: []units.Volume{9}, Offers: []order.Offer{broken}},
			[]int64{10}, []int64{0}, 800, 1, 0},
		{"a break is not worth two", order.Request{Needs: []units.Volume{8}, Offers: []order.Offer{broken}},
			[]int64{8}, []int64{0}, 800, 1, 0},
		{"a break out of stock", order.Request{Needs: []units.Volume{9}, Offers: []order.Offer{with(broken, limited(9))}},
			[]int64{9}, []int64{0}, 900, 1, 0},
		{"a price that rises", order.Request{Needs: []units.Volume{4}, Offers: []order.Offer{with(bag(1, 10), func(o *order.Offer) {
			o.Breaks = []order.Break{{From: 3, Price: 50}}
		}), bag(1, 30)}}, []int64{2, 2}, []int64{0, 0}, 80, 1, 0},
		{"a least beats its need", order.Request{Needs: []units.Volume{1}, Offers: []order.Offer{
			with(bag(1, 10), func(o *order.Offer) { o.Least = 3 }), bag(1, 40)}}, []int64{3, 0}, []int64{0, 0}, 30, 1, 0},
		{"a least too many", order.Request{Needs: []units.Volume{1}, Offers: []order.Offer{
			with(bag(1, 20), func(o *order.Offer) { o.Least = 3 }), bag(1, 40)}}, []int64{0, 1}, []int64{0, 0}, 40, 1, 0},
		{"the stock runs out", order.Request{Needs: []units.Volume{50}, Offers: []order.Offer{
			with(bag(10, 100), limited(3)), bag(20, 300)}}, []int64{3, 1}, []int64{0, 0}, 600, 1, 0},
		{"tax half up by the line", order.Request{Needs: []units.Volume{2, 1}, Tax: tenth, Offers: []order.Offer{
			with(bag(1, 5), limited(1)), with(bag(1, 5), limited(1)), {Material: 1, Yield: 1, Price: 4}}},
			[]int64{1, 1, 1}, []int64{0, 0, 0}, 6 + 6 + 4, 1, 0},
		{"a lighter pack saves a trip", order.Request{Needs: []units.Volume{40}, Payload: 100, TripCost: 50, Offers: []order.Offer{
			with(bag(10, 100), heavy(40)), with(bag(10, 110), heavy(25))}}, []int64{0, 4}, []int64{0, 0}, 490, 1, 0},
		{"a trip is cheaper than lighter packs", order.Request{Needs: []units.Volume{40}, Payload: 100, TripCost: 39, Offers: []order.Offer{
			with(bag(10, 100), heavy(40)), with(bag(10, 110), heavy(25))}}, []int64{4, 0}, []int64{0, 0}, 478, 2, 0},
		{"packs are not divided", order.Request{Needs: []units.Volume{30}, Payload: 100, TripCost: 1, Offers: []order.Offer{
			with(bag(10, 10), heavy(60))}}, []int64{3}, []int64{0}, 33, 3, 0},
		{"room counts too", order.Request{Needs: []units.Volume{30}, Room: 19, TripCost: 1, Offers: []order.Offer{bag(10, 10)}},
			[]int64{3}, []int64{0}, 33, 3, 0},
		{"delivery beats three drives", order.Request{Needs: []units.Volume{30}, Payload: 15, TripCost: 20,
			Delivery: &order.Delivery{Fee: 50}, Offers: []order.Offer{with(bag(10, 10), brought)}},
			[]int64{0}, []int64{3}, 80, 0, 1},
		{"two drives beat delivery", order.Request{Needs: []units.Volume{20}, Payload: 15, TripCost: 20,
			Delivery: &order.Delivery{Fee: 50}, Offers: []order.Offer{with(bag(10, 10), brought)}},
			[]int64{2}, []int64{0}, 60, 2, 0},
		{"too heavy to haul", order.Request{Needs: []units.Volume{20}, Payload: 5, TripCost: 20,
			Delivery: &order.Delivery{Fee: 50}, Offers: []order.Offer{with(bag(10, 10), brought)}},
			[]int64{0}, []int64{2}, 70, 0, 1},
		{"the rest of a load is hauled", order.Request{Needs: []units.Volume{30}, Payload: 15, TripCost: 20,
			Delivery: &order.Delivery{Fee: 35, Payload: 20}, Offers: []order.Offer{with(bag(10, 10), brought)}},
			[]int64{1}, []int64{2}, 85, 1, 1},
		{"a tie goes to less left over", order.Request{Needs: []units.Volume{30}, Offers: []order.Offer{bag(20, 50), bag(15, 50)}},
			[]int64{0, 2}, []int64{0, 0}, 100, 1, 0},
		{"then to fewer packs", order.Request{Needs: []units.Volume{30}, Offers: []order.Offer{bag(10, 10), bag(30, 30)}},
			[]int64{0, 1}, []int64{0, 0}, 30, 1, 0},
		{"then to fewer of the first offers", order.Request{Needs: []units.Volume{30}, Offers: []order.Offer{bag(10, 10), bag(10, 10)}},
			[]int64{0, 3}, []int64{0, 0}, 30, 1, 0},
		{"least left", order.Request{Needs: []units.Volume{30}, Aim: order.LeastLeft, Offers: []order.Offer{bag(31, 10), bag(10, 40)}},
			[]int64{0, 3}, []int64{0, 0}, 120, 1, 0},
		{"least lifting", order.Request{Needs: []units.Volume{30}, Aim: order.LeastLifting, Offers: []order.Offer{
			bag(10, 1), with(bag(15, 90), func(o *order.Offer) { o.Machine = true })}}, []int64{0, 2}, []int64{0, 0}, 180, 1, 0},
		{"least lifting by hand", order.Request{Needs: []units.Volume{30}, Aim: order.LeastLifting, Offers: []order.Offer{
			bag(10, 1), bag(16, 90), bag(25, 95)}}, []int64{1, 0, 1}, []int64{0, 0, 0}, 96, 1, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := order.Search(tt.r)
			if err != nil {
				t.Fatal(err)
			}
			checkOrder(t, &tt.r, &got)
			type part struct {
				Haul, Deliver []int64
				Cost          units.Money
				Trips, Loads  int64
				Proven        bool
			}
			want := part{tt.haul, tt.deliver, tt.cost, tt.trips, tt.loads, true}
			is := part{got.Haul, got.Deliver, got.Cost, got.Trips, got.Loads, got.Proven}
			if diff := cmp.Diff(want, is); diff != "" {
				t.Errorf("Search: -want +got\n%s", diff)
			}
		})
	}
}

func TestDeposit(t *testing.T) {
	r := order.Request{Needs: []units.Volume{20}, Offers: []order.Offer{
		with(bag(10, 90), func(o *order.Offer) { o.Deposit = 500 }), bag(10, 100)}}
	o, err := order.Search(r)
	if err != nil || o.Cost != 180 || o.Deposit != 1000 || o.Pay() != 1180 {
		t.Errorf("Search = cost %v, deposit %v, pay %v, %v, want 1.80, 10.00, 11.80: a deposit comes back",
			o.Cost, o.Deposit, o.Pay(), err)
	}
}

func TestErrors(t *testing.T) {
	none := with(bag(10, 1), func(o *order.Offer) { o.Limited = true })
	wide := with(bag(10, 1), func(o *order.Offer) { o.Mass = 50 })
	for _, tt := range []struct {
		name string
		r    order.Request
		want order.Error
	}{
		{"no offer", order.Request{Needs: []units.Volume{0, 5}, Offers: []order.Offer{bag(1, 1)}}, order.Error{Code: order.ErrNoOffer, Material: 1, Offer: -1}},
		{"sold out", order.Request{Needs: []units.Volume{5}, Offers: []order.Offer{none}}, order.Error{Code: order.ErrShort}},
		{"least over the stock", order.Request{Needs: []units.Volume{5}, Offers: []order.Offer{
			with(bag(10, 1), func(o *order.Offer) { o.Limited, o.Stock, o.Least = true, 2, 3 })}}, order.Error{Code: order.ErrShort}},
		{"too heavy", order.Request{Needs: []units.Volume{5}, Payload: 49, Offers: []order.Offer{wide}}, order.Error{Code: order.ErrTooHeavy}},
		{"too heavy, and the rest sold out", order.Request{Needs: []units.Volume{5}, Payload: 49, Offers: []order.Offer{wide, none}},
			order.Error{Code: order.ErrShort, Offer: 1}},
		{"too much for one line", order.Request{Needs: []units.Volume{units.MaxVolume}, Offers: []order.Offer{bag(1, 1)}}, order.Error{Code: order.ErrRange}},
		{"no yield", order.Request{Needs: []units.Volume{5}, Offers: []order.Offer{bag(0, 1)}}, order.Error{Code: order.ErrRange}},
		{"no such material", order.Request{Needs: []units.Volume{5}, Offers: []order.Offer{with(bag(1, 1), func(o *order.Offer) { o.Material = 1 })}},
			order.Error{Code: order.ErrRange, Material: 1}},
		{"breaks out of order", order.Request{Needs: []units.Volume{5}, Offers: []order.Offer{with(bag(1, 1), func(o *order.Offer) {
			o.Breaks = []order.Break{{From: 5}, {From: 5}}
		})}}, order.Error{Code: order.ErrRange}},
		{"needs past the bound", order.Request{Needs: []units.Volume{units.MaxVolume, 1}}, order.Error{Code: order.ErrRange, Material: 1, Offer: -1}},
		{"negative trip cost", order.Request{TripCost: -1}, order.Error{Code: order.ErrRange, Material: -1, Offer: -1}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := order.Search(tt.r)
			got, ok := err.(*order.Error)
			if !ok || *got != tt.want {
				t.Errorf("Search: %v (%+v), want %+v", err, got, tt.want)
			}
		})
	}
}

// TestLarge checks that the largest need gets an answer with a bound.
func TestLarge(t *testing.T) {
	r := order.Request{Needs: []units.Volume{units.MaxVolume}, Payload: 500 * units.Kilogram, Room: 2 * units.CubicYard,
		TripCost: 900,
		Offers: []order.Offer{
			{Yield: 2 * units.CubicFoot, Room: 2 * units.CubicFoot, Mass: 40 * units.Pound, Price: 475, CanDeliver: true},
			{Yield: 50 * units.Litre, Room: 50 * units.Litre, Mass: 15 * units.Kilogram, Price: 399},
			{Yield: units.CubicYard / 2, Room: units.CubicYard / 2, Mass: 230 * units.Kilogram, Price: 2100, Machine: true},
		}}
	delivery := order.Delivery{Fee: 5000, Capacity: 20 * units.CubicMetre}
	for _, change := range []func(*order.Request){
		func(*order.Request) {},
		func(r *order.Request) { r.TripCost = 0 },
		func(r *order.Request) { r.Delivery = &delivery },
		func(r *order.Request) { r.TripCost, r.Delivery = 0, &delivery },
		func(r *order.Request) { r.Delivery = &order.Delivery{Capacity: delivery.Capacity} },
		func(r *order.Request) { r.TripCost, r.Delivery = 0, &order.Delivery{Capacity: delivery.Capacity} },
	} {
		r := r
		change(&r)
		o, err := order.Search(r)
		if err != nil {
			t.Fatal(err)
		}
		checkOrder(t, &r, &o)
		if o.Bound < o.Cost-o.Cost/500 {
			t.Errorf("trip cost %v, delivery %v: cost %v, bound %v, want within 0.2%%",
				r.TripCost, r.Delivery, o.Cost, o.Bound)
		}
	}
}

// TestPackOfNone checks that a pack too heavy for the vehicle is refused, unless there is
// none of it to carry: the yard brings those.
func TestPackOfNone(t *testing.T) {
	items := []order.Item{{Count: 3, Mass: 40}, {Count: 0, Mass: 400, Room: 9}}
	if p, err := order.Pack(items, 100, 5); err != nil || p.Count != 2 || p.Least != 2 {
		t.Errorf("%+v, %v, want two trips of at most two packs", p, err)
	}
	items[1].Count = 1
	if _, err := order.Pack(items, 100, 10); err == nil || err.(*order.Error).Code != order.ErrTooHeavy {
		t.Errorf("error %v, want too heavy", err)
	}
}
