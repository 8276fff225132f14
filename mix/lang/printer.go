package lang

import (
	"strconv"
	"strings"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Printer is how a reader is spoken to: in which units, and in which language.
// The zero value is US units in English.
type Printer struct {
	units.Measure
	*Language
}

// Length writes l as [units.Measure.Length] does, in the reader's words; the
// other methods do so for theirs.
func (v Printer) Length(l units.Length) string { return v.Figure(v.Measure.Length(l)) }

// Area writes a.
func (v Printer) Area(a units.Area) string { return v.Figure(v.Measure.Area(a)) }

// Volume writes x.
func (v Printer) Volume(x units.Volume) string { return v.Figure(v.Measure.Volume(x)) }

// VolumeLike writes x in the unit in which like would be written.
func (v Printer) VolumeLike(x, like units.Volume) string {
	return v.Figure(v.Measure.VolumeLike(x, like))
}

// Mass writes m.
func (v Printer) Mass(m units.Mass) string { return v.Figure(v.Measure.Mass(m)) }

// Density writes d.
func (v Printer) Density(d units.Density) string { return v.Figure(v.Measure.Density(d)) }

// VolumeRange writes low to high.
func (v Printer) VolumeRange(low, high units.Volume) string {
	return v.Figure(v.Measure.VolumeRange(low, high))
}

// MassRange writes low to high.
func (v Printer) MassRange(low, high units.Mass) string {
	return v.Figure(v.Measure.MassRange(low, high))
}

// DensityRange writes low to high.
func (v Printer) DensityRange(low, high units.Density) string {
	return v.Figure(v.Measure.DensityRange(low, high))
}

// Count says how many there are with the form for one or the one for more, each
// with its hole for the number: "{0} hole", "{0} holes".
func (v Printer) Count(n int64, one, more message.Text) string {
	if n == 1 {
		more = one
	}
	return v.Print(more, strconv.FormatInt(n, 10))
}

// Range writes the planned volume, and its bounds where it is not certain.
func (v Printer) Range(r units.Range) string {
	switch {
	case r.Certain():
		return v.Volume(r.Plan)
	case v.Measure == units.Both: // it has brackets of its own
		return v.VolumeLike(r.Plan, r.High) + "; " + v.VolumeRange(r.Low, r.High)
	}
	return v.VolumeLike(r.Plan, r.High) + " (" + v.VolumeRange(r.Low, r.High) + ")"
}

// TradeVolume writes a volume as yards talk about it: cubic feet with cubic yards,
// litres with cubic metres, by the measure.
func (v Printer) TradeVolume(x units.Volume) string {
	if v.Measure == units.Metric || x < units.CubicYard/4 {
		return v.Volume(x)
	}
	feet, yards := v.Figure(units.CubicFeet(x)), v.Figure(units.CubicYards(x))
	if v.Measure == units.Both {
		return feet + " (" + yards + ", " + v.Figure(units.Litres(x)) + ")"
	}
	return feet + " (" + yards + ")"
}

// Share writes a share: exactly where its percentage ends, else to a tenth.
func (v Printer) Share(r units.Ratio) string {
	s := r.String()
	if !strings.HasSuffix(s, "%") {
		tenths, _ := units.Volume(1000).MulDiv(r.Num(), r.Den())
		s = strconv.FormatInt(int64(tenths)/10, 10)
		if d := int64(tenths) % 10; d > 0 {
			s += "." + strconv.FormatInt(d, 10)
		}
		s += "%"
	}
	return v.Figure(s)
}

// CountRange writes a count and, where it is not certain, the fewest and the most:
// "6 (5 to 7)".
func (v Printer) CountRange(n int64, fewMany [2]int64) string {
	text := strconv.FormatInt(n, 10)
	if fewMany[0] != fewMany[1] {
		text += " (" + strconv.FormatInt(fewMany[0], 10) + " to " + strconv.FormatInt(fewMany[1], 10) + ")"
	}
	return text
}
