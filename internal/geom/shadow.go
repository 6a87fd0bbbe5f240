package geom

import "math"

// A shadow is a coarse picture of where new edges lie, to leave those far from any of
// them alone.
type shadow struct {
	lo     gridPoint
	dx, dy int64 // of a cell
	n      int64 // cells along each axis
	cells  []bool
}

// newShadow draws the boxes of the fresh edges.
func newShadow(edges []edge, fresh []bool) *shadow {
	s := &shadow{}
	count := 0
	var hi gridPoint
	for i := range edges {
		if !fresh[i] {
			continue
		}
		a, b := yRange(&edges[i])
		if count == 0 {
			s.lo, hi = gridPoint{edges[i].lo.x, a}, gridPoint{edges[i].hi.x, b}
		}
		s.lo, hi = gridPoint{min(s.lo.x, edges[i].lo.x), min(s.lo.y, a)}, gridPoint{max(hi.x, edges[i].hi.x), max(hi.y, b)}
		count++
	}
	s.n = int64(math.Min(256, 1+2*math.Sqrt(float64(count))))
	s.dx, s.dy = (hi.x-s.lo.x)/s.n+1, (hi.y-s.lo.y)/s.n+1
	s.cells = make([]bool, s.n*s.n)
	for i := range edges {
		if fresh[i] {
			s.visit(&edges[i], func(c *bool) bool { *c = true; return false })
		}
	}
	return s
}

// covers reports whether e may meet a new edge.
func (s *shadow) covers(e *edge) bool {
	hit := false
	s.visit(e, func(c *bool) bool { hit = *c; return hit })
	return hit
}

// visit calls f for the cells that the box of e meets until it returns true.
func (s *shadow) visit(e *edge, f func(c *bool) bool) {
	lo, hi := yRange(e)
	x0, x1 := max(0, floorDiv(e.lo.x-s.lo.x, s.dx)), min(s.n-1, floorDiv(e.hi.x-s.lo.x, s.dx))
	y0, y1 := max(0, floorDiv(lo-s.lo.y, s.dy)), min(s.n-1, floorDiv(hi-s.lo.y, s.dy))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if f(&s.cells[y*s.n+x]) {
				return
			}
		}
	}
}

// floorDiv returns a/b rounded down, b > 0.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
