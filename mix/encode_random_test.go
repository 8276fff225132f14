package mix_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// TestEncodeRandom: any job that a document can hold, written and read again, is
// equal. The jobs need not make sense together; each value is one that its field
// takes.
func TestEncodeRandom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := draw{t}.job()
		data, back := roundTrip(t, j)
		if diff := cmp.Diff(j, back, sameJob); diff != "" {
			t.Fatalf("(-made +written and read)\n%s\n%s", diff, data)
		}
		if diff := cmp.Diff(j, j.Clone(), sameJob); diff != "" {
			t.Fatalf("Clone (-of +is)\n%s", diff)
		}
	})
}

// draw makes random values of a job.
type draw struct{ *rapid.T }

func (d draw) yes(what string) bool { return rapid.Bool().Draw(d.T, what) }

func (d draw) count(least, most int64, what string) int64 {
	return rapid.Int64Range(least, most).Draw(d.T, what)
}

func (d draw) name(what string) string {
	return rapid.StringMatching(`([A-Za-z0-9é"\\][A-Za-z0-9 é"\\{}<&]{0,10}[a-z])?`).Draw(d.T, what)
}

func (d draw) id(what string) string {
	return rapid.StringMatching(`[a-z#][a-z0-9#._-]{0,8}`).Draw(d.T, what)
}

func (d draw) length(what string) units.Length {
	return units.Length(d.count(1, int64(units.MaxLength), what))
}

func (d draw) lengths(n int, what string) (list []units.Length) {
	for range n {
		list = append(list, d.length(what))
	}
	return list
}

func (d draw) volume(what string) units.Volume {
	return units.Volume(d.count(int64(2*catalog.Slack), int64(units.MaxVolume), what))
}

// mass stays below a million tonnes: from there on one to the microgram has more
// digits than a quantity may be typed with, and Encode says so. So has an area of a
// square kilometre and more, to the square micrometre.
func (d draw) mass(what string) units.Mass {
	return units.Mass(d.count(1, int64(999_999_999*units.Kilogram), what))
}

func (d draw) money(what string) units.Money {
	return units.Money(d.count(0, int64(units.MaxMoney), what))
}

func (d draw) price(what string) *units.Money {
	if d.yes(what) {
		return nil
	}
	m := d.money(what)
	return &m
}

// share is more than nothing and at most most hundredths.
func (d draw) share(most int64, what string) units.Ratio {
	den := d.count(1, 1_000_000, what)
	num := d.count(1, 1_000_000, what)
	r, err := units.NewRatio(num, den)
	if err != nil || units.Percent(uint16(most)).Less(r) {
		return units.Percent(uint16(d.count(1, most, what)))
	}
	return r
}

func (d draw) loss(what string) *units.Ratio {
	if d.yes(what) {
		return nil
	}
	r := units.Percent(uint16(d.count(0, 95, what)))
	return &r
}

// size is a volume in words that say it, or in none.
func (d draw) size(what string) catalog.Size {
	if d.yes(what) {
		return catalog.Size{Text: "1 1/2 cu ft", Volume: 3 * units.CubicFoot / 2}
	}
	v := d.volume(what)
	return catalog.Size{Text: v.String(), Volume: v}
}

func list[T any](d draw, most int, what string, one func() T) (list []T) {
	for range d.count(0, int64(most), what) {
		list = append(list, one())
	}
	return list
}

func (d draw) job() *mix.Job {
	j := &mix.Job{
		Name:       d.name("name"),
		Measure:    units.Measure(d.count(0, 2, "measure")),
		Currency:   rapid.SampledFrom([]string{"", "$", "EUR", "€"}).Draw(d.T, "currency"),
		Materials:  list(d, 2, "materials", d.material),
		Containers: list(d, 2, "containers", d.class),
		Mixes:      list(d, 2, "mixes", d.mix),
		Tasks:      list(d, 4, "tasks", d.task),
		Offers:     list(d, 3, "offers", d.offer),
		Aim:        yard.Aim(d.count(0, 2, "aim")),
	}
	for _, id := range []string{"peat", "perlite"} {
		if d.yes("stock") {
			j.OnHand = append(j.OnHand, d.stock(id))
		}
	}
	if d.yes("haul") {
		j.Haul = yard.Haul{Payload: d.mass("payload"), Placard: d.mass("placard"), People: d.mass("people"),
			Room: d.volume("room"), TripCost: d.money("trip")}
	}
	if d.yes("tax") {
		j.Tax = d.share(100, "tax")
	}
	if d.yes("delivery") {
		j.Delivery = &yard.Delivery{Fee: d.money("fee"), Capacity: d.volume("capacity"), Payload: d.mass("payload")}
	}
	if d.yes("yard") {
		j.Yard = d.yard()
	}
	return j
}

func (d draw) yard() *yard.Yard {
	y := &yard.Yard{
		Without: list(d, 2, "without", func() string { return d.id("offer") + ":2 cu ft" }),
		Bought:  list(d, 2, "bought", func() yard.Bought { return yard.Bought{Offer: d.id("offer"), Count: d.count(1, 1e9, "count")} }),
	}
	if d.yes("only") {
		only := d.count(0, 1e9, "only")
		y.Only = &only
	}
	return y
}

func (d draw) stock(id string) yard.OnHand {
	if d.yes("packs") {
		return yard.OnHand{Material: id, Packs: d.count(1, 1e9, "packs"), Size: d.size("size")}
	}
	return yard.OnHand{Material: id, Volume: units.Volume(d.count(0, int64(units.MaxVolume), "volume"))}
}

func (d draw) source() catalog.Source {
	if text := d.name("source"); text != "" {
		return catalog.Source{Text: message.Text(text), Kind: "job"}
	}
	return catalog.Source{}
}

func (d draw) material() catalog.Material {
	m := catalog.Material{
		ID: d.id("id"), Name: d.name("name"), Grade: d.name("grade"), Source: d.source(), Settle: d.loss("settle"), Bulk: d.yes("bulk"),
		Packs:  list(d, 2, "packs", func() catalog.Size { return d.size("pack") }),
		Bales:  list(d, 2, "bales", func() catalog.Size { return d.size("bale") }),
		Traits: list(d, 2, "traits", func() string { return rapid.SampledFrom([]string{"dust", "sand", "woody"}).Draw(d.T, "trait") }),
	}
	if d.yes("heavy") {
		m.Dry, m.Wet = units.Density(d.count(1, 1e9, "dry")), units.Density(d.count(1, 1e9, "wet"))
	}
	if d.yes("opens") {
		m.OpensLow, _ = units.NewRatio(d.count(100, 200, "low"), 100)
		m.OpensHigh, _ = units.NewRatio(d.count(200, 1000, "high"), 100)
	}
	return m
}

func (d draw) class() catalog.Class {
	return catalog.Class{ID: d.id("id"), Name: d.name("name"), Source: d.source(), Cells: d.count(0, 500, "cells"),
		Holds: units.Range{Low: d.volume("low"), Plan: d.volume("holds"), High: d.volume("high")}}
}

func (d draw) mix() catalog.Mix {
	m := catalog.Mix{ID: d.id("id"), Name: d.name("name"), Source: d.source(), BlendLoss: d.loss("blend loss"),
		Settle: d.loss("settle")}
	for _, of := range []string{"bark-fines", "peat", "perlite"} {
		if d.yes(of) {
			m.Parts = append(m.Parts, catalog.Part{Of: of, Num: d.count(1, 99, "num"), Den: 1})
		}
	}
	return m
}

func (d draw) offer() yard.Offer {
	o := yard.Offer{
		Material: d.id("material"), Price: d.price("price"), Deposit: d.money("deposit"),
		Least: d.count(0, 1e9, "least"), Deliver: d.yes("deliver"),
		Breaks: list(d, 2, "breaks", func() yard.Break { return yard.Break{From: d.count(2, 1e9, "from"), Price: d.price("each")} }),
	}
	if d.yes("pack") {
		o.Pack, o.OpensTo, o.Weight = d.size("pack"), d.volume("opens to"), d.mass("weight")
	} else {
		o.Bulk = d.size("bulk")
	}
	if d.yes("stock") {
		stock := d.count(0, 1e9, "stock")
		o.Stock = &stock
	}
	return o
}

func (d draw) task() task.Task {
	t := task.Task{Name: d.name("name"), Settle: d.loss("settle"), BlendLoss: d.loss("blend loss")}
	if d.yes("mix") {
		t.Mix = rapid.SampledFrom([]string{"potting", "bark-fines 3, peat 1"}).Draw(d.T, "mix")
	} else {
		t.Material = d.id("material")
	}
	if d.yes("spare") {
		t.Spare = d.share(1000, "spare")
	}
	switch d.count(0, 3, "kind") {
	case 0:
		t.Work = &task.Fill{Containers: list(d, 3, "containers", d.container)}
	case 1:
		t.Work = d.amend()
	case 2:
		t.Work = d.backfill()
	default:
		t.Work = d.cover()
	}
	return t
}

func (d draw) container() task.Container {
	k := task.Container{Count: d.count(1, 1e9, "count"), Cells: d.count(0, 500, "cells")}
	switch d.count(0, 5, "form") {
	case 0:
		k.Size = d.id("size")
	case 1:
		k.Holds = d.size("holds")
	case 2:
		k.Brim, k.Top, k.BelowRim = d.size("brim"), d.length("top"), d.length("below rim")
	case 3:
		k.Box, k.BelowRim = d.lengths(3, "box"), d.length("below rim")
	case 4:
		k.Across, k.Height, k.Shape = d.length("across"), d.length("height"), "square"
	default:
		k.Top, k.Bottom, k.Height = d.length("top"), d.length("bottom"), d.length("height")
	}
	if d.yes("ball") {
		k.Ball = d.ball()
	}
	return k
}

// ball is one as it reads back: with its words.
func (d draw) ball() *task.Ball {
	text := rapid.SampledFrom([]string{"#1", "2.8 L", "6 in x 6 in"}).Draw(d.T, "ball")
	b, err := task.ParseBall(text)
	if err != nil {
		d.Fatal(err)
	}
	return &b
}

func (d draw) amend() *task.Amend {
	a := &task.Amend{Area: d.area(2), Soil: rapid.SampledFrom([]string{"", "clay", "loam", "sandy"}).Draw(d.T, "soil")}
	if d.yes("layer") {
		a.Layer, a.Into = d.length("layer"), d.length("into")
	} else {
		a.Share, a.Over = d.share(95, "share"), d.length("over")
	}
	return a
}

func (d draw) backfill() *task.Backfill {
	f := &task.Backfill{Holes: d.count(1, 1e9, "holes"), Width: d.length("width"), Depth: d.length("depth"),
		Ball: d.ball(), AboveGrade: d.length("above")}
	if d.yes("share") {
		f.Share = d.share(100, "share")
	}
	return f
}

func (d draw) cover() *task.Cover {
	v := &task.Cover{Area: d.area(2), Layer: d.length("layer")}
	if d.yes("stems") {
		v.Stems = &task.Stems{Count: d.count(1, 1e9, "stems"), Clear: d.length("clear")}
	}
	if d.yes("sheet") {
		v.Sheet = &task.Sheet{Size: d.lengths(2, "sheet"), Overlap: d.length("overlap")}
	}
	return v
}

// area is typed, or an object with other areas in it, as deep as is said.
func (d draw) area(deep int) ground.Area {
	if d.yes("typed") {
		text := rapid.SampledFrom([]string{"60 ft x 4 ft", "circle 14 ft", "240 sq ft", "ring 2 m x 1 m",
			"triangle 3 m x 4 m x 5 m"}).Draw(d.T, "area")
		a, err := ground.ParseArea(text)
		if err != nil {
			d.Fatal(err)
		}
		return a
	}
	a := ground.Area{Count: d.count(0, 9, "count")}
	switch d.count(0, 4, "shape") {
	case 0:
		a.Shape, a.Plain = "plain", units.Area(d.count(1, int64(units.SquareMetre)*999_999, "plain")) // as mass does
	case 1:
		a.Shape, a.Strip = "strip", d.strip()
	case 2:
		a.Shape = "corners"
		for range d.count(0, 4, "corners") {
			a.Corners = append(a.Corners, [2]units.Length{units.Length(d.count(-1e12, 1e12, "x")),
				units.Length(d.count(-1e12, 1e12, "y"))})
		}
	case 3:
		a.Shape, a.Sides = "circle", d.lengths(1, "diameter")
	default:
		a.Shape, a.Sides = "rectangle", d.lengths(2, "sides")
	}
	if deep > 0 {
		a.Plus = list(d, 1, "plus", func() ground.Area { return d.area(deep - 1) })
		a.Less = list(d, 1, "less", func() ground.Area { return d.area(deep - 1) })
	}
	return a
}

func (d draw) strip() *ground.Strip {
	s := &ground.Strip{Along: d.lengths(2, "along"),
		Width: d.length("width"), Gaps: d.lengths(int(d.count(0, 2, "gaps")), "gap"),
		Edge: rapid.SampledFrom([]string{"", "centre", "outer", "inner"}).Draw(d.T, "edge")}
	if d.yes("corners") {
		corners := d.count(0, 9, "corners")
		s.Corners = &corners
	}
	return s
}
