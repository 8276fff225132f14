package yard_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	gocmp "github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestCrossing compares bags of 1 cu ft at 1.00 with steps of 10 cu ft at 5.00,
// worked out by hand. Five bags cost as much as a step and the sixth makes them
// dearer. Past 10 cu ft eleven bags cost more than two steps, and from there on
// bulk stays cheaper.
func TestCrossing(t *testing.T) {
	p, err := mix.PlanDocument([]byte(mulchJob(
		`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "10 cu ft", "price": "5.00"}`, ``)))
	require.NoError(t, err)
	list := p.Crossings()
	if len(list) != 1 || list[0].Always || list[0].Never {
		t.Fatalf("%+v", list)
	}
	k := &list[0]
	for _, at := range k.Points {
		bags := units.Money(yard.Bags(at.Volume, units.CubicFoot)) * 100
		bulk := units.Money(yard.Bags(at.Volume, 10*units.CubicFoot)) * 500
		if at.Bags != bags || at.Bulk != bulk {
			t.Errorf("%v costs %s in bags and %s in bulk, want %s and %s", at.Volume, at.Bags, at.Bulk, bags, bulk)
		}
	}
	foot := units.CubicFoot
	want := []yard.Stretch{
		{Over: 0, UpTo: 4 * foot, Cheaper: yard.CheaperBags},
		{Over: 4 * foot, UpTo: 5 * foot, Cheaper: yard.CheaperSame},
		{Over: 5 * foot, UpTo: 20 * foot, Cheaper: yard.CheaperBulk},
	}
	if diff := gocmp.Diff(want, k.Stretches); diff != "" {
		t.Errorf("stretches (-want +got):\n%s", diff)
	}
	if k.From != 5*foot || k.Bags != 1000 || k.Bulk != 500 || k.Cheaper != yard.CheaperBulk {
		t.Errorf("%+v", k)
	}
}

// TestCrossingSentence checks the words for every way in which bags and bulk
// can stand to each other. The need is 10 cu ft; costs are by hand.
func TestCrossingSentence(t *testing.T) {
	const by = "Bark mulch, bought by itself: the 10 cu ft that you need cost "
	for _, c := range []struct{ offers, more, want string }{
		{`{"pack": "1 cu ft", "price": "9.00"}, {"bulk": "1 cu ft", "price": "5.00"}`, ``,
			by + "90.00 in bags or 50.00 in bulk, trips counted. Bulk costs less for every volume looked at, up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "1 cu ft", "price": "5.00"}`, `, "currency": "$"`,
			by + "$10.00 in bags or $50.00 in bulk, trips counted. Bulk costs less for no volume looked at, up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "2.60"}, {"bulk": "10 cu ft", "price": "24.00"}`, ``,
			by + "26.00 in bags or 24.00 in bulk, trips counted. " +
				"Bulk costs less over 9 cu ft up to 10 cu ft and over 18 cu ft; looked at up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00", "stock": 7}, {"bulk": "10 cu ft", "price": "9.00"}`, ``,
			"Bark mulch, bought by itself: the 10 cu ft that you need cost 9.00 in bulk, trips counted; bags alone do not cover it. " +
				"Bulk costs less over 7 cu ft; looked at up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "5 cu ft", "price": "1.00", "stock": 1}`, ``,
			"Bark mulch, bought by itself: the 10 cu ft that you need cost 10.00 in bags, trips counted; bulk alone does not cover it. " +
				"Bulk costs less over 1 cu ft up to 5 cu ft; looked at up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00", "stock": 6}, {"bulk": "5 cu ft", "price": "1.00", "stock": 1}`, ``,
			"Bark mulch: neither bags alone nor bulk alone cover the 10 cu ft that you need. " +
				"Bulk costs less over 1 cu ft up to 5 cu ft; looked at up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "1.5 cu ft", "price": "1.40"}`, ``,
			by + "10.00 in bags or 9.80 in bulk, trips counted. Bulk costs less over 14 cu ft " +
				"and in 7 stretches below that; looked at up to 20 cu ft"},
		{`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "1.5 cu ft", "price": "1.45"}`, ``,
			by + "10.00 in bags or 10.15 in bulk, trips counted. Bulk costs less in 11 stretches " +
				"from 1 cu ft to 19 1/2 cu ft; looked at up to 20 cu ft"},
	} {
		p, err := mix.PlanDocument([]byte(mulchJob(c.offers, c.more)))
		require.NoError(t, err)
		if got := p.Crossings()[0].Sentence(p.Printer()); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.offers, got, c.want)
		}
	}
}

// bruteOffer is a pack by the cubic foot, for [brute].
type bruteOffer struct {
	holds, stock, least int64
	price, more         units.Money // more is the price of each from five on
}

// brute is the least cost of covering v feet: every number of each pack is
// tried, up to five more than v for the break, and packs are loaded the largest first, which takes the fewest trips
// where none is over 2 and the trip holds a whole number of feet. It shares no
// code with the search. -1 is never.
func brute(offers []bruteOffer, v, room int64, trip units.Money, tax int64) units.Money {
	best := units.Money(-1)
	counts := make([]int64, len(offers))
	var try func(i int, held int64)
	try = func(i int, held int64) {
		if i < len(offers) {
			for n := int64(0); n <= min(v+5, offers[i].stock); n++ {
				if n == 0 || n >= offers[i].least {
					counts[i] = n
					try(i+1, held+n*offers[i].holds)
				}
			}
			return
		}
		if held < v {
			return
		}
		var cost units.Money
		var loose []int64
		for k, n := range counts {
			price := offers[k].price
			if n >= 5 && offers[k].more > 0 {
				price = offers[k].more
			}
			goods := price * units.Money(n)
			cost += goods + (2*goods*units.Money(tax)+100)/200
			for range n {
				loose = append(loose, offers[k].holds)
			}
		}
		if cost += trip * drives(loose, room); best < 0 || cost < best {
			best = cost
		}
	}
	try(0, 0)
	return best
}

// drives is how many trips of so much room packs of 1 and 2 take.
func drives(loose []int64, room int64) units.Money {
	slices.Sort(loose)
	slices.Reverse(loose)
	var trips []int64
	for _, size := range loose {
		i := slices.IndexFunc(trips, func(full int64) bool { return full+size <= room })
		if i < 0 {
			i, trips = len(trips), append(trips, 0)
		}
		trips[i] += size
	}
	return units.Money(len(trips))
}

// TestCrossingsBrute holds both costs at the need and every step of every
// stretch to brute force, for random prices, stocks, breaks, minimums, tax and
// trips.
func TestCrossingsBrute(t *testing.T) {
	turned := 0
	for seed := range uint64(150) {
		rng := rand.New(rand.NewPCG(seed, 7))
		need, room, trip, tax := 2+rng.Int64N(6), 2+rng.Int64N(5), units.Money(rng.Int64N(3)*150), rng.Int64N(3)*7
		var bags, bulk []bruteOffer
		var offers []yard.Offer
		for i := range 2 + rng.IntN(2) {
			b := bruteOffer{holds: 1 + rng.Int64N(2), stock: 99, least: rng.Int64N(3)}
			b.price = units.Money(b.holds)*300 + units.Money(rng.Int64N(250))
			o := yard.Offer{Material: "bark-mulch", Price: &b.price, Least: b.least}
			if rng.IntN(4) == 0 {
				b.stock = 2 + rng.Int64N(6)
				o.Stock = &b.stock
			}
			if rng.IntN(3) == 0 {
				b.more = b.price * 8 / 10
				o.Breaks = []yard.Break{{From: 5, Price: &b.more}}
			}
			size := catalog.Size{Text: fmt.Sprint(b.holds, " cu ft"), Volume: units.Volume(b.holds) * units.CubicFoot}
			if i%2 == 0 {
				o.Pack, bags = size, append(bags, b)
			} else {
				o.Bulk, bulk = size, append(bulk, b)
			}
			offers = append(offers, o)
		}
		terms := yard.Terms{Offers: offers, Tax: units.Percent(uint16(tax))}
		terms.Haul = yard.Haul{Room: units.Volume(room) * units.CubicFoot, TripCost: trip}
		var r doc.Reader
		s := catalog.Plain(nil)
		terms.CheckOffers(&r, s)
		index, _ := s.Index("bark-mulch")
		list := terms.Crossings([]yard.Need{yard.NewNeed(s.Material(index), index,
			units.Exactly(units.Volume(need)*units.CubicFoot), units.Range{})})
		if r.Err() != nil || len(list) != 1 {
			t.Fatalf("%d: %v, %d crossings", seed, r.Err(), len(list))
		}
		k := &list[0]
		cost := func(kind []bruteOffer, v int64) units.Money { return brute(kind, v, room, trip, tax) }
		if k.Bags != cost(bags, need) || k.Bulk != cost(bulk, need) {
			t.Errorf("%d: the need costs %v and %v, want %v and %v", seed, k.Bags, k.Bulk, cost(bags, need), cost(bulk, need))
		}
		if k.Stretches[0].Over != 0 || k.Stretches[len(k.Stretches)-1].UpTo != 2*units.Volume(need)*units.CubicFoot {
			t.Errorf("%d: the stretches are from %v", seed, k.Stretches)
		}
		for i, s := range k.Stretches {
			if i > 0 && (s.Over != k.Stretches[i-1].UpTo || s.Cheaper == k.Stretches[i-1].Cheaper) {
				t.Errorf("%d: stretch %d does not follow: %v", seed, i, k.Stretches)
			}
			// Packs hold whole feet, so costs change at whole feet alone.
			for v := int64(s.Over / units.CubicFoot); v < int64(s.UpTo/units.CubicFoot); v++ {
				if want := dearer(cost(bags, v+1), cost(bulk, v+1)); s.Cheaper != want {
					t.Errorf("%d: from %d to %d cu ft: %v costs less, want %v", seed, v, v+1, s.Cheaper, want)
				}
			}
			if s.Over%units.CubicFoot != 0 || s.UpTo%units.CubicFoot != 0 {
				t.Errorf("%d: %v does not end at a whole foot", seed, s)
			}
		}
		if len(k.Stretches) > 2 {
			turned++
		}
	}
	if turned < 30 {
		t.Errorf("only %d of them turn more than once", turned)
	}
}

// dearer says which of two costs is the cheaper; -1 is not to be had.
func dearer(bags, bulk units.Money) yard.Cheaper {
	switch {
	case bags < 0 && bulk < 0:
		return yard.CheaperNeither
	case bags == bulk:
		return yard.CheaperSame
	case bags < 0 || bulk >= 0 && bulk < bags:
		return yard.CheaperBulk
	}
	return yard.CheaperBags
}

// TestCrossingsBounded checks that many small steps are neither all looked at
// nor told wrong: a need of 40,000 steps, prices 1 % and 10 % apart, against
// counts by division.
func TestCrossingsBounded(t *testing.T) {
	for _, c := range []struct {
		bag, step units.Money
		known     bool
	}{{100, 990, false}, {100, 900, true}} {
		foot := units.CubicFoot
		terms := yard.Terms{Offers: []yard.Offer{
			{Material: "bark-mulch", Pack: catalog.Size{Text: "1 cu ft", Volume: foot}, Price: &c.bag},
			{Material: "bark-mulch", Bulk: catalog.Size{Text: "10 cu ft", Volume: 10 * foot}, Price: &c.step},
		}}
		var r doc.Reader
		s := catalog.Plain(nil)
		terms.CheckOffers(&r, s)
		index, _ := s.Index("bark-mulch")
		k := terms.Crossings([]yard.Need{yard.NewNeed(s.Material(index), index, units.Exactly(20_000*foot), units.Range{})})[0]
		if len(k.Points) > 2*800 {
			t.Errorf("%d points", len(k.Points))
		}
		known := true
		rng := rand.New(rand.NewPCG(1, 1))
		for _, s := range k.Stretches {
			for range 200 {
				v := s.Over + 2*catalog.Slack + units.Volume(rng.Int64N(int64(s.UpTo-s.Over-2*catalog.Slack)))
				want := dearer(c.bag*units.Money(yard.Bags(v, foot)), c.step*units.Money(yard.Bags(v, 10*foot)))
				if s.Cheaper != want && s.Cheaper != yard.CheaperUnknown {
					t.Fatalf("at %v %v costs less, want %v", v, s.Cheaper, want)
				}
			}
			known = known && s.Cheaper != yard.CheaperUnknown
		}
		if known != c.known || k.Cheaper != yard.CheaperBulk {
			t.Errorf("steps at %v: all known %v, want %v; at the need %v", c.step, known, c.known, k.Cheaper)
		}
	}
}

// TestCrossingsShare checks that the work is enough for ten materials with three
// offers each, a payload and trips that are paid for.
func TestCrossingsShare(t *testing.T) {
	s := catalog.Plain(nil)
	terms := yard.Terms{Haul: yard.Haul{Payload: 1100 * units.Pound, TripCost: 900, Room: 2 * units.CubicYard}}
	bag, large, step := units.Money(475), units.Money(700), units.Money(2100)
	foot := units.CubicFoot
	var needs []yard.Need
	for _, id := range []string{"bark-fines", "bark-mulch", "coir", "compost", "hardwood-mulch", "leaf-mould",
		"peat", "perlite", "pine-straw", "vermiculite", "wood-chips", "potting-mix", "straw"} {
		index, ok := s.Index(id)
		if !ok || len(needs) == 10 {
			continue
		}
		needs = append(needs, yard.NewNeed(s.Material(index), index, units.Exactly(69*foot), units.Range{}))
		terms.Offers = append(terms.Offers,
			yard.Offer{Material: id, Pack: catalog.Size{Text: "2 cu ft", Volume: 2 * foot}, Price: &bag},
			yard.Offer{Material: id, Pack: catalog.Size{Text: "3 cu ft", Volume: 3 * foot}, Price: &large},
			yard.Offer{Material: id, Bulk: catalog.Size{Text: "1/2 cu yd", Volume: units.CubicYard / 2}, Price: &step})
	}
	var r doc.Reader
	terms.CheckOffers(&r, s)
	list := terms.Crossings(needs)
	if len(needs) < 8 || len(list) < 8 {
		t.Fatalf("%d crossings of %d needs", len(list), len(needs))
	}
	for _, k := range list {
		if slices.ContainsFunc(k.Stretches, func(s yard.Stretch) bool { return s.Cheaper == yard.CheaperUnknown }) {
			t.Errorf("%s: not all worked out: %v", k.Material.ID, k.Stretches)
		}
	}
}

// TestOptions checks that dearer choices leave less over, and that the first is
// the plan's own.
func TestOptions(t *testing.T) {
	p, err := mix.PlanDocument(mix.Sample())
	require.NoError(t, err)
	list := p.Options(6)
	if len(list) < 2 || list[0].Bill != p.Bill {
		t.Fatalf("%d choices, the first %+v, want %+v", len(list), list[0].Bill, p.Bill)
	}
	for i := 1; i < len(list); i++ {
		if list[i].Bill.Total <= list[i-1].Bill.Total || list[i].Left >= list[i-1].Left {
			t.Errorf("choice %d costs %s and leaves %v, after %s and %v",
				i, list[i].Bill.Total, list[i].Left, list[i-1].Bill.Total, list[i-1].Left)
		}
	}
}
