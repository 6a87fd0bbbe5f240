// Package relief answers: what is the basin, exactly?
//
// The drawn steps become layers from the show face down. With R_i the region of
// layer i, A_i its area (mm2) and d_i its thickness (mm):
//
//	volume of a layer   V_i = A_i d_i
//	fill curve          V(h) = sum of the layers below height h above the deepest floor
//	mouth opening       sum over layers of (length of R_i on the side) x d_i
//
// Regions are clipped to the outer box. A layer that reaches out under the one above
// is an undercut: it is located, measured and cut back, so that the rest of the plan
// still shows. Areas are exact polygon integrals of the flattened outlines.
//
// Left out: sloping floors and risers; draft. Sources: [analytic].
package relief
