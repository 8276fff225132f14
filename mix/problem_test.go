package mix_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// taskJob wraps one task's fields as a job.
func taskJob(fields string) string { return `{"schema": 1, "tasks": [{` + fields + `}]}` }

// badJobs are documents with exactly the problems named, as path and code in
// document order.
var badJobs = []struct {
	why, doc string
	want     []string
}{
	{"nothing", "", []string{" json.empty"}},
	{"not JSON", "{", []string{" json.syntax"}},
	{"a list", "[]", []string{" json.kind", "tasks job.empty"}},
	{"an empty job", `{}`, []string{"schema field.missing", "tasks job.empty"}},
	{"no tasks", `{"schema": 1, "tasks": []}`, []string{"tasks job.empty"}},
	{"a newer version", `{"schema": 2, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulch"}]}`, []string{"schema schema.newer"}},
	{"byte order mark", "\xef\xbb\xbf{}", []string{" json.bom"}},
	{"deep nesting", strings.Repeat(`[`, 100), []string{"[0][0][0][0][0][0][0][0][0][0][0][0][0][0][0][0] json.depth"}},
	{"the same key twice", `{"schema": 1, "schema": 1}`, []string{"schema json.duplicate"}},
	{"all at once, in order", `{"schema": 1, "tasks": [
		{"kind": "cover", "area": "60 ft x 4 ft", "layer": "3 inchs", "material": "bark-mulhc"},
		{"kind": "fill", "mix": "potting", "containers": [{"count": 0, "size": "#1"}, {"count": 3, "sise": "#1"}]}],
		"on_hand": {"perlite": "2"}}`,
		[]string{"tasks[0].layer unit.unknown", "tasks[0].material material.unknown", "tasks[1].containers[0].count count.small", "tasks[1].containers[1].sise field.unknown", "on_hand.perlite unit.missing"}},
	{"unknown field", `{"schema": 1, "taks": []}`, []string{"tasks job.empty", "taks field.unknown"}},
	{"no kind", taskJob(`"area": "1 sq m"`), []string{"tasks[0].kind field.missing"}},
	{"no such kind", taskJob(`"kind": "mulch"`), []string{"tasks[0].kind word.unknown"}},
	{"another kind's field", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulch", "into": "9 in"`), []string{"tasks[0].into field.unknown"}},
	{"a weight for a depth", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 lb", "material": "bark-mulch"`), []string{"tasks[0].layer unit.kind"}},
	{"a bare number for a depth", taskJob(`"kind": "cover", "area": "1 sq m", "layer": 3, "material": "bark-mulch"`), []string{"tasks[0].layer json.kind"}},
	{"negative", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "-3 in", "material": "bark-mulch"`), []string{"tasks[0].layer quantity.negative"}},
	{"zero", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "0 in", "material": "bark-mulch"`), []string{"tasks[0].layer quantity.zero"}},
	{"not a number", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "NaN in", "material": "bark-mulch"`), []string{"tasks[0].layer number.missing"}},
	{"1e400", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "1e400 in", "material": "bark-mulch"`), []string{"tasks[0].layer number.exponent"}},
	{"a count of 1e400", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1e400, "size": "#1"}]`), []string{"tasks[0].containers[0].count count.whole"}},
	{"a count of minus nothing", `{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}], "offers": [{"material": "peat", "pack": "2 cu ft", "stock": -0}]}`, []string{"offers[0].stock count.whole"}},
	{"a count of a half", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1.5, "size": "#1"}]`), []string{"tasks[0].containers[0].count count.whole"}},
	{"a count past the bound", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 99999999999999999999, "size": "#1"}]`), []string{"tasks[0].containers[0].count count.large"}},
	{"overflow on the way", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1000000000, "holds": "1000000 L"}]`), []string{"tasks[0].containers[0] volume.large"}},
	{"overflow by allowances", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "holds": "1000000 m3"}]`), []string{"tasks[0] volume.large"}},
	{"overflow by adding up", `{"schema": 1, "tasks": [
		{"kind": "fill", "material": "sand", "settle": "0%", "containers": [{"count": 1, "holds": "900000 m3"}]},
		{"kind": "fill", "material": "sand", "settle": "0%", "containers": [{"count": 1, "holds": "900000 m3"}]}]}`, []string{"tasks[1] volume.large"}},
	{"neither mix nor material", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in"`), []string{"tasks[0].material field.missing"}},
	{"both", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "potting", "material": "peat"`), []string{"tasks[0].material field.both"}},
	{"a mix for a material", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "potting"`), []string{"tasks[0].material material.unknown"}},
	{"a material for a mix", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "peat"`), []string{"tasks[0].mix mix.unknown"}},
	{"a mix with no parts", `{"schema": 1, "mixes": [{"id": "air", "parts": {}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "air"}]}`, []string{"mixes[0].parts mix.empty"}},
	{"a mix of itself", `{"schema": 1, "mixes": [{"id": "a", "parts": {"a": 1, "peat": 1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "a"}]}`, []string{"mixes[0].parts.a mix.itself"}},
	{"mixes of each other", `{"schema": 1, "mixes": [{"id": "a", "parts": {"b": 1}}, {"id": "b", "parts": {"a": 1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "a"}]}`, []string{"mixes[0].parts.b mix.itself", "mixes[1].parts.a mix.itself"}},
	{"parts of nothing", `{"schema": 1, "mixes": [{"id": "a", "parts": {"peat": 0, "perlite": -1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "a"}]}`, []string{"mixes[0].parts.peat quantity.zero", "mixes[0].parts.perlite quantity.negative"}},
	{"a part that names nothing", `{"schema": 1, "mixes": [{"id": "a", "parts": {"peet": 1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "a"}]}`, []string{"mixes[0].parts.peet material.unknown"}},
	{"a mix named as a material is", `{"schema": 1, "mixes": [{"id": "peat", "parts": {"perlite": 1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"mixes[0].id id.taken"}},
	{"ids twice", `{"schema": 1, "materials": [{"id": "mine"}, {"id": "mine"}], "containers": [{"id": "p", "holds": "1 L"}, {"id": "p", "holds": "1 L"}], "mixes": [{"id": "m", "parts": {"peat": 1}}, {"id": "m", "parts": {"peat": 1}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "mine"}]}`, []string{"materials[1].id id.duplicate", "containers[1].id id.duplicate", "mixes[1].id id.duplicate"}},
	{"an odd id", `{"schema": 1, "materials": [{"id": "my bark"}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"materials[0].id id.form"}},
	{"a terminal's escape in a name", `{"schema": 1, "name": "a\u001b[2Jb", "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"name name.control"}},
	{"text turned round in a name", `{"schema": 1, "name": "a\u202eb", "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"name name.control"}},
	{"dry heavier than wet", `{"schema": 1, "materials": [{"id": "x", "dry": "900 kg/m3", "wet": "300 kg/m3"}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "x"}]}`, []string{"materials[0].wet density.order"}},
	{"a pot given twice", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "holds": "3 L"}]`), []string{"tasks[0].containers[0] field.both"}},
	{"a pot given twice with a rim", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "holds": "3 L", "below_rim": "1 in"}]`), []string{"tasks[0].containers[0] field.both", "tasks[0].containers[0].below_rim field.alone"}},
	{"a pot given twice with all that goes with neither", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "brim": "3 L", "height": "6 in", "bottom": "4 in", "shape": "square", "below_rim": "1 in"}]`), []string{"tasks[0].containers[0] field.both", "tasks[0].containers[0].height field.alone", "tasks[0].containers[0].bottom field.alone"}},
	{"a rim on what it holds", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "holds": "3 L", "shape": "round", "height": "6 in", "bottom": "4 in", "below_rim": "1 in"}]`), []string{"tasks[0].containers[0].shape field.alone", "tasks[0].containers[0].height field.alone", "tasks[0].containers[0].bottom field.alone", "tasks[0].containers[0].below_rim field.alone"}},
	{"a brim and a box", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "box": "6 in x 6 in x 6 in"}]`), []string{"tasks[0].containers[0] field.both"}},
	{"a brim without a width", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "below_rim": "1 in"}]`), []string{"tasks[0].containers[0].top field.missing"}},
	{"a brim with a width that does not read", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "below_rim": "1 in", "top": "6 inchs"}]`), []string{"tasks[0].containers[0].top unit.unknown"}},
	{"a brim with a width and no fill line", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "top": "6 in"}]`), []string{"tasks[0].containers[0].below_rim field.missing"}},
	{"a brim with two widths", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "below_rim": "1 in", "across": "6 in", "top": "6 in"}]`), []string{"tasks[0].containers[0].top field.both"}},
	{"a brim with a base and a height", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "below_rim": "1 in", "top": "6 in", "bottom": "4 in", "height": "7 in"}]`), []string{"tasks[0].containers[0].bottom field.alone", "tasks[0].containers[0].height field.alone"}},
	{"a brim seen from above without a width", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "shape": "square"}]`), []string{"tasks[0].containers[0].shape field.alone"}},
	{"a slice that is all of the brim", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "1 L", "below_rim": "5 cm", "across": "20 cm", "shape": "square"}]`), []string{"tasks[0].containers[0].below_rim container.below_rim"}},
	{"a ball wider than the rim", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "brim": "3 L", "below_rim": "1 in", "top": "6 in", "ball": "6.5 in x 2 in"}]`), []string{"tasks[0].containers[0].ball ball.large"}},
	{"a pot without a measure", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1}]`), []string{"tasks[0].containers[0] container.missing"}},
	{"a taper without a base", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "top": "6 in"}]`), []string{"tasks[0].containers[0].height field.missing", "tasks[0].containers[0].bottom field.missing"}},
	{"rim below the floor", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "across": "6 in", "height": "6 in", "below_rim": "6 in"}]`), []string{"tasks[0].containers[0].below_rim container.below_rim"}},
	{"a rim on a class", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "below_rim": "1 in"}]`), []string{"tasks[0].containers[0].below_rim field.alone"}},
	{"a ball as large as the pot", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "ball": "#1"}]`), []string{"tasks[0].containers[0].ball ball.large"}},
	{"a ball wider than the pot", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "across": "20 cm", "height": "30 cm", "ball": "25 cm x 2 cm"}]`), []string{"tasks[0].containers[0].ball ball.large"}},
	{"a ball taller than the mix", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "box": "20 cm x 30 cm x 10 cm", "below_rim": "1 cm", "ball": "5 cm x 10 cm"}]`), []string{"tasks[0].containers[0].ball ball.large"}},
	{"a ball wider than the hole", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "20 in x 2 in"`), []string{"tasks[0].ball ball.large"}},
	{"the trade's words for a class", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "1 gal"}]`), []string{"tasks[0].containers[0].size container.unknown"}},
	{"settle of everything", taskJob(`"kind": "fill", "mix": "potting", "settle": "100%", "containers": [{"count": 1, "size": "#1"}]`), []string{"tasks[0].settle share.range"}},
	{"layer and share", taskJob(`"kind": "amend", "area": "1 sq m", "material": "compost", "layer": "3 in", "share": "25%", "into": "9 in", "over": "6 in"`), []string{"tasks[0].share field.both", "tasks[0].over field.both"}},
	{"a layer deeper than the bed", taskJob(`"kind": "amend", "area": "1 sq m", "material": "compost", "layer": "9 in", "into": "6 in"`), []string{"tasks[0].into layer.deep"}},
	{"a layer deeper than the bed, by less than a hair", taskJob(`"kind": "amend", "area": "1 sq m", "material": "compost", "layer": "6.000001 in", "into": "6 in"`), []string{"tasks[0].into layer.deep"}},
	{"no depth", taskJob(`"kind": "amend", "area": "1 sq m", "material": "compost"`), []string{"tasks[0].layer field.missing", "tasks[0].into field.missing"}},
	{"a share of the holes of nothing", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "#1", "share": "25%"`), []string{"tasks[0].material field.missing"}},
	{"a material without a share", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "#1", "material": "compost"`), []string{"tasks[0].share field.missing"}},
	{"a ball that fills the hole", taskJob(`"kind": "backfill", "holes": 1, "width": "6 in", "depth": "7 in", "ball": "8 in x 7 in"`), []string{"tasks[0].ball ball.large"}},
	{"stems over everything", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulch", "stems": {"count": 100, "clear": "10 cm"}`), []string{"tasks[0].stems stems.large"}},
	{"an overlap as wide as the sheet", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulch", "sheet": {"size": "1 m x 50 cm", "overlap": "50 cm"}`), []string{"tasks[0].sheet.overlap sheet.overlap"}},
	{"a crossing outline", taskJob(`"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": {"corners": [["0 m", "0 m"], ["2 m", "2 m"], ["2 m", "0 m"], ["0 m", "2 m"]]}`), []string{"tasks[0].area.corners[2] area.crossing"}},
	{"two shapes", taskJob(`"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": {"circle": "2 m", "ellipse": "2 m x 1 m"}`), []string{"tasks[0].area field.both"}},
	{"a rectangle as a plain area", taskJob(`"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": {"area": "60 ft x 4 ft"}`), []string{"tasks[0].area.area unit.unknown"}},
	{"no shape", taskJob(`"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": {"count": 2}`), []string{"tasks[0].area area.missing"}},
	{"an offer of nothing", `{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}], "offers": [{"material": "peet"}, {"pack": "2 cu ft", "bulk": "1 cu yd", "material": "peat"}, {"material": "peat", "pack": "3.8 cu ft", "opens_to": "1 cu ft"}, {"material": "peat", "pack": "1 mL", "price": "-1"}]}`,
		[]string{"offers[0].pack field.missing", "offers[0].material material.unknown", "offers[1].bulk field.both", "offers[2].opens_to offer.opens", "offers[3].pack quantity.small", "offers[3].price quantity.negative"}},
	{"a bale that opens past counting", `{"schema": 1, "materials": [{"id": "x", "bales": ["1000000 m3"], "opens_low": 10, "opens_high": 10}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "x"}]}`, []string{"materials[0].bales[0] volume.large"}},
	{"an allowance that rounds past counting", taskJob(`"kind": "fill", "material": "peat", "containers": [{"count": 1, "holds": "922945946.239909996 L"}], "settle": "94.9967%"`), []string{"tasks[0] volume.large"}},
	{"a weight past counting", `{"schema": 1, "materials": [{"id": "x", "dry": "1 g/cm3", "wet": "9.5 g/cm3"}], "tasks": [{"kind": "fill", "material": "x", "settle": "0%", "containers": [{"count": 1, "holds": "1000000 m3"}]}]}`, []string{"tasks weight.large"}},
	{"balls past counting", taskJob(`"kind": "backfill", "holes": 300000000, "width": "7 in", "depth": "5.2 in", "ball": "#1"`), []string{"tasks[0] volume.large"}},
	{"sheets past counting", taskJob(`"kind": "cover", "area": "1.5 km x 1.5 km", "layer": "3 in", "material": "bark-mulch", "sheet": {"size": "0.0003 mm x 0.0003 mm"}`), []string{"tasks[0].sheet sheet.small"}},
	{"a field that did not read is not missing", taskJob(`"kind": "amend", "area": "1 sq m", "mix": 5, "share": "25 foo", "over": "6 foo"`), []string{"tasks[0].mix json.kind", "tasks[0].share unit.unknown", "tasks[0].over unit.unknown"}},
	{"an empty name", `{"schema": 1, "on_hand": {"": "2 L"}, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{`on_hand[""] material.unknown`}},
	{"a material with a mix's id", `{"schema": 1, "materials": [{"id": "potting"}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"materials[0].id id.taken"}},
	{"a cost past counting", `{"schema": 1, "tasks": [{"kind": "cover", "area": "1000 sq m", "layer": "30 in", "material": "bark-mulch"}], "offers": [{"material": "bark-mulch", "pack": "2 cu ft", "price": "1000000000"}]}`, []string{"offers[0].price cost.large"}},
	{"an order past counting", `{"schema": 1, "tasks": [
		{"kind": "fill", "material": "sand", "settle": "0%", "containers": [{"count": 1, "holds": "900000 m3"}]},
		{"kind": "fill", "material": "peat", "settle": "0%", "containers": [{"count": 1, "holds": "900000 m3"}]}],
		"offers": [{"material": "sand", "pack": "1000 m3"}, {"material": "peat", "pack": "1000 m3"}]}`, []string{"offers order.large"}},
	{"a pot that holds less than its least", `{"schema": 1, "containers": [{"id": "p", "holds": "1 L", "low": "2 L", "high": "3 L"}, {"id": "q", "holds": "3 L", "high": "2 L"}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "peat"}]}`, []string{"containers[0].low range.order", "containers[1].high range.order"}},
	{"parts in words", taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "peat three, perlite one"`), []string{"tasks[0].mix mix.form"}},
	{"parts too fine to share out", `{"schema": 1, "mixes": [{"id": "m", "parts": {"peat": "1/999983", "sand": "1/999979", "perlite": "1/999961"}}], "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", "mix": "m"}]}`, []string{"mixes[0].parts mix.parts"}},
	{"a corner of one length", taskJob(`"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": {"corners": [["0 m"], ["2 m", "2 m"], ["2 m", "0 m"]]}`), []string{"tasks[0].area.corners[0] area.corner"}},
	{"a ball above the ground", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "6 in x 7 in", "above_grade": "7 in"`), []string{"tasks[0].ball ball.above"}},
	{"a ball known by its class that stands out too far", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "7 in", "ball": "#1", "above_grade": "7.1 in"`), []string{"tasks[0].above_grade ball.above"}},
	{"a ball that stands out too far in a shallow hole", taskJob(`"kind": "backfill", "holes": 1, "width": "18 in", "depth": "3 in", "ball": "6 in x 7 in"`), []string{"tasks[0].ball ball.above"}},
	{"a layer of nothing", taskJob(`"kind": "amend", "area": "1 sq m", "material": "compost", "share": "0.0001%", "into": "0.0001 mm"`), []string{"tasks[0] layer.small"}},
	{"a pot that holds nothing", taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "across": "0.001 mm", "height": "0.001 mm"}]`), []string{"tasks[0].containers[0] volume.small"}},
}

func TestBadJobs(t *testing.T) {
	for _, tt := range badJobs {
		p, err := mix.PlanDocument([]byte(tt.doc))
		if p != nil || err == nil {
			t.Errorf("%s: a plan was made", tt.why)
			continue
		}
		var got []string
		for _, one := range doc.ProblemsIn(err) {
			got = append(got, one.Path+" "+one.Code)
			if one.Hint == "" {
				t.Errorf("%s: %s has no hint", tt.why, one.Path)
			}
		}
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s: (-want +got)\n%s\n%v", tt.why, diff, err)
		}
		if job, err := mix.Decode([]byte(tt.doc)); err == nil {
			if _, err = job.Plan(); err == nil {
				t.Errorf("%s: Decode and Plan take it", tt.why)
			}
		}
	}
}

// maxProblems is how many problems package doc reports; one more says that it stops.
const maxProblems = 100

// firstCode is the code of the first problem that err carries, or "".
func firstCode(err error) string {
	if p := doc.ProblemsIn(err); len(p) > 0 {
		return p[0].Code
	}
	return ""
}

// TestProblemsAreBounded: a job with a thousand faults reports a hundred.
func TestProblemsAreBounded(t *testing.T) {
	var b strings.Builder
	b.WriteString(`{"schema": 1, "tasks": [{"kind": "fill", "mix": "potting", "containers": [`)
	for i := range 1000 {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, `{"count": %d, "size": "#1x"}`, i+1)
	}
	b.WriteString(`]}]}`)
	_, err := mix.PlanDocument([]byte(b.String()))
	if got := len(doc.ProblemsIn(err)); got != maxProblems+1 {
		t.Errorf("%d problems, want %d", got, maxProblems+1)
	}
}

// TestPastTheBound: what stands after the last reported problem is not worked
// out from, however broken it is.
func TestPastTheBound(t *testing.T) {
	bad := strings.Repeat(`{"kind": "cover", "area": "60 ft x", "layer": "x", "material": "x"}, `+
		`{"kind": "amend", "area": {"ring": {}}}, {"kind": "cover", "area": {"strip": 3, "corners": 3, `+
		`"circle": "x"}, "sheet": {"size": "x"}, "stems": {}}, `, 100)
	_, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [` + bad +
		`{"kind": "fill", "mix": "x", "containers": [{"box": "x"}, {"ball": "x"}]}]}`))
	if got := len(doc.ProblemsIn(err)); got != maxProblems+1 {
		t.Errorf("%d problems, want %d", got, maxProblems+1)
	}
}

// TestMixLadder: mixes that each hold the three below, with nothing at the
// bottom or with peat, are refused without walking every way down.
func TestMixLadder(t *testing.T) {
	for bottom, want := range map[string]string{`{}`: "mix.empty", `{"peat": 1}`: "mix.large"} {
		var b strings.Builder
		b.WriteString(`{"schema": 1, "tasks": [{"kind": "cover", "area": "1 sq m", "layer": "3 in", ` +
			`"mix": "m0-24"}], "mixes": [`)
		for level := range 25 {
			for i := range 3 {
				parts := bottom
				if level > 0 {
					parts = fmt.Sprintf(`{"m0-%d": 1, "m1-%d": 1, "m2-%d": 1}`, level-1, level-1, level-1)
				}
				if level+i > 0 {
					b.WriteString(", ")
				}
				fmt.Fprintf(&b, `{"id": "m%d-%d", "parts": %s}`, i, level, parts)
			}
		}
		b.WriteString(`]}`)
		_, err := mix.PlanDocument([]byte(b.String()))
		if got := firstCode(err); got != want {
			t.Errorf("%s at the bottom: %q, want %q", bottom, got, want)
		}
	}
}

// TestTooManyTasks: tasks are bounded before they are read; containers are
// what there may be a hundred thousand of.
func TestTooManyTasks(t *testing.T) {
	const maxTasks = 10_000 // of package task
	_, err := mix.PlanDocument([]byte(`{"schema": 1, "tasks": [` + strings.Repeat("1, ", maxTasks) + `1]}`))
	if got := firstCode(err); got != "job.large" {
		t.Errorf("code %q, want job.large", got)
	}
}

// TestTooManyRows: offers, price breaks and container lines are bounded, with a
// problem at the field; what is at its bound is planned.
func TestTooManyRows(t *testing.T) {
	job := func(task, offers string) []byte {
		return []byte(`{"schema": 1, "tasks": [` + task + `], "offers": [` + offers + `]}`)
	}
	rows := func(n int, form string) string {
		list := make([]string, n)
		for i := range list {
			list[i] = strings.ReplaceAll(form, "{i}", fmt.Sprint(i+2))
		}
		return strings.Join(list, ",")
	}
	cover := `{"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulch"}`
	pots := func(n int) string {
		return `{"kind": "fill", "mix": "potting", "containers": [` + rows(n, `{"count": 1, "size": "#1"}`) + `]}`
	}
	broken := func(n int) string {
		return `{"material": "bark-mulch", "pack": "50 L", "price": "9", "breaks": [` +
			rows(n, `{"from": {i}, "price": "8"}`) + `]}`
	}
	offer := `{"material": "bark-mulch", "pack": "{i} L", "price": "9"}`
	ground := func(less string) string {
		return strings.Replace(cover, `"1 sq m"`, `{"area": "1 sq m", "less": [`+less+`]}`, 1)
	}
	for name, tt := range map[string]struct {
		job  []byte
		path string
	}{
		"offers":              {job(cover, rows(2000, offer)), ""},
		"too many offers":     {job(cover, rows(2001, offer)), "offers"},
		"breaks":              {job(cover, broken(1000)), ""},
		"too many breaks":     {job(cover, broken(1001)), "offers[0].breaks"},
		"breaks of all":       {job(cover, rows(20, broken(1000))), ""},
		"too many in all":     {job(cover, rows(20, broken(1000))+","+broken(1)), "offers[20].breaks"},
		"lines":               {job(pots(60_000)+","+pots(40_000), ""), ""},
		"too many lines":      {job(pots(100_001), ""), "tasks[0].containers"},
		"pieces of ground":    {job(ground(rows(1000, `"1 mm x 1 mm"`)), ""), ""},
		"too many pieces":     {job(ground(rows(1001, `"1 mm x 1 mm"`)), ""), "tasks[0].area.less"},
		"too many with these": {job(pots(60_000)+","+cover+","+pots(40_001), ""), "tasks[2].containers"},
	} {
		_, err := mix.PlanDocument(tt.job)
		if list := doc.ProblemsIn(err); tt.path == "" && err != nil ||
			tt.path != "" && (len(list) != 1 || list[0].Path != tt.path || list[0].Code != "job.large") {
			t.Errorf("%s: %v, want job.large at %q", name, err, tt.path)
		}
	}
}

// TestJobsMadeInGo: a job that no document could hold is a problem, too, not a
// panic.
func TestJobsMadeInGo(t *testing.T) {
	half := units.Percent(50)
	all := units.Percent(100)
	price := units.Money(1)
	good := ground.Area{Shape: "plain", Plain: units.SquareMetre}
	for why, job := range map[string]mix.Job{
		"zero":                   {},
		"task of nothing":        {Tasks: []task.Task{{}}},
		"shape without sides":    {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "circle"}, Layer: 1}}}},
		"strip of nothing":       {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "strip"}, Layer: 1}}}},
		"area of nothing":        {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "plain"}, Layer: 1}}}},
		"no such shape":          {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "blob"}, Layer: 1}}}},
		"negative count":         {Tasks: []task.Task{{Material: "peat", Work: &task.Fill{Containers: []task.Container{{Count: -1, Size: "#1"}}}}}},
		"everything settles":     {Tasks: []task.Task{{Material: "peat", Settle: &all, Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"parts of nothing":       {Mixes: []catalog.Mix{{ID: "m", Parts: []catalog.Part{{Of: "peat", Num: 1, Den: 0}, {Of: "sand", Num: -1, Den: 1}}}}, Tasks: []task.Task{{Mix: "m", Settle: &half, Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"pack of nothing":        {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: good, Layer: units.Metre}}}, Offers: []yard.Offer{{Material: "peat", Pack: catalog.Size{Volume: 1}, Price: &price}}},
		"own pack of nothing":    {Materials: []catalog.Material{{ID: "x", Packs: []catalog.Size{{}}}}, Tasks: []task.Task{{Material: "x", Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"pot of nothing":         {Containers: []catalog.Class{{ID: "x", Holds: units.Exactly(-1)}}, Tasks: []task.Task{{Material: "peat", Work: &task.Fill{Containers: []task.Container{{Count: 1, Size: "x"}}}}}},
		"negative stems":         {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: good, Layer: units.Metre, Stems: &task.Stems{Count: -50, Clear: units.Inch}}}}},
		"negative stock":         {OnHand: []yard.OnHand{{Material: "peat", Volume: -5}}, Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"huge parts":             {Mixes: []catalog.Mix{{ID: "m", Parts: []catalog.Part{{Of: "peat", Num: 1, Den: 3}, {Of: "sand", Num: 1, Den: 1 << 62}}}}, Tasks: []task.Task{{Mix: "m", Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"negative low":           {Containers: []catalog.Class{{ID: "x", Holds: units.Range{Low: -1, Plan: 1, High: 1}}}, Tasks: []task.Task{{Material: "peat", Work: &task.Fill{Containers: []task.Container{{Count: 1, Size: "x"}}}}}},
		"no such shape of a pot": {Tasks: []task.Task{{Material: "peat", Work: &task.Fill{Containers: []task.Container{{Count: 1, Across: units.Inch, Height: units.Inch, Shape: "Square"}}}}}},
		"negative sides":         {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "circle", Sides: []units.Length{-units.Metre}}, Layer: 1}}}},
		"share of twice":         {Tasks: []task.Task{{Material: "peat", Work: &task.Amend{Area: good, Share: units.Percent(200), Into: units.Inch}}}},
		"far corners":            {Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: ground.Area{Shape: "corners", Corners: [][2]units.Length{{0, 0}, {5_000_000 * units.Metre, 0}, {5_000_000 * units.Metre, 5_000_000 * units.Metre}}}, Layer: 1}}}},
		"payload past all":       {Haul: yard.Haul{Payload: 1<<63 - 1}, Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: good, Layer: units.Metre}}}},
		"too many mixes":         {Mixes: make([]catalog.Mix, mix.MaxMixes+1), Tasks: []task.Task{{Material: "peat", Work: &task.Cover{Area: good, Layer: units.Metre}}}},
	} {
		if p, err := job.Plan(); p != nil || len(doc.ProblemsIn(err)) == 0 {
			t.Errorf("%s: %v, %v", why, p, err)
		}
	}
}

// TestHugeDocument: a document past its bound is refused by its size alone.
func TestHugeDocument(t *testing.T) {
	_, err := mix.PlanDocument(make([]byte, doc.MaxBytes+1))
	if got := firstCode(err); got != "json.size" {
		t.Errorf("code %q, want json.size", got)
	}
}

// TestKindsAreNamed: who leaves the kind out is told every kind there is.
func TestKindsAreNamed(t *testing.T) {
	_, err := mix.PlanDocument([]byte(taskJob(`"name": "a row"`)))
	list := doc.ProblemsIn(err)
	if len(list) != 1 || !strings.HasSuffix(list[0].Hint.String(), ": "+doc.Or(task.Names()).String()) {
		t.Errorf("the problems are %v, want one that ends with the kinds %v", err, task.Names())
	}
}

// TestHint pins the hints that carry an answer.
func TestHint(t *testing.T) {
	for job, want := range map[string]string{
		taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 inchs", "material": "bark-mulch"`):            `did you mean "in"?`,
		taskJob(`"kind": "cover", "area": "1 sq m", "layer": "3 in", "material": "bark-mulhc"`):               `did you mean "bark-mulch"?`,
		taskJob(`"kind": "fill", "mix": "poting", "containers": [{"count": 1, "size": "#1"}]`):                `did you mean "potting"?`,
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "1 gallon"}]`):         `did you mean "#1"?`,
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "1"}]`):                `did you mean "#1"?`,
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "size": "#1", "bal": "SP4"}]`): `did you mean "ball"?`,
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": "many", "size": "#1"}]`):          "write a whole number, such as 64",
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": "", "size": "#1"}]`):              "write a whole number, such as 64",
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": "64", "size": "#1"}]`):            "write the number without quotes, such as 64",
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": [64], "size": "#1"}]`):            "write a whole number, such as 64, not a list",
		taskJob(`"kind": "cover", "area": "1 sq m", "layer": " ", "material": "bark-mulch"`):                  `write a length such as "3 in"`,
		taskJob(`"kind": "cover", "area": "", "layer": "3 in", "material": "bark-mulch"`):                     `write an area such as "60 ft x 4 ft"`,
		taskJob(`"kind": "fill", "mix": "potting", "containers": [{"count": 1, "box": ""}]`):                  `write lengths such as "20 in x 10 in x 2 in"`,
		taskJob(`"kind": ""`): "write one of " + doc.Or(task.Names()).String(),
	} {
		_, err := mix.PlanDocument([]byte(job))
		if p := doc.ProblemsIn(err); len(p) != 1 || p[0].Hint.String() != want {
			t.Errorf("%s\ngives %v, want the hint %s", job, err, want)
		}
	}
}
