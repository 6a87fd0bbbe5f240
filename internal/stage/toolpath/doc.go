// Package toolpath answers: how does a router cut these parts out of that sheet?
//
// # Model
//
// A part is cut along its outline moved out by the cutter's radius r, always from
// the original outline; every ring of the moved region is a path of the cutter's
// centre. Holes are rings too: the cutter runs inside them. A hole the cutter just
// fits is drilled; one that would leave a small loose plug is cleared from its
// middle. Curves are written as arcs where an arc stays within the tolerance of the
// path:
//
//	| |p - c| - R | <= tolerance      for all points p of the stretch it replaces
//
// with the centre c on the bisector of the stretch's ends, so that both radii agree.
//
// Depth is cut in n equal passes of at most the step down, over the sheet's thickness
// t and the overcut o into the board below:
//
//	n = ceil((t + o) / step),   z_k = -k (t + o) / n
//
// The cutter enters along the path at the ramp angle, from the depth it has reached
// to the next; the next ramp clears what the last one left and after the last pass
// the ramp's stretch is cut once more. Tabs are stretches that the cutter crosses at
// their height. They stand only where the maker does not see the edge.
//
// Inside comes before outside: what lies in a hole is cut before the hole, holes
// before outlines. Under that rule the ways above the sheet are shortened by nearest
// neighbour, turned stretches (2-opt), moved stretches (Or-opt) and a choice of where
// each path begins, from random changes with a fixed seed.
//
// Time: every move speeds up and slows down at the acceleration a; a corner of angle
// theta between two directions is passed at
//
//	v^2 = a d sin(theta/2) / (1 - sin(theta/2))
//
// with d a chosen corner deviation, an arc at no more than v^2 = a R.
//
// # Carving
//
// A height map may be carved whole with a ball cutter of radius R. The tip's height
// over a node is the lowest at which the ball cuts nothing that is to stay,
//
//	tip(p) = max over |d| <= R of  z(p + d) + sqrt(R^2 - d^2) - R
//
// Roughing goes level by level to an allowance above that, finishing in ways
// 2 sqrt(h (2R - h)) apart for ridges of h on level ground; on a slope the ridges are
// higher by 1/cos of it.
//
// # Program
//
// Words of RS-274 (ISO 6983): absolute, feed per minute, plane XY, arcs by their
// centre. X and Y count from the sheet's lower left corner, Z from its top, up. Rapid
// moves run at the safe height, or straight up to it.
//
// # Left out
//
// Bending of the cutter, its wear, runout, the board's flatness, tool changers.
//
// # Sources
//
// [rs274ngc], [router-practice], [analytic]; other numbers are chosen.
package toolpath
