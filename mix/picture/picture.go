// Package picture draws a plan to scale, from the plan's own figures: beds,
// pots and planting holes in section, piles of material beside their packs,
// trips against their limits, and cost against volume.
//
//	for _, d := range picture.Tasks(plan) {
//		svg := picture.SVG(&d, picture.Style)
//	}
//
// A [Drawing] is a list of shapes with coordinates. It is 320 units wide, like
// a phone in CSS pixels; whoever shows it only has to place the shapes. A shape
// has a class, which says what it stands for, and never a colour. Every region
// is named in words beside it, and the description says in sentences what the
// drawing shows.
//
// However large the job, there are only a few shapes. A drawing says what it
// leaves out. Drawing does not change the plan, and the drawings are the
// caller's.
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
	Title         string  // never cut, however long
	Description   string  // sentences with the figures, to read instead of the picture
	Width, Height float64 // from 0, 0 at the top left
	Shapes        []Shape
}

// Shape is one thing drawn. Is says which of the other fields it uses; they are
// named like the attributes of an SVG element.
type Shape struct {
	Is    string  // "rect", "line", "path" or "text"
	Class string  // what it stands for, words with spaces between
	X, Y  float64 // a rectangle's top left; a line's start; a text's baseline
	W, H  float64 // of a rectangle; a line's end less its start
	D     string  // a path's
	Text  string
	// Anchor is which part of a text is at X: "start", "middle" or "end".
	Anchor string
}

// Limits on what is drawn.
const (
	mostTasks = 24  // drawings of tasks
	mostPots  = 8   // container lines in one drawing
	mostHeaps = 12  // drawings of materials
	mostLines = 4   // kinds of packs in one drawing
	mostPacks = 60  // packs drawn one by one; above that a box stands for ten, and so on
	mostTrips = 8   // trips in one drawing
	mostCosts = 6   // drawings of bags against bulk
	mostMarks = 400 // of a region's grain
)

// Tasks draws the tasks in their order, one drawing for each. A kind of task
// that cannot be drawn gives a drawing with only a title.
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
	return plainPen(p).more(list, len(p.Tasks)-len(list), moreTasks)
}

// plainPen returns a pen for a drawing that belongs to no task.
func plainPen(p *mix.Plan) *pen { return newPen(p, -1, "") }

// more adds a drawing that says how many were left out, if any were.
func (k *pen) more(list []Drawing, left int, sentence message.Text) []Drawing {
	if left <= 0 {
		return list
	}
	k.Kind = "more"
	k.sentence(sentence).count(int64(left)).describe().note()
	return k.onto(list)
}
