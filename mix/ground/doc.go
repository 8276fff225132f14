// Package ground measures ground and simple solids: beds of many shapes, strips
// along a line, outlines given by their corners, pots and holes.
//
//	a, err := ground.ParseArea("ring 20 ft x 14 ft")
//	area, err := a.Measure()
//
// # Exactness
//
// Lengths are whole nanometres, areas whole square micrometres, volumes whole
// nanolitres. Shapes with straight sides are exact and rounded once; triangles
// by three sides and everything round use floating point and are rounded once
// at the end. Products are kept apart, so that no processor fuses a product
// with a sum and every machine gets the same bits.
//
// # Errors
//
// [ParseArea] returns a [*units.Error]. Measuring reports every problem with a
// shape, each with its path; see package doc. Values are plain data: nothing is
// shared, and functions can run at the same time.
package ground
