package lang_test

import (
	"fmt"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
)

// A plan in another language, with a comma in its figures; the job document is
// the same.
func Example() {
	t, err := lang.Parse([]byte(`{"language": "es", "library": {
		"Cover {0} with {1}": "Cubrir {0} con {1}",
		"Bark mulch": "Acolchado de corteza",
		"sq ft": "pie²|pies²", "cu ft": "pie³|pies³"
	}}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	job := []byte(`{"schema": 1, "tasks": [{"kind": "cover", "area": "30 ft x 3 ft", "layer": "2 in", "material": "bark-mulch"}]}`)
	p, err := mix.PlanDocument(job, func(j *mix.Job) { j.Language = t.Comma(true) })
	if err != nil {
		fmt.Println(string(report.Problems(err, t)))
		return
	}
	fmt.Println(p.Tasks[0].Title)
	fmt.Println(p.Printer().Volume(p.Needs[0].Buy.Plan * 102 / 100))
	// Output:
	// Cubrir 90 pies² con Acolchado de corteza
	// 15,3 pies³
}
