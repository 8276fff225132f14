package order_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// mustSearch searches and checks the order. An order that is not proven, as can
// happen when packs fit badly, is skipped by the properties below.
func mustSearch(t *rapid.T, r order.Request) order.Order {
	o, err := order.Search(r)
	if err != nil {
		t.Fatalf("Search(%+v): %v", r, err)
	}
	checkOrder(t, &r, &o)
	if !o.Proven {
		t.Skip("not proven")
	}
	return o
}

// TestMore checks that another offer, or more of one, never costs more.
func TestMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawYard(t, 3, 4, 60)
		before := mustSearch(t, r)
		i := rapid.IntRange(0, len(r.Offers)-1).Draw(t, "which")
		more := r
		more.Offers = slices.Clone(r.Offers)
		more.Offers[i].Stock += 3
		if after := mustSearch(t, more); after.Cost > before.Cost {
			t.Fatalf("3 more of offer %d: %d, without %d", i, after.Cost, before.Cost)
		}
		more.Offers = append(slices.Clone(r.Offers), drawOffer(t, int64(len(r.Needs))))
		if after := mustSearch(t, more); after.Cost > before.Cost {
			t.Fatalf("one more offer: %d, without %d", after.Cost, before.Cost)
		}
	})
}

// TestDouble checks that twice the prices, fees and trip cost is twice the
// cost.
func TestDouble(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawYard(t, 3, 4, 60)
		before := mustSearch(t, r)
		r.Offers = slices.Clone(r.Offers)
		for i := range r.Offers {
			o := &r.Offers[i]
			o.Price *= 2
			o.Breaks = slices.Clone(o.Breaks)
			for k := range o.Breaks {
				o.Breaks[k].Price *= 2
			}
		}
		if r.TripCost *= 2; r.Delivery != nil {
			r.Delivery.Fee *= 2
		}
		after := mustSearch(t, r)
		if after.Cost != 2*before.Cost || !slices.Equal(after.Haul, before.Haul) {
			t.Fatalf("doubled: %d %v, before %d %v", after.Cost, after.Haul, before.Cost, before.Haul)
		}
	})
}

// TestShuffle checks that the order of offers and materials changes nothing but
// ties.
func TestShuffle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawYard(t, 3, 4, 60)
		r.Aim = order.Aim(rapid.IntRange(0, 2).Draw(t, "aim"))
		before := mustSearch(t, r)
		r.Offers = rapid.Permutation(r.Offers).Draw(t, "shuffled")
		after := mustSearch(t, r)
		if after.Cost != before.Cost || after.LeftOver() != before.LeftOver() || after.Packs != before.Packs {
			t.Fatalf("shuffled: %+v, before %+v", after, before)
		}
	})
}

// TestBudget checks that however little work is allowed, there is an order and
// a bound that holds.
func TestBudget(t *testing.T) {
	for i := range 200 {
		rng := rand.New(rand.NewPCG(7, uint64(i)))
		r := randomYard(rng, 1+rng.IntN(8), 4)
		r.Aim = order.Aim(rng.IntN(3))
		full, err := order.Search(r)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := order.Search(r)
		if again.Cost != full.Cost || again.Work != full.Work {
			t.Errorf("%d: once %d in %d, once %d in %d", i, full.Cost, full.Work, again.Cost, again.Work)
		}
		for r.Budget = 1; r.Budget < 10_000; r.Budget *= 9 {
			some, err := order.Search(r)
			if err != nil {
				t.Fatal(err)
			}
			checkOrder(t, &r, &some)
			if r.Aim == order.LeastCost && full.Proven && (some.Bound > full.Cost || some.Cost < full.Cost) {
				t.Errorf("%d: budget %d: cost %d, bound %d, best %d", i, r.Budget, some.Cost, some.Bound, full.Cost)
			}
		}
	}
}

// TestPack compares Pack with the fewest trips that trying everything finds.
func TestPack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(low, high int64, what string) int64 { return rapid.Int64Range(low, high).Draw(t, what) }
		r := order.Request{TripCost: 1, Payload: units.Mass(n(0, 1, "payload?") * n(10, 30, "payload")),
			Room: units.Volume(n(0, 1, "room?") * n(10, 30, "room"))}
		b := newBrute(&r)
		var items []order.Item
		b.counts = nil
		for range n(0, 4, "kinds") {
			it := order.Item{Count: n(0, 6, "count"), Mass: units.Mass(n(0, 10, "mass")),
				Room: units.Volume(n(0, 10, "takes"))}
			items = append(items, it)
			r.Offers = append(r.Offers, order.Offer{Mass: it.Mass, Room: it.Room})
			b.counts = append(b.counts, it.Count)
		}
		want, _ := b.home(b.counts)
		got, err := order.Pack(items, r.Payload, r.Room)
		if err != nil || got.Count != want[1] || !got.Proven() {
			t.Fatalf("Pack(%+v, %d, %d) = %+v, %v, want %d trips", items, r.Payload, r.Room, got, err, want[1])
		}
		checkTrips(t, &r, got.Trips, b.counts, got.Count, r.Payload, r.Room)
	})
}

// TestPackMany checks that many packs of few kinds, or of kinds that fit badly,
// do not take long.
func TestPackMany(t *testing.T) {
	for _, items := range [][]order.Item{
		{{120, 18, 57}, {60, 25, 50}, {20, 26, 198}},
		{{1_000_000_000, 18, 57}, {999_999_999, 25, 50}, {7, 26, 198}},
		{{333, 301, 1}, {333, 251, 1}, {333, 211, 1}, {333, 107, 1}, {333, 93, 1}},
	} {
		got, err := order.Pack(items, 500, 1500)
		if err != nil {
			t.Fatal(err)
		}
		r := order.Request{}
		var counts []int64
		for _, it := range items {
			r.Offers = append(r.Offers, order.Offer{Mass: it.Mass, Room: it.Room})
			counts = append(counts, it.Count)
		}
		checkTrips(t, &r, got.Trips, counts, got.Count, 500, 1500)
		if float64(got.Count) > 1.12*float64(got.Least) {
			t.Errorf("Pack(%+v): %d trips, at least %d", items, got.Count, got.Least)
		}
	}
}
