package yard_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestDrives checks that bales travel compressed, packs are not divided, and
// what is light when dry takes fewer drives. The figures are arithmetic: 20
// bales of 3.8 cu ft are 76 cu ft and, at 58 lb, 1160 lb; a half yard of sand
// at 2400 to 3120 lb/cu yd is 1200 to 1560 lb, and 10 cu yd are 20 of them.
func TestDrives(t *testing.T) {
	peat := `"tasks": [{"kind": "cover", "area": "560 sq ft", "layer": "3 in", "material": "peat"}],
		"offers": [{"material": "peat", "pack": "3.8 cu ft", "opens_to": "7 cu ft", "weight": "58 lb"}]`
	sand := `"tasks": [{"kind": "cover", "area": "1080 sq ft", "layer": "3 in", "material": "sand"}],
		"offers": [{"material": "sand", "bulk": "1/2 cu yd"}]`
	for _, tt := range []struct {
		why, job, haul, want string
	}{
		{"compressed, they fit", peat, `{"room": "80 cu ft"}`, "1 drive"},
		{"and 75 cu ft is short of them", peat, `{"room": "75 cu ft"}`, "2 drives"},
		{"ten bales a drive by the label's weight", peat, `{"payload": "600 lb", "room": "80 cu ft"}`, "2 drives"},
		{"three bales a drive", peat, `{"payload": "200 lb"}`, "7 drives"},
		{"one step a drive wet, two dry", sand, `{"payload": "3000 lb"}`, "20 drives, 10 if it is dry"},
		{"room for two", sand, `{"room": "1 cu yd"}`, "10 drives"},
		{"nothing is said", sand, `{}`, ""},
	} {
		p, err := mix.PlanDocument([]byte(`{"schema": 1, "haul": ` + tt.haul + `, ` + tt.job + `}`))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		if got := p.Load.DrivesText(p.Printer()); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.why, got, tt.want)
		}
	}
}

// TestTrips checks that every pack is on exactly one trip, no trip is over
// payload or room, and what the trips carry adds up to the order.
func TestTrips(t *testing.T) {
	p, err := mix.PlanDocument(mix.Sample())
	if err != nil {
		t.Fatal(err)
	}
	carried := map[*yard.Offer]int64{}
	var packed units.Volume
	for i := range p.Trips {
		trip := &p.Trips[i]
		if trip.Mass[1] > p.Haul.Payload || trip.Packed > p.Haul.Room {
			t.Errorf("trip %d weighs %v and takes %v", i, trip.Mass[1], trip.Packed)
		}
		packed += trip.Packed * units.Volume(trip.Times)
		for _, k := range trip.Packs {
			carried[k.Offer] += k.Count * trip.Times
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if carried[l.Offer] != l.Count {
			t.Errorf("%d of %s %s are carried, of %d", carried[l.Offer], l.Offer.Size().Text, l.Material.ID, l.Count)
		}
	}
	if packed != p.Load.Packed {
		t.Errorf("%v carried of %v", packed, p.Load.Packed)
	}
	want := units.Money(p.Load.Drives) * p.Haul.TripCost
	if p.Bill.Driving != want || p.Bill.Total != p.Bill.Goods+want {
		t.Errorf("bill %+v, want %v for driving", p.Bill, want)
	}
}

// mulchJob is a mulch of 10 cu ft with the offers given.
func mulchJob(offers, more string) string {
	material := strings.NewReplacer(
		`{"pack"`, `{"material": "bark-mulch", "pack"`, `{"bulk"`, `{"material": "bark-mulch", "bulk"`)
	return `{"schema": 1` + more + `, "tasks": [` +
		`{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"}], ` +
		`"offers": [` + material.Replace(offers) + `]}`
}

// TestOrder checks that prices, breaks, minimums, stock, tax, deposits and
// delivery reach the search and come back. Each order is worked out by hand.
func TestOrder(t *testing.T) {
	for _, tt := range []struct {
		why, offers, more, want string
	}{
		{"mixed packs are cheapest", `{"pack": "2 cu ft", "price": "4.00"}, {"pack": "3 cu ft", "price": "4.50"}`, ``, "2 x 2 cu ft, 2 x 3 cu ft = 17.00"},
		{"of one cost, the less left over", `{"pack": "3 cu ft", "price": "5.00"}, {"pack": "2 1/2 cu ft", "price": "5.00"}`, ``, "4 x 2 1/2 cu ft = 20.00"},
		{"of one cost and left over, the fewer to lift", `{"pack": "1 cu ft", "price": "1.00"}, {"pack": "2 cu ft", "price": "2.00"}`, ``, "5 x 2 cu ft = 10.00"},
		{"an offer without a price is left aside", `{"pack": "2 cu ft"}, {"pack": "3 cu ft", "price": "9.00"}`, ``, "4 x 3 cu ft = 36.00"},
		{"free is a price", `{"pack": "2 cu ft", "price": "1.00"}, {"bulk": "1 cu yd", "price": "0"}`, ``, "1 x 1 cu yd = 0.00"},
		{"stock of both together", `{"pack": "2 cu ft", "price": "1.00", "stock": 3}, {"pack": "2 cu ft", "price": "3.00", "stock": 9}`, ``, "3 x 2 cu ft, 2 x 2 cu ft = 9.00"},
		{"more in stock than can be counted up", `{"pack": "2 cu ft", "price": "4.00", "stock": 1000000000}`, ``, "5 x 2 cu ft = 20.00"},
		{"where the priced do not suffice, the others join in", `{"pack": "2 cu ft", "price": "4.00", "stock": 2}, {"pack": "3 cu ft"}`, ``, "4 x 3 cu ft = 0.00"},
		{"ten cost less than nine", `{"pack": "1 cu ft", "price": "2.00", "breaks": [{"from": 10, "price": "1.50"}]}`, ``, "10 x 1 cu ft = 15.00"},
		{"a minimum", `{"bulk": "1 cu ft", "price": "1.00", "least": 12}, {"pack": "2 cu ft", "price": "3.00"}`, ``, "12 x 1 cu ft = 12.00"},
		{"tax by the line", `{"pack": "2 cu ft", "price": "1.01"}`, `, "tax": "7%"`, "5 x 2 cu ft = 5.05 + 0.35 tax = 5.40"},
		{"a deposit is no cost", `{"pack": "2 cu ft", "price": "1.00", "deposit": "5.00"}, {"pack": "2 cu ft", "price": "1.01"}`, ``, "5 x 2 cu ft = 5.00, deposit 25.00"},
		{"the drive decides", `{"pack": "2 cu ft", "price": "1.00", "weight": "30 lb"}`, `, "haul": {"payload": "70 lb", "trip_cost": "3.00"}`, "5 x 2 cu ft = 5.00 + 9.00 driving = 14.00"},
		{"delivery beats driving", `{"bulk": "1 cu ft", "price": "1.00", "deliver": true}`, `, "haul": {"room": "1 cu ft", "trip_cost": "3.00"}, "delivery": {"fee": "20.00", "capacity": "1 cu yd"}`, "10 x 1 cu ft = 10.00 + 20.00 delivery = 30.00"},
		{"least left over", `{"pack": "2 cu ft", "price": "4.00"}, {"pack": "3 cu ft", "price": "1.00"}`, `, "aim": "left over"`, "2 x 2 cu ft, 2 x 3 cu ft = 10.00"},
		{"least lifting", `{"pack": "1 cu ft", "price": "1.00"}, {"pack": "5 cu ft", "price": "9.00"}`, `, "aim": "lifting"`, "2 x 5 cu ft = 18.00"},
	} {
		p, err := mix.PlanDocument([]byte(mulchJob(tt.offers, tt.more)))
		if err != nil {
			t.Fatalf("%s: %v", tt.why, err)
		}
		var lines []string
		for i := range p.Lines {
			lines = append(lines, fmt.Sprintf("%d x %s", p.Lines[i].Count, p.Lines[i].Offer.Size().Text))
		}
		got := strings.Join(lines, ", ") + " = " + p.Bill.Goods.String()
		for _, part := range []struct {
			name string
			m    units.Money
		}{{" tax", p.Bill.Tax}, {" driving", p.Bill.Driving}, {" delivery", p.Bill.Fees}} {
			if part.m > 0 {
				got += " + " + part.m.String() + part.name
			}
		}
		if p.Bill.Total > p.Bill.Goods {
			got += " = " + p.Bill.Total.String()
		}
		if p.Bill.Deposit > 0 {
			got += ", deposit " + p.Bill.Deposit.String()
		}
		if got != tt.want {
			t.Errorf("%s: %s, want %s", tt.why, got, tt.want)
		}
	}
}

// TestBadYards checks offers that cannot be carried or are not enough.
func TestBadYards(t *testing.T) {
	for _, tt := range []struct{ why, offers, more, want string }{
		{"too heavy alone", `{"bulk": "1 cu yd"}`, `, "haul": {"payload": "700 lb"}`, "offers[0] offer.heavy"},
		{"too large alone", `{"bulk": "1 cu yd"}`, `, "haul": {"room": "1/2 cu yd"}`, "offers[0] offer.large"},
		{"more at least than in stock", `{"pack": "2 cu ft", "stock": 2, "least": 3}`, ``, "offers[0].least offer.least"},
		{"breaks going down", `{"pack": "2 cu ft", "price": "4", "breaks": [{"from": 9, "price": "3"}, {"from": 4, "price": "2"}]}`, ``, "offers[0].breaks[1].from break.order"},
		{"breaks without a price", `{"pack": "2 cu ft", "breaks": [{"from": 9, "price": "3"}]}`, ``, "offers[0].price field.missing"},
		{"a break without a price", `{"pack": "2 cu ft", "price": "4", "breaks": [{"from": 10}]}`, ``, "offers[0].breaks[0].price field.missing"},
		{"no such aim", `{"pack": "2 cu ft"}`, `, "aim": "speed"`, "aim word.unknown"},
	} {
		_, err := mix.PlanDocument([]byte(mulchJob(tt.offers, tt.more)))
		got := ""
		if p := doc.ProblemsIn(err); len(p) > 0 {
			got = p[0].Path + " " + p[0].Code
		}
		if got != tt.want {
			t.Errorf("%s: %v, want %s", tt.why, err, tt.want)
		}
	}
}

// TestShortStock: where too little is in stock, all of it is bought, and the plan says
// what it leaves out. The figures are arithmetic on a need of 10 cu ft.
func TestShortStock(t *testing.T) {
	for _, tt := range []struct {
		why, offers, more, want, out string
	}{
		{"both offers, all of each", `{"pack": "2 cu ft", "price": "1", "stock": 2}, {"pack": "3 cu ft", "price": "9", "stock": 1}`, ``,
			"2 x 2 cu ft, 1 x 3 cu ft = 11.00", "3 cu ft"},
		{"those without a price too", `{"pack": "2 cu ft", "price": "1", "stock": 2}, {"pack": "3 cu ft", "stock": 1}`, ``,
			"2 x 2 cu ft, 1 x 3 cu ft = 2.00", "3 cu ft"},
		{"a minimum that the stock meets", `{"pack": "2 cu ft", "price": "1", "stock": 3, "least": 3}`, ``, "3 x 2 cu ft = 3.00", "4 cu ft"},
		{"whatever comes first", `{"pack": "2 cu ft", "price": "1", "stock": 3}`, `, "aim": "left over"`, "3 x 2 cu ft = 3.00", "4 cu ft"},
		{"and what is bought still has to come home", `{"pack": "2 cu ft", "price": "1", "stock": 4}`, `, "haul": {"room": "4 cu ft", "trip_cost": "5"}`,
			"4 x 2 cu ft = 14.00", "2 cu ft"},
		{"none in stock", `{"pack": "2 cu ft", "price": "1", "stock": 0}`, ``, " = 0.00", "10 cu ft"},
		{"enough, to the slack", `{"pack": "9.99999 cu ft", "price": "1", "stock": 1}`, ``, "1 x 9.99999 cu ft = 1.00", ""},
	} {
		p, err := mix.PlanDocument([]byte(mulchJob(tt.offers, tt.more)))
		require.NoError(t, err, tt.why)
		var lines []string
		for i := range p.Lines {
			lines = append(lines, fmt.Sprintf("%d x %s", p.Lines[i].Count, p.Lines[i].Offer.Size().Text))
		}
		require.Equal(t, tt.want, strings.Join(lines, ", ")+" = "+p.Bill.Total.String(), tt.why)
		var out, notes string
		for _, one := range p.LeftOut() {
			out += p.Printer().Volume(one.Volume)
		}
		require.Equal(t, tt.out, out, tt.why)
		for _, n := range p.Notes {
			notes += n.Text + " "
			if n.Code == doc.StockShort {
				require.Equal(t, "offers[0].stock stock.short", n.Path+" "+n.Code, tt.why)
			}
		}
		require.Equal(t, tt.out != "", strings.Contains(notes, "leaves out "+tt.out), tt.why)
	}
}

// TestShortStockByBruteForce: for random stocks, the order of a need that they do not
// cover is all there is, and what is left out is the rest of the need to the nanolitre.
func TestShortStockByBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var offers []string
		var all units.Volume
		for i := range rapid.IntRange(1, 4).Draw(t, "offers") {
			size, stock := rapid.IntRange(1, 5).Draw(t, "size"), rapid.IntRange(0, 3).Draw(t, "stock")
			all += units.Volume(size*stock) * units.CubicFoot
			offers = append(offers, fmt.Sprintf(`{"pack": "%d cu ft", "price": "%d", "stock": %d}`, size, i+1, stock))
		}
		p, err := mix.PlanDocument([]byte(mulchJob(strings.Join(offers, ", "), "")))
		if err != nil {
			t.Fatal(err)
		}
		var left units.Volume
		for _, one := range p.LeftOut() {
			left += one.Volume
		}
		if want := max(10*units.CubicFoot-all, 0); left != want || want > 0 && p.Load.Volume != all {
			t.Errorf("of %v there are %v, %v are bought and %v left out", 10*units.CubicFoot, all, p.Load.Volume, left)
		}
	})
}

// TestShortStockIsNotSure: how sure the order is says nothing of a material that it
// leaves out a part of, since it cannot be enough of that.
func TestShortStockIsNotSure(t *testing.T) {
	p, err := mix.PlanDocument([]byte(mulchJob(`{"pack": "2 cu ft", "price": "1", "stock": 3}`, ``)))
	require.NoError(t, err)
	require.Nil(t, p.Sure())
	p, err = mix.PlanDocument([]byte(strings.Replace(mulchJob(`{"pack": "2 cu ft", "price": "1", "stock": 3}, `+
		`{"material": "peat", "pack": "3.8 cu ft", "opens_to": "7 cu ft", "price": "20"}`, ``),
		`"tasks": [`, `"tasks": [{"kind": "cover", "area": "10 sq ft", "layer": "3 in", "material": "peat"}, `, 1)))
	require.NoError(t, err)
	require.Greater(t, p.Sure().Chance, 0.99) // 2.5 cu ft of peat of a bale of 7
}

// TestDeliveryNotes: an offer that the yard brings and a delivery belong together, and
// what is not used of the two says why.
func TestDeliveryNotes(t *testing.T) {
	bulk, brought := `{"bulk": "1 cu ft", "price": "1.00"}`, `{"bulk": "1 cu ft", "price": "1.00", "deliver": true}`
	haul, fee := `, "haul": {"room": "1 cu ft", "trip_cost": "3.00"}`, `, "delivery": {"fee": "20.00"}`
	for _, tt := range []struct{ why, offers, more, want string }{
		{"brought", brought, haul + fee, ""},
		{"no delivery", bulk + ", " + brought, haul, "offers[1].deliver: bark-mulch in 1 cu ft is to be fetched: the yard may bring it, but the job has no delivery with its fee"},
		{"no offer", bulk, haul + fee, "delivery: nothing is delivered: no offer says that the yard brings it"},
		{"no offer and nothing to buy", bulk, fee + `, "on_hand": {"bark-mulch": "1 cu yd"}`, "delivery: nothing is delivered: no offer says that the yard brings it"},
		{"nothing to buy", brought, fee + `, "on_hand": {"bark-mulch": "1 cu yd"}`, "delivery: nothing is delivered: there is nothing to buy from offers"},
		{"another offer is cheaper", brought + `, {"pack": "10 cu ft", "price": "0.50"}`, fee + `, "haul": {"trip_cost": "3.00"}`, "delivery: nothing is delivered: the yard brings none of the packs of this order"},
		{"fetching costs less", brought, fee + `, "haul": {"trip_cost": "3.00"}`, "delivery: nothing is delivered: fetching it costs no more"},
		{"fetching is free", brought, fee + `, "haul": {"room": "1 cu ft"}`, "delivery: nothing is delivered: without a cost of a drive, fetching it is taken as free"},
		{"no haul", brought, fee, "delivery: nothing is delivered: without haul, fetching it is taken as free and without a limit"},
	} {
		p, err := mix.PlanDocument([]byte(mulchJob(tt.offers, tt.more)))
		require.NoError(t, err, tt.why)
		got := ""
		for _, n := range p.Notes {
			if n.Code == "deliver.alone" || n.Code == "delivery.unused" {
				got += n.Path + ": " + n.Text
			}
		}
		require.Equal(t, tt.want, got, tt.why)
	}
}

// TestPlacard is the worked example of 49 CFR 575.6(a)(5): 1400 lb less five
// people of 150 lb leaves 650 lb.
func TestPlacard(t *testing.T) {
	p, err := mix.PlanDocument([]byte(mulchJob(`{"pack": "2 cu ft", "weight": "130 lb"}`,
		`, "haul": {"placard": "1400 lb", "people": "750 lb"}`)))
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
		_, err := mix.PlanDocument([]byte(mulchJob(`{"pack": "2 cu ft"}`, `, "haul": `+haul)))
		if p := doc.ProblemsIn(err); len(p) != 1 || p[0].Path+" "+p[0].Code != want {
			t.Errorf("%s: %v, want %s", haul, err, want)
		}
	}
}
