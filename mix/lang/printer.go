package lang

import (
	"strconv"
	"strings"

	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Printer writes for one reader, in their units and their language. The zero
// value is US units in English. It is a small value that can be copied.
type Printer struct {
	units.Measure
	*Language
}

// Length writes l as [units.Measure.Length] does, in the reader's language. So
// do the methods below for theirs.
func (p Printer) Length(l units.Length) string { return p.Figure(p.Measure.Length(l)) }

// Area writes a.
func (p Printer) Area(a units.Area) string { return p.Figure(p.Measure.Area(a)) }

// Volume writes v.
func (p Printer) Volume(v units.Volume) string { return p.Figure(p.Measure.Volume(v)) }

// VolumeLike writes v in the unit in which like would be written.
func (p Printer) VolumeLike(v, like units.Volume) string {
	return p.Figure(p.Measure.VolumeLike(v, like))
}

// Mass writes m.
func (p Printer) Mass(m units.Mass) string { return p.Figure(p.Measure.Mass(m)) }

// Density writes d.
func (p Printer) Density(d units.Density) string { return p.Figure(p.Measure.Density(d)) }

// LengthRange writes low to high.
func (p Printer) LengthRange(low, high units.Length) string {
	return p.Figure(p.Measure.LengthRange(low, high))
}

// VolumeRange writes low to high.
func (p Printer) VolumeRange(low, high units.Volume) string {
	return p.Figure(p.Measure.VolumeRange(low, high))
}

// MassRange writes low to high.
func (p Printer) MassRange(low, high units.Mass) string {
	return p.Figure(p.Measure.MassRange(low, high))
}

// DensityRange writes low to high.
func (p Printer) DensityRange(low, high units.Density) string {
	return p.Figure(p.Measure.DensityRange(low, high))
}

// Count writes a number with the form for one or the form for more, each with a
// hole for the number: "{0} hole", "{0} holes".
func (p Printer) Count(n int64, one, more message.Text) string {
	if n == 1 {
		more = one
	}
	return p.Print(more, strconv.FormatInt(n, 10))
}

// Range writes the planned volume, and its bounds when it is not certain.
func (p Printer) Range(r units.Range) string {
	switch {
	case r.Certain():
		return p.Volume(r.Plan)
	case p.Measure == units.Both: // it has brackets of its own
		return p.VolumeLike(r.Plan, r.High) + "; " + p.VolumeRange(r.Low, r.High)
	}
	return p.VolumeLike(r.Plan, r.High) + " (" + p.VolumeRange(r.Low, r.High) + ")"
}

// TradeVolume writes a volume the way yards do: cubic feet with cubic yards, or
// litres with cubic metres, by the measure.
func (p Printer) TradeVolume(v units.Volume) string {
	if p.Measure == units.Metric || v < units.CubicYard/4 {
		return p.Volume(v)
	}
	feet, yards := p.Figure(units.CubicFeet(v)), p.Figure(units.CubicYards(v))
	if p.Measure == units.Both {
		return feet + " (" + yards + ", " + p.Figure(units.Litres(v)) + ")"
	}
	return feet + " (" + yards + ")"
}

// Share writes a share: exactly when its percentage ends, otherwise to a tenth.
func (p Printer) Share(r units.Ratio) string {
	s := r.String()
	if !strings.HasSuffix(s, "%") {
		tenths, _ := units.Volume(1000).MulDiv(r.Num(), r.Den())
		s = strconv.FormatInt(int64(tenths)/10, 10)
		if d := int64(tenths) % 10; d > 0 {
			s += "." + strconv.FormatInt(d, 10)
		}
		s += "%"
	}
	return p.Figure(s)
}

// CountRange writes a count and, when it is not certain, the fewest and the
// most: "6 (5 to 7)".
func (p Printer) CountRange(n int64, fewMany [2]int64) string {
	text := strconv.FormatInt(n, 10)
	if fewMany[0] != fewMany[1] {
		text += " (" + strconv.FormatInt(fewMany[0], 10) + " to " + strconv.FormatInt(fewMany[1], 10) + ")"
	}
	return text
}
