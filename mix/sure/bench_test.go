package sure_test

import (
	"testing"

	"example.org/barrow/mix/sure"
)

// nursery is a job of 20 tasks: each fills or covers with three of six
// materials, with its own size and settling, and spare and blend loss that
// many share; the order is a tenth above the typical need, and each material's
// packs open to a range. 60 need terms, 26 factors that vary.
func nursery() *sure.Model {
	m := &sure.Model{Items: 6}
	add := func(f sure.Factor) int { m.Factors = append(m.Factors, f); return len(m.Factors) - 1 }
	blend := add(sure.Factor{Name: "blend loss", Low: 0.05, Mode: 0.1, High: 0.2})
	var sizes, settles [9]int
	for i := range sizes {
		sizes[i] = add(sure.Factor{Name: "size", Low: 0.85, Mode: 1, High: 1.2})
		settles[i] = add(sure.Factor{Name: "settle",
			Low: 0.03, Mode: 0.08 + float64(0.005*float64(i)), High: 0.2, Flat: i%3 == 0})
	}
	for task := range 20 {
		uses := []sure.Use{{Factor: sizes[task%9]},
			{Factor: settles[(task*5)%9], Kind: sure.Loss}, {Factor: blend, Kind: sure.Loss}}
		for part := range 3 {
			m.Needs = append(m.Needs, sure.Term{Item: (task + part*(task%2+1)) % 6,
				Amount: 30 + float64(task*7%20)*5, Uses: uses})
		}
	}
	need := make([]float64, 6)
	for _, t := range m.Needs {
		need[t.Item] += typical(m, t)
	}
	for i, v := range need {
		fluff := add(sure.Factor{Name: "opens to", Low: 0.95, Mode: 1, High: 1.05})
		m.Supplies = append(m.Supplies, sure.Term{Item: i, Amount: v * 1.1, Uses: []sure.Use{{Factor: fluff}}})
	}
	return m
}

func BenchmarkAll(b *testing.B) {
	m := nursery()
	for b.Loop() {
		m.Chance()
		m.Enough(0.9)
		m.Matters(5)
	}
}

func BenchmarkChance(b *testing.B) {
	for m := nursery(); b.Loop(); {
		m.Chance()
	}
}

// BenchmarkChancePieces is BenchmarkChance with two more factors for each
// material, of its lot and of thirty packs apart.
func BenchmarkChancePieces(b *testing.B) {
	m := nursery()
	for i := range m.Supplies {
		n := len(m.Factors)
		m.Factors = append(m.Factors, sure.Factor{Low: 0.98, Mode: 1, High: 1.02},
			sure.Factor{Low: 0.95, High: 1.05, Pieces: 30})
		m.Supplies[i].Uses = append(m.Supplies[i].Uses, uses(n, n+1)...)
	}
	for b.Loop() {
		m.Chance()
	}
}

func BenchmarkEnough(b *testing.B) {
	for m := nursery(); b.Loop(); {
		m.Enough(0.9)
	}
}

func BenchmarkQuantile(b *testing.B) {
	for m := nursery(); b.Loop(); {
		m.Quantile(0, 0.9)
	}
}

func BenchmarkMatters(b *testing.B) {
	for m := nursery(); b.Loop(); {
		m.Matters(5)
	}
}
