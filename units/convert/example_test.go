package convert_test

import (
	"fmt"

	"example.org/barrow/units/convert"
)

func ExampleQuantity() {
	c, _ := convert.Quantity("2 yards", "cu ft")
	fmt.Println(c)
	c, _ = convert.Quantity("2 yards", "ft")
	fmt.Println(c)
	// Output:
	// 54 cu ft
	// 6 ft
}
