package geom

import "math"

// meet appends the cuts that edges i and j give each other. An edge that passes
// through the grid square round an end of the other is bent to that end, as snap
// rounding does: nearly parallel edges then join in one round, where cutting them at
// their crossing alone moves the crossing along by a few grid steps a round.
func meet(edges []edge, i, j int32, cuts []cut) []cut {
	a, b := &edges[i], &edges[j]
	if a.lo == b.hi && a.lo.x < a.hi.x && b.lo.x < b.hi.x {
		return cuts // one goes on where the other ends
	}
	if a.lo == b.lo || a.hi == b.hi {
		return meetFan(edges, i, j, cuts)
	}
	c1, near1 := a.lean(b.lo)
	c2, near2 := a.lean(b.hi)
	if c1*c2 > 0 && !near1 && !near2 {
		return cuts
	}
	d1, near3 := b.lean(a.lo)
	d2, near4 := b.lean(a.hi)
	before := len(cuts)
	cuts = touch(edges, i, near1, b.lo, cuts)
	cuts = touch(edges, i, near2, b.hi, cuts)
	cuts = touch(edges, j, near3, a.lo, cuts)
	cuts = touch(edges, j, near4, a.hi, cuts)
	if len(cuts) > before || c1*c2 >= 0 || d1*d2 >= 0 {
		return cuts
	}
	p := crossing(a, b)
	return cutAt(edges, j, p, cutAt(edges, i, p, cuts))
}

// meetFan is meet for edges that share an end, and so do not cross: only the other end
// of one may lie on the other.
func meetFan(edges []edge, i, j int32, cuts []cut) []cut {
	a, b := &edges[i], &edges[j]
	p, q := a.hi, b.hi
	if p == q {
		p, q = a.lo, b.lo
	}
	_, near := a.lean(q)
	cuts = touch(edges, i, near, q, cuts)
	_, near = b.lean(p)
	return touch(edges, j, near, p, cuts)
}

// touch appends a cut of edge k at p if p, near its line, lies between its ends.
func touch(edges []edge, k int32, near bool, p gridPoint, cuts []cut) []cut {
	if e := &edges[k]; near && p != e.lo && p != e.hi {
		if t := along(e, p); t > 0 && t < along(e, e.hi) {
			cuts = append(cuts, cut{k, t, p})
		}
	}
	return cuts
}

// lean returns the side of e's line that p lies on, exactly, as turn does, and
// whether the line passes through the grid square round p:
//
//	|d x (p - lo)| <= (|dx| + |dy|)/2
//
// Doubles err by far less than that bound, so they decide all but the near ones.
func (e *edge) lean(p gridPoint) (side int, near bool) {
	dx, dy := float64(e.hi.x-e.lo.x), float64(e.hi.y-e.lo.y)
	cross := dx*float64(p.y-e.lo.y) - dy*float64(p.x-e.lo.x)
	reach := (math.Abs(dx) + math.Abs(dy)) / 2
	switch {
	case cross > reach:
		return 1, false
	case cross < -reach:
		return -1, false
	}
	return turn(e.lo, e.hi, p), true
}

// along measures how far p lies along e from its lo.
func along(e *edge, p gridPoint) float64 {
	return float64(e.hi.x-e.lo.x)*float64(p.x-e.lo.x) + float64(e.hi.y-e.lo.y)*float64(p.y-e.lo.y)
}

// cutAt appends a cut of edge k at p unless p is one of its ends.
func cutAt(edges []edge, k int32, p gridPoint, cuts []cut) []cut {
	if p == edges[k].lo || p == edges[k].hi {
		return cuts
	}
	return append(cuts, cut{k, along(&edges[k], p), p})
}

// crossing returns the grid point nearest to where a and b properly cross.
func crossing(a, b *edge) gridPoint {
	ax, ay := float64(a.hi.x-a.lo.x), float64(a.hi.y-a.lo.y)
	bx, by := float64(b.hi.x-b.lo.x), float64(b.hi.y-b.lo.y)
	den := ax*by - ay*bx
	t := (float64(b.lo.x-a.lo.x)*by - float64(b.lo.y-a.lo.y)*bx) / den
	t = math.Min(1, math.Max(0, t))
	if math.IsNaN(t) {
		t = 0.5
	}
	return gridPoint{a.lo.x + int64(math.Round(t*ax)), a.lo.y + int64(math.Round(t*ay))}
}
