package saw

import "slices"

// lowerBins returns a number of w x h bins that no packing of the items can do
// without: the best of products of dual feasible functions over both sides.
//
//	sum over items of min over its turns of f(w_i/W) g(h_i/H)  <=  bins
//
// A dual feasible function maps numbers in [0,1] so that no set of numbers that
// adds up to at most 1 has images that add up to more than 1. The identity gives
// the bound of areas.
// Source: [fekete-schepers-2001].
func lowerBins(items []item, w, h int64) int {
	fs, gs := dualFeasible(sides(items, w), w), dualFeasible(sides(items, h), h)
	best := 0
	for _, f := range fs {
		for _, g := range gs {
			sum := 0.0
			for i := range items {
				t := &items[i]
				v := f.at(t.w) * g.at(t.h)
				if t.turns {
					if t.w > w || t.h > h {
						v = f.at(t.h) * g.at(t.w)
					} else if t.h <= w && t.w <= h {
						v = min(v, f.at(t.h)*g.at(t.w))
					}
				}
				sum += v
			}
			best = max(best, roundUp(sum))
		}
	}
	return best
}

// roundUp rounds up with a little grace for the error of the sum.
func roundUp(x float64) int {
	n := int(x)
	if x-float64(n) > 1e-9*max(1, x) {
		n++
	}
	return n
}

// sides returns the different sides of the items that could lie along full.
func sides(items []item, full int64) []int64 {
	var out []int64
	for _, t := range items {
		for _, s := range []int64{t.w, t.h} {
			if s <= full {
				out = append(out, s, full-s)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// A dual is a dual feasible function on whole lengths 0..full.
type dual struct {
	kind int // 0 identity, 1 rounding by k, 2 threshold eps, 3 rounding by eps
	k    int64
	eps  int64
	full int64
}

// at returns the image of length x.
//
//	u_k(x)   = x if (k+1)x is whole, else floor((k+1)x)/k
//	U_eps(x) = 1 above 1-eps, 0 below eps, else x
//	phi_eps  = 1 - floor((1-x)/eps)/floor(1/eps) above 1/2,
//	           1/floor(1/eps) from eps to 1/2, else 0
func (d dual) at(x int64) float64 {
	X, F := float64(x), float64(d.full)
	switch d.kind {
	case 1:
		if (d.k+1)*x%d.full == 0 {
			return X / F
		}
		return float64((d.k+1)*x/d.full) / float64(d.k)
	case 2:
		switch {
		case x > d.full-d.eps:
			return 1
		case x < d.eps:
			return 0
		}
		return X / F
	case 3:
		n := d.full / d.eps
		switch {
		case 2*x > d.full:
			return 1 - float64((d.full-x)/d.eps)/float64(n)
		case x >= d.eps:
			return 1 / float64(n)
		}
		return 0
	}
	return X / F
}

// manySides is how many thresholds are tried along one side. Chosen.
const manySides = 60

func dualFeasible(sides []int64, full int64) []dual {
	out := []dual{{kind: 0, full: full}}
	for k := int64(1); k <= 12; k++ {
		out = append(out, dual{kind: 1, k: k, full: full})
	}
	step := 1 + len(sides)/manySides
	for i := 0; i < len(sides); i += step {
		if s := sides[i]; s > 0 && 2*s <= full {
			out = append(out, dual{kind: 2, eps: s, full: full}, dual{kind: 3, eps: s, full: full})
		}
	}
	return out
}
