package json_test

import (
	"fmt"

	"example.org/barrow/mix/json"
)

func ExampleParse() {
	plan := []byte(`{"beds": [{"name": "roses", "litres": 812.40}]}`)
	root, faults := json.Parse(plan, json.Limits{})
	for _, f := range faults {
		fmt.Println(f)
	}
	for _, bed := range root.Field("beds").Items {
		fmt.Println(bed.Field("name").Text, bed.Field("litres").Text)
	}
	// Output: roses 812.40
}

func ExampleParse_faults() {
	plan := []byte(`{
  "schema": 1,
  "schema": 1,
  "beds": [
    {"name": "roses", "litres": 50 L}
  ]
}`)
	_, faults := json.Parse(plan, json.Limits{})
	for _, f := range faults {
		fmt.Println(f)
	}
	// Output:
	// line 3, column 3: schema: this object has the key already, on line 2; keep one of the two
	// line 5, column 36: beds[0].litres: this is more than a number; a unit or a fraction makes it text, in double quotes: "50 L"
}

func ExampleWriter() {
	var w json.Writer
	w.BeginObject()
	w.Key("schema")
	w.Int(1)
	w.Key("needs")
	w.BeginArray()
	w.BeginObject()
	w.Key("material")
	w.String("bark-fines")
	w.Key("litres")
	w.Raw("812.4")
	w.Key("mass_kg")
	w.BeginArray()
	w.Int(270)
	w.Int(410)
	w.EndArray()
	w.EndObject()
	w.EndArray()
	w.Key("batches")
	w.BeginArray()
	w.EndArray()
	w.EndObject()
	fmt.Print(string(w.Bytes()))
	// Output:
	// {
	//   "schema": 1,
	//   "needs": [
	//     {"material": "bark-fines", "litres": 812.4, "mass_kg": [270, 410]}
	//   ],
	//   "batches": []
	// }
}

func ExampleNode_Field() {
	root, _ := json.Parse([]byte(`{"soil": {"kind": "clay"}}`), json.Limits{})
	fmt.Println(root.Field("soil").Field("kind").Text)
	fmt.Println(root.Field("pots").Field("count") == nil)
	// Output:
	// clay
	// true
}

func ExamplePosition() {
	plan := []byte("{\n  \"count\": -3\n}")
	root, _ := json.Parse(plan, json.Limits{})
	line, column := json.Position(plan, root.Field("count").Offset)
	fmt.Printf("line %d, column %d: %s: less than nothing\n", line, column, json.PathKey("", "count"))
	// Output: line 2, column 12: count: less than nothing
}
