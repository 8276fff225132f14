package lang_test

import (
	"fmt"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
	"example.org/barrow/units"
)

// Example writes a plan in another language, with a comma in its figures. The job
// document is the same.
func Example() {
	es, err := lang.Parse([]byte(`{"language": "es", "library": {
		"Cover {0} with {1}": "Cubrir {0} con {1}",
		"Bark mulch": "Acolchado de corteza",
		"sq ft": "pie²|pies²", "cu ft": "pie³|pies³"
	}}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	job := []byte(`{"schema": 1, "tasks": [
		{"kind": "cover", "area": "30 ft x 3 ft", "layer": "2 in", "material": "bark-mulch"}]}`)
	p, err := mix.PlanDocument(job, func(j *mix.Job) { j.Language = es.Comma(true) })
	if err != nil {
		fmt.Println(string(report.Problems(err, es)))
		return
	}
	fmt.Println(p.Tasks[0].Title)
	fmt.Println(p.Printer().Volume(p.Needs[0].Buy.Plan * 102 / 100))
	// Output:
	// Cubrir 90 pies² con Acolchado de corteza
	// 15,3 pies³
}

func ExampleParse() {
	es, err := lang.Parse([]byte(`{"language": "es", "decimal": ",",
		"library": {"{0} hole": "{0} hoyo", "{0} holes": "{0} hoyos", "cu ft": "pie³|pies³"}}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	p := lang.Printer{Language: es}
	fmt.Println(p.Count(3, "{0} hole", "{0} holes"), p.Volume(287*units.CubicFoot/10))
	// Output: 3 hoyos 28,7 pies³
}

func ExamplePrinter_TradeVolume() {
	var p lang.Printer // English, US units
	fmt.Println(p.TradeVolume(54 * units.CubicFoot))
	// Output: 54 cu ft (2 cu yd)
}
