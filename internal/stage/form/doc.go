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
// # Left out
//
// Cutting plans and kerfs, screws, battens, bulging under the wet mix, the dam.
//
// # Sources
//
// [analytic]; the thicknesses that are doubted are chosen.
package form
