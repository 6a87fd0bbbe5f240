package geom

import (
	"math"
	"slices"
)

// Contains reports whether p is inside r or on its boundary.
func (r Region) Contains(p Point) bool {
	w := 0
	for _, ring := range r.Rings() {
		n, on := ring.winding(p)
		if on {
			return true
		}
		w += n
	}
	return w > 0
}

// winding returns the winding number of r about p, or on where p lies on r within
// half a grid step.
func (r Ring) winding(p Point) (n int, on bool) {
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if segmentDistance(p, a, b) <= Grid/2 {
			return 0, true
		}
		switch {
		case a.Y <= p.Y && b.Y > p.Y && b.Sub(a).Cross(p.Sub(a)) > 0:
			n++
		case a.Y > p.Y && b.Y <= p.Y && b.Sub(a).Cross(p.Sub(a)) < 0:
			n--
		}
	}
	return n, false
}

// segmentDistance returns the distance from p to the segment ab, mm.
func segmentDistance(p, a, b Point) float64 {
	v, w := b.Sub(a), p.Sub(a)
	t := v.Dot(v)
	if t > 0 {
		t = math.Max(0, math.Min(1, w.Dot(v)/t))
	}
	return w.Sub(v.Mul(t)).Norm()
}

// Distance returns the distance from p to the nearest boundary of r, mm, negative
// when p is inside r; +Inf for an empty region.
func (r Region) Distance(p Point) float64 {
	d := math.Inf(1)
	for _, ring := range r.Rings() {
		for i, a := range ring {
			d = math.Min(d, segmentDistance(p, a, ring[(i+1)%len(ring)]))
		}
	}
	if r.Contains(p) {
		return -d
	}
	return d
}

// Simplify returns r with points dropped that move the boundary by at most tol mm;
// rings that would collapse stay as they are.
func (r Region) Simplify(tol float64) Region {
	var rings []Ring
	for _, ring := range r.Rings() {
		rings = append(rings, ring.Simplify(tol))
	}
	return Build(rings, Positive)
}

// Simplify returns r with points dropped that move it by at most tol mm.
func (r Ring) Simplify(tol float64) Ring {
	if len(r) < 4 || !(tol > 0) {
		return r
	}
	far := 0
	for i, p := range r {
		if p.Sub(r[0]).Norm() > r[far].Sub(r[0]).Norm() {
			far = i
		}
	}
	keep := make([]bool, len(r))
	keep[0], keep[far] = true, true
	closed := append(append(Ring{}, r...), r[0])
	type span struct{ a, b int }
	for stack := []span{{0, far}, {far, len(r)}}; len(stack) > 0; {
		s := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		worst, at := tol, -1
		for i := s.a + 1; i < s.b; i++ {
			if d := segmentDistance(closed[i], closed[s.a], closed[s.b]); d > worst {
				worst, at = d, i
			}
		}
		if at >= 0 {
			keep[at] = true
			stack = append(stack, span{s.a, at}, span{at, s.b})
		}
	}
	out := Ring{}
	for i, p := range r {
		if keep[i] {
			out = append(out, p)
		}
	}
	if len(out) < 3 {
		return r
	}
	return out
}

// SelfCrossings returns where sides of r that are not neighbours properly cross,
// at most limit of them.
func (r Ring) SelfCrossings(limit int) []Point {
	return crossings([]Ring{r}, limit, func(a, b owned) bool {
		d := a.side - b.side
		return d != 0 && d != 1 && d != -1 && d != len(r)-1 && d != 1-len(r)
	})
}

// Crossings returns where the sides of a and b properly cross, at most limit.
func Crossings(a, b Ring, limit int) []Point {
	return crossings([]Ring{a, b}, limit, func(s, t owned) bool { return s.ring != t.ring })
}

// owned says which side of which ring an edge is.
type owned struct{ ring, side int }

func crossings(rings []Ring, limit int, count func(a, b owned) bool) []Point {
	edges, owners := ownedEdges(rings)
	var out []Point
	s := newStrips(edges)
	for i := range edges {
		if len(out) >= limit {
			break
		}
		s.visit(int32(i), func(j int32) {
			if len(out) < limit && count(owners[i], owners[j]) {
				if p, ok := properCrossing(&edges[i], &edges[j]); ok {
					out = append(out, p.point())
				}
			}
		})
	}
	slices.SortFunc(out, comparePoints)
	return out
}

// ownedEdges returns the sides of rings sorted by their left ends, with owners.
func ownedEdges(rings []Ring) ([]edge, []owned) {
	type pair struct {
		e edge
		o owned
	}
	var all []pair
	for k, r := range rings {
		for i, p := range r {
			a, okA := snap(p)
			b, okB := snap(r[(i+1)%len(r)])
			if !okA || !okB || a == b {
				continue
			}
			if b.before(a) {
				a, b = b, a
			}
			all = append(all, pair{edge{lo: a, hi: b}, owned{k, i}})
		}
	}
	slices.SortStableFunc(all, func(a, b pair) int { return a.e.lo.compare(b.e.lo) })
	edges, owners := make([]edge, len(all)), make([]owned, len(all))
	for i, p := range all {
		edges[i], owners[i] = p.e, p.o
	}
	return edges, owners
}

// properCrossing returns where a and b cross inside both.
func properCrossing(a, b *edge) (gridPoint, bool) {
	if turn(a.lo, a.hi, b.lo)*turn(a.lo, a.hi, b.hi) >= 0 || turn(b.lo, b.hi, a.lo)*turn(b.lo, b.hi, a.hi) >= 0 {
		return gridPoint{}, false
	}
	return crossing(a, b), true
}

func comparePoints(a, b Point) int {
	switch {
	case a.X < b.X || a.X == b.X && a.Y < b.Y:
		return -1
	case a == b:
		return 0
	}
	return 1
}
