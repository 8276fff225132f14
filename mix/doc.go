// Package mix works out how much of each soil material a job takes, what to buy,
// what it weighs and costs, and how to bring it home.
//
// A [Job] is everything one person wants worked out together. It is read from a
// document with [Decode], or made in Go, and [Job.Plan] works it out:
//
//	job, err := mix.Decode(document)
//	plan, err := job.Plan()
//	for i := range plan.Needs {
//		fmt.Println(plan.Needs[i].Material.Name, plan.Needs[i].Buy.Plan)
//	}
//
// The parts are packages of their own: what a job may name is in catalog, its
// ground in ground, its kinds of work in task, what is sold and how it is hauled in
// yard; report writes a plan as documents, picture draws it.
//
// # Exactness
//
// Volumes are whole nanolitres. A quantity is parsed as a fraction and rounded once.
// Parts of a mix are split by largest remainder, so that they add up. A count of
// packs is an exact ceiling with one slack, [catalog.Slack]. What is not known
// exactly is a range, and stays one. Nothing overflows in silence: a job past a
// bound has a problem.
//
// # Errors
//
// Everything wrong with a job comes at once, as [Problems], each with the path of
// its field; then there is no plan. [errors.As] finds the first [Problem], and the
// [units.Error] that it comes from.
//
// # Ownership and concurrency
//
// A plan holds copies: nothing that is done to a job, a plan or the catalogue
// changes another plan. A Job or a Plan may be read by several goroutines at once,
// and is not to be changed while it is.
package mix
