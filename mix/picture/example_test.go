package picture_test

import (
	"bytes"
	"fmt"

	"example.org/barrow/mix"
	"example.org/barrow/mix/picture"
)

func ExampleTasks() {
	p, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [
		{"kind": "cover", "area": "30 ft x 3 ft", "layer": "2 in", "material": "bark-mulch"}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range picture.Tasks(p) {
		fmt.Println(d.Kind, d.Width, d.Description)
	}
	// Output: mulch 320 The bed in section: 2 in of Bark mulch on the soil, to scale.
}

func ExampleSVG() {
	d := picture.Drawing{Title: "A line", Width: 320, Height: 20,
		Shapes: []picture.Shape{{Is: "line", Class: "grade", X: 8, Y: 10, W: 304}}}
	fmt.Println(string(bytes.TrimSpace(picture.SVG(&d, ""))))
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 320 20">
	// <title>A line</title>
	// <desc></desc>
	// <line x1="8" y1="10" x2="312" y2="10" class="grade"/>
	// </svg>
}
