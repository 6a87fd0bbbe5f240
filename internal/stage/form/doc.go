// Package form answers: which panels make the form?
//
// The inside of the form is the outer box of the piece, L x W x H. The base is
// L x W; the sides stand outside it and cover its edge, so they are H + t high, t
// being the board's MEASURED thickness. Only one pair grows by 2 t in a butt corner,
// both in a mitre:
//
//	butt, long sides past   L + 2t    W
//	butt, short sides past  L         W + 2t
//	mitre                   L + 2t    W + 2t
//
// Left out, for now: cutting plans, screws, battens, the dam. Sources: [analytic].
package form
