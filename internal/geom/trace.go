package geom

import (
	"slices"
)

// loop is a traced ring with one of its sides, to find what lies below it.
type loop struct {
	ring  []gridPoint
	side  int32 // a result side that starts or ends at its first point in sweep order, the lowest there
	area2 float64
}

// trace joins sides, whose ends are numbered below points, into rings and rings into
// polygons.
func trace(sides []side, points int) Region {
	w := &walker{sides: sides, next: follow(sides, points), seen: make([]int32, points), owner: make([]int32, len(sides)), done: make([]bool, len(sides))}
	for i := range w.owner {
		w.owner[i] = -1
	}
	for i := range w.seen {
		w.seen[i] = -1
	}
	for i := range sides {
		if !w.done[i] {
			w.walk(int32(i))
		}
	}
	return assemble(sides, w.loops, w.owner)
}

// follow returns for every side the one that continues it: at its end, the first
// leaving side clockwise from the way it came, so that the result stays to the left
// and pieces that only touch at a point stay apart.
func follow(sides []side, points int) []int32 {
	start := make([]int32, points+1) // leaving sides of point p: leaving[start[p]:start[p+1]]
	for i := range sides {
		start[sides[i].fromID+1]++
	}
	for p := range points {
		start[p+1] += start[p]
	}
	leaving, used := make([]int32, len(sides)), make([]int32, points)
	for i := range sides {
		p := sides[i].fromID
		leaving[start[p]+used[p]] = int32(i)
		used[p]++
	}
	next := make([]int32, len(sides))
	for i := range sides {
		s := &sides[i]
		best := int32(-1)
		for _, c := range leaving[start[s.toID]:start[s.toID+1]] {
			if best < 0 || clockwiseBefore(s.to, s.from, sides[c].to, sides[best].to) {
				best = c
			}
		}
		next[i] = best
	}
	return next
}

// clockwiseBefore reports whether, turning clockwise round o from the direction of
// back, a comes before b.
func clockwiseBefore(o, back, a, b gridPoint) bool {
	ha, hb := half(o, back, a), half(o, back, b)
	if ha != hb {
		return ha < hb
	}
	return turn(o, a, b) < 0
}

// half returns 0 for directions in the first half turn clockwise from back (the
// opposite direction included), 1 for the second, and 2 for back itself.
func half(o, back, p gridPoint) int {
	switch t := turn(o, back, p); {
	case t < 0:
		return 0
	case t > 0:
		return 1
	}
	if (back.x-o.x)^(p.x-o.x) >= 0 && (back.y-o.y)^(p.y-o.y) >= 0 {
		return 2
	}
	return 0
}

// A walker follows sides into loops.
type walker struct {
	sides []side
	next  []int32 // per side: the one that continues it, or -1
	done  []bool  // per side
	owner []int32 // per side: its loop, or -1
	seen  []int32 // per point: where on the path it is left, or -1
	path  []int32
	loops []loop
}

// walk follows sides from start until it closes, splitting off a loop whenever a
// point repeats, so that every ring is simple.
func (w *walker) walk(start int32) {
	w.path = w.path[:0]
	for s := start; s >= 0 && !w.done[s]; s = w.next[s] {
		w.done[s] = true
		w.seen[w.sides[s].fromID] = int32(len(w.path))
		w.path = append(w.path, s)
		if at := w.seen[w.sides[s].toID]; at >= 0 {
			w.close(w.path[at:])
			w.path = w.path[:at]
		}
	}
	w.forget(w.path)
}

// forget takes the points of path off the path.
func (w *walker) forget(path []int32) {
	for _, s := range path {
		w.seen[w.sides[s].fromID] = -1
	}
}

// close makes a loop of path.
func (w *walker) close(path []int32) {
	w.forget(path)
	l := loop{ring: make([]gridPoint, len(path)), side: lowestAtLeft(w.sides, path)}
	for i, s := range path {
		l.ring[i] = w.sides[s].from
	}
	if l.area2 = area2(l.ring); l.area2 == 0 {
		return
	}
	for _, s := range path {
		w.owner[s] = int32(len(w.loops))
	}
	w.loops = append(w.loops, l)
}

// area2 returns twice the signed area of r. Up to an extent of 200 m it is exact
// before it is rounded: the sum may run over, but what remains of it is right.
func area2(r []gridPoint) float64 {
	o := r[0]
	exact, sum, far := int64(0), 0.0, int64(0)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		ax, ay, bx, by := a.x-o.x, a.y-o.y, b.x-o.x, b.y-o.y
		far = max(far, abs64(ax), abs64(ay))
		exact += ax*by - ay*bx
		sum += float64(ax)*float64(by) - float64(ay)*float64(bx)
	}
	if far < 1<<30 {
		return float64(exact)
	}
	return sum
}

// lowestAtLeft returns the side of path that touches its leftmost point and lies
// lowest there.
func lowestAtLeft(sides []side, path []int32) int32 {
	best := int32(-1)
	var lo, hi gridPoint
	for _, s := range path {
		a, b := sides[s].from, sides[s].to
		if b.before(a) {
			a, b = b, a
		}
		if best < 0 || a.before(lo) || a == lo && turn(a, hi, b) < 0 {
			best, lo, hi = s, a, b
		}
	}
	return best
}

// assemble gives every hole to the outer ring around it. The side below a hole's
// left end belongs to that outer ring or to another hole of it.
func assemble(sides []side, loops []loop, owner []int32) Region {
	order := make([]int, len(loops))
	for i := range order {
		order[i] = i
		loops[i].ring = canonical(loops[i].ring)
	}
	slices.SortFunc(order, func(a, b int) int { return compareLoops(loops[a], loops[b]) })
	slot := make([]int, len(loops))
	var out Region
	for _, i := range order {
		if loops[i].area2 > 0 {
			slot[i] = len(out)
			out = append(out, Polygon{Outer: toRing(loops[i].ring)})
		}
	}
	for _, i := range order {
		if loops[i].area2 < 0 {
			if p := outerOf(sides, loops, owner, i); p >= 0 {
				out[slot[p]].Holes = append(out[slot[p]].Holes, toRing(loops[i].ring))
			}
		}
	}
	return out
}

// outerOf returns the loop that hole i lies in, or -1.
func outerOf(sides []side, loops []loop, owner []int32, i int) int {
	s := sides[loops[i].side].below
	for range len(sides) {
		if s < 0 {
			return -1
		}
		o := owner[s]
		switch {
		case o < 0 || int(o) == i:
			s = sides[s].below
		case loops[o].area2 > 0:
			return int(o)
		default:
			i, s = int(o), sides[loops[o].side].below
		}
	}
	return -1
}

// canonical drops points in the middle of straight stretches and starts the ring at
// its leftmost lowest point.
func canonical(r []gridPoint) []gridPoint {
	out := make([]gridPoint, 0, len(r))
	for i, p := range r {
		a, b := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
		if turn(a, p, b) != 0 || half(p, a, b) == 2 {
			out = append(out, p)
		}
	}
	first := 0
	for i, p := range out {
		if p.before(out[first]) {
			first = i
		}
	}
	return append(append([]gridPoint{}, out[first:]...), out[:first]...)
}

func compareLoops(a, b loop) int {
	if len(a.ring) > 0 && len(b.ring) > 0 {
		if c := a.ring[0].compare(b.ring[0]); c != 0 {
			return c
		}
	}
	switch {
	case a.area2 < b.area2:
		return -1
	case a.area2 > b.area2:
		return 1
	}
	return 0
}

func toRing(g []gridPoint) Ring {
	r := make(Ring, len(g))
	for i, p := range g {
		r[i] = p.point()
	}
	return r
}
