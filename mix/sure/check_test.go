package sure_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/barrow/mix/sure"
)

// TestCheck checks every way in which a model can be wrong, and the place that
// is reported.
func TestCheck(t *testing.T) {
	good := func() *sure.Model {
		return &sure.Model{
			Items:    2,
			Factors:  []sure.Factor{{Low: 0.1, Mode: 0.2, High: 0.3}, {High: 2, Flat: true, Mode: math.NaN()}},
			Needs:    []sure.Term{{0, 10, nil}, {1, 10, []sure.Use{{0, sure.Loss}, {1, sure.Times}}}},
			Supplies: exactly(1, 2),
		}
	}
	if err := good().Check(); err != nil {
		t.Errorf("a good model: %v", err)
	}
	cases := []struct {
		why   string
		spoil func(m *sure.Model)
		want  sure.Fault
	}{
		{"fewer than no items", func(m *sure.Model) { *m = sure.Model{Items: -1} }, sure.Fault{sure.Items, -1, -1, sure.Negative}},
		{"too many items", func(m *sure.Model) { m.Items = sure.MaxItems + 1 }, sure.Fault{sure.Items, -1, -1, sure.TooMany}},
		{"too many factors", func(m *sure.Model) { m.Factors = append(m.Factors, flat(sure.MaxFactors, 0, 1)...) }, sure.Fault{sure.Factors, -1, -1, sure.TooMany}},
		{"too many terms", func(m *sure.Model) { m.Supplies = make([]sure.Term, sure.MaxTerms+1) }, sure.Fault{sure.Supplies, -1, -1, sure.TooMany}},
		{"too many uses", func(m *sure.Model) { m.Needs[1].Uses = make([]sure.Use, sure.MaxUses+1) }, sure.Fault{sure.Needs, 1, -1, sure.TooMany}},
		{"low above mode", func(m *sure.Model) { m.Factors[0].Low = 0.25 }, sure.Fault{sure.Factors, 0, -1, sure.Disorder}},
		{"mode above high", func(m *sure.Model) { m.Factors[0].Mode = 0.35 }, sure.Fault{sure.Factors, 0, -1, sure.Disorder}},
		{"flat and low above high", func(m *sure.Model) { m.Factors[1].Low = 3 }, sure.Fault{sure.Factors, 1, -1, sure.Disorder}},
		{"NaN low", func(m *sure.Model) { m.Factors[0].Low = math.NaN() }, sure.Fault{sure.Factors, 0, -1, sure.NotFinite}},
		{"NaN mode", func(m *sure.Model) { m.Factors[0].Mode = math.NaN() }, sure.Fault{sure.Factors, 0, -1, sure.NotFinite}},
		{"infinite high", func(m *sure.Model) { m.Factors[1].High = math.Inf(1) }, sure.Fault{sure.Factors, 1, -1, sure.NotFinite}},
		{"below zero", func(m *sure.Model) { m.Factors[0].Low = -0.1 }, sure.Fault{sure.Factors, 0, -1, sure.Negative}},
		{"fewer than no pieces", func(m *sure.Model) { m.Factors[0].Pieces = -1 }, sure.Fault{sure.Factors, 0, -1, sure.Negative}},
		{"too many pieces", func(m *sure.Model) { m.Factors[0].Pieces = sure.MaxPieces + 1 }, sure.Fault{sure.Factors, 0, -1, sure.TooLarge}},
		{"too large a figure", func(m *sure.Model) { m.Factors[1].High = 2e9 }, sure.Fault{sure.Factors, 1, -1, sure.TooLarge}},
		{"no such item", func(m *sure.Model) { m.Supplies[1].Item = 2 }, sure.Fault{sure.Supplies, 1, -1, sure.Unknown}},
		{"item below 0", func(m *sure.Model) { m.Needs[0].Item = -1 }, sure.Fault{sure.Needs, 0, -1, sure.Unknown}},
		{"no such factor", func(m *sure.Model) { m.Needs[1].Uses[1].Factor = 2 }, sure.Fault{sure.Needs, 1, 1, sure.Unknown}},
		{"factor below 0", func(m *sure.Model) { m.Needs[1].Uses[0].Factor = -1 }, sure.Fault{sure.Needs, 1, 0, sure.Unknown}},
		{"no such kind", func(m *sure.Model) { m.Needs[1].Uses[1].Kind = 2 }, sure.Fault{sure.Needs, 1, 1, sure.Unknown}},
		{"a loss of all", func(m *sure.Model) { m.Factors[0].High = 1 }, sure.Fault{sure.Needs, 1, 0, sure.LossOfAll}},
		{"amount below 0", func(m *sure.Model) { m.Needs[0].Amount = -1 }, sure.Fault{sure.Needs, 0, -1, sure.Negative}},
		{"NaN amount", func(m *sure.Model) { m.Needs[1].Amount = math.NaN() }, sure.Fault{sure.Needs, 1, -1, sure.NotFinite}},
		{"infinite amount", func(m *sure.Model) { m.Supplies[0].Amount = math.Inf(1) }, sure.Fault{sure.Supplies, 0, -1, sure.NotFinite}},
		{"too large with its uses", func(m *sure.Model) { m.Needs[1].Amount = 0.9e15 }, sure.Fault{sure.Needs, 1, -1, sure.TooLarge}},
	}
	for _, c := range cases {
		m := good()
		c.spoil(m)
		var all sure.Faults
		if !errors.As(m.Check(), &all) || len(all) != 1 {
			t.Errorf("%s: Check() = %v, want one fault", c.why, m.Check())
			continue
		}
		var first *sure.Fault
		if !errors.As(error(all), &first) || cmp.Diff(c.want, *first) != "" {
			t.Errorf("%s: %s", c.why, cmp.Diff(c.want, *all[0]))
		}
	}
}

// TestCheckAll checks that all faults are reported at once, in the model's
// order.
func TestCheckAll(t *testing.T) {
	m := &sure.Model{Items: 1, Factors: []sure.Factor{{Low: 1}}, Needs: []sure.Term{{11, -1, uses(12)}}}
	want := "factors[0]: low, mode and high are not in order\n" +
		"needs[0]: refers to what is not there\n" +
		"needs[0].uses[0]: refers to what is not there\n" +
		"needs[0]: below zero"
	if got := m.Check(); got == nil || got.Error() != want {
		t.Errorf("Check() = %v, want %v", got, want)
	}
	defer func() {
		if recover() == nil {
			t.Error("Chance() of a bad model did not panic")
		}
	}()
	m.Chance()
}
