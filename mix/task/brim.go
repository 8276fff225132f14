package task

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/ground"
	"example.org/barrow/mix/lang"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// brimful reports what a container given by its brim has too little or too much of: a
// width and a depth below the rim go together, and one width is enough.
func (k *Container) brimful(r *doc.Reader) {
	wide := k.Across > 0 || k.Top > 0
	switch {
	case k.Across > 0 && k.Top > 0:
		r.ProblemAt("top", doc.FieldBoth, "give across where the sides are straight, or top where they taper, not both")
	case k.BelowRim > 0 && !wide:
		r.ProblemAt("top", doc.FieldMissing,
			`how wide inside at the rim? such as "6 in"; or across, where the sides are straight; or leave below_rim out to have it filled as far as is usual`)
	case k.BelowRim == 0 && wide:
		r.ProblemAt("below_rim", doc.FieldMissing,
			`how far below the rim is it filled? such as "1 in"; or leave the width out to have it filled as far as is usual`)
	case k.Shape != "" && !wide:
		r.ProblemAt("shape", doc.FieldAlone, "shape goes with the width at the rim: across or top")
	}
}

// belowBrim is what one container given by its brim takes to its fill line, in
// nanolitres, and the catalogue's share of the brim that is left free where the fill
// line is not given.
// ok is false with a problem.
//
// Straight sides lose a slice of their width. Of a pot that tapers only the width at
// the rim is known: it takes at least what it would with straight sides and at most
// what it would if it came to a point at the base, since the slice below the rim is
// narrower the more the sides taper. Planned is the middle, which is the pot whose base
// is about 0.8 as wide as its rim. Sides that bulge are left out.
func (k *Container) belowBrim(r *doc.Reader, s *catalog.Scope) (each units.Range, usual *catalog.Common, ok bool) {
	brim := k.Brim.Volume
	if k.BelowRim == 0 {
		c := s.Common("brim")
		less := func(free units.Ratio) units.Volume {
			d, n := catalog.Without(free)
			v, _ := brim.MulDiv(n, d)
			return v
		}
		return units.Range{Low: less(c.High), Plan: less(c.Share), High: less(c.Low)}, c, true
	}
	rim, square := max(k.Across, k.Top), k.Shape == "square"
	slice, ok := ground.Filled(rim, rim, k.BelowRim, k.BelowRim, square)
	if !ok || slice >= brim {
		r.ProblemAt("below_rim", doc.ContainerBelowRim, message.Of("a pot {#0} wide that holds {#1} is not so deep",
			units.Both.Length(rim), units.Both.Volume(brim)))
		return units.Range{}, nil, false
	}
	least := brim - slice
	if k.Across > 0 {
		return units.Exactly(least), nil, true
	}
	most := max(ground.Pointed(brim, rim, k.BelowRim, square), least)
	return units.Range{Low: least, Plan: least + (most-least)/2, High: most}, nil, true
}

// brimFormula is how the volume to the fill line follows from the brim, in words, and
// its source.
func (p *Pot) brimFormula(q lang.Printer) (string, catalog.Source) {
	k := p.Line
	words, below := k.words(q), q.Length(k.BelowRim)
	switch {
	case p.usual != nil:
		return q.Print("{0}, less what is usually left free below the rim, {1} ({2} to {3})", words,
			q.Share(p.usual.Share), q.Share(p.usual.Low), q.Share(p.usual.High)), p.usual.Source
	case k.Across > 0:
		return q.Print("{0}, {1} below the rim: less a slice {2} wide, straight sides", words, below, q.Length(k.Across)),
			ownMeasures
	}
	return q.Print("{0}, {1} below the rim: less a slice {2} wide at the rim, sides straight to pointed", words, below,
		q.Length(k.Top)), ownMeasures
}
