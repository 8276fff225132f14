package yard_test

import (
	"fmt"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

func ExampleBags() {
	bed := 189 * units.CubicFoot // 7 cu yd
	fmt.Println(yard.Bags(bed, units.CubicYard), yard.Bags(bed+units.Litre, units.CubicYard))
	// Output: 7 8
}

// peat is a need for 10 cu ft of peat, of which 1 cu ft is on hand.
func peat() yard.Need {
	s := catalog.Plain(nil)
	i, _ := s.Index("peat")
	return yard.NewNeed(s.Material(i), i, units.Exactly(10*units.CubicFoot), units.Exactly(units.CubicFoot))
}

func ExampleNeed_Packs() {
	n := peat()
	for _, p := range n.Packs(units.US) {
		fmt.Println(p.CountText(), "x", p.Size, p.Bale)
	}
	// Output:
	// 6 (5 to 6) x 1 cu ft true
	// 3 x 2.2 cu ft true
	// 2 x 3 cu ft true
	// 2 x 3.8 cu ft true
	// 2 (1 to 2) x 5.5 cu ft true
}

func ExampleTerms_Buy() {
	var r doc.Reader
	price := units.Money(2250)
	bale := catalog.Size{Text: "3.8 cu ft", Volume: 38 * units.CubicFoot / 10}
	t := yard.Terms{Offers: []yard.Offer{{Material: "peat", Pack: bale, Price: &price}}}
	t.Check(&r)
	t.CheckOffers(&r, catalog.Plain(nil))
	o := t.Buy(&r, []yard.Need{peat()})
	fmt.Println(o.Lines[0].Count, o.Lines[0].Offer.Name(), o.Bill.Total, r.Err())
	// Output: 2 peat:3.8 cu ft 45.00 <nil>
}

func ExampleChanges() {
	var r doc.Reader
	bag := catalog.Size{Text: "2 cu ft", Volume: 2 * units.CubicFoot}
	t := yard.Terms{Offers: []yard.Offer{{Material: "peat", Pack: bag}}}
	t.CheckOffers(&r, catalog.Plain(nil))
	before := t.Buy(&r, []yard.Need{peat()})
	for _, c := range yard.Changes(yard.Side{Lines: before.Lines}, yard.Side{}) {
		fmt.Println(c.Pack, c.Before, c.After, c.Kind(), c.Why())
	}
	// Output: 2 cu ft 5 0 gone not-needed
}
