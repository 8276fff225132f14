package units

// Area is an area in whole square micrometres. The zero value is no area.
type Area int64

// Areas to multiply by, as in 240 * SquareFoot.
const (
	SquareInch  Area = sqIn
	SquareFoot  Area = 144 * SquareInch
	SquareMetre Area = 1_000_000_000_000
)

// MaxArea is the largest area that ParseArea accepts: 4 square kilometres,
// about 1,000 acres. Two of them add without overflow.
const MaxArea = 4_000_000 * SquareMetre

// ParseArea reads an area of zero or more with a unit of area ("240 sq ft"),
// rounded once to the square micrometre. The error is an [*Error]. Shapes such
// as "60 ft x 4 ft" are read by package ground.
func ParseArea(s string) (Area, error) {
	n, err := parse(s, areaKind, false)
	return Area(n), err
}

// FixedArea is [ParseArea] before rounding, in square micrometres.
func FixedArea(s string) (Fixed, error) { return parseFixed(s, areaKind, false) }

// Deep returns the volume of a layer of depth d over a, rounded to the
// nanolitre. ok is false when the result is more than [MaxVolume], or when
// either is negative.
func (a Area) Deep(d Length) (v Volume, ok bool) {
	if a < 0 || d < 0 {
		return 0, false
	}
	n, ok := mulDiv(uint64(a), uint64(d), 1_000_000_000)
	return Volume(n), ok && Volume(n) <= MaxVolume
}

// String writes the area exactly, in square metres: "22.2967296 sq m".
// [ParseArea] reads it back.
func (a Area) String() string { return string(a.append(nil)) }

// append appends the text of String. Every quantity has one, so that String and
// MarshalText share it.
func (a Area) append(b []byte) []byte { return append(appendDecimal(b, int64(a), 12), " sq m"...) }

// MarshalText returns the text of [Area.String]. The error is always nil.
func (a Area) MarshalText() ([]byte, error) { return a.append(nil), nil }

// UnmarshalText reads what [ParseArea] reads.
func (a *Area) UnmarshalText(b []byte) (err error) {
	*a, err = ParseArea(string(b))
	return err
}
