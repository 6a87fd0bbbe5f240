// Package cutlist turns the parts wanted from one board, or from one kind of bar, and
// the stock of it into a plan of cuts, and says in sentences what cannot be cut and
// what to do.
//
// # Model
//
// Package saw plans the cuts; here parts and stock get their names, the tree of cuts
// is laid flat into rectangles and lines for paper, and what stays in the shop after
// the work is added up: stock that was not touched, and offcuts by name.
//
// Coordinates on a sheet run from its lower left corner, x along its length.
package cutlist
