package largest

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
)

// long is a name that is nearly as long as it may be.
var long = strings.Repeat("n", 110)

// Tasks. A number goes in where {i} is, and one below twenty where {m} is.
var (
	fill     = `{"kind": "fill", "name": "` + long + `", "mix": "potting", "containers": [{"count": 64, "size": "#1"}, {"count": 6, "top": "12 in", "bottom": "10 in", "height": "11 in", "below_rim": "1 in"}], "spare": "5%"}`
	amend    = `{"kind": "amend", "name": "` + long + `", "area": "60 ft x 4 ft", "layer": "3 in", "into": "9 in", "material": "bark-fines"}`
	backfill = `{"kind": "backfill", "name": "` + long + `", "holes": 64, "width": "18 in", "depth": "7 in", "ball": "#1", "above_grade": "1 in", "share": "25%", "material": "compost"}`
	cover    = `{"kind": "cover", "name": "` + long + `", "area": "circle 14 ft", "layer": "3 in", "material": "bark-mulch", "stems": {"count": 6, "clear": "6 in"}}`
	mixed    = `{"kind": "fill", "mix": "x{m}", "containers": [{"count": 64, "size": "#1"}]}`
	nested   = `{"kind": "fill", "mix": "n99", "containers": [{"count": 64, "size": "#1"}]}`
)

// The rest of a yard.
const (
	haul      = `"haul": {"payload": "3000 lb", "room": "2 cu yd", "trip_cost": "9.00"}`
	small     = `"haul": {"payload": "3000 lb", "room": "2 cu yd", "trip_cost": "9.00"}`
	yards     = `"delivery": {"fee": "45", "capacity": "3 cu yd", "payload": "4500 lb"}`
	tax       = `"tax": "7.25%"`
	delivered = `, "deliver": true`
	one       = `, "stock": 1`
)

// list writes a list of n values under a key; value writes value i.
func list(key string, n int, value func(b *bytes.Buffer, i int)) string {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%q: [", key)
	for i := range n {
		if i > 0 {
			b.WriteString(",")
		}
		value(&b, i)
	}
	b.WriteString("]")
	return b.String()
}

// each writes values by a form with {i} and {m} in it.
func each(form string) func(*bytes.Buffer, int) {
	return func(b *bytes.Buffer, i int) {
		strings.NewReplacer("{i}", fmt.Sprint(i), "{m}", fmt.Sprint(i%20)).WriteString(b, form)
	}
}

// repeat is n tasks of one form.
func repeat(n int, form string) func() string {
	return func() string { return list("tasks", n, each(form)) }
}

// mulch is a single task that covers an area.
func mulch(area string) string {
	return `"tasks": [{"kind": "cover", "layer": "3 in", "material": "bark-mulch", "area": ` + area + `}]`
}

// A bed takes some dozens of packs, a field some thousands, and acres many trips.
func bed() string   { return mulch(`"60 ft x 40 ft"`) }
func field() string { return mulch(`"600 ft x 60 ft"`) }
func acres() string { return mulch(`"1000 ft x 900 ft"`) }

// lines is a task that fills n lines of containers of four kinds.
func lines(n int) string {
	four := `{"count": 64, "size": "#1"}, {"count": 8, "holds": "11.4 L"}, ` +
		`{"count": 6, "top": "12 in", "bottom": "10 in", "height": "11 in", "below_rim": "1 in"}, ` +
		`{"count": 3, "box": "20 in x 10 in x 2 in"}`
	return `"tasks": [{"kind": "fill", "mix": "potting", ` + list("containers", n/4, each(four)) + `}]`
}

// packs is a few offers of what the tasks take.
func packs() string {
	return `"offers": [{"material": "bark-fines", "pack": "2 cu ft", "price": "4.75", "weight": "40 lb"},
		{"material": "bark-fines", "bulk": "1/2 cu yd", "price": "21"},
		{"material": "peat", "pack": "3.8 cu ft", "opens_to": "7 cu ft", "price": "22.50"},
		{"material": "perlite", "pack": "4 cu ft", "price": "30"},
		{"material": "bark-mulch", "pack": "2 cu ft", "price": "4.75"},
		{"material": "compost", "pack": "1 cu ft", "price": "4.75"}]`
}

// offers is 2,000 offers of bark mulch, each of a size and a price of its own.
// One is a pack of 2 cu ft, and every third is sold loose, so that bags and bulk are compared.
func offers(more string) func() string {
	return func() string {
		rng := rand.New(rand.NewPCG(13, 14))
		return list("offers", 2000, func(b *bytes.Buffer, i int) {
			pack, litres := "pack", 10+rng.IntN(190)
			if i%3 == 2 {
				pack, litres = "bulk", 100+rng.IntN(900)
			}
			if i == 0 {
				b.WriteString(`{"material": "bark-mulch", "pack": "2 cu ft", "price": "4.75"}`)
				return
			}
			cents := litres*3 + rng.IntN(litres*4)
			fmt.Fprintf(b, `{"material": "bark-mulch", %q: "%d.%03d L", "price": "%d.%02d"%s}`,
				pack, litres, i%1000, cents/100, cents%100, more)
		})
	}
}

// broken is n offers of bark mulch with that many breaks, each of them for one more
// and a cent cheaper.
func broken(n, breaks int) func() string {
	return func() string {
		steps := list("breaks", breaks, func(b *bytes.Buffer, i int) {
			fmt.Fprintf(b, `{"from": %d, "price": "%d.%02d"}`, i+2, (5000-i)/100, (5000-i)%100)
		})
		return list("offers", n, func(b *bytes.Buffer, i int) {
			fmt.Fprintf(b, `{"material": "bark-mulch", "pack": "%d L", "price": "50.01", %s}`, 20+i%1400, steps)
		})
	}
}

// inPairs is two offers of each of the thousand materials of owned.
func inPairs() string {
	return list("offers", 2000, func(b *bytes.Buffer, i int) {
		fmt.Fprintf(b, `{"material": "m%d", "pack": "%d L", "price": "%d.50"}`, i/2, 20+i%2*31, 3+i%2*4)
	})
}

// changes is n names of offers of the yard that are sold out.
func changes(n int) string {
	return `"yard": {` + list("without", n, each(`"bark-mulch:2 cu ft"`)) + `}`
}

// owned is a thousand materials and twenty mixes of fifty of them each.
func owned() string {
	materials := list("materials", 1000, each(`{"id": "m{i}", "name": "m{i} `+long+`", "dry": "300 lb/cu yd", "wet": "900 lb/cu yd"}`))
	return materials + ", " + list("mixes", 20, func(b *bytes.Buffer, i int) {
		fmt.Fprintf(b, `{"id": "x%d", "name": "x%d %s", "parts": {`, i, i, long)
		for k := range 50 {
			if k > 0 {
				b.WriteString(", ")
			}
			fmt.Fprintf(b, `"m%d": %d`, i*50+k, 1+k%7)
		}
		b.WriteString("}}")
	})
}

// nest is a hundred mixes, each of them made with the one before it.
func nest() string {
	return list("mixes", 100, func(b *bytes.Buffer, i int) {
		if i == 0 {
			b.WriteString(`{"id": "n0", "parts": {"peat": 1, "perlite": 1}}`)
			return
		}
		fmt.Fprintf(b, `{"id": "n%d", "parts": {"n%d": 9}, "blend_loss": "0.01%%"}`, i, i-1)
	})
}

// sizes is a thousand containers of a job's own, and pots a line of each.
func sizes() string {
	return list("containers", 1000, func(b *bytes.Buffer, i int) {
		fmt.Fprintf(b, `{"id": "p%d", "name": "p%d %s", "holds": "%d mL", "low": "%d mL", "high": "%d mL"}`,
			i, i, long, 2000+i, 1800+i, 2300+i)
	})
}

func pots() string {
	return `"tasks": [{"kind": "fill", "mix": "potting", ` + list("containers", 1000, each(`{"count": 64, "size": "p{i}"}`)) + `}]`
}

// outlines is an area of n others, each with as many corners as it may have.
func outlines(n int) string {
	var comb bytes.Buffer
	for i := range 498 {
		fmt.Fprintf(&comb, `["%d in", "%d in"],`, i, 100+i%2)
	}
	outline := `{"corners": [` + comb.String() + `["497 in", "0 in"], ["0 in", "0 in"]]}`
	return mulch(`{"area": "1 sq ft", ` + list("plus", n, each(outline)) + `}`)
}

// strip is a strip of n runs.
func strip(n int) string {
	return mulch(`{"strip": {"width": "20 ft", "corners": 0, ` + list("along", n, each(`"1 mm"`)) + `}}`)
}

// pieces is an area without n small ones.
func pieces(n int) string {
	return mulch(`{"area": "900000 sq ft", ` + list("less", n, each(`"1 ft x 1 ft"`)) + `}`)
}
