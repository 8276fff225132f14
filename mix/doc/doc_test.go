package doc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// thing is an object with a field of every type.
type thing struct {
	name, id, text, word, choice string
	names, choices               []string
	length, margin               units.Length
	area                         units.Area
	volume                       units.Volume
	mass                         units.Mass
	density                      units.Density
	lengths, two, three          []units.Length
	money                        units.Money
	price                        *units.Money
	share, most, extra           units.Ratio
	someOfAll, someShare         units.Ratio
	loss                         *units.Ratio
	factor                       units.Ratio
	flag                         bool
	count, fromZero              int64
	maybeCount                   *int64
	part                         part
	maybe                        *part
	parts                        []part
}

type part struct {
	wide  units.Length
	count int64
}

var partFields = doc.Fields{
	{Name: "wide", Type: &doc.Length, At: func(p any) any { return &p.(*part).wide }},
	{Name: "count", Type: &doc.Count, At: func(p any) any { return &p.(*part).count }},
}

// The three ways in which an object stands in another.
var (
	partObject  = doc.Object{ID: "part", Name: "a part", Tables: []doc.Fields{partFields}}
	maybeObject = doc.Object{ID: "maybe", Name: "a part", Tables: []doc.Fields{partFields}, Maybe: doc.MaybeOf[part]}
	rowObject   = doc.Object{ID: "row", Name: "a part", Tables: []doc.Fields{partFields}, Row: doc.RowOf[part]}
)

// Types that a table makes for itself.
var (
	word     = doc.Type{Takes: "a word", Form: "text", Such: "a thing", Read: doc.ReadWord}
	choice   = doc.Type{Form: "choice", Words: []string{"red", "green", "blue"}, Read: doc.ReadChoice}
	choices  = doc.Type{Form: "list", Such: "colours", Words: []string{"red", "green"}, Read: doc.ReadChoices}
	fromZero = doc.Type{Takes: "whole number", Form: "count", Read: doc.ReadCount}
	onePart  = doc.Type{Takes: "object", Form: "object", Of: func() *doc.Object { return &partObject }, Read: doc.ReadOne}
	maybe    = doc.Type{Takes: "object", Form: "object", Of: func() *doc.Object { return &maybeObject }, Read: doc.ReadOne}
	parts    = doc.Type{Takes: "list", Form: "list", Such: "parts", Of: func() *doc.Object { return &rowObject }, Read: doc.ReadEach}
)

// exported are the types of the package by name; the rest are made above.
var exported = map[string]*doc.Type{
	"Name": &doc.Name, "ID": &doc.ID, "Text": &doc.Text, "Names": &doc.Names,
	"Length": &doc.Length, "Margin": &doc.Margin, "Area": &doc.Area, "Volume": &doc.Volume, "Mass": &doc.Mass, "Density": &doc.Density,
	"Lengths": &doc.Lengths, "TwoLengths": &doc.TwoLengths, "ThreeLengths": &doc.ThreeLengths,
	"Money": &doc.Money, "Price": &doc.Price,
	"Share": &doc.Share, "MostShare": &doc.MostShare, "Extra": &doc.Extra, "SomeOfAll": &doc.SomeOfAll, "SomeShare": &doc.SomeShare, "Loss": &doc.Loss,
	"Factor": &doc.Factor, "Bool": &doc.Bool, "Count": &doc.Count, "MaybeCount": &doc.MaybeCount,
}

var thingFields = doc.Fields{
	{Name: "name", Type: &doc.Name, At: func(t any) any { return &t.(*thing).name }},
	{Name: "id", Type: &doc.ID, At: func(t any) any { return &t.(*thing).id }},
	{Name: "text", Type: &doc.Text, At: func(t any) any { return &t.(*thing).text }},
	{Name: "word", Type: &word, At: func(t any) any { return &t.(*thing).word }},
	{Name: "choice", Type: &choice, At: func(t any) any { return &t.(*thing).choice }},
	{Name: "names", Type: &doc.Names, At: func(t any) any { return &t.(*thing).names }},
	{Name: "choices", Type: &choices, At: func(t any) any { return &t.(*thing).choices }},
	{Name: "length", Type: &doc.Length, At: func(t any) any { return &t.(*thing).length }},
	{Name: "margin", Type: &doc.Margin, At: func(t any) any { return &t.(*thing).margin }},
	{Name: "area", Type: &doc.Area, At: func(t any) any { return &t.(*thing).area }},
	{Name: "volume", Type: &doc.Volume, At: func(t any) any { return &t.(*thing).volume }},
	{Name: "mass", Type: &doc.Mass, At: func(t any) any { return &t.(*thing).mass }},
	{Name: "density", Type: &doc.Density, At: func(t any) any { return &t.(*thing).density }},
	{Name: "lengths", Type: &doc.Lengths, At: func(t any) any { return &t.(*thing).lengths }},
	{Name: "two", Type: &doc.TwoLengths, At: func(t any) any { return &t.(*thing).two }},
	{Name: "three", Type: &doc.ThreeLengths, At: func(t any) any { return &t.(*thing).three }},
	{Name: "money", Type: &doc.Money, At: func(t any) any { return &t.(*thing).money }},
	{Name: "price", Type: &doc.Price, At: func(t any) any { return &t.(*thing).price }},
	{Name: "share", Type: &doc.Share, At: func(t any) any { return &t.(*thing).share }},
	{Name: "most", Type: &doc.MostShare, At: func(t any) any { return &t.(*thing).most }},
	{Name: "extra", Type: &doc.Extra, At: func(t any) any { return &t.(*thing).extra }},
	{Name: "some_of_all", Type: &doc.SomeOfAll, At: func(t any) any { return &t.(*thing).someOfAll }},
	{Name: "some_share", Type: &doc.SomeShare, At: func(t any) any { return &t.(*thing).someShare }},
	{Name: "loss", Type: &doc.Loss, At: func(t any) any { return &t.(*thing).loss }},
	{Name: "factor", Type: &doc.Factor, At: func(t any) any { return &t.(*thing).factor }},
	{Name: "flag", Type: &doc.Bool, At: func(t any) any { return &t.(*thing).flag }},
	{Name: "count", Type: &doc.Count, At: func(t any) any { return &t.(*thing).count }},
	{Name: "from_zero", Type: &fromZero, At: func(t any) any { return &t.(*thing).fromZero }},
	{Name: "maybe_count", Type: &doc.MaybeCount, At: func(t any) any { return &t.(*thing).maybeCount }},
	{Name: "part", Type: &onePart, At: func(t any) any { return &t.(*thing).part }},
	{Name: "maybe", Type: &maybe, At: func(t any) any { return &t.(*thing).maybe }},
	{Name: "parts", Type: &parts, At: func(t any) any { return &t.(*thing).parts }},
}

func ptr[T any](v T) *T { return &v }

func ratio(num, den int64) units.Ratio {
	r, err := units.NewRatio(num, den)
	if err != nil {
		panic(err)
	}
	return r
}

// readings are what is typed in a field, what is then read, nil for what is there
// without it, and the problems: the code, behind the path below the field.
var readings = []struct {
	field, typed string
	want         any
	problems     string
}{
	{"name", `"  Berry walk "`, "Berry walk", ""},
	{"name", `7`, nil, "json.kind"},
	{"name", `"` + strings.Repeat("a", 121) + `"`, nil, "name.long"},
	{"name", `"a\u0007"`, nil, "name.control"},
	{"id", `"bark-fines"`, "bark-fines", ""},
	{"id", `"bark fines"`, "bark fines", "id.form"},
	{"id", `"17"`, "17", "id.form"},
	{"id", `true`, nil, "json.kind"},
	{"text", `" any   text "`, "any text", ""},
	{"text", `" "`, nil, "quantity.empty"},
	{"text", `3`, nil, "json.kind"},
	{"word", `"peat"`, "peat", ""},
	{"word", `["peat"]`, nil, "json.kind"},
	{"choice", `"green"`, "green", ""},
	{"choice", `"gren"`, nil, "word.unknown"},
	{"choice", `"yellow"`, nil, "word.unknown"},
	{"choice", `null`, nil, "json.kind"},
	{"names", `["a", " b "]`, []string{"a", "b"}, ""},
	{"names", `[]`, []string{}, ""},
	{"names", `"a"`, nil, "json.kind"},
	{"names", `["a", 2]`, []string{"a", ""}, "[1] json.kind"},
	{"choices", `["red", "green"]`, []string{"red", "green"}, ""},
	{"choices", `["red", "blue"]`, []string{"red", ""}, "[1] word.unknown"},
	{"choices", `{}`, nil, "json.kind"},
	{"length", `"3 in"`, 3 * units.Inch, ""},
	{"length", `"0 in"`, nil, "quantity.zero"},
	{"length", `"3"`, nil, "unit.missing"},
	{"length", `"3 lb"`, nil, "unit.kind"},
	{"length", `"-3 in"`, nil, "quantity.negative"},
	{"length", `3`, nil, "json.kind"},
	{"length", `""`, nil, "quantity.empty"},
	{"margin", `"0 in"`, nil, ""},
	{"margin", `"1 in"`, units.Inch, ""},
	{"area", `"240 sq ft"`, 240 * units.SquareFoot, ""},
	{"area", `"0 sq ft"`, nil, "quantity.zero"},
	{"volume", `"2 L"`, 2 * units.Litre, ""},
	{"volume", `"2 l2"`, nil, "unit.unknown"},
	{"mass", `"2 kg"`, 2 * units.Kilogram, ""},
	{"mass", `{}`, nil, "json.kind"},
	{"density", `"1 kg/m3"`, units.Density(1_000_000), ""},
	{"density", `"0 kg/m3"`, nil, "quantity.zero"},
	{"lengths", `["1 in", "2 in"]`, []units.Length{units.Inch, 2 * units.Inch}, ""},
	{"lengths", `["1 in", "2"]`, []units.Length{units.Inch, 0}, "[1] unit.missing"},
	{"lengths", `"1 in"`, nil, "json.kind"},
	{"two", `"4 ft x 3 ft"`, []units.Length{4 * units.Foot, 3 * units.Foot}, ""},
	{"two", `"4 ft"`, nil, "dims.count"},
	{"two", `"4 ft x"`, nil, "quantity.empty"},
	{"two", `4`, nil, "json.kind"},
	{"three", `"3 x 2 x 1 in"`, []units.Length{3 * units.Inch, 2 * units.Inch, units.Inch}, ""},
	{"three", `"3 x 2 in"`, nil, "dims.count"},
	{"money", `"4.75"`, units.Money(475), ""},
	{"money", `4.75`, units.Money(475), ""},
	{"money", `"4.755"`, nil, "money.decimals"},
	{"money", `"$4"`, nil, "money.unit"},
	{"money", `false`, nil, "json.kind"},
	{"price", `"0"`, ptr(units.Money(0)), ""},
	{"price", `12`, ptr(units.Money(1200)), ""},
	{"price", `"-1"`, ptr(units.Money(0)), "quantity.negative"},
	{"share", `"100%"`, units.Percent(100), ""},
	{"share", `0.1`, units.Percent(10), ""},
	{"share", `"101%"`, nil, "share.range"},
	{"share", `"10"`, nil, "unit.missing"},
	{"most", `"95%"`, units.Percent(95), ""},
	{"most", `"96%"`, nil, "share.range"},
	{"extra", `"1000%"`, units.Percent(1000), ""},
	{"extra", `"1001%"`, nil, "share.range"},
	{"some_of_all", `"100%"`, units.Percent(100), ""},
	{"some_of_all", `"0%"`, nil, "quantity.zero"},
	{"some_share", `"25%"`, units.Percent(25), ""},
	{"some_share", `"96%"`, nil, "share.range"},
	{"loss", `"0%"`, ptr(units.Percent(0)), ""},
	{"loss", `"96%"`, ptr(units.Percent(0)), "share.range"},
	{"factor", `1.5`, ratio(3, 2), ""},
	{"factor", `"2"`, ratio(2, 1), ""},
	{"factor", `0.5`, nil, "number.range"},
	{"factor", `11`, nil, "number.range"},
	{"factor", `null`, nil, "json.kind"},
	{"flag", `true`, true, ""},
	{"flag", `false`, nil, ""},
	{"flag", `"true"`, nil, "json.kind"},
	{"count", `64`, int64(64), ""},
	{"count", `"64"`, nil, "json.kind"},
	{"count", `6.4`, nil, "count.whole"},
	{"count", `0`, nil, "count.small"},
	{"count", `1000000000`, int64(1_000_000_000), ""},
	{"count", `1000000001`, nil, "count.large"},
	{"from_zero", `0`, nil, ""},
	{"from_zero", `-1`, nil, "count.small"},
	{"maybe_count", `0`, ptr(int64(0)), ""},
	{"maybe_count", `5`, ptr(int64(5)), ""},
	{"maybe_count", `-5`, ptr(int64(0)), "count.small"},
	{"part", `{"wide": "1 in", "count": 2}`, part{units.Inch, 2}, ""},
	{"part", `{"wide": "1 in", "cuont": 2}`, part{wide: units.Inch}, ".cuont field.unknown"},
	{"part", `[]`, nil, "json.kind"},
	{"maybe", `{}`, &part{}, ""},
	{"maybe", `{"count": 2}`, &part{count: 2}, ""},
	{"maybe", `{"count": 0, "wide": "1"}`, &part{}, ".count count.small .wide unit.missing"},
	{"parts", `[]`, nil, ""},
	{"parts", `[{"count": 2}, {"wide": "1 in"}]`, []part{{count: 2}, {wide: units.Inch}}, ""},
	{"parts", `[{"count": 2}, 3, {"count": -1}]`, []part{{count: 2}, {}, {}}, "[1] json.kind [2].count count.small"},
	{"parts", `{}`, nil, "json.kind"},
	{"other", `1`, nil, "field.unknown"},
}

// TestReadings reads a document of one field for each of the readings. What is not
// typed stays as it was.
func TestReadings(t *testing.T) {
	read := map[string]int{}
	for _, tt := range readings {
		read[tt.field]++
		var r doc.Reader
		root := r.Parse([]byte(`{"` + tt.field + `": ` + tt.typed + `}`))
		require.NotNil(t, root, "%s: %s", tt.field, tt.typed)
		var got, want thing
		r.Object(root, "a thing", doc.Into{Table: thingFields, Object: &got})
		var problems []string
		for _, p := range doc.ProblemsIn(r.Err()) {
			problems = append(problems, strings.TrimSpace(strings.TrimPrefix(p.Path, tt.field)+" "+p.Code))
			if p.Hint == "" {
				t.Errorf("%s: %s: %s has no hint", tt.field, tt.typed, p.Code)
			}
		}
		if text := strings.Join(problems, " "); text != tt.problems {
			t.Errorf("%s: %s: problems %q, want %q", tt.field, tt.typed, text, tt.problems)
		}
		if f := fieldOf(tt.field); f != nil {
			if tt.want != nil {
				reflect.ValueOf(f.At(&want)).Elem().Set(reflect.ValueOf(tt.want))
			}
			if tt.field == "parts" && tt.want == nil {
				got.parts = nil // an empty list is as good as none
			}
		}
		require.Equal(t, want, got, "%s: %s", tt.field, tt.typed)
	}
	for i := range thingFields {
		if read[thingFields[i].Name] < 2 {
			t.Errorf("%s is read %d times, want a good and a bad one", thingFields[i].Name, read[thingFields[i].Name])
		}
	}
}

func fieldOf(name string) *doc.Field {
	for i := range thingFields {
		if thingFields[i].Name == name {
			return &thingFields[i]
		}
	}
	return nil
}

// TestEveryType: the thing has a field of every type that the package exports.
func TestEveryType(t *testing.T) {
	used := map[*doc.Type]bool{}
	for i := range thingFields {
		used[thingFields[i].Type] = true
	}
	n := 0
	for _, name := range typeVars(t) {
		n++
		if one := exported[name]; one == nil || !used[one] {
			t.Errorf("no field of the thing has the type %s", name)
		}
	}
	require.Equal(t, len(exported), n)
	for name, one := range exported {
		if one.InWords() == "" || one.Form == "" || one.Read == nil {
			t.Errorf("%s: words %q, form %q", name, one.InWords(), one.Form)
		}
	}
}

// typeVars lists the exported variables of the package that are a Type.
func typeVars(t *testing.T) (names []string) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, name := range files {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		for _, d := range file.Decls {
			list, ok := d.(*ast.GenDecl)
			if !ok || strings.HasSuffix(name, "_test.go") {
				continue
			}
			for _, s := range list.Specs {
				if v, ok := s.(*ast.ValueSpec); ok && len(v.Values) == 1 && v.Names[0].IsExported() {
					if lit, ok := v.Values[0].(*ast.CompositeLit); ok {
						if of, ok := lit.Type.(*ast.Ident); ok && of.Name == "Type" {
							names = append(names, v.Names[0].Name)
						}
					}
				}
			}
		}
	}
	return names
}

// TestInOrder: problems come in the order of the document, whatever order the
// checks are in, and the first of a path is the one that counts.
func TestInOrder(t *testing.T) {
	var r doc.Reader
	root := r.Parse([]byte(`{"two": "1 in", "one": 5}`))
	r.ProblemAt("one", doc.CountSmall, "first")
	r.ProblemAt("two", doc.CountLarge, "second")
	r.ProblemAt("one", doc.CountWhole, "no news")
	r.ProblemAt("none", doc.FieldMissing, "left out")
	require.NotNil(t, root)
	var got []string
	for _, p := range doc.ProblemsIn(r.Err()) {
		got = append(got, p.Path+" "+p.Code+" "+p.Value)
	}
	require.Equal(t, []string{"none field.missing ", "two count.large 1 in", "one count.small 5"}, got)
	r.Enter("one")
	require.False(t, r.Sound())
	r.Leave()
	require.False(t, r.Clean("three", "two"))
	require.True(t, r.Clean("three"))
}
