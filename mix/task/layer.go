package task

import (
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// tooMuch is the hint for a volume past [units.MaxVolume].
func tooMuch() message.Text {
	return message.Of("more than {#0} in all", units.Both.Volume(units.MaxVolume))
}

// deep is how deep v lies over a, rounded down to the nanometre so that the stock is
// never said to go further than it does. A nanolitre over a square micrometre is a
// metre, so there is a factor. Past [units.MaxLength] it stops there.
func deep(v units.Volume, a units.Area) *Reached {
	d, ok := v.MulDiv(1_000_000_000, int64(a))
	if !ok {
		return &Reached{Area: a, Depth: units.MaxLength}
	}
	return &Reached{Area: a, Depth: units.Length(d)}
}
