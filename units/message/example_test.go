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
