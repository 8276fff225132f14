package order_test

import (
	"errors"
	"fmt"

	"example.org/barrow/mix/order"
	"example.org/barrow/units"
)

// yard sells bark in bags and by the half yard, and peat in bales.
func yard() order.Request {
	bag := order.Offer{Material: 0, Yield: 2 * units.CubicFoot, Room: 2 * units.CubicFoot,
		Mass: 40 * units.Pound, Price: 475}
	bulk := order.Offer{Material: 0, Yield: units.CubicYard / 2, Room: units.CubicYard / 2,
		Mass: 500 * units.Pound, Price: 2100, Machine: true}
	bale := order.Offer{Material: 1, Yield: 7 * units.CubicFoot, Room: 38 * units.CubicFoot / 10,
		Mass: 58 * units.Pound, Price: 2250}
	return order.Request{
		Needs:   []units.Volume{29 * units.CubicFoot, 20 * units.CubicFoot},
		Offers:  []order.Offer{bag, bulk, bale},
		Payload: 1100 * units.Pound, Room: 2 * units.CubicYard, TripCost: 900,
		Slack: units.Millilitre,
	}
}

func ExampleSearch() {
	o, err := order.Search(yard())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("counts", o.Haul, "trips", o.Trips)
	fmt.Println("goods", o.Goods, "driving", o.Driving, "cost", o.Cost, "proven", o.Proven)
	for _, t := range o.Drives {
		fmt.Println(t.Times, "x", t.Counts)
	}
	// Output:
	// counts [1 2 3] trips 2
	// goods 114.25 driving 18.00 cost 132.25 proven true
	// 1 x [1 2 1]
	// 1 x [0 0 2]
}

func ExampleFrontier() {
	r := yard()
	r.Offers = append(r.Offers, order.Offer{Material: 1, Yield: 2 * units.CubicFoot, Room: 2 * units.CubicFoot,
		Mass: 30 * units.Pound, Price: 990})
	orders, _ := order.Frontier(r, 3)
	for _, o := range orders {
		fmt.Println(o.Haul, o.Cost, "left", units.CubicFeet(o.LeftOver()))
	}
	// Output:
	// [1 2 3 0] 132.25 left 1 cu ft
	// [1 2 2 3] 139.45 left 0 cu ft
}

func ExamplePack() {
	p, err := order.Pack([]order.Item{
		{Count: 30, Mass: 40 * units.Pound, Room: 2 * units.CubicFoot},
		{Count: 2, Mass: 500 * units.Pound, Room: units.CubicYard / 2},
	}, 1100*units.Pound, 2*units.CubicYard)
	fmt.Println(p.Count, p.Proven(), err)
	for _, t := range p.Trips {
		fmt.Println(t.Times, "x", t.Counts)
	}
	// Output:
	// 2 true <nil>
	// 2 x [15 1]
}

func ExampleError() {
	r := yard()
	r.Offers = r.Offers[:2]
	_, err := order.Search(r)
	fmt.Println(err, errors.Is(err, order.ErrNoOffer))
	// Output: material 1: needed and not on offer true
}

func ExampleOrder_Pay() {
	r := yard()
	r.Offers[2].Deposit = 500
	o, _ := order.Search(r)
	fmt.Println(o.Cost, o.Deposit, o.Pay())
	// Output: 132.25 15.00 147.25
}

func ExampleOffer_Paid() {
	o := order.Offer{Price: 475, Breaks: []order.Break{{From: 10, Price: 425}}}
	goods, tax := o.Paid(10, units.Percent(8))
	fmt.Println(goods, tax)
	// Output: 42.50 3.40
}
