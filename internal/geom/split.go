package geom

import (
	"cmp"
	"slices"
)

// operands is the greatest number of regions one sweep tells apart.
const operands = 2

// edge is a segment from lo to hi in sweep order. up[k] counts how often operand k
// runs along it from lo to hi, less how often it runs back.
type edge struct {
	lo, hi gridPoint
	up     [operands]int32
}

// addRing appends the sides of ring for operand k; points that cannot be snapped
// are left out.
func addRing(edges []edge, ring Ring, k int) []edge {
	var first, last gridPoint
	n := 0
	side := func(a, b gridPoint) {
		if a == b {
			return
		}
		e := edge{lo: a, hi: b}
		e.up[k] = 1
		if b.before(a) {
			e.lo, e.hi, e.up[k] = b, a, -1
		}
		edges = append(edges, e)
	}
	for _, p := range ring {
		g, ok := snap(p)
		if !ok {
			continue
		}
		if n == 0 {
			first = g
		} else {
			side(last, g)
		}
		last = g
		n++
	}
	if n > 0 {
		side(last, first)
	}
	return edges
}

// merge returns edges sorted by lo, then hi, adds up those that coincide and drops
// those that cancel.
func merge(edges []edge) []edge {
	sorted := make([]edge, 0, len(edges))
	for _, i := range sweepOrder(len(edges), func(i int32) gridPoint { return edges[i].lo }) {
		sorted = append(sorted, edges[i])
	}
	out := sorted[:0]
	for i, j := 0, 0; i < len(sorted); i = j {
		for j = i + 1; j < len(sorted) && sorted[j].lo == sorted[i].lo; j++ {
		}
		out = mergeFan(out, sorted[i:j])
	}
	return out
}

// mergeFan appends fan, edges from one point, merged; out may end where fan starts.
func mergeFan(out, fan []edge) []edge {
	if len(fan) > 1 {
		slices.SortFunc(fan, func(a, b edge) int { return a.hi.compare(b.hi) })
	}
	for i := 0; i < len(fan); {
		e := fan[i]
		for i++; i < len(fan) && fan[i].hi == e.hi; i++ {
			e.add(&fan[i])
		}
		if e.up != [operands]int32{} {
			out = append(out, e)
		}
	}
	return out
}

// add counts f, which coincides with e, into e.
func (e *edge) add(f *edge) {
	for k := range e.up {
		e.up[k] += f.up[k]
	}
}

// compare orders edges by lo, then hi.
func (e *edge) compare(f *edge) int {
	if c := e.lo.compare(f.lo); c != 0 {
		return c
	}
	return e.hi.compare(f.hi)
}

// maxPasses bounds the rounds of splitting. Rounding a crossing to the grid bends
// two edges by less than a grid step and may make them cross a neighbour anew; two
// or three rounds settle all but the most hostile input.
const maxPasses = 40

// split cuts edges where they cross or touch, until they meet only at shared ends.
// It reports false where that could not be reached within maxPasses.
func split(edges []edge) ([]edge, bool) {
	edges = merge(edges)
	cuts := findCuts(edges)
	for range maxPasses {
		if len(cuts) == 0 {
			return edges, true
		}
		whole, pieces := applyCuts(edges, cuts)
		var fresh []bool
		edges, fresh = weave(whole, merge(pieces))
		cuts = findNewCuts(edges, fresh)
	}
	return edges, len(cuts) == 0
}

// weave joins two sorted lists of edges, the second of new pieces, and says which of
// the edges are new.
func weave(whole, pieces []edge) (edges []edge, fresh []bool) {
	edges, fresh = make([]edge, 0, len(whole)+len(pieces)), make([]bool, 0, len(whole)+len(pieces))
	put := func(e edge, isNew bool) {
		if e.up != [operands]int32{} {
			edges, fresh = append(edges, e), append(fresh, isNew)
		}
	}
	for len(whole) > 0 && len(pieces) > 0 {
		switch c := whole[0].compare(&pieces[0]); {
		case c < 0:
			put(whole[0], false)
			whole = whole[1:]
		case c > 0:
			put(pieces[0], true)
			pieces = pieces[1:]
		default:
			e := whole[0]
			e.add(&pieces[0])
			put(e, false)
			whole, pieces = whole[1:], pieces[1:]
		}
	}
	for _, e := range whole {
		put(e, false)
	}
	for _, e := range pieces {
		put(e, true)
	}
	return edges, fresh
}

// cut is a point at which an edge must be split, t of the way along it.
type cut struct {
	edge int32
	t    float64
	at   gridPoint
}

// findCuts returns where edges, sorted by lo, cross or touch inside an edge.
func findCuts(edges []edge) []cut {
	var cuts []cut
	strips := newStrips(edges)
	for i := range edges {
		strips.visit(int32(i), func(j int32) { cuts = meet(edges, int32(i), j, cuts) })
	}
	return cuts
}

// findNewCuts is findCuts for edges of which only the fresh ones may have any.
func findNewCuts(edges []edge, fresh []bool) []cut {
	near, index := make([]edge, 0, len(edges)), make([]int32, 0, len(edges))
	s := newShadow(edges, fresh)
	for i := range edges {
		if fresh[i] || s.covers(&edges[i]) {
			near, index = append(near, edges[i]), append(index, int32(i))
		}
	}
	var cuts []cut
	strips := newStrips(near)
	for i := range near {
		strips.visit(int32(i), func(j int32) {
			if fresh[index[i]] || fresh[index[j]] {
				cuts = meet(near, int32(i), j, cuts)
			}
		})
	}
	for k := range cuts {
		cuts[k].edge = index[cuts[k].edge]
	}
	return cuts
}

// applyCuts returns the edges without cuts and the pieces of the others. A piece
// keeps its edge's counts, turned round where rounding reversed it in sweep order.
func applyCuts(edges []edge, cuts []cut) (whole, pieces []edge) {
	cuts = byEdge(len(edges), cuts)
	whole, pieces = make([]edge, 0, len(edges)), make([]edge, 0, 2*len(cuts))
	c := 0
	for i, e := range edges {
		if c == len(cuts) || cuts[c].edge != int32(i) {
			whole = append(whole, e)
			continue
		}
		at := e.lo
		for ; c < len(cuts) && cuts[c].edge == int32(i); c++ {
			pieces = appendPiece(pieces, e, at, cuts[c].at)
			at = cuts[c].at
		}
		pieces = appendPiece(pieces, e, at, e.hi)
	}
	return whole, pieces
}

// byEdge returns cuts in the order of their n edges, and along each edge.
func byEdge(n int, cuts []cut) []cut {
	start := make([]int32, n+1)
	for i := range cuts {
		start[cuts[i].edge+1]++
	}
	for i := range n {
		start[i+1] += start[i]
	}
	out, used := make([]cut, len(cuts)), slices.Clone(start)
	for _, c := range cuts {
		out[used[c.edge]] = c
		used[c.edge]++
	}
	for i := range n {
		if own := out[start[i]:start[i+1]]; len(own) > 1 {
			slices.SortFunc(own, func(a, b cut) int {
				if c := cmp.Compare(a.t, b.t); c != 0 {
					return c
				}
				return a.at.compare(b.at)
			})
		}
	}
	return out
}

func appendPiece(out []edge, e edge, a, b gridPoint) []edge {
	if a == b {
		return out
	}
	p := edge{lo: a, hi: b, up: e.up}
	if b.before(a) {
		p.lo, p.hi = b, a
		for k := range p.up {
			p.up[k] = -p.up[k]
		}
	}
	return append(out, p)
}
