package answer_test

import (
	"fmt"

	"example.org/barrow/wasm/answer"
)

func ExampleSession_Answer() {
	var s answer.Session
	job := []byte(`{"schema": 1, "tasks": [
		{"kind": "cover", "area": "30 ft x 3 ft", "layer": "2 in", "material": "bark-mulch"}]}`)
	fmt.Println(len(s.Answer("plan", job)) > 0)
	fmt.Printf("%s", s.Answer("plan", []byte(`{"schema": 1, "tasks": 3}`)))
	// Output:
	// true
	// {
	//   "problems": [
	//     {"path": "tasks", "code": "json.kind", "value": "3", "hint": "tasks are a list in [ ], not a number"}
	//   ]
	// }
}
