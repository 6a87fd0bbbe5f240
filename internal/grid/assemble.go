package grid

import (
	"math"

	"pourwright/internal/geom"
)

// assemble gives each hole to the outer ring around it. At its leftmost crossing a
// hole has high ground to its left, an outer ring low ground; and going on to the
// left from a hole, the next ring met is the one around it or another hole of the
// same ground, further left.
func (t *tracer) assemble() geom.Region {
	out := geom.Region{}
	polygon := make([]int, len(t.rings)) // of outer rings, -1 for a ring without area
	for id, r := range t.rings {
		if t.hole(r) {
			continue
		}
		polygon[id] = -1
		if t.solid(r) {
			polygon[id] = len(out)
			out = append(out, geom.Polygon{Outer: r.points})
		}
	}
	for _, r := range t.rings {
		if !t.hole(r) || !t.solid(r) {
			continue
		}
		around := t.leftOf(r)
		for t.hole(t.rings[around]) {
			around = t.leftOf(t.rings[around])
		}
		if p := polygon[around]; p >= 0 {
			out[p].Holes = append(out[p].Holes, r.points)
		}
	}
	return out
}

func (t *tracer) hole(r ring) bool { return r.gap > 0 && t.up(r.gap-1, r.row) }

// solid reports whether r has an area to speak of.
func (t *tracer) solid(r ring) bool {
	return len(r.points) >= 3 && math.Abs(r.points.Area()) > 1e-12*t.DX*t.DY
}

// leftOf returns the ring next to the left of the hole r.
func (t *tracer) leftOf(r ring) int32 {
	gap := r.gap - 1
	for gap > 0 && t.up(gap-1, r.row) {
		gap--
	}
	return t.gaps[r.row*t.wide+gap]
}
