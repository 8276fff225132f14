package mix_test

import (
	"fmt"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

func ExamplePlanDocument() {
	p, err := mix.PlanDocument([]byte(`{
		"schema": 1,
		"tasks": [{"kind": "amend", "area": "60 ft x 4 ft", "layer": "3 in", "into": "9 in", "material": "bark-fines"}],
		"offers": [{"material": "bark-fines", "bulk": "1/2 cu yd", "price": "21.00"}]
	}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Printer().TradeVolume(p.Needs[0].Buy.Plan))
	fmt.Println(p.Lines[0].Count, "x", p.Lines[0].Offer.Bulk.Text, "for", p.Bill.Goods)
	// Output:
	// 60 cu ft (2.22 cu yd)
	// 5 x 1/2 cu yd for 105.00
}

func ExampleProblems() {
	_, err := mix.PlanDocument([]byte(`{
		"schema": 1,
		"tasks": [{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 inchs", "material": "bark-mulhc"}]
	}`))
	for _, p := range doc.ProblemsIn(err) {
		fmt.Println(p)
	}
	// Output:
	// tasks[0].layer: 3 inchs: did you mean "in"?
	// tasks[0].material: bark-mulhc: did you mean "bark-mulch"?
}

func ExampleJob_Plan() {
	settle := units.Percent(10)
	job := mix.Job{Tasks: []task.Task{{
		Material: "potting-mix",
		Settle:   &settle,
		Work:     &task.Fill{Containers: []task.Container{{Count: 10, Holds: catalog.Size{Volume: 9 * units.Litre}}}},
	}}}
	p, err := job.Plan()
	fmt.Println(p.Needs[0].Buy.Plan, err)
	// Output: 100 L <nil>
}

func ExamplePlan_Working() {
	p, _ := mix.PlanDocument([]byte(`{
		"schema": 1,
		"tasks": [{"kind": "amend", "area": "circle 14 ft", "share": "25%", "into": "12 in", "material": "compost"}]
	}`))
	for s := range p.Working() {
		if s.Task == 0 && s.Material == "" {
			fmt.Println(s.Step, "=", s.Figure)
		}
	}
	// Output:
	// the bed: circle 14 ft = 154 sq ft
	// layer = 25% of 12 in finished depth = 3 in
	// 154 sq ft x 3 in layer, as spread = 38.5 cu ft
	// the grade rises by the layer less what settles, 0% = up to 3 in
	// freshly dug it stands higher: the soil swells by 5% to 60%, and the layer fills its pores in part = 2.03 to 8.4 in
	// rolled or watered in it stands lower = 0.88 to 3 in
	// settle: none = +0
	// blend loss: none = +0
	// spare: none = +0
	// loose, as it leaves the shovel = 38.5 cu ft
}

func ExampleJob_At() {
	job, _ := mix.Decode([]byte(`{"schema": 1,
		"tasks": [{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"}],
		"offers": [{"material": "bark-mulch", "pack": "2 cu ft", "price": "3.95"}, {"material": "bark-mulch", "pack": "3 cu ft", "price": "5.50"}]}`))
	before, _ := job.Plan()
	left, err := job.At(&yard.Yard{Without: []string{"bark-mulch:3 cu ft"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	after, _ := left.Plan()
	for _, c := range after.ChangesFrom(before) {
		fmt.Println(c.Pack, c.Before, "to", c.After)
	}
	fmt.Println(before.Bill.Total, "to", after.Bill.Total)
	// Output:
	// 2 cu ft 2 to 5
	// 3 cu ft 2 to 0
	// 18.90 to 19.75
}

func ExamplePlan_Sure() {
	p, _ := mix.PlanDocument([]byte(`{"schema": 1,
		"tasks": [{"kind": "fill", "material": "potting-mix", "containers": [{"count": 64, "size": "#1"}]}],
		"offers": [{"material": "potting-mix", "pack": "2 cu ft", "price": "9.00"}]}`))
	s := p.Sure()
	fmt.Println(p.Lines[0].Count, "bags are enough", s.Odds(p.Printer())+";", s.Matters[0].Name, "matters most")
	// Output: 4 bags are enough 35 times in 100; the size of #1 matters most
}

func ExamplePlan_Crossings() {
	p, _ := mix.PlanDocument([]byte(`{"schema": 1,
		"tasks": [{"kind": "cover", "area": "240 sq ft", "layer": "3 in", "material": "bark-mulch"}],
		"offers": [{"material": "bark-mulch", "pack": "2 cu ft", "price": "3.95"}, {"material": "bark-mulch", "bulk": "1/2 cu yd", "price": "17.00"}]}`))
	for _, k := range p.Crossings() {
		fmt.Println(k.Sentence(p.Printer()))
	}
	// Output: Bark mulch, bought by itself: the 60 cu ft that you need cost 118.50 in bags or 85.00 in bulk, trips counted. Bulk costs less over 8 cu ft up to 13 1/2 cu ft and over 16 cu ft; looked at up to 120 cu ft
}
