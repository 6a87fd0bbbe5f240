package geom

import "slices"

// inRule says whether a point with these winding numbers is in the result.
type inRule func(w [operands]int32) bool

// side is an edge of the result, directed so that the result lies to its left. Its
// ends are numbered in sweep order.
type side struct {
	from, to     gridPoint
	fromID, toID int32
	below        int32 // a result side that bounds what lies below its left end, or -1
}

// sweep finds the winding numbers on both sides of every edge and returns the edges
// that part in from out, with the number of distinct ends. Edges must meet at shared
// ends only and be sorted by lo.
func sweep(edges []edge, in inRule) (sides []side, points int) {
	w := &sweeper{edges: edges, in: in, at: make([]state, len(edges)), ends: make([][2]int32, len(edges))}
	byHi := sweepOrder(len(edges), func(i int32) gridPoint { return edges[i].hi })
	s, e := 0, 0
	for id := int32(0); e < len(byHi); id++ {
		at := edges[byHi[e]].hi
		if s < len(edges) && edges[s].lo.before(at) {
			at = edges[s].lo
		}
		e0, s0 := e, s
		for ; e < len(byHi) && edges[byHi[e]].hi == at; e++ {
			w.ends[byHi[e]][1] = id
		}
		for ; s < len(edges) && edges[s].lo == at; s++ {
			w.ends[s][0] = id
		}
		w.pass(at, byHi[e0:e], s0, s)
		points = int(id) + 1
	}
	w.number()
	return w.sides, points
}

type sweeper struct {
	edges  []edge
	in     inRule
	status []int32    // edges the sweep line crosses, from below up
	at     []state    // per edge
	ends   [][2]int32 // per edge: the numbers of its ends
	fan    []int32
	sides  []side
	origin []int32 // per side: its edge
}

// state is what the sweep knows of an edge: the winding numbers above it, and the
// side on it or, if there is none, one that bounds what lies below it; -1 for none.
type state struct {
	above [operands]int32
	side  int32
}

// pass moves the sweep line over point at, where the edges in ends end and edges
// s..t-1 start.
func (w *sweeper) pass(at gridPoint, ends []int32, s, t int) {
	k := w.position(at)
	w.fan = w.fan[:0]
	for i := s; i < t; i++ {
		w.fan = append(w.fan, int32(i))
	}
	if len(w.fan) > 1 {
		slices.SortFunc(w.fan, func(a, b int32) int { return -turn(at, w.edges[a].hi, w.edges[b].hi) })
	}
	if w.together(at, k, len(ends)) {
		w.status = slices.Replace(w.status, k, k+len(ends), w.fan...)
	} else {
		w.status = slices.DeleteFunc(w.status, func(i int32) bool { return slices.Contains(ends, i) })
		k = w.position(at)
		w.status = slices.Insert(w.status, k, w.fan...)
	}
	for n := k; n < k+len(w.fan); n++ {
		w.wind(n)
	}
}

// position returns where in the status point p lies: the number of edges below it.
func (w *sweeper) position(p gridPoint) int {
	lo, hi := 0, len(w.status)
	for lo < hi {
		m := int(uint(lo+hi) >> 1)
		if e := &w.edges[w.status[m]]; turn(e.lo, e.hi, p) > 0 {
			lo = m + 1
		} else {
			hi = m
		}
	}
	return lo
}

// together reports whether just the n edges from position k on end at p, as they do
// unless edges cross that splitting could not part.
func (w *sweeper) together(p gridPoint, k, n int) bool {
	if k+n > len(w.status) {
		return false
	}
	for _, i := range w.status[k : k+n] {
		if w.edges[i].hi != p {
			return false
		}
	}
	return true
}

// wind computes the winding numbers above the n-th edge of the status from those
// above its lower neighbour, and makes a side of it where the result begins or ends.
func (w *sweeper) wind(n int) {
	i := w.status[n]
	below := state{side: -1}
	if n > 0 {
		below = w.at[w.status[n-1]]
	}
	e, here := &w.edges[i], below
	for k := range here.above {
		here.above[k] += e.up[k] // an edge running right has its inside to the left, above
	}
	if a, b := w.in(below.above), w.in(here.above); a != b {
		here.side = int32(len(w.sides))
		sd := side{from: e.lo, to: e.hi, below: below.side}
		if a {
			sd.from, sd.to = e.hi, e.lo
		}
		w.sides, w.origin = append(w.sides, sd), append(w.origin, i)
	}
	w.at[i] = here
}

// number writes the numbers of their ends into the sides.
func (w *sweeper) number() {
	for k := range w.sides {
		sd, ends := &w.sides[k], w.ends[w.origin[k]]
		sd.fromID, sd.toID = ends[0], ends[1]
		if sd.to.before(sd.from) {
			sd.fromID, sd.toID = ends[1], ends[0]
		}
	}
}
