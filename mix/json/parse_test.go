package json_test

import (
	"bytes"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/barrow/mix/json"
)

func TestParseTree(t *testing.T) {
	doc := ` {"a": [1.50, -0, 1e400, "b\u00bd\n"], "": {}, "z": null, "c": [true, false, []]} `
	want := json.Node{
		Kind: json.Object, Offset: 1,
		Keys: []string{"a", "", "z", "c"},
		Items: []json.Node{
			{Kind: json.Array, Offset: 7, Items: []json.Node{
				{Kind: json.Number, Offset: 8, Text: "1.50"},
				{Kind: json.Number, Offset: 14, Text: "-0"},
				{Kind: json.Number, Offset: 18, Text: "1e400"},
				{Kind: json.String, Offset: 25, Text: "b½\n"},
			}},
			{Kind: json.Object, Offset: 43, Keys: []string{}, Items: []json.Node{}},
			{Kind: json.Null, Offset: 52},
			{Kind: json.Array, Offset: 63, Items: []json.Node{
				{Kind: json.Bool, Offset: 64, Bool: true},
				{Kind: json.Bool, Offset: 70},
				{Kind: json.Array, Offset: 77, Items: []json.Node{}},
			}},
		},
	}
	got, faults := json.Parse([]byte(doc), json.Limits{})
	if len(faults) > 0 {
		t.Fatalf("Parse(%s) has faults %v", doc, faults)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("Parse(%s) =\n%+v, want\n%+v", doc, got, want)
	}
}

func TestParseKeepsNothingOfItsInput(t *testing.T) {
	data := []byte(`["bark"]`)
	node, _ := json.Parse(data, json.Limits{})
	copy(data, `["peat"]`)
	if got := node.Items[0].Text; got != "bark" {
		t.Errorf("text = %q after its document was overwritten, want bark", got)
	}
}

// Neighbours in the shared block of nodes must not overwrite one another.
func TestParseAppendToItems(t *testing.T) {
	node, _ := json.Parse([]byte(`[[1],[2],{"a":1},{"b":2}]`), json.Limits{})
	_ = append(node.Items[0].Items, json.Node{Kind: json.Number, Text: "9"})
	_ = append(node.Items[2].Keys, "z")
	if got := node.Items[1].Items[0].Text; got != "2" {
		t.Errorf("append to a list changed its neighbour to %s", got)
	}
	if got := node.Items[3].Keys[0]; got != "b" {
		t.Errorf("append to keys changed those of a neighbour to %s", got)
	}
}

func TestNodeField(t *testing.T) {
	node, _ := json.Parse([]byte(`{"a": {"b": 7}, "c": [1]}`), json.Limits{})
	if got := node.Field("a").Field("b"); got == nil || got.Text != "7" {
		t.Errorf("Field(a).Field(b) = %v, want 7", got)
	}
	for name, got := range map[string]*json.Node{
		"absent":      node.Field("b"),
		"of absent":   node.Field("x").Field("y"),
		"of an array": node.Field("c").Field("a"),
		"of nil":      (*json.Node)(nil).Field("a"),
		"of a zero":   new(json.Node).Field(""),
	} {
		if got != nil {
			t.Errorf("Field %s = %v, want nil", name, got)
		}
	}
}

func TestKindString(t *testing.T) {
	want := map[json.Kind]string{
		json.Null: "nothing", json.Bool: "true or false", json.Number: "a number", json.String: "text",
		json.Array: "a list", json.Object: "an object", 99: "an unknown kind of value",
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
		limits json.Limits
		code   string // of the only fault, "" for none
		at     string // line:column of it
	}{
		{"bytes, just", "[1,2]", json.Limits{Bytes: 5}, "", ""},
		{"bytes", "[1,2]\n", json.Limits{Bytes: 5}, "json.size", "1:1"},
		{"bytes before all else", "\xef\xbb\xbf", json.Limits{Bytes: 2}, "json.size", "1:1"},
		{"bytes by default, just", " 1" + strings.Repeat(" ", json.DefaultBytes-2), json.Limits{}, "", ""},
		{"bytes by default", " 1" + strings.Repeat(" ", json.DefaultBytes-1), json.Limits{}, "json.size", "1:1"},
		{"nodes, just", `{"a":[1,{},[]], "b":"[,,,"}`, json.Limits{Nodes: 6}, "", ""},
		{"nodes", `{"a":[1,{},[]], "b":"[,,,"}`, json.Limits{Nodes: 5}, "json.size", "1:15"},
		{"one node", `[]`, json.Limits{Nodes: 1}, "", ""},
		{"one node too many", `[1]`, json.Limits{Nodes: 1}, "json.size", "1:2"},
		{"depth by default, just", nest(32), json.Limits{}, "", ""},
		{"depth by default", nest(33), json.Limits{}, "json.depth", "1:33"},
		{"depth, just", mixed(4), json.Limits{Depth: 4}, "", ""},
		{"depth", mixed(6), json.Limits{Depth: 4}, "json.depth", "1:13"},
		{"depth of neighbours", `[[[]],[[]],[[[]]]]`, json.Limits{Depth: 3}, "json.depth", "1:14"},
		{"no depth for a scalar", `1`, json.Limits{Depth: 1}, "", ""},
		{"negative depth is the default", nest(32), json.Limits{Depth: -1}, "", ""},
		{"greatest depth, just", mixed(json.MaxDepth), json.Limits{Depth: 1 << 40}, "", ""},
		{"greatest depth", nest(json.MaxDepth + 1), json.Limits{Depth: 1 << 40}, "json.depth", "1:1001"},
		{"depth of a hostile list", strings.Repeat("[", 1_000_000), json.Limits{}, "json.depth", "1:33"},
		{"depth of a hostile object", strings.Repeat(`{"":`, 250_000), json.Limits{}, "json.depth", "1:129"},
		{"one fault", repeat(9), json.Limits{Faults: 1}, "json.duplicate", "1:8"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, faults := json.Parse([]byte(tt.doc), tt.limits)
			var code, at string
			if len(faults) > 0 {
				code = faults[0].Code
				at = strconv.Itoa(faults[0].Line) + ":" + strconv.Itoa(faults[0].Column)
			}
			if code != tt.code || at != tt.at || len(faults) > 1 {
				t.Errorf("Parse gives %d faults, the first %s at %s; want %q at %s",
					len(faults), code, at, tt.code, tt.at)
			}
		})
	}
	for limit, want := range map[int]int{0: json.DefaultFaults, 7: 7, 1 << 40: json.MaxFaults} {
		_, faults := json.Parse([]byte(repeat(2000)), json.Limits{Faults: limit})
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
		_, faults := json.Parse(data, json.Limits{})
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
	node, faults := json.Parse(append(b.Bytes(), `"last":0}`...), json.Limits{})
	if len(faults) > 0 || len(node.Keys) != keys+1 {
		t.Errorf("Parse gives %d keys and faults %v, want %d keys", len(node.Keys), faults, keys+1)
	}
	_, faults = json.Parse(append(b.Bytes(), `"key-123456":0}`...), json.Limits{})
	if len(faults) != 1 || faults[0].Path != "key-123456" {
		t.Errorf("Parse gives faults %v, want one for key-123456", faults)
	}
	if took := time.Since(begin); took > 20*time.Second {
		t.Errorf("two objects of %d keys took %v", keys, took)
	}
}
