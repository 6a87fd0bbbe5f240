package saw

import (
	"cmp"
	"slices"
)

// A box is a rectangle in ticks, [x0,x1] x [y0,y1].
type box struct{ x0, y0, x1, y1 int64 }

func (b box) clip(o box) (box, bool) {
	c := box{max(b.x0, o.x0), max(b.y0, o.y0), min(b.x1, o.x1), min(b.y1, o.y1)}
	return c, c.x0 < c.x1 && c.y0 < c.y1
}

// openings returns ways to cut a sheet into regions free of its zones, best
// first: slabs whose leaves without kind are the regions, numbered from 0 in
// piece. Cuts run along the edges of zones with the kerf inside the zone.
func openings(s *Sheet, kerf int64) []*slab {
	root := slabOf(0, 0, ticks(s.LengthMM), ticks(s.WidthMM))
	if root == nil {
		return nil
	}
	usable := trimmed(root, s.Trim, kerf)
	if usable == nil {
		return nil
	}
	usable.piece = usablePart
	zones := zoneBoxes(s.Zones, usable)
	var out []*slab
	for _, way := range freeWays(box{usable.x, usable.y, usable.x + usable.w, usable.y + usable.h}, zones, kerf, 0) {
		tree := root.clone()
		start := findUsable(tree)
		start.piece = -1
		grow(start, way, kerf)
		n := int32(0)
		tree.walk(func(p *slab) {
			if p.kind == "" {
				p.piece = n
				n++
			}
		})
		if n > 0 {
			out = append(out, tree)
		}
	}
	return out
}

func (s *slab) clone() *slab {
	if s == nil {
		return nil
	}
	c := *s
	c.a, c.b = s.a.clone(), s.b.clone()
	return &c
}

// trimmed cuts the edges off and returns what is left, nil if nothing is.
func trimmed(root *slab, t Trim, kerf int64) *slab {
	s := root
	for _, edge := range []struct {
		axis Axis
		mm   float64
		far  bool
	}{{DivideX, t.X0MM, false}, {DivideX, t.X1MM, true}, {DivideY, t.Y0MM, false}, {DivideY, t.Y1MM, true}} {
		if edge.mm <= 0 {
			continue
		}
		lost, size := max(ticks(edge.mm), kerf), s.w
		if edge.axis == DivideY {
			size = s.h
		}
		if lost >= size {
			return nil
		}
		s.trim = true
		if edge.far {
			s, _ = s.divide(edge.axis, size-lost, kerf)
		} else {
			_, s = s.divide(edge.axis, lost-kerf, kerf)
		}
	}
	return s
}

// usablePart is the mark of the part that is left after the trimming cuts.
const usablePart = -2

func findUsable(s *slab) *slab {
	var found *slab
	s.walk(func(p *slab) {
		if p.piece == usablePart {
			found = p
		}
	})
	return found
}

func zoneBoxes(zones []Zone, usable *slab) []box {
	var out []box
	all := box{usable.x, usable.y, usable.x + usable.w, usable.y + usable.h}
	for _, z := range zones {
		b := box{ticks(z.XMM), ticks(z.YMM), ticks(z.XMM + z.LengthMM), ticks(z.YMM + z.WidthMM)}
		if c, ok := b.clip(all); ok {
			out = append(out, c)
		}
	}
	return out
}

// A way is a plan of cuts that frees a box from zones.
type way struct {
	axis Axis // empty for a leaf
	at   int64
	free bool
	a, b *way
	good float64 // sum of squares of the free areas
}

// waysKept is how many ways are kept at every step, branchZones how many zones
// are weighed against each other before the best single cut is taken. Chosen.
const (
	waysKept    = 4
	branchZones = 3
)

// freeWays returns the best ways to free box b from zones.
func freeWays(b box, zones []box, kerf int64, depth int) []*way {
	if b.x0 >= b.x1 || b.y0 >= b.y1 {
		return []*way{nil}
	}
	var in []box
	for _, z := range zones {
		if c, ok := z.clip(b); ok {
			in = append(in, c)
		}
	}
	area := mm(b.x1-b.x0) * mm(b.y1-b.y0)
	if len(in) == 0 {
		return []*way{{free: true, good: area * area}}
	}
	if in[0] == b || depth > 40 {
		return []*way{{}}
	}
	cuts := zoneCuts(b, in, kerf)
	if len(cuts) == 0 {
		return []*way{{}}
	}
	if len(in) > branchZones {
		slices.SortStableFunc(cuts, func(p, q zoneCut) int { return cmp.Compare(q.freed, p.freed) })
		cuts = cuts[:min(2, len(cuts))]
		if depth > 3 {
			cuts = cuts[:1]
		}
	}
	var out []*way
	for _, c := range cuts {
		out = append(out, c.ways(b, in, kerf, depth)...)
	}
	slices.SortStableFunc(out, func(p, q *way) int { return cmp.Compare(q.good, p.good) })
	return out[:min(waysKept, len(out))]
}

// A zoneCut is a cut along an edge of a zone.
type zoneCut struct {
	axis  Axis
	at    int64 // from the box's own corner
	freed float64
}

func (c zoneCut) ways(b box, zones []box, kerf int64, depth int) []*way {
	low, high := b, b
	if c.axis == DivideX {
		low.x1, high.x0 = b.x0+c.at, b.x0+c.at+kerf
	} else {
		low.y1, high.y0 = b.y0+c.at, b.y0+c.at+kerf
	}
	var out []*way
	for _, p := range freeWays(low, zones, kerf, depth+1) {
		for _, q := range freeWays(high, zones, kerf, depth+1) {
			out = append(out, &way{axis: c.axis, at: c.at, a: p, b: q, good: p.worth() + q.worth()})
		}
	}
	return out
}

func (w *way) worth() float64 {
	if w == nil {
		return 0
	}
	return w.good
}

// zoneCuts returns the cuts along the edges of the zones of b.
func zoneCuts(b box, zones []box, kerf int64) []zoneCut {
	var out []zoneCut
	seen := map[zoneCut]bool{}
	add := func(axis Axis, at, size int64) {
		key := zoneCut{axis: axis, at: at}
		if at < 0 || at >= size || seen[key] {
			return
		}
		seen[key] = true
		key.freed = freed(b, zones, axis, at, kerf)
		out = append(out, key)
	}
	for _, z := range zones {
		// Before the zone: the kerf in the zone. Behind it: the kerf ends at its end.
		for _, e := range []struct {
			axis         Axis
			lo, hi, size int64
		}{{DivideX, z.x0 - b.x0, z.x1 - b.x0, b.x1 - b.x0}, {DivideY, z.y0 - b.y0, z.y1 - b.y0, b.y1 - b.y0}} {
			if e.lo > 0 {
				add(e.axis, e.lo, e.size)
			}
			if e.hi < e.size {
				add(e.axis, max(e.hi-kerf, 0), e.size)
			}
		}
	}
	return out
}

// freed returns the area that a cut frees at once.
func freed(b box, zones []box, axis Axis, at, kerf int64) float64 {
	low, high := b, b
	if axis == DivideX {
		low.x1, high.x0 = b.x0+at, b.x0+at+kerf
	} else {
		low.y1, high.y0 = b.y0+at, b.y0+at+kerf
	}
	sum := 0.0
	for _, half := range []box{low, high} {
		hit := half.x0 >= half.x1 || half.y0 >= half.y1
		for _, z := range zones {
			_, in := z.clip(half)
			hit = hit || in
		}
		if !hit {
			sum += mm(half.x1-half.x0) * mm(half.y1-half.y0)
		}
	}
	return sum
}

// grow cuts slab s as the way says.
func grow(s *slab, w *way, kerf int64) {
	switch {
	case s == nil || w == nil:
	case w.axis == "" && w.free:
		s.kind = ""
	case w.axis == "":
		s.kind = KindWaste
	default:
		a, b := s.divide(w.axis, w.at, kerf)
		grow(a, w.a, kerf)
		grow(b, w.b, kerf)
	}
}
