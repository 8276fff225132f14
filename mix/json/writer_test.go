package json_test

import (
	stdjson "encoding/json"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"example.org/barrow/mix/json"
)

// Each golden is the layout of the document it was parsed from.
var goldens = []struct{ name, doc, want string }{
	{"scalar", `1.50`, "1.50\n"},
	{"empty list", `[ ]`, "[]\n"},
	{"empty object", `{ }`, "{}\n"},
	{"list", `[1,"a",null,true,false]`, `[
  1,
  "a",
  null,
  true,
  false
]
`},
	{"empty members", `{"a":[],"b":{},"c":[[],{}]}`, `{
  "a": [],
  "b": {},
  "c": [
    [],
    {}
  ]
}
`},
	{"third level", `{"needs":[{"material":"bark-fines","litres":812.4,"mass_kg":[270,410]}],"schema":1,"batches":[]}`, `{
  "needs": [
    {"material": "bark-fines", "litres": 812.4, "mass_kg": [270, 410]}
  ],
  "schema": 1,
  "batches": []
}
`},
	{"objects in objects", `{"a":{"b":{"c":{"d":[[1,2],{"e":{}}]}},"f":2}}`, `{
  "a": {
    "b": {"c": {"d": [[1, 2], {"e": {}}]}},
    "f": 2
  }
}
`},
	{"lists in lists", `[[[1,[2,3]],[]],[4]]`, `[
  [
    [1, [2, 3]],
    []
  ],
  [
    4
  ]
]
`},
}

func TestWriterLayout(t *testing.T) {
	for _, tt := range goldens {
		n, faults := json.Parse([]byte(tt.doc), json.Limits{})
		if len(faults) > 0 {
			t.Fatalf("%s: %v", tt.name, faults)
		}
		var w json.Writer
		writeTree(&w, &n)
		if got := string(w.Bytes()); got != tt.want {
			t.Errorf("%s: %s is written\n%s, want\n%s", tt.name, tt.doc, got, tt.want)
		}
	}
}

func TestWriterString(t *testing.T) {
	tests := []struct{ text, want string }{
		{"", `""`},
		{"plain ½ 🌱 / '", `"plain ½ 🌱 / '"`},
		{`"\`, `"\"\\"`},
		{"\b\f\n\r\t", `"\b\f\n\r\t"`},
		{"\x00\x1f\x7f", `"\u0000\u001f` + "\x7f\""},
		{"<script>&", `"\u003cscript\u003e\u0026"`},
		{"a\u2028b\u2029", `"a\u2028b\u2029"`},
		{"a\xffb\xc3", "\"a\uFFFDb\uFFFD\""},
		{"\xed\xa0\x80", "\"\uFFFD\uFFFD\uFFFD\""},
		{"\uFFFD", "\"\uFFFD\""},
	}
	for _, tt := range tests {
		var w json.Writer
		w.String(tt.text)
		if got := string(w.Bytes()); got != tt.want+"\n" {
			t.Errorf("String(%q) writes %s, want %s", tt.text, got, tt.want)
		}
		w.Reset(nil)
		w.BeginObject()
		w.Key(tt.text)
		w.Null()
		w.EndObject()
		if got := string(w.Bytes()); got != "{\n  "+tt.want+": null\n}\n" {
			t.Errorf("Key(%q) writes %s, want %s", tt.text, got, tt.want)
		}
	}
}

func TestWriterStringAgreesWithEncodingJSON(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var w json.Writer
	for range 20_000 {
		var text strings.Builder
		for range r.IntN(12) {
			text.WriteRune(rune(r.IntN(1 << (1 + r.IntN(20)))))
		}
		want, err := stdjson.Marshal(text.String())
		if err != nil {
			t.Fatal(err)
		}
		w.Reset(nil)
		w.String(text.String())
		if got := string(w.Bytes()); got != string(want)+"\n" {
			t.Fatalf("String(%q) writes %s, want %s", text.String(), got, want)
		}
	}
}

func TestWriterNumbers(t *testing.T) {
	var w json.Writer
	w.BeginArray()
	w.Int(-9223372036854775808)
	w.Int(0)
	w.Raw("-0.50e+07")
	w.EndArray()
	want := "[\n  -9223372036854775808,\n  0,\n  -0.50e+07\n]\n"
	if got := string(w.Bytes()); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestWriterReset(t *testing.T) {
	var w json.Writer
	w.BeginObject()
	w.Key("half")
	buf := append(make([]byte, 0, 64), "old text"...)
	w.Reset(buf)
	w.Int(7)
	if got := string(w.Bytes()); got != "7\n" {
		t.Errorf("after Reset the document is %q, want 7", got)
	}
	if &w.Bytes()[0] != &buf[0] {
		t.Error("Reset did not use the buffer it was given")
	}
}

func TestWriterPanics(t *testing.T) {
	object := func(w *json.Writer) { w.BeginObject() }
	list := func(w *json.Writer) { w.BeginArray() }
	tests := []struct {
		name  string
		calls []func(*json.Writer)
		want  string
	}{
		{"key twice", []func(*json.Writer){object, key("a"), key("b")}, "Key after Key"},
		{"key at the top", []func(*json.Writer){key("a")}, "Key outside of an object"},
		{"key in a list", []func(*json.Writer){list, key("a")}, "Key outside of an object"},
		{"value without key", []func(*json.Writer){object, number("1")}, "without Key before it"},
		{"second value without key", []func(*json.Writer){object, key("a"), number("1"), number("2")}, "without Key before it"},
		{"list without key", []func(*json.Writer){object, list}, "without Key before it"},
		{"second value at the top", []func(*json.Writer){number("1"), number("2")}, "second value"},
		{"second object at the top", []func(*json.Writer){object, (*json.Writer).EndObject, object}, "second value"},
		{"end without begin", []func(*json.Writer){(*json.Writer).EndArray}, "End without Begin"},
		{"end twice", []func(*json.Writer){object, (*json.Writer).EndObject, (*json.Writer).EndObject}, "End without Begin"},
		{"wrong end of an object", []func(*json.Writer){object, (*json.Writer).EndArray}, "EndArray of an object"},
		{"wrong end of a list", []func(*json.Writer){list, (*json.Writer).EndObject}, "EndObject of an array"},
		{"end after key", []func(*json.Writer){object, key("a"), (*json.Writer).EndObject}, "EndObject after Key"},
		{"bytes of nothing", []func(*json.Writer){bytesOf}, "without a value"},
		{"bytes of an open list", []func(*json.Writer){list, bytesOf}, "before the last container has ended"},
		{"no number", []func(*json.Writer){number("NaN")}, `"NaN"`},
		{"empty number", []func(*json.Writer){number("")}, "not a JSON number"},
		{"number and more", []func(*json.Writer){number("1,2")}, "not a JSON number"},
		{"padded number", []func(*json.Writer){number("01")}, "not a JSON number"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var w json.Writer
			last := len(tt.calls) - 1
			for _, call := range tt.calls[:last] {
				call(&w)
			}
			defer func() {
				text, _ := recover().(string)
				if !strings.HasPrefix(text, "json: ") || !strings.Contains(text, tt.want) {
					t.Errorf("panic %q, want one with %q", text, tt.want)
				}
			}()
			tt.calls[last](&w)
		})
	}
}

func key(k string) func(*json.Writer)    { return func(w *json.Writer) { w.Key(k) } }
func number(n string) func(*json.Writer) { return func(w *json.Writer) { w.Raw(n) } }
func bytesOf(w *json.Writer)             { w.Bytes() }

func TestWriterAllocatesNothing(t *testing.T) {
	n, _ := json.Parse([]byte(`{"a":["text <&>\n\u2028",{"b":[1,{"c":[true,null]}]}]}`), json.Limits{})
	var w json.Writer
	writeTree(&w, &n)
	allocs := testing.AllocsPerRun(100, func() {
		w.Reset(w.Bytes())
		writeTree(&w, &n)
		w.Reset(w.Bytes())
		w.Int(-1234567)
	})
	if allocs > 0 {
		t.Errorf("%v allocations with a buffer that is large enough, want 0", allocs)
	}
}

// TestWriterInBlocks: a document of many blocks is the same as one of a single
// buffer, and takes little more memory than twice its size.
func TestWriterInBlocks(t *testing.T) {
	const n = 600_000
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	var w json.Writer
	w.BeginArray()
	for i := range n {
		w.BeginObject()
		w.Key("number")
		w.Int(int64(i))
		w.EndObject()
	}
	w.EndArray()
	got := w.Bytes()
	runtime.ReadMemStats(&after)
	// The race detector allocates for itself.
	if took := after.TotalAlloc - before.TotalAlloc; !racing && took > uint64(len(got))*5/2+1<<20 {
		t.Errorf("%d bytes allocated for %d", took, len(got))
	}
	var rows []struct{ Number *int }
	if err := stdjson.Unmarshal(got, &rows); err != nil || len(rows) != n {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for i, row := range rows {
		if row.Number == nil || *row.Number != i {
			t.Fatalf("row %d is %v", i, row)
		}
	}
}
