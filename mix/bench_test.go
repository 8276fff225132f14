package mix_test

import (
	"bytes"
	"fmt"
	"runtime"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// BenchmarkFillLine is one container line with its allowances and the split to
// materials: from a line that is read to needs.
func BenchmarkFillLine(b *testing.B) {
	scope := catalog.Plain(nil)
	t := &task.Task{Mix: "potting", Work: &task.Fill{Containers: []task.Container{{Count: 64, Size: "#1"}}}}
	takes := make([]units.Range, scope.Len())
	var d task.Evaluated
	b.ReportAllocs()
	for b.Loop() {
		var r doc.Reader
		t.Evaluate(&r, scope, &d)
		if !d.Spread(takes) || r.Err() != nil {
			b.Fatal(r.Err())
		}
		clear(takes)
	}
}

// BenchmarkJob20 is a job of twenty tasks of every kind, document in to plan
// out.
func BenchmarkJob20(b *testing.B) {
	job := manyTasks(20)
	b.SetBytes(int64(len(job)))
	b.ReportAllocs()
	for b.Loop() {
		if out := report.Handle(job); !bytes.Contains(out, []byte(`"needs"`)) {
			b.Fatal(string(out))
		}
	}
}

// BenchmarkCrossings compares bags and bulk for the sample job.
func BenchmarkCrossings(b *testing.B) {
	p, err := mix.PlanDocument(mix.Sample())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if len(p.Crossings()) != 2 {
			b.Fatal(p.Crossings())
		}
	}
}

// BenchmarkLines is a job of ever more container lines, document in to plan
// out: the cost is to grow in line. MB-sys is the memory that the whole
// process has taken from the system so far.
func BenchmarkLines(b *testing.B) {
	for _, n := range []int{10, 1_000, 100_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			job := manyLines(n)
			b.ReportAllocs()
			for b.Loop() {
				if out := report.Handle(job); !bytes.Contains(out, []byte(`"needs"`)) {
					b.Fatal(string(out[:min(len(out), 500)]))
				}
			}
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			b.ReportMetric(float64(m.Sys)/1e6, "MB-sys")
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/line")
		})
	}
}

// BenchmarkRead is the reading alone.
func BenchmarkRead(b *testing.B) {
	job := manyTasks(20)
	b.SetBytes(int64(len(job)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := mix.Decode(job); err != nil {
			b.Fatal(err)
		}
	}
}

// manyTasks writes a job of n tasks, the five of the sample over and over.
func manyTasks(n int) []byte {
	tasks := []string{
		`{"kind": "fill", "mix": "rooting", "containers": [{"count": 3, "box": "20 in x 10 in x 2 in"}], "settle": "10%", "spare": "5%"}`,
		`{"kind": "fill", "mix": "potting", "containers": [{"count": 64, "size": "#1"}, {"count": 8, "holds": "11.4 L", "ball": "#1"}, {"count": 6, "top": "12 in", "bottom": "10 in", "height": "11 in", "below_rim": "1 in"}]}`,
		`{"kind": "amend", "area": "60 ft x 4 ft", "layer": "3 in", "into": "9 in", "material": "bark-fines"}`,
		`{"kind": "backfill", "holes": 64, "width": "18 in", "depth": "7 in", "ball": "#1", "above_grade": "1 in", "share": "25%", "material": "compost"}`,
		`{"kind": "cover", "area": "circle 14 ft", "layer": "3 in", "material": "bark-mulch", "stems": {"count": 6, "clear": "6 in"}}`,
	}
	var b bytes.Buffer
	b.WriteString(`{"schema": 1, "tasks": [`)
	for i := range n {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(tasks[i%len(tasks)])
	}
	b.WriteString(`], "offers": [{"material": "bark-fines", "pack": "2 cu ft", "price": "4.75", ` +
		`"weight": "40 lb"}, {"material": "peat", "pack": "3.8 cu ft", "opens_to": "7 cu ft", "price": "22.50"}]}`)
	return b.Bytes()
}

// manyLines writes a job of one fill task with n container lines of four
// kinds.
func manyLines(n int) []byte {
	lines := []string{
		`{"count": 64, "size": "#1"}`,
		`{"count": 8, "holds": "11.4 L"}`,
		`{"count": 6, "top": "12 in", "bottom": "10 in", "height": "11 in", "below_rim": "1 in"}`,
		`{"count": 3, "box": "20 in x 10 in x 2 in"}`,
	}
	var b bytes.Buffer
	b.WriteString(`{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [`)
	for i := range n {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(lines[i%len(lines)])
	}
	b.WriteString(`]}]}`)
	return b.Bytes()
}
