// Package resin answers: how much resin, in which lifts, weighed how?
//
// V(h) is the fill curve, piecewise linear in h (mm above the deepest floor). A lift
// from h1 to h2 takes V(h2) - V(h1). The order is net + shrink + overfill + film,
// times one plus the reserve. Lower lifts' shrink is refilled by the next, the last
// one's by the overfill; the order pays for all of it. B for 100 of A by mass:
// 100 (b/a)(rhoB/rhoA) of a ratio by volume.
//
// Left out, for now: heat, cure and recoat windows, tint, levelling. Sources:
// [analytic], [practice], [epoxy-properties].
package resin
