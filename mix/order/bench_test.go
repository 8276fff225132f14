package order_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.org/barrow/mix/order"
)

// BenchmarkSearch times 10,000 yards of 3 to 12 materials with shared trips.
func BenchmarkSearch(b *testing.B) {
	const instances = 10_000
	var requests []order.Request
	for i := range instances {
		rng := rand.New(rand.NewPCG(1, uint64(i)))
		requests = append(requests, randomYard(rng, 3+rng.IntN(10), 3))
	}
	for b.Loop() {
		var took []time.Duration
		open := 0
		for i := range requests {
			start := time.Now()
			o, err := order.Search(requests[i])
			took = append(took, time.Since(start))
			if err != nil {
				b.Fatal(err)
			}
			if !o.Proven {
				open++
			}
		}
		slices.Sort(took)
		b.ReportMetric(float64(took[instances/2].Nanoseconds()), "median-ns")
		b.ReportMetric(float64(took[instances*99/100].Nanoseconds()), "p99-ns")
		b.ReportMetric(float64(took[instances-1].Nanoseconds()), "worst-ns")
		b.ReportMetric(float64(open), "unproven")
	}
}

func BenchmarkSearch30x12(b *testing.B)  { benchmarkSize(b, 30, 12) }
func BenchmarkSearch200x40(b *testing.B) { benchmarkSize(b, 200, 40) }

// benchmarkSize reports how far the cost is above the bound at worst.
func benchmarkSize(b *testing.B, materials, offers int) {
	var requests []order.Request
	for i := range 10 {
		requests = append(requests, randomYard(rand.New(rand.NewPCG(2, uint64(i))), materials, offers))
	}
	gap, open, n := 0.0, 0, 0
	for b.Loop() {
		o, err := order.Search(requests[n%len(requests)])
		if err != nil {
			b.Fatal(err)
		}
		if n++; !o.Proven {
			open++
		}
		gap = max(gap, float64(o.Cost-o.Bound)/float64(o.Cost))
	}
	b.ReportMetric(gap*1e6, "gap-ppm")
	b.ReportMetric(float64(open)/float64(n), "unproven/op")
}
