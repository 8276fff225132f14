package yard_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/lang"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// TestCrossing compares bags of 1 cu ft at 1.00 with steps of 10 cu ft at 5.00,
// worked out by hand. Five bags cost as much as a step and the sixth makes them
// dearer. Past 10 cu ft eleven bags cost more than two steps, and from there on
// bulk stays cheaper.
func TestCrossing(t *testing.T) {
	p, err := mix.PlanDocument([]byte(mulchJob(
		`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "10 cu ft", "price": "5.00"}`, ``)))
	require.NoError(t, err)
	list := p.Crossings()
	if len(list) != 1 || list[0].Always || list[0].Never {
		t.Fatalf("%+v", list)
	}
	for _, at := range list[0].Points {
		bags := units.Money(yard.Bags(at.Volume, units.CubicFoot)) * 100
		bulk := units.Money(yard.Bags(at.Volume, 10*units.CubicFoot)) * 500
		if at.Bags != bags || at.Bulk != bulk {
			t.Errorf("%v costs %s in bags and %s in bulk, want %s and %s", at.Volume, at.Bags, at.Bulk, bags, bulk)
		}
	}
	if d := list[0].From - 5*units.CubicFoot; d < 0 || d > units.Litre {
		t.Errorf("from %s, want 5 cu ft", units.US.Volume(list[0].From))
	}
	for offers, want := range map[string]string{
		`{"pack": "1 cu ft", "price": "9.00"}, {"bulk": "1 cu ft", "price": "5.00"}`: "the least looked at",
		`{"pack": "1 cu ft", "price": "1.00"}, {"bulk": "1 cu ft", "price": "5.00"}`: "bags are cheaper",
	} {
		p, err := mix.PlanDocument([]byte(mulchJob(offers, ``)))
		require.NoError(t, err)
		if got := p.Crossings()[0].Sentence(lang.Printer{}); !strings.Contains(got, want) {
			t.Errorf("%s: %s", offers, got)
		}
	}
}

// TestOptions checks that dearer choices leave less over, and that the first is
// the plan's own.
func TestOptions(t *testing.T) {
	p, err := mix.PlanDocument(mix.Sample())
	require.NoError(t, err)
	list := p.Options(6)
	if len(list) < 2 || list[0].Bill != p.Bill {
		t.Fatalf("%d choices, the first %+v, want %+v", len(list), list[0].Bill, p.Bill)
	}
	for i := 1; i < len(list); i++ {
		if list[i].Bill.Total <= list[i-1].Bill.Total || list[i].Left >= list[i-1].Left {
			t.Errorf("choice %d costs %s and leaves %v, after %s and %v",
				i, list[i].Bill.Total, list[i].Left, list[i-1].Bill.Total, list[i-1].Left)
		}
	}
}
