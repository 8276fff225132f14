package stable_test

import (
	"cmp"
	"slices"
	"testing"

	gocmp "github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/barrow/mix/stable"
)

type card struct{ rank, dealt int }

// TestSort compares any list with what slices.SortStableFunc makes of it.
func TestSort(t *testing.T) {
	byRank := func(a, b card) int { return cmp.Compare(a.rank, b.rank) }
	rapid.Check(t, func(t *rapid.T) {
		list := make([]card, rapid.IntRange(0, 300).Draw(t, "n"))
		ranks := rapid.IntRange(1, 400).Draw(t, "ranks")
		for i := range list {
			list[i] = card{rapid.IntRange(0, ranks).Draw(t, "rank"), i}
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, byRank)
		stable.Sort(list, byRank)
		if diff := gocmp.Diff(want, list, gocmp.AllowUnexported(card{})); diff != "" {
			t.Errorf("Sort (-want +got)\n%s", diff)
		}
	})
}

// TestEffort checks that no list takes many more than n log n comparisons.
func TestEffort(t *testing.T) {
	const n = 1 << 14
	for name, rank := range map[string]func(i int) int{
		"rising":  func(i int) int { return i },
		"falling": func(i int) int { return -i },
		"equal":   func(int) int { return 0 },
		"saw":     func(i int) int { return i % 127 },
		"mixed":   func(i int) int { return i * 7919 % n },
	} {
		list, asked := make([]card, n), 0
		for i := range list {
			list[i] = card{rank(i), i}
		}
		stable.Sort(list, func(a, b card) int { asked++; return cmp.Compare(a.rank, b.rank) })
		if asked > 18*n {
			t.Errorf("%s: %d comparisons of %d elements", name, asked, n)
		}
	}
}

func BenchmarkSort(b *testing.B) {
	list := make([]int, 1000)
	for b.Loop() {
		for i := range list {
			list[i] = i * 7919 % 1009
		}
		stable.Sort(list, cmp.Compare[int])
	}
}
