package units_test

import (
	"fmt"

	"example.org/barrow/units"
)

func ExampleParseVolume() {
	bag, _ := units.ParseVolume("1 1/2 cu ft")
	fmt.Println(bag)
	_, err := units.ParseVolume("40 qt")
	fmt.Println(err)
	// Output:
	// 42.475269888 L
	// "40 qt": dry or liquid? write "dry qt" or "liq qt": they differ by 16%
}

func ExampleParseLength() {
	l, _ := units.ParseLength(`2' 6"`)
	fmt.Println(l, "=", units.US.Length(l))
	// Output: 762 mm = 2 ft 6 in
}

func ExampleParseRatio() {
	r, _ := units.ParseRatio("12.5%")
	fmt.Println(r.Num(), "in", r.Den())
	// Output: 1 in 8
}

func ExampleParseDims() {
	d, _ := units.ParseDims("60 x 4 ft")
	bed, _ := d[0].By(d[1])
	fmt.Println(units.Both.Area(bed))
	// Output: 240 sq ft (22.3 sq m)
}

func ExampleArea_Deep() {
	bed, _ := units.ParseArea("240 sq ft")
	bark, _ := bed.Deep(3 * units.Inch)
	fmt.Println(units.CubicFeet(bark), "or", units.CubicYards(bark))
	// Output: 60 cu ft or 2.22 cu yd
}

func ExampleParseArea() {
	a, _ := units.ParseArea("240 sq ft")
	fmt.Println(a, "=", units.Metric.Area(a))
	// Output: 22.2967296 sq m = 22.3 sq m
}

func ExampleParseMass() {
	m, _ := units.ParseMass("1 lb 8 oz")
	fmt.Println(m, "=", units.US.Mass(m))
	// Output: 0.680388555 kg = 1 1/2 lb
}

func ExampleParseDensity() {
	d, _ := units.ParseDensity("1112 lb/cu yd")
	m, ok := units.CubicYard.Mass(d)
	fmt.Println(units.Both.Mass(m), ok)
	// Output: 1112 lb (504 kg) true
}

func ExampleParseMoney() {
	price, _ := units.ParseMoney("4.75")
	cost, ok := price.Times(15)
	fmt.Println(cost, ok)
	_, err := units.ParseMoney("$5")
	fmt.Println(err)
	// Output:
	// 71.25 true
	// "$5": write the amount alone, such as 4.75; the job names its currency once
}

func ExampleMeasure_Volume() {
	v := 3 * units.CubicFoot / 2
	fmt.Println(units.US.Volume(v), units.Metric.Volume(v), units.Both.Volume(v))
	// Output: 1 1/2 cu ft 42.5 L 1 1/2 cu ft (42.5 L)
}

func ExampleRange_Minus() {
	need := units.Range{Low: 8 * units.Litre, Plan: 10 * units.Litre, High: 12 * units.Litre}
	rest, ok := need.Minus(units.Exactly(9 * units.Litre))
	fmt.Println(rest.Low, rest.Plan, rest.High, ok)
	// Output: 0 L 1 L 3 L true
}

func ExampleParseNumber() {
	fmt.Println(units.ParseNumber("1 1/2"))
	// Output: 3 2 <nil>
}

func ExampleNewRatio() {
	r, err := units.NewRatio(5, 40)
	fmt.Println(r, r.Num(), r.Den(), err)
	// Output: 12.5% 1 8 <nil>
}

func ExampleVolume_Share() {
	part, rest := units.Litre.Share(1, 3)
	fmt.Println(part, rest)
	// Output: 0.333333333 L 1
}
