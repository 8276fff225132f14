package picture

import "example.org/barrow/mix/task"

// mulch draws a covered bed in section, with the circle around a stem cut
// through its middle, at one scale. When the job amends a bed of the same size,
// that bed is drawn underneath.
func (k *pen) mulch(b *task.Mulch) {
	const from, middle = left + 13, page / 2
	const w = right - from
	name := k.p.Tasks[k.Task].Filling
	k.Kind = "mulch"
	k.sentence(mulchDesc).length(b.Layer).text(name).describe()
	under := k.amended(b)
	var bedDepth float64
	if under != nil {
		bedDepth = float64(under.Finished)
		k.sentence(mulchBedDesc).length(under.Finished).describe()
	}
	scale := 150 / (float64(b.Layer) + bedDepth)
	if bedDepth == 0 {
		scale = 64 / float64(b.Layer)
	}
	if b.Clear > 0 {
		scale = min(scale, 84/float64(b.Clear))
		k.sentence(mulchStemsDesc).count(b.Stems).length(b.Clear).describe()
	}
	layer, bare := float64(b.Layer)*scale, float64(b.Clear)*scale

	room := w - 16
	if b.Clear > 0 {
		room = middle - from - 16 - bare
	}
	named := k.sentence(bedLayer).text(name).length(b.Layer)
	deep := named.wrap(room, 3)
	inside := deep.fits(layer) && room > 90
	if !inside {
		deep = named.wrap(middle-from-8, 4)
	}
	clear := &para{}
	if b.Clear > 0 {
		clear = k.sentence(mulchClear).length(b.Clear).wrap(right-middle-10, 3)
	}
	head := clear.tall()
	if !inside {
		head = max(head, deep.tall())
	}
	plant := k.Height
	if b.Clear > 0 {
		head += 36 // for the leaves
	}
	top := k.Height + head + 10
	ground := top + layer
	if b.Clear > 0 {
		k.plant(middle, plant, ground)
		k.above(clear, middle+8, top-10)
		k.across(middle, middle+bare, top-6)
		k.rect(aMulch, from, top, middle-bare-from, layer)
		k.rect(aMulch, middle+bare, top, right-middle-bare, layer)
	} else {
		k.rect(aMulch, from, top, w, layer)
	}
	if inside {
		k.inside(deep, from+8, top, layer)
	} else {
		k.above(deep, from+8, top-6)
	}
	k.upright(left+6, top, ground)

	// Under the ground line: the sheet, then soil as deep as its texts need.
	rows := &para{}
	if b.Sheets > 0 {
		sentence := mulchSheets
		if !b.Exact {
			sentence = mulchSheetsAbout
		}
		rows = k.sentence(sentence).count(b.Sheets).describe().wrap(w-30, 2)
	}
	soil := k.sentence(mulchSoil)
	if under != nil {
		soil = k.sentence(mulchBed).length(under.Finished)
	}
	rows.add(soil.wrap(w-30, 2))
	tall := rows.tall() + 12
	below := aSoilFirm
	if under != nil {
		below = aMix
		if bed := bedDepth * scale; bed >= tall {
			tall = bed
		} else { // no room for its texts in it
			k.rect(aMix, from, ground, w, bed)
			k.upright(left+6, ground, ground+bed)
			ground += bed
			below = aSoilFirm
		}
	}
	k.rect(below, from, ground, w, tall)
	if below == aMix {
		k.upright(left+6, ground, ground+tall)
	}
	k.put(rows, from+8, ground+5)
	k.line(aGrade, from, top+layer, right, top+layer)
	if b.Sheets > 0 {
		k.line(aSheet, from, top+layer, middle-bare, top+layer)
		k.line(aSheet, middle+bare, top+layer, right, top+layer)
	}
	if b.Clear > 0 {
		k.grain(aMulchGrain, from, top, middle-bare-from, layer, nil)
		k.grain(aMulchGrain, middle+bare, top, right-middle-bare, layer, nil)
	} else {
		k.grain(aMulchGrain, from, top, w, layer, nil)
	}
	k.grain(aSoilGrain, from, ground, w, tall, nil)
	k.Height = ground + tall
	k.ruler(scale, toScale)
}

// amended returns the bed that the job amends on ground of the same size, if
// there is exactly one.
func (k *pen) amended(b *task.Mulch) (found *task.Bed) {
	for i := range k.p.Tasks[:min(len(k.p.Tasks), mostTasks)] {
		if bed, ok := k.p.Tasks[i].Result.(*task.Bed); ok && bed.Area == b.Ground {
			if found != nil {
				return nil
			}
			found = bed
		}
	}
	return found
}

// plant draws a stem with leaves on its left, as a sign for any plant.
func (k *pen) plant(x, top, ground float64) {
	k.line(aStem, x, ground, x, top+6)
	for _, leaf := range [...]string{"q-10-12-24-6q6 12 24 6z", "q10-12 24-6q-6 12-24 6z"} {
		for _, y := range [...]float64{14, 28} {
			var t trace
			t.move(x, top+y)
			t.raw(leaf)
			k.trace(aLeaf, &t)
		}
	}
}
