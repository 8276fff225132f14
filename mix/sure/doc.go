// Package sure answers how sure an order is. From the ranges of uncertain
// figures it works out the chance that what is ordered is enough
// ([Model.Chance]), how much to plan for to be as sure as one likes
// ([Model.Enough], [Model.Quantile]) and which figures are worth measuring
// ([Model.Matters]). It knows only numbers: volumes are float64 litres, and
// jobs, materials and packs are for its callers.
//
// # What it takes for granted
//
// The answers are only as good as these assumptions, so that a face should
// show them in words such as "if the ranges are right":
//
//   - A range holds. A figure is never outside its Low and High, and inside it
//     is likeliest at its Mode, falling off in straight lines (a triangle), or
//     equally likely everywhere (Flat). A triangle is a guess at a shape from
//     three figures a grower can name, not a measured distribution.
//   - Factors are independent. Settling more says nothing of the pots being
//     larger. Where two figures do go together, use one factor for both: a
//     factor has one value at a time in all terms that use it. That is also why
//     64 pots of one kind are one factor and not 64, which would cancel out.
//   - Needs are sums of products. A term is litres times factors, divided by
//     what is left after losses.
//   - Enough means every item, to [Slack].
//
// # How it works
//
// Sampled answers go over 16 shifts of a lattice of 1024 points, the same
// points every time. One factor, the most influential that enters simply, is
// not sampled: the others leave an interval in which it is enough, and its
// distribution gives the chance of that exactly. The rest is averaged. The
// scatter of the shifts gives the error that [Chance] states: what sampling
// may be off by, usually about a thousandth. It says nothing about wrong
// ranges. With no factor or one that varies, and where the extremes settle
// the matter, nothing is sampled.
//
// # Exactness
//
// Only correctly rounded operations decide (+, -, *, / and the square root),
// products are rounded before they are summed, and there is no random state.
// Answers are the same to the last bit on every platform. Nothing is rounded
// on the way out. Time grows with the terms, memory by about 400 kB for each
// item that varies in Enough.
package sure
