// Package form answers: which panels make the form?
//
// # Model
//
// The inside of the form is the outer box of the piece, L x W x H. The base is
// L x W and lies between the sides; the sides stand outside it and cover its edge, so
// they are H + t high, t being the board's MEASURED thickness. Only one pair grows by
// 2 t in a butt corner, both in a mitre, where the size is to the outside:
//
//	                        long sides    short sides
//	butt, long sides past   L + 2t        W
//	butt, short sides past  L             W + 2t
//	mitre                   L + 2t        W + 2t        45 degrees at both ends
//
//	seam to caulk           4 H + 2 (L + W)                         mm
//	faces to wax            L W + 2 H (L + W) - covered by foam     mm2
//	mass of a panel         rho length width t                      kg, bevels not taken off
//	sheets at least         sum of areas / (sheet area)             a lower bound
//
// Every panel is held against the sheet both ways round.
//
// Sides on the base make the base 2 t larger and the sides H high. An outline of n
// sides has every side cut by half its corners:
//
//	size  e + t/tan(a/2) + t/tan(b/2)   bevel  90 - a/2 degrees from square
//
// Walls bow as plates, foot and ends simple, the top free or held by a rail (package
// plate); a flowable mix presses as a liquid, a packed one evenly with 0.5 kPa. Screws
// hold by their withdrawal in the edge of the board behind.
//
// # Left out
//
// Ties across the top; shear of screws; the weight of the mix on the base.
//
// # Sources
//
// [analytic], [plate-series], [nds]; limits are chosen and may be changed.
package form
