package picture_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/ground"
	barrowjson "example.org/barrow/mix/json"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/picture"
	"example.org/barrow/mix/task"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

var update = flag.Bool("update", false, "rewrite the goldens")

// reporter is what tests and properties have in common.
type reporter interface {
	Helper()
	Errorf(format string, args ...any)
	Fatalf(format string, args ...any)
}

// all returns a plan's drawings, without those of costs, which take long to
// work out.
func all(p *mix.Plan) []picture.Drawing {
	return append(append(picture.Tasks(p), picture.Order(p)...), picture.Trips(p)...)
}

// plan works out a document.
func plan(t reporter, doc []byte) *mix.Plan {
	t.Helper()
	p, err := mix.PlanDocument(doc)
	if err != nil {
		t.Fatalf("%.200s: %v", doc, err)
	}
	return p
}

// box is a rectangle that something takes up.
type box struct{ l, t, r, b float64 }

func (a box) with(x, y float64) box {
	return box{min(a.l, x), min(a.t, y), max(a.r, x), max(a.b, y)}
}

// walk follows a path of the commands that drawings use and gives the box of
// all its points.
func walk(t reporter, d string) (b box, points [][2]float64) {
	t.Helper()
	b = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	var x, y float64
	var command byte
	for i := 0; i < len(d); {
		if unicode.IsLetter(rune(d[i])) {
			command = d[i]
			i++
		}
		if command == 'Z' || command == 'z' {
			continue
		}
		want := 2
		switch command {
		case 'H', 'h', 'V', 'v':
			want = 1
		case 'q':
			want = 4
		}
		var n []float64
		for len(n) < want {
			for i < len(d) && d[i] == ' ' {
				i++
			}
			j := i
			for j < len(d) && (d[j] == '.' || d[j] >= '0' && d[j] <= '9' || d[j] == '-' && j == i) {
				j++
			}
			f, err := strconv.ParseFloat(d[i:j], 64)
			if err != nil {
				t.Fatalf("path %q at %d: %v", d, i, err)
			}
			n, i = append(n, f), j
		}
		switch command {
		case 'M', 'L':
			x, y = n[0], n[1]
		case 'l':
			x, y = x+n[0], y+n[1]
		case 'H':
			x = n[0]
		case 'h':
			x += n[0]
		case 'V':
			y = n[0]
		case 'v':
			y += n[0]
		case 'q': // its control point bounds it
			b = b.with(x+n[0], y+n[1])
			x, y = x+n[2], y+n[3]
		default:
			t.Fatalf("path %q has the command %c", d, command)
		}
		b, points = b.with(x, y), append(points, [2]float64{x, y})
	}
	return b, points
}

// extent is what a shape takes up.
func extent(t reporter, s *picture.Shape) box {
	t.Helper()
	switch s.Is {
	case "path":
		b, _ := walk(t, s.D)
		return b
	case "text":
		l, r := picture.Extent(s)
		return box{l, s.Y - 11, r, s.Y + 4}
	}
	return box{min(s.X, s.X+s.W), min(s.Y, s.Y+s.H), max(s.X, s.X+s.W), max(s.Y, s.Y+s.H)}
}

// check checks what holds for every drawing.
func check(t reporter, d *picture.Drawing) {
	t.Helper()
	if d.Description == "" || d.Kind == "" || d.Width != 320 || len(d.Shapes) > 600 {
		t.Errorf("a drawing of kind %q, %v wide, with %d shapes: %s", d.Kind, d.Width, len(d.Shapes), d.Description)
	}
	const eps = .011
	var texts []int
	for i := range d.Shapes {
		s := &d.Shapes[i]
		b := extent(t, s)
		if !(b.l >= -eps && b.t >= -eps && b.r <= d.Width+eps && b.b <= d.Height+eps) {
			t.Errorf("%s: %+v at %v is outside of %v x %v", d.Kind, *s, b, d.Width, d.Height)
		}
		if s.Class == "" || s.Is == "rect" && (s.W < 0 || s.H < 0) || len(s.D) > 20_000 {
			t.Errorf("%s: %+v", d.Kind, *s)
		}
		if s.Is != "text" {
			continue
		}
		if strings.TrimSpace(s.Text) == "" {
			t.Errorf("%s: an empty text", d.Kind)
		}
		for _, k := range texts {
			o := extent(t, &d.Shapes[k])
			if b.l < o.r-eps && o.l < b.r-eps && b.t < o.b-eps && o.t < b.b-eps {
				t.Errorf("%s: %q lies over %q", d.Kind, s.Text, d.Shapes[k].Text)
			}
		}
		texts = append(texts, i)
	}
	wellFormed(t, d)
}

// wellFormed reads the drawing's document back: its texts come out as they are
// drawn.
func wellFormed(t reporter, d *picture.Drawing) {
	t.Helper()
	doc := picture.SVG(d, picture.Style)
	dec := xml.NewDecoder(bytes.NewReader(doc))
	var texts []string
	in := ""
	shapes := 0
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v in\n%s", d.Kind, err, doc)
		}
		switch v := token.(type) {
		case xml.StartElement:
			in = v.Name.Local
			if slices.Contains([]string{"rect", "line", "path", "text"}, in) {
				shapes++
			} else if !slices.Contains([]string{"svg", "title", "desc", "style"}, in) {
				t.Fatalf("%s: an element %q", d.Kind, in)
			}
			if in == "text" {
				texts = append(texts, "")
			}
		case xml.EndElement:
			in = ""
		case xml.CharData:
			if in == "text" {
				texts[len(texts)-1] += string(v)
			}
		}
	}
	var want []string
	for i := range d.Shapes {
		if d.Shapes[i].Is == "text" {
			want = append(want, d.Shapes[i].Text)
		}
	}
	if diff := cmp.Diff(want, texts); diff != "" || shapes != len(d.Shapes) {
		t.Errorf("%s: %d shapes for %d, texts %s", d.Kind, shapes, len(d.Shapes), diff)
	}
}

// lengths are from a millimetre to 300 m, as often short as long.
func lengths() *rapid.Generator[units.Length] {
	return rapid.Custom(func(t *rapid.T) units.Length {
		return units.Length(math.Exp(rapid.Float64Range(math.Log(1e6), math.Log(3e11)).Draw(t, "log")))
	})
}

// handy are lengths as beds, pots and holes have them.
func handy() *rapid.Generator[units.Length] {
	return rapid.Map(rapid.Int64Range(1, 96), func(n int64) units.Length { return units.Length(n) * units.Inch / 2 })
}

func anyLength() *rapid.Generator[units.Length] { return rapid.OneOf(handy(), handy(), lengths()) }

var names = rapid.SampledFrom([]string{
	"", "Pot on", "A bed with a name that goes on and on, past every edge of the paper it is on",
	`<script>alert("x")</script>&amp;]]>`, "Schöne Erde für Bäume", "非常に長い名前の花壇でどこまでも続きます",
	strings.Repeat("W", 57), "\u202egnitfihs \u0301\u0301\u0301 x\x00y\xff",
})

var measures = rapid.SampledFrom([]units.Measure{units.US, units.Metric, units.Both})

func drawBall(t *rapid.T) *task.Ball {
	switch rapid.IntRange(0, 2).Draw(t, "ball") {
	case 0:
		return &task.Ball{Size: "#1"}
	case 1:
		return &task.Ball{Volume: units.Volume(rapid.Int64Range(1, 100_000).Draw(t, "volume")) * units.Millilitre}
	}
	return &task.Ball{Across: anyLength().Draw(t, "across"), Height: anyLength().Draw(t, "height")}
}

func drawLine(t *rapid.T) (k task.Container) {
	k.Count = rapid.SampledFrom([]int64{1, 64, 1_000_000}).Draw(t, "count")
	switch rapid.IntRange(0, 4).Draw(t, "form") {
	case 0:
		k.Size = "#1"
	case 1:
		k.Holds.Volume = units.Volume(rapid.Int64Range(1, 100_000).Draw(t, "holds")) * units.Millilitre
	case 2:
		k.Box = []units.Length{anyLength().Draw(t, "l"), anyLength().Draw(t, "w"), anyLength().Draw(t, "d")}
		k.BelowRim = k.Box[2] / units.Length(rapid.IntRange(2, 9).Draw(t, "rim"))
	case 3:
		k.Across, k.Height = anyLength().Draw(t, "across"), anyLength().Draw(t, "height")
	default:
		k.Top, k.Bottom = anyLength().Draw(t, "top"), anyLength().Draw(t, "bottom")
		k.Height = anyLength().Draw(t, "height")
		k.BelowRim = k.Height / units.Length(rapid.IntRange(2, 9).Draw(t, "rim"))
	}
	if k.Size == "" && rapid.Bool().Draw(t, "tray") {
		k.Cells = rapid.SampledFrom([]int64{2, 72, 1_000_000}).Draw(t, "cells")
	}
	if rapid.Bool().Draw(t, "with a ball") {
		k.Ball = drawBall(t)
	}
	return k
}

func drawTask(t *rapid.T) task.Task {
	k := task.Task{Name: names.Draw(t, "name"),
		Material: rapid.SampledFrom([]string{"own", "bark-mulch"}).Draw(t, "material")}
	area := ground.Area{Shape: "rectangle", Sides: []units.Length{20 * units.Metre, 2 * units.Metre}}
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		k.Work = &task.Fill{Containers: rapid.SliceOfN(rapid.Custom(drawLine), 1, 10).Draw(t, "lines")}
	case 1:
		amend := &task.Amend{Area: area, Layer: anyLength().Draw(t, "layer"), Over: anyLength().Draw(t, "over")}
		if rapid.Bool().Draw(t, "into") {
			amend.Into, amend.Over = amend.Over, 0
		}
		if rapid.Bool().Draw(t, "settles") {
			r := units.Percent(rapid.Uint16Range(1, 95).Draw(t, "settle"))
			k.Settle = &r
		}
		k.Work = amend
	case 2:
		cover := &task.Cover{Area: area, Layer: anyLength().Draw(t, "layer")}
		if rapid.Bool().Draw(t, "stems") {
			cover.Stems = &task.Stems{Count: 1, Clear: anyLength().Draw(t, "clear")}
		}
		if rapid.Bool().Draw(t, "sheet") {
			cover.Sheet = &task.Sheet{Size: []units.Length{units.Metre, units.Metre}}
		}
		k.Work = cover
	default:
		fill := &task.Backfill{Holes: rapid.SampledFrom([]int64{1, 64, 1000}).Draw(t, "holes"),
			Width: anyLength().Draw(t, "width"), Depth: anyLength().Draw(t, "depth"), Ball: drawBall(t),
			AboveGrade: rapid.SampledFrom([]units.Length{0, units.Inch, 30 * units.Inch}).Draw(t, "above")}
		if rapid.Bool().Draw(t, "mixed") {
			fill.Share = units.Percent(25)
		} else {
			k.Material = ""
		}
		k.Work = fill
	}
	return k
}

func drawOffer(t *rapid.T) (o yard.Offer) {
	o.Material = rapid.SampledFrom([]string{"own", "bark-mulch"}).Draw(t, "material")
	size := catalog.Size{Volume: units.Volume(rapid.Int64Range(2, 60).Draw(t, "half feet")) * units.CubicFoot / 2}
	if rapid.Bool().Draw(t, "bulk") {
		o.Bulk = size
	} else {
		o.Pack = size
		if rapid.Bool().Draw(t, "bale") {
			o.OpensTo = size.Volume * 2
		}
	}
	price := units.Money(rapid.Int64Range(1, 20_000).Draw(t, "price"))
	o.Price = &price
	if rapid.Bool().Draw(t, "weighed") {
		o.Weight = 10 * units.Kilogram
	}
	o.Deliver = rapid.Bool().Draw(t, "delivered")
	return o
}

func drawHaul(t *rapid.T) (h yard.Haul) {
	if rapid.Bool().Draw(t, "payload") {
		h.Payload = 2000 * units.Kilogram
	}
	if rapid.Bool().Draw(t, "room") {
		h.Room = 2 * units.CubicMetre
	}
	h.TripCost = units.Money(rapid.Int64Range(0, 5000).Draw(t, "trip"))
	return h
}

// spanish is the page's other language, whose sentences are longer.
func spanish(t reporter) *lang.Language {
	t.Helper()
	file, err := os.ReadFile(filepath.Join("..", "..", "web", "text", "es.json"))
	if err != nil {
		t.Fatalf("%v", err)
	}
	es, err := lang.Parse(file)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return es.Comma(true)
}

func TestInSpanish(t *testing.T) {
	j, err := mix.Decode(mix.Sample())
	if err != nil {
		t.Fatal(err)
	}
	j.Language = spanish(t)
	p, err := j.Plan()
	if err != nil {
		t.Fatal(err)
	}
	list := append(all(p), picture.Costs(p)...)
	said := ""
	for i := range list {
		check(t, &list[i])
		said += list[i].Description + "\n"
	}
	for _, want := range []string{"Antes: 3", "2 bolsas de 2", "Lo que lleva cada viaje", "cepellón #1"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
}

// drawPlan draws jobs until one is sound.
func drawPlan(t *rapid.T) *mix.Plan {
	some := names.Filter(func(s string) bool { return s != "" })
	own := catalog.Material{ID: "own", Name: some.Draw(t, "material name")}
	es := spanish(t)
	for range 200 {
		j := mix.Job{Language: rapid.SampledFrom([]*lang.Language{nil, es}).Draw(t, "language"), Name: "x",
			Measure: measures.Draw(t, "measure"), Materials: []catalog.Material{own},
			Currency: rapid.SampledFrom([]string{"", "$", "a currency"}).Draw(t, "currency"),
			Tasks:    rapid.SliceOfN(rapid.Custom(drawTask), 1, 2).Draw(t, "tasks"),
			Offers:   rapid.SliceOfN(rapid.Custom(drawOffer), 0, 5).Draw(t, "offers"),
			Haul:     drawHaul(t),
			Delivery: &yard.Delivery{Fee: 3000, Capacity: 8 * units.CubicMetre, Payload: 5000 * units.Kilogram}}
		if p, err := j.Plan(); err == nil {
			return p
		}
	}
	t.Fatalf("no sound job in 200")
	return nil
}

func TestEveryDrawingFits(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		list := all(p)
		if rapid.IntRange(0, 7).Draw(t, "with costs") == 0 {
			list = append(list, picture.Costs(p)...)
		}
		if len(list) == 0 {
			t.Errorf("no drawing")
		}
		for i := range list {
			seen[list[i].Kind]++
			check(t, &list[i])
		}
	})
	for _, kind := range []string{"bed", "mulch", "pots", "hole", "heap", "trips"} {
		if seen[kind] == 0 {
			t.Errorf("no %s was drawn in %v", kind, seen)
		}
	}
}

// near reports whether a : b is c : d, where a and b are drawn, each off by at
// most e.
func near(a, b, c, d, e float64) bool {
	return math.Abs(a*d-b*c) <= e*(c+d)
}

// first is the first shape of a class.
func first(d *picture.Drawing, is, class string) *picture.Shape {
	for i := range d.Shapes {
		if d.Shapes[i].Is == is && d.Shapes[i].Class == class {
			return &d.Shapes[i]
		}
	}
	return nil
}

// TestToScale checks that drawings that claim to be to scale are, for any
// measures.
func TestToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		list := picture.Tasks(p)
		for i := range list {
			d := &list[i]
			switch d.Kind {
			case "bed":
				b := p.Tasks[i].Result.(*task.Bed)
				layer, native := first(d, "rect", "layer"), first(d, "rect", "soil loose")
				mixed := first(d, "rect", "mix")
				if !near(layer.H, native.H, float64(b.Layer), float64(b.Native), .011) ||
					!near(mixed.H, layer.H, float64(b.Rise+b.Native), float64(b.Layer), .021) {
					t.Errorf("%+v is drawn %v, %v and %v high", b, layer.H, native.H, mixed.H)
				}
			case "mulch":
				b := p.Tasks[i].Result.(*task.Mulch)
				layer := first(d, "rect", "mulch")
				bare := 160 - (layer.X + layer.W)
				if b.Clear > 0 && !near(layer.H, bare, float64(b.Layer), float64(b.Clear), .021) {
					t.Errorf("%+v is drawn %v high and %v clear", b, layer.H, bare)
				}
			case "hole":
				holeToScale(t, p.Tasks[i].Result.(*task.Holes), d)
			case "pots":
				potsToScale(t, p, i, d)
			}
		}
	})
}

func holeToScale(t reporter, h *task.Holes, d *picture.Drawing) {
	hole, ball := first(d, "rect", "backfill"), first(d, "rect", "ball")
	if ball == nil {
		ball = first(d, "rect", "ball guess")
	}
	if !near(hole.W, hole.H, float64(h.Width), float64(h.Depth), .011) ||
		!near(ball.H, hole.W, float64(h.Above+h.Below), float64(h.Width), .021) ||
		h.Across > 0 && !near(ball.W, hole.W, float64(h.Across), float64(h.Width), .011) {
		t.Errorf("%+v: hole %v x %v, ball %v x %v", h, hole.W, hole.H, ball.W, ball.H)
	}
	// The heap is a cone of what one hole leaves, at the hole's scale.
	b, _ := walk(t, first(d, "path", "soil heap").D)
	scale := hole.W / float64(h.Width) * 1e8 // to a decimetre, by the longer side
	if hole.H > hole.W {
		scale = hole.H / float64(h.Depth) * 1e8
	}
	r, high := (b.r-b.l)/2/scale, (b.b-b.t)/scale
	one := h.Left.Plan.Litres() / float64(h.Count)
	if b.r-b.l > 5 && hole.W+hole.H > 20 && math.Abs(math.Pi*r*r*high/3/one-1) > .02 {
		t.Errorf("a heap of %v L for %v L", math.Pi*r*r*high/3, one)
	}
}

func potsToScale(t reporter, p *mix.Plan, i int, d *picture.Drawing) {
	lines := p.Tasks[i].Result.(*task.Pots).Lines
	lines = lines[:min(len(lines), 8)]
	shapes := d.Shapes
	for k := range lines {
		l := &lines[k]
		cells := int(min(l.Cells, 5))
		for range cells { // the next pot, and the mix before it
			n := slices.IndexFunc(shapes, func(s picture.Shape) bool { return strings.HasPrefix(s.Class, "pot") })
			m := slices.IndexFunc(shapes, func(s picture.Shape) bool { return s.Class == "mix" })
			if n < 0 || m < 0 {
				t.Fatalf("no pot for line %d", k)
			}
			pot, fill := shapes[n], shapes[m]
			shapes = shapes[n+1:]
			_, at := walk(t, pot.D)
			b, _ := walk(t, pot.D)
			f, _ := walk(t, fill.D)
			guessed := l.ByClass() || l.Line.Holds.Volume > 0
			if guessed != strings.Contains(pot.Class, "guess") {
				t.Errorf("%s has the class %q", l.Label(p.Printer()), pot.Class)
			}
			if guessed {
				if !strings.Contains(d.Description, p.Language.Print("Only its volume is known: not to scale.")) {
					t.Errorf("%q does not say that it is not to scale", d.Description)
				}
				continue
			}
			top, bottom, height := l.Line.Top, l.Line.Bottom, l.Line.Height
			switch {
			case len(l.Line.Box) == 3:
				top, bottom, height = l.Line.Box[0], l.Line.Box[0], l.Line.Box[2]
			case l.Line.Across > 0:
				top, bottom = l.Line.Across, l.Line.Across
			}
			if !near(at[3][0]-at[0][0], b.b-b.t, float64(top), float64(height), .021) ||
				!near(at[2][0]-at[1][0], b.b-b.t, float64(bottom), float64(height), .021) ||
				!near(f.b-f.t, b.b-b.t, float64(l.Depth()), float64(height), .021) {
				t.Errorf("%s: %v and %v deep for %v", l.Label(p.Printer()), at, f.b-f.t, l.Depth())
			}
		}
	}
}

// areas are those of the closed parts of a path.
func areas(t reporter, d string) (list []float64) {
	t.Helper()
	for part := range strings.SplitSeq(d[1:], "M") {
		if !strings.HasSuffix(part, "Z") {
			continue
		}
		_, at := walk(t, "M"+part)
		sum := 0.0
		for i := range at {
			next := at[(i+1)%len(at)]
			sum += at[i][0]*next[1] - next[0]*at[i][1]
		}
		list = append(list, math.Abs(sum)/2)
	}
	return list
}

// TestHeapsToScale checks that piles and packs have areas in proportion to
// their volumes.
func TestHeapsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		var needs []yard.Need
		for i := range p.Needs {
			n := &p.Needs[i]
			ordered := slices.ContainsFunc(p.Lines, func(l yard.Line) bool { return l.Material == n.Material })
			if n.Buy.Plan > catalog.Slack && (ordered || len(n.Packs(p.Measure)) > 0) {
				needs = append(needs, p.Needs[i])
			}
		}
		for i, d := range picture.Order(p) {
			n := &needs[i]
			heap := areas(t, first(&d, "path", "heap").D)[0]
			other := func(l yard.Line) bool { return l.Material != n.Material }
			ordered := slices.DeleteFunc(slices.Clone(p.Lines), other)
			for i := range ordered {
				l := &ordered[i]
				class := "bag"
				if l.Offer.Bulk.Volume > 0 {
					class = "bucket"
				} else if l.Each.Plan > l.Offer.Pack.Volume {
					class = "bale"
				}
				want := heap * l.Offer.Size().Volume.Litres() * float64(l.Count) / n.Buy.Plan.Litres()
				ok := false
				for k := range d.Shapes {
					if s := &d.Shapes[k]; s.Class == class {
						got, slack := 0.0, 0.0
						for _, a := range areas(t, s.D) {
							got += a
							slack += .02 * math.Sqrt(a*2) * 2
						}
						ok = ok || math.Abs(got-want) < slack+.02*math.Sqrt(heap)*want/heap+.01
					}
				}
				if !ok && i < 4 {
					t.Errorf("%d x %v for %v: no area of %v beside %v in %+v",
						l.Count, l.Offer.Size(), n.Buy.Plan, want, heap, d)
				}
			}
		}
	})
}

// TestTripsToScale checks that bars have the same proportion to their limit as
// the loads.
func TestTripsToScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		list := picture.Trips(p)
		if len(p.Trips) == 0 || p.Haul.Limit() == 0 && p.Haul.Room == 0 {
			return
		}
		var bars, masses, rooms []float64
		for _, s := range list[0].Shapes {
			switch s.Class {
			case "bar":
				bars = append(bars, s.W)
			case "mass":
				masses = append(masses, s.W)
			case "mass wet":
				masses[len(masses)-1] += s.W
			case "room":
				rooms = append(rooms, s.W)
			}
		}
		for i := range p.Trips[:min(len(p.Trips), 8)] {
			trip := &p.Trips[i]
			if limit := p.Haul.Limit(); limit > 0 && trip.Mass[1] > 0 {
				if want := bars[0] * float64(trip.Mass[1]) / float64(limit); math.Abs(masses[0]-want) > .021 {
					t.Errorf("%v of %v is drawn %v of %v", trip.Mass, limit, masses[0], bars[0])
				}
				masses = masses[1:]
			}
			if room := p.Haul.Room; room > 0 {
				if want := bars[0] * float64(trip.Packed) / float64(room); math.Abs(rooms[0]-want) > .011 {
					t.Errorf("%v of %v is drawn %v of %v", trip.Packed, room, rooms[0], bars[0])
				}
				rooms = rooms[1:]
			}
		}
	})
}

// TestCostsToScale checks that every point of the plan is on its curve, and
// that the marks are where they should be.
func TestCostsToScale(t *testing.T) {
	p := plan(t, mix.Sample())
	crossings := p.Crossings()
	list := picture.Costs(p)
	if len(crossings) == 0 || len(list) != len(crossings) {
		t.Fatalf("%d drawings of %d", len(list), len(crossings))
	}
	for i := range list {
		d, c := &list[i], &crossings[i]
		axis, _ := walk(t, first(d, "path", "axis").D)
		top := c.Points[len(c.Points)-1].Volume
		highest := units.Money(0)
		for _, at := range c.Points {
			highest = max(highest, at.Bags, at.Bulk)
		}
		x := func(v units.Volume) float64 { return axis.l + (axis.r-axis.l)*float64(v)/float64(top) }
		if need := first(d, "line", "need"); math.Abs(need.X-x(c.Need)) > .011 {
			t.Errorf("%v is marked at %v", c.Need, need.X)
		}
		if from := first(d, "line", "crossing"); math.Abs(from.X-x(c.From)) > .011 {
			t.Errorf("%v is marked at %v", c.From, from.X)
		}
		var thick []picture.Shape
		for _, s := range d.Shapes {
			if s.Class == "cheaper" {
				thick = append(thick, s)
			}
		}
		for _, s := range c.Stretches {
			if s.Cheaper != yard.CheaperBulk {
				continue
			}
			if len(thick) == 0 || math.Abs(thick[0].X-x(s.Over)) > .011 || math.Abs(thick[0].X+thick[0].W-x(s.UpTo)) > .011 {
				t.Errorf("%v is drawn as %v", s, thick)
				break
			}
			thick = thick[1:]
		}
		for class, of := range map[string]func(yard.CrossingPoint) units.Money{
			"bags": func(p yard.CrossingPoint) units.Money { return p.Bags },
			"bulk": func(p yard.CrossingPoint) units.Money { return p.Bulk },
		} {
			_, drawn := walk(t, first(d, "path", class).D)
			for _, at := range c.Points {
				y := axis.b - (axis.b-axis.t)*float64(of(at))/float64(highest)
				if !slices.ContainsFunc(drawn, func(q [2]float64) bool {
					return math.Abs(q[0]-x(at.Volume)) < .62 && math.Abs(q[1]-y) < .62
				}) {
					t.Errorf("%s at %v for %v is not on its curve", class, at.Volume, of(at))
				}
			}
		}
	}
}

// shapeJSON is a shape as encoding/json reads it.
type shapeJSON struct {
	Is                  string
	X, Y, Width, Height float64
	X1, Y1, X2, Y2      float64
	D, Text, Class      string
	Anchor              string `json:"text-anchor"`
}

func TestWrite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := all(drawPlan(t))
		var w barrowjson.Writer
		picture.Write(&w, list)
		var got []struct {
			Kind, Title, Desc string
			Task              *int
			Width, Height     float64
			Shapes            []shapeJSON
		}
		dec := json.NewDecoder(bytes.NewReader(w.Bytes()))
		dec.DisallowUnknownFields()
		if err := dec.Decode(&got); err != nil {
			t.Fatalf("%v in %s", err, w.Bytes())
		}
		if len(got) != len(list) {
			t.Fatalf("%d drawings for %d", len(got), len(list))
		}
		for i := range list {
			d, g := &list[i], got[i]
			if g.Kind != d.Kind || g.Width != d.Width || math.Abs(g.Height-d.Height) > .006 ||
				(g.Task == nil) != (d.Task < 0) || g.Task != nil && *g.Task != d.Task || g.Desc == "" {
				t.Errorf("%+v for %+v", g, d)
			}
			for k, s := range d.Shapes {
				want := shapeJSON{Is: s.Is, Class: s.Class, X: s.X, Y: s.Y, Text: s.Text, D: s.D, Anchor: s.Anchor}
				switch s.Is {
				case "rect":
					want.Width, want.Height = s.W, s.H
				case "line":
					want.X, want.Y, want.X1, want.Y1, want.X2, want.Y2 = 0, 0, s.X, s.Y, s.X+s.W, s.Y+s.H
				}
				nearly := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < .006 })
				if diff := cmp.Diff(want, g.Shapes[k], nearly); diff != "" {
					t.Errorf("shape %d: %s", k, diff)
				}
			}
		}
	})
}

// TestLargeJobs checks that however large the job, the drawings are few and
// small.
func TestLargeJobs(t *testing.T) {
	lines := `{"count": 200000000, "size": "#1"}` +
		strings.Repeat(`,{"count": 1, "across": "4 in", "height": "4 in", "cells": 72}`, 99_999)
	tasks := strings.Repeat(`{"kind": "cover", "area": "60 ft x 4 ft", "layer": "1 mm", "material": "bark-mulch"},
		{"kind": "amend", "area": "1 sq ft", "layer": "300 m", "over": "1 mm", "material": "bark-fines"},`, 5000)
	for name, doc := range map[string]string{
		"lines": `{"schema": 1, "tasks": [{"kind": "fill", "material": "peat", "containers": [` + lines + `]}]}`,
		"tasks": `{"schema": 1, "tasks": [` + strings.TrimSuffix(tasks, ",") + `]}`,
	} {
		list := all(plan(t, []byte(doc)))
		shapes := 0
		for i := range list {
			check(t, &list[i])
			shapes += len(list[i].Shapes)
		}
		if shapes == 0 || shapes > 3000 || len(list) > 60 {
			t.Errorf("%s: %d drawings, %d shapes", name, len(list), shapes)
		}
		said := ""
		for i := range list {
			said += list[i].Description
		}
		want := map[string]string{"lines": "Lines not drawn: 99992", "tasks": "Tasks not drawn: 9976"}[name]
		if !strings.Contains(said, want) {
			t.Errorf("%s: %.300q does not say %q", name, said, want)
		}
	}
}

func TestGoldens(t *testing.T) {
	dir := filepath.Join("..", "..", "testdata", "picture")
	p := plan(t, mix.Sample())
	list := append(all(p), picture.Costs(p)...)
	want := map[string]bool{}
	for i := range list {
		check(t, &list[i])
		name := filepath.Join(dir, "sample-"+strconv.Itoa(i/10)+strconv.Itoa(i%10)+"-"+list[i].Kind+".svg")
		want[name] = true
		got := picture.SVG(&list[i], picture.Style)
		if *update {
			if err := os.WriteFile(name, got, 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		golden, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(golden), string(got)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	found, err := filepath.Glob(filepath.Join(dir, "*.svg"))
	if err != nil || len(found) == 0 {
		t.Fatalf("no goldens: %v", err)
	}
	for _, name := range found {
		if !want[name] && !*update {
			t.Errorf("%s is of no drawing", name)
		}
	}
}
