// Package nest lays irregular pieces on sheets.
//
// The question: where do pieces with holes go, in which turn, so that as few sheets as
// possible are opened and the last one is used as short as possible?
//
// The model: every piece is grown by half the spacing, so that pieces may touch and
// still leave room for the cutter. For two pieces in given turns the places where the
// second overlaps the first form their no-fit area
//
//	N(A, B) = { b - a : (A + a) meets (B + b) } = A + (-B)   (Minkowski sum)
//
// and the depth of an overlap is the distance from b - a to the boundary of N, the
// shortest way out. A layout with overlaps is repaired piece by piece: each overlapping
// piece goes where the weighted sum of its depths is least, and the weights of pairs
// that stay stuck grow (guided local search). Lengths are taken off the sheet as long as
// the repair succeeds; what succeeded last is kept.
//
// Symbols: x along the length of the sheet, y across it, mm; turns counter-clockwise in
// degrees about the origin of the piece.
//
// Left out: turns between the listed ones; sheets as stacks; grain other than by turns.
//
// The result depends on the problem, the seed and the count of iterations only, not on
// the number of threads. The room reads no clock: a caller who wants to stop by time
// cancels the context and gives Spent.
package nest
