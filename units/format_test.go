package units

import "testing"

func TestFriendly(t *testing.T) {
	for _, tt := range []struct {
		why, got, want string
	}{
		{"common fraction", US.Volume(3 * CubicFoot / 2), "1 1/2 cu ft"},
		{"cubic yards by the quarter", CubicYards(5 * CubicYard / 4), "1 1/4 cu yd"},
		{"two thirds of a yard", CubicYards(18 * CubicFoot), "2/3 cu yd"},
		{"three digits", US.Volume(812_400 * Millilitre), "28.7 cu ft"},
		{"no decimals past a hundred", US.Volume(123_456 * Litre), "4360 cu ft"},
		{"small volumes in gallons", US.Volume(2 * Gallon / 3), "2/3 gal"},
		{"up to half a cubic foot", US.Volume(3 * CubicFoot / 8), "2.81 gal"},
		{"a cell in cubic inches", US.Volume(7 * CubicInch / 2), "3 1/2 cu in"},
		{"litres", Metric.Volume(812_400 * Millilitre), "812 L"},
		{"cubic metres", Metric.Volume(2_500 * Litre), "2.5 m3"},
		{"millilitres", Metric.Volume(40 * Millilitre), "40 mL"},
		{"both", Both.Volume(812_400 * Millilitre), "28.7 cu ft (812 L)"},
		{"inches", US.Length(9 * Inch / 2), "4 1/2 in"},
		{"feet", US.Length(60 * Foot), "60 ft"},
		{"feet and inches", US.Length(30 * Inch), "2 ft 6 in"},
		{"centimetres", Metric.Length(3 * Inch), "7.62 cm"},
		{"millimetres", Metric.Length(19 * Millimetre), "19 mm"},
		{"both lengths", Both.Length(3 * Inch), "3 in (7.62 cm)"},
		{"square feet", US.Area(240 * SquareFoot), "240 sq ft"},
		{"acres", US.Area(43_560 * SquareFoot), "1 acre"},
		{"square metres", Metric.Area(240 * SquareFoot), "22.3 sq m"},
		{"pounds", US.Mass(40 * Pound), "40 lb"},
		{"ounces", US.Mass(Pound / 2), "8 oz"},
		{"kilograms", Metric.Mass(40 * Pound), "18.1 kg"},
		{"tonnes", Metric.Mass(12_000 * Kilogram), "12 t"},
		{"range in one unit", US.VolumeRange(18*CubicFoot, 26*CubicFoot), "18 to 26 cu ft"},
		{"range of one", US.VolumeRange(18*CubicFoot, 18*CubicFoot), "18 cu ft"},
		{"mass range", Both.MassRange(100*Pound, 200*Pound), "100 to 200 lb (45.4 to 90.7 kg)"},
		{"density range", US.DensityRange(179_800_000, 659_700_000), "303 to 1112 lb/cu yd"},
		{"small beside large", US.VolumeLike(CubicFoot/10, CubicFoot), "0.1 cu ft"},
		{"small beside large, metric", Both.VolumeLike(Litre/2, 3*CubicMetre), "0.0177 cu ft (0.0005 m3)"},
		{"nothing", US.Volume(0), "0 cu in"},
		{"money", Money(7).String(), "0.07"},
		{"less than nothing", Money(-375).String(), "-3.75"},
	} {
		if tt.got != tt.want {
			t.Errorf("%s: %q, want %q", tt.why, tt.got, tt.want)
		}
	}
}

func TestExact(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{(60 * CubicFoot).String(), "1699.01079552 L"},
		{(3 * Inch).String(), "76.2 mm"},
		{(-Inch).String(), "-25.4 mm"},
		{(240 * SquareFoot).String(), "22.2967296 sq m"},
		{(40 * Pound).String(), "18.1436948 kg"},
		{Density(652_604_063).String(), "652.604063 kg/m3"},
		{Volume(1).String(), "0.000000001 L"},
		{Money(7125).String(), "71.25"},
		{Percent(10).String(), "10%"},
	} {
		if tt.got != tt.want {
			t.Errorf("%q, want %q", tt.got, tt.want)
		}
	}
}

// TestOddMeasure: what is no measure writes as the zero value does, never in two
// units at once.
func TestOddMeasure(t *testing.T) {
	for _, odd := range []Measure{3, 9, 255} {
		for _, got := range [][2]string{
			{odd.String(), US.String()},
			{odd.Length(3 * Inch), US.Length(3 * Inch)},
			{odd.Area(SquareMetre), US.Area(SquareMetre)},
			{odd.Volume(CubicFoot), US.Volume(CubicFoot)},
			{odd.VolumeLike(CubicFoot, Gallon), US.VolumeLike(CubicFoot, Gallon)},
			{odd.Mass(Kilogram), US.Mass(Kilogram)},
			{odd.Density(MaxDensity), US.Density(MaxDensity)},
			{odd.VolumeRange(Litre, CubicFoot), US.VolumeRange(Litre, CubicFoot)},
			{odd.MassRange(Gram, Kilogram), US.MassRange(Gram, Kilogram)},
			{odd.DensityRange(1, MaxDensity), US.DensityRange(1, MaxDensity)},
		} {
			if got[0] != got[1] {
				t.Errorf("Measure(%d) writes %q, want %q", uint8(odd), got[0], got[1])
			}
		}
	}
}
