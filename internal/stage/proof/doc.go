// Package proof simulates a cutting program against what it is to make: the text as a
// machine would read it, the parts on their sheet, the bed and the cutter. It answers
// one question: may this file be run?
//
// The text is read by package rs274. Nothing here knows how the program was made; that
// is the point.
//
// The cutter is a cylinder of radius r that stands upright. Seen from above a move sweeps
// all points within r of its path, down to the depth of its tip. With d the distance of a
// point to a path and D the region of a part:
//
//	gouged   r - min over moves below the sheet's top of d(path, D)
//	uncut    max over points p of D's boundary of d(p, paths through the sheet) - max(r, d(p, C))
//
// where C is the boundary of the part grown by r: where the middle of a cutter that
// touches the part may be. In an inside corner p is further than r from C, and no cutter
// of that size gets closer; what is left there is the cutter's, not the program's.
// Distances from straight pieces to straight pieces are exact; arcs are chords within
// 0.001 mm; boundaries are looked at every half millimetre and at every corner, and
// between two such points a distance changes by half their spacing at most.
//
// A stretch of an outline that is cut, but not through, is a tab if it is no higher and no
// longer than the tabs that are wanted; else it is uncut.
//
// A carved surface is compared on a grid of a fifth of the ball's radius with what the
// ball takes away along every move, and with the best that a ball of its size can leave.
//
// Left out: bending of the cutter, feeds and chip load, chattering, clamps, the shape of
// a flat cutter's end.
package proof
