package json_test

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/barrow/mix/json"
)

// faulty are documents with one fault each. They also seed FuzzParse.
var faulty = []struct {
	name   string
	doc    string
	code   string
	path   string
	at     string // line:column
	value  string
	reason string // a part that tells this fault from others
}{
	// The document as a whole.
	{"nothing", "", "json.empty", "", "1:1", "", "is empty"},
	{"white space only", " \t\r\n\n ", "json.empty", "", "1:1", "", "is empty"},
	{"UTF-8 mark", "\xef\xbb\xbf{}", "json.bom", "", "1:1", "", "without one"},
	{"UTF-16 mark, big end first", "\xfe\xff\x00{\x00}", "json.bom", "", "1:1", "", "save the file as UTF-8"},
	{"UTF-16 mark, little end first", "\xff\xfe{\x00}\x00", "json.bom", "", "1:1", "", "save the file as UTF-8"},
	{"UTF-16 without a mark", "{\x00\"\x00a", "json.syntax", "", "1:2", "\uFFFD", "save the file as UTF-8"},
	{"mark in the middle", "[1,\ufeff2]", "json.syntax", "[1]", "1:4", "\uFFFD2", "U+FEFF"},

	// Bytes that are not UTF-8, wherever they are.
	{"Latin-1 in text", "{\n \"a\": \"f\xfcr\"}", "json.utf8", "a", "2:9", "0xfc", "save the file as UTF-8"},
	{"Latin-1 in text with an escape", `["\n` + "\xfc\"]", "json.utf8", "[0]", "1:5", "0xfc", "not UTF-8"},
	{"Latin-1 after a backslash", "[\"\\\xfc\"]", "json.utf8", "[0]", "1:4", "0xfc", "not UTF-8"},
	{"Latin-1 in a key", "{\"a\xfc\": 1}", "json.utf8", "", "1:4", "0xfc", "not UTF-8"},
	{"Latin-1 for a value", "[1, \xbd]", "json.utf8", "", "1:5", "0xbd", "not UTF-8"},
	{"Latin-1 on a number", "[1\xbd]", "json.utf8", "", "1:3", "0xbd", "not UTF-8"},
	{"Latin-1 in a word", "[tr\xfce]", "json.utf8", "[0]", "1:4", "0xfc", "not UTF-8"},
	{"Latin-1 instead of a colon", "{\"a\"\xfc", "json.utf8", "a", "1:5", "0xfc", "not UTF-8"},
	{"Latin-1 after the value", "{} \xfc", "json.utf8", "", "1:4", "0xfc", "not UTF-8"},
	{"Latin-1 first", "\xfc", "json.utf8", "", "1:1", "0xfc", "not UTF-8"},
	{"encoded surrogate", "[\"\xed\xa0\x80\"]", "json.utf8", "[0]", "1:3", "0xed", "not UTF-8"},
	{"overlong slash", "[\"\xc0\xaf\"]", "json.utf8", "[0]", "1:3", "0xc0", "not UTF-8"},
	{"cut in a character", "[\"\xe2\x82", "json.utf8", "[0]", "1:3", "0xe2", "not UTF-8"},
	{"columns count runes", "[\"½½½\", \"\xfc\"]", "json.utf8", "[1]", "1:10", "0xfc", "not UTF-8"},
	{"an earlier fault comes first", "[1 2, \"\xfc\"]", "json.syntax", "[0]", "1:4", "2", "comma is missing"},

	// Commas.
	{"comma before ]", "[1, 2,\n]", "json.syntax", "", "1:6", ",", "take the comma out"},
	{"comma before }", `{"a": {"b": 1,}}`, "json.syntax", "a", "1:14", ",", "take the comma out"},
	{"comma missing in a list", `[1 2]`, "json.syntax", "[0]", "1:4", "2", "comma is missing"},
	{"comma missing in an object", "{\"a\": 1\n \"b\": 2}", "json.syntax", "a", "2:2", `"b"`, "comma is missing"},
	{"comma missing after a container", `[{} {}]`, "json.syntax", "[0]", "1:5", "{", "comma is missing"},
	{"comma missing before a word", `[1 true]`, "json.syntax", "[0]", "1:4", "true", "comma is missing"},
	{"comma missing before a sign", `[1 -2]`, "json.syntax", "[0]", "1:4", "-2", "comma is missing"},
	{"comma first in a list", `[,1]`, "json.syntax", "[0]", "1:2", ",", "value is missing"},
	{"comma first in an object", `{,}`, "json.syntax", "", "1:2", ",", "key is missing"},
	{"two commas", `[1,,2]`, "json.syntax", "[1]", "1:4", ",", "value is missing"},
	{"two commas between keys", `{"a":1,,"b":2}`, "json.syntax", "", "1:8", ",", "key is missing"},
	{"semicolon", `[1;2]`, "json.syntax", "[0]", "1:3", ";2", "not ;"},
	{"decimal comma", `{"litres": 1,5}`, "json.syntax", "", "1:14", "5", "as in 1.5"},

	// Colons.
	{"colon missing", `{"a" 1}`, "json.syntax", "a", "1:6", "1", "colon is missing"},
	{"equals sign", `{"a" = 1}`, "json.syntax", "a", "1:6", "=", "not ="},
	{"key missing", `{: 1}`, "json.syntax", "", "1:2", ":", "key is missing"},
	{"value missing", `{"a": }`, "json.syntax", "a", "1:7", "}", "value is missing"},
	{"two colons", `{"a": "b": 1}`, "json.syntax", "a", "1:10", ":", "second colon"},
	{"keys in a list", `["a": 1]`, "json.syntax", "[0]", "1:5", ":", "list has no keys"},

	// Brackets and ends.
	{"list left open", "[1", "json.syntax", "", "1:3", "", "add ]"},
	{"object left open", "{\n\"a\": 1\n", "json.syntax", "", "3:1", "", "the object that starts on line 1 is not closed"},
	{"inner list left open", "{\"a\":\n[1", "json.syntax", "a", "2:3", "", "the list that starts on line 2"},
	{"end after [", "[", "json.syntax", "", "1:2", "", "add ]"},
	{"end after {", "{", "json.syntax", "", "1:2", "", "add }"},
	{"end after a comma", "[1,", "json.syntax", "", "1:4", "", "add ]"},
	{"end after a key", `{"a"`, "json.syntax", "a", "1:5", "", "colon and a value"},
	{"end after a colon", `{"a":`, "json.syntax", "a", "1:6", "", "value is expected"},
	{"list closed by }", `[1}`, "json.syntax", "", "1:3", "}", "closed by ]"},
	{"object closed by ]", `{"a":1]`, "json.syntax", "", "1:7", "]", "closed by }"},
	{"empty object closed by ]", `{]`, "json.syntax", "", "1:2", "]", "closed by }"},
	{"empty list closed by }", `[}`, "json.syntax", "[0]", "1:2", "}", "value is missing"},
	{"inner list not closed", `{"a":[1,2}`, "json.syntax", "a", "1:10", "}", "closed by ]"},
	{"closing bracket alone", `]`, "json.syntax", "", "1:1", "]", "value is missing"},

	// Keys.
	{"key without quotes", `{count: 1}`, "json.syntax", "", "1:2", "count", `double quotes: "count"`},
	{"second key without quotes", `{"a":1, b_c: 1}`, "json.syntax", "", "1:9", "b_c", `double quotes: "b_c"`},
	{"key that is a number", `{1: 1}`, "json.syntax", "", "1:2", "1", "key in double quotes"},
	{"key that is an object", `{{}: 1}`, "json.syntax", "", "1:2", "{", "key in double quotes"},
	{"key in single quotes", `{'a': 1}`, "json.syntax", "", "1:2", "'a'", "not in '"},
	{"key in curly quotes", `{“a”: 1}`, "json.syntax", "", "1:2", "“a”", "straight double quotes"},

	// Words.
	{"single quotes", `['a']`, "json.syntax", "[0]", "1:2", "'a'", "not in '"},
	{"back quotes", "[`a`]", "json.syntax", "[0]", "1:2", "`a`", "not in `"},
	{"curly quotes", `["x", „a“]`, "json.syntax", "[1]", "1:7", "„a“", "straight double quotes"},
	{"NaN", `[NaN]`, "json.syntax", "[0]", "1:2", "NaN", "no number NaN"},
	{"Infinity", `[Infinity]`, "json.syntax", "[0]", "1:2", "Infinity", "no number Infinity"},
	{"-Infinity", `[-Infinity]`, "json.syntax", "[0]", "1:2", "-Infinity", "no number -Infinity"},
	{"None", `{"a": None}`, "json.syntax", "a", "1:7", "None", "write null"},
	{"undefined", `[undefined]`, "json.syntax", "[0]", "1:2", "undefined", "write null"},
	{"True", `[True]`, "json.syntax", "[0]", "1:2", "True", "write true"},
	{"FALSE", `[FALSE]`, "json.syntax", "[0]", "1:2", "FALSE", "write false"},
	{"Null", `[Null]`, "json.syntax", "[0]", "1:2", "Null", "write null"},
	{"yes", `[yes]`, "json.syntax", "[0]", "1:2", "yes", "write true"},
	{"off", `[off]`, "json.syntax", "[0]", "1:2", "off", "write false"},
	{"bare word", `[bark]`, "json.syntax", "[0]", "1:2", "bark", `double quotes: "bark"`},
	{"bare word with an accent", `[écorce]`, "json.syntax", "[0]", "1:2", "écorce", `double quotes: "écorce"`},
	{"bare word too odd to repeat", `[C:\bark\new]`, "json.syntax", "[0]", "1:2", "C", "double quotes"},
	{"bare word too long to repeat", "[" + strings.Repeat("é", 50) + "]", "json.syntax", "[0]", "1:2",
		strings.Repeat("é", 39) + "…", "double quotes"},
	{"bare word of 40", "[" + strings.Repeat("é", 40) + "]", "json.syntax", "[0]", "1:2",
		strings.Repeat("é", 40), strings.Repeat("é", 40)},
	{"true and more", `[truest]`, "json.syntax", "[0]", "1:2", "truest", "double quotes"},
	{"stray sign", `[*]`, "json.syntax", "[0]", "1:2", "*", "cannot start like this"},
	{"ellipsis", `[...]`, "json.syntax", "[0]", "1:2", "...", "cannot start like this"},
	{"colon for a value", `[:]`, "json.syntax", "[0]", "1:2", ":", "cannot start like this"},
	{"no-break space", "[1,\u00a02]", "json.syntax", "[1]", "1:4", "\uFFFD2", "U+00A0"},
	{"invisible beyond 16 bits", "[\U000e0001]", "json.syntax", "[0]", "1:2", "\uFFFD", "U+E0001"},
	{"form feed between values", "[1,\f2]", "json.syntax", "[1]", "1:4", "\uFFFD", "U+000C"},
	{"minus sign", "[−1]", "json.syntax", "[0]", "1:2", "−1", "hyphen"},

	// Numbers.
	{"point first", `[.5]`, "json.syntax", "[0]", "1:2", ".5", "write 0.5"},
	{"minus, point", `[-.5]`, "json.syntax", "[0]", "1:2", "-.5", "write -0.5"},
	{"plus", `[+1]`, "json.syntax", "[0]", "1:2", "+1", "write 1"},
	{"plus, point", `[+.5]`, "json.syntax", "[0]", "1:2", "+.5", "no plus sign"},
	{"two signs", `[--1]`, "json.syntax", "[0]", "1:2", "--1", "write -1"},
	{"sign alone", `[-]`, "json.syntax", "[0]", "1:2", "-", "right after it"},
	{"zero in front", `[01]`, "json.syntax", "[0]", "1:2", "01", "write 1"},
	{"minus, zeros in front", `[-007.5]`, "json.syntax", "[0]", "1:2", "-007.5", "write -7.5"},
	{"only zeros", `[00]`, "json.syntax", "[0]", "1:2", "00", "write 0"},
	{"point last", `[1.]`, "json.syntax", "[0]", "1:2", "1.", "write 1"},
	{"no exponent", `[1.5e]`, "json.syntax", "[0]", "1:2", "1.5e", "write 1.5"},
	{"no exponent after its sign", `[1E+]`, "json.syntax", "[0]", "1:2", "1E+", "write 1"},
	{"hexadecimal", `[0x1F]`, "json.syntax", "[0]", "1:2", "0x1F", "decimal digits"},
	{"grouped digits", `[1_000]`, "json.syntax", "[0]", "1:2", "1_000", "write 1000"},
	{"two points", `[1.2.3]`, "json.syntax", "[0]", "1:2", "1.2.3", `double quotes: "1.2.3"`},
	{"unit", `[50L]`, "json.syntax", "[0]", "1:2", "50L", `double quotes: "50L"`},
	{"unit after a space", `{"size": 50 L}`, "json.syntax", "size", "1:13", "L", `double quotes: "50 L"`},
	{"per cent", `[50%]`, "json.syntax", "[0]", "1:2", "50%", `double quotes: "50%"`},
	{"fraction", `[1/2]`, "json.syntax", "[0]", "1:2", "1/2", `double quotes: "1/2"`},
	{"mixed number", `[1 1/2]`, "json.syntax", "[0]", "1:4", "1/2", `double quotes: "1 1/2"`},
	{"fraction sign", `[1½]`, "json.syntax", "[0]", "1:2", "1½", `double quotes: "1½"`},
	{"long number", "[0" + strings.Repeat("7", 60) + "]", "json.syntax", "[0]", "1:2",
		"0" + strings.Repeat("7", 38) + "…", "no zeros in front"},

	// Text.
	{"text left open", `["abc`, "json.syntax", "[0]", "1:2", `"abc`, "has no end"},
	{"text left open after a backslash", `["abc\`, "json.syntax", "[0]", "1:2", `"abc\`, "has no end"},
	{"text left open after an escape", `["abc\n`, "json.syntax", "[0]", "1:2", `"abc\n`, "has no end"},
	{"key left open", `{"abc`, "json.syntax", "", "1:2", `"abc`, "has no end"},
	{"line break in text", "[\n\"abc\n\"]", "json.syntax", "[0]", "2:1", `"abc`, "does not end on its line"},
	{"carriage return in text", "[\"abc\r\n\"]", "json.syntax", "[0]", "1:2", `"abc`, "does not end on its line"},
	{"tab in text", "[\"a\tb\"]", "json.syntax", "[0]", "1:4", "\uFFFD", `a tab inside text is written \t`},
	{"control character in text", "[\"\\n\x1b\"]", "json.syntax", "[0]", "1:5", "\uFFFD", `U+001B inside text is written \u001b`},
	{"zero byte in text", "[\"\x00\"]", "json.syntax", "[0]", "1:3", "\uFFFD", `\u0000`},
	{"unknown escape", `["C:\dir"]`, "json.syntax", "[0]", "1:5", `\d`, `written \\`},
	{"single quote escaped", `["\'"]`, "json.syntax", "[0]", "1:3", `\'`, `written \\`},
	{"letter escaped", `["\é"]`, "json.syntax", "[0]", "1:3", `\é`, `written \\`},
	{"short hex escape", `["\u12"]`, "json.syntax", "[0]", "1:3", `\u12`, "four hexadecimal digits"},
	{"hex escape with a bad digit", `["\u12g4"]`, "json.syntax", "[0]", "1:3", `\u12g4`, "four hexadecimal digits"},
	{"hex escape in braces", `["\u{1F331}"]`, "json.syntax", "[0]", "1:3", `\u`, "four hexadecimal digits"},
	{"first half alone", `["a\ud83c"]`, "json.utf8", "[0]", "1:4", `\ud83c`, "half a character"},
	{"first half twice", `["\ud83c\ud83c"]`, "json.utf8", "[0]", "1:3", `\ud83c`, "half a character"},
	{"first half before another escape", `["\uD83C\n"]`, "json.utf8", "[0]", "1:3", `\uD83C`, "half a character"},
	{"first half before a letter", `["\ud83c\u0041"]`, "json.utf8", "[0]", "1:3", `\ud83c`, "half a character"},
	{"first half before a broken escape", `["\ud83c\udf3"]`, "json.utf8", "[0]", "1:3", `\ud83c`, "half a character"},
	{"second half alone", `["\udf31"]`, "json.utf8", "[0]", "1:3", `\udf31`, "half a character"},
	{"halves the wrong way round", `{"\udf31\ud83c":1}`, "json.utf8", "", "1:3", `\udf31`, "half a character"},

	// Comments.
	{"comment first", "// beds\n{}", "json.syntax", "", "1:1", "// beds", "no comments"},
	{"comment after a value", "[1 // one\n]", "json.syntax", "[0]", "1:4", "// one", "no comments"},
	{"comment on a number", "[1// one\n]", "json.syntax", "[0]", "1:3", "// one", "no comments"},
	{"comment on a word", "[true/* yes */]", "json.syntax", "[0]", "1:6", "/* yes */]", "no comments"},
	{"comment after a comma", "{\"a\": 1, // one\n\"b\": 2}", "json.syntax", "", "1:10", "// one", "no comments"},
	{"comment before a colon", `{"a" /* b */: 1}`, "json.syntax", "a", "1:6", "/* b */: 1}", "no comments"},
	{"comment after #", "# beds\r\n{}", "json.syntax", "", "1:1", "# beds", "no comments"},
	{"comment last", "{} // beds", "json.trailing", "", "1:4", "// beds", "no comments"},

	// What follows the value.
	{"second value", "{}\n\n{}", "json.trailing", "", "3:1", "{", "first value, on line 1"},
	{"second number", "1 2", "json.trailing", "", "1:3", "2", "take out what follows"},
	{"bracket too many", "{}}", "json.trailing", "", "1:3", "}", "take this } out"},
	{"comma last", "[],", "json.trailing", "", "1:3", ",", "take this comma out"},
	{"zero byte last", "[]\x00", "json.trailing", "", "1:3", "\uFFFD", "not in UTF-8"},

	// Repeated keys.
	{"key twice", `{"a": 1, "a": 2}`, "json.duplicate", "a", "1:10", "a", "earlier on this line"},
	{"key twice on two lines", "{\n\"a\": 1,\n\"a\": 2}", "json.duplicate", "a", "3:1", "a", "on line 2"},
	{"key twice, spelled in two ways", `{"a": 1, "\u0061": 2}`, "json.duplicate", "a", "1:10", `\u0061`, "already"},
	{"empty key twice", `{"":1,"":2}`, "json.duplicate", `[""]`, "1:7", "", "already"},
	{"ninth key", `{"a":0,"b":0,"c":0,"d":0,"e":0,"f":0,"g":0,"h":0,"a":0}`, "json.duplicate", "a", "1:50", "a", "already"},
	{"tenth key", `{"a":0,"b":0,"c":0,"d":0,"e":0,"f":0,"g":0,"h":0,"i":0,"i":0}`, "json.duplicate", "i", "1:56", "i", "already"},

	// Paths.
	{"deep path", `{"tasks": [0, {"containers": [{"count": x}]}]}`, "json.syntax", "tasks[1].containers[0].count", "1:41", "x", ""},
	{"odd keys", `{"odd key": {"1st": {"a.b": {"-": x}}}}`, "json.syntax", `["odd key"]["1st"]["a.b"]["-"]`, "1:35", "x", ""},
	{"plain keys", `{"_a-1": {"Z": x}}`, "json.syntax", "_a-1.Z", "1:16", "x", ""},
	{"top list", `[[0, [x]]]`, "json.syntax", "[0][1][0]", "1:7", "x", ""},
	{"keys to escape", `{"\"\\\n\u001b<": {"\u00a0\u202e\u007f\ud83c\udf31": x}}`, "json.syntax",
		`["\"\\\n\u001b\u003c"]["\u00a0\u202e\u007f` + "🌱\"]", "1:54", "x", ""},
	{"long key", `{"` + strings.Repeat("é", 41) + `": x}`, "json.syntax",
		`["` + strings.Repeat("é", 39) + `…"]`, "1:47", "x", ""},
	{"long plain key", `{"` + strings.Repeat("k", 41) + `": x}`, "json.syntax",
		`["` + strings.Repeat("k", 39) + `…"]`, "1:47", "x", ""},
	{"plain key of 40", `{"` + strings.Repeat("k", 40) + `": x}`, "json.syntax", strings.Repeat("k", 40), "1:46", "x", ""},
	{"path after a container", `{"a": [1, {"b": 2}], "c": [3, x]}`, "json.syntax", "c[1]", "1:31", "x", ""},

	// Limits that are on by default.
	{"33 levels", strings.Repeat("[", 33), "json.depth", strings.Repeat("[0]", 32), "1:33", "[", "more than 32"},
}

func TestParseFaults(t *testing.T) {
	for _, tt := range faulty {
		t.Run(tt.name, func(t *testing.T) {
			node, faults := json.Parse([]byte(tt.doc), json.Limits{})
			if len(faults) != 1 {
				t.Fatalf("Parse(%q) gives %d faults %v, want 1", tt.doc, len(faults), faults)
			}
			f := faults[0]
			at := strconv.Itoa(f.Line) + ":" + strconv.Itoa(f.Column)
			if f.Code != tt.code || f.Path != tt.path || at != tt.at || f.Value != tt.value {
				t.Errorf("Parse(%q) = code %s, path %s, at %s, value %q; want code %s, path %s, at %s, value %q",
					tt.doc, f.Code, f.Path, at, f.Value, tt.code, tt.path, tt.at, tt.value)
			}
			if !strings.Contains(f.Reason.String(), tt.reason) {
				t.Errorf("Parse(%q) has reason %q, want one with %q", tt.doc, f.Reason, tt.reason)
			}
			if !reflect.DeepEqual(node, json.Node{}) {
				t.Errorf("Parse(%q) = %+v with a fault, want the zero Node", tt.doc, node)
			}
		})
	}
}

func TestParseReportsEveryRepeatedKey(t *testing.T) {
	doc := `{
  "beds": [{"name": "a", "name": "b"}, {"name": "c"}],
  "beds": {"x": 1, "x": 2, "x": 3},
  "soil" "clay"
}`
	want := []string{
		"beds[0].name 2:26 json.duplicate",
		"beds 3:3 json.duplicate",
		"beds.x 3:20 json.duplicate",
		"beds.x 3:28 json.duplicate",
		"soil 4:10 json.syntax",
	}
	_, faults := json.Parse([]byte(doc), json.Limits{})
	if got := places(faults); !slices.Equal(got, want) {
		t.Errorf("Parse gives\n%q, want\n%q", got, want)
	}
	_, faults = json.Parse([]byte("[\n{\"a\": 1,\n\"a\": 2"), json.Limits{})
	if got := places(faults); len(got) != 2 || !strings.Contains(faults[1].Reason.String(), "that starts on line 2") {
		t.Errorf("Parse gives %v, want a repeated key and the object left open on line 2", faults)
	}
	_, faults = json.Parse([]byte(doc), json.Limits{Faults: 3})
	if got := places(faults); !slices.Equal(got, want[:3]) {
		t.Errorf("Parse with at most 3 faults gives\n%q, want\n%q", got, want[:3])
	}
}

func places(faults []json.Fault) []string {
	var list []string
	for _, f := range faults {
		list = append(list, f.Path+" "+strconv.Itoa(f.Line)+":"+strconv.Itoa(f.Column)+" "+f.Code)
	}
	return list
}

func TestFaultError(t *testing.T) {
	f := json.Fault{Path: "tasks[1].count", Reason: "a comma is missing", Line: 3, Column: 5}
	if got, want := f.Error(), "line 3, column 5: tasks[1].count: a comma is missing"; got != want {
		t.Errorf("Error() = %q, want %q", got, want)
	}
	f.Path = ""
	if got, want := f.Error(), "line 3, column 5: a comma is missing"; got != want {
		t.Errorf("Error() at the top = %q, want %q", got, want)
	}
	var _ error = f
}

func TestPosition(t *testing.T) {
	data := []byte("ab\n½c\r\n\nd")
	tests := []struct{ offset, line, column int }{
		{-1, 1, 1}, {0, 1, 1}, {2, 1, 3}, {3, 2, 1}, {5, 2, 2}, {7, 2, 4}, {8, 3, 1}, {9, 4, 1}, {10, 4, 2}, {99, 4, 2},
	}
	for _, tt := range tests {
		if line, column := json.Position(data, tt.offset); line != tt.line || column != tt.column {
			t.Errorf("Position(%q, %d) = %d:%d, want %d:%d", data, tt.offset, line, column, tt.line, tt.column)
		}
	}
}

func TestPath(t *testing.T) {
	tests := []struct{ got, want string }{
		{json.PathKey("", "a"), "a"},
		{json.PathKey("a", "b"), "a.b"},
		{json.PathKey("a[1]", "b-c"), "a[1].b-c"},
		{json.PathKey("", "odd key"), `["odd key"]`},
		{json.PathKey("a", ""), `a[""]`},
		{json.PathKey("a", "1st"), `a["1st"]`},
		{json.PathKey("a", "\xff\U000e0001"), "a[\"\uFFFD\uFFFD\"]"},
		{json.PathIndex("", 0), "[0]"},
		{json.PathIndex(`a["b c"]`, 12), `a["b c"][12]`},
	}
	for _, tt := range tests {
		if tt.got != tt.want {
			t.Errorf("path = %s, want %s", tt.got, tt.want)
		}
	}
}

// checkFaults asserts what holds for the faults of any document.
func checkFaults(t *testing.T, data []byte, faults []json.Fault) {
	t.Helper()
	var line, column int
	for _, f := range faults {
		if !strings.HasPrefix(f.Code, "json.") || f.Reason == "" {
			t.Errorf("fault %+v of %q lacks a code or a reason", f, data)
		}
		if n := utf8.RuneCountInString(f.Value); n > 40 || !utf8.ValidString(f.Value+f.Path+f.Reason.String()) {
			t.Errorf("fault %+v of %q has a value of %d runes, or text that is not UTF-8", f, data, n)
		}
		if f.Line < line || f.Line == line && f.Column < column {
			t.Errorf("faults of %q are out of order: %v", data, faults)
		}
		line, column = f.Line, f.Column
	}
}
