package yard_test

import (
	"fmt"

	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

func ExampleBags() {
	bed := 189 * units.CubicFoot // 7 cu yd
	fmt.Println(yard.Bags(bed, units.CubicYard), yard.Bags(bed+units.Litre, units.CubicYard))
	// Output: 7 8
}
