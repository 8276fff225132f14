package mix

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
	"example.org/barrow/units/spell"
)

// Container is one line of a fill task: so many of one pot, tray or box. It is
// given by one of Size, Holds, Box, Across with Height, or Top with Bottom and
// Height.
type Container struct {
	Count int64
	Size  string       // a class of the catalogue or of the job: "#1"
	Holds units.Volume // what it takes to the fill line

	holdsText string // as typed

	Box                 []units.Length // length, width, depth inside
	Across              units.Length   // a pot with straight sides
	Top, Bottom, Height units.Length   // a pot that tapers, inside
	Shape               string         // "round" (also "") or "square"

	BelowRim units.Length // room left for water above the mix
	Cells    int64        // cells of this shape in one tray; 0 and 1 are one
	Ball     *Ball        // root ball already there
}

// Ball is the root ball of a plant: what its pot held, or its own measure.
type Ball struct {
	Text           string // as typed
	Size           string // a class
	Volume         units.Volume
	Across, Height units.Length // straight across and from top to bottom
}

// String gives the ball as typed, or what it is.
func (b *Ball) String() string {
	switch {
	case b.Text != "":
		return b.Text
	case b.Size != "":
		return b.Size
	case b.Volume > 0:
		return units.US.Volume(b.Volume)
	}
	return units.US.Length(b.Across) + " x " + units.US.Length(b.Height)
}

var containerFields = []field[*Container]{
	{"count", "whole number", "how many", func(c *checker, n *json.Node, k *Container) { k.Count = readCount(c, n, 1) }},
	{"size", "a container", `a class such as "#1", or a container of your own`, func(c *checker, n *json.Node, k *Container) { k.Size = readWord(c, n, `a size such as "#1"`) }},
	{"holds", "volume", "what one takes to the fill line", func(c *checker, n *json.Node, k *Container) {
		k.Holds, k.holdsText = readVolume(c, n), oneLine(n.Text)
	}},
	{"box", "lengths", `length, width and depth inside: "20 in x 10 in x 2 in"`, func(c *checker, n *json.Node, k *Container) { k.Box = readDims(c, n, 3) }},
	{"across", "length", "a pot with straight sides, inside; with height", func(c *checker, n *json.Node, k *Container) { k.Across = readLength(c, n) }},
	{"top", "length", "a pot that tapers, inside at the rim; with bottom and height", func(c *checker, n *json.Node, k *Container) { k.Top = readLength(c, n) }},
	{"bottom", "length", "inside at the base", func(c *checker, n *json.Node, k *Container) { k.Bottom = readLength(c, n) }},
	{"height", "length", "inside, base to rim", func(c *checker, n *json.Node, k *Container) { k.Height = readLength(c, n) }},
	{"shape", "round or square", "seen from above; round when left out", func(c *checker, n *json.Node, k *Container) { k.Shape = oneOf(c, n, "round", "square") }},
	{"below_rim", "length", "room left for water; 1/2 in in small pots, 1 in and more in large ones", func(c *checker, n *json.Node, k *Container) { k.BelowRim = readMargin(c, n) }},
	{"cells", "whole number", "cells of this shape in one tray", func(c *checker, n *json.Node, k *Container) { k.Cells = readCount(c, n, 1) }},
	{"ball", "size, volume or lengths", `the root ball already there: "#1", "0.7 gal", or across by height "6 in x 6 in"`, func(c *checker, n *json.Node, k *Container) { k.Ball = readBall(c, n) }},
}

// readDims reads exactly want lengths.
func readDims(c *checker, n *json.Node, want int) []units.Length {
	takes := message.Text(`lengths such as "4 ft x 3 ft"`)
	if want == 3 {
		takes = `lengths such as "20 in x 10 in x 2 in"`
	}
	s, ok := readText(c, n, takes)
	if !ok {
		return nil
	}
	d, err := units.ParseDims(s)
	switch {
	case err != nil:
		c.unitsError(err)
	case len(d) != want && want == 3:
		c.problem("dims.count", "three lengths, such as 20 in x 10 in x 2 in")
	case len(d) != want:
		c.problem("dims.count", "two lengths, such as 4 ft x 3 ft")
	default:
		return d
	}
	return nil
}

func readBall(c *checker, n *json.Node) *Ball {
	s, ok := readText(c, n, `a root ball such as "#1", "2.8 L" or "6 in x 6 in"`)
	if !ok {
		return nil
	}
	b, err := ParseBall(s)
	if err != nil {
		c.unitsError(err)
	}
	return &b
}

// ParseBall reads a root ball: a class ("#1"), a volume ("2.8 L"), or across
// by height ("6 in x 6 in"). Whether a class exists is for the job to say. The
// error is a [*units.Error].
func ParseBall(s string) (Ball, error) {
	text := strings.TrimSpace(s)
	b := Ball{Text: text}
	figure, sides := units.Looks(text)
	if !figure {
		b.Size = text
		if text == "" {
			return b, &units.Error{Code: "quantity.empty", Value: s, Hint: `write a class, a volume or lengths, such as "#1", "2.8 L" or "6 in x 6 in"`}
		}
		return b, nil
	}
	if sides > 1 {
		d, err := units.ParseDims(text)
		if err == nil && len(d) != 2 {
			err = &units.Error{Code: "dims.count", Value: clip(s), Hint: "across by height, such as 6 in x 6 in"}
		}
		if err != nil {
			return b, err
		}
		b.Across, b.Height = d[0], d[1]
		return b, nil
	}
	v, err := units.ParseVolume(text)
	if err == nil && v == 0 {
		err = &units.Error{Code: "quantity.zero", Value: clip(s), Hint: "a root ball is more than nothing; leave it out"}
	}
	b.Volume = v
	return b, err
}

// tooMuch is the hint for what is past the bound of a volume.
func tooMuch() message.Text {
	return message.Of("more than {#0} in all", units.Both.Volume(units.MaxVolume))
}

// pot is a container line worked out.
type pot struct {
	line  *Container
	class *Class // when given by size
	each  Span   // one cell or pot to the fill line, before the ball
	ball  Span   // nothing when there is none
	// ballFrom is where the ball's volume comes from.
	ballFrom Source
	cells    int64
	total    Span // all of the line, less the balls
}

// work works out one line; problems go to c and then the pot is of no use.
func (k *Container) work(c *checker, b *book) pot {
	p := pot{line: k, cells: max(k.Cells, 1)}
	if k.Count == 0 {
		c.problemAt("count", "field.missing", "how many?")
	}
	if k.Shape != "" && k.Shape != "round" && k.Shape != "square" {
		c.problemAt("shape", "word.unknown", "write round or square")
	}
	if min(int64(k.Holds), int64(k.Across), int64(k.Top), int64(k.Bottom), int64(k.Height), int64(k.BelowRim), k.Cells) < 0 {
		c.problem("quantity.negative", "every measure is zero or more")
	}
	depth := k.depth(c)
	if !c.sound() {
		return p
	}
	switch k.form(c) {
	case "size":
		if p.class = b.findClass(c, "size", k.Size); p.class == nil {
			return p
		}
		p.each = p.class.Holds
		if k.Cells == 0 {
			p.cells = p.class.Cells
		} else if p.class.Cells > 1 {
			c.problemAt("cells", "field.both", "this tray's cells are known; leave cells out")
		}
	case "":
		return p
	default:
		v, ok := k.shape(depth)
		if !ok {
			c.problem("volume.large", message.Of("larger than {#0}", units.Both.Volume(units.MaxVolume)))
			return p
		}
		p.each = Exactly(v)
	}
	p.less(c, b, depth)
	return p
}

// form returns the one way in which the container is given, or "" with a
// problem.
func (k *Container) form(c *checker) string {
	var given []string
	for _, f := range []struct {
		name string
		is   bool
	}{{"size", k.Size != ""}, {"holds", k.Holds > 0}, {"box", len(k.Box) == 3}, {"across", k.Across > 0}, {"top", k.Top > 0}} {
		if f.is {
			given = append(given, f.name)
		}
	}
	switch {
	case len(given) == 0:
		c.problem("container.missing", `say what it is: size ("#1"), holds ("2.8 L"), box ("20 in x 10 in x 2 in"), across with height, or top with bottom and height`)
		return ""
	case len(given) > 1:
		c.problem("field.both", message.Of("give one of {=0}", string(and(given))))
		return ""
	}
	k.companions(c, given[0])
	if !c.sound() {
		return ""
	}
	return given[0]
}

// companions reports fields that the form needs, or that do not go with it.
func (k *Container) companions(c *checker, form string) {
	if form == "across" || form == "top" {
		if k.Height == 0 {
			c.problemAt("height", "field.missing", `how high inside, base to rim? a pot is across and height, such as 4 in x 4 in, or a class, such as "SP4"`)
		}
	} else if k.Height > 0 {
		c.problemAt("height", "field.alone", "height goes with across, or with top and bottom")
	}
	if form == "top" && k.Bottom == 0 {
		c.problemAt("bottom", "field.missing", "how wide inside at the base? the same as top when it does not taper")
	}
	if form != "top" && k.Bottom > 0 {
		c.problemAt("bottom", "field.alone", "bottom goes with top")
	}
	if form != "top" && form != "across" && k.Shape != "" {
		c.problemAt("shape", "field.alone", "shape goes with across, or with top and bottom")
	}
	if (form == "size" || form == "holds") && k.BelowRim > 0 {
		c.problemAt("below_rim", "field.alone", "what it holds is already to the fill line; give below_rim with the pot's own measures")
	}
}

// depth is how deep the mix stands, 0 when the form has no depth.
func (k *Container) depth(c *checker) units.Length {
	full := k.Height
	if len(k.Box) == 3 {
		full = k.Box[2]
	}
	if full == 0 {
		return 0
	}
	if k.BelowRim >= full {
		c.problemAt("below_rim", "container.below_rim", message.Of("less than the height, {#0}", units.Both.Length(full)))
		return 0
	}
	return full - k.BelowRim
}

// wide is the widest round ball that goes in, 0 when the form does not tell.
func (k *Container) wide() units.Length {
	if len(k.Box) == 3 {
		return min(k.Box[0], k.Box[1])
	}
	return max(k.Across, k.Top)
}

// shape measures a container given by holds or its own measures.
func (k *Container) shape(depth units.Length) (units.Volume, bool) {
	switch {
	case k.Holds > 0:
		return k.Holds, true
	case len(k.Box) == 3:
		return Box(k.Box[0], k.Box[1], depth)
	case k.Across > 0 && k.Shape == "square":
		return Box(k.Across, k.Across, depth)
	case k.Across > 0:
		return Cylinder(k.Across, depth)
	}
	line := fillLine(k.Top, k.Bottom, depth, k.Height)
	if k.Shape == "square" {
		return squareTaper(line, decimetres(k.Bottom), decimetres(depth))
	}
	return roundTaper(line, decimetres(k.Bottom), decimetres(depth))
}

// less takes the ball away and counts the line up.
func (p *pot) less(c *checker, b *book, depth units.Length) {
	each := p.each
	if ball := p.line.Ball; ball != nil {
		c.path.push("ball")
		span, from, ok := ball.work(c, b)
		p.ballFrom = from
		switch wide := p.line.wide(); {
		case !ok || ball.Height == 0 || depth == 0: // nothing to compare
		case ball.Height > depth:
			c.problem("ball.large", message.Of("taller than the mix is deep, {#0}", units.Both.Length(depth)))
		case ball.Across > wide:
			c.problem("ball.large", message.Of("wider than the container, {#0}", units.Both.Length(wide)))
		}
		p.ball = span
		if each, ok = p.each.minus(span); !ok || each.Plan == 0 {
			c.problem("ball.large", message.Of("the ball, {#0}, fills the container, {#1}", units.Both.Volume(span.Plan), units.Both.Volume(p.each.Plan)))
		}
		c.path.pop()
		if !c.sound() {
			return
		}
	}
	row, ok := each.times(p.line.Count)
	if ok {
		p.total, ok = row.times(p.cells)
	}
	switch {
	case !ok:
		c.problem("volume.large", tooMuch())
	case p.each.Plan == 0:
		c.problem("volume.small", "it holds nothing that can be measured")
	}
}

// work returns the ball's volume and where it comes from.
func (b *Ball) work(c *checker, bk *book) (v Span, from Source, ok bool) {
	switch {
	case b.Size != "":
		if k := bk.findClassHere(c, b.Size); k != nil {
			return k.Holds, k.Source, true
		}
		return Span{}, Source{}, false
	case b.Volume > 0:
		return Exactly(b.Volume), fromJob, true
	}
	one, ok := Cylinder(b.Across, b.Height)
	if !ok {
		c.problem("volume.large", message.Of("larger than {#0}", units.Both.Volume(units.MaxVolume)))
	}
	return Exactly(one), arithmetic, ok
}

// findClass looks id up for a field of the current object.
func (b *book) findClass(c *checker, name, id string) *Class {
	c.path.push(name)
	defer c.path.pop()
	return b.findClassHere(c, id)
}

// findClassHere looks id up for the current field.
func (b *book) findClassHere(c *checker, id string) *Class {
	if k, ok := b.class[id]; ok {
		return k
	}
	if c.full {
		return nil
	}
	names, owners := b.classNames()
	p := c.unknown("container.unknown", id, names, `no such size is known: barrow list containers shows them; or give what the pot holds, such as "2.8 L"`)
	for _, name := range names {
		if spell.Lower(name) == spell.Lower(id) || p.Hint == didYouMean(name) {
			p.Hint = didYouMean(owners[name])
			break
		}
	}
	if number := "#" + id; b.class[number] != nil {
		p.Hint = didYouMean(number)
	}
	c.add(p)
	return nil
}
