package lang_test

import (
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/report"
)

func BenchmarkSample(b *testing.B) {
	es := spanishFile(b)
	for _, lang := range []struct {
		name string
		t    *lang.Language
	}{{"english", nil}, {"spanish", es}, {"comma", es.Comma(true)}} {
		b.Run(lang.name, func(b *testing.B) {
			for b.Loop() {
				p, err := mix.PlanDocument(mix.Sample(), func(j *mix.Job) { j.Language = lang.t })
				if err != nil {
					b.Fatal(err)
				}
				report.Plan(p)
			}
		})
	}
}
