package mix_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/report"
	"example.org/barrow/units"
)

const (
	poundsPerKilogram = 1 / 0.45359237
	// One bag holds 5 % less or more than the average of its lot, and that is within 1.3 %
	// of the label.
	underBag, overBag = 0.987 * 0.95, 1.013 * 1.05
)

// buys is a job that spreads a cubic yard of a material, 1 ft deep on 27 sq ft, and buys
// it from the offers; more holds further fields of the job.
func buys(material, offers, more string) []byte {
	return []byte(`{"schema": 1, "measure": "us", "tasks": [{"kind": "cover", "area": "27 sq ft", "layer": "1 ft",
		"material": "` + material + `", "stems": {"count": 1, "clear": "1 in"}}], "offers": [` + offers + `]` + more + `}`)
}

// TestHeaviestGravel: CalRecycle has gravel at 2,600 lb/cu yd and 20 % more when wet, and
// a bucket may be 110 % full: a yard may weigh 2,600 x 1.2 x 1.1 = 3,432 lb.
func TestHeaviestGravel(t *testing.T) {
	offer := `{"material": "gravel", "bulk": "1 cu yd", "price": "40"}`
	_, err := mix.PlanDocument(buys("gravel", offer, `, "haul": {"payload": "3431 lb"}`))
	problems := doc.ProblemsIn(err)
	if len(problems) != 1 || problems[0].Code != "offer.heavy" || !strings.Contains(problems[0].Hint.String(), "3432 lb") {
		t.Errorf("a payload of 3431 lb: %v", err)
	}
	p, err := mix.PlanDocument(buys("gravel", offer, `, "haul": {"payload": "3433 lb"}`))
	require.NoError(t, err)
	for i, want := range []float64{2600 * 0.9, 2600 * 1.2 * 1.1} {
		got := float64(p.Trips[0].Mass[i]) / 1e9 * poundsPerKilogram
		if math.Abs(got-want) > 0.01 || p.Trips[0].Mass[i] != p.Load.Mass[i] {
			t.Errorf("%v lb, want %v", got, want)
		}
	}
}

// TestHeaviestTrips loads bulk and bags without a weight, at many payloads: no drive is
// over its payload when every density is the catalogue's highest, every bucket 110 % full
// and every bag 6.4 % over.
func TestHeaviestTrips(t *testing.T) {
	job := `{"schema": 1, "tasks": [
		{"kind": "cover", "area": "100 sq ft", "layer": "3 in", "material": "bark-mulch", "stems": {"count": 1, "clear": "1 in"}},
		{"kind": "amend", "area": "60 sq ft", "layer": "3 in", "into": "9 in", "material": "sand"}],
		"offers": [{"material": "bark-mulch", "pack": "2 cu ft", "price": "4"}, {"material": "bark-mulch", "bulk": "1/4 cu yd", "price": "9"},
			{"material": "sand", "bulk": "1/4 cu yd", "price": "12"}], "haul": {"payload": "PAYLOAD lb", "trip_cost": "3"}}`
	heaviest := map[string]float64{ // in lb, of one pack
		"bark-mulch 2 cu ft": 608.0 / 27 * 2 * overBag, "bark-mulch 1/4 cu yd": 800.0 / 4 * 1.1, "sand 1/4 cu yd": 3120.0 / 4 * 1.1,
	}
	for payload := 860; payload < 2000; payload += 60 {
		p, err := mix.PlanDocument([]byte(strings.Replace(job, "PAYLOAD", strconv.Itoa(payload), 1)))
		require.NoError(t, err)
		for _, trip := range p.Trips {
			sum := 0.0
			for _, pack := range trip.Packs {
				each := heaviest[pack.Material.ID+" "+pack.Offer.Size().String()]
				if each == 0 {
					t.Fatalf("no weight for %s", pack.Offer.Name())
				}
				sum += each * float64(pack.Count)
			}
			if got := float64(trip.Mass[1]) / 1e9 * poundsPerKilogram; math.Abs(got-sum) > 0.01 || sum > float64(payload)+0.01 {
				t.Errorf("payload %d lb: a drive of %v lb is said to weigh %v", payload, sum, got)
			}
		}
	}
}

// TestSealedBag: a sealed bag weighs what it weighs as sold and not as if it had stood in
// the rain, and the caution names only the packs that pass 51 lb.
func TestSealedBag(t *testing.T) {
	for _, c := range []struct {
		material, offer string
		low, high       float64 // in lb
		named           string  // in the caution
	}{
		// 636 / 27 x 2 x 1.064: below 51 lb, where drained wet it is 98.
		{"potting-mix", `{"pack": "2 cu ft"`, 182.0 / 27 * 2 * underBag, 636.0 / 27 * 2 * overBag, ""},
		{"bark-mulch", `{"pack": "2 cu ft"`, 243.0 / 27 * 2 * underBag, 608.0 / 27 * 2 * overBag, ""},
		{"bark-mulch", `{"pack": "3 cu ft"`, 243.0 / 27 * 3 * underBag, 608.0 / 27 * 3 * overBag, "3 cu ft of Bark mulch, 25.3 to 71.9 lb"},
		{"bark-mulch", `{"pack": "3 cu ft", "weight": "50 lb"`, 50, 50, ""},
		{"bark-mulch", `{"pack": "2 cu ft", "weight": "52 lb"`, 52, 52, "2 cu ft of Bark mulch, 52 lb"},
		{"bark-mulch", `{"bulk": "1 cu yd"`, 400 * 0.9, 800 * 1.1, ""},
		{"topsoil", `{"bulk": "1 cu yd"`, 2100 * 0.9, 3000 * 1.2, ""}, // moist loam heaps to 120 %
		{"peat", `{"pack": "3.8 cu ft"`, 278.0 / 27 * 3.8, 500.0 / 27 * 3.8, "3.8 cu ft of Sphagnum peat, 39.1 to 70.4 lb"},
		{"peat", `{"pack": "1.5 cu ft"`, 185.0 / 27 * 1.5 * underBag, 500.0 / 27 * 1.5 * overBag, ""}, // loose, or compressed
	} {
		p, err := mix.PlanDocument(buys(c.material, c.offer+`, "material": "`+c.material+`"}`, ""))
		require.NoError(t, err)
		l := &p.Lines[0]
		for i, want := range []float64{c.low, c.high} {
			got := float64(l.Mass[i]) / float64(l.Count) / 1e9 * poundsPerKilogram
			if math.Abs(got-want) > 0.01 {
				t.Errorf("%s %s weighs %v lb, want %v", c.material, c.offer, got, want)
			}
		}
		named := ""
		for _, caution := range p.Cautions {
			if caution.Code == "lifting" {
				named = caution.Text.String()
			}
		}
		if (named == "") != (c.named == "") || !strings.Contains(named, c.named) {
			t.Errorf("%s %s: the caution says %q, want %q", c.material, c.offer, named, c.named)
		}
	}
}

// TestDryDrives: a pack that only the yard can bring takes no drive, wet or dry, and does
// not make the dry drives of the others unknown.
func TestDryDrives(t *testing.T) {
	job := buys("sand", `{"material": "sand", "bulk": "1/4 cu yd", "price": "9", "stock": 2},
		{"material": "sand", "bulk": "1/2 cu yd", "price": "30", "deliver": true}`,
		`, "haul": {"payload": "860 lb"}, "delivery": {"fee": "1"}`)
	p, err := mix.PlanDocument(job)
	require.NoError(t, err)
	if p.Load.Loads != 1 || p.Load.Drives != 2 || p.Load.Dry != 2 { // 1/4 cu yd dry is 540 to 600 lb: one a drive
		t.Errorf("%d loads, %d drives, %d dry, want 1, 2 and 2", p.Load.Loads, p.Load.Drives, p.Load.Dry)
	}
	var plan struct {
		Load struct {
			Dry int `json:"drives_dry"`
		}
	}
	require.NoError(t, json.Unmarshal(report.Plan(p), &plan))
	if plan.Load.Dry != 2 {
		t.Errorf("drives_dry %d, want 2", plan.Load.Dry)
	}
}

// TestOneFullness: the chances take how full bags and buckets are from where the weights
// take it, and one bucket is 90 to 110 % full, of soil to 120 %.
func TestOneFullness(t *testing.T) {
	mulch, soil := catalog.Material{Traits: []string{"mulch"}}, catalog.Material{Traits: []string{"soil"}}
	bag, bucket, heaped := catalog.BagFullness(), mulch.BucketFullness(), soil.BucketFullness()
	for _, c := range []struct {
		material, offer string
		full            catalog.Fullness
		low, high       float64 // of one
	}{
		{"bark-mulch", `"bulk": "1 cu yd"`, bucket, 0.9, 1.1},
		{"topsoil", `"bulk": "1 cu yd"`, heaped, 0.9, 1.2},
		{"bark-mulch", `"pack": "2 cu ft"`, bag, underBag, overBag},
	} {
		if least, most := c.full.Of(units.Litre); math.Abs(least.Litres()-c.low) > 1e-8 || math.Abs(most.Litres()-c.high) > 1e-8 {
			t.Errorf("%s %s holds %v to %v of a litre", c.material, c.offer, least, most)
		}
		p, err := mix.PlanDocument(buys(c.material, `{"material": "`+c.material+`", `+c.offer+`, "price": "1"}`, ""))
		require.NoError(t, err)
		ranges := strings.Join(p.Sure().Ranges, "; ")
		for _, part := range [][2]units.Ratio{c.full.Lot, c.full.Each} {
			percent := func(r units.Ratio) string { return strconv.Itoa(int(math.Round(r.Float()*100))) + "%" }
			if want := percent(part[0]) + " to " + percent(part[1]); !strings.Contains(ranges, want) {
				t.Errorf("the chances have %q, want %q", ranges, want)
			}
		}
	}
}
