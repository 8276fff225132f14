// Package order finds what to buy and how to bring it home at the least total
// cost. A grower stands between pallets of bags and a heap of bulk with a small
// vehicle and a price list: several materials are needed, each is on offer in
// several packs, and all of them share the trips and the yard's deliveries. The
// package knows volumes, money, mass and counts, and nothing of jobs.
//
// # What is exact
//
// Search and Frontier are exact: an order that says Proven is the first by the
// aim, then by cost, by what is left over, by packs lifted and by the counts in
// the sequence of the offers. Packs are not divided: a trip is counted when
// whole packs need it, by mass and by room. No step goes through floating point,
// and the same request gives the same order everywhere. When the Budget of work
// runs out, the order is the best so far and Bound is what no order undercuts.
//
// # How
//
// For a given number of trips and loads, what the vehicles can take is a set of
// rows: totals of mass and room, and rounded shares that tell how many large
// packs go side by side. Each row is given a charge, and every material is then
// covered on its own at the least of price and charges, depth first from the
// line with the best rate. Less what the rows allow, that sum bounds the cost of
// every order with so many trips and loads (a Lagrangian relaxation).
//
// An order within some margin of the bound has each of its covers within that
// margin of its material's least. So the covers within a small margin are
// listed, combined depth first, and loaded in earnest; the margin grows until no
// better order can be outside it. Numbers of trips and loads that the bound puts
// over the best order are passed over.
package order
