package mix_test

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

func drawJob(t *rapid.T) *modelJob {
	j := &modelJob{onHand: map[string]typed{}}
	for _, id := range []string{"leaf-mould", "perlite", "grit"}[:rapid.IntRange(0, 3).Draw(t, "own materials")] {
		j.materials = append(j.materials, modelMaterial{id, maybeShare(t, id+" settle", 50)})
	}
	for _, id := range []string{"tub", "#2"}[:rapid.IntRange(0, 2).Draw(t, "own pots")] {
		j.pots = append(j.pots, drawPot(t, id))
	}
	for _, id := range []string{"seed", "rooting", "house", "rich"}[:rapid.IntRange(0, 4).Draw(t, "own mixes")] {
		j.mixes = append(j.mixes, drawMix(t, j, id))
	}
	for range rapid.IntRange(1, 6).Draw(t, "tasks") {
		j.tasks = append(j.tasks, drawTask(t, j))
	}
	for _, id := range slices.Sorted(maps.Keys(j.takes())) {
		if often(t, id+" on hand") {
			j.onHand[id] = typedVolume(t, id+" there", 1_000_000, 400_000_000)
		}
		if often(t, id+" offered") {
			j.offers = append(j.offers, drawOffer(t, id))
		}
	}
	for i := range j.offers {
		j.fits(t, &j.offers[i])
		j.price(t, &j.offers[i])
	}
	return j
}

// price gives the pack one, unless so many of them would cost more than a job
// may: nobody buys a hundred thousand bags.
func (j *modelJob) price(t *rapid.T, o *modelOffer) {
	need := j.buy(o.material, j.takes()[o.material]).plan
	if often(t, o.material+" priced") && packs(need, o.loose()) < 100_000 {
		cents := rapid.Int64Range(0, 10_000).Draw(t, o.material+" price")
		o.cents = &cents
	}
}

// fits now and then makes a pack that the need fills to the brim so many times,
// but for the rounding: the count on which floating point goes wrong.
func (j *modelJob) fits(t *rapid.T, o *modelOffer) {
	need := j.buy(o.material, j.takes()[o.material]).plan
	bags := rapid.Int64Range(2, 200).Draw(t, o.material+" bags to the brim")
	size := need.over(exactly(bags, 1)).whole(nanolitre)
	if o.opens != nil || size.less(exactly(2000, 1)) || !often(t, o.material+" fits") {
		return
	}
	o.size = &typed{size.over(exactly(1_000_000, 1)).rat.FloatString(9) + " L", size}
}

func drawPot(t *rapid.T, id string) modelPot {
	holds := typedVolume(t, id+" holds", 1_000_000, 30_000_000)
	p := modelPot{id: id, cells: rapid.Int64Range(0, 3).Draw(t, id+" cells"), holds: &holds}
	if often(t, id+" range") {
		low := typedVolume(t, id+" low", holds.value.float()*0.5, holds.value.float())
		high := typedVolume(t, id+" high", holds.value.float(), holds.value.float()*1.5)
		p.low, p.high = &low, &high
	}
	return p
}

// materialIDs are those that a task may name: the catalogue's and the job's own.
func (j *modelJob) materialIDs() []string {
	ids := []string{"bark-chunks", "bark-fines", "bark-mulch", "coir", "compost", "peat", "perlite", "sand", "topsoil",
		"vermiculite", "wood-chips"}
	for _, m := range j.materials {
		if !slices.Contains(ids, m.id) {
			ids = append(ids, m.id)
		}
	}
	return ids
}

func (j *modelJob) mixIDs() []string {
	ids := []string{"bark-peat", "peat-lite", "potting"} // "rooting" may become the job's own
	for _, m := range j.mixes {
		ids = append(ids, m.id)
	}
	return ids
}

// drawMix makes a mix of materials and of mixes that came before it.
func drawMix(t *rapid.T, j *modelJob, id string) modelMix {
	m := modelMix{id: id, blend: maybeShare(t, id+" blend loss", 30), settle: maybeShare(t, id+" settle", 40)}
	from := slices.Concat(j.materialIDs(), j.mixIDs())
	amounts := []scale{mixed("1", 1, ""), mixed("1", 4, ""), places("1", 1, "")}
	for _, i := range rapid.SliceOfNDistinct(rapid.IntRange(0, len(from)-1), 1, 5, rapid.ID[int]).Draw(t, id+" parts") {
		amount := typedOn(t, id+" amount", amounts, 0.2, 20)
		amount.text = strings.TrimSpace(amount.text)
		m.parts = append(m.parts, modelPart{from[i], amount})
	}
	return m
}

func drawOffer(t *rapid.T, id string) modelOffer {
	o := modelOffer{material: id, bulk: often(t, id+" in bulk")}
	size := typedVolume(t, id+" pack", 5_000_000, 120_000_000)
	if o.bulk {
		size = typedVolume(t, id+" step", 100_000_000, 800_000_000)
	}
	o.size = &size
	if !o.bulk && (id == "peat" || often(t, id+" compressed")) {
		opens := typedVolume(t, id+" opens", size.value.float()*1.2, size.value.float()*2)
		o.opens = &opens
	}
	return o
}

func drawTask(t *rapid.T, j *modelJob) modelTask {
	task := modelTask{kind: rapid.SampledFrom([]string{"fill", "amend", "backfill", "cover"}).Draw(t, "kind")}
	if task.isMix = often(t, "of a mix"); task.isMix {
		task.filling = rapid.SampledFrom(j.mixIDs()).Draw(t, "mix")
	} else {
		task.filling = rapid.SampledFrom(j.materialIDs()).Draw(t, "material")
	}
	task.settle, task.spare = maybeShare(t, "settle", 60), maybeShare(t, "spare", 50)
	task.blend = maybeShare(t, "blend loss", 30)
	switch task.kind {
	case "fill":
		for range rapid.IntRange(1, 4).Draw(t, "lines") {
			task.lines = append(task.lines, drawLine(t, j))
		}
	case "amend":
		drawAmend(t, &task)
	case "cover":
		drawCover(t, &task)
	default:
		drawBackfill(t, j, &task)
	}
	return task
}

func drawAmend(t *rapid.T, task *modelTask) {
	task.ground = drawGround(t, rapid.SampledFrom([]float64{1000, 5000, 12_000}).Draw(t, "scale"), true)
	var low, high float64
	if often(t, "layer given") {
		layer := typedLength(t, "layer", 10, 150)
		task.layer, low, high = &layer, layer.value.float()*1.2, layer.value.float()*6
	} else {
		share := drawShare(t, "share", 5, 60)
		task.share, low, high = &share, 100, 400
	}
	if often(t, "into given") {
		into := typedLength(t, "into", low, high)
		task.into = &into
	} else {
		over := typedLength(t, "over", low, high)
		task.over = &over
	}
}

func drawCover(t *rapid.T, task *modelTask) {
	task.ground = drawGround(t, rapid.SampledFrom([]float64{1000, 5000, 12_000}).Draw(t, "scale"), true)
	layer := typedLength(t, "layer", 10, 150)
	task.layer = &layer
	task.clear = typedLength(t, "clear", 10, 120)
	most := task.ground.area().float() / (2 * math.Pi * math.Pow(task.clear.value.float(), 2))
	task.stems = rapid.Int64Range(0, min(200, int64(most))).Draw(t, "stems")
}

func drawBackfill(t *rapid.T, j *modelJob, task *modelTask) {
	task.holes = rapid.Int64Range(1, 200).Draw(t, "holes")
	task.width = typedLength(t, "width", 200, 900)
	task.depth = typedLength(t, "depth", 100, 500)
	width, depth := task.width.value.float(), task.depth.value.float()
	task.ball = drawBall(t, j, width*width*depth*0.5, width*0.9, depth*1.6) // some stand higher than the hole is deep
	if often(t, "above grade") {
		above := typedLength(t, "above", 5, depth*0.25)
		task.above = &above
	}
	task.soil = rapid.SampledFrom([]string{"", "clay", "loam", "sandy"}).Draw(t, "soil")
	if often(t, "material in the holes") {
		share := drawShare(t, "share", 1, 100)
		task.share = &share
		return
	}
	task.filling, task.isMix, task.settle, task.blend, task.spare = "", false, nil, nil, nil
}

// drawBall draws a ball of at most four fifths of room, inside a cylinder.
func drawBall(t *rapid.T, j *modelJob, room, across, height float64) modelBall {
	var classes []string
	for _, id := range j.potIDs() {
		if p := j.pot(id); p.holds.value.float() < room*0.8 {
			classes = append(classes, id)
		}
	}
	switch form := rapid.IntRange(0, 2).Draw(t, "ball"); {
	case form == 0 && len(classes) > 0:
		return modelBall{class: rapid.SampledFrom(classes).Draw(t, "ball class")}
	case form == 1:
		v := typedVolume(t, "ball volume", room*0.2, room*0.8)
		return modelBall{volume: &v}
	}
	return modelBall{across: typedLength(t, "ball across", across*0.3, across*0.9),
		height: typedLength(t, "ball height", height*0.3, height*0.9)}
}

func (j *modelJob) potIDs() []string {
	ids := slices.Sorted(maps.Keys(trade().pots))
	for _, p := range j.pots {
		if !slices.Contains(ids, p.id) {
			ids = append(ids, p.id)
		}
	}
	return ids
}

func drawLine(t *rapid.T, j *modelJob) modelLine {
	l := modelLine{count: rapid.Int64Range(1, 400).Draw(t, "count")}
	l.form = rapid.SampledFrom([]string{"size", "holds", "brim", "box", "straight", "taper"}).Draw(t, "form")
	narrow, tall := l.drawSides(t, j)
	l.square = (l.form == "straight" || l.form == "taper" || l.form == "brim" && l.belowRim != nil) && often(t, "square")
	if l.form != "size" && often(t, "cells given") {
		l.cells = rapid.Int64Range(1, 200).Draw(t, "cells")
	}
	if tall > 0 && often(t, "below the rim") {
		rim := typedLength(t, "below rim", 2, tall*0.4)
		l.belowRim = &rim
		tall -= rim.value.float()
	}
	if often(t, "stepped up") {
		room := l.holds(j).plan.float()
		if tall == 0 { // its shape is not known: a ball inside a cube inside it
			tall = math.Cbrt(room) * 0.9
			narrow = min(tall, cmp.Or(narrow, tall))
		}
		ball := drawBall(t, j, room, narrow, tall)
		l.ball = &ball
	}
	return l
}

// drawSides draws what the form needs, and returns how wide and tall it is at
// the least, or 0 where the form does not tell.
func (l *modelLine) drawSides(t *rapid.T, j *modelJob) (narrow, tall float64) {
	at := func(i int) float64 { return l.sides[i].value.float() }
	switch l.form {
	case "size":
		l.class = rapid.SampledFrom(j.potIDs()).Draw(t, "class")
		return 0, 0
	case "holds":
		l.sides = []typed{typedVolume(t, "holds", 5000, 60_000_000)}
		return 0, 0
	case "brim":
		brim := typedVolume(t, "brim", 5000, 60_000_000)
		l.sides = []typed{brim}
		if !often(t, "a fill line") {
			return 0, 0
		}
		side := math.Cbrt(brim.value.float())
		wide := typedLength(t, "wide", side*0.8, side*1.4)
		rim := typedLength(t, "below rim", side*0.02, side*0.4) // the widest pot is half as deep as a cube
		l.sides, l.belowRim, l.tapers = append(l.sides, wide), &rim, often(t, "tapers")
		return side * 0.8, 0
	case "box":
		l.sides = []typed{typedLength(t, "long", 60, 1200), typedLength(t, "wide", 60, 600),
			typedLength(t, "deep", 40, 500)}
		return min(at(0), at(1)), at(2)
	case "straight":
		l.sides = []typed{typedLength(t, "across", 40, 600), typedLength(t, "height", 40, 500)}
		return at(0), at(1)
	}
	top := typedLength(t, "top", 50, 600)
	l.sides = []typed{top, typedLength(t, "bottom", top.value.float()*0.5, top.value.float()),
		typedLength(t, "height", 40, 500)}
	return at(1), at(2)
}
