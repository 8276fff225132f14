package json_test

import (
	"bytes"
	"strconv"
	"testing"

	"example.org/barrow/mix/json"
)

// manyObjects returns an array of n small objects, the shape of a long plan.
func manyObjects(n int) []byte {
	var b bytes.Buffer
	b.WriteString("[\n")
	for i := range n {
		if i > 0 {
			b.WriteString(",\n")
		}
		n := strconv.Itoa(i)
		b.WriteString(`  {"id": "bed-` + n + `", "litres": 812.4, "count": ` + n + `, "raised": true}`)
	}
	b.WriteString("\n]\n")
	return b.Bytes()
}

func BenchmarkParse(b *testing.B) {
	data := manyObjects(100_000)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, faults := json.Parse(data, json.Limits{}); faults != nil {
			b.Fatal(faults)
		}
	}
}

func BenchmarkWriter(b *testing.B) {
	var w json.Writer
	write := func() {
		w.BeginArray()
		for i := range 100_000 {
			w.BeginObject()
			w.Key("id")
			w.String("bed & border")
			w.Key("litres")
			w.Raw("812.4")
			w.Key("count")
			w.Int(int64(i))
			w.Key("raised")
			w.Bool(true)
			w.EndObject()
		}
		w.EndArray()
	}
	write()
	b.SetBytes(int64(len(w.Bytes())))
	b.ReportAllocs()
	for b.Loop() {
		w.Reset(w.Bytes())
		write()
	}
}
