// Package saw plans straight cuts: rectangles out of sheets and offcuts on a
// table or track saw, lengths out of bars.
//
// # Model
//
// Every cut runs edge to edge of the part being cut (guillotine cuts) and turns a
// width k, the kerf, into dust. A part of length l cut at distance a leaves a and
// l-a-k. Adding k to every piece and to the sheet turns this into cutting without
// kerf: a+k and (l-a-k)+k add up to l+k. A remainder under k means that the blade
// runs out of the edge, which is allowed and leaves nothing.
//
// Trim is the width lost at an edge of the stock before anything is measured,
// kerf included. Zones (holes, damaged film) are kept out of pieces and offcuts.
//
// # Order of aims
//
// Pieces placed, then the price of what must be bought, then the largest useful
// offcut left, then the next largest and so on, then the fewest settings of the
// saw. SheetPlan.Proven says when the price is proven the lowest.
//
// Lengths are in millimetres; inside, they are whole ticks of 1/32000 mm, in which
// micrometres and 64ths of an inch are both exact.
//
// Left out: tear-out, internal stress of the board that moves a freed edge, and
// cuts that stop inside the board.
package saw
