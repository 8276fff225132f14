// Package task knows every kind of work that a job may have: filling pots, amending
// a bed, backfilling planting holes, covering with mulch.
//
// One file holds one [Kind], whole: its fields, its checks, how it is worked out,
// and what its [Result] has to say: facts, steps, notes, cautions, its own part of
// the plan document. Nothing outside asks which kind a task is, but the drawings. A
// new kind is a new file and its place in the list, in task.go.
//
// Figures are exact; see package mix for the promises. A Result does not change
// once made and may be read by several goroutines.
package task
