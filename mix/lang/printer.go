package lang

import (
	"strconv"

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
