package picture

import (
	"math"

	"example.org/barrow/mix"
	"example.org/barrow/units"
)

// repose is the slope of a heap of loose soil or bark, as a rise over a run:
// 35 degrees, common practice.
const repose = .7

// holes draws one planting hole in section, and beside it the heap that is left
// of its soil, all of it to one scale.
func (k *pen) holes(h *mix.Holes) {
	m := k.p.Voice()
	k.Kind = "hole"
	each := func(v units.Volume) units.Volume { one, _ := v.MulDiv(1, h.Count); return one }
	below, depth, above := float64(h.Below), float64(h.Depth), float64(h.Above)
	across := float64(h.Across)
	if across == 0 { // as wide as a straight ball of its volume is
		across = 1e8 * math.Sqrt(each(h.InBall.Plan).Litres()/(math.Pi/4*below/1e8))
	}
	// A cone of the volume: pi r^2 / 3 times r times the slope.
	heap := 1e8 * math.Cbrt(each(h.Left.Plan).Litres()*3/(math.Pi*repose))
	scale := min(128/float64(h.Width), 100/(depth+above), 130/(2*heap))

	name := k.p.Tasks[k.Task].Filling
	leftOver := wrap(k.say(holeLeft, k.volume(each(h.Left.Plan))), right-168, 4, "label")
	up := wrap(k.say(holeAbove, k.length(h.Above)), 150, 3, "label")
	if h.Above == 0 {
		up = wrap(k.say(holeLevel), 150, 3, "label")
	}
	high := heap * repose * scale
	top := k.Height + max(high+step*float64(len(leftOver))+4, above*scale+step*float64(len(up))+4)
	x := left + 12 + 128.0/2
	w, deep := float64(h.Width)*scale, depth*scale
	floor := top + deep

	back := k.say(holeBack, k.volume(each(h.Round.Plan)))
	if h.Material.High > 0 {
		back = k.say(holeMixed, k.volume(each(h.Round.Plan)), k.volume(each(h.Material.Plan)), name)
	}
	notes := []callout{
		{x + across*scale/2 - 3, top + min(12, deep/4), "label", k.say(potBall, m.Figure(h.Ball.String()))},
		{x + w/2 - 3, top + deep/2, "label", back},
		{x + w/2, floor, "label", k.say(holeDeep, k.length(h.Depth))},
	}
	// The soil is drawn first, as deep as the texts in it go: they are laid
	// out on a pen that is thrown away.
	trial := *k
	trial.Shapes = nil
	bottom := max(trial.callouts(168, top+6, notes...), floor+step+20)
	k.rect("soil firm", left, top, right-left, bottom-top)
	k.rect("backfill", x-w/2, top, w, deep)
	class := "ball"
	if h.Across == 0 {
		class = "ball guess"
	}
	k.rect(class, x-across*scale/2, top-above*scale, across*scale, (above+below)*scale)
	r := heap * scale
	hx := right - 130.0/2 - 2
	k.path("soil heap", true, hx-r, top, hx, top-high, hx+r, top)
	k.line("grade", left, top, x-w/2, top)
	k.line("grade", x+w/2, top, right, top)
	k.lines("label", "start", 168, top-high-4-step*float64(len(leftOver)), leftOver)
	k.lines("label", "start", left, top-above*scale-4-step*float64(len(up)), up)
	if h.Above > 0 {
		k.upright(x+across*scale/2+6, top-above*scale, top)
	}
	k.across(x-w/2, x+w/2, floor+8)
	wideText := cut(k.length(h.Width), 150, "label")
	k.text("label", "middle", max(x, left+4+wide2(wideText)/2), floor+12+ascent, wideText)
	k.callouts(168, top+6, notes...)
	k.grain("soil-grain", x-w/2, top, w, deep, func(u, v float64) bool {
		return math.Abs(u-x) > across*scale/2+3 || v > top+below*scale+3
	})
	k.grain("soil-grain", hx-r, top-high, 2*r, high, func(u, v float64) bool {
		return math.Abs(u-hx) < (v-top+high)/repose-3
	})
	if h.Material.High > 0 {
		k.grain("layer-grain", x-w/2+8, top+4.5, w-8, deep-4.5, func(u, v float64) bool {
			return math.Abs(u-x) > across*scale/2+3 || v > top+below*scale+3
		})
	}
	k.Height = bottom
	k.ruler(scale, toScale)
	if h.Across == 0 {
		k.note(k.say(holeGuess))
	}
	k.tell(holeTold, k.length(h.Width), k.length(h.Depth), m.Figure(h.Ball.String()))
	if h.Above > 0 {
		k.tell(holeAbove, k.length(h.Above))
	} else {
		k.tell(holeLevel)
	}
	k.Description += " " + back + "."
	k.tell(holeLeft, k.volume(each(h.Left.Plan)))
	k.Description += "."
	if h.Count > 1 {
		all := k.say(holeAll, count(h.Count), k.p.SpanText(h.Left))
		k.note(all)
		k.Description += " " + all
	}
	if h.Across == 0 {
		k.tell(holeGuess)
	}
}
