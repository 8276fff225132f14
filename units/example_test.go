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
