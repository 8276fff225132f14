package catalog

import (
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

// Class is a kind of container known by name: a nursery class, a cell tray or
// one that the job defines. Holds is the mix that one of it, or one cell of it,
// takes: a pot to its fill line, a cell, a band or a flat struck level.
type Class struct {
	doc.AsTyped

	ID, Name   string
	Kind       string   // the heading that lists put it under; "" for the job's own
	Also       []string // what people call it, for hints
	Cells      int64    // cells in a tray; 1 for a pot
	Holds      units.Range
	Brim       units.Volume // of a pot of the catalogue; 0 for what is filled level
	Source     Source
	Confidence string
}

// A pot is filled to fillNum/fillDen of its brim, 94 %, which leaves room for
// water: 172.8 of 183 cu in, a #1 pot of 6 by 7 in filled ten to the cubic foot.
// A trial filled fabric pots of 5 gal with 18 L, 95 % (HortScience 57(7):743).
// Every pot of the catalogue is planned so, whether its brim is measured, named
// by its volume or the middle of a standard's class.
const fillNum, fillDen = 288, 305

// fill works out what a row of the catalogue leaves out: a pot's fill line, and
// the range of a row that rests on one make. Others are taken to differ by a
// tenth, a pot at most by what is above its fill line.
func (k *Class) fill() {
	h := &k.Holds
	if k.Brim > 0 {
		h.Plan, _ = k.Brim.MulDiv(fillNum, fillDen)
		h.High = max(h.High, k.Brim)
	}
	if h.Low == 0 {
		h.Low, _ = h.Plan.MulDiv(9, 10)
	}
	if h.High == 0 {
		h.High, _ = h.Plan.MulDiv(11, 10)
	}
}

// Whole returns what all its cells take together, or what a pot takes.
func (k *Class) Whole() units.Range {
	all, _ := k.Holds.Times(max(k.Cells, 1)) // a checked class fits
	return all
}

// ClassObject describes a job's own container in a document.
var ClassObject = &doc.Object{Row: doc.RowOf[Class], ID: "own_container", Name: "a container", Help: "a container of your own", Tables: []doc.Fields{classFields}}

// classFields are the fields of a container, for a job's own and for the
// catalogue's.
var classFields = doc.Fields{
	{Name: "id", Type: &doc.ID, About: "what size calls it", At: func(k any) any { return &k.(*Class).ID }},
	{Name: "name", Type: &doc.Name, About: "what lists show", At: func(k any) any { return &k.(*Class).Name }},
	{Name: "cells", Type: &doc.Count, About: "cells in one tray, 1 when left out", At: func(k any) any { return &k.(*Class).Cells }},
	{Name: "holds", Type: &doc.Volume, About: "the mix that one, or one cell, takes to the fill line", At: func(k any) any { return &k.(*Class).Holds.Plan }},
	{Name: "low", Type: &doc.Volume, About: "the least it may hold, where that is not certain", At: func(k any) any { return &k.(*Class).Holds.Low }},
	{Name: "high", Type: &doc.Volume, About: "the most it may hold", At: func(k any) any { return &k.(*Class).Holds.High }},
	{Name: "source", Type: &sourceText, About: "where the figure comes from", At: func(k any) any { return &k.(*Class).Source }},
}

// check reports what is wrong with a job's own container, and fills in what it
// leaves out.
func (k *Class) check(r *doc.Reader) {
	if k.ID == "" {
		r.ProblemAt("id", doc.FieldMissing, `name it, such as "id": "terracotta-8"`)
	}
	if k.Holds.Plan <= 0 {
		r.ProblemAt("holds", doc.FieldMissing,
			`say what it holds to the fill line: fill one with water that far and measure it, such as "2.8 L"`)
		return
	}
	if k.Holds.Low < 0 || k.Holds.High < 0 || k.Holds.High > units.MaxVolume || k.Cells < 0 {
		r.ProblemAt("low", doc.RangeOrder, "zero or more")
		return
	}
	plan := units.Known(k.FixedVolume("holds", k.Holds.Plan))
	low, high := plan, plan
	if k.Holds.Low > 0 {
		low = units.Known(k.FixedVolume("low", k.Holds.Low))
	}
	if k.Holds.High > 0 {
		high = units.Known(k.FixedVolume("high", k.Holds.High))
	}
	k.Holds = units.Between(low, plan, high)
	if k.Holds.Low > k.Holds.Plan {
		r.ProblemAt("low", doc.RangeOrder, "at most holds")
	}
	if k.Holds.High < k.Holds.Plan {
		r.ProblemAt("high", doc.RangeOrder, "at least holds")
	}
	k.Cells = max(k.Cells, 1)
	if _, ok := k.Holds.Times(k.Cells); !ok {
		r.ProblemAt("cells", doc.VolumeLarge, "its cells hold more than can be worked out")
	}
	if k.Name == "" {
		k.Name = k.ID
	}
	if k.Source == (Source{}) {
		k.Source = FromJob
	}
}

// Soil is a native soil, and how much it swells when it is dug.
type Soil struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	ID, Name                   string
	Swell, SwellLow, SwellHigh units.Ratio
	Source                     Source
	Confidence                 string
}
