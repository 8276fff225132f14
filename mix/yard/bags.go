package yard

import (
	"example.org/barrow/mix/catalog"
	"example.org/barrow/units"
)

// Bags returns how many packs of size cover need. A shortfall of at most
// [catalog.Slack] is not bought for. It panics when need is negative or size is
// not more than the slack.
func Bags(need, size units.Volume) int64 {
	if need < 0 || size <= catalog.Slack {
		panic("yard: Bags needs a need of zero or more and a size above a millilitre")
	}
	n, short := need/size, need%size
	if short > catalog.Slack {
		n++
	}
	return int64(n)
}
