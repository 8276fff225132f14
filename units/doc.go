// Package units holds the quantities that a grower writes down: [Length],
// [Area], [Volume], [Mass], [Density], [Ratio] and [Money]. It knows nothing of
// what they are for.
//
//	v, err := units.ParseVolume("1 1/2 cu ft") // 42,475,269,888 nL
//
// # Exactness
//
// Every quantity is a whole count of a small unit, as time.Duration counts
// nanoseconds, so quantities compare with == and add without drift:
//
//	Length   nanometres           1/64 in is 396,875
//	Area     square micrometres   1 sq in is 645,160,000
//	Volume   nanolitres           1 cu in is 16,387,064
//	Mass     micrograms           1 lb is 453,592,370
//	Density  micrograms per litre 1 kg/m3 is 1,000,000
//	Ratio    a reduced fraction
//	Money    minor units          4.75 is 475
//
// A quantity is parsed as a fraction and rounded once, half away from zero, to
// the whole count, without floating point. Every kind has a largest value that
// parsing accepts ([MaxLength] and the others), so that two of a kind add
// without overflow; methods that multiply report whether the result fits.
//
// What rounding leaves out is not lost where it could decide a count of packs: a
// [Fixed] is a quantity before rounding, and a [Range] of volumes keeps what its
// figures leave out.
//
// Parsing errors are always an [*Error]. Quantities are plain values and all
// functions are pure, so everything is safe for concurrent use.
//
// # What people write
//
//	quantity = term { term } .               2 ft 6 in, 1 lb 8 oz
//	term     = number unit .
//	number   = digits [ "." digits ]         12, 1.5, .5
//	         | digits "/" digits             1/2
//	         | digits ( " " | "-" ) digits "/" digits | digits vulgar | vulgar .
//	vulgar   = "½" | "¼" | "¾" | "⅓" | …     1½, ⅛
//	unit     = a name from the table, in capital or small letters, with or
//	           without full stops .
//	dims     = length { ( "x" | "×" | "by" ) length } .
//
// Only lengths and masses can have a second term. It must be in a smaller unit,
// and only the last term may have a fraction. In dims, a unit written once at
// the end applies to every number. A decimal comma, a thousands comma, an
// exponent, a range and a bare "qt" (dry or liquid?) are refused with a reason,
// never guessed at.
//
// "yd" is a cubic yard where a volume is expected and a yard where a length is:
// people who sell by the yard call both "yards".
//
// String is exact and parses back. [Measure] writes for people, in US units,
// metric or both, with significant digits and common fractions.
package units
