// Package resin answers: how much resin, in which lifts, weighed how?
//
// # Model
//
// V(h) is the fill curve, litres against h mm above the deepest floor, linear between
// its kinks. A lift from h1 to h2 takes V(h2) - V(h1), net. What is ordered:
//
//	order = (V + s V + A_top overfill + A_wet film) (1 + reserve)
//
//	s      shrinkage by volume
//	A_top  surface at the rim, mm2
//	A_wet  floors and risers, which keep a film, mm2
//
// Lifts are as few as the card's range of depths allows and of those the most equal
// (least sum of squared depths, ends every 0.5 mm and on terraces). None but the last
// ends less than a guard above a terrace, for a film there would not cure; ending on
// it is fine. Where all of that cannot be had, the least depth is given up first, then
// the terraces, and a finding says so.
//
// A lift is poured to its mark and shrinks below it; the next refills that. The last
// one's shrink and the overfill are part of its pour:
//
//	pour_k = V_k + s V_(k-1) + film_k,  and + s V_n + overfill for the last
//
// Net volumes add up to the basin, pours to the order without its reserve. A and B
// weigh what is poured, at the mixed density: B/A by mass = b/a of a ratio by mass,
// (b/a)(rhoB/rhoA) of one by volume. Buckets are equal and hold what their freeboard
// leaves.
//
// Waits are those of the computed cure (stage/resin/heat, kinetics): until nearly all of a
// surface has gelled before the next lift, until all is hard after the last. Without a
// cure they are the card's times brought to the room (Arrhenius, 55 kJ/mol).
//
// # Cure
//
// The planner tries ways of splitting and waiting on a coarse grid; the best is worked out
// on a fine one. A way is sure where nine of ten cases keep within the limits of peak,
// dam and foam. Every lift is also followed as if nothing came after it: its hours by zone
// (Zone) are what a maker meets when the next pour is put off. What does not come within
// the hours followed is a Moment that is later than these, never nothing.
//
// What is not known exactly (Influence) is varied one by one, then all at once, and in the
// direction in which the peak grows fastest:
//
//	z = 1.28 s/|s|,  s what one standard deviation of each does to the peak
//
// # Left out
//
// Levelling under way, leaks past the dam, what the concrete drinks (seal it first), light
// and gloss, stress of shrinkage.
//
// # Sources
//
// Litres and splitting [analytic]; rate [resin-presets]; density [epoxy-properties];
// shop rules [practice].
package resin
