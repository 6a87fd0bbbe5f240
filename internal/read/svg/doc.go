// Package svg reads a drawing of outlines in Scalable Vector Graphics and gives
// them back in millimetres on the page, checked, measured and nested.
//
// What is read: groups, nested transforms, viewBox and preserveAspectRatio, nested
// svg elements, use, symbol and defs, all path commands, the basic shapes, style
// attributes and style sheets of simple selectors, fill rules, display and
// visibility, lengths in mm, cm, in, pt, pc, px, Q, per cent and user units.
//
// What is not: text, images, patterns, clipping, masks, markers, scripts, animation,
// files that the drawing refers to. Whatever is left out is said in a finding.
// Entities are never expanded.
//
// Coordinates of a Drawing are millimetres on the page, x to the right and y DOWN as
// in the file, from the page's upper left corner. Drawing.PieceRegion turns them over
// into the piece's own, y up.
//
// Curves become chords. The greatest distance between a curve and its chords, E mm,
// is bounded after all transforms by
//
//	E <= h^2/8 max|P''(t)|    h: step of the parameter, P'': second derivative
//
// and is at most Options.ChordError; it is taken smaller where the chords of a ring
// would otherwise change its area by more than 0.01 %. Areas and boxes that a
// Drawing states are those of the curves themselves, in closed form.
//
// Source: [w3c-svg2]; of style sheets [w3c-css-syntax]; of the curve bound [analytic].
package svg
