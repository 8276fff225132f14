package ground_test

import (
	"fmt"

	"example.org/barrow/mix/ground"
	"example.org/barrow/units"
)

func ExampleParseArea() {
	a, _ := ground.ParseArea("ring 20 ft x 14 ft")
	area, _ := a.Measure()
	fmt.Println(units.US.Area(area))
	_, err := ground.ParseArea("60 ft")
	fmt.Println(err)
	// Output:
	// 160 sq ft
	// "60 ft": did you mean "sq ft"? Or a shape, such as "60 ft x 4 ft" or "circle 14 ft"
}

func ExampleRoundTaper() {
	v, _ := ground.RoundTaper(12*units.Inch, 10*units.Inch, 10*units.Inch)
	fmt.Println(units.Both.Volume(v))
	// Output: 0.551 cu ft (15.6 L)
}

func ExampleSquareTaper() {
	v, _ := ground.SquareTaper(10*units.Inch, 7*units.Inch, 6*units.Inch) // 6 (100 + 70 + 49) / 3
	fmt.Println(int64(v/units.CubicInch), "cu in")
	// Output: 438 cu in
}

func ExampleBox() {
	v, ok := ground.Box(60*units.Foot, 4*units.Foot, 3*units.Inch)
	fmt.Println(units.US.Volume(v), ok)
	// Output: 60 cu ft true
}

func ExampleFilled() {
	full, _ := ground.Filled(12*units.Inch, 10*units.Inch, 10*units.Inch, 10*units.Inch, false)
	below, _ := ground.Filled(12*units.Inch, 10*units.Inch, 10*units.Inch, 9*units.Inch, false)
	fmt.Println(units.Metric.Volume(full), units.Metric.Volume(below))
	// Output: 15.6 L 13.8 L
}
