package catalog

import (
	"example.org/barrow/units"
)

// Fullness is how much of its nominal volume a pack holds, which is likeliest all
// of it. Packs that are bought together vary together, and each besides by itself:
// a pack holds its nominal volume times a share of Lot times a share of Each.
// Weights, payloads and chances all take the ranges from here.
type Fullness struct {
	_ [0]func() // not comparable, so that no browser downloads the comparing

	Lot    [2]units.Ratio // the average of what is bought together, least and most
	Each   [2]units.Ratio // one pack about that average; the middle is the whole
	Source Source         // says the range of one pack, and where it comes from
}

// BagFullness returns how full bags are.
//
// The law takes a label at its word on average and lets single packages differ: the
// average of a shipment is not below what is stated, and no package is short beyond
// reason (16 CFR 500.25(c)). An inspection that follows NIST Handbook 133 asks both
// of a sample; its section 3.10 is the test for mulch and soil, and a bag may be 5%
// short there (Ohio Department of Agriculture: one bag of twelve may). So each bag is
// from 5% under to 5% over the average of its lot. The average of a lot is the label,
// as nearly as a sample of twelve bags can tell: the handbook corrects by 0.635
// deviations of the sample (2.201 over the root of 12; from memory), and 0.635 of
// 2.04%, the deviation of that triangle, is 1.3%. Not every lot meets its label: in
// 1996 more than 80% of the lots tested in a dozen states were short (Mulch & Soil
// Council).
func BagFullness() Fullness {
	return Fullness{
		Lot: [2]units.Ratio{ratio(987, 1000), ratio(1013, 1000)}, Each: [2]units.Ratio{units.Percent(95), units.Percent(105)},
		Source: Source{Kind: "memory",
			Text: "a bag is within 6 1/2% of full: the lot about 1%, each bag 5% by itself; that one may be 5% short is NIST Handbook 133, from memory"},
	}
}

// BucketFullness returns how full the loader's buckets are in which m is sold by the
// yard. A bucket has no standard size. The habit of the loader is common to all, and
// each differs besides; the two together come to the range of one bucket. Moist soil
// heaps higher than bark or gravel.
func (m *Material) BucketFullness() Fullness {
	f := Fullness{
		Lot: [2]units.Ratio{ratio(18, 19), ratio(22, 21)}, Each: [2]units.Ratio{units.Percent(95), units.Percent(105)},
		Source: Source{Kind: "read",
			Text: "a bucket is 90 to 110% full: Caterpillar Performance Handbook, edition 47, bucket fill factors of uniform aggregates"},
	}
	if m.Has("soil") {
		f.Lot[1] = ratio(8, 7)
		f.Source.Text = "a bucket is 90 to 120% full: Caterpillar Performance Handbook, edition 47, bucket fill factors of aggregates and of moist loam"
	}
	return f
}

// ratio is n/d, which must be one.
func ratio(n, d int64) units.Ratio {
	r, err := units.NewRatio(n, d)
	if err != nil {
		panic(err)
	}
	return r
}

// Of returns the least and the most that a pack of nominal volume v holds,
// rounded to the nanolitre and at most [units.MaxVolume].
func (f *Fullness) Of(v units.Volume) (least, most units.Volume) {
	of := func(v units.Volume, end int) units.Volume {
		for _, r := range [2]units.Ratio{f.Lot[end], f.Each[end]} {
			w, ok := v.MulDiv(r.Num(), r.Den())
			if !ok {
				return units.MaxVolume
			}
			v = w
		}
		return v
	}
	return of(v, 0), of(v, 1)
}
