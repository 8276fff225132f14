package catalog_test

import (
	"fmt"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/doc"
	"example.org/barrow/units"
)

func ExampleSplit() {
	fmt.Println(catalog.Split(10*units.Litre, []int64{3, 1, 1}))
	fmt.Println(catalog.Split(units.Litre, []int64{1, 1, 1}))
	// Output:
	// [6 L 2 L 2 L]
	// [0.333333334 L 0.333333333 L 0.333333333 L]
}

func ExampleParseMix() {
	m, _ := catalog.ParseMix("3 bark-fines, peat 1, perlite 1/2")
	fmt.Println(m.Name, m.Parts)
	// Output: 3:1:1/2 mix [bark-fines 3 peat 1 perlite 1/2]
}

func ExampleBuiltIn() {
	for _, k := range catalog.BuiltIn().Containers {
		if k.ID == "#1" {
			fmt.Println(units.US.VolumeRange(k.Holds.Low, k.Holds.High), "-", k.Source)
		}
	}
	// Output: 0.658 to 1.09 gal - ANSI Z60.1 class (from memory); 183 cu in to the brim, filled 10 to the cubic foot: Washington State Univ. nursery-management text
}

func ExampleMaterialsOf() {
	fmt.Println(catalog.MaterialsOf("bark-fines 3, peat 1"), len(catalog.MaterialsOf("bark")))
	// Output: [bark-fines peat] 0
}

func ExampleScope_Filling() {
	var r doc.Reader
	s := catalog.Plain(nil)
	b := s.Filling(&r, "bark-fines 3, peat 1", "", false)
	takes := make([]units.Range, s.Len())
	ok := b.Spread(units.Exactly(100*units.Litre), takes)
	bark, _ := s.Index("bark-fines")
	peat, _ := s.Index("peat")
	fmt.Println(takes[bark].Plan, takes[peat].Plan, b.Loss, ok, r.Err())
	// Output: 75 L 25 L 10% true <nil>
}

func ExampleNewScope() {
	var r doc.Reader
	own := catalog.Own{Materials: []catalog.Material{{ID: "my-bark", Dry: 300 * 1_000_000}}}
	s := catalog.NewScope(&r, nil, own)
	_, known := s.Index("my-bark")
	fmt.Println(known)
	fmt.Println(r.Err())
	// Output:
	// true
	// materials[0].wet: give wet beside dry: the weight to haul lies between
}
