package yard_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
	"example.org/barrow/mix/doc"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// at plans a job with changes at the yard.
func at(t *testing.T, job string, y *yard.Yard) (before, after *mix.Plan) {
	t.Helper()
	j, err := mix.Decode([]byte(job))
	require.NoError(t, err)
	before, err = j.Plan()
	require.NoError(t, err)
	left, err := j.At(y)
	require.NoError(t, err)
	after, err = left.Plan()
	require.NoError(t, err)
	return before, after
}

// TestPaid: what is paid and what is still to pay add up to what there was to pay, where
// the offers are as they were. Each is worked out by hand on a need of 10 cu ft.
func TestPaid(t *testing.T) {
	bag := `{"pack": "2 cu ft", "price": "1.01", "deposit": "0.50"}`
	for _, tt := range []struct {
		why, offers, more string
		bought            []yard.Bought
		want              string // paid, still to pay, in all, before
	}{
		{"three of five", bag, ``, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}}, "3.03 2.02 5.05 5.05"},
		{"with tax, rounded for each purchase", bag, `, "tax": "7%"`, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}},
			"3.24 2.16 5.40 5.40"}, // 3.03 + 0.2121, 2.02 + 0.1414, 5.05 + 0.3535
		{"all of it", bag, `, "tax": "7%"`, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 5}}, "5.40 0.00 5.40 5.40"},
		{"in two purchases", bag, ``, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 2}, {Offer: "bark-mulch:2 cu ft", Count: 3}},
			"5.05 0.00 5.05 5.05"},
		{"at another cost", bag, `, "tax": "10%"`, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3, Cost: money(100)}},
			"1.10 2.22 3.32 5.56"}, // 1.00 + 0.10, 2.02 + 0.202, 5.05 + 0.505
		{"for nothing", bag, ``, []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3, Cost: money(0)}}, "0.00 2.02 2.02 5.05"},
		{"at the price for so many", `{"pack": "1 cu ft", "price": "2.00", "breaks": [{"from": 10, "price": "1.50"}]}`, ``,
			[]yard.Bought{{Offer: "bark-mulch:1 cu ft", Count: 10}}, "15.00 0.00 15.00 15.00"},
		{"without the drives made", bag, `, "haul": {"room": "2 cu ft", "trip_cost": "9.00"}`,
			[]yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}}, "3.03 20.02 23.05 50.05"},
	} {
		before, after := at(t, mulchJob(tt.offers, tt.more), &yard.Yard{Bought: tt.bought})
		paid := &after.Bought.Bill
		require.Equal(t, tt.want, fmt.Sprint(paid.Total, " ", after.Bill.Total, " ", after.InAll(), " ", before.InAll()), tt.why)
		require.True(t, after.Priced(), tt.why)
		require.Equal(t, paid.Goods+paid.Tax, paid.Total, tt.why)
		require.Equal(t, yard.Purchases{}, before.Bought, tt.why)
	}
	_, after := at(t, mulchJob(bag, ``), &yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}}})
	require.Equal(t, units.Money(150), after.Bought.Bill.Deposit)
	_, after = at(t, mulchJob(`{"pack": "2 cu ft"}`, ``), &yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 3}}})
	require.Equal(t, []string{"bark-mulch"}, after.Bought.Unpriced)
	require.False(t, after.Bought.Priced || after.Priced())
}

func money(m units.Money) *units.Money { return &m }

// TestBadPurchases: what was paid is an amount that can be worked out.
func TestBadPurchases(t *testing.T) {
	for _, tt := range []struct{ bought, want string }{
		{`"count": 3, "cost": "-1"`, "yard.bought[0].cost quantity.negative"},
		{`"count": 3, "cost": "1,500"`, "yard.bought[0].cost number.comma"},
		{`"count": 2000000`, "yard.bought[0].count cost.large"},
	} {
		_, err := mix.PlanDocument([]byte(mulchJob(`{"pack": "2 cu ft", "price": "1000000"}`,
			`, "yard": {"bought": [{"offer": "bark-mulch:2 cu ft", `+tt.bought+`}]}`)))
		p := doc.ProblemsIn(err)
		require.Len(t, p, 1, tt.bought)
		require.Equal(t, tt.want, p[0].Path+" "+p[0].Code)
	}
}

// TestWhy: fewer are to be bought for a reason, and the list says which.
func TestWhy(t *testing.T) {
	two := `{"pack": "2 cu ft", "price": "1.00"}, {"pack": "5 cu ft", "price": "9.00"}`
	four := int64(4)
	for _, tt := range []struct {
		why    string
		offers string
		yard   yard.Yard
		want   string
	}{
		{"nothing changed", two, yard.Yard{}, "2 cu ft 5 0 5 same"},
		{"sold out", two, yard.Yard{Without: []string{"bark-mulch:2 cu ft"}}, "2 cu ft 5 0 0 gone sold-out; 5 cu ft 0 0 2 new"},
		{"bought", two, yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 5}}}, "2 cu ft 5 5 0 gone bought"},
		{"some of it bought", two, yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 1}}}, "2 cu ft 5 1 4 fewer bought"},
		{"no longer needed", two, yard.Yard{Bought: []yard.Bought{{Offer: "bark-mulch:5 cu ft", Count: 2}}}, "2 cu ft 5 0 0 gone not-needed; 5 cu ft 0 2 0 same"},
		{"too few", two, yard.Yard{Only: &four}, "2 cu ft 5 0 3 fewer not-needed; 5 cu ft 0 0 1 new"},
		{"all there are", `{"pack": "2 cu ft", "price": "1.00"}`, yard.Yard{Only: &four}, "2 cu ft 5 0 4 fewer scarce"},
		{"bought, and then sold out", two, yard.Yard{Without: []string{"bark-mulch:2 cu ft"}, Bought: []yard.Bought{{Offer: "bark-mulch:2 cu ft", Count: 1}}},
			"2 cu ft 5 1 0 gone sold-out; 5 cu ft 0 0 2 new"},
	} {
		before, after := at(t, mulchJob(tt.offers, ``), &tt.yard)
		got := ""
		for _, c := range after.ChangesFrom(before) {
			if got != "" {
				got += "; "
			}
			got += fmt.Sprint(c.Pack, " ", c.Before, " ", c.Bought, " ", c.After, " ", c.Kind())
			if c.Why() != "" {
				got += " " + c.Why()
			}
		}
		require.Equal(t, tt.want, got, tt.why)
	}
}

// TestPriceChange: a price that is another is a change, whether or not the order is.
func TestPriceChange(t *testing.T) {
	plan := func(offers string) *mix.Plan {
		p, err := mix.PlanDocument([]byte(mulchJob(offers, ``)))
		require.NoError(t, err)
		return p
	}
	changes := plan(`{"pack": "2 cu ft", "price": "1.50"}, {"pack": "5 cu ft", "price": "9.00"}`).ChangesFrom(
		plan(`{"pack": "2 cu ft", "price": "1.00"}, {"pack": "5 cu ft"}`))
	require.Len(t, changes, 2)
	require.Equal(t, "same 1.00 1.50", fmt.Sprint(changes[0].Kind(), " ", changes[0].Prices[0], " ", changes[0].Prices[1]))
	require.Nil(t, changes[1].Prices[0])
	require.Equal(t, "9.00", changes[1].Prices[1].String())
	require.Equal(t, [2]bool{true, true}, [2]bool{changes[0].Priced, changes[1].Priced})
}
