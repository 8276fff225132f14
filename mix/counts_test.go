package mix_test

import (
	"flag"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"example.org/barrow/mix"
	"example.org/barrow/units"
)

var (
	manyCounts = flag.Int("counts", 20_000, "how many counts TestCountsExact draws")
	countSeed  = flag.Uint64("countseed", 1, "where TestCountsExact starts to draw")
)

// TestCountsExact draws jobs and holds every count of packs against fractions by
// math/big, from the text of the document to the line of the order, and to the counts
// in the packs that a material commonly comes in. A third of the counts are on a
// boundary: the need is so many packs to the brim, or a millilitre more, or as little
// as can be written beside either. Nothing is left out for being near.
func TestCountsExact(t *testing.T) {
	d := &counter{Rand: rand.New(rand.NewPCG(*countSeed, 7))}
	for d.counts < *manyCounts {
		d.job(t)
	}
	t.Logf("%d counts, %d of them on a boundary, the largest %d: %d wrong; %d jobs, %d refused",
		d.counts, d.edges, d.largest, d.wrong, d.jobs, d.refused)
	if d.wrong > 0 || d.edges < d.counts/3 || d.refused > d.jobs/20 {
		t.Fail()
	}
}

// counter draws jobs and counts.
type counter struct {
	*rand.Rand
	counts, edges, wrong, jobs, refused int
	largest                             int64
	plain                               bool // quantities are to be simple fractions
	small                               bool // needs are small enough for a choice of odd packs
}

// account is one material of a job: what its tasks take, what there is of it and
// what is offered.
type account struct {
	id     string
	tasks  []string
	need   *big.Rat // less what is on hand
	hand   string
	offers []string
	packs  []*big.Rat // what each offer yields
	cents  []int64    // the price of each
	first  int        // the index of its first offer in the job
	common []probe    // the packs that it commonly comes in
	edge   bool
}

// probe is a pack to count in.
type probe struct {
	pack written
	edge bool
}

// probes is how many of them a material has.
const probes = 12

var accountIDs = []string{"compost", "topsoil", "sand", "gravel", "bark-mulch", "wood-chips"}

func (d *counter) job(t *testing.T) {
	var tasks, offers, hand, materials []string
	d.small = d.IntN(4) == 0
	accounts := make([]*account, len(accountIDs))
	for i, id := range accountIDs {
		a := d.account(id)
		accounts[i], a.first = a, len(offers)
		tasks, offers = append(tasks, a.tasks...), append(offers, a.offers...)
		packs := make([]string, len(a.common))
		for k, p := range a.common {
			packs[k] = strconv.Quote(p.pack.text)
		}
		materials = append(materials, `{"id": "`+id+`", "packs": [`+strings.Join(packs, ", ")+`]}`)
		if a.hand != "" {
			hand = append(hand, strconv.Quote(id)+": "+strconv.Quote(a.hand))
		}
	}
	document := `{"schema": 1, "materials": [` + strings.Join(materials, ", ") + `], "on_hand": {` + strings.Join(hand, ", ") + `}, "offers": [` + strings.Join(offers, ", ") +
		`], "tasks": [` + strings.Join(tasks, ", ") + `]}`
	d.jobs++
	plan, err := mix.PlanDocument([]byte(document))
	if err != nil {
		if d.refused++; d.refused < 4 {
			t.Logf("refused: %v\n%s", err, document)
		}
		return
	}
	for _, a := range accounts {
		d.check(t, a, plan, document)
	}
}

// check compares the order of one material.
func (d *counter) check(t *testing.T, a *account, plan *mix.Plan, document string) {
	d.common(t, a, plan, document)
	d.count(a.edge)
	var counts, cost int64
	loose := new(big.Rat)
	for i := range plan.Lines {
		l := &plan.Lines[i]
		if l.Material.ID == a.id {
			k := l.Index() - a.first
			counts, cost = counts+l.Count, cost+l.Count*a.cents[k]
			loose.Add(loose, new(big.Rat).Mul(a.packs[k], big.NewRat(l.Count, 1)))
			d.largest = max(d.largest, l.Count)
		}
	}
	if len(a.packs) > 1 {
		if want := a.cheapest(); cost != want || short(a.need, loose) {
			d.say(t, a, document, "the order costs %d cents, want %d", cost, want)
		}
		return
	}
	if want := packsOf(a.need, a.packs[0]); counts != want {
		d.say(t, a, document, "%d packs, want %d", counts, want)
	}
}

// count adds one count to the sums.
func (d *counter) count(edge bool) {
	if d.counts++; edge {
		d.edges++
	}
}

// common compares the counts in the packs that the material commonly comes in.
func (d *counter) common(t *testing.T, a *account, plan *mix.Plan, document string) {
	for i := range plan.Needs {
		n := &plan.Needs[i]
		if n.Material.ID != a.id {
			continue
		}
		for k, p := range n.Packs(units.US)[:len(a.common)] {
			d.count(a.common[k].edge)
			want := packsOf(a.need, a.common[k].pack.value)
			if p.Count != want || p.FewMany != [2]int64{want, want} {
				d.say(t, a, document, "%d (%v) packs of %s, want %d", p.Count, p.FewMany, p.Size.Text, want)
			}
		}
	}
}

func (d *counter) say(t *testing.T, a *account, document, form string, with ...any) {
	if d.wrong++; d.wrong < 6 {
		t.Errorf("%s: "+form+": the need is %s uL, the packs %v, on a boundary is %t\n%s",
			append(append([]any{a.id}, with...), a.need.FloatString(6), a.packs, a.edge, document)...)
	}
}

// short reports whether loose is more than a millilitre less than need.
func short(need, loose *big.Rat) bool {
	rest := new(big.Rat).Sub(need, loose)
	return rest.Cmp(millilitre) > 0
}

var millilitre = big.NewRat(1000, 1) // in microlitres, which are cubic millimetres

// packsOf is the least count of packs of which the need is at most a millilitre
// short.
func packsOf(need, pack *big.Rat) int64 {
	q := new(big.Rat).Quo(new(big.Rat).Sub(need, millilitre), pack)
	if q.Sign() <= 0 {
		return 0
	}
	n, rest := new(big.Int).QuoRem(q.Num(), q.Denom(), new(big.Int))
	if rest.Sign() > 0 {
		return n.Int64() + 1
	}
	return n.Int64()
}

// cheapest is the lowest cost of two offers together, by trying every count of the
// first.
func (a *account) cheapest() int64 {
	best := int64(math.MaxInt64)
	for n := range packsOf(a.need, a.packs[0]) + 1 {
		rest := new(big.Rat).Sub(a.need, new(big.Rat).Mul(a.packs[0], big.NewRat(n, 1)))
		best = min(best, n*a.cents[0]+packsOf(rest, a.packs[1])*a.cents[1])
	}
	return best
}

// account draws one material: on a boundary once in three times where the quantity
// that brings it there can be written.
func (d *counter) account(id string) *account {
	d.plain = d.IntN(3) > 0
	a := &account{id: id, need: new(big.Rat)}
	for range d.IntN(3) {
		task, takes := d.task(id, nil)
		a.tasks, a.need = append(a.tasks, task), a.need.Add(a.need, takes)
	}
	if d.IntN(4) == 0 {
		hand := d.quantity("volume", 1e5, 1e9)
		if d.IntN(3) == 0 {
			n := 1 + d.Int64N(1000)
			a.hand = strconv.FormatInt(n, 10) + " x " + hand.text
			hand.value = new(big.Rat).Mul(hand.value, big.NewRat(n, 1))
		} else {
			a.hand = hand.text
		}
		a.need.Sub(a.need, hand.value)
	}
	pack := d.pack()
	if d.plain && d.onEdge(a, pack.value) {
		a.edge = true
	} else {
		task, takes := d.task(id, nil)
		a.tasks, a.need = append(a.tasks, task), a.need.Add(a.need, takes)
	}
	n, large := packsOf(a.need, pack.value), 1e15
	if d.small {
		large = 1e10
	}
	if v, _ := a.need.Float64(); n > 900_000_000 || v > large { // more than a plan has
		return d.account(id)
	}
	d.offer(a, pack)
	if d.small && d.plain && 0 < n && n < 200 {
		d.offer(a, d.pack())
	}
	for range probes {
		a.common = append(a.common, d.probe(a))
	}
	return a
}

// probe draws a pack to count in, on a boundary where that can be written.
func (d *counter) probe(a *account) probe {
	if d.IntN(5) < 4 && a.need.Cmp(millilitre) > 0 {
		for range 4 {
			n := int64(math.Exp(d.Float64() * math.Log(3e6)))
			pack := d.beside(new(big.Rat).Set(a.need), -1)
			pack.Quo(pack, big.NewRat(n, 1))
			if text, ok := d.write("volume", pack, 1_001, 9e14); ok {
				return probe{written{text, pack}, true}
			}
		}
	}
	return probe{d.pack(), false}
}

// beside moves a volume by nothing, by a millilitre, or by very little beside either.
func (d *counter) beside(v *big.Rat, sign int64) *big.Rat {
	slack, little := new(big.Rat).Mul(millilitre, big.NewRat(sign, 1)), big.NewRat(sign, 1_000_000)
	switch d.IntN(8) {
	case 0:
		return v.Add(v, slack)
	case 1:
		return v.Add(v, slack).Add(v, little)
	case 2:
		return v.Add(v, little)
	case 3:
		return v.Sub(v, little)
	}
	return v
}

// pack draws a size: bags, steps of bulk, and now and then a very small one.
func (d *counter) pack() written {
	if d.IntN(4) == 0 {
		return d.quantity("volume", 1_400, 40_000)
	}
	return d.quantity("volume", 5e6, 2e9)
}

// offer adds an offer of a pack, which may be one that opens to it.
func (d *counter) offer(a *account, pack written) {
	cents := 1 + d.Int64N(20)
	field := `"pack": "` + pack.text + `"`
	switch d.IntN(5) {
	case 0:
		field = `"bulk": "` + pack.text + `"`
	case 1:
		field = `"pack": "1.1 mL", "opens_to": "` + pack.text + `"`
	}
	a.offers = append(a.offers, fmt.Sprintf(`{"material": "%s", %s, "price": "%d.%02d"}`, a.id, field, cents/100, cents%100))
	a.packs, a.cents = append(a.packs, pack.value), append(a.cents, cents)
}

// onEdge adds a task with which the need is so many packs to the brim, or beside
// that. ok is false where it finds none that can be written.
func (d *counter) onEdge(a *account, pack *big.Rat) (ok bool) {
	for range 15 {
		n := int64(math.Exp(d.Float64() * math.Log(3e6)))
		want := d.beside(new(big.Rat).Mul(pack, big.NewRat(n, 1)), 1)
		takes := new(big.Rat).Sub(want, a.need)
		if v, _ := takes.Float64(); v < 2_000 || v > 5e13 {
			continue
		}
		if task, _ := d.task(a.id, takes); task != "" {
			a.tasks, a.need = append(a.tasks, task), want
			return true
		}
	}
	return false
}
