package mix_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.org/barrow/mix"
)

// TestSure: an order of what is certain is certain; one of a class of pots is
// enough as often as its pots are small enough, by the triangle's own formula;
// the surer order is surer and dearer.
func TestSure(t *testing.T) {
	if mix.BagFill().Low != 0.95 { // NIST Handbook 133, the most that one package may be short of: from memory
		t.Errorf("a bag may hold %v of its label", mix.BagFill().Low)
	}
	certain := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", ` +
		`"containers": [{"count": 10, "holds": "1 L"}]}], "on_hand": {"sand": "9 L"}, ` +
		`"offers": [{"material": "sand", "pack": "2 L", "price": "1"}]}`
	p, err := mix.PlanDocument([]byte(certain))
	require.NoError(t, err)
	if s := p.Sure(); s.Chance != 1 || s.Odds(p.Printer()) != "for certain" || len(s.Enough) > 0 {
		t.Errorf("2 L for a need of 1: %+v", s)
	}
	// A hundred #1 pots of 152 to 251 cu in, 172.8 the likeliest, against what
	// is on hand and a bag of next to nothing: P(size <= x) of the triangle.
	onHand := `{"schema": 1, "tasks": [{"kind": "fill", "material": "sand", "settle": "0%", ` +
		`"containers": [{"count": 100, "size": "#1"}]}], "on_hand": {"sand": "17270 cu in"}, ` +
		`"offers": [{"material": "sand", "pack": "10 cu in", "price": "1"}]}`
	p, err = mix.PlanDocument([]byte(onHand))
	require.NoError(t, err)
	s := p.Sure()
	low, mode, high, x := 152.0, 172.8, 251.0, 172.8 // 17270 + 10 over 100
	want := (x - low) * (x - low) / ((high - low) * (mode - low))
	if s.Chance < want-0.01 || s.Chance > want+0.01 {
		t.Errorf("chance %v, want %v", s.Chance, want)
	}
	if s.At < mix.NineInTen || s.Bill.Total <= p.Bill.Total || len(s.Matters) == 0 ||
		s.Matters[0].Name != "the size of #1" {
		t.Errorf("%+v", s)
	}
	// A hundred pots of 183 cu in to the brim, of which 85 to 96 % is mix, 94 % the
	// likeliest, against 172.02 cu in each.
	brim := strings.NewReplacer(`"size": "#1"`, `"brim": "183 cu in"`, "17270 cu in", "17192 cu in").Replace(onHand)
	full, err := mix.PlanDocument([]byte(brim))
	require.NoError(t, err)
	odds := full.Sure()
	if want := (94.0 - 85) / (96 - 85); odds.Chance < want-0.01 || odds.Chance > want+0.01 ||
		len(odds.Matters) == 0 || odds.Matters[0].Name != "how full the pots are filled" {
		t.Errorf("chance %v of %+v, want %v", odds.Chance, odds.Matters, want)
	}
	if again := p.Sure(); again.Chance != s.Chance || again.At != s.At {
		t.Error("the answer differs from time to time")
	}
}

// BenchmarkSure is how sure a job of twenty tasks is, from the plan.
func BenchmarkSure(b *testing.B) {
	p, err := mix.PlanDocument(manyTasks(20))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if p.Sure() == nil {
			b.Fatal("no answer")
		}
	}
}
