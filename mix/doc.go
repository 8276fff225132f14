// Package mix works out how much of each soil material a job takes, what to buy, what
// that weighs and costs, and how to bring it home.
//
// A [Job] is everything that one person wants worked out together. [Decode] reads one
// from a document, or a Go program fills one in, and [Job.Plan] works it out:
//
//	job, err := mix.Decode(document)
//	plan, err := job.Plan()
//	for i := range plan.Needs {
//		fmt.Println(plan.Needs[i].Material.Name, plan.Needs[i].Buy.Plan)
//	}
//
// The parts of a job are packages of their own. Package catalog has the materials,
// mixes and containers that a job may name, ground measures areas, task works out
// each kind of work, and yard chooses what to buy and how to haul it. Of a plan,
// package report writes documents and package picture makes drawings.
//
// # Exactness
//
// Volumes are whole nanolitres. A quantity is parsed as a fraction and rounded once.
// A volume is split into the parts of a mix by largest remainder, so that the parts
// add up to it. A count of packs is decided before any rounding, from what was typed,
// and rounded up exactly, but for one tolerance, [catalog.Slack]. Only what is round or
// tapers is rounded first, one pot, hole or bed at a time. A figure that is not known exactly is a range, and everything that
// follows from it is a range too. Nothing overflows silently: a job that is too large
// to work out has a problem that says so.
//
// # Errors
//
// Everything that is wrong with a job is reported at once, as [Problems], each with
// the path of its field, and then there is no plan. [errors.As] finds the first
// [Problem], and the [units.Error] that it comes from.
//
// # Ownership and concurrency
//
// A plan works on a copy of its job and holds copies from the catalogue. Changing a
// job, a plan or the catalogue never changes another plan. Several goroutines may read
// a Job or a Plan at once, as long as none changes it.
package mix
