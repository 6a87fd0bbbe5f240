package geom

import (
	"slices"
	"sort"
)

// inRule says whether a point with these winding numbers is in the result.
type inRule func(w [operands]int32) bool

// side is an edge of the result, directed so that the result lies to its left.
type side struct {
	from, to gridPoint
	below    int32 // the next result side below its left end, or -1
}

// sweep finds the winding numbers on both sides of every edge and returns the edges
// that part in from out. Edges must meet at shared ends only and be sorted by lo.
func sweep(edges []edge, in inRule) []side {
	w := &sweeper{edges: edges, in: in, above: make([][operands]int32, len(edges)), out: make([]int32, len(edges))}
	ends := make([]int32, len(edges))
	for i := range ends {
		ends[i] = int32(i)
	}
	slices.SortFunc(ends, func(a, b int32) int { return edges[a].hi.compare(edges[b].hi) })
	s, e := 0, 0
	for s < len(edges) {
		at := edges[s].lo
		for e < len(ends) && edges[ends[e]].hi.compare(at) <= 0 {
			w.remove(ends[e])
			e++
		}
		t := s
		for t < len(edges) && edges[t].lo == at {
			t++
		}
		w.insert(s, t)
		s = t
	}
	return w.sides
}

type sweeper struct {
	edges  []edge
	in     inRule
	status []int32 // edges the sweep line crosses, from below up
	above  [][operands]int32
	out    []int32 // per edge: its side in sides, or -1
	sides  []side
}

// position returns where in the status point p lies: the number of edges below it.
func (w *sweeper) position(p gridPoint) int {
	return sort.Search(len(w.status), func(i int) bool {
		e := &w.edges[w.status[i]]
		return turn(e.lo, e.hi, p) <= 0
	})
}

// remove takes edge i, which ends at the sweep line, out of the status.
func (w *sweeper) remove(i int32) {
	k := w.position(w.edges[i].hi)
	for n := k; n < len(w.status); n++ {
		if w.status[n] == i {
			w.status = slices.Delete(w.status, n, n+1)
			return
		}
	}
	if n := slices.Index(w.status, i); n >= 0 {
		w.status = slices.Delete(w.status, n, n+1)
	}
}

// insert takes in edges s..t-1, which all start at one point.
func (w *sweeper) insert(s, t int) {
	fan := make([]int32, 0, t-s)
	for i := s; i < t; i++ {
		fan = append(fan, int32(i))
	}
	at := w.edges[s].lo
	slices.SortFunc(fan, func(a, b int32) int { return -turn(at, w.edges[a].hi, w.edges[b].hi) })
	k := w.position(at)
	w.status = slices.Insert(w.status, k, fan...)
	for n := k; n < k+len(fan); n++ {
		w.wind(n)
	}
}

// wind computes the winding numbers above the n-th edge of the status from those
// above its lower neighbour, and makes a side of it where the result begins or ends.
func (w *sweeper) wind(n int) {
	i := w.status[n]
	var below [operands]int32
	under := int32(-1)
	if n > 0 {
		j := w.status[n-1]
		below = w.above[j]
		under = w.nearest(n - 1)
	}
	e := &w.edges[i]
	up := below
	for k := range up {
		up[k] += e.up[k] // an edge running right has its inside to the left, above
	}
	w.above[i] = up
	w.out[i] = -1
	a, b := w.in(below), w.in(up)
	if a == b {
		return
	}
	sd := side{from: e.lo, to: e.hi, below: under}
	if a {
		sd.from, sd.to = e.hi, e.lo
	}
	w.out[i] = int32(len(w.sides))
	w.sides = append(w.sides, sd)
}

// nearest returns the side of the first edge at or below position n of the status
// that is one, or -1.
func (w *sweeper) nearest(n int) int32 {
	for ; n >= 0; n-- {
		if s := w.out[w.status[n]]; s >= 0 {
			return s
		}
	}
	return -1
}
