package picture

import "example.org/barrow/mix/task"

// bed draws an amended bed before and after, side by side on one ground line,
// with depths to scale.
func (k *pen) bed(b *task.Bed) {
	const (
		tall = 170.0 // layer and loosened soil together
		x1   = left + 13
		w    = 126.0
		x2   = right - 13 - w
		text = w - 12
	)
	name, share := k.p.Tasks[k.Task].Filling, k.p.Printer().Share(b.Share)
	fresh := k.p.Printer().LengthRange(b.Fresh[0], b.Fresh[1])
	settled := k.p.Printer().LengthRange(b.Settled[0], b.Settled[1])
	k.Kind = "bed"
	before := k.sentence(bedDesc).length(b.Layer).text(name).length(b.Native)
	before.length(b.Finished).text(share).text(fresh).text(settled).describe()

	scale := tall / float64(b.Layer+b.Native)
	layer, native, rise := float64(b.Layer)*scale, float64(b.Native)*scale, float64(b.Rise)*scale
	spread := k.sentence(bedLayer).text(name).length(b.Layer).wrap(text, 4)
	soil := k.sentence(bedNative).length(b.Native).wrap(text, 4)
	up := k.sentence(bedRise).text(fresh).text(settled).wrap(right-x2, 3)
	worked := k.sentence(bedDeep).length(b.Finished).wrap(text, 3)
	worked.add(k.sentence(bedShare).text(share).text(name).wrap(text, 3))

	// A text that does not fit inside its region goes above or below the column.
	above := up.tall()
	outside := !spread.fits(layer)
	if outside {
		above = max(above, spread.tall())
	}
	top := k.Height + above + step + 6
	grade, bottom := top+layer, top+tall
	below := bottom + 26
	end := below

	k.rect(aLayer, x1, top, w, layer)
	k.rect(aSoilLoose, x1, grade, w, native)
	k.rect(aMix, x2, grade-rise, w, rise+native)
	for _, x := range [...]float64{x1, x2} {
		k.rect(aSoilFirm, x, bottom, w, 22)
		k.text(aLabel, atMiddle, x+w/2, bottom+16, k.sentence(bedFirm).String())
	}
	k.head(x2, top-6-up.tall(), k.sentence(bedAfter))
	k.above(up, x2, top-6)
	if outside {
		k.head(x1, top-6-spread.tall(), k.sentence(bedBefore))
		k.above(spread, x1, top-6)
	} else {
		k.head(x1, top-6, k.sentence(bedBefore))
		k.inside(spread, x1+8, top, layer)
	}
	if soil.fits(native) {
		k.inside(soil, x1+8, grade, native)
	} else {
		end = k.put(soil, x1, below)
	}
	switch { // clear of the ground line
	case worked.fits(native):
		k.inside(worked, x2+8, grade, native)
	case worked.fits(rise):
		k.inside(worked, x2+8, grade-rise, rise)
	default:
		end = max(end, k.put(worked, x2, below))
	}
	k.upright(x1-7, top, grade)
	k.upright(x1-7, grade, bottom)
	k.upright(x2-7, top, bottom)
	k.upright(right-6, grade-rise, grade)
	k.line(aGrade, x1, grade, x1+w, grade)
	k.line(aGradeOld, x1+w, grade, x2+w, grade)
	k.grain(aLayerGrain, x1, top, w, layer, nil)
	k.grain(aSoilGrain, x1, grade, w, native, nil)
	k.grain(aSoilGrain, x2, grade-rise, w, rise+native, nil)
	k.grain(aLayerGrain, x2+8, grade-rise+4.5, w-8, rise+native-4.5, nil)
	k.Height = end
	k.ruler(scale, bedScale)
	if b.Rise < b.Layer {
		k.sentence(bedSettles).length(b.Layer - b.Rise).describe().note()
	}
}
