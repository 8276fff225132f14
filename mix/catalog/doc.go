// Package catalog holds what a job can name: materials, containers, mixes,
// soils and common allowances, each with its source and how certain it is.
//
//	for _, m := range catalog.BuiltIn().Materials {
//		fmt.Println(m.ID, m.Source)
//	}
//
// The rows are in catalog.json; embedded.go contains the same document as a
// constant. A job can add rows of its own. [NewScope] checks them and adds them
// to the catalogue's; a job's row takes the place of one with the same id. What
// a task names is looked up in the [Scope], and a mix comes out of it as a
// [Blend], ready to be split exactly ([Split]).
//
// What a row holds: a pot has its brim, from which its fill line follows, and what
// is filled level has fill, a tray for one cell; low and high are what makes hold,
// left out a tenth to either side. A material has dry and wet for loose stuff; one
// that is sold dry, moist or compressed in sealed packs has packed_low, packed_high
// and packed_source for what those weigh, and without them a pack weighs from dry
// to wet.
//
// Problems with a job's rows are reported through a doc.Reader, each with its
// path. [BuiltIn] returns a copy that the caller owns. Everything reached
// through a Scope is shared and must not be changed; a Scope is read-only once
// made, so goroutines can share one.
package catalog
