package yard_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
)

// TestAlternativesByLeavingOut: what another offer costs is what a plan costs whose job
// has no other offer of that material. The plan is the oracle.
func TestAlternativesByLeavingOut(t *testing.T) {
	seen := 0
	rapid.Check(t, func(t *rapid.T) {
		job := randomYard(t)
		p, err := mix.PlanDocument(document(t, job))
		if err != nil {
			t.Fatal(err)
		}
		list := p.Alternatives()
		for i := range list {
			a := &list[i]
			offers := job["offers"].([]map[string]any)
			mine := offers[a.Line.Index()]
			job["offers"] = slices.DeleteFunc(slices.Clone(offers), func(o map[string]any) bool {
				return o["material"] == mine["material"] && fmt.Sprint(o) != fmt.Sprint(mine)
			})
			alone, err := mix.PlanDocument(document(t, job))
			job["offers"] = offers
			if err != nil {
				t.Fatal(err)
			}
			if alone.Bill != a.Bill || p.Bill.Total > a.Bill.Total {
				t.Errorf("%d x %s: %+v, alone %+v, planned %+v", a.Line.Count, a.Line.Offer.Name(), a.Bill, alone.Bill, p.Bill)
			}
			seen++
		}
		for i := range p.Others {
			has := slices.ContainsFunc(list, func(a yard.Alternative) bool { return a.Line.Index() == p.Others[i].Index() })
			if has != (p.Others[i].Priced && p.Others[i].InStock()) {
				t.Errorf("of %s there is a figure: %t", p.Others[i].Offer.Name(), has)
			}
		}
	})
	if seen < 50 {
		t.Errorf("only %d alternatives were compared", seen)
	}
}

func document(t interface{ Fatal(...any) }, job map[string]any) []byte {
	data, err := json.Marshal(job)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// randomYard is a job of two materials with a few offers each, tax, drives and delivery.
func randomYard(t *rapid.T) map[string]any {
	offers := []map[string]any{}
	for _, material := range []string{"bark-mulch", "peat"} {
		for _, size := range rapid.SliceOfNDistinct(rapid.IntRange(1, 9), 2, 4, rapid.ID).Draw(t, material) {
			o := map[string]any{"material": material, "pack": fmt.Sprintf("%d cu ft", size), "opens_to": fmt.Sprintf("%d cu ft", size),
				"price": fmt.Sprintf("%d.%02d", rapid.IntRange(0, 9*size).Draw(t, "price"), rapid.IntRange(0, 99).Draw(t, "cents"))}
			switch rapid.IntRange(0, 5).Draw(t, "more") {
			case 0:
				delete(o, "price")
			case 1:
				o["stock"] = rapid.IntRange(0, 12).Draw(t, "stock")
			case 2:
				o["deliver"] = true
			}
			offers = append(offers, o)
		}
	}
	job := map[string]any{"schema": 1, "offers": offers, "tasks": []map[string]any{
		{"kind": "cover", "area": "40 sq ft", "layer": "3 in", "material": "bark-mulch"},
		{"kind": "cover", "area": "20 sq ft", "layer": "3 in", "material": "peat"}}}
	if rapid.Bool().Draw(t, "tax") {
		job["tax"] = "7%"
	}
	if rapid.Bool().Draw(t, "haul") {
		job["haul"] = map[string]any{"room": "9 cu ft", "trip_cost": "3.00"}
	}
	if rapid.Bool().Draw(t, "delivery") {
		job["delivery"] = map[string]any{"fee": "8.00"}
	}
	return job
}

// TestAlternativeCountsTheFee: three steps of a yard cost 114.00 as goods, and 159.00
// with the fee of bringing them, under an order of bags that costs 134.40.
func TestAlternativeCountsTheFee(t *testing.T) {
	job := strings.Replace(mulchJob(`{"pack": "2 cu ft", "price": "4.48"}, {"bulk": "1 cu yd", "price": "38.00", "deliver": true}`,
		`, "haul": {"payload": "300 lb"}, "delivery": {"fee": "45.00"}`), "40 sq ft", "240 sq ft", 1)
	p, err := mix.PlanDocument([]byte(job))
	require.NoError(t, err)
	require.Equal(t, "134.40", p.Bill.Total.String())
	list := p.Alternatives()
	require.Len(t, list, 1)
	a := &list[0]
	require.Equal(t, "3 114.00 45.00 159.00", fmt.Sprint(a.Line.Count, " ", a.Line.Cost, " ", a.Bill.Fees, " ", a.Bill.Total))
	require.Equal(t, "114.00", p.Others[0].Cost.String())
}
