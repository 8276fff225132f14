package mix_test

import (
	"encoding/json"
	"maps"
	"math"
	"math/big"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/report"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/convert"
)

const (
	publishedFiles  = "../testdata/published/*.tsv"
	publishedHeader = "id\tkind\tinput\tpublished\texact\ttolerance\ttag\tsource\tnote"
	publishedSlips  = "slips.tsv" // figures that are wrong in print

	// publishedRows is how many rows there are, so that none is lost in
	// silence. It only grows.
	publishedRows = 393
)

// published is one figure met in print; testdata/published/README.md says what
// the columns are.
type published struct {
	file, id, kind, input, tag, source string

	in          map[string]string // the input, key by key
	printed     string            // the published figure, or two
	first       string            // the figure, or the lower of two, with its unit
	unit        string
	low, high   *big.Rat
	exact       *big.Rat
	approximate bool // exact is written with ~
	tolerance   *big.Rat
}

// publishedKinds says how each kind of row is answered, by the project's code,
// in the row's unit. near is how close to the exact figure, relative, the
// code's own rounding must come.
var publishedKinds = map[string]struct {
	answer func(*testing.T, *published) float64
	near   float64
}{
	"convert":      {answerConvert, 1e-9},
	"area":         {answerArea, 1e-9},
	"volume":       {answerVolume, 1e-9},
	"cover":        {answerCover, 1e-9},
	"depth":        {answerDepth, 1e-9},
	"container":    {answerContainer, 1e-9},
	"class":        {answerContainer, 1e-9},
	"fills":        {answerFills, 1e-9},
	"bags":         {answerBags, 1e-9},
	"bale":         {answerBale, 1e-9},
	"pack-fact":    {answerPackFact, 1e-9},
	"drives":       {answerDrives, 1e-9},
	"share":        {answerShare, 1e-5}, // six places in the plan
	"layer":        {answerBed("layer_mm"), 1e-9},
	"finished":     {answerBed("finished_mm"), 1e-9},
	"rise":         {answerBed("rise_mm"), 1e-9},
	"split":        {answerSplit, 1e-9},
	"allow":        {answerAllow, 1e-9},
	"allowance":    {answerAllowance, 1e-9},
	"swell":        {answerSwell, 1e-9},
	"weight":       {answerWeight, 1e-9},
	"density-fact": {answerDensityFact, 1e-9},
}

func TestPublished(t *testing.T) {
	for _, r := range readPublished(t) {
		t.Run(r.id, r.check)
	}
}

func TestPublishedCount(t *testing.T) {
	rows := readPublished(t)
	tags, files, kinds, sources := map[string]int{}, map[string]int{}, map[string]int{}, map[string]int{}
	for _, r := range rows {
		tags[r.tag]++
		files[r.file]++
		kinds[r.kind]++
		sources[r.source]++
	}
	t.Logf("%d rows, %d sources; by tag %v; by file %v", len(rows), len(sources), tags, files)
	if len(rows) < publishedRows {
		t.Errorf("%d published rows, want at least %d: rows were lost", len(rows), publishedRows)
	}
	for kind := range publishedKinds {
		if kinds[kind] == 0 {
			t.Errorf("no row is of kind %s", kind)
		}
	}
}

// check compares the answer with the exact figure, and with the published one:
// it agrees within the tolerance or, for a slip, it does not.
func (r *published) check(t *testing.T) {
	kind := publishedKinds[r.kind]
	got, want := kind.answer(t, r), ratFloat(r.exact)
	near := kind.near
	if r.approximate {
		near = max(near, 1e-6)
	}
	slack := near * math.Abs(want)
	if !(math.Abs(got-want) <= slack) {
		t.Errorf("%s(%s) = %.12g %s, want %.12g", r.kind, r.input, got, r.unit, want)
	}
	slack += ratFloat(r.tolerance)
	agrees := got >= ratFloat(r.low)-slack && got <= ratFloat(r.high)+slack
	if slip := r.file == publishedSlips; agrees == slip {
		t.Errorf("%s(%s) = %.12g %s, published %s by %s: agrees = %t, want %t", r.kind, r.input, got, r.unit, r.printed,
			r.source, agrees, !slip)
	}
}

// readPublished reads every row of every file, and stops the test if any is
// unfit.
func readPublished(t *testing.T) (rows []*published) {
	t.Helper()
	files, err := filepath.Glob(publishedFiles)
	if err != nil || len(files) == 0 {
		t.Fatalf("Glob(%s) = %v, %v, want files", publishedFiles, files, err)
	}
	ids := map[string]string{}
	for _, file := range files {
		of := readPublishedFile(t, file)
		if len(of) == 0 {
			t.Errorf("%s has no rows", file)
		}
		for _, r := range of {
			if other, taken := ids[r.id]; taken {
				t.Errorf("%s: id %s is taken in %s", r.file, r.id, other)
			}
			ids[r.id] = r.file
		}
		rows = append(rows, of...)
	}
	if t.Failed() {
		t.FailNow()
	}
	return rows
}

func readPublishedFile(t *testing.T, file string) (rows []*published) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	lines := slices.DeleteFunc(strings.Split(text, "\n"), func(s string) bool { return s == "" || s[0] == '#' })
	if len(lines) == 0 || lines[0] != publishedHeader {
		t.Fatalf("%s: want the header %q", file, publishedHeader)
	}
	for _, line := range lines[1:] {
		r := &published{file: filepath.Base(file)}
		if wrong := r.parse(strings.Split(line, "\t")); wrong != "" {
			t.Errorf("%s: %q: %s", file, line, wrong)
		}
		rows = append(rows, r)
	}
	return rows
}

// parse reads the columns and says what makes the row unfit.
func (r *published) parse(col []string) (wrong string) {
	if len(col) != 9 {
		return "want 9 columns, have " + strconv.Itoa(len(col))
	}
	r.id, r.kind, r.input, r.tag, r.source = col[0], col[1], col[2], col[6], col[7]
	r.in = map[string]string{}
	for pair := range strings.SplitSeq(r.input, "; ") {
		key, value, _ := strings.Cut(pair, "=")
		r.in[key] = value
	}
	if wrong := r.figures(col[3], col[4], col[5]); wrong != "" {
		return wrong
	}
	_, known := publishedKinds[r.kind]
	fixed := r.low.Cmp(r.exact) == 0 && r.high.Cmp(r.exact) == 0 && !r.approximate
	switch {
	case strings.Trim(r.id, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-") != "" || r.id == "":
		return "an id is letters, digits, - and ."
	case !known:
		return "unknown kind " + r.kind
	case strings.TrimSpace(r.source) == "":
		return "every row names its source"
	case !slices.Contains([]string{"R", "M", "P", "A"}, r.tag):
		return "the tag is R, M, P or A"
	case r.tolerance.Sign() < 0 || r.tolerance.Sign() == 0 && !fixed:
		return "a tolerance of 0 is for a published figure that is exact"
	}
	return ""
}

// figures reads "3.7 cu yd" or "2.7 to 2.84 L", the exact "100/27 cu yd" or
// "~314.159 sq ft", and the tolerance in the same unit.
func (r *published) figures(printed, exact, tolerance string) (wrong string) {
	low, rest, isRange := strings.Cut(printed, " to ")
	if !isRange {
		rest = printed
	}
	high, unit, _ := strings.Cut(rest, " ")
	if !isRange {
		low = high
	}
	number, exactUnit, _ := strings.Cut(exact, " ")
	if unit == "" || exactUnit != unit {
		return "published and exact are in one unit"
	}
	r.printed, r.unit, r.first, r.approximate = printed, unit, low+" "+unit, strings.HasPrefix(number, "~")
	for _, f := range []struct {
		into **big.Rat
		text string
	}{{&r.low, low}, {&r.high, high}, {&r.exact, strings.TrimPrefix(number, "~")}, {&r.tolerance, tolerance}} {
		var ok bool
		if *f.into, ok = new(big.Rat).SetString(f.text); !ok {
			return "not a number: " + f.text
		}
	}
	return ""
}

func ratFloat(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}

// noErr returns v, and ends the test on an error.
func noErr[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// read returns the quantity in the row's unit.
func (r *published) read(t *testing.T, quantity string) float64 {
	t.Helper()
	return noErr(convert.Quantity(quantity, r.unit))(t).Float()
}

func (r *published) volume(t *testing.T, key string) units.Volume {
	t.Helper()
	return noErr(units.ParseVolume(r.in[key]))(t)
}

// pick reads one volume of a span: the input's take, low, plan or high.
func (r *published) pick(t *testing.T, s units.Range) float64 {
	t.Helper()
	of := map[string]units.Volume{"low": s.Low, "plan": s.Plan, "": s.Plan, "high": s.High}
	v, ok := of[r.in["take"]]
	if !ok {
		t.Fatalf("take=%s, want low, plan or high", r.in["take"])
	}
	return r.read(t, v.String())
}

type jsonFields = map[string]any

// oneTaskJob writes a job of one task; more are further fields of the job. What
// a task loses is nothing unless it says so.
func oneTaskJob(t *testing.T, task, more jsonFields) []byte {
	t.Helper()
	full := jsonFields{"material": "topsoil", "settle": "0%", "blend_loss": "0%"}
	maps.Copy(full, task)
	if full["kind"] == "backfill" { // only the soil goes back
		delete(full, "material")
	}
	job := jsonFields{"schema": 1, "tasks": []any{full}}
	maps.Copy(job, more)
	return noErr(json.Marshal(job))(t)
}

func workOut(t *testing.T, task, more jsonFields) *mix.Plan {
	t.Helper()
	return noErr(mix.PlanDocument(oneTaskJob(t, task, more)))(t)
}

// cover is a cover task, its area as text or as an object.
func (r *published) cover() jsonFields {
	area := any(r.in["area"])
	if strings.HasPrefix(r.in["area"], "{") {
		area = json.RawMessage(r.in["area"])
	}
	return jsonFields{"kind": "cover", "area": area, "layer": r.in["depth"]}
}

func holding(volume string) jsonFields {
	return jsonFields{"kind": "fill", "containers": []any{jsonFields{"count": 1, "holds": volume}}}
}

// stuff is a material of the job's own that weighs the same wet and dry.
func stuff(density string) jsonFields {
	return jsonFields{"materials": []any{jsonFields{"id": "stuff", "dry": density, "wet": density}}}
}

func answerConvert(t *testing.T, r *published) float64 { return r.read(t, r.in["of"]) }

func answerArea(t *testing.T, r *published) float64 {
	area, err := ground.ParseArea(r.in["area"])
	if strings.HasPrefix(r.in["area"], "{") {
		cover := r.cover()
		cover["layer"] = "1 in"
		job := noErr(mix.Decode(oneTaskJob(t, cover, nil)))(t)
		area, err = job.Tasks[0].Work.(*task.Cover).Area, nil
	}
	measured := noErr(area, err)(t)
	return r.read(t, noErr(measured.Measure())(t).String())
}

func answerVolume(t *testing.T, r *published) float64 {
	return r.read(t, workOut(t, r.cover(), nil).Needs[0].Buy.Plan.String())
}

// answerCover is the area that the volume covers: the published area in the
// proportion that its own layer bears to the volume.
func answerCover(t *testing.T, r *published) float64 {
	return r.proportion(t, noErr(units.ParseArea(r.first))(t), noErr(units.ParseLength(r.in["depth"]))(t))
}

// answerDepth is the depth to which the volume covers the area.
func answerDepth(t *testing.T, r *published) float64 {
	area := noErr(ground.ParseArea(r.in["area"]))(t)
	return r.proportion(t, noErr(area.Measure())(t), noErr(units.ParseLength(r.first))(t))
}

func (r *published) proportion(t *testing.T, area units.Area, depth units.Length) float64 {
	v, ok := area.Deep(depth)
	if !ok || v == 0 {
		t.Fatalf("Deep(%v, %v) = %v, %t", area, depth, v, ok)
	}
	return ratFloat(r.low) * r.volume(t, "volume").Litres() / v.Litres()
}

// line is a container line of the input's fields.
func (r *published) line(count int) jsonFields {
	line := jsonFields{"count": count}
	for key, value := range r.in {
		if key != "take" && key != "volume" {
			line[key] = value
		}
	}
	return jsonFields{"kind": "fill", "containers": []any{line}}
}

func answerContainer(t *testing.T, r *published) float64 {
	return r.pick(t, workOut(t, r.line(1), nil).Tasks[0].Net)
}

// answerFills is how many pots the volume fills, by what a thousand take.
func answerFills(t *testing.T, r *published) float64 {
	return 1000 * r.volume(t, "volume").Litres() / workOut(t, r.line(1000), nil).Tasks[0].Net.Plan.Litres()
}

// answerBags counts packs for a need, or for an area and a depth.
func answerBags(t *testing.T, r *published) float64 {
	if r.in["need"] != "" {
		return float64(yard.Bags(r.volume(t, "need"), r.volume(t, "pack")))
	}
	offer := jsonFields{"material": "topsoil", "pack": r.in["pack"]}
	return float64(workOut(t, r.cover(), jsonFields{"offers": []any{offer}}).Lines[0].Count)
}

// answerBale is what a bale of the material makes when it is ordered.
func answerBale(t *testing.T, r *published) float64 {
	task := holding("1 cu ft")
	task["material"] = r.in["material"]
	offer := jsonFields{"material": r.in["material"], "pack": r.in["size"]}
	return r.pick(t, workOut(t, task, jsonFields{"offers": []any{offer}}).Lines[0].Each)
}

func catalogMaterial(t *testing.T, id string) catalog.Material {
	all := catalog.BuiltIn().Materials
	i := slices.IndexFunc(all, func(m catalog.Material) bool { return m.ID == id })
	if i < 0 {
		t.Fatalf("the catalogue has no material %q", id)
	}
	return all[i]
}

// answerPackFact is a bag of the catalogue, by its place in the list from 1.
func answerPackFact(t *testing.T, r *published) float64 {
	packs := catalogMaterial(t, r.in["material"]).Packs
	i := noErr(strconv.Atoi(r.in["pack"]))(t)
	if i < 1 || i > len(packs) {
		t.Fatalf("pack %d of %d", i, len(packs))
	}
	return r.read(t, packs[i-1].Volume.String())
}

func answerDensityFact(t *testing.T, r *published) float64 {
	m := catalogMaterial(t, r.in["material"])
	d := map[string]units.Density{"dry": m.Dry, "wet": m.Wet}[r.in["take"]]
	return r.read(t, d.String())
}

// answerDrives is the fewest drives for a volume, by payload or by room, loaded
// by the half cubic foot.
func answerDrives(t *testing.T, r *published) float64 {
	density, haul := "1 lb/cu yd", jsonFields{}
	if d := r.in["density"]; d != "" {
		density = d
	}
	for _, key := range []string{"payload", "room"} {
		if r.in[key] != "" {
			haul[key] = r.in[key]
		}
	}
	more := jsonFields{"haul": haul, "offers": []any{jsonFields{"material": "stuff", "bulk": "1/2 cu ft"}}}
	maps.Copy(more, stuff(density))
	task := holding(r.in["volume"])
	task["material"] = "stuff"
	return float64(workOut(t, task, more).Load.Drives)
}

// bed works an amend task of the input's fields out, as the plan's JSON has it.
func (r *published) bed(t *testing.T, field string) float64 {
	task := jsonFields{"kind": "amend", "area": "100 sq ft"}
	for key, value := range r.in {
		task[key] = value
	}
	var plan struct {
		Tasks []struct{ Bed map[string]float64 }
	}
	if err := json.Unmarshal(report.Plan(workOut(t, task, nil)), &plan); err != nil {
		t.Fatal(err)
	}
	return plan.Tasks[0].Bed[field]
}

func answerShare(t *testing.T, r *published) float64 { return 100 * r.bed(t, "share") }

func answerBed(field string) func(*testing.T, *published) float64 {
	return func(t *testing.T, r *published) float64 {
		return r.read(t, strconv.FormatFloat(r.bed(t, field), 'f', -1, 64)+" mm")
	}
}

// answerSplit is one part of a whole, by its place among the parts from 1.
func answerSplit(t *testing.T, r *published) float64 {
	var parts []int64
	for p := range strings.SplitSeq(r.in["parts"], ",") {
		parts = append(parts, noErr(strconv.ParseInt(p, 10, 64))(t))
	}
	i := noErr(strconv.Atoi(r.in["take"]))(t)
	return r.read(t, catalog.Split(r.volume(t, "whole"), parts)[i-1].String())
}

// answerAllow is the loose volume for a net one.
func answerAllow(t *testing.T, r *published) float64 {
	task := holding(r.in["net"])
	for key, value := range r.in {
		if key != "net" {
			task[key] = value
		}
	}
	return r.read(t, workOut(t, task, nil).Tasks[0].Loose.Plan.String())
}

func answerAllowance(t *testing.T, r *published) float64 {
	for _, a := range catalog.BuiltIn().Allowances {
		if a.ID == r.in["id"] {
			return 100 * map[string]units.Ratio{"low": a.Low, "plan": a.Share, "high": a.High}[r.in["take"]].Float()
		}
	}
	t.Fatalf("the catalogue has no allowance %q", r.in["id"])
	return 0
}

// answerSwell is what is left over, loose, of a hole filled by a ball of the
// bank volume.
func answerSwell(t *testing.T, r *published) float64 {
	task := jsonFields{"kind": "backfill", "holes": 1, "width": "50 m", "depth": "10 m", "ball": r.in["bank"],
		"soil": r.in["soil"]}
	var plan struct {
		Tasks []struct {
			Backfill struct {
				Plan  float64   `json:"left_over_loose_litres"`
				Range []float64 `json:"left_over_loose_range_litres"`
			}
		}
	}
	if err := json.Unmarshal(report.Plan(workOut(t, task, nil)), &plan); err != nil {
		t.Fatal(err)
	}
	left := plan.Tasks[0].Backfill
	litres := map[string]float64{"low": left.Range[0], "plan": left.Plan, "high": left.Range[1]}[r.in["take"]]
	return r.read(t, strconv.FormatFloat(litres, 'f', -1, 64)+" L")
}

// answerWeight is what a volume of one density weighs, as a need.
func answerWeight(t *testing.T, r *published) float64 {
	task := holding(r.in["volume"])
	task["material"] = "stuff"
	need := workOut(t, task, stuff(r.in["density"])).Needs[0]
	return r.read(t, need.Mass()[1].String())
}
