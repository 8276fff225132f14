package mix

import "example.org/barrow/units"

// Slack is the shortfall that buys nothing: a millilitre, under a teaspoon,
// and far above what rounding can add up to. It is the one slack of every
// count, so that a need of exactly seven bags buys seven.
const Slack = units.Millilitre

// Bags returns how many packs of size cover need; a shortfall of at most
// [Slack] buys nothing. It panics when need is negative or size is not more
// than Slack.
func Bags(need, size units.Volume) int64 {
	if need < 0 || size <= Slack {
		panic("mix: Bags needs a need of zero or more and a size above a millilitre")
	}
	n, short := need/size, need%size
	if short > Slack {
		n++
	}
	return int64(n)
}
