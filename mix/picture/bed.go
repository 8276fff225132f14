package picture

import "example.org/barrow/mix"

// bed draws an amended bed before and after, side by side on one ground line,
// depths to scale.
func (k *pen) bed(b *mix.Bed) {
	const (
		tall = 170.0 // layer and loosened soil together
		x1   = left + 13
		w    = 126.0
		x2   = right - 13 - w
		text = w - 12
	)
	m, name := k.p.Voice(), k.p.Tasks[k.Task].Filling
	k.Kind = "bed"
	k.tell(bedTold, k.length(b.Layer), name, k.length(b.Native), k.length(b.Finished), m.Figure(mix.PercentText(b.Share)), k.length(b.Rise))

	scale := tall / float64(b.Layer+b.Native)
	layer, native, rise := float64(b.Layer)*scale, float64(b.Native)*scale, float64(b.Rise)*scale
	spread := wrap(k.say(bedLayer, name, k.length(b.Layer)), text, 4, "label")
	soil := wrap(k.say(bedNative, k.length(b.Native)), text, 4, "label")
	up := wrap(k.say(bedRise, k.length(b.Rise)), right-x2, 3, "label")
	worked := append(wrap(k.say(bedDeep, k.length(b.Finished)), text, 3, "label"),
		wrap(k.say(bedShare, m.Figure(mix.PercentText(b.Share)), name), text, 3, "label")...)

	// What does not fit inside a region stands above or below its column.
	above := len(up) + 1
	if !fits(spread, layer) {
		above = max(above, len(spread)+1)
	}
	top := k.Height + float64(above)*step + 6
	grade, bottom := top+layer, top+tall
	below := bottom + 26
	end := below

	k.rect("layer", x1, top, w, layer)
	k.rect("soil loose", x1, grade, w, native)
	k.rect("mix", x2, grade-rise, w, rise+native)
	for _, x := range [...]float64{x1, x2} {
		k.rect("soil firm", x, bottom, w, 22)
		k.text("label", "middle", x+w/2, bottom+16, k.say(bedFirm))
	}
	head := k.lines("figure", "start", x2, top-6-step*float64(len(up)+1), []string{k.say(bedAfter)})
	k.lines("label", "start", x2, head, up)
	if fits(spread, layer) {
		k.lines("figure", "start", x1, top-6-step, []string{k.say(bedBefore)})
		k.inside(x1+8, top, layer, spread)
	} else {
		head = k.lines("figure", "start", x1, top-6-step*float64(len(spread)+1), []string{k.say(bedBefore)})
		k.lines("label", "start", x1, head, spread)
	}
	if fits(soil, native) {
		k.inside(x1+8, grade, native, soil)
	} else {
		end = k.lines("label", "start", x1, below, soil)
	}
	switch { // clear of the ground line
	case fits(worked, native):
		k.inside(x2+8, grade, native, worked)
	case fits(worked, rise):
		k.inside(x2+8, grade-rise, rise, worked)
	default:
		end = max(end, k.lines("label", "start", x2, below, worked))
	}
	k.upright(x1-7, top, grade)
	k.upright(x1-7, grade, bottom)
	k.upright(x2-7, top, bottom)
	k.upright(right-6, grade-rise, grade)
	k.line("grade", x1, grade, x1+w, grade)
	k.line("grade old", x1+w, grade, x2+w, grade)
	k.grain("layer-grain", x1, top, w, layer, nil)
	k.grain("soil-grain", x1, grade, w, native, nil)
	k.grain("soil-grain", x2, grade-rise, w, rise+native, nil)
	k.grain("layer-grain", x2+8, grade-rise+4.5, w-8, rise+native-4.5, nil)
	k.Height = end
	k.ruler(scale, bedScale)
	if b.Rise < b.Layer {
		settles := k.say(bedSettles, k.length(b.Layer-b.Rise))
		k.note(settles)
		k.Description += " " + settles
	}
}

// fits reports whether lines of text go into a region so high.
func fits(lines []string, high float64) bool { return float64(len(lines))*step+4 <= high }

// inside writes lines in the middle of a region's height.
func (k *pen) inside(x, top, high float64, lines []string) {
	k.lines("label", "start", x, top+(high-step*float64(len(lines)))/2, lines)
}
