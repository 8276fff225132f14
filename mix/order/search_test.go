package order_test

import (
	"errors"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// TestBrute compares Search with the order that trying everything finds, down
// to the last tie.
func TestBrute(t *testing.T) {
	t.Run("any", rapid.MakeCheck(func(t *rapid.T) { checkBrute(t, drawRequest(t)) }))
	t.Run("yard", rapid.MakeCheck(func(t *rapid.T) { checkBrute(t, drawYard(t, 3, 2, 40)) }))
}

func checkBrute(t *rapid.T, r order.Request) {
	r.Aim = order.Aim(rapid.IntRange(0, 2).Draw(t, "aim"))
	want, ok := bruteBest(&r)
	got, err := order.Search(r)
	if (err == nil) != ok {
		t.Fatalf("Search(%+v) = %+v, %v, want order: %v", r, got, err, ok)
	}
	if !ok {
		return
	}
	checkOrder(t, &r, &got)
	if !got.Proven {
		t.Fatalf("Search(%+v) = %+v, want it proven", r, got)
	}
	if diff := cmp.Diff(want, asChoice(&r, &got), cmp.AllowUnexported(choice{})); diff != "" {
		t.Fatalf("Search(%+v): -want +got\n%s", r, diff)
	}
}

// TestFrontier compares Frontier with every choice that no other beats.
func TestFrontier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawYard(t, 2, 2, 24)
		want := bruteFront(&r)
		got, err := order.Frontier(r, 1000)
		if err != nil {
			t.Fatal(err)
		}
		var points [][2]int64
		for i := range got {
			checkOrder(t, &r, &got[i])
			points = append(points, [2]int64{int64(got[i].Cost), int64(got[i].LeftOver())})
		}
		if diff := cmp.Diff(want, points); diff != "" {
			t.Fatalf("Frontier(%+v): -want +got\n%s", r, diff)
		}
		most := rapid.IntRange(0, 4).Draw(t, "most")
		few, err := order.Frontier(r, most)
		if err != nil || len(few) != min(most, len(want)) || most > 0 && few[0].Cost != got[0].Cost {
			t.Fatalf("Frontier(%+v, %d) = %+v, %v", r, most, few, err)
		}
	})
}

func asChoice(r *order.Request, o *order.Order) choice {
	c := choice{cost: int64(o.Cost), packs: o.Packs, left: int64(o.LeftOver()), counts: make([]int64, len(r.Offers)),
		trips: o.Trips, loads: o.Loads}
	for i := range c.counts {
		c.counts[i] = o.Haul[i] + o.Deliver[i]
	}
	switch r.Aim {
	case order.LeastLeft:
		c.figure = c.left
	case order.LeastLifting:
		c.figure = c.packs
	}
	return c
}

// fatal is what testing and rapid have in common.
type fatal interface {
	Helper()
	Fatalf(string, ...any)
}

// checkOrder checks what holds for every order: the needs, the stock, the
// minimums, the vehicles and the sums.
func checkOrder(t fatal, r *order.Request, o *order.Order) {
	t.Helper()
	var goods, tax, deposit units.Money
	var packs int64
	have := make([]units.Volume, len(r.Needs))
	for i := range r.Offers {
		of, n := &r.Offers[i], o.Haul[i]+o.Deliver[i]
		if o.Haul[i] < 0 || o.Deliver[i] < 0 || n > 0 && n < of.Least || of.Limited && n > of.Stock {
			t.Fatalf("offer %d: %d of it, least %d, stock %d (%v)", i, n, of.Least, of.Stock, of.Limited)
		}
		have[of.Material] += units.Volume(n) * of.Yield
		g, x := price(of, n, r.Tax.Num(), r.Tax.Den())
		goods, tax, deposit = goods+units.Money(g), tax+units.Money(x), deposit+units.Money(n)*of.Deposit
		if !of.Machine {
			packs += n
		}
	}
	for m, need := range r.Needs {
		if have[m]+r.Slack < need {
			t.Fatalf("material %d: %d bought of %d", m, have[m], need)
		}
		if left := max(0, have[m]-need); left != o.Left[m] {
			t.Fatalf("material %d: left %d, want %d", m, o.Left[m], left)
		}
	}
	driving, fees := units.Money(o.Trips)*r.TripCost, units.Money(0)
	if r.Delivery != nil {
		fees = units.Money(o.Loads) * r.Delivery.Fee
	}
	sums := []units.Money{goods, tax, driving, fees, goods + tax + driving + fees,
		deposit, o.Cost + deposit, units.Money(packs)}
	got := []units.Money{o.Goods, o.Tax, o.Driving, o.Fees, o.Cost, o.Deposit, o.Pay(), units.Money(o.Packs)}
	if diff := cmp.Diff(sums, got); diff != "" {
		t.Fatalf("goods, tax, driving, fees, cost, deposit, pay, packs: -want +got\n%s\n%+v", diff, o)
	}
	if o.Bound > o.Cost || o.Proven && o.Bound != o.Cost {
		t.Fatalf("bound %d, cost %d, proven %v", o.Bound, o.Cost, o.Proven)
	}
	checkTrips(t, r, o.Drives, o.Haul, o.Trips, r.Payload, r.Room)
	if r.Delivery != nil {
		checkTrips(t, r, o.Drops, o.Deliver, o.Loads, r.Delivery.Payload, r.Delivery.Capacity)
	} else if o.Loads != 0 {
		t.Fatalf("%d loads without a delivery", o.Loads)
	}
	for i, n := range o.Deliver {
		if n > 0 && !r.Offers[i].CanDeliver {
			t.Fatalf("offer %d is delivered and cannot be", i)
		}
	}
}

// checkTrips checks that trips carry every pack once, and none too much.
func checkTrips(t fatal, r *order.Request, trips []order.Trip, want []int64, number int64,
	payload units.Mass, room units.Volume) {
	t.Helper()
	sent := make([]int64, len(want))
	for _, trip := range trips {
		var mass units.Mass
		var volume units.Volume
		for i, n := range trip.Counts {
			mass += units.Mass(n) * r.Offers[i].Mass
			volume += units.Volume(n) * r.Offers[i].Room
			sent[i] += n * trip.Times
		}
		if payload > 0 && mass > payload || room > 0 && volume > room {
			t.Fatalf("trip %+v: mass %d of %d, room %d of %d", trip, mass, payload, volume, room)
		}
		number -= trip.Times
	}
	if !slices.Equal(want, sent) || number != 0 {
		t.Fatalf("trips %+v carry %v, want %v; %d trips over", trips, sent, want, -number)
	}
}

func codeOf(err error) order.Code {
	var e *order.Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}
