// Package knockout answers: which pieces of foam make the basin?
//
// Every layer is turned over into form view (package view), and every connected
// piece of it is a part. The largest outline lies on the form's base, so the glue
// order runs from layer 1 up. Buoyancy under fresh mix: F = (rho v - m) g.
//
// Left out, for now: seams, keys, dowels and nesting on sheets; the number of sheets
// is a lower bound by area. Sources: [analytic], [polystyrene-resistance].
package knockout
