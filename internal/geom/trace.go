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

// trace joins sides into rings and rings into polygons.
func trace(sides []side) Region {
	next := follow(sides)
	owner := make([]int32, len(sides))
	for i := range owner {
		owner[i] = -1
	}
	var loops []loop
	done := make([]bool, len(sides))
	for i := range sides {
		if !done[i] {
			loops = walk(sides, next, done, int32(i), owner, loops)
		}
	}
	return assemble(sides, loops, owner)
}

// follow returns for every side the one that continues it: at its end, the first
// leaving side clockwise from the way it came, so that the result stays to the left
// and pieces that only touch at a point stay apart.
func follow(sides []side) []int32 {
	byFrom := make([]int32, len(sides))
	for i := range byFrom {
		byFrom[i] = int32(i)
	}
	slices.SortFunc(byFrom, func(a, b int32) int { return sides[a].from.compare(sides[b].from) })
	next := make([]int32, len(sides))
	for i := range sides {
		next[i] = -1
		k, _ := slices.BinarySearchFunc(byFrom, sides[i].to, func(s int32, p gridPoint) int { return sides[s].from.compare(p) })
		for ; k < len(byFrom) && sides[byFrom[k]].from == sides[i].to; k++ {
			if c := byFrom[k]; next[i] < 0 || clockwiseBefore(sides[i].to, sides[i].from, sides[c].to, sides[next[i]].to) {
				next[i] = c
			}
		}
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

// walk follows sides from start until it closes, splitting off a loop whenever a
// point repeats, so that every ring is simple.
func walk(sides []side, next []int32, done []bool, start int32, owner []int32, loops []loop) []loop {
	var path []int32
	seen := map[gridPoint]int{}
	for s := start; s >= 0 && !done[s]; s = next[s] {
		done[s] = true
		seen[sides[s].from] = len(path)
		path = append(path, s)
		if at, ok := seen[sides[s].to]; ok {
			loops = appendLoop(sides, path[at:], owner, loops)
			for _, p := range path[at:] {
				delete(seen, sides[p].from)
			}
			path = path[:at]
		}
	}
	return loops
}

func appendLoop(sides []side, path []int32, owner []int32, loops []loop) []loop {
	l := loop{ring: make([]gridPoint, len(path))}
	o := sides[path[0]].from
	for i, s := range path {
		l.ring[i] = sides[s].from
		owner[s] = int32(len(loops))
		a, b := sides[s].from, sides[s].to
		l.area2 += float64(a.x-o.x)*float64(b.y-o.y) - float64(a.y-o.y)*float64(b.x-o.x)
	}
	l.side = lowestAtLeft(sides, path)
	if l.area2 == 0 {
		for _, s := range path {
			owner[s] = -1
		}
		return loops
	}
	return append(loops, l)
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
