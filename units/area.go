package units

// Area is a whole count of square micrometres. The zero value is no area.
type Area int64

// Areas to multiply by: 240 * SquareFoot.
const (
	SquareInch  Area = sqIn
	SquareFoot  Area = 144 * SquareInch
	SquareMetre Area = 1_000_000_000_000
)

// MaxArea bounds what ParseArea takes: 4 square kilometres, near 1,000 acres.
// Two of them add without overflow.
const MaxArea = 4_000_000 * SquareMetre

// ParseArea reads an area of zero or more in an area's unit ("240 sq ft"),
// rounded once to the square micrometre. The error is an [*Error]. Shapes such
// as "60 ft x 4 ft" belong to package mix.
func ParseArea(s string) (Area, error) {
	n, err := parse(s, areaKind, false)
	return Area(n), err
}

// Deep returns the volume of a layer d deep over a, rounded to the nanolitre;
// ok is false past [MaxVolume] or when either is negative.
func (a Area) Deep(d Length) (v Volume, ok bool) {
	if a < 0 || d < 0 {
		return 0, false
	}
	n, ok := mulDiv(uint64(a), uint64(d), 1_000_000_000)
	return Volume(n), ok && Volume(n) <= MaxVolume
}

// String is exact, in square metres: "22.296729600000 sq m" without the
// trailing zeros. It parses back.
func (a Area) String() string { return string(a.append(nil)) }

func (a Area) append(b []byte) []byte { return append(appendDecimal(b, int64(a), 12), " sq m"...) }

// MarshalText writes String.
func (a Area) MarshalText() ([]byte, error) { return a.append(nil), nil }

// UnmarshalText reads what [ParseArea] reads.
func (a *Area) UnmarshalText(b []byte) (err error) {
	*a, err = ParseArea(string(b))
	return err
}
