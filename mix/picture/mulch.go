package picture

import "example.org/barrow/mix"

// mulch draws a covered bed in section, the circle round a stem cut through its
// middle, all of it to one scale. A bed that the job amends, as large as this
// one, lies underneath.
func (k *pen) mulch(b *mix.Mulch) {
	const from, middle = left + 13, page / 2
	const w = right - from
	name := k.p.Tasks[k.Task].Filling
	k.Kind = "mulch"
	k.tell(mulchTold, k.length(b.Layer), name)
	under := k.amended(b)
	var bedDepth float64
	if under != nil {
		bedDepth = float64(under.Finished)
		k.tell(mulchBedTold, k.length(under.Finished))
	}
	scale := 150 / (float64(b.Layer) + bedDepth)
	if bedDepth == 0 {
		scale = 64 / float64(b.Layer)
	}
	if b.Clear > 0 {
		scale = min(scale, 84/float64(b.Clear))
		k.tell(mulchStemsTold, count(b.Stems), k.length(b.Clear))
	}
	layer, bare := float64(b.Layer)*scale, float64(b.Clear)*scale

	room := w - 16
	if b.Clear > 0 {
		room = middle - from - 16 - bare
	}
	deep := wrap(k.say(bedLayer, name, k.length(b.Layer)), room, 3, "label")
	inside := fits(deep, layer) && room > 90
	if !inside {
		deep = wrap(k.say(bedLayer, name, k.length(b.Layer)), middle-from-8, 4, "label")
	}
	var clear []string
	if b.Clear > 0 {
		clear = wrap(k.say(mulchClear, k.length(b.Clear)), right-middle-10, 3, "label")
	}
	head := step * float64(len(clear))
	if !inside {
		head = max(head, step*float64(len(deep)))
	}
	plant := k.Height
	if b.Clear > 0 {
		head += 36 // for the leaves
	}
	top := k.Height + head + 10
	ground := top + layer
	if b.Clear > 0 {
		k.plant(middle, plant, ground)
		k.lines("label", "start", middle+8, top-10-step*float64(len(clear)), clear)
		k.across(middle, middle+bare, top-6)
		k.rect("mulch", from, top, middle-bare-from, layer)
		k.rect("mulch", middle+bare, top, right-middle-bare, layer)
	} else {
		k.rect("mulch", from, top, w, layer)
	}
	if inside {
		k.inside(from+8, top, layer, deep)
	} else {
		k.lines("label", "start", from+8, top-6-step*float64(len(deep)), deep)
	}
	k.upright(left+6, top, ground)

	// Under the ground line: the sheet, then soil as deep as its texts need.
	var rows []string
	if b.Sheets > 0 {
		sentence := mulchSheets
		if !b.Exact {
			sentence = mulchSheetsAbout
		}
		k.tell(sentence, count(b.Sheets))
		rows = wrap(k.say(sentence, count(b.Sheets)), w-30, 2, "label")
	}
	soil := mulchSoil
	depth := ""
	if under != nil {
		soil, depth = mulchBed, k.length(under.Finished)
	}
	rows = append(rows, wrap(k.say(soil, depth), w-30, 2, "label")...)
	tall := step*float64(len(rows)) + 12
	class := "soil firm"
	if under != nil {
		class = "mix"
		if bed := bedDepth * scale; bed >= tall {
			tall = bed
		} else { // no room for its texts in it
			k.rect("mix", from, ground, w, bed)
			k.upright(left+6, ground, ground+bed)
			ground += bed
			class = "soil firm"
		}
	}
	k.rect(class, from, ground, w, tall)
	if class == "mix" {
		k.upright(left+6, ground, ground+tall)
	}
	k.lines("label", "start", from+8, ground+5, rows)
	k.line("grade", from, top+layer, right, top+layer)
	if b.Sheets > 0 {
		k.line("sheet", from, top+layer, middle-bare, top+layer)
		k.line("sheet", middle+bare, top+layer, right, top+layer)
	}
	if b.Clear > 0 {
		k.grain("mulch-grain", from, top, middle-bare-from, layer, nil)
		k.grain("mulch-grain", middle+bare, top, right-middle-bare, layer, nil)
	} else {
		k.grain("mulch-grain", from, top, w, layer, nil)
	}
	k.grain("soil-grain", from, ground, w, tall, nil)
	k.Height = ground + tall
	k.ruler(scale, toScale)
}

// amended is the bed that the job amends on ground as large as this, if there
// is one and no other.
func (k *pen) amended(b *mix.Mulch) (found *mix.Bed) {
	for i := range k.p.Tasks[:min(len(k.p.Tasks), mostTasks)] {
		if bed := k.p.Bed(i); bed != nil && bed.Area == b.Ground {
			if found != nil {
				return nil
			}
			found = bed
		}
	}
	return found
}

// plant draws a stem with leaves to its left: a sign for any plant.
func (k *pen) plant(x, top, ground float64) {
	k.line("stem", x, ground, x, top+6)
	for _, leaf := range [...]string{"q-10-12-24-6q6 12 24 6z", "q10-12 24-6q-6 12-24 6z"} {
		for _, y := range [...]float64{14, 28} {
			var t trace
			t.move(x, top+y)
			t.raw(leaf)
			k.trace("leaf", &t)
		}
	}
}
