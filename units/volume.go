package units

import "math"

// Volume is a volume in whole nanolitres. That is the coarsest decimal grid on
// which a cubic inch is a whole number, so US and metric volumes add exactly.
// The zero value is no volume.
type Volume int64

// Volumes to multiply by, as in 3 * CubicFoot.
const (
	Millilitre Volume = 1_000_000
	Litre      Volume = 1000 * Millilitre
	CubicMetre Volume = 1000 * Litre
	CubicInch  Volume = cuIn
	CubicFoot  Volume = 1728 * CubicInch
	CubicYard  Volume = 27 * CubicFoot
	Gallon     Volume = 231 * CubicInch // US liquid
)

// MaxVolume is the largest volume that ParseVolume accepts: a million cubic
// metres, more than a large nursery uses in a year. Nine of them add without
// overflow.
const MaxVolume = 1_000_000 * CubicMetre

// ParseVolume reads a volume of zero or more ("1 1/2 cu ft", "30 L", "2 yd3"),
// rounded once to the nanolitre. The error is an [*Error].
func ParseVolume(s string) (Volume, error) {
	n, err := parse(s, volumeKind, false)
	return Volume(n), err
}

// FixedVolume is [ParseVolume] before rounding, in nanolitres.
func FixedVolume(s string) (Fixed, error) { return parseFixed(s, volumeKind, false) }

// Times returns v taken n times. ok is false when the result is more than
// [MaxVolume], or when either is negative.
func (v Volume) Times(n int64) (w Volume, ok bool) {
	if v < 0 || n < 0 {
		return 0, false
	}
	p, ok := mul(uint64(v), uint64(n))
	return Volume(p), ok && Volume(p) <= MaxVolume
}

// MulDiv returns v*n/d rounded to the nanolitre, halves up. ok is false when
// the result is more than [MaxVolume], when any of the three is negative and
// when d is zero.
func (v Volume) MulDiv(n, d int64) (w Volume, ok bool) {
	if v < 0 || n < 0 || d < 0 {
		return 0, false
	}
	q, ok := mulDiv(uint64(v), uint64(n), uint64(d))
	return Volume(q), ok && Volume(q) <= MaxVolume
}

// Share returns v*n/d rounded down, and the remainder in d-ths of a nanolitre.
// Splitting by largest remainder needs both. It panics unless 0 <= v, 0 < d and
// 0 <= n <= d; then the result always fits.
func (v Volume) Share(n, d int64) (w Volume, rest int64) {
	if v < 0 || n < 0 || n > d || d < 1 {
		panic("units: Share wants a part of a whole")
	}
	q, r, _ := mulDivFloor(uint64(v), uint64(n), uint64(d))
	return Volume(q), int64(r)
}

// Mass returns the mass of v at density d, rounded to the microgram. ok is
// false when the result is more than [MaxMass], or when either is negative.
func (v Volume) Mass(d Density) (m Mass, ok bool) {
	if v < 0 || d < 0 {
		return 0, false
	}
	n, ok := mulDiv(uint64(v), uint64(d), uint64(Litre))
	return Mass(n), ok && Mass(n) <= MaxMass
}

// Litres returns v in litres, rounded to the nearest float64.
func (v Volume) Litres() float64 { return float64(v) / float64(Litre) }

// VolumeOfLitres returns f litres rounded to the nearest nanolitre. It is the
// only way back from the curves (cylinders, tapers) that need floating point.
// ok is false when f is negative, not a number or more than [MaxVolume].
func VolumeOfLitres(f float64) (v Volume, ok bool) {
	if !(f >= 0) || f > MaxVolume.Litres() {
		return 0, false
	}
	return Volume(math.Round(f * float64(Litre))), true
}

// AppendLitres appends v in litres as an exact decimal number: 1699.01079552.
func (v Volume) AppendLitres(b []byte) []byte { return appendDecimal(b, int64(v), 9) }

// String writes the volume exactly, in litres: "1699.01079552 L". [ParseVolume]
// reads it back.
func (v Volume) String() string { return string(v.append(nil)) }

func (v Volume) append(b []byte) []byte { return append(v.AppendLitres(b), " L"...) }

// MarshalText returns the text of [Volume.String]. The error is always nil.
func (v Volume) MarshalText() ([]byte, error) { return v.append(nil), nil }

// UnmarshalText reads what [ParseVolume] reads.
func (v *Volume) UnmarshalText(b []byte) (err error) {
	*v, err = ParseVolume(string(b))
	return err
}
