package yard_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
)

// TestOddPacks: packs that are no whole number of nanolitres are ordered, loaded and
// brought as packs within a millionth of a litre of them are.
func TestOddPacks(t *testing.T) {
	plan := func(small, large string) *mix.Plan {
		p, err := mix.PlanDocument([]byte(mulchJob(`{"pack": "`+small+`", "price": "3", "deliver": true, "weight": "20 lb"}, `+
			`{"pack": "`+large+`", "price": "5.50", "deliver": true, "weight": "20 lb"}`,
			`, "haul": {"room": "8 cu ft", "trip_cost": "50"}, "delivery": {"fee": "6", "capacity": "8 cu ft", "payload": "60 lb"}`)))
		require.NoError(t, err)
		return p
	}
	odd, even := plan("1/7 cu yd", "2/7 cu yd"), plan("109.222123 L", "218.444245 L")
	require.NotEmpty(t, odd.Drops)
	require.Equal(t, even.Bill, odd.Bill)
	require.Equal(t, len(even.Lines), len(odd.Lines))
	for i := range odd.Lines {
		require.Equal(t, even.Lines[i].Count, odd.Lines[i].Count)
		require.InDelta(t, even.Lines[i].Left.Litres(), odd.Lines[i].Left.Litres(), 1e-5)
	}
	limits := func(p *mix.Plan) string {
		var s []string
		for _, trip := range append(p.Trips, p.Drops...) {
			s = append(s, trip.Limit)
		}
		return strings.Join(s, ", ")
	}
	require.Equal(t, limits(even), limits(odd))
	require.Contains(t, limits(odd), "room")
}
