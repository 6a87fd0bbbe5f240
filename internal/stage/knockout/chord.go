package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// A hit is where a line crosses a ring: on side edge of ring ring, at t along the line.
type hit struct {
	at   geom.Point
	t    float64
	ring int // 0 is the outer ring
	edge int
}

// A chord is a stretch of a line inside a polygon.
type chord struct{ from, to hit }

func (c chord) length() float64    { return c.to.at.Sub(c.from.at).Norm() }
func (c chord) middle() geom.Point { return c.from.at.Add(c.to.at).Mul(0.5) }

// A chain is chords in a row along one line that lead from the outer ring to the
// outer ring, crossing a hole between two of them: cut along, they part the polygon.
type chain []chord

// A line is all points p with p x dir = off, dir of length 1.
type line struct {
	dir geom.Point
	off float64
}

// fan cuts rings by the parallel lines along dir at the rising offsets offs and
// returns the chains of each.
func fan(rings []geom.Ring, dir geom.Point, offs []float64) [][]chain {
	hits := make([][]hit, len(offs))
	for k, ring := range rings {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			u, v := a.Cross(dir), b.Cross(dir)
			lo, hi := math.Min(u, v), math.Max(u, v)
			for j, _ := slices.BinarySearch(offs, lo); j < len(offs) && offs[j] < hi; j++ {
				p := a.Add(b.Sub(a).Mul((offs[j] - u) / (v - u)))
				hits[j] = append(hits[j], hit{at: p, t: p.Dot(dir), ring: k, edge: i})
			}
		}
	}
	out := make([][]chain, len(offs))
	for j, h := range hits {
		out[j] = chains(h)
	}
	return out
}

// chains pairs the hits of one line.
func chains(hits []hit) []chain {
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(a.t, b.t) })
	var out []chain
	var run chain
	for i := 0; i+1 < len(hits); i += 2 {
		c := chord{hits[i], hits[i+1]}
		run = append(run, c)
		if c.to.ring == 0 {
			if run[0].from.ring == 0 {
				out = append(out, run)
			}
			run = nil
		}
	}
	return out
}

// cutAlong returns the chain of poly's cut by l that passes nearest to p; nil where l
// misses poly.
func cutAlong(poly geom.Polygon, l line, p geom.Point) chain {
	var best chain
	least := math.Inf(1)
	for _, ch := range fan(poly.Rings(), l.dir, []float64{l.off})[0] {
		for _, c := range ch {
			if d := distanceTo(p, c.from.at, c.to.at); d < least {
				best, least = ch, d
			}
		}
	}
	return best
}

// distanceTo returns the distance from p to the segment ab.
func distanceTo(p, a, b geom.Point) float64 {
	v, w := b.Sub(a), p.Sub(a)
	t := v.Dot(v)
	if t > 0 {
		t = math.Max(0, math.Min(1, w.Dot(v)/t))
	}
	return w.Sub(v.Mul(t)).Norm()
}

// apart returns the least distance between the segments ab and cd; 0 where they cross.
func apart(a, b, c, d geom.Point) float64 {
	side := func(p, q, r geom.Point) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	if side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0 {
		return 0
	}
	return math.Min(math.Min(distanceTo(a, c, d), distanceTo(b, c, d)), math.Min(distanceTo(c, a, b), distanceTo(d, a, b)))
}

// part cuts poly along the chords. Where a chord arrives at a ring the outline goes on
// along the ring, the polygon to its left, to the next chord's end, and leaves along
// that chord: every closed way round is a ring of a piece.
func part(poly geom.Polygon, cut chain) []geom.Polygon {
	rings := poly.Rings()
	ends := make([][]end, len(rings))
	for i, c := range cut {
		ends[c.from.ring] = append(ends[c.from.ring], end{c.from, i, false})
		ends[c.to.ring] = append(ends[c.to.ring], end{c.to, i, true})
	}
	for k := range ends {
		slices.SortStableFunc(ends[k], func(a, b end) int {
			return cmp.Or(cmp.Compare(a.edge, b.edge), cmp.Compare(a.along(rings[k]), b.along(rings[k])))
		})
	}
	var loops []geom.Ring
	used := make(map[end]bool)
	for k := range ends {
		for _, e := range ends[k] {
			if !used[e] {
				loops = append(loops, trace(rings, ends, cut, e, used))
			}
		}
	}
	for k, r := range rings {
		if len(ends[k]) == 0 {
			loops = append(loops, r)
		}
	}
	return assemble(loops)
}

// An end of a chord on a ring.
type end struct {
	hit
	chord int
	last  bool // the chord's to, else its from
}

// along measures how far e lies along its side.
func (e end) along(r geom.Ring) float64 { return e.at.Sub(r[e.edge]).Norm() }

// trace walks from the arrival at e along its ring and over chords back to e.
func trace(rings []geom.Ring, ends [][]end, cut chain, e end, used map[end]bool) geom.Ring {
	var out geom.Ring
	for !used[e] {
		used[e] = true
		out = append(out, e.at)
		ring := rings[e.ring]
		here := slices.Index(ends[e.ring], e)
		next := ends[e.ring][(here+1)%len(ends[e.ring])]
		if next.edge != e.edge || next == e || next.along(ring) < e.along(ring) {
			for i := (e.edge + 1) % len(ring); ; i = (i + 1) % len(ring) {
				out = append(out, ring[i])
				if i == next.edge {
					break
				}
			}
		}
		out = append(out, next.at)
		c := cut[next.chord]
		if next.last {
			e = end{c.from, next.chord, false}
		} else {
			e = end{c.to, next.chord, true}
		}
	}
	return out
}

// assemble makes polygons of loops: those that turn left are outer rings, the others holes
// of the smallest outer ring that holds them.
func assemble(loops []geom.Ring) []geom.Polygon {
	var out []geom.Polygon
	for _, l := range loops {
		if l = tidy(l); l.Area() > 0 {
			out = append(out, geom.Polygon{Outer: l})
		}
	}
	for _, l := range loops {
		if l.Area() >= 0 {
			continue
		}
		best := -1
		for i, p := range out {
			if (geom.Region{{Outer: p.Outer}}).Contains(l[0]) && (best < 0 || p.Outer.Area() < out[best].Outer.Area()) {
				best = i
			}
		}
		if best >= 0 {
			out[best].Holes = append(out[best].Holes, tidy(l))
		}
	}
	return out
}

// tidy drops points that repeat their neighbour.
func tidy(r geom.Ring) geom.Ring {
	var out geom.Ring
	for i, p := range r {
		if p.Sub(r[(i+1)%len(r)]).Norm() > geom.Grid/2 {
			out = append(out, p)
		}
	}
	return out
}
