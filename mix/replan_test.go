package mix_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

func sampleJob(t *testing.T) *mix.Job {
	t.Helper()
	j, err := mix.Decode(mix.Sample())
	require.NoError(t, err)
	return j
}

func planOf(t *testing.T, j *mix.Job) *mix.Plan {
	t.Helper()
	p, err := j.Plan()
	require.NoError(t, err)
	return p
}

// TestWithout: an offer that is sold out is not bought, the rest covers the
// need, and the list says what changes.
func TestWithout(t *testing.T) {
	j := sampleJob(t)
	before := planOf(t, j)
	left, err := j.At(&yard.Yard{Without: []string{"bark-fines:1/2 yd3"}})
	require.NoError(t, err)
	after := planOf(t, left)
	if after.Bill.Total < before.Bill.Total {
		t.Errorf("less to choose from costs %s, more %s", after.Bill.Total, before.Bill.Total)
	}
	got := map[string][2]int64{}
	for _, c := range after.ChangesFrom(before) {
		got[c.Material.ID+" "+c.Pack] = [2]int64{c.Before, c.After}
	}
	if got["bark-fines 1/2 cu yd"] != [2]int64{5, 0} || got["bark-fines 2 cu ft"] != [2]int64{1, 35} {
		t.Errorf("changes %v", got)
	}
	if len(j.Offers) != 8 {
		t.Errorf("the job itself has %d offers now", len(j.Offers))
	}
}

// TestBought: what is bought covers its part of the need and is not paid again.
func TestBought(t *testing.T) {
	j := sampleJob(t)
	before := planOf(t, j)
	var y yard.Yard
	for i := range before.Lines {
		l := &before.Lines[i]
		y.Bought = append(y.Bought, yard.Bought{Offer: l.Material.ID + ":" + l.Offer.Size().String(), Count: l.Count})
	}
	left, err := j.At(&y)
	require.NoError(t, err)
	if after := planOf(t, left); len(after.Lines) != 0 || after.Bill.Total != 0 {
		t.Errorf("all is bought, and there is %d still to buy for %s", len(after.Lines), after.Bill.Total)
	}
	left, err = j.At(&yard.Yard{Bought: y.Bought[:1]})
	require.NoError(t, err)
	if after := planOf(t, left); after.Bill.Goods != before.Bill.Goods-before.Lines[0].Cost {
		t.Errorf("goods %s after buying %s of %s", after.Bill.Goods, before.Lines[0].Cost, before.Bill.Goods)
	}
}

// TestOnlyStock: a count for every offer that does not say.
func TestOnlyStock(t *testing.T) {
	j := sampleJob(t)
	n := int64(4)
	left, err := j.At(&yard.Yard{Only: &n})
	require.NoError(t, err)
	out := planOf(t, left).LeftOut() // 4 x 2 cu ft and 4 x 13.5 cu ft of bark fines are 62 of 68.9
	if len(out) != 1 || out[0].Material.ID != "bark-fines" || units.CubicFeet(out[0].Volume) != "6.94 cu ft" {
		t.Errorf("left out: %v", out)
	}
	if *j.Offers[2].Stock != 6 || j.Offers[0].Stock != nil {
		t.Error("the job itself has other stocks now")
	}
}

// TestSoldOutAltogether: what nobody sells any more is left out, and said so,
// not saved.
func TestSoldOutAltogether(t *testing.T) {
	j, err := mix.Decode([]byte(mulchJob(`{"pack": "2 cu ft", "price": "4"}`, ``)))
	require.NoError(t, err)
	left, err := j.At(&yard.Yard{Without: []string{"bark-mulch:2 cu ft"}})
	require.NoError(t, err)
	if out := planOf(t, left).LeftOut(); len(out) != 1 || out[0].Material.Name != "Bark mulch" {
		t.Errorf("left out: %v", out)
	}
}

// TestPackAndBulkOfOneSize: each can be named.
func TestPackAndBulkOfOneSize(t *testing.T) {
	j, err := mix.Decode([]byte(mulchJob(`{"pack": "1 cu yd", "price": "40"}, {"bulk": "1 cu yd", `+
		`"price": "30"}, {"pack": "2 cu ft", "price": "9"}`, ``)))
	require.NoError(t, err)
	for without, want := range map[string]string{"bark-mulch:1 cu yd bulk": "40.00", "bark-mulch:1 cu yd": "30.00"} {
		left, err := j.At(&yard.Yard{Without: []string{without}})
		require.NoError(t, err)
		if got := planOf(t, left).Bill.Total.String(); got != want {
			t.Errorf("without %s: %s, want %s", without, got, want)
		}
	}
}

// TestReplanWhatCouldNotBePlanned: a step too heavy for the truck is left out
// at the yard, though the job has no plan as it stands; and what is bought
// meets a minimum and lowers the stock.
func TestReplanWhatCouldNotBePlanned(t *testing.T) {
	j, err := mix.Decode([]byte(mulchJob(`{"bulk": "1 cu yd", "price": "30"}, {"pack": "2 cu ft", "price": "9"}`,
		`, "haul": {"payload": "700 lb"}`)))
	require.NoError(t, err)
	if _, err := j.Plan(); firstCode(err) != "offer.heavy" {
		t.Fatalf("%v, want offer.heavy", err)
	}
	left, err := j.At(&yard.Yard{Without: []string{"bark-mulch:1 cu yd"}})
	require.NoError(t, err)
	if got := planOf(t, left).Bill.Goods; got != 4500 {
		t.Errorf("%s, want 45.00", got)
	}
	j, err = mix.Decode([]byte(mulchJob(`{"pack": "2 cu ft", "price": "4", "least": 5, "stock": 6}`, ``)))
	require.NoError(t, err)
	left, err = j.At(&yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}}})
	require.NoError(t, err)
	if p := planOf(t, left); len(p.Lines) != 1 || p.Lines[0].Count != 2 {
		t.Errorf("order %+v, want 2 more", p.Lines)
	}
}

func TestBadYardNames(t *testing.T) {
	j := sampleJob(t)
	_, err := j.At(&yard.Yard{Without: []string{"bark-fines:9 cu yd", "peat", "bark-mulch:2 cu ft"},
		Bought: []yard.Bought{{Offer: "perlite:4 cu ft", Count: 0}}})
	var got []string
	for _, p := range doc.ProblemsIn(err) {
		got = append(got, p.Path+" "+p.Code)
	}
	want := "bought[0] count.small without[0] offer.unknown without[1] offer.unknown"
	if strings.Join(got, " ") != want {
		t.Errorf("%v, want %s", got, want)
	}
}

// TestYardOfTheJob: what a job's own document says of the yard is what
// [Yard.Apply] does, and what is wrong with it is said at its field.
func TestYardOfTheJob(t *testing.T) {
	with := func(yard string) []byte {
		return bytes.Replace(mix.Sample(), []byte(`"schema": 1,`), []byte(`"schema": 1, "yard": `+yard+`,`), 1)
	}
	job, err := mix.Decode(mix.Sample())
	if err != nil {
		t.Fatal(err)
	}
	y := &yard.Yard{Without: []string{"bark-fines:1/2 cu yd bulk"},
		Bought: []yard.Bought{{Offer: "peat:3.8 cu ft", Count: 1}}}
	left, err := job.At(y)
	if err != nil {
		t.Fatal(err)
	}
	got, err := mix.PlanDocument(with(`{"without": ["bark-fines:1/2 cu yd bulk"], ` +
		`"bought": [{"offer": "peat:3.8 cu ft", "count": 1}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want := planOf(t, left)
	differs := func(c yard.Change) bool { return c.Before != c.After }
	if d := got.ChangesFrom(want); len(d) == 0 || got.Bill != want.Bill || slices.ContainsFunc(d, differs) {
		t.Errorf("the order differs from what Apply leaves: %+v", d)
	}
	var codes []string
	for _, n := range want.Notes {
		codes = append(codes, n.Code)
	}
	if diff := cmp.Diff(want.Notes, got.Notes); diff != "" || !slices.Contains(codes, "yard.bought") ||
		!slices.Contains(codes, "yard.without") {
		t.Errorf("notes %v; they differ (-want +got)\n%s", codes, diff)
	}

	_, err = mix.PlanDocument(with(`{"without": ["bark"], "only_stock": -1, ` +
		`"bought": [{"offer": "peat:3.8 cu ft", "count": 0}]}`))
	var paths string
	for _, p := range doc.ProblemsIn(err) {
		paths += p.Path + " " + p.Code + "; "
	}
	wantPaths := "yard.without[0] offer.unknown; yard.only_stock count.small; yard.bought[0].count count.small; "
	if paths != wantPaths {
		t.Errorf("problems %q, want %q", paths, wantPaths)
	}
}

// mulchJob is a mulch of 10 cu ft with the offers given.
func mulchJob(offers, more string) string {
	return `{"schema": 1` + more + `, "tasks": [{"kind": "cover", "area": "40 sq ft", "layer": "3 in", ` +
		`"material": "bark-mulch"}], "offers": [` +
		strings.NewReplacer(
			`{"pack"`, `{"material": "bark-mulch", "pack"`,
			`{"bulk"`, `{"material": "bark-mulch", "bulk"`).Replace(offers) + `]}`
}
