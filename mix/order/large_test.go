package order_test

import (
	"math/rand/v2"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// large is a request for one material that is offered in n packs, each of its own
// size and price; with changes each of them as change makes it.
func large(n int, change func(i int, o *order.Offer)) order.Request {
	rng := rand.New(rand.NewPCG(13, uint64(n)))
	r := order.Request{Needs: []units.Volume{17_000 * units.Litre}, Payload: 500 * units.Kilogram,
		Room: 1500 * units.Litre, TripCost: 900, Budget: 200_000}
	for i := range n {
		litres := 10 + rng.Int64N(190)
		o := order.Offer{Yield: units.Volume(litres) * units.Litre, Room: units.Volume(litres) * units.Litre,
			Mass: units.Mass(litres) * units.Kilogram / 3, Price: units.Money(litres*5 + rng.Int64N(litres*5))}
		if change != nil {
			change(i, &o)
		}
		r.Offers = append(r.Offers, o)
	}
	return r
}

// steps is n price breaks, each for one more and a cent cheaper.
func steps(n int) (list []order.Break) {
	for i := range n {
		list = append(list, order.Break{From: int64(i + 2), Price: units.Money(5000 - i)})
	}
	return list
}

// TestLargeIsBounded: the work of a search is counted, and so ends with its
// budget, however long the lists of offers and of breaks are; and its memory
// grows with what is bought, not with what is on offer. The clock takes no part.
func TestLargeIsBounded(t *testing.T) {
	requests := map[string]order.Request{
		"offers":    large(2000, nil),
		"one each":  large(2000, func(_ int, o *order.Offer) { o.Stock, o.Limited = 1, true }),
		"breaks":    large(20, func(_ int, o *order.Offer) { o.Price, o.Breaks = 5001, steps(1000) }),
		"delivered": large(2000, func(_ int, o *order.Offer) { o.CanDeliver = true }),
		"left over": large(2000, nil),
		"lifting":   large(2000, nil),
	}
	for name, r := range requests {
		switch name {
		case "delivered":
			r.Delivery = &order.Delivery{Fee: 4500, Capacity: 2300 * units.Litre, Payload: 1100 * units.Kilogram}
		case "left over":
			r.Aim = order.LeastLeft
		case "lifting":
			r.Aim = order.LeastLifting
		}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		o, err := order.Search(r)
		runtime.ReadMemStats(&after)
		require.NoError(t, err, name)
		require.Less(t, o.Work, int64(3*r.Budget), "%s: units of work", name)
		require.Less(t, (after.TotalAlloc-before.TotalAlloc)>>20, uint64(64), "%s: MB allocated", name)
		checkOrder(t, &r, &o)
		t.Logf("%s: %d units of work, %d MB, proven %v", name, o.Work, (after.TotalAlloc-before.TotalAlloc)>>20, o.Proven)
	}
}

// TestPaidByBreaks: what a count costs is what the last break that it reaches
// says, looked for one by one.
func TestPaidByBreaks(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		o := order.Offer{Price: units.Money(rng.Int64N(1000))}
		from := int64(1)
		for range rng.IntN(80) {
			from += 1 + rng.Int64N(3)
			o.Breaks = append(o.Breaks, order.Break{From: from, Price: units.Money(rng.Int64N(1000))})
		}
		for count := range from + 3 {
			want := o.Price
			for _, b := range o.Breaks {
				if count >= b.From {
					want = b.Price
				}
			}
			goods, _ := o.Paid(count, units.Ratio{})
			require.Equal(t, want*units.Money(count), goods)
		}
	}
}
