package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// How far the search looks. Chosen for some hundredths of a second for an outline of
// two or three pieces.
const (
	directions = 12  // of seams, 15 degrees apart
	finest     = 6.0 // mm between parallel lines tried
	mostLines  = 160 // in one direction
	mostNodes  = 120 // pieces cut in one search
	spareMM    = 1.0 // kept from the limits for what simplifying moves
	coarseMM   = 0.3 // simplification of the outline that is searched
)

// widths are how many cuts are followed up, by depth of the search.
var widths = [...]int{14, 6, 3, 2}

// A cut is one decision: along line, by the chain that passes at.
type cut struct {
	line line
	at   geom.Point
	cost float64
}

// A split is the cuts of one outline in order and what they cost.
type split struct {
	cuts []cut
	cost float64
}

// search finds the cuts that part the site into pieces that fit, by branch and bound:
// each piece too large is cut in the most promising ways, each way's pieces are
// searched in turn, and a way is left when it must cost more than the best so far.
type search struct {
	*site
	nodes int
}

// split returns the best way to cut p, or false if none costs less than limit.
func (s *search) split(p geom.Polygon, depth int, limit float64) (split, bool) {
	if s.room.fits(p.Outer) {
		return split{}, limit > 0
	}
	if limit <= perPiece || s.nodes >= mostNodes && depth > 0 && limit < math.Inf(1) || depth > mostPieces {
		return split{}, false
	}
	s.nodes++
	best, ok := split{cost: limit}, false
	for _, w := range s.ways(p, depth) {
		if w.bound >= best.cost {
			continue
		}
		if got, fine := s.follow(w, depth, best.cost); fine {
			best, ok = got, true
		}
	}
	return best, ok
}

// A way is a cut with the pieces it makes and what it must cost with all that follow.
type way struct {
	cut
	pieces []geom.Polygon
	bound  float64 // never above the true cost
	guess  float64 // with the cuts that its pieces seem to need
}

// follow cuts the pieces of w.
func (s *search) follow(w way, depth int, limit float64) (split, bool) {
	out := split{cuts: []cut{w.cut}, cost: w.cost}
	rest := w.bound - w.cost // of all pieces
	for _, p := range w.pieces {
		own := s.floor(p)
		rest -= own
		sub, ok := s.split(p, depth+1, limit-out.cost-rest)
		if !ok {
			return split{}, false
		}
		out.cuts = append(out.cuts, sub.cuts...)
		out.cost += sub.cost
	}
	return out, out.cost < limit
}

// floor returns what a piece costs at least.
func (s *search) floor(p geom.Polygon) float64 {
	if s.room.fits(p.Outer) {
		return 0
	}
	return perPiece
}

// ways returns the most promising cuts of p, best first, and no two of them alike.
func (s *search) ways(p geom.Polygon, depth int) []way {
	cand := s.candidates(p, depth)
	slices.SortStableFunc(cand, func(a, b way) int { return cmp.Compare(a.guess, b.guess) })
	most := widths[min(depth, len(widths)-1)]
	if s.nodes > mostNodes {
		most = 1
	}
	var out []way
	for _, w := range cand {
		if len(out) == most {
			break
		}
		if !slices.ContainsFunc(out, func(o way) bool { return alike(o.cut, w.cut) }) {
			out = append(out, w)
		}
	}
	return out
}

// alikeMM is how near two cuts are the same idea. Chosen.
const alikeMM = 25

func alike(a, b cut) bool {
	return a.at.Sub(b.at).Norm() < alikeMM && math.Abs(a.line.dir.Cross(b.line.dir)) < 0.3
}

// candidates returns all cuts that are tried of p with their costs.
func (s *search) candidates(p geom.Polygon, depth int) []way {
	rings := p.Rings()
	n, step := directions, finest
	if depth > 1 {
		n, step = 6, 2*finest
	}
	var out []way
	for i := range n {
		sin, cos := math.Sincos(math.Pi * float64(i) / float64(n))
		dir := geom.Point{X: cos, Y: sin}
		offs := offsets(p.Outer, dir, step)
		for j, chs := range fan(rings, dir, offs) {
			for _, ch := range chs {
				if w, ok := s.way(p, rings, line{dir, offs[j]}, ch); ok {
					out = append(out, w)
				}
			}
		}
	}
	return out
}

// way weighs the cut of p along ch.
func (s *search) way(p geom.Polygon, rings []geom.Ring, l line, ch chain) (way, bool) {
	w := way{cut: cut{line: l, at: ch[0].middle()}}
	w.pieces = part(p, ch)
	if len(w.pieces) < 2 {
		return w, false
	}
	w.cost = perPiece*float64(len(w.pieces)-1) + s.pieces(w.pieces) + s.cost(rings, ch)
	w.bound, w.guess = w.cost, w.cost
	for _, q := range w.pieces {
		w.bound += s.floor(q)
		w.guess += perPiece * float64(s.room.least(q.Outer)-1)
	}
	return w, true
}

// offsets returns where lines along dir cut ring, at most mostLines.
func offsets(ring geom.Ring, dir geom.Point, step float64) []float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		lo, hi = math.Min(lo, p.Cross(dir)), math.Max(hi, p.Cross(dir))
	}
	n := math.Min(mostLines, math.Floor((hi-lo)/step))
	var out []float64
	for i := 1.0; i < n; i++ {
		out = append(out, lo+(hi-lo)*i/n)
	}
	return out
}
