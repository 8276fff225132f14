package picture_test

import (
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/picture"
)

func BenchmarkSample(b *testing.B) {
	p := plan(b, mix.Sample())
	for name, draw := range map[string]func(*mix.Plan) []picture.Drawing{
		"tasks": picture.Tasks, "order": picture.Order, "trips": picture.Trips, "costs": picture.Costs,
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				draw(p)
			}
		})
	}
}
