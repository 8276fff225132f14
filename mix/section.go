package mix

import "example.org/barrow/units"

// What a drawing of a task needs besides its texts: the measures that the plan
// was worked out from. Volumes are for the whole task unless said otherwise.

// Bed is an amended bed in section.
type Bed struct {
	Area     units.Area
	Layer    units.Length // as spread, loose
	Native   units.Length // soil loosened under it
	Finished units.Length // the two together, worked in
	Rise     units.Length // how far the layer lifts the ground, settled
	Share    units.Ratio  // of Finished that is Layer
}

// Bed returns the measures of task i, and nil when it amends no bed.
func (p *Plan) Bed(i int) *Bed {
	w := &p.work.tasks[i]
	if w.bed == nil {
		return nil
	}
	b := w.bed
	return &Bed{b.area, b.layer, b.native, max(b.finished, b.layer), w.rise(), b.share}
}

// Mulch is a covered bed in section.
type Mulch struct {
	Ground, Bare units.Area // the bed, and what of it is left bare
	Layer        units.Length
	Stems        int64
	Clear        units.Length // bare from the stem outwards; 0 without stems
	Sheets       int64        // underneath; 0 for none
	Exact        bool         // the sheets are laid out, not estimated
}

// Mulch returns the measures of task i, and nil when it covers nothing.
func (p *Plan) Mulch(i int) *Mulch {
	w := &p.work.tasks[i]
	if w.cover == nil {
		return nil
	}
	k := w.cover
	m := &Mulch{Ground: k.ground, Bare: k.bare, Layer: k.task.Layer, Sheets: k.sheets, Exact: k.exact}
	if k.task.Stems != nil {
		m.Stems, m.Clear = k.task.Stems.Count, k.task.Stems.Clear
	}
	return m
}

// Pot is one line of a fill task.
type Pot struct {
	Line  *Container // as the job has it
	Class *Class     // where it is given by size
	Label string     // the line in words: 64 x #1 nursery pot
	Cells int64      // of one tray, or 1
	Depth units.Length
	Each  Span // one pot or cell to the fill line, its ball counted
	Ball  Span // of one; nothing without
	Takes Span // one pot or cell, less its ball
	Total Span // the whole line
}

// Pots returns the first lines of task i, at most so many, and how many it has;
// none when it fills nothing.
func (p *Plan) Pots(i, most int) (pots []Pot, of int) {
	w := &p.work.tasks[i]
	for k := range w.pots[:min(most, len(w.pots))] {
		t := &w.pots[k]
		one := Pot{Line: t.line, Class: t.class, Label: t.label(p.Printer()), Cells: t.cells, Each: t.each, Ball: t.ball, Total: t.total}
		one.Takes, _ = t.each.minus(t.ball)
		if full := t.line.Height; full > 0 {
			one.Depth = full - t.line.BelowRim
		} else if len(t.line.Box) == 3 {
			one.Depth = t.line.Box[2] - t.line.BelowRim
		}
		pots = append(pots, one)
	}
	return pots, len(w.pots)
}

// Holes are the planting holes of a task.
type Holes struct {
	Count        int64
	Width, Depth units.Length
	Ball         *Ball        // as the job has it
	Below        units.Length // the ball's height below the ground
	Above        units.Length // and above it
	Across       units.Length // of the ball; 0 when only its volume is known
	Dug          units.Volume
	InBall       Span // the balls below the ground
	Round        Span // between hole and ball
	Material     Span // of that, what is mixed in
	Left         Span // soil left over, loose
}

// Holes returns the measures of task i, and nil when it digs none.
func (p *Plan) Holes(i int) *Holes {
	h := p.work.tasks[i].holes
	if h == nil {
		return nil
	}
	f := h.task
	return &Holes{f.Holes, f.Width, f.Depth, f.Ball, f.Depth - h.deep, f.AboveGrade + h.proud, f.Ball.Across, h.dug, h.ball, h.round, h.material, h.left}
}

// Delivery is the yard's own vehicle, as the job has it; nil when it brings
// nothing.
func (p *Plan) Delivery() *Delivery { return p.work.job.Delivery }
