// Package picture makes drawings of a plan, to scale, from the plan's own
// figures: beds, pots and planting holes in section.
//
// A [Drawing] is shapes with coordinates, 320 units wide, as a phone is in CSS
// pixels; a face only puts them where they say. A shape has a class, which
// tells what it stands for, and never a colour. Every region is named in words
// beside it, and the description says in sentences what the drawing shows.
//
// However large the job, the shapes are few: what is left out is said.
package picture

import (
	"example.org/barrow/mix"
	"example.org/barrow/mix/task"
	"example.org/barrow/units/message"
)

// Drawing is one picture.
type Drawing struct {
	Kind          string  // "bed", "mulch", "pots", "hole", "heap", "trips", "cost" or "more"
	Task          int     // of the plan, or -1
	Title         string  // whole, however long
	Description   string  // sentences with the figures, in place of the picture
	Width, Height float64 // from 0, 0 at the top left
	Shapes        []Shape
}

// Shape is one thing drawn. Is says which of the other fields count; they are
// named as the attributes of an SVG element are.
type Shape struct {
	Is    string  // "rect", "line", "path" or "text"
	Class string  // what it stands for, words with spaces between
	X, Y  float64 // a rectangle's top left; a line's start; a text's baseline
	W, H  float64 // of a rectangle; a line's end less its start
	D     string  // a path's
	Text  string
	// Anchor is which part of a text stands at X: "start", "middle" or "end".
	Anchor string
}

// Bounds on what is drawn.
const (
	mostTasks = 24  // drawings of tasks
	mostPots  = 8   // container lines in one drawing
	mostHeaps = 12  // drawings of materials
	mostLines = 4   // kinds of packs in one drawing
	mostPacks = 60  // packs drawn one by one; past it a box stands for ten, and so on
	mostTrips = 8   // trips in one drawing
	mostCosts = 6   // drawings of bags against bulk
	mostMarks = 400 // of a region's grain
)

// Tasks draws the tasks in their order, one drawing each. A kind without a drawing
// gives an empty one, with its title.
func Tasks(p *mix.Plan) (list []Drawing) {
	for i := range p.Tasks[:min(len(p.Tasks), mostTasks)] {
		k := newPen(p, i, p.Tasks[i].Title)
		switch result := p.Tasks[i].Result.(type) {
		case *task.Bed:
			k.bed(result)
		case *task.Mulch:
			k.mulch(result)
		case *task.Holes:
			k.holes(result)
		case *task.Pots:
			k.pots(result)
		}
		list = k.onto(list)
	}
	return k0(p).more(list, len(p.Tasks)-len(list), moreTasks)
}

// k0 is a pen for no task.
func k0(p *mix.Plan) *pen { return newPen(p, -1, "") }

// more adds, where something was left out, a drawing that says so.
func (k *pen) more(list []Drawing, left int, sentence message.Text) []Drawing {
	if left <= 0 {
		return list
	}
	k.Kind = "more"
	k.say(sentence).count(int64(left)).tell().note()
	return k.onto(list)
}
