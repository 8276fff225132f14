package yard_test

import (
	"testing"

	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestPriceFor: a break begins with its own count, and the last one reached holds.
func TestPriceFor(t *testing.T) {
	money := func(m units.Money) *units.Money { return &m }
	o := yard.Offer{Price: money(475), Breaks: []yard.Break{{From: 10, Price: money(450)}, {From: 20, Price: money(425)}}}
	for count, want := range map[int64]units.Money{0: 475, 1: 475, 9: 475, 10: 450, 11: 450, 19: 450, 20: 425, 1000: 425} {
		if got := o.PriceFor(count); got != want {
			t.Errorf("%d of them: %v each, want %v", count, got, want)
		}
	}
	if got := (&yard.Offer{}).PriceFor(5); got != 0 {
		t.Errorf("without a price: %v", got)
	}
}
