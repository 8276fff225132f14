package units

import "strconv"

// itoa writes n in decimal.
func itoa(n int64) string { return strconv.FormatInt(n, 10) }

// appendDecimal appends n / 10^places, exactly, without trailing zeros.
func appendDecimal(b []byte, n int64, places int) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	start := len(b)
	b = strconv.AppendInt(b, n, 10)
	if places == 0 {
		return b
	}
	for len(b)-start <= places { // a digit before the point
		b = append(b, 0)
		copy(b[start+1:], b[start:])
		b[start] = '0'
	}
	point := len(b) - places
	b = append(b, 0)
	copy(b[point+1:], b[point:])
	b[point] = '.'
	for b[len(b)-1] == '0' {
		b = b[:len(b)-1]
	}
	if b[len(b)-1] == '.' {
		b = b[:len(b)-1]
	}
	return b
}

// Measure selects the units for text that people read. The zero value is [US], and
// a value that is none of the three writes as US does.
type Measure uint8

// The measures.
const (
	US     Measure = iota // inches, cubic feet and yards, pounds
	Metric                // centimetres, litres, kilograms
	Both                  // US, with metric in brackets
)

// ParseMeasure reads "us", "metric" or "both". For anything else ok is false.
func ParseMeasure(s string) (m Measure, ok bool) {
	for m := US; m <= Both; m++ {
		if s == m.String() {
			return m, true
		}
	}
	return US, false
}

// String returns the word that [ParseMeasure] reads.
func (m Measure) String() string {
	switch m {
	case Metric:
		return "metric"
	case Both:
		return "both"
	}
	return "us"
}

// Length writes l for people, to three significant digits or as a common
// fraction: "2 1/2 in", "2 ft 6 in", "6.35 cm". The text is rounded, so it may
// not parse back to l.
func (m Measure) Length(l Length) string { return m.write(int64(l), int64(l), usLength, metricLength) }

// Area writes a for people: "240 sq ft", "22.3 sq m".
func (m Measure) Area(a Area) string { return m.write(int64(a), int64(a), usArea, metricArea) }

// Volume writes v for people: "28.7 cu ft", "1 1/2 cu ft", "813 L".
func (m Measure) Volume(v Volume) string { return m.write(int64(v), int64(v), usVolume, metricVolume) }

// VolumeLike writes v in the unit in which like would be written, so that
// figures that are read together share a unit.
func (m Measure) VolumeLike(v, like Volume) string {
	unit := func(choose func(int64) *unit) func(int64) *unit {
		return func(int64) *unit { return choose(int64(like)) }
	}
	return m.write(int64(v), int64(v), unit(usVolume), unit(metricVolume))
}

// Mass writes w for people: "40 lb", "18.1 kg".
func (m Measure) Mass(w Mass) string { return m.write(int64(w), int64(w), usMass, metricMass) }

// Density writes d for people: "1112 lb/cu yd", "660 kg/m3".
func (m Measure) Density(d Density) string {
	return m.write(int64(d), int64(d), usDensity, metricDensity)
}

// VolumeRange writes low to high in one unit: "18 to 29.6 cu ft". Where both
// round to the same text it writes one volume.
func (m Measure) VolumeRange(low, high Volume) string {
	return m.write(int64(low), int64(high), usVolume, metricVolume)
}

// LengthRange writes low to high in one unit, as [Measure.VolumeRange] does.
func (m Measure) LengthRange(low, high Length) string {
	return m.write(int64(low), int64(high), usLength, metricLength)
}

// MassRange writes low to high in one unit, as [Measure.VolumeRange] does.
func (m Measure) MassRange(low, high Mass) string {
	return m.write(int64(low), int64(high), usMass, metricMass)
}

// DensityRange writes low to high in one unit, as [Measure.VolumeRange] does.
func (m Measure) DensityRange(low, high Density) string {
	return m.write(int64(low), int64(high), usDensity, metricDensity)
}

// CubicYards writes v in cubic yards: "1.06 cu yd", "2 1/4 cu yd".
func CubicYards(v Volume) string { return string(appendIn(nil, int64(v), named("cu yd"), true)) }

// CubicFeet writes v in cubic feet: "28.7 cu ft", "1 1/2 cu ft".
func CubicFeet(v Volume) string { return string(appendIn(nil, int64(v), named("cu ft"), true)) }

// Litres writes v in litres: "813 L".
func Litres(v Volume) string { return string(appendIn(nil, int64(v), named("L"), false)) }

// write writes low to high in the units that suit high.
func (m Measure) write(low, high int64, us, metric func(int64) *unit) string {
	var room [96]byte // on the stack, so that the text is allocated once
	b := room[:0]
	if m != Metric {
		b = appendRange(b, low, high, us(high), true)
	}
	if m == Both {
		b = append(b, " ("...)
	}
	if m == Metric || m == Both {
		b = appendRange(b, low, high, metric(high), false)
	}
	if m == Both {
		b = append(b, ')')
	}
	return string(b)
}

// appendRange appends "low to high" in unit u, or one figure where the two look
// the same once rounded.
func appendRange(b []byte, low, high int64, u *unit, fractions bool) []byte {
	if low == high {
		return appendIn(b, high, u, fractions)
	}
	start := len(b)
	b = appendNumber(b, low, u, fractions)
	middle := len(b)
	b = append(b, " to "...)
	end := len(b)
	b = appendNumber(b, high, u, fractions)
	if string(b[start:middle]) == string(b[end:]) {
		return appendIn(b[:start], high, u, fractions)
	}
	return append(append(b, ' '), u.name...)
}

// appendIn appends a count of base units in unit u, with the unit's name. A
// length of whole inches past two feet is written in feet and inches.
func appendIn(b []byte, count int64, u *unit, fractions bool) []byte {
	if u.name == "ft" && count%inch == 0 && count%(12*inch) != 0 {
		b = append(appendIn(b, count-count%(12*inch), u, fractions), ' ')
		return appendIn(b, count%(12*inch), named("in"), fractions)
	}
	return append(append(appendNumber(b, count, u, fractions), ' '), u.name...)
}

// appendNumber appends a count of base units as a number of unit u: a whole
// number or a common fraction where that is exact, otherwise three significant
// digits.
func appendNumber(b []byte, count int64, u *unit, fractions bool) []byte {
	if count < 0 {
		b, count = append(b, '-'), -count
	}
	if fractions {
		for _, below := range [...]uint64{1, 2, 3, 4, 8, 16} {
			if n, rest, ok := mulDivFloor(uint64(count), u.den*below, u.num); ok && rest == 0 && n < 100*int64(below) {
				return appendFraction(b, n, int64(below))
			}
		}
	}
	places := 0
	for scale := uint64(1); places < 9; places, scale = places+1, scale*10 {
		// Rounded down: 99.6 is less than 100 and has one digit more.
		if n, _, ok := mulDivFloor(uint64(count), u.den*scale, u.num); !ok || n >= 100 {
			break
		}
	}
	scale := uint64(1)
	for range places {
		scale *= 10
	}
	n, _ := mulDiv(uint64(count), u.den*scale, u.num)
	return appendDecimal(b, n, places)
}

// appendFraction appends n/below as a mixed number: 1 1/2.
func appendFraction(b []byte, n, below int64) []byte {
	whole, part := n/below, n%below
	if whole > 0 || part == 0 {
		b = strconv.AppendInt(b, whole, 10)
	}
	if part == 0 {
		return b
	}
	if whole > 0 {
		b = append(b, ' ')
	}
	b = strconv.AppendInt(b, part, 10)
	return strconv.AppendInt(append(b, '/'), below, 10)
}

// named returns the unit that is printed as name. It panics when the table has
// none: all names come from this package.
func named(name string) *unit {
	for i := range table {
		if table[i].name == name {
			return &table[i]
		}
	}
	panic("units: no unit " + name)
}

// The functions below choose the unit in which a count is easiest to read.

// usLength returns inches up to two feet, and feet past them.
func usLength(n int64) *unit {
	if n < 24*inch {
		return named("in")
	}
	return named("ft")
}

// metricLength returns millimetres up to 2 cm, as pots are measured, then
// centimetres, then metres.
func metricLength(n int64) *unit {
	switch {
	case n < int64(20*Millimetre):
		return named("mm")
	case n < int64(Metre):
		return named("cm")
	}
	return named("m")
}

// usArea returns square feet for most things, and acres from half an acre.
func usArea(n int64) *unit {
	switch {
	case n < int64(SquareFoot):
		return named("sq in")
	case n < 21_780*int64(SquareFoot): // half an acre
		return named("sq ft")
	}
	return named("acre")
}

// metricArea returns square metres for most things, and hectares from half of
// one.
func metricArea(n int64) *unit {
	switch {
	case n < int64(SquareMetre)/10:
		return named("sq cm")
	case n < 5000*int64(SquareMetre):
		return named("sq m")
	}
	return named("ha")
}

// usVolume returns cubic inches below a quart, gallons below half a cubic foot,
// then cubic feet.
func usVolume(n int64) *unit {
	switch {
	case n < int64(Gallon)/4:
		return named("cu in")
	case n < int64(CubicFoot)/2:
		return named("gal")
	}
	return named("cu ft")
}

// metricVolume returns litres from one litre to two cubic metres.
func metricVolume(n int64) *unit {
	switch {
	case n < int64(Litre):
		return named("mL")
	case n < 2*int64(CubicMetre):
		return named("L")
	}
	return named("m3")
}

// usMass returns ounces below a pound.
func usMass(n int64) *unit {
	if n < lb {
		return named("oz")
	}
	return named("lb")
}

// metricMass returns tonnes from ten tonnes.
func metricMass(n int64) *unit {
	switch {
	case n < kg:
		return named("g")
	case n < 10_000*kg:
		return named("kg")
	}
	return named("t")
}

func usDensity(int64) *unit     { return named("lb/cu yd") }
func metricDensity(int64) *unit { return named("kg/m3") }
