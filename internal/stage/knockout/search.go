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
	finest     = 8.0 // mm between parallel lines tried
	mostLines  = 140 // in one direction
	mostWays   = 160 // of one piece that are looked at closely
	mostNodes  = 40  // pieces cut in one search
	mostWork   = 120 // pieces whose ways are listed in all searches, beyond which only the best way is followed
	spareMM    = 1.0 // kept from the limits for what simplifying moves
	coarseMM   = 0.3 // simplification of the outline that is searched
)

// fewPieces is up to how many pieces an outline is looked at in all directions. Chosen.
const fewPieces = 4

// widths are how many cuts are followed up, by depth of the search.
var widths = [...]int{14, 6, 3, 2}

// A cut is one decision: along line, by the chain that passes at.
type cut struct {
	line line
	at   geom.Point
}

// A split is the cuts of one outline in order and what they cost.
type split struct {
	cuts []cut
	cost float64
}

// A node is a piece with the ways to cut it, which do not depend on neighbours and so
// are kept from one search to the next.
type node struct {
	poly  geom.Polygon
	fits  bool
	ways  []*way // nil until asked for
	asked bool
}

// A way is a cut with the pieces it makes and what it costs but for its neighbours.
type way struct {
	line   line
	chain  chain
	pieces []*node
	cost   float64
	guess  float64 // what more its pieces seem to need
}

// floor returns what a piece costs at least.
func (n *node) floor() float64 {
	if n.fits {
		return 0
	}
	return perPiece
}

// search finds the cuts that part the site into pieces that fit, by branch and bound:
// each piece too large is cut in the most promising ways, each way's pieces are
// searched in turn, and a way is left when it must cost more than the best so far.
type search struct {
	*site
	nodes int
}

// split returns the best way to cut n, or false if none costs less than limit.
func (s *search) split(n *node, depth int, limit float64) (split, bool) {
	if n.fits {
		return split{}, limit > 0
	}
	if limit <= perPiece || s.tired() && depth > 0 && limit < math.Inf(1) || depth > mostPieces {
		return split{}, false
	}
	s.nodes++
	best, ok := split{cost: limit}, false
	for _, w := range s.promising(n, depth) {
		if w.cost+w.rest() >= best.cost {
			continue
		}
		if got, fine := s.follow(w, depth, best.cost); fine {
			best, ok = got, true
		}
	}
	return best, ok
}

// tired reports whether the search has spent its share.
func (s *search) tired() bool { return s.nodes >= mostNodes || *s.work >= mostWork }

// rest returns what the pieces of w cost at least.
func (w *way) rest() float64 {
	sum := 0.0
	for _, p := range w.pieces {
		sum += p.floor()
	}
	return sum
}

// follow cuts the pieces of w.
func (s *search) follow(w way, depth int, limit float64) (split, bool) {
	out := split{cuts: []cut{{w.line, w.chain[0].middle()}}, cost: w.cost}
	rest := w.rest()
	for _, p := range w.pieces {
		rest -= p.floor()
		sub, ok := s.split(p, depth+1, limit-out.cost-rest)
		if !ok {
			return split{}, false
		}
		out.cuts = append(out.cuts, sub.cuts...)
		out.cost += sub.cost
	}
	return out, out.cost < limit
}

// promising returns the best ways to cut n beside the neighbours, no two alike.
func (s *search) promising(n *node, depth int) []way {
	if !n.asked {
		n.ways, n.asked = s.site.ways(n.poly, depth), true
		*s.work++
	}
	all := make([]way, len(n.ways))
	for i, w := range n.ways {
		all[i] = *w
		for _, c := range w.chain {
			all[i].cost += s.nearSeams(c)
		}
	}
	slices.SortStableFunc(all, func(a, b way) int { return cmp.Compare(a.cost+a.guess, b.cost+b.guess) })
	most := widths[min(depth, len(widths)-1)]
	if s.tired() {
		most = 1
	}
	var out []way
	for _, w := range all {
		if len(out) == most {
			break
		}
		if !slices.ContainsFunc(out, func(o way) bool { return alike(o, w) }) {
			out = append(out, w)
		}
	}
	return out
}

// alikeMM is how near two cuts are the same idea. Chosen.
const alikeMM = 25

func alike(a, b way) bool {
	return a.chain[0].middle().Sub(b.chain[0].middle()).Norm() < alikeMM && math.Abs(a.line.dir.Cross(b.line.dir)) < 0.3
}

// ways returns the cuts of p by lines in all directions, the most promising of them
// with their pieces.
func (s *site) ways(p geom.Polygon, depth int) []*way {
	rings := p.Rings()
	n, step := directions, finest
	if depth > 1 || s.room.count(p.Outer.Box()) > fewPieces {
		n, step = directions/2, 2*finest
	}
	var all []*way
	for i := range n {
		sin, cos := math.Sincos(math.Pi * float64(i) / float64(n))
		dir := geom.Point{X: cos, Y: sin}
		offs := s.offsets(p.Outer, dir, step)
		for j, chs := range fan(rings, dir, offs) {
			guess := s.needed(p.Outer, line{dir, offs[j]}, chs)
			for _, ch := range chs {
				all = append(all, &way{line: line{dir, offs[j]}, chain: ch, cost: s.cost(rings, ch), guess: guess})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b *way) int { return cmp.Compare(a.cost+a.guess, b.cost+b.guess) })
	var out []*way
	for _, w := range all {
		if len(out) == mostWays {
			break
		}
		if s.complete(p, w) {
			out = append(out, w)
		}
	}
	return out
}

// complete gives w its pieces; false where it makes none.
func (s *site) complete(p geom.Polygon, w *way) bool {
	ps := part(p, w.chain)
	if len(ps) < 2 {
		return false
	}
	w.cost += perPiece*float64(len(ps)-1) + s.pieces(ps)
	w.guess = 0
	for _, q := range ps {
		w.pieces = append(w.pieces, &node{poly: q, fits: s.room.fits(q.Outer)})
		w.guess += perPiece * float64(s.room.least(q.Outer)-1)
	}
	return true
}

// needed guesses what the two sides of a line through ring need, by their boxes; the
// line cuts along chs.
func (s *site) needed(ring geom.Ring, l line, chs []chain) float64 {
	a, b := geom.EmptyBox(), geom.EmptyBox()
	for _, p := range ring {
		if p.Cross(l.dir) > l.off {
			stretch(&b, p)
		} else {
			stretch(&a, p)
		}
	}
	for _, ch := range chs {
		for _, p := range []geom.Point{ch[0].from.at, ch[len(ch)-1].to.at} {
			stretch(&a, p)
			stretch(&b, p)
		}
	}
	return perPiece * float64(s.room.count(a)+s.room.count(b)-2)
}

// stretch makes b hold p.
func stretch(b *geom.Box, p geom.Point) {
	b.Min.X, b.Min.Y = min(b.Min.X, p.X), min(b.Min.Y, p.Y)
	b.Max.X, b.Max.Y = max(b.Max.X, p.X), max(b.Max.Y, p.Y)
}

// offsets returns where lines along dir cut ring: at most mostLines evenly spaced, and
// those that leave a whole number of rooms on one side.
func (s *site) offsets(ring geom.Ring, dir geom.Point, step float64) []float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		lo, hi = math.Min(lo, p.Cross(dir)), math.Max(hi, p.Cross(dir))
	}
	n := math.Min(mostLines, math.Floor((hi-lo)/step))
	var out []float64
	for i := 1.0; i < n; i++ {
		out = append(out, lo+(hi-lo)*i/n)
	}
	for _, r := range []float64{s.room.x, s.room.y} {
		for v := r; v < hi-lo && len(out) < 2*mostLines; v += r {
			out = append(out, lo+v, hi-v)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
