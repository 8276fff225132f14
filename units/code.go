package units

// Codes of an [Error]. They do not change.
const (
	QuantityEmpty    = "quantity.empty"    // nothing is written
	QuantityZero     = "quantity.zero"     // nothing, where there must be something
	QuantityNegative = "quantity.negative" // less than nothing
	QuantityLarge    = "quantity.large"    // past the bound of its kind
	QuantityOrder    = "quantity.order"    // 6 in 2 ft; a fraction before the last term
	QuantityTerms    = "quantity.terms"    // two terms, where one is all there may be
	NumberMissing    = "number.missing"    // no number where there must be one
	NumberBad        = "number.bad"        // not one number
	NumberComma      = "number.comma"      // a comma, for decimals or for thousands
	NumberExponent   = "number.exponent"   // 1e3
	NumberRange      = "number.range"      // 2-3 for one figure; a figure out of its range
	NumberDigits     = "number.digits"     // more digits than count
	NumberFraction   = "number.fraction"   // 3/0, 1 3/2
	UnitMissing      = "unit.missing"      // a number alone
	UnitUnknown      = "unit.unknown"      // no such unit
	UnitKind         = "unit.kind"         // a unit of something else
	UnitAmbiguous    = "unit.ambiguous"    // qt: dry or liquid?
	DimsCount        = "dims.count"        // more or fewer lengths than are asked for
	MoneyUnit        = "money.unit"        // a currency beside the amount
	MoneyDecimals    = "money.decimals"    // more than two digits after the point
	RatioRange       = "ratio.range"       // less than nothing, or past a hundred times the whole
	RatioDigits      = "ratio.digits"      // more than four decimals of a percent
	TextLong         = "text.long"         // longer than any quantity is
	TextOdd          = "text.odd"          // a character that no quantity has
	TextUTF8         = "text.utf8"         // not UTF-8
)
