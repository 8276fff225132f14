package sure_test

import (
	"fmt"

	"example.org/barrow/mix/sure"
)

// filling is 64 pots of class #1. The class holds 152 to 251 cu in, 2.49 to
// 4.11 L; most are near 2.84 L. The mix settles, and loses volume in blending.
func filling(supply float64) *sure.Model {
	return &sure.Model{
		Items: 1,
		Factors: []sure.Factor{
			{Name: "pot", Low: 2.49, Mode: 2.84, High: 4.11},
			{Name: "settle", Low: 0.05, Mode: 0.10, High: 0.15},
			{Name: "blend loss", Low: 0.05, High: 0.20, Flat: true},
		},
		Needs: []sure.Term{{Item: 0, Amount: 64, Uses: []sure.Use{
			{Factor: 0, Kind: sure.Times}, {Factor: 1, Kind: sure.Loss}, {Factor: 2, Kind: sure.Loss},
		}}},
		Supplies: []sure.Term{{Item: 0, Amount: supply}},
	}
}

func ExampleModel_Chance() {
	for _, litres := range []float64{200, 250, 300, 400} {
		fmt.Printf("%.0f L: %.1f%%\n", litres, 100*filling(litres).Chance().All)
	}
	// Output:
	// 200 L: 1.1%
	// 250 L: 46.8%
	// 300 L: 89.5%
	// 400 L: 100.0%
}

func ExampleModel_Enough() {
	fmt.Printf("to be 90%% sure, plan for %.0f L\n", filling(0).Enough(0.9)[0])
	// Output:
	// to be 90% sure, plan for 301 L
}

func ExampleModel_Quantile() {
	m := filling(0)
	fmt.Printf("from %.0f to %.0f L, half the time up to %.0f L\n",
		m.Quantile(0, 0), m.Quantile(0, 1), m.Quantile(0, 0.5))
	// Output:
	// from 177 to 387 L, half the time up to 253 L
}

func ExampleModel_Matters() {
	m := filling(300)
	for _, in := range m.Matters(2) {
		fmt.Printf("%s from %.2f to %.2f moves %.0f L\n",
			m.Factors[in.Factor].Name, in.Low.Value, in.High.Value, in.Moves)
	}
	// Output:
	// pot from 2.73 to 3.66 moves 75 L
	// blend loss from 0.07 to 0.19 moves 32 L
}

func ExampleModel_Check() {
	m := &sure.Model{Items: 1, Factors: []sure.Factor{{Low: 0.2, Mode: 0.1, High: 0.3}}}
	fmt.Println(m.Check())
	// Output:
	// factors[0]: low, mode and high are not in order
}

func ExampleFactor_At() {
	settle := sure.Factor{Low: 0.05, Mode: 0.1, High: 0.2}
	fmt.Printf("%.3f %.3f\n", settle.At(0.1), settle.At(0.9))
	// Output:
	// 0.077 0.161
}
