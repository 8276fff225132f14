package json_test

import (
	"bytes"
	stdjson "encoding/json"
	"math/rand/v2"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/barrow/mix/json"
)

// sound are documents that both parsers accept. They also seed FuzzParse.
var sound = []string{
	`null`, `true`, ` false `, `0`, `-0`, `1.50`, `1e400`, `-1.5E+07`, `12345678901234567890.000`, `""`, `[]`, `{}`, "\t[ ]\r\n",
	`[1,"a",null,true,{"b":[]}]`,
	`{"a":{"b":{"c":[[[1]]]}},"A":2,"":3}`,
	`["\"\\\/\b\f\n\r\t\u0041\u00e9\u2028\ud83c\udf31"]`,
	"[\"é½🌱\u2028\u007f\ufffd\"]",
	`{"a":1,"b":2,"c":3,"d":4,"e":5,"f":6,"g":7,"h":8,"i":9,"j":10}`,
	`{"schema":1,"beds":[{"name":"<b>&","size":"1 ½ yd³","mass_kg":[270,410]}],"notes":[]}`,
	`[[],[[]],{"a":[]},{"a":{}}]`,
}

// oracle reads data with encoding/json into the tree Parse should give, without
// offsets and with repeated keys left in. It reports false when encoding/json
// refuses data.
func oracle(data []byte) (json.Node, bool) {
	if !stdjson.Valid(data) {
		return json.Node{}, false
	}
	dec := stdjson.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	return oracleValue(dec), true
}

func oracleValue(dec *stdjson.Decoder) json.Node {
	switch v := oracleToken(dec).(type) {
	case bool:
		return json.Node{Kind: json.Bool, Bool: v}
	case stdjson.Number:
		return json.Node{Kind: json.Number, Text: v.String()}
	case string:
		return json.Node{Kind: json.String, Text: v}
	case stdjson.Delim:
		n := json.Node{Kind: json.Array}
		if v == '{' {
			n.Kind = json.Object
		}
		for dec.More() {
			if v == '{' {
				n.Keys = append(n.Keys, oracleToken(dec).(string))
			}
			n.Items = append(n.Items, oracleValue(dec))
		}
		oracleToken(dec)
		return n
	}
	return json.Node{}
}

func oracleToken(dec *stdjson.Decoder) stdjson.Token {
	token, err := dec.Token()
	if err != nil {
		panic(err) // stdjson.Valid has said otherwise
	}
	return token
}

// stricter returns the codes of the rules Parse has beyond encoding/json that
// data, whose tree is n, breaks.
func stricter(data []byte, n *json.Node) map[string]bool {
	codes := map[string]bool{}
	if !utf8.Valid(data) || halfEscape(data) {
		codes["json.utf8"] = true
	}
	if repeatsKey(n) {
		codes["json.duplicate"] = true
	}
	if depth(n) > json.DefaultDepth {
		codes["json.depth"] = true
	}
	return codes
}

var (
	anyEscape = regexp.MustCompile(`(?s)\\(?:u[0-9a-fA-F]{4}|.)`)
	highHalf  = regexp.MustCompile(`^\\u[dD][89abAB]`)
	lowHalf   = regexp.MustCompile(`^\\u[dD][c-fC-F]`)
)

// halfEscape reports whether a valid document has an unpaired surrogate escape.
func halfEscape(data []byte) bool {
	all := anyEscape.FindAllIndex(data, -1)
	for i := 0; i < len(all); i++ {
		escape := data[all[i][0]:all[i][1]]
		if lowHalf.Match(escape) {
			return true
		}
		if highHalf.Match(escape) {
			if !lowHalf.Match(data[all[i][1]:]) {
				return true
			}
			i++
		}
	}
	return false
}

func repeatsKey(n *json.Node) bool {
	seen := map[string]bool{}
	for _, key := range n.Keys {
		if seen[key] {
			return true
		}
		seen[key] = true
	}
	for i := range n.Items {
		if repeatsKey(&n.Items[i]) {
			return true
		}
	}
	return false
}

func depth(n *json.Node) int {
	if n.Kind != json.Array && n.Kind != json.Object {
		return 0
	}
	deepest := 0
	for i := range n.Items {
		deepest = max(deepest, depth(&n.Items[i]))
	}
	return deepest + 1
}

// bare returns n without what the oracle does not know: offsets, and the
// difference between no members and none.
func bare(n json.Node) json.Node {
	n.Offset = 0
	n.Keys = append([]string(nil), n.Keys...)
	var items []json.Node
	for _, item := range n.Items {
		items = append(items, bare(item))
	}
	n.Items = items
	return n
}

// checkAgainstOracle asserts that Parse accepts exactly what encoding/json
// accepts and no stricter rule forbids, that both give the same tree, and that
// the tree survives being written and parsed again.
func checkAgainstOracle(t *testing.T, data []byte) {
	t.Helper()
	got, faults := json.Parse(data, json.Limits{})
	checkFaults(t, data, faults)
	want, valid := oracle(data)
	if !valid {
		if len(faults) == 0 {
			t.Errorf("Parse(%q) accepts what encoding/json refuses", data)
		}
		return
	}
	broken := stricter(data, &want)
	for _, f := range faults {
		if !broken[f.Code] {
			t.Errorf("Parse(%q) = %v, encoding/json accepts it", data, f)
		}
	}
	if len(faults) > 0 {
		return
	}
	if len(broken) > 0 {
		t.Errorf("Parse(%q) accepts what %v forbids", data, broken)
	}
	if !reflect.DeepEqual(bare(got), want) {
		t.Errorf("Parse(%q) =\n%+v, want\n%+v", data, bare(got), want)
	}
	checkOffsets(t, data, &got)
	checkRoundTrip(t, got)
}

// checkOffsets asserts that each value starts where its Offset says.
func checkOffsets(t *testing.T, data []byte, n *json.Node) {
	t.Helper()
	if n.Offset < 0 || n.Offset >= len(data) || strings.IndexByte("\" \t\r\n,:]}", data[n.Offset]) > 0 {
		t.Errorf("a value of %q has offset %d", data, n.Offset)
		return
	}
	first := data[n.Offset]
	if (n.Kind == json.Object) != (first == '{') || (n.Kind == json.Array) != (first == '[') ||
		(n.Kind == json.String) != (first == '"') ||
		n.Kind == json.Number && !bytes.HasPrefix(data[n.Offset:], []byte(n.Text)) {
		t.Errorf("%v of %q has offset %d, where there is %q", n.Kind, data, n.Offset, first)
	}
	for i := range n.Items {
		checkOffsets(t, data, &n.Items[i])
	}
}

func checkRoundTrip(t *testing.T, n json.Node) {
	t.Helper()
	var w, again json.Writer
	writeTree(&w, &n)
	back, faults := json.Parse(w.Bytes(), json.Limits{Bytes: 1 << 30})
	if len(faults) > 0 || !reflect.DeepEqual(bare(back), bare(n)) {
		t.Errorf("Parse(%q) = %+v, %v; want %+v", w.Bytes(), bare(back), faults, bare(n))
	}
	writeTree(&again, &back)
	if !bytes.Equal(w.Bytes(), again.Bytes()) {
		t.Errorf("written again, %q becomes %q", w.Bytes(), again.Bytes())
	}
}

func writeTree(w *json.Writer, n *json.Node) {
	switch n.Kind {
	case json.Null:
		w.Null()
	case json.Bool:
		w.Bool(n.Bool)
	case json.Number:
		w.Raw(n.Text)
	case json.String:
		w.String(n.Text)
	case json.Array:
		w.BeginArray()
		for i := range n.Items {
			writeTree(w, &n.Items[i])
		}
		w.EndArray()
	case json.Object:
		w.BeginObject()
		for i := range n.Items {
			w.Key(n.Keys[i])
			writeTree(w, &n.Items[i])
		}
		w.EndObject()
	}
}

func TestParseAgreesWithEncodingJSON(t *testing.T) {
	for _, doc := range sound {
		if _, faults := json.Parse([]byte(doc), json.Limits{}); len(faults) > 0 {
			t.Errorf("Parse(%q) has faults %v", doc, faults)
		}
		checkAgainstOracle(t, []byte(doc))
	}
	for _, tt := range faulty {
		checkAgainstOracle(t, []byte(tt.doc))
	}
}

// Every prefix of a sound document, and each document with one byte changed, is
// a mistake somebody makes.
func TestParseAgreesOnDamagedDocuments(t *testing.T) {
	const bytesToTry = "\"\\{}[]:,0-.eEtx/' \n\x00\x80\xff"
	for _, doc := range sound {
		for i := range len(doc) {
			checkAgainstOracle(t, []byte(doc[:i]))
			for _, b := range []byte(bytesToTry) {
				checkAgainstOracle(t, []byte(doc[:i]+string([]byte{b})+doc[i+1:]))
				checkAgainstOracle(t, []byte(doc[:i]+string([]byte{b})+doc[i:]))
			}
		}
	}
}

func TestParseAgreesOnRandomDocuments(t *testing.T) {
	documents := 20_000
	if testing.Short() {
		documents = 1000
	}
	var accepted int
	for seed := range documents {
		g := grower{rand.New(rand.NewPCG(uint64(seed), 1))}
		doc := g.value(nil, 5)
		checkAgainstOracle(t, doc)
		if _, faults := json.Parse(doc, json.Limits{}); len(faults) == 0 {
			accepted++
		}
		checkAgainstOracle(t, g.damage(doc))
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	if accepted < documents/2 {
		t.Errorf("only %d of %d random documents are accepted; they test too little", accepted, documents)
	}
}

// grower grows random documents.
type grower struct{ *rand.Rand }

func (g grower) value(doc []byte, levels int) []byte {
	doc = g.space(doc)
	kinds := 7
	if levels == 0 {
		kinds = 5
	}
	switch g.IntN(kinds) {
	case 0:
		doc = append(doc, "null"...)
	case 1:
		doc = append(doc, []string{"true", "false"}[g.IntN(2)]...)
	case 2, 3:
		doc = g.number(doc)
	case 4:
		doc = g.text(doc)
	case 5:
		doc = g.members(append(doc, '['), levels, false)
		doc = append(doc, ']')
	case 6:
		doc = g.members(append(doc, '{'), levels, true)
		doc = append(doc, '}')
	}
	return g.space(doc)
}

func (g grower) members(doc []byte, levels int, keys bool) []byte {
	for i := range g.IntN(14) {
		if i > 0 {
			doc = append(doc, ',')
		}
		if keys {
			doc = g.space(g.text(g.space(doc)))
			doc = append(doc, ':')
		}
		doc = g.value(doc, g.IntN(levels))
	}
	return g.space(doc)
}

func (g grower) space(doc []byte) []byte {
	for g.IntN(4) == 0 {
		doc = append(doc, " \t\r\n"[g.IntN(4)])
	}
	return doc
}

func (g grower) number(doc []byte) []byte {
	pick := func(parts ...string) { doc = append(doc, parts[g.IntN(len(parts))]...) }
	pick("", "-")
	pick("0", "7", "10", "1234567890123456789012")
	pick("", "", ".0", ".50", ".000001")
	pick("", "", "e5", "E-07", "e+400")
	return doc
}

func (g grower) text(doc []byte) []byte {
	pieces := []string{
		"a", "bed", " ", "é", "½", "🌱", "\u2028", "\u007f", "\ufffd", "/", "'", "[", "}", ",", ":", "<&>",
		`\"`, `\\`, `\/`, `\b`, `\f`, `\n`, `\r`, `\t`, `\u0000`, `\u00e9`, `\uFFFD`, `\ud83c\udf31`, `\uDBFF\uDFFF`,
	}
	doc = append(doc, '"')
	for range 2 + g.IntN(6) {
		doc = append(doc, pieces[g.IntN(len(pieces))]...)
	}
	if g.IntN(300) == 0 {
		doc = append(doc, `\ud83c`...)
	}
	return append(doc, '"')
}

// damage returns doc with a few bytes dropped, doubled or replaced.
func (g grower) damage(doc []byte) []byte {
	doc = bytes.Clone(doc)
	for range 1 + g.IntN(3) {
		if len(doc) == 0 {
			break
		}
		i := g.IntN(len(doc))
		switch g.IntN(3) {
		case 0:
			doc = append(doc[:i], doc[i+1:]...)
		case 1:
			doc = append(doc[:i+1], doc[i:]...)
		case 2:
			const bad = "\"\\{}[]:,01-+.eEu\x00\x1f\x80\xc3 \n"
			doc[i] = bad[g.IntN(len(bad))]
		}
	}
	return doc
}
