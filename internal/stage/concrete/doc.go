// Package concrete answers: how much concrete, in which batches, with how much water?
//
// The shell is all points within its thickness t (mm) of the mould, by Euclidean
// distance, clipped at the rim; see shell for the formula. Coat k of cumulative
// thickness t_k takes V(t_k) - V(t_(k-1)). Area times thickness counts corners twice
// and is shown beside it. Mixes are worked out by absolute volume, batches are equal
// tubs, four fifths of the water go in first, and no batch gets more than its mix's
// limit. maturity.go scales waits with temperature.
//
// Left out, for now: working life of a batch, packing zones, evaporation, scrim.
// Sources: [analytic], [aci-211], [gfrc-guides], [astm-c1074].
package concrete
