package sure_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/barrow/mix/sure"
)

// TestMatters compares influences with ones worked out by hand. Flat factors
// move 0.8 of their width between the percentiles.
func TestMatters(t *testing.T) {
	m := &sure.Model{
		Items: 2,
		Factors: []sure.Factor{
			{Low: 1, High: 2, Flat: true},     // 1.1 to 1.9, typical 1.5
			{Low: 0, High: 0.5, Flat: true},   // loss 0.05 to 0.45, typical 0.25
			{Low: 0.9, High: 1.1, Flat: true}, // supply, 0.92 to 1.08
			{Low: 1, High: 3, Flat: true},     // in need and supply alike: nothing
			{Low: 5, Mode: 5, High: 5},        // certain
			{Low: 1, High: 2, Flat: true},     // as the first
			{Low: 1, High: 9, Flat: true},     // in no term
		},
		Needs: []sure.Term{
			{0, 10, uses(0)},
			{1, 10, uses(5)},
			{1, 90, []sure.Use{{1, sure.Loss}}},
			{0, 20, uses(3)},
		},
		Supplies: []sure.Term{{0, 400, uses(2)}, {0, 20, uses(3)}, {1, 1, uses(4)}},
	}
	var got []float64
	var order []int
	all := m.Matters(10)
	for _, in := range all {
		order, got = append(order, in.Factor), append(got, in.Moves)
	}
	close := cmpopts.EquateApprox(1e-12, 1e-12)
	if diff := cmp.Diff([]int{1, 2, 0, 5}, order); diff != "" {
		t.Errorf("order (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([]float64{90/0.55 - 90/0.95, 64, 8, 8}, got, close); diff != "" {
		t.Errorf("moves (-want +got):\n%s", diff)
	}
	want := sure.State{Value: 1.08, Need: []float64{15 + 40, 15 + 120}, Supply: []float64{432 + 40, 5}}
	if diff := cmp.Diff(want, all[1].High, close); diff != "" {
		t.Errorf("the supply's high state (-want +got):\n%s", diff)
	}
	for most, n := range map[int]int{-1: 0, 0: 0, 2: 2, 4: 4, math.MaxInt: 4} {
		if got := m.Matters(most); len(got) != n {
			t.Errorf("Matters(%d) has %d", most, len(got))
		}
	}
}
