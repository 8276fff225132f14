package mix

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
)

// Class is a container known by its name: a nursery class, a cell tray, or one
// that the job defines. Holds is the mix that one of it, or one cell of it,
// takes up to the fill line.
type Class struct {
	ID, Name   string
	Also       []string // what people call it, for hints
	Cells      int64    // cells in a tray; 1 for a pot
	Holds      Span
	Source     Source
	Confidence string
}

// Whole is what all its cells take together; for a pot, what the pot takes.
func (k *Class) Whole() Span {
	all, _ := k.Holds.times(max(k.Cells, 1)) // a checked class fits
	return all
}

var classFields = []field[*Class]{
	{"id", "a short name", "what size calls it", func(c *checker, n *json.Node, k *Class) { k.ID = readID(c, n) }},
	{"name", "a name", "what lists show", func(c *checker, n *json.Node, k *Class) { k.Name = readName(c, n) }},
	{"cells", "whole number", "cells in one tray, 1 when left out", func(c *checker, n *json.Node, k *Class) { k.Cells = readCount(c, n, 1) }},
	{"holds", "volume", "the mix that one, or one cell, takes to the fill line", func(c *checker, n *json.Node, k *Class) { k.Holds.Plan = readVolume(c, n) }},
	{"low", "volume", "the least it may hold, where that is not certain", func(c *checker, n *json.Node, k *Class) { k.Holds.Low = readVolume(c, n) }},
	{"high", "volume", "the most it may hold", func(c *checker, n *json.Node, k *Class) { k.Holds.High = readVolume(c, n) }},
	{"source", "text", "where the figure comes from", func(c *checker, n *json.Node, k *Class) { k.Source = jobSource(readName(c, n)) }},
}

// check holds a job's own container to what the rest relies on.
func (k *Class) check(c *checker) {
	if k.ID == "" {
		c.problemAt("id", "field.missing", `name it, such as "id": "terracotta-8"`)
	}
	if k.Holds.Plan <= 0 {
		c.problemAt("holds", "field.missing", `say what it holds: fill one with water and measure that, such as "2.8 L"`)
		return
	}
	if k.Holds.Low < 0 || k.Holds.High < 0 || k.Holds.High > units.MaxVolume || k.Cells < 0 {
		c.problemAt("low", "range.order", "zero or more")
		return
	}
	if k.Holds.Low == 0 {
		k.Holds.Low = k.Holds.Plan
	}
	if k.Holds.High == 0 {
		k.Holds.High = k.Holds.Plan
	}
	if k.Holds.Low > k.Holds.Plan {
		c.problemAt("low", "range.order", "at most holds")
	}
	if k.Holds.High < k.Holds.Plan {
		c.problemAt("high", "range.order", "at least holds")
	}
	k.Cells = max(k.Cells, 1)
	if _, ok := k.Holds.times(k.Cells); !ok {
		c.problemAt("cells", "volume.large", "its cells hold more than can be worked out")
	}
	if k.Name == "" {
		k.Name = k.ID
	}
	if k.Source == (Source{}) {
		k.Source = fromJob
	}
}

// Soil is a native soil: how much it swells when dug.
type Soil struct {
	ID, Name                   string
	Swell, SwellLow, SwellHigh units.Ratio
	Source                     Source
	Confidence                 string
}
