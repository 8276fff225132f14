package wire_test

import (
	"bytes"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/barrow/mix/wire"
)

func TestParseTree(t *testing.T) {
	doc := ` {"a": [1.50, -0, 1e400, "b\u00bd\n"], "": {}, "z": null, "c": [true, false, []]} `
	want := wire.Node{
		Kind: wire.Object, Offset: 1,
		Keys: []string{"a", "", "z", "c"},
		Items: []wire.Node{
			{Kind: wire.Array, Offset: 7, Items: []wire.Node{
				{Kind: wire.Number, Offset: 8, Text: "1.50"},
				{Kind: wire.Number, Offset: 14, Text: "-0"},
				{Kind: wire.Number, Offset: 18, Text: "1e400"},
				{Kind: wire.String, Offset: 25, Text: "b½\n"},
			}},
			{Kind: wire.Object, Offset: 43, Keys: []string{}, Items: []wire.Node{}},
			{Kind: wire.Null, Offset: 52},
			{Kind: wire.Array, Offset: 63, Items: []wire.Node{
				{Kind: wire.Bool, Offset: 64, Bool: true},
				{Kind: wire.Bool, Offset: 70},
				{Kind: wire.Array, Offset: 77, Items: []wire.Node{}},
			}},
		},
	}
	got, faults := wire.Parse([]byte(doc), wire.Limits{})
	if len(faults) > 0 {
		t.Fatalf("Parse(%s) has faults %v", doc, faults)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("Parse(%s) =\n%+v, want\n%+v", doc, got, want)
	}
}

func TestParseKeepsNothingOfItsInput(t *testing.T) {
	data := []byte(`["bark"]`)
	node, _ := wire.Parse(data, wire.Limits{})
	copy(data, `["peat"]`)
	if got := node.Items[0].Text; got != "bark" {
		t.Errorf("text = %q after its document was overwritten, want bark", got)
	}
}

// Neighbours in the shared block of nodes must not overwrite one another.
func TestParseAppendToItems(t *testing.T) {
	node, _ := wire.Parse([]byte(`[[1],[2],{"a":1},{"b":2}]`), wire.Limits{})
	_ = append(node.Items[0].Items, wire.Node{Kind: wire.Number, Text: "9"})
	_ = append(node.Items[2].Keys, "z")
	if got := node.Items[1].Items[0].Text; got != "2" {
		t.Errorf("append to a list changed its neighbour to %s", got)
	}
	if got := node.Items[3].Keys[0]; got != "b" {
		t.Errorf("append to keys changed those of a neighbour to %s", got)
	}
}

func TestNodeField(t *testing.T) {
	node, _ := wire.Parse([]byte(`{"a": {"b": 7}, "c": [1]}`), wire.Limits{})
	if got := node.Field("a").Field("b"); got == nil || got.Text != "7" {
		t.Errorf("Field(a).Field(b) = %v, want 7", got)
	}
	for name, got := range map[string]*wire.Node{
		"absent":      node.Field("b"),
		"of absent":   node.Field("x").Field("y"),
		"of an array": node.Field("c").Field("a"),
		"of nil":      (*wire.Node)(nil).Field("a"),
		"of a zero":   new(wire.Node).Field(""),
	} {
		if got != nil {
			t.Errorf("Field %s = %v, want nil", name, got)
		}
	}
}

func TestKindString(t *testing.T) {
	want := map[wire.Kind]string{
		wire.Null: "nothing", wire.Bool: "true or false", wire.Number: "a number", wire.String: "text",
		wire.Array: "a list", wire.Object: "an object", 99: "an unknown kind of value",
	}
	for kind, word := range want {
		if got := kind.String(); got != word {
			t.Errorf("Kind(%d) = %q, want %q", kind, got, word)
		}
	}
}

func TestLimits(t *testing.T) {
	nest := func(n int) string { return strings.Repeat("[", n) + strings.Repeat("]", n) }
	mixed := func(n int) string { return strings.Repeat(`{"a":[`, n/2) + strings.Repeat("]}", n/2) }
	repeat := func(n int) string { return "{" + strings.Repeat(`"a":1,`, n) + `"b":1}` }
	tests := []struct {
		name   string
		doc    string
		limits wire.Limits
		code   string // of the only fault, "" for none
		at     string // line:column of it
	}{
		{"bytes, just", "[1,2]", wire.Limits{Bytes: 5}, "", ""},
		{"bytes", "[1,2]\n", wire.Limits{Bytes: 5}, "json.size", "1:1"},
		{"bytes before all else", "\xef\xbb\xbf", wire.Limits{Bytes: 2}, "json.size", "1:1"},
		{"bytes by default, just", " 1" + strings.Repeat(" ", wire.DefaultBytes-2), wire.Limits{}, "", ""},
		{"bytes by default", " 1" + strings.Repeat(" ", wire.DefaultBytes-1), wire.Limits{}, "json.size", "1:1"},
		{"nodes, just", `{"a":[1,{},[]], "b":"[,,,"}`, wire.Limits{Nodes: 6}, "", ""},
		{"nodes", `{"a":[1,{},[]], "b":"[,,,"}`, wire.Limits{Nodes: 5}, "json.size", "1:15"},
		{"one node", `[]`, wire.Limits{Nodes: 1}, "", ""},
		{"one node too many", `[1]`, wire.Limits{Nodes: 1}, "json.size", "1:2"},
		{"depth by default, just", nest(32), wire.Limits{}, "", ""},
		{"depth by default", nest(33), wire.Limits{}, "json.depth", "1:33"},
		{"depth, just", mixed(4), wire.Limits{Depth: 4}, "", ""},
		{"depth", mixed(6), wire.Limits{Depth: 4}, "json.depth", "1:13"},
		{"depth of neighbours", `[[[]],[[]],[[[]]]]`, wire.Limits{Depth: 3}, "json.depth", "1:14"},
		{"no depth for a scalar", `1`, wire.Limits{Depth: 1}, "", ""},
		{"negative depth is the default", nest(32), wire.Limits{Depth: -1}, "", ""},
		{"greatest depth, just", mixed(wire.MaxDepth), wire.Limits{Depth: 1 << 40}, "", ""},
		{"greatest depth", nest(wire.MaxDepth + 1), wire.Limits{Depth: 1 << 40}, "json.depth", "1:1001"},
		{"depth of a hostile list", strings.Repeat("[", 1_000_000), wire.Limits{}, "json.depth", "1:33"},
		{"depth of a hostile object", strings.Repeat(`{"":`, 250_000), wire.Limits{}, "json.depth", "1:129"},
		{"one fault", repeat(9), wire.Limits{Faults: 1}, "json.duplicate", "1:8"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, faults := wire.Parse([]byte(tt.doc), tt.limits)
			var code, at string
			if len(faults) > 0 {
				code = faults[0].Code
				at = strconv.Itoa(faults[0].Line) + ":" + strconv.Itoa(faults[0].Column)
			}
			if code != tt.code || at != tt.at || len(faults) > 1 {
				t.Errorf("Parse gives %d faults, the first %s at %s; want %q at %s", len(faults), code, at, tt.code, tt.at)
			}
		})
	}
	for limit, want := range map[int]int{0: wire.DefaultFaults, 7: 7, 1 << 40: wire.MaxFaults} {
		_, faults := wire.Parse([]byte(repeat(2000)), wire.Limits{Faults: limit})
		if len(faults) != want {
			t.Errorf("Parse with Faults %d gives %d faults, want %d", limit, len(faults), want)
		}
	}
}

// Hostile documents must be refused before they have cost more than a few times
// their own size.
func TestParseHostile(t *testing.T) {
	const size = 4_000_000
	for name, doc := range map[string]string{
		"lists":        strings.Repeat("[", size),
		"objects":      strings.Repeat(`{"a":`, size/5),
		"lists closed": strings.Repeat("]", size),
		"quotes":       strings.Repeat(`"`, size),
		"backslashes":  `"` + strings.Repeat(`\`, size),
		"open text":    strings.Repeat(`a"`, size/2),
		"zeros":        strings.Repeat("0", size),
		"word":         strings.Repeat("a", size),
		"high bytes":   strings.Repeat("\xff", size),
		"commas":       `{"a":1,"b":"` + strings.Repeat(",", size),
		"bad pairs":    `["` + strings.Repeat(`\ud83c`, size/6),
	} {
		data := []byte(doc)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, faults := wire.Parse(data, wire.Limits{})
		runtime.ReadMemStats(&after)
		if len(faults) != 1 {
			t.Errorf("Parse of %s gives %d faults, want 1", name, len(faults))
		}
		if got := after.TotalAlloc - before.TotalAlloc; got > 5*size {
			t.Errorf("Parse of %s: %d bytes allocated for %d bytes of input", name, got, size)
		}
	}
}

// A quadratic search for repeated keys would take minutes here.
func TestParseManyKeys(t *testing.T) {
	const keys = 300_000
	var b bytes.Buffer
	b.WriteByte('{')
	for i := range keys {
		b.WriteString(`"key-` + strconv.Itoa(i) + `":0,`)
	}
	begin := time.Now()
	node, faults := wire.Parse(append(b.Bytes(), `"last":0}`...), wire.Limits{})
	if len(faults) > 0 || len(node.Keys) != keys+1 {
		t.Errorf("Parse gives %d keys and faults %v, want %d keys", len(node.Keys), faults, keys+1)
	}
	_, faults = wire.Parse(append(b.Bytes(), `"key-123456":0}`...), wire.Limits{})
	if len(faults) != 1 || faults[0].Path != "key-123456" {
		t.Errorf("Parse gives faults %v, want one for key-123456", faults)
	}
	if took := time.Since(begin); took > 20*time.Second {
		t.Errorf("two objects of %d keys took %v", keys, took)
	}
}
