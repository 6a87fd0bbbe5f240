// Package knockout answers: which pieces of foam make the basin, how do they fit the
// machine and each other, and what are they cut from?
//
// # Model
//
// Every layer is turned over into form view (package view), once; from here on nothing
// is mirrored. Every connected piece of a layer is a part, unless it does not fit the
// rectangle that bed and sheet leave, each less the margin all round. Then it is cut.
//
// Seams are straight lines, 12 directions 15 degrees apart, 8 mm apart. One seam costs
//
//	visible length + risers + 0.1 length         mm, of all that crosses foam
//	+ penalties for necks, thin places, holes, mouths, sharp ends, seams of neighbours
//	+ 1500 for each piece more                   (worth.go has them all)
//
// and branch and bound (search.go) finds the cuts of an outline that cost least and
// leave pieces that fit. The seams of a layer depend on those of its neighbours: every
// layer is sought beside what the others have become, from the base up and from the top
// down, until nothing changes (arrange.go). Pieces from cuts lie square on the bed; an
// outline that fits whole may lie at an angle.
//
// A seam is visible where the layer above does not cover it, and on the risers at its
// ends, since concrete prints there. The stagger is the least distance between the
// seams of layers on each other, keys and steps counted.
//
// Keys are a round head of radius R = max(12 mm, 1.2 cutter radii) on a neck, all arcs
// of radius R (key.go), so a round cutter makes both sides; a step is two quarter arcs.
// The piece on one side has the key, the other the socket, larger by the clearance.
//
// Dowel holes lie inside both parts by the margin: three where a part lies on one
// other, their distances unlike, two on each of several; under cover of the next layer
// before on ledges. No stiff motion, turned over or not, lays a part's lower dowels on
// its holes but the right one, or a note says so.
//
//	mass of a part      m = rho_f A d            kg, d the layer's thickness
//	sheets stacked      n = round(d / t)         t the foam's measured thickness
//	sheets at least     sum n A / (sheet area)   a lower bound
//	uplift              F = (rho_c V - m) g      N, V and m of the whole knockout
//	left by the cutter  closing of the part by a disc of its radius, less the part
//
// # Names
//
// A part's id is its layer and its place in it, from left to right in form view by the
// middle of its box to 1 mm: L1-A, L1-B, L2-A. Its mark is a hash of outline, holes and
// thickness to 0.1 mm, wherever it lies. Parts that the document calls cut, L1-A/3f2c,
// keep their id as long as a part of that mark is in their layer; else it is a finding.
//
// # Sheets
//
// A sheet that lies on the bed is filled whole. One that is larger is sawn first, edge
// to edge, into blanks of one part each (package saw). Offcuts come first.
//
// # Left out
//
// Seams that bend, thinning of single sheets, seams staggered within a stack of sheets
// of one layer, grain.
//
// # Sources
//
// Uplift and the foam left in corners [analytic]; what may touch polystyrene
// [polystyrene-resistance]; density of fresh concrete where none is stated
// [gfrc-guides]; all else chosen.
package knockout
