package task

import (
	"slices"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Container is one line of a fill task: a number of pots, trays or boxes of one kind.
// It is given by exactly one of Size, Holds, Brim, Box, Across with Height, and Top
// with Bottom and Height. With Brim, Across or Top is the width at the rim, for a
// BelowRim that is to be taken off. All lengths are inside.
type Container struct {
	doc.AsTyped

	Count int64
	Size  string       // a class of the catalogue or of the job: "#1"
	Holds catalog.Size // what one takes to the fill line
	Brim  catalog.Size // what one holds to the brim, as water measures it

	Box                 []units.Length // length, width and depth
	Across              units.Length   // a pot with straight sides, with Height
	Top, Bottom, Height units.Length   // a pot that tapers: at the rim, at the base, base to rim
	Shape               string         // "round" or "square", seen from above; "" is round

	BelowRim units.Length // room left for water above the mix
	Cells    int64        // cells of this shape in one tray; 0 and 1 are both one
	Ball     *Ball        // the root ball already in each; nil for none
}

var (
	sizeWord = doc.Type{Takes: "a container", Form: "size", Such: `a size such as "#1"`, Read: doc.ReadWord}
	seen     = doc.Type{Form: "choice", Words: []string{"round", "square"}, Read: doc.ReadChoice}
)

var container = &doc.Object{Row: doc.RowOf[Container], ID: "container", Name: "a container line", Help: "a container line of a fill task", Tables: []doc.Fields{{
	{Name: "count", Type: &doc.Count, About: "how many", At: func(k any) any { return &k.(*Container).Count }},
	{Name: "size", Type: &sizeWord, About: `a class such as "#1", or a container of your own`, At: func(k any) any { return &k.(*Container).Size }},
	{Name: "holds", Type: &catalog.HoldsType, About: "what one takes to the fill line", At: func(k any) any { return &k.(*Container).Holds }},
	{Name: "brim", Type: &catalog.HoldsType, About: "what one holds to the brim; with below_rim, and top or across for its width, or else filled as far as is usual", At: func(k any) any { return &k.(*Container).Brim }},
	{Name: "box", Type: &doc.ThreeLengths, About: `length, width and depth inside: "20 in x 10 in x 2 in"`, At: func(k any) any { return &k.(*Container).Box }},
	{Name: "across", Type: &doc.Length, About: "a pot with straight sides, inside; with height", At: func(k any) any { return &k.(*Container).Across }},
	{Name: "top", Type: &doc.Length, About: "a pot that tapers, inside at the rim; with bottom and height", At: func(k any) any { return &k.(*Container).Top }},
	{Name: "bottom", Type: &doc.Length, About: "inside at the base", At: func(k any) any { return &k.(*Container).Bottom }},
	{Name: "height", Type: &doc.Length, About: "inside, base to rim", At: func(k any) any { return &k.(*Container).Height }},
	{Name: "shape", Type: &seen, About: "seen from above; round when left out", At: func(k any) any { return &k.(*Container).Shape }},
	{Name: "below_rim", Type: &doc.Margin, About: "room left for water; 1/2 in in small pots, 1 in and more in large ones", At: func(k any) any { return &k.(*Container).BelowRim }},
	{Name: "cells", Type: &doc.Count, About: "cells of this shape in one tray", At: func(k any) any { return &k.(*Container).Cells }},
	{Name: "ball", Type: &ball, About: `the root ball already there: "#1", "0.7 gal", or across by height "6 in x 6 in"`, At: func(k any) any { return &k.(*Container).Ball }},
}}}

// form returns the field by which the container is given, or "" with a problem. Two
// ways at once are a problem even where they agree: one of them would be stale as
// soon as the other is edited.
func (k *Container) form(r *doc.Reader) string {
	given := k.given()
	if len(given) == 0 {
		r.Problem(doc.ContainerMissing,
			`say what it is: size ("#1"), holds ("2.8 L"), brim ("3 L"), box ("20 in x 10 in x 2 in"), across with height, or top with bottom and height`)
		return ""
	}
	k.alone(r, given)
	switch {
	case len(given) > 1:
		r.Problem(doc.FieldBoth, message.Of("give one of {=0}", string(doc.And(given))))
	case given[0] == "brim":
		k.brimful(r)
	default:
		k.lacking(r, given[0])
	}
	if !r.Sound() {
		return ""
	}
	return given[0]
}

// given lists the ways by which the container is given.
func (k *Container) given() (given []string) {
	brim := k.Brim.Volume > 0
	for _, f := range []struct {
		name string
		is   bool
	}{
		{"size", k.Size != ""},
		{"holds", k.Holds.Volume > 0},
		{"brim", brim},
		{"box", len(k.Box) == 3},
		{"across", k.Across > 0 && !brim},
		{"top", k.Top > 0 && !brim},
	} {
		if f.is {
			given = append(given, f.name)
		}
	}
	return given
}

// alone reports fields that mean nothing in any of the ways given. Ignoring those would
// hide a misunderstanding.
func (k *Container) alone(r *doc.Reader, given []string) {
	with := func(ways ...string) bool {
		return slices.ContainsFunc(ways, func(way string) bool { return slices.Contains(given, way) })
	}
	if k.Height > 0 && !with("across", "top") {
		r.ProblemAt("height", doc.FieldAlone, "height goes with across, or with top and bottom")
	}
	if k.Bottom > 0 && !with("top") {
		r.ProblemAt("bottom", doc.FieldAlone, "bottom goes with top")
	}
	if k.Shape != "" && !with("across", "top", "brim") {
		r.ProblemAt("shape", doc.FieldAlone, "shape goes with across, or with top and bottom")
	}
	if k.BelowRim > 0 && !with("brim", "box", "across", "top") {
		r.ProblemAt("below_rim", doc.FieldAlone,
			"what it holds is already to the fill line: give below_rim with brim, what it holds to the brim, or with the pot's own measures")
	}
}

// lacking reports fields that the way needs but lacks.
func (k *Container) lacking(r *doc.Reader, way string) {
	if (way == "across" || way == "top") && k.Height == 0 {
		r.ProblemAt("height", doc.FieldMissing,
			`how high inside, base to rim? a pot is across and height, such as 4 in x 4 in, or a class, such as "SP4"`)
	}
	if way == "top" && k.Bottom == 0 {
		r.ProblemAt("bottom", doc.FieldMissing,
			"how wide inside at the base? the same as top when it does not taper")
	}
}

// full is the height of the container from base to rim, or 0 when it is not given.
func (k *Container) full() units.Length {
	if len(k.Box) == 3 {
		return k.Box[2]
	}
	return k.Height
}

// depth is the depth of the mix, or 0 when no height is given.
func (k *Container) depth(r *doc.Reader) units.Length {
	full := k.full()
	if full == 0 {
		return 0
	}
	if k.BelowRim >= full {
		r.ProblemAt("below_rim", doc.ContainerBelowRim,
			message.Of("less than the height, {#0}", units.Both.Length(full)))
		return 0
	}
	return full - k.BelowRim
}

// wide is the diameter of the widest ball that fits, or 0 when it is not known. A pot
// that tapers is measured at the rim, where the ball goes in: balls taper too.
func (k *Container) wide() units.Length {
	if len(k.Box) == 3 {
		return min(k.Box[0], k.Box[1])
	}
	return max(k.Across, k.Top)
}

// volume is what one container given by Holds or by all its measures takes. One with
// straight sides is exact; one that is round or tapers is rounded to the nanolitre.
// ok is false past [units.MaxVolume].
func (k *Container) volume(depth units.Length) (units.Range, bool) {
	rim := k.FixedLength("below_rim", k.BelowRim)
	switch {
	case k.Holds.Volume > 0:
		return units.Known(k.Holds.Fixed()), true
	case len(k.Box) == 3:
		box := k.FixedDims("box", k.Box)
		v, ok := ground.FixedBox(box[0], box[1], box[2].Minus(rim))
		return units.Known(v), ok
	case k.Across > 0 && k.Shape == "square":
		side := k.FixedLength("across", k.Across)
		v, ok := ground.FixedBox(side, side, k.FixedLength("height", k.Height).Minus(rim))
		return units.Known(v), ok
	case k.Across > 0:
		v, ok := ground.Cylinder(k.Across, depth)
		return units.Exactly(v), ok
	}
	v, ok := ground.Filled(k.Top, k.Bottom, k.Height, depth, k.Shape == "square")
	return units.Exactly(v), ok
}

// words describes a container that is not given by its class.
func (k *Container) words(p lang.Printer) string {
	switch {
	case k.Holds.Volume > 0:
		return p.Print("{0} pot", sized(p, k.Holds))
	case k.Brim.Volume > 0:
		return p.Print("pot of {0} to the brim", sized(p, k.Brim))
	case len(k.Box) == 3:
		return p.Print("{0} x {1} x {2} box", p.Length(k.Box[0]), p.Length(k.Box[1]), p.Length(k.Box[2]))
	}
	size := p.Length(k.Across)
	if k.Across == 0 {
		size = p.Print("{0} to {1}", p.Length(k.Top), p.Length(k.Bottom))
	}
	if k.Shape == "square" {
		return p.Print("square pot {0} x {1}", size, p.Length(k.Height))
	}
	return p.Print("round pot {0} x {1}", size, p.Length(k.Height))
}

// sized is a volume as the job gives it.
func sized(p lang.Printer, s catalog.Size) string {
	if s.Text == "" {
		return p.Volume(s.Volume)
	}
	return p.Figure(s.Text)
}

// formula is how the volume follows from the measures, in words, and its source. A
// container given by its brim has [Pot.brimFormula].
func (k *Container) formula(p lang.Printer) (string, catalog.Source) {
	var how message.Text
	switch {
	case k.Holds.Volume > 0:
		return p.Print("each holds, to the fill line"), catalog.FromJob
	case len(k.Box) == 3:
		how = "length x width x depth"
	case k.Shape == "square" && k.Top > 0:
		how = "h (t^2 + t b + b^2) / 3, t the width at the fill line"
	case k.Shape == "square":
		how = "side^2 x h"
	case k.Across > 0:
		how = "pi d^2 h / 4"
	default:
		how = "pi h (t^2 + t b + b^2) / 12, t the width at the fill line"
	}
	if k.BelowRim > 0 {
		return p.Print("{0}, {2} below the rim: {=1}", k.words(p), string(how), p.Length(k.BelowRim)), ownMeasures
	}
	return p.Print("{0}, filled to the rim: {=1}", k.words(p), string(how)), ownMeasures
}

// ownMeasures is where the volume of a container comes from that is measured.
var ownMeasures = catalog.Source{Text: "the pot's own measures; solid geometry", Kind: "arithmetic"}

// clone returns a copy that shares nothing with k.
func (k *Container) clone() Container {
	c := *k
	c.Box, c.Ball = slices.Clone(k.Box), k.Ball.clone()
	return c
}
