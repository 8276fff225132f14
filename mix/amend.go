package mix

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Amend is a task that works a layer of material into a bed. Of Layer and
// Share one is given, and of Into and Over one.
type Amend struct {
	Area  Area
	Layer units.Length // as spread, loose
	Share units.Ratio  // of the finished bed, by volume; the layer follows
	Into  units.Length // the finished depth that holds the layer
	Over  units.Length // the depth of native soil loosened
	Soil  string       // "clay", "loam", "sandy", or "" when not said
}

var amendFields = []field[*Task]{
	{"area", "area", `"60 ft x 4 ft", "circle 14 ft", "240 sq ft", or an object`, func(c *checker, n *json.Node, t *Task) { readArea(c, n, &t.Amend.Area) }},
	{"layer", "length", "how deep it is spread; or share", func(c *checker, n *json.Node, t *Task) { t.Amend.Layer = readLength(c, n) }},
	{"share", "share", "of the finished bed by volume, and the layer follows; or layer", func(c *checker, n *json.Node, t *Task) { t.Amend.Share = readSome(c, n, most) }},
	{"into", "length", "the finished depth that holds the layer: 3 in of 9 in is a third; or over", func(c *checker, n *json.Node, t *Task) { t.Amend.Into = readLength(c, n) }},
	{"over", "length", "the depth of native soil loosened: 3 in over 6 in is a third; or into", func(c *checker, n *json.Node, t *Task) { t.Amend.Over = readLength(c, n) }},
	{"soil", "clay, loam or sandy", "the bed's own soil", func(c *checker, n *json.Node, t *Task) { t.Amend.Soil = readSoil(c, n) }},
}

// readSome reads a share that must be more than zero.
func readSome(c *checker, n *json.Node, limit units.Ratio) units.Ratio {
	r := readShare(c, n, limit)
	if r == (units.Ratio{}) {
		c.problem("quantity.zero", "a share of more than zero, such as 25%")
	}
	return r
}

func readSoil(c *checker, n *json.Node) string { return oneOf(c, n, "clay", "loam", "sandy") }

// bed is an amended bed worked out.
type bed struct {
	task         *Amend
	area         units.Area
	layer        units.Length // as spread
	native       units.Length // soil loosened under it
	finished     units.Length // layer and native together
	share        units.Ratio  // of the finished bed
	shareRounded bool         // the share is the nearest millionth
}

// work measures the bed: its area times the layer.
func (a *Amend) work(c *checker) (b *bed, net Span) {
	b = &bed{task: a}
	c.path.push("area")
	b.area = a.Area.measure(c)
	c.path.pop()
	a.oneOfEach(c)
	if !c.sound() {
		return b, Span{}
	}
	b.depths()
	if b.layer == 0 {
		c.problem("layer.small", "the layer is too thin to measure")
		return b, Span{}
	}
	v, ok := b.volume()
	if !ok {
		c.problem("volume.large", tooMuch())
	}
	return b, Exactly(v)
}

// oneOfEach reports a depth that is missing or given twice.
func (a *Amend) oneOfEach(c *checker) {
	switch {
	case !c.clean("layer", "share"):
	case a.Layer > 0 && a.Share != (units.Ratio{}):
		c.problemAt("share", "field.both", "give layer or share, not both: each follows from the other")
	case most.Less(a.Share):
		c.problemAt("share", "share.range", message.Of("at most {#0}", most.String()))
	case a.Layer <= 0 && a.Share == (units.Ratio{}):
		c.problemAt("layer", "field.missing", `how deep is it spread? such as "3 in"; or give share, such as "25%"`)
	}
	switch {
	case !c.clean("into", "over"):
	case a.Into > 0 && a.Over > 0:
		c.problemAt("over", "field.both", "give into (the finished depth) or over (the native soil loosened), not both")
	case a.Into <= 0 && a.Over <= 0:
		c.problemAt("into", "field.missing", `into what? the finished depth, such as "9 in"; or over, the depth of native soil loosened, such as "6 in"`)
	}
}

// depths works out layer, native soil, finished depth and share from two of
// them.
func (b *bed) depths() {
	a := b.task
	switch {
	case a.Layer > 0 && a.Into > 0:
		b.layer, b.finished = a.Layer, a.Into
		b.native = max(a.Into-a.Layer, 0)
	case a.Layer > 0:
		b.layer, b.native, b.finished = a.Layer, a.Over, a.Layer+a.Over
	case a.Into > 0: // layer = share x finished
		b.layer, b.finished = part(a.Into, a.Share.Num(), a.Share.Den()), a.Into
		b.native = a.Into - b.layer
	default: // layer = native x share / (1 - share)
		n, d := a.Share.Num(), a.Share.Den()-a.Share.Num()
		b.layer, b.native = part(a.Over, n, d), a.Over
		b.finished = b.layer + b.native
	}
	if b.share = a.Share; b.share == (units.Ratio{}) {
		b.share, b.shareRounded = shareOf(b.layer, max(b.finished, b.layer))
	}
}

// volume is the layer's. Of a share it is taken straight from the depths: the
// layer as a length is rounded, and over an acre that rounding is a bag.
func (b *bed) volume() (v units.Volume, ok bool) {
	a := b.task
	n, d := a.Share.Num(), a.Share.Den()
	switch {
	case a.Layer > 0:
		return b.area.Deep(a.Layer)
	case a.Into > 0:
		v, ok = b.area.Deep(a.Into)
	default:
		v, ok = b.area.Deep(a.Over)
		d -= n
	}
	if !ok {
		return 0, false
	}
	return v.MulDiv(n, d)
}

// part returns l n/d, rounded to the nanometre. A length times a share's term
// fits a volume's arithmetic, which is checked.
func part(l units.Length, n, d int64) units.Length {
	v, ok := units.Volume(l).MulDiv(n, d)
	if !ok {
		return units.MaxLength
	}
	return units.Length(v)
}

// shareOf returns layer/finished, to the nearest millionth where its terms are
// larger; rounded tells which.
func shareOf(layer, finished units.Length) (r units.Ratio, rounded bool) {
	if r, err := units.NewRatio(int64(layer), int64(finished)); err == nil {
		return r, false
	}
	millionths := part(1_000_000, int64(layer), int64(finished))
	r, _ = units.NewRatio(int64(millionths), 1_000_000)
	return r, true
}

// tooDeep reports whether the layer is deeper than the depth it is to end in.
func (b *bed) tooDeep() bool { return b.layer > b.finished }
