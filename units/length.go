package units

// Length is a length in whole nanometres. The zero value is no length.
type Length int64

// Lengths to multiply by, as in 3 * Inch.
const (
	Millimetre Length = 1_000_000
	Metre      Length = 1000 * Millimetre
	Inch       Length = inch
	Foot       Length = 12 * Inch
	Yard       Length = 3 * Foot
)

// MaxLength is the largest length that ParseLength accepts: 100 km, longer than
// any bed.
const MaxLength = 100_000 * Metre

// ParseLength reads a length of zero or more ("3 in", "2 ft 6 in", "0.5 m"),
// rounded once to the nanometre. The error is an [*Error].
func ParseLength(s string) (Length, error) {
	n, err := parse(s, lengthKind, false)
	return Length(n), err
}

// ParseOffset reads a length that may be negative, such as a corner's distance
// along an axis, rounded once to the nanometre. The error is an [*Error].
func ParseOffset(s string) (Length, error) {
	n, err := parse(s, lengthKind, true)
	return Length(n), err
}

// FixedLength is [ParseLength] before rounding, in nanometres.
func FixedLength(s string) (Fixed, error) { return parseFixed(s, lengthKind, false) }

// FixedOffset is [ParseOffset] before rounding, in nanometres.
func FixedOffset(s string) (Fixed, error) { return parseFixed(s, lengthKind, true) }

// By returns the area of a rectangle l by w, rounded to the square micrometre.
// ok is false when the result is more than [MaxArea], or when a side is
// negative.
func (l Length) By(w Length) (a Area, ok bool) {
	if l < 0 || w < 0 {
		return 0, false
	}
	n, ok := mulDiv(uint64(l), uint64(w), 1_000_000)
	return Area(n), ok && Area(n) <= MaxArea
}

// String writes the length exactly, in millimetres: "76.2 mm". [ParseLength]
// reads it back.
func (l Length) String() string { return string(l.append(nil)) }

func (l Length) append(b []byte) []byte { return append(appendDecimal(b, int64(l), 6), " mm"...) }

// MarshalText returns the text of [Length.String]. The error is always nil.
func (l Length) MarshalText() ([]byte, error) { return l.append(nil), nil }

// UnmarshalText reads what [ParseLength] reads.
func (l *Length) UnmarshalText(b []byte) (err error) {
	*l, err = ParseLength(string(b))
	return err
}
