package mix

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
)

func sampleJob(t *testing.T) *Job {
	t.Helper()
	j, err := Read(Sample())
	require.NoError(t, err)
	return j
}

func planOf(t *testing.T, j *Job) *Plan {
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
	left, err := (&Yard{Without: []string{"bark-fines:1/2 yd3"}}).Apply(j)
	require.NoError(t, err)
	after := planOf(t, left)
	if after.Bill.Total < before.Bill.Total {
		t.Errorf("less to choose from costs %s, more %s", after.Bill.Total, before.Bill.Total)
	}
	got := map[string][2]int64{}
	for _, c := range Changes(before, after) {
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
	var y Yard
	for i := range before.Order {
		l := &before.Order[i]
		y.Bought = append(y.Bought, Bought{l.Material.ID + ":" + l.Offer.Size().String(), l.Count})
	}
	left, err := y.Apply(j)
	require.NoError(t, err)
	if after := planOf(t, left); len(after.Order) != 0 || after.Bill.Total != 0 {
		t.Errorf("all is bought, and there is %d still to buy for %s", len(after.Order), after.Bill.Total)
	}
	left, err = (&Yard{Bought: y.Bought[:1]}).Apply(j)
	require.NoError(t, err)
	if after := planOf(t, left); after.Bill.Goods != before.Bill.Goods-before.Order[0].Cost {
		t.Errorf("goods %s after buying %s of %s", after.Bill.Goods, before.Order[0].Cost, before.Bill.Goods)
	}
}

// TestOnlyStock: a count for every offer that does not say.
func TestOnlyStock(t *testing.T) {
	j := sampleJob(t)
	n := int64(4)
	left, err := (&Yard{Only: &n}).Apply(j)
	require.NoError(t, err)
	_, err = left.Plan() // 4 x 2 cu ft and 4 x 13.5 cu ft is 62 of 68.9
	if got := firstCode(err); got != "stock.short" {
		t.Errorf("%v, want stock.short", err)
	}
	if *j.Offers[2].Stock != 6 || j.Offers[0].Stock != nil {
		t.Error("the job itself has other stocks now")
	}
}

// TestSoldOutAltogether: what nobody sells any more is left out, and said so,
// not saved.
func TestSoldOutAltogether(t *testing.T) {
	j, err := Read([]byte(yard(`{"pack": "2 cu ft", "price": "4"}`, ``)))
	require.NoError(t, err)
	left, err := (&Yard{Without: []string{"bark-mulch:2 cu ft"}}).Apply(j)
	require.NoError(t, err)
	if out := planOf(t, left).LeftOut(); len(out) != 1 || out[0].Name != "Bark mulch" {
		t.Errorf("left out: %v", out)
	}
}

// TestPackAndBulkOfOneSize: each can be named.
func TestPackAndBulkOfOneSize(t *testing.T) {
	j, err := Read([]byte(yard(`{"pack": "1 cu yd", "price": "40"}, {"bulk": "1 cu yd", "price": "30"}, {"pack": "2 cu ft", "price": "9"}`, ``)))
	require.NoError(t, err)
	for without, want := range map[string]string{"bark-mulch:1 cu yd bulk": "40.00", "bark-mulch:1 cu yd": "30.00"} {
		left, err := (&Yard{Without: []string{without}}).Apply(j)
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
	j, err := Decode([]byte(yard(`{"bulk": "1 cu yd", "price": "30"}, {"pack": "2 cu ft", "price": "9"}`, `, "haul": {"payload": "700 lb"}`)))
	require.NoError(t, err)
	if _, err := j.Plan(); firstCode(err) != "offer.heavy" {
		t.Fatalf("%v, want offer.heavy", err)
	}
	left, err := (&Yard{Without: []string{"bark-mulch:1 cu yd"}}).Apply(j)
	require.NoError(t, err)
	if got := planOf(t, left).Bill.Goods; got != 4500 {
		t.Errorf("%s, want 45.00", got)
	}
	j, err = Decode([]byte(yard(`{"pack": "2 cu ft", "price": "4", "least": 5, "stock": 6}`, ``)))
	require.NoError(t, err)
	left, err = (&Yard{Bought: []Bought{{"bark-mulch:2 cu ft", 3}}}).Apply(j)
	require.NoError(t, err)
	if p := planOf(t, left); len(p.Order) != 1 || p.Order[0].Count != 2 {
		t.Errorf("order %+v, want 2 more", p.Order)
	}
}

func TestBadYardNames(t *testing.T) {
	j := sampleJob(t)
	_, err := (&Yard{Without: []string{"bark-fines:9 cu yd", "peat", "bark-mulch:2 cu ft"}, Bought: []Bought{{"perlite:4 cu ft", 0}}}).Apply(j)
	var got []string
	for _, p := range Problems(err) {
		got = append(got, p.Path+" "+p.Code)
	}
	want := "bought[0] count.small without[0] offer.unknown without[1] offer.unknown"
	if strings.Join(got, " ") != want {
		t.Errorf("%v, want %s", got, want)
	}
}

// TestCrossing: bags of 1 cu ft at 1.00 against a step of 10 cu ft at 5.00, by
// hand: five bags cost as much as a step and the sixth is dearer; past 10 cu ft
// eleven bags are dearer than two steps, and so on for good.
func TestCrossing(t *testing.T) {
	p, err := PlanDocument([]byte(yard(`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "10 cu ft", "price": "5.00"}`, ``)))
	require.NoError(t, err)
	list := p.Crossings()
	if len(list) != 1 || list[0].Always || list[0].Never {
		t.Fatalf("%+v", list)
	}
	for _, at := range list[0].Points {
		bags := units.Money(Bags(at.Volume, units.CubicFoot)) * 100
		bulk := units.Money(Bags(at.Volume, 10*units.CubicFoot)) * 500
		if at.Bags != bags || at.Bulk != bulk {
			t.Errorf("%v costs %s in bags and %s in bulk, want %s and %s", at.Volume, at.Bags, at.Bulk, bags, bulk)
		}
	}
	if d := list[0].From - 5*units.CubicFoot; d < 0 || d > units.Litre {
		t.Errorf("from %s, want 5 cu ft", units.US.Volume(list[0].From))
	}
	for offers, want := range map[string]string{
		`{"pack": "1 cu ft", "price": "9.00"}, {"bulk": "1 cu ft", "price": "5.00"}`: "the least looked at",
		`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "1 cu ft", "price": "5.00"}`: "bags are cheaper",
	} {
		p, err := PlanDocument([]byte(yard(offers, ``)))
		require.NoError(t, err)
		if got := p.Crossings()[0].Sentence(lang.Printer{}); !strings.Contains(got, want) {
			t.Errorf("%s: %s", offers, got)
		}
	}
}

// TestOptions: dearer choices leave less, and the first is the plan's own.
func TestOptions(t *testing.T) {
	p := planOf(t, sampleJob(t))
	list := p.Options(6)
	if len(list) < 2 || list[0].Bill != p.Bill {
		t.Fatalf("%d choices, the first %+v, want %+v", len(list), list[0].Bill, p.Bill)
	}
	for i := 1; i < len(list); i++ {
		if list[i].Bill.Total <= list[i-1].Bill.Total || list[i].Left >= list[i-1].Left {
			t.Errorf("choice %d costs %s and leaves %v, after %s and %v", i, list[i].Bill.Total, list[i].Left, list[i-1].Bill.Total, list[i-1].Left)
		}
	}
}

// TestSure: an order of what is certain is certain; one of a class of pots is
// enough as often as its pots are small enough, by the triangle's own formula;
// the surer order is surer and dearer.
func TestSure(t *testing.T) {
	if bagFill.Low != 0.95 { // NIST Handbook 133, the most that one package may be short of: from memory
		t.Errorf("a bag may hold %v of its label", bagFill.Low)
	}
	certain := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", "containers": [{"count": 10, "holds": "1 L"}]}], "on_hand": {"sand": "9 L"}, "offers": [{"material": "sand", "pack": "2 L", "price": "1"}]}`
	p, err := PlanDocument([]byte(certain))
	require.NoError(t, err)
	if s := p.Sure(); s.Chance != 1 || s.Odds(p.Printer()) != "for certain" || len(s.Enough) > 0 {
		t.Errorf("2 L for a need of 1: %+v", s)
	}
	// A hundred #1 pots of 152 to 251 cu in, 172.8 the likeliest, against what
	// is on hand and a bag of next to nothing: P(size <= x) of the triangle.
	onHand := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", "containers": [{"count": 100, "size": "#1"}]}], "on_hand": {"sand": "17270 cu in"}, "offers": [{"material": "sand", "pack": "10 cu in", "price": "1"}]}`
	p, err = PlanDocument([]byte(onHand))
	require.NoError(t, err)
	s := p.Sure()
	low, mode, high, x := 152.0, 172.8, 251.0, 172.8 // 17270 + 10 over 100
	want := (x - low) * (x - low) / ((high - low) * (mode - low))
	if s.Chance < want-0.01 || s.Chance > want+0.01 {
		t.Errorf("chance %v, want %v", s.Chance, want)
	}
	if s.At < nineInTen || s.Bill.Total <= p.Bill.Total || len(s.Matters) == 0 || s.Matters[0].Name != "the size of #1" {
		t.Errorf("%+v", s)
	}
	if again := p.Sure(); again.Chance != s.Chance || again.At != s.At {
		t.Error("the answer differs from time to time")
	}
}

// TestPlacard is the worked example of 49 CFR 575.6(a)(5): 1400 lb less five
// people of 150 lb leaves 650 lb.
func TestPlacard(t *testing.T) {
	p, err := PlanDocument([]byte(yard(`{"pack": "2 cu ft", "weight": "130 lb"}`, `, "haul": {"placard": "1400 lb", "people": "750 lb"}`)))
	require.NoError(t, err)
	if got := p.Haul.Limit(); got != 650*units.Pound {
		t.Errorf("%v may be loaded, want 650 lb", got)
	}
	if p.Load.Drives != 1 { // five of 130 lb are 650 lb to the pound
		t.Errorf("%d drives, want 1", p.Load.Drives)
	}
	for haul, want := range map[string]string{
		`{"placard": "1400 lb"}`: "haul.people field.missing",
		`{"people": "750 lb"}`:   "haul.people field.alone",
		`{"payload": "1 lb", "placard": "1400 lb", "people": "750 lb"}`: "haul.placard field.both",
		`{"placard": "700 lb", "people": "750 lb"}`:                     "haul.people haul.full",
	} {
		_, err := PlanDocument([]byte(yard(`{"pack": "2 cu ft"}`, `, "haul": `+haul)))
		if p := Problems(err); len(p) != 1 || p[0].Path+" "+p[0].Code != want {
			t.Errorf("%s: %v, want %s", haul, err, want)
		}
	}
}

// BenchmarkSure is how sure a job of twenty tasks is, from the plan.
func BenchmarkSure(b *testing.B) {
	p, err := PlanDocument(manyTasks(20))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if p.Sure() == nil {
			b.Fatal("no answer")
		}
	}
}

// TestYardOfTheJob: what a job's own document says of the yard is what
// [Yard.Apply] does, and what is wrong with it is said at its field.
func TestYardOfTheJob(t *testing.T) {
	with := func(yard string) []byte {
		return bytes.Replace(Sample(), []byte(`"schema": 1,`), []byte(`"schema": 1, "yard": `+yard+`,`), 1)
	}
	job, err := Decode(Sample())
	if err != nil {
		t.Fatal(err)
	}
	y := &Yard{Without: []string{"bark-fines:1/2 cu yd bulk"}, Bought: []Bought{{"peat:3.8 cu ft", 1}}}
	left, err := y.Apply(job)
	if err != nil {
		t.Fatal(err)
	}
	got, err := PlanDocument(with(`{"without": ["bark-fines:1/2 cu yd bulk"], "bought": [{"offer": "peat:3.8 cu ft", "count": 1}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want := planOf(t, left)
	if d := Changes(want, got); len(d) == 0 || got.Bill != want.Bill || slices.ContainsFunc(d, func(c Change) bool { return c.Before != c.After }) {
		t.Errorf("the order differs from what Apply leaves: %+v", d)
	}
	if n := len(got.Notes) - len(want.Notes); n != 2 {
		t.Errorf("%d notes on what has changed, want 2", n)
	}

	_, err = PlanDocument(with(`{"without": ["bark"], "only_stock": -1, "bought": [{"offer": "peat:3.8 cu ft", "count": 0}]}`))
	var paths string
	for _, p := range Problems(err) {
		paths += p.Path + " " + p.Code + "; "
	}
	if want := "yard.without[0] offer.unknown; yard.only_stock count.small; yard.bought[0].count count.small; "; paths != want {
		t.Errorf("problems %q, want %q", paths, want)
	}
}
