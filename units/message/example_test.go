package message_test

import (
	"fmt"

	"example.org/barrow/units/message"
)

func ExampleOf() {
	hint := message.Of("{#0} is a unit of {=1}", "lb", "weight")
	fmt.Println(hint)
	// Output: lb is a unit of weight
}

func ExampleFill() {
	fmt.Println(message.Fill(nil, "{0} hole, {#1} deep", []string{"1", "18 in"}))
	// Output: 1 hole, 18 in deep
}
