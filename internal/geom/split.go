package geom

import (
	"cmp"
	"math"
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

// merge sorts edges, adds up those that coincide and drops those that cancel.
func merge(edges []edge) []edge {
	slices.SortFunc(edges, func(a, b edge) int {
		if c := a.lo.compare(b.lo); c != 0 {
			return c
		}
		return a.hi.compare(b.hi)
	})
	out := edges[:0]
	for i := 0; i < len(edges); {
		e := edges[i]
		for i++; i < len(edges) && edges[i].lo == e.lo && edges[i].hi == e.hi; i++ {
			for k := range e.up {
				e.up[k] += edges[i].up[k]
			}
		}
		if e.up != [operands]int32{} {
			out = append(out, e)
		}
	}
	return out
}

// maxPasses bounds the rounds of splitting. Rounding a crossing to the grid bends
// two edges by less than a grid step and may make them cross a neighbour anew; two
// or three rounds settle all but the most hostile input.
const maxPasses = 40

// split cuts edges where they cross or touch, until they meet only at shared ends.
// It reports false where that could not be reached within maxPasses.
func split(edges []edge) ([]edge, bool) {
	edges = merge(edges)
	for range maxPasses {
		cuts := findCuts(edges)
		if len(cuts) == 0 {
			return edges, true
		}
		edges = merge(applyCuts(edges, cuts))
	}
	return edges, false
}

// cut is a point at which an edge must be split.
type cut struct {
	edge int32
	at   gridPoint
}

// findCuts returns where edges, sorted by lo, cross or touch inside an edge.
func findCuts(edges []edge) []cut {
	var cuts []cut
	strips := newStrips(edges)
	for i := range edges {
		strips.visit(int32(i), func(j int32) {
			cuts = meet(edges, int32(i), j, cuts)
		})
	}
	return cuts
}

// meet appends the cuts that edges i and j give each other. An edge that passes
// through the grid square round an end of the other is bent to that end, as snap
// rounding does: nearly parallel edges then join in one round, where cutting them at
// their crossing alone moves the crossing along by a few grid steps a round.
func meet(edges []edge, i, j int32, cuts []cut) []cut {
	a, b := &edges[i], &edges[j]
	c1, near1 := a.lean(b.lo)
	c2, near2 := a.lean(b.hi)
	if c1*c2 > 0 && !near1 && !near2 {
		return cuts
	}
	d1, near3 := b.lean(a.lo)
	d2, near4 := b.lean(a.hi)
	before := len(cuts)
	touch := func(k int32, near bool, p gridPoint) {
		if near && inside(&edges[k], p) {
			cuts = append(cuts, cut{k, p})
		}
	}
	touch(i, near1, b.lo)
	touch(i, near2, b.hi)
	touch(j, near3, a.lo)
	touch(j, near4, a.hi)
	if len(cuts) > before || c1*c2 >= 0 || d1*d2 >= 0 {
		return cuts
	}
	p := crossing(a, b)
	return cutAt(edges, j, p, cutAt(edges, i, p, cuts))
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

// inside reports whether p, near the line of e, lies between its ends and is neither.
func inside(e *edge, p gridPoint) bool {
	if p == e.lo || p == e.hi {
		return false
	}
	at := along(e, p)
	return at > 0 && at < along(e, e.hi)
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
	return append(cuts, cut{k, p})
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

// applyCuts returns the pieces of edges between their cuts. A piece keeps its
// edge's counts, turned round where rounding reversed it in sweep order.
func applyCuts(edges []edge, cuts []cut) []edge {
	slices.SortFunc(cuts, func(a, b cut) int {
		if a.edge != b.edge {
			return int(a.edge) - int(b.edge)
		}
		e := &edges[a.edge]
		if c := cmp.Compare(along(e, a.at), along(e, b.at)); c != 0 {
			return c
		}
		return a.at.compare(b.at)
	})
	out := make([]edge, 0, len(edges)+len(cuts))
	c := 0
	for i, e := range edges {
		at := e.lo
		for ; c < len(cuts) && cuts[c].edge == int32(i); c++ {
			out = appendPiece(out, e, at, cuts[c].at)
			at = cuts[c].at
		}
		out = appendPiece(out, e, at, e.hi)
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
