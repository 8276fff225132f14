package units

// Mass is a mass in whole micrograms. The zero value is no mass. It is what a
// scale at the yard shows in pounds or kilograms; text for people calls it
// weight.
type Mass int64

// Masses to multiply by, as in 40 * Pound.
const (
	Gram     Mass = 1_000_000
	Kilogram Mass = 1000 * Gram
	Pound    Mass = lb
)

// MaxMass is the largest mass that ParseMass accepts: 4,000,000 tonnes. Two of
// them add without overflow.
const MaxMass = 4_000_000_000 * Kilogram

// ParseMass reads a mass of zero or more ("40 lb", "1 lb 8 oz", "18 kg"),
// rounded once to the microgram. The error is an [*Error].
func ParseMass(s string) (Mass, error) {
	n, err := parse(s, massKind, false)
	return Mass(n), err
}

// Times returns m taken n times. ok is false when the result is more than
// [MaxMass], or when either is negative.
func (m Mass) Times(n int64) (t Mass, ok bool) {
	if m < 0 || n < 0 {
		return 0, false
	}
	p, ok := mul(uint64(m), uint64(n))
	return Mass(p), ok && Mass(p) <= MaxMass
}

// String writes the mass exactly, in kilograms: "18.1436948 kg". [ParseMass]
// reads it back.
func (m Mass) String() string { return string(m.append(nil)) }

func (m Mass) append(b []byte) []byte { return append(appendDecimal(b, int64(m), 9), " kg"...) }

// MarshalText returns the text of [Mass.String]. The error is always nil.
func (m Mass) MarshalText() ([]byte, error) { return m.append(nil), nil }

// UnmarshalText reads what [ParseMass] reads.
func (m *Mass) UnmarshalText(b []byte) (err error) {
	*m, err = ParseMass(string(b))
	return err
}

// Density is mass per volume in whole micrograms per litre; one kilogram per
// cubic metre is 1,000,000. The zero value is weightless.
type Density int64

// MaxDensity is the largest density that ParseDensity accepts: 100,000 kg/m3,
// denser than any element.
const MaxDensity Density = 100_000 * 1_000_000

// ParseDensity reads a mass per volume ("1100 lb/cu yd", "0.18 g/cm3"), rounded
// once to the microgram per litre. The error is an [*Error].
func ParseDensity(s string) (Density, error) {
	n, err := parse(s, densityKind, false)
	return Density(n), err
}

// String writes the density exactly, in kilograms per cubic metre: "652.6
// kg/m3". [ParseDensity] reads it back.
func (d Density) String() string { return string(d.append(nil)) }

func (d Density) append(b []byte) []byte { return append(appendDecimal(b, int64(d), 6), " kg/m3"...) }

// MarshalText returns the text of [Density.String]. The error is always nil.
func (d Density) MarshalText() ([]byte, error) { return d.append(nil), nil }

// UnmarshalText reads what [ParseDensity] reads.
func (d *Density) UnmarshalText(b []byte) (err error) {
	*d, err = ParseDensity(string(b))
	return err
}
