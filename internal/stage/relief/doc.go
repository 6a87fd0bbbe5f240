// Package relief answers: what is the basin, exactly?
//
// # Model
//
// The drawn steps become layers from the show face down. With R_i the region of
// layer i in finished view, A_i its area (mm2) and d_i its thickness (mm):
//
//	volume of a layer   V_i = A_i d_i                       mm3, shown in litres
//	fill curve          V(h) = sum of A_i over the thickness below h
//	mouth opening       sum over layers of (length of R_i on the side) d_i    mm2
//
// h runs from the deepest floor up. The fill curve is straight between its points,
// one at each terrace. A_i are the polygon integrals of the flattened outlines, so
// the volumes are exact for them to the geometry's grid of 0.0001 mm.
//
// Every step is cut at the box, then at the layer above. What is cut off is said:
// how far the outline sticks out of the box, and where and how far a layer reaches
// out under the one above. The overhang of a piece U of R_i outside R_(i-1) is
//
//	max over p in U of distance(p, R_(i-1))                 mm, within 0.05
//
// Strips thinner on the mean than 0.06 mm are left by flattening one curve twice and
// are cut back without a word.
//
// A mouth is a stretch of layer 1 within the tolerance of a side, with all that lies
// under it; a basin round a corner has a mouth on each side.
//
// Narrow places are what a disc of the limit's width cannot reach, where that is a
// neck, a whole piece, or a spur longer than the limit; also where a mouth, or the
// land that ends beside one, is narrower on the side than the limit. Necks are sought
// in the water, lands and islands in the concrete of each layer; a place that a layer
// above showed no wider is not shown again. Of one kind in one layer the six
// narrowest get a finding each and the others are counted; all are in the result.
// Outlines of more than 1,500 corners are simplified first, and a note says to what.
//
// # Left out
//
// Sloping floors and risers, draft, the radius of the cutter in inside corners.
//
// # Sources
//
// [analytic]; the limits are chosen.
package relief
