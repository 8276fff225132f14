// Package task works out every kind of work that a job may have: filling pots,
// amending a bed, backfilling planting holes and covering ground with mulch.
//
// Each [Kind] is in a file of its own, with its fields, its checks, its arithmetic
// and what its [Result] has to show: facts, steps, notes, cautions and its own part
// of the plan document. Other packages handle all kinds alike; only the drawings ask
// which kind a task is. To add a kind, add its file and list it in task.go.
//
// Volumes are whole nanolitres, lengths whole nanometres, areas whole square
// micrometres; package mix says how they are rounded. A Result does not change once
// it is made, and several goroutines may read it.
package task
