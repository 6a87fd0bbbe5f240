// Package cost answers: what is to be bought, in packages that exist, and what does
// it cost?
//
// # Model
//
// For a need q of one material and packages of size s_i at price p_i, counts n_i
// are whole and
//
//	sum n_i s_i >= q                     never rounded down
//
// Where every size has a price the counts make sum n_i p_i least; ties go to the
// least left over, then to the fewest packages. Where a size has no price, the
// counts leave least over, and ties go to the fewest packages. The choice is exact
// by dynamic programming over the common measure of sizes. Where sizes have no
// common measure and the need is large, most of it is taken in the package with the
// best price for its size, and the rest is chosen on a coarser measure, sizes
// rounded down and the need up.
//
// Needs of the same name, unit and packages are bought together.
//
//	q, s_i, bought, left   in the unit of the need: l, kg, sheet, bar, cartridge
//	p_i, price, total      in the shop's currency
//
// # Left out
//
// Delivery, tax, rebates, what is already in the shop, shelf life.
//
// # Sources
//
// Plain arithmetic.
package cost
