// Package plate bends thin rectangular plates under a load that is even or grows
// along a side.
//
// # Model
//
// Kirchhoff's plate, small deflections. The deflection is a double series
//
//	w(x,y) = sum c_ij f_i(x) g_j(y)
//
// of polynomials that meet the supports, with curvatures that are Legendre's, so that
// the equations stay well conditioned. The c make the energy
//
//	D/2 integral( wxx2 + wyy2 + 2 nu wxx wyy + 2(1-nu) wxy2 ) - integral( q w )
//
// least, which fulfils the conditions on moments and forces at simple and free edges
// too. Deflections converge fast; moments on clamped edges and near corners more
// slowly, for the exact plate is not smooth in its corners.
//
// Lengths in mm, loads in N/mm2, rigidity D = E t^3 / 12(1 - nu^2) in N mm, moments in
// N mm per mm of width.
package plate
