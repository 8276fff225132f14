// Package ground measures ground and simple solids: beds in many shapes, strips
// along a line, outlines by their corners; pots and holes.
//
// Lengths are whole nanometres, areas whole square micrometres, volumes whole
// nanolitres. What is straight is exact and rounded once. What is round goes
// through floating point and is rounded once on the way out, products kept apart
// so that every machine gets the same bits.
package ground
