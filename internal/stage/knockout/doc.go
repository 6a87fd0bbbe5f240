// Package knockout answers: which pieces of foam make the basin?
//
// # Model
//
// Every layer is turned over into form view (package view), and every connected piece
// of it is a part. Parts are named by layer and, in the layer, from left to right in
// form view by the middle of their box to 1 mm: L1-A, L1-B, L2-A. The label stands in
// the middle of the largest disc in the part.
//
//	mass of a part      m = rho_f A d            kg, d the layer's thickness
//	sheets stacked      n = round(d / t)         t the foam's measured thickness
//	sheets at least     sum n A / (sheet area)   a lower bound; the nesting decides
//	uplift              F = (rho_c V - m) g      N, V and m of the whole knockout
//
// A layer that misses a whole number of sheets by more than 0.3 mm is a finding. The
// largest outline lies on the form's base, so the glue order runs from layer 1 up, in
// a layer from the largest part down.
//
// A part larger than the sheet needs a seam. It is sought between the places that
// leave no piece longer than the sheet: the shortest cut across that crosses no piece
// of foam narrower than 50 mm and stays 40 mm off the seams of the layer below in the
// form, as far as there is one.
//
// # Left out
//
// Keys and dowels, nesting on sheets, seams along x, thinning of single sheets.
//
// # Sources
//
// Uplift [analytic]; what may touch polystyrene [polystyrene-resistance]; density of
// fresh concrete where none is stated [gfrc-guides]; limits chosen.
package knockout
