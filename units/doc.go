// Package units holds the quantities a grower writes down: [Length], [Area],
// [Volume], [Mass], [Density], [Ratio] and [Money]. It knows no trade.
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
//	Density  micrograms a litre   1 kg/m3 is 1,000,000
//	Ratio    a reduced fraction
//	Money    minor units          4.75 is 475
//
// A quantity is parsed as a fraction and rounded once, half away from zero, to
// the whole count. No step goes through floating point. Parsing bounds every
// quantity ([MaxLength] and the others) so that two of a kind add without
// overflow; the methods that multiply report whether the result fits.
//
// # What people write
//
//	quantity = term { term } .               2 ft 6 in, 1 lb 8 oz
//	term     = number unit .
//	number   = digits [ "." digits ]         12, 1.5, .5
//	         | digits "/" digits             1/2
//	         | digits ( " " | "-" ) digits "/" digits | digits vulgar | vulgar .
//	vulgar   = "½" | "¼" | "¾" | "⅓" | …     1½, ⅛
//	unit     = a name of the table, in either case, with or without full stops .
//	dims     = length { ( "x" | "×" | "by" ) length } .
//
// A second term is for lengths and masses only, in a smaller unit, and only the
// last term may have a fraction. In dims a unit written once at the end serves
// every number. A decimal comma, a thousands comma, an exponent, a range and a
// bare "qt" (dry or liquid?) are refused with the reason, never guessed.
//
// "yd" is a cubic yard where a volume is asked for and a yard where a length
// is: in the trade both are "yards".
//
// String is exact and parses back. [Measure] writes for people, in US units,
// metric or both, with the digits that matter and common fractions.
package units
