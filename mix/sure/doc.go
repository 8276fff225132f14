// Package sure answers how sure an order is. From the ranges of uncertain
// figures it works out the chance that what is ordered is enough
// ([Model.Chance]), how much to plan for to reach a wanted chance
// ([Model.Enough], [Model.Quantile]) and which figures are most worth measuring
// ([Model.Matters]). It knows only numbers: volumes are float64 litres; jobs,
// materials and packs are the business of its callers.
//
//	m := sure.Model{
//		Items:    1,
//		Factors:  []sure.Factor{{Name: "pot", Low: 2.5, Mode: 2.8, High: 4.1}},
//		Needs:    []sure.Term{{Item: 0, Amount: 64, Uses: []sure.Use{{Factor: 0}}}},
//		Supplies: []sure.Term{{Item: 0, Amount: 200}},
//	}
//	chance := m.Chance().All
//
// # Assumptions
//
// The answers are only as good as these assumptions. A program that shows them
// should say so, in words such as "if the ranges are right":
//
//   - A range holds. A figure is never outside its Low and High. Inside, it is
//     likeliest at its Mode and becomes less likely in straight lines on both
//     sides (a triangle), or is equally likely everywhere (Flat). A triangle is
//     a guess at a shape from three figures that a grower can name, not a
//     measured distribution.
//   - Factors are independent. More settling does not make larger pots more
//     likely. Where two figures do go together, use one factor for both: a
//     factor has one value at a time in all terms that use it. For the same
//     reason 64 pots of one kind are one factor: 64 factors would cancel each
//     other out.
//   - Where pieces do differ from each other, as bags do, a factor with Pieces
//     is their mean. What they have in common, such as their lot, is a factor
//     of its own beside it.
//   - Needs are sums of products. A term is litres times factors, divided by
//     what is left after losses.
//   - Enough means enough of every item, to within [Slack].
//
// # How it works
//
// Sampled answers use 16 shifts of a lattice of 1024 points, the same points
// every time. One factor is not sampled: the most influential one that enters
// simply. For each point the other factors leave an interval in which that
// factor is enough, and its distribution gives the chance of the interval
// exactly. The results are averaged. The scatter between the shifts gives the
// error that [Chance] states, usually about a thousandth. It says nothing about
// ranges that are wrong. Nothing is sampled when at most one factor varies, or
// when the extremes decide the answer.
//
// # Exactness
//
// Only correctly rounded operations are used (+, -, *, / and the square root),
// products are rounded before they are added, and there is no random state. So
// answers are the same to the last bit on every platform. Results are not
// rounded further. The mean of up to 16 pieces, or 32 flat ones, is exact but
// for the straight pieces of its distribution, which are at most 0.0005 wrong;
// that of more is at most 0.0014 wrong. Time grows with the number of terms, and Enough takes about
// 400 kB of memory for each item that varies.
//
// # Errors and concurrency
//
// [Model.Check] reports everything wrong with a model as [Faults]; the other
// methods panic on a model that it refuses. No method changes the model, so
// they can run at the same time.
package sure
