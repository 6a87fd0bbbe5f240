package svg

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A crossing is where a side of one ring passes through a side of another, or of the
// same one.
type crossing struct {
	ring  [2]int
	along [2]float64 // side number and share of it
	at    geom.Point
}

// turnOf returns the sign of the turn from a over b to p: +1 left, -1 right, 0 on the line.
func turnOf(ax, ay, bx, by, px, py int64) int {
	return cmp.Compare((bx-ax)*(py-ay), (by-ay)*(px-ax))
}

// crossings returns the places where the rings pass through each other or themselves.
// Touching, without passing to the other side, is no crossing; nor is running along a
// common side. It returns false if the budget ended before all pairs were tried.
func (h *hierarchy) crossings() ([]crossing, bool) {
	var out []crossing
	whole := h.pairs(func(s, t side) {
		if len(out) > mostCrossings {
			h.budget = 0
			return
		}
		if c, ok := h.cross(s, t); ok {
			out = append(out, c)
		}
	})
	slices.SortFunc(out, func(a, b crossing) int {
		return cmp.Or(cmp.Compare(a.ring[0], b.ring[0]), cmp.Compare(a.ring[1], b.ring[1]),
			cmp.Compare(a.along[0], b.along[0]), cmp.Compare(a.along[1], b.along[1]))
	})
	return out, whole
}

// mostCrossings ends the search: a drawing with so many is beyond repair by hand.
const mostCrossings = 20_000

func (h *hierarchy) cross(s, t side) (crossing, bool) {
	if s.ring > t.ring || s.ring == t.ring && s.at > t.at {
		s, t = t, s
	}
	ta, tb := turnOf(t.ax, t.ay, t.bx, t.by, s.ax, s.ay), turnOf(t.ax, t.ay, t.bx, t.by, s.bx, s.by)
	sa, sb := turnOf(s.ax, s.ay, s.bx, s.by, t.ax, t.ay), turnOf(s.ax, s.ay, s.bx, s.by, t.bx, t.by)
	switch {
	case ta*tb < 0 && sa*sb < 0:
		return meeting(s, t), true
	case s.bx == t.bx && s.by == t.by:
		return meetingAtEnds(s, t), h.passes(s, t)
	case tb == 0 && sa*sb < 0: // the end of s lies inside t
		n := h.next(s)
		return crossingAt(s, t, 1, share(t, s.bx, s.by)), ta*turnOf(t.ax, t.ay, t.bx, t.by, n.bx, n.by) < 0
	case sb == 0 && ta*tb < 0:
		n := h.next(t)
		return crossingAt(s, t, share(s, t.bx, t.by), 1), sa*turnOf(s.ax, s.ay, s.bx, s.by, n.bx, n.by) < 0
	}
	return crossing{}, false
}

// passes reports whether two rings that share a corner, the ends of s and t, go
// through each other there: their four directions lie in turn about it.
func (h *hierarchy) passes(s, t side) bool {
	if s.ring == t.ring && s.at == t.at {
		return false
	}
	sn, tn := h.next(s), h.next(t)
	in, out := way{s.ax - s.bx, s.ay - s.by}, way{sn.bx - s.bx, sn.by - s.by}
	p, q := way{t.ax - s.bx, t.ay - s.by}, way{tn.bx - s.bx, tn.by - s.by}
	if p.along(in) || p.along(out) || q.along(in) || q.along(out) {
		return false // they run along a common side
	}
	return p.between(in, out) != q.between(in, out)
}

// A way is a direction on the grid.
type way struct{ x, y int64 }

func (w way) cross(v way) int { return cmp.Compare(w.x*v.y, w.y*v.x) }

func (w way) along(v way) bool {
	return w.cross(v) == 0 && (w.x > 0) == (v.x > 0) && (w.y > 0) == (v.y > 0)
}

// between reports whether w lies within the left turn from a to b, along neither.
func (w way) between(a, b way) bool {
	switch a.cross(b) {
	case 1:
		return a.cross(w) > 0 && w.cross(b) > 0
	case -1:
		return !(b.cross(w) > 0 && w.cross(a) > 0)
	}
	return !a.along(b) && a.cross(w) > 0
}

func meeting(s, t side) crossing {
	dx, dy := float64(s.bx-s.ax), float64(s.by-s.ay)
	ex, ey := float64(t.bx-t.ax), float64(t.by-t.ay)
	fx, fy := float64(t.ax-s.ax), float64(t.ay-s.ay)
	d := dx*ey - dy*ex
	return crossingAt(s, t, (fx*ey-fy*ex)/d, (fx*dy-fy*dx)/d)
}

func meetingAtEnds(s, t side) crossing { return crossingAt(s, t, 1, 1) }

func share(s side, x, y int64) float64 {
	return math.Hypot(float64(x-s.ax), float64(y-s.ay)) / math.Hypot(float64(s.bx-s.ax), float64(s.by-s.ay))
}

func crossingAt(s, t side, u, v float64) crossing {
	x := float64(s.ax) + u*float64(s.bx-s.ax)
	y := float64(s.ay) + u*float64(s.by-s.ay)
	return crossing{[2]int{int(s.ring), int(t.ring)}, [2]float64{float64(s.at) + u, float64(t.at) + v},
		geom.Point{X: x * geom.Grid, Y: y * geom.Grid}}
}

// deep returns the crossings of ring a with the rings of another outline that bound a
// part of a further than tol mm from them, provided that there are such parts both
// inside and outside; else none: curves drawn along each other weave within their
// chord errors without crossing in any sense a maker would care for. All must be
// crossings of a with that outline, in order along a; near reports whether a point is
// within tol of the other outline.
func (h *hierarchy) deep(a int, all []crossing, along func(crossing) float64, near func(geom.Point) bool) []crossing {
	n := len(all)
	isDeep := make([]bool, n) // the part of a after crossing i
	var sides [2]bool
	for i := range all {
		from, to := along(all[i]), along(all[(i+1)%n])
		if i == n-1 {
			to += float64(h.count[a])
		}
		isDeep[i] = h.strays(a, from, to, near)
		sides[i%2] = sides[i%2] || isDeep[i]
	}
	if n > 1 && !(sides[0] && sides[1]) {
		return nil
	}
	var out []crossing
	for i, c := range all {
		if isDeep[i] || isDeep[(i+n-1)%n] {
			out = append(out, c)
		}
	}
	return out
}

// strays reports whether a corner of ring a, or the middle of a side, between two
// places along it is not near.
func (h *hierarchy) strays(a int, from, to float64, near func(geom.Point) bool) bool {
	first, n := h.first[a], h.count[a]
	corner := func(k float64) geom.Point {
		whole := math.Floor(k)
		s := h.sides[first+(int(whole)%n+n)%n]
		t := k - whole
		return geom.Point{X: (float64(s.ax) + t*float64(s.bx-s.ax)) * geom.Grid, Y: (float64(s.ay) + t*float64(s.by-s.ay)) * geom.Grid}
	}
	for k := from; k < to; {
		next := min(math.Floor(k)+1, to)
		if !near(corner((k+next)/2)) || next < to && !near(corner(next)) {
			return true
		}
		if h.budget <= 0 {
			return true
		}
		k = next
	}
	return false
}

// nearRings returns a test whether a point is within tol mm of any ring that belongs.
func (h *hierarchy) nearRings(belongs func(ring int) bool, tol float64) func(geom.Point) bool {
	return func(p geom.Point) bool {
		x, y, r := p.X/geom.Grid, p.Y/geom.Grid, tol/geom.Grid
		box := extentBox{int64(x - r), int64(y - r), int64(x + r + 1), int64(y + r + 1)}
		found := false
		h.within(box, func(s side) {
			if !found && belongs(int(s.ring)) {
				found = s.distance(x, y) <= r
			}
		})
		return found
	}
}

// distance returns how far a place is from s, grid steps.
func (s side) distance(x, y float64) float64 {
	dx, dy := float64(s.bx-s.ax), float64(s.by-s.ay)
	px, py := x-float64(s.ax), y-float64(s.ay)
	t := max(0, min(1, (px*dx+py*dy)/(dx*dx+dy*dy)))
	return math.Hypot(px-t*dx, py-t*dy)
}
