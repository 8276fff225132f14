package picture

import (
	"math"

	"example.org/barrow/mix/task"
	"example.org/barrow/units"
)

// repose is the slope of a pile of loose soil or bark, as rise over run: 35
// degrees, common practice.
const repose = .7

// holes draws one planting hole in section, and beside it the pile of soil that
// is left over, both at one scale.
func (k *pen) holes(h *task.Holes) {
	k.Kind = "hole"
	each := func(v units.Volume) units.Volume { one, _ := v.MulDiv(1, h.Count); return one }
	below, depth, above := float64(h.Below), float64(h.Depth), float64(h.Above)
	across := float64(h.Across)
	if across == 0 { // as wide as a straight ball of that volume
		across = 1e8 * math.Sqrt(each(h.InBall.Plan).Litres()/(math.Pi/4*below/1e8))
	}
	// A cone of the volume: pi r^2 / 3 times r times the slope.
	heap := 1e8 * math.Cbrt(each(h.Left.Plan).Litres()*3/(math.Pi*repose))
	scale := min(128/float64(h.Width), 100/(depth+above), 130/(2*heap))

	name := k.p.Tasks[k.Task].Filling
	dug := k.sentence(holeLeft).volume(each(h.Left.Plan))
	stands := k.sentence(holeLevel)
	if h.Above > 0 {
		stands = k.sentence(holeAbove).length(h.Above)
	}
	leftOver, up := dug.wrap(right-168, 4), stands.wrap(150, 3)
	high := heap * repose * scale
	top := k.Height + max(high+leftOver.tall()+4, above*scale+up.tall()+4)
	x := left + 12 + 128.0/2
	w, deep := float64(h.Width)*scale, depth*scale
	floor := top + deep

	back := k.sentence(holeBack).volume(each(h.Round.Plan))
	if h.Material.High > 0 {
		back = k.sentence(holeMixed).volume(each(h.Round.Plan)).volume(each(h.Material.Plan)).text(name)
	}
	notes := []callout{
		{x + across*scale/2 - 3, top + min(12, deep/4), k.sentence(potBall).figure(h.Ball.String())},
		{x + w/2 - 3, top + deep/2, back},
		{x + w/2, floor, k.sentence(holeDeep).length(h.Depth)},
	}
	// The soil is drawn first, as deep as the texts in it go. To find that out,
	// they are written once with a pen that is thrown away.
	trial := *k
	trial.Shapes = nil
	bottom := max(trial.callouts(168, top+6, notes), floor+step+20)
	k.rect(aSoilFirm, left, top, right-left, bottom-top)
	k.rect(aBackfill, x-w/2, top, w, deep)
	round := aBall
	if h.Across == 0 {
		round = aBallGuess
	}
	k.rect(round, x-across*scale/2, top-above*scale, across*scale, (above+below)*scale)
	r := heap * scale
	hx := right - 130.0/2 - 2
	k.path(aSoilHeap, true, hx-r, top, hx, top-high, hx+r, top)
	k.line(aGrade, left, top, x-w/2, top)
	k.line(aGrade, x+w/2, top, right, top)
	k.above(leftOver, 168, top-high-4)
	k.above(up, left, top-above*scale-4)
	if h.Above > 0 {
		k.upright(x+across*scale/2+6, top-above*scale, top)
	}
	k.across(x-w/2, x+w/2, floor+8)
	wideText := cut(k.length(h.Width), 150, aLabel)
	k.text(aLabel, atMiddle, max(x, left+4+labelWide(wideText)/2), floor+12+ascent, wideText)
	k.callouts(168, top+6, notes)
	k.grain(aSoilGrain, x-w/2, top, w, deep, func(u, v float64) bool {
		return math.Abs(u-x) > across*scale/2+3 || v > top+below*scale+3
	})
	k.grain(aSoilGrain, hx-r, top-high, 2*r, high, func(u, v float64) bool {
		return math.Abs(u-hx) < (v-top+high)/repose-3
	})
	if h.Material.High > 0 {
		k.grain(aLayerGrain, x-w/2+8, top+4.5, w-8, deep-4.5, func(u, v float64) bool {
			return math.Abs(u-x) > across*scale/2+3 || v > top+below*scale+3
		})
	}
	k.Height = bottom
	k.ruler(scale, toScale)
	guess := k.sentence(holeGuess)
	if h.Across == 0 {
		guess.note()
	}
	k.sentence(holeDesc).length(h.Width).length(h.Depth).figure(h.Ball.String()).describe()
	stands.describe()
	k.describe(back.String(), ".")
	k.describe(dug.String(), ".")
	if h.Count > 1 {
		k.sentence(holeAll).count(h.Count).text(k.p.Printer().Range(h.Left)).describe().note()
	}
	if h.Across == 0 {
		guess.describe()
	}
}
