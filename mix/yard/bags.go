package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// slack is [catalog.Slack].
var slack = units.FixedOf(catalog.Slack)

// Bags returns how many packs of size cover need. A shortfall of at most
// [catalog.Slack] is not bought for. It panics when need is negative or size is
// not more than the slack.
func Bags(need, size units.Volume) int64 {
	if need < 0 {
		panic("yard: Bags needs a need of zero or more")
	}
	return Count(units.FixedOf(need), units.FixedOf(size))
}

// Count is Bags for volumes before rounding: it is exact, as far as they are. A need
// below zero takes no pack.
//
// It takes packs as long as more than the slack is missing. Each time it takes as
// many as certainly do not cover the rest, or one, so that it is done in a few
// rounds however many there are.
func Count(need, size units.Fixed) (n int64) {
	if !size.Over(slack) {
		panic("yard: a pack holds more than a millilitre")
	}
	for need.Over(slack) {
		k := max(need.Floor()/(size.Floor()+1), 1)
		n, need = n+k, need.Minus(size.MulDiv(k, 1))
	}
	return n
}
