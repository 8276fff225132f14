package mix_test

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"example.org/barrow/mix/catalog"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestBagsExact: never one bag over, never one short.
func TestBagsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := units.Volume(rapid.Int64Range(int64(catalog.Slack)+1, int64(units.CubicMetre)).Draw(t, "size"))
		need := units.Volume(rapid.Int64Range(0, int64(100*units.CubicMetre)).Draw(t, "need"))
		if k := rapid.Int64Range(0, 1000).Draw(t, "bags to the brim"); k > 0 {
			near := rapid.Int64Range(-2, 2).Draw(t, "beside the slack")
			need = units.Volume(k)*size + catalog.Slack*units.Volume(rapid.IntRange(0, 1).Draw(t, "with slack")) +
				units.Volume(near)
		}
		want := packs(exactly(int64(need), 1000), exactly(int64(size), 1000))
		if got := yard.Bags(need, size); got != want {
			t.Fatalf("Bags(%d, %d) = %d, want %d", need, size, got, want)
		}
	})
}

// TestBagsOfEqualBeds: beds that together fill exactly so many bags buy so many,
// though no bed is a whole count of nanolitres.
func TestBagsOfEqualBeds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := typedVolume(t, "bag", 1_000_000, 500_000_000)
		size.value = size.value.whole(nanolitre)
		bags := rapid.Int64Range(1, 500).Draw(t, "bags")
		beds := rapid.Int64Range(1, 1000).Draw(t, "beds")
		bed := size.value.taken(bags).over(exactly(beds, 1)).whole(nanolitre)
		need := units.Volume(bed.taken(1000).taken(beds).rat.Num().Int64())
		if got := yard.Bags(need, units.Volume(size.value.taken(1000).rat.Num().Int64())); got != bags {
			t.Fatalf("%d beds that fill %d bags of %s take %d", beds, bags, size.text, got)
		}
	})
}

// TestTenBeds is the trap by its name: 10 x 0.7 cu yd are 189 cu ft and the
// little that ten roundings add.
func TestTenBeds(t *testing.T) {
	bed := typed{"0.7 cu yd", decimal("535188400.5888").whole(nanolitre)}
	zero := &typed{"0%", exactly(0, 1)}
	j := &modelJob{
		tasks:  []modelTask{{kind: "fill", filling: "topsoil", settle: zero}},
		offers: []modelOffer{{material: "topsoil", size: &typed{"1 cu ft", decimal("28316846.592")}}},
	}
	for range 10 {
		j.tasks[0].lines = append(j.tasks[0].lines, modelLine{count: 1, form: "holds", sides: []typed{bed}})
	}
	plan := planned(t, j.document())
	if got := plan.Lines[0].Count; got != 189 {
		t.Errorf("ten beds of 0.7 cu yd take %d bags of 1 cu ft, want 189", got)
	}
	if plan.Needs[0].Buy.Plan == 189*units.CubicFoot {
		t.Error("ten beds come to 189 cu ft exactly: the trap is not set")
	}
}

// TestShareOfAnAcre: a third of ten inches over an acre is 12,100 cu ft. The layer
// has no whole count of nanometres, and half of one over an acre is 2 mL.
func TestShareOfAnAcre(t *testing.T) {
	j := &modelJob{
		tasks: []modelTask{{kind: "amend", filling: "compost", share: &typed{"1/3", exactly(1, 3)}, into: &typed{"10 in", exactly(254, 1)},
			ground: modelGround{shape: "area", count: 1, sides: []typed{{"1 acre", decimal("4046856422.4")}}}}},
		offers: []modelOffer{{material: "compost", size: &typed{"1 cu ft", decimal("28316846.592")}}},
	}
	plan := planned(t, j.document())
	got, want := plan.Lines[0].Count, int64(12_100)
	if got != want || packs(j.takes()["compost"].plan, j.offers[0].size.value) != want {
		t.Errorf("a third of ten inches over an acre takes %d bags of 1 cu ft, want %d", got, want)
	}
}

// TestSplitSums: shares add up to the whole, each within a nanolitre of its exact
// share, and equal parts come out equal but for one.
func TestSplitSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, int64(units.MaxVolume)).Draw(t, "whole")
		parts := rapid.SliceOfN(rapid.Int64Range(0, 1000), 1, 9).Draw(t, "parts")
		var sum int64
		for _, p := range parts {
			sum += p
		}
		if sum == 0 {
			t.Skip("nothing to share by")
		}
		if rapid.Bool().Draw(t, "comes out even") {
			whole = whole / 10_000 * sum
		}
		got := catalog.Split(units.Volume(whole), parts)
		checkSplit(t, whole, sum, parts, got)
	})
}

func checkSplit(t *rapid.T, whole, sum int64, parts []int64, got []units.Volume) {
	left := whole
	first := map[int64]units.Volume{}
	for i, p := range parts {
		left -= int64(got[i])
		want := exactly(whole, 1).taken(p).over(exactly(sum, 1))
		off := exactly(int64(got[i]), 1).minus(want).rat
		if off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 || want.rat.IsInt() && off.Sign() != 0 {
			t.Fatalf("Split(%d, %v)[%d] = %d, want %s", whole, parts, i, got[i], want.rat.FloatString(3))
		}
		if f, ok := first[p]; !ok {
			first[p] = got[i]
		} else if f < got[i] || f > got[i]+1 {
			t.Fatalf("Split(%d, %v)[%d] = %d, an equal part before it %d", whole, parts, i, got[i], f)
		}
	}
	if left != 0 {
		t.Fatalf("Split(%d, %v) = %v, which is %d short", whole, parts, got, left)
	}
}
