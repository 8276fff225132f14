package sure_test

import (
	"math"
	"testing"

	"example.org/barrow/mix/sure"
)

// pots is 64 pots of one class and a spread of mulch: two items, one of them
// with a figure that enters twice.
func pots() *sure.Model {
	return &sure.Model{
		Items: 2,
		Factors: []sure.Factor{
			{Name: "volume of a pot", Low: 2.49, Mode: 2.84, High: 4.11},
			{Name: "settle", Low: 0.05, Mode: 0.1, High: 0.2},
			{Name: "blend loss", Low: 0.05, High: 0.2, Flat: true},
			{Name: "depth", Low: 0.9, Mode: 1, High: 1.3},
			{Name: "side", Low: 0.97, Mode: 1, High: 1.02},
		},
		Needs: []sure.Term{
			{0, 64, []sure.Use{{0, sure.Times}, {1, sure.Loss}, {2, sure.Loss}}},
			{1, 400, []sure.Use{{3, sure.Times}, {4, sure.Times}, {4, sure.Times}, {1, sure.Loss}}},
		},
		Supplies: exactly(280, 500),
	}
}

// bales is a need met by bales that open to no certain volume; no factor of the
// need can be the pivot, each being used twice in a term.
func bales() *sure.Model {
	return &sure.Model{
		Items:   1,
		Factors: []sure.Factor{{Low: 0.1, Mode: 0.3, High: 0.4}, {Low: 1.5, High: 2, Flat: true}, {Low: 0, Mode: 0.05, High: 0.15}},
		Needs: []sure.Term{
			{0, 300, []sure.Use{{0, sure.Times}, {0, sure.Loss}}},
			{0, 100, []sure.Use{{2, sure.Loss}, {2, sure.Loss}}},
		},
		Supplies: []sure.Term{{0, 120, []sure.Use{{1, sure.Times}}}, {0, 30, nil}},
	}
}

// TestGolden checks that the bits are the same on every platform. The figures
// are this package's own, from amd64; they change only when the points change.
func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		m    *sure.Model
		want []uint64
	}{
		{"nursery", nursery(), goldenNursery},
		{"pots", pots(), goldenPots},
		{"bales", bales(), goldenBales},
		{"lots", lots(30, 60), goldenLots},
	} {
		chance := c.m.Chance()
		got := []float64{chance.All, chance.Error}
		got = append(got, chance.Item...)
		got = append(got, c.m.Enough(0.9)...)
		got = append(got, c.m.Quantile(0, 0.75))
		for _, in := range c.m.Matters(3) {
			got = append(got, in.Moves)
		}
		same := len(got) == len(c.want)
		for i := 0; same && i < len(got); i++ {
			same = math.Float64bits(got[i]) == c.want[i]
		}
		if !same {
			for _, x := range got {
				t.Logf("%#016x, // %v", math.Float64bits(x), x)
			}
			t.Errorf("%s: bits are not those of the golden", c.name)
		}
	}
}

var goldenNursery = []uint64{
	0x3fe4a31dd57e349e, // 0.6449116868767708
	0x3f50c2962566847d, // 0.001022955538793973
	0x3feab6f8e6a0062b, // 0.8348354820629472
	0x3feaec868631ee56, // 0.841372739886945
	0x3fea55e1fe8d947a, // 0.8229837390650936
	0x3fea67de0c7458b5, // 0.8251791232348952
	0x3fea5165f287897b, // 0.8224363076117663
	0x3feaa892dea3ca6e, // 0.8330778454240553
	0x408298411a946cf6, // 595.0317889781716
	0x409583999e263aca, // 1376.900017354334
	0x408691df630c1c0f, // 722.2340756364882
	0x4098da5bc542c762, // 1590.5896196779436
	0x408919475012dd9f, // 803.1598206972011
	0x4096d9748f70e72a, // 1462.3638284340946
	0x4081aa8997e9f49d, // 565.317184283998
	0x40819aad3f59af56, // 563.3345934874185
	0x4065a9890a860aac, // 173.29797865085618
	0x406517d62e6cc598, // 168.74489518398764
}

var goldenPots = []uint64{
	0x3fe0415046f4be0f, // 0.5079728494510521
	0x3f45d2f151703114, // 0.000666015463936217
	0x3fe71c8000000000, // 0.72222900390625
	0x3fe6044a82d238ee, // 0.6880238108731456
	0x40740dde09e60b67, // 320.86670865880154
	0x408166c0c54636d9, // 556.8441262708176
	0x4071b7e8cda57ef0, // 283.49433674475495
	0x40593edc41fa51c8, // 100.9821934647108
	0x4052dc524b6194d8, // 75.44252285508571
	0x4050783c412bb8ae, // 65.87867764730137
}

var goldenBales = []uint64{
	0x3fe3ccc55c182894, // 0.618746452209296
	0x3f1cef8aba1d2dfe, // 0.00011038097593745602
	0x3fe3ccc55c182894, // 0.618746452209296
	0x407126bdcbcf9407, // 274.4213369473004
	0x406f9a6afb29a21a, // 252.8255592167996
	0x40575cda369cae02, // 93.45081868458513
	0x4048000000000000, // 48
	0x4034e5a69b527198, // 20.89707346689974
}

var goldenLots = []uint64{
	0x3fe000d0fdf32caf, // 0.5000996551474567
	0x3f173def4300d7da, // 8.866093480794317e-05
	0x3fe000d0fdf32caf, // 0.5000996551474567
	0x404e000000000000, // 60
	0x404e000000000000, // 60
	0x3ff53a1c8959a460, // 1.3266873708000944
	0x3fe2636da7335a80, // 0.5746372476231301
}
