// Package concrete answers: how much concrete, in which batches, with how much water?
//
// # Model
//
// The piece is cast face down. In the form, the mould is a height field: the base at
// z = 0, the knockout's layers as prisms that all stand on it, the sides up to the
// height H. The shell is every point of the cavity within its thickness t of the mould,
// by Euclidean distance, clipped at the rim. So the column over a point of the plan is
// solid from the mould up to
//
//	Z = H                                                where s <= t
//	Z = min(H, max(t, max over d_i <= t of D_i + sqrt(t^2 - d_i^2)))  elsewhere
//
//	s    distance in plan to the nearest side of the box, mm
//	d_i  distance in plan to layer i, 0 inside it, mm
//	D_i  depth of layer i below the show face, its top in the form, mm
//	V(t) integral of Z over the plan, less the foam, mm3
//
// This is exact, also at mouths: foam stands on the base, so nothing is cast under it,
// and above the foam that touches a side the side's panel is mould again. Only the
// integral is numerical, on a raster of exact distances that is halved until V changes
// by less than 0.1 %; Converged is that last change.
//
// Coat k, of cumulative thickness t_k, takes V(t_k) - V(t_(k-1)). Area times thickness
// is shown beside it: it counts the corners between base and sides twice and misses
// what outer edges add.
//
// The cast surface, by kind: face = plan less the first layer, floor = plan of every
// layer less the next, riser = outlines times heights off the sides, wall = the sides
// less the mouths, which is where outlines lie on them.
//
// A mix is worked out by absolute volume: yield = sum of W/(SG 1000)/(1 - air). Its
// water ratio counts the emulsion's water, on cement and pozzolan, or on the dry blend
// of a bagged mix. Fibre is a share of the whole mix. Batches are equal tubs, each part
// to the gram; four fifths of the water go in first, the rest up to the recipe's, and
// no batch gets more than its card's limit. maturity.go scales waits with temperature.
//
// # Left out
//
// What falls beside the form (the spare pays for it), sagging and rounding of edges,
// the working life of a batch against packing, evaporation, scrim.
//
// # Sources
//
// Shell [analytic]; mixes [aci-211]; ranges [gfrc-guides], [astm-c979]; temperature
// [astm-c1074].
package concrete
