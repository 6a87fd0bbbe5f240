package resin

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/stage/resin/heat"
	"pourwright/internal/units"
)

// A Moment is when something happens, hours after a pour. Where it does not come within
// the hours computed, Later is set and H is the last of these: "later than H".
type Moment struct {
	H     units.Duration `json:"h"`
	Later bool           `json:"later"`
}

// momentOf counts hour from since; an hour that does not come is later than end.
func momentOf(hour, since, end float64) Moment {
	if math.IsInf(hour, 0) || math.IsNaN(hour) {
		return Moment{units.Duration(max(0, end-since)), true}
	}
	return Moment{units.Duration(max(0, hour-since)), false}
}

// after reports whether m comes after t, as far as is known.
func (m Moment) after(t units.Duration) bool { return m.Later || m.H > t }

// A Zone is the part of a surface with about as much resin under it. Hours count from
// the pour; they are those of a surface that no lift covers.
type Zone struct {
	Name     string         `json:"name"` // deep, middle, shallow; whole where the depth is nearly the same
	From     units.Length   `json:"resin_from_mm"`
	To       units.Length   `json:"resin_to_mm"`
	Share    units.Fraction `json:"share_of_surface"`
	Gels     Moment         `json:"gels"`
	Tacky    Moment         `json:"tack_free"`   // tacky until then
	Bonds    Moment         `json:"bonds_until"` // by itself, from when it has gelled
	HalfHard Moment         `json:"half_hard"`   // half of its surface, all through the depth
	Hard     Moment         `json:"hard"`        // nearly all of it
	Sandable Moment         `json:"sandable"`
	Scuff    bool           `json:"scuff"` // before the next lift
}

// Zones are cut at thirds of the range of depths; below sameDepthMM they are one, and
// one with less than leastShare of the surface is left out. Nearly all of a zone has
// gelled or hardened when its slowest slow share is left out; it bonds until its first
// quick share does no longer. Chosen.
const (
	sameDepthMM        = 3.0
	leastShare         = 0.01
	slowest, quickest  = 0.98, 0.02
	edgeShare, mostCut = 0.02, 3
)

// zonesOf sorts columns into zones, the deepest first. pouredH is the pour's hour and
// endH the last one computed.
func zonesOf(cols []heat.Column, pouredH, endH float64) []Zone {
	depth := func(c heat.Column) float64 { return c.DeepMM }
	lo, hi := share(cols, depth, edgeShare), share(cols, depth, 1-edgeShare)
	if len(cols) == 0 || !known(lo) || !known(hi) {
		return []Zone{}
	}
	parts, total := make([][]heat.Column, mostCut), 0.0
	for _, c := range cols {
		k := mostCut - 1
		if hi-lo >= sameDepthMM {
			k = min(max(int(mostCut*(hi-c.DeepMM)/(hi-lo)), 0), mostCut-1)
		}
		parts[k], total = append(parts[k], c), total+c.AreaM2
	}
	out := []Zone{}
	for k, p := range parts {
		z := zoneOf(p, pouredH, endH)
		z.Name, z.Share = [mostCut]string{"deep", "middle", "shallow"}[k], z.Share/units.Fraction(max(total, 1e-12))
		if len(p) > 0 && z.Share >= leastShare {
			out = append(out, z)
		}
	}
	if len(out) == 1 {
		out[0].Name = "whole"
	}
	return out
}

// zoneOf sums columns up; Share is their area, m2.
func zoneOf(cols []heat.Column, pouredH, endH float64) Zone {
	at := func(value func(heat.Column) float64, part float64) Moment {
		return momentOf(share(cols, value, part), pouredH, endH)
	}
	z := Zone{
		From: units.Length(share(cols, func(c heat.Column) float64 { return c.DeepMM }, edgeShare)),
		To:   units.Length(share(cols, func(c heat.Column) float64 { return c.DeepMM }, 1-edgeShare)),
		Gels: at(func(c heat.Column) float64 { return c.GelH }, slowest), Tacky: at(func(c heat.Column) float64 { return c.TackyH }, slowest),
		Bonds:    at(func(c heat.Column) float64 { return c.BondsH }, quickest),
		HalfHard: at(func(c heat.Column) float64 { return c.SetH }, 0.5),
		Hard:     at(func(c heat.Column) float64 { return c.SetH }, slowest), Sandable: at(func(c heat.Column) float64 { return c.SmoothH }, slowest),
	}
	for _, c := range cols {
		z.Share += units.Fraction(c.AreaM2)
	}
	return z
}

// share returns the value below which part of the columns' area lies; NaN without any.
func share(cols []heat.Column, value func(heat.Column) float64, part float64) float64 {
	order := slices.Clone(cols)
	slices.SortStableFunc(order, func(a, b heat.Column) int { return cmp.Compare(value(a), value(b)) })
	total := 0.0
	for _, c := range order {
		total += c.AreaM2
	}
	sum := 0.0
	for _, c := range order {
		if sum += c.AreaM2; sum >= part*total {
			return value(c)
		}
	}
	return math.NaN()
}
