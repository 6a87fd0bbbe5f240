package nest

import (
	"math"
	"slices"
	"sync/atomic"

	"pourwright/internal/geom"
)

// A shape is a piece in one turn, grown by half the spacing. The corner of the box of the
// piece before it was grown is its origin.
type shape struct {
	rings         [][]step // outer to the left, holes to the right
	width, height float64  // of that box
}

// A pose is one turn a piece may take.
type pose struct {
	shape  int // against other pieces
	bare   int // not grown, against what the sheet lacks
	deg    float64
	dx, dy float64 // from the corner of the shape's box to the origin of the piece
}

// A catalog keeps the shapes of a problem, each once, and what they know of each other.
type catalog struct {
	shapes []*shape
	fields []atomic.Pointer[fieldOrNone] // of shape a against shape b at a*len(shapes)+b
}

// fieldOrNone tells a field not asked for yet from an empty one.
type fieldOrNone struct{ f *field }

// add returns the number of a shape, which is new unless an equal one is known.
func (c *catalog) add(s *shape) int {
	for i, t := range c.shapes {
		if s.width == t.width && s.height == t.height && slices.EqualFunc(s.rings, t.rings, slices.Equal[[]step]) {
			return i
		}
	}
	c.shapes = append(c.shapes, s)
	return len(c.shapes) - 1
}

// seal ends adding.
func (c *catalog) seal() { c.fields = make([]atomic.Pointer[fieldOrNone], len(c.shapes)*len(c.shapes)) }

// field returns where b overlaps a, worked out when first asked for. Two threads that ask
// at once work out the same.
func (c *catalog) field(a, b int) *field {
	p := &c.fields[a*len(c.shapes)+b]
	if v := p.Load(); v != nil {
		return v.f
	}
	v := &fieldOrNone{newField(noFit(c.shapes[a], c.shapes[b]))}
	p.Store(v)
	return v.f
}

// turn returns polygon p turned by deg about its origin; quarter turns are exact.
func turn(p geom.Polygon, deg float64) geom.Polygon {
	f := turner(deg)
	out := geom.Polygon{Outer: p.Outer.Map(f)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, h.Map(f))
	}
	return out
}

func turner(deg float64) func(geom.Point) geom.Point {
	s, c := math.Sincos(deg * math.Pi / 180)
	switch q := math.Mod(math.Mod(deg, 360)+360, 360); q {
	case 0:
		s, c = 0, 1
	case 90:
		s, c = 1, 0
	case 180:
		s, c = 0, -1
	case 270:
		s, c = -1, 0
	}
	return func(p geom.Point) geom.Point { return geom.Point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y} }
}

// newShape returns the shape of a polygon whose origin is the corner of box.
func newShape(p geom.Polygon, box gridBox) *shape {
	s := &shape{}
	for _, r := range p.Rings() {
		if st := steps(r); len(st) > 2 {
			s.rings = append(s.rings, st)
		}
	}
	for i, r := range s.rings {
		for j := range r {
			r[j] = r[j].sub(box.lo)
		}
		s.rings[i] = fromLeast(r)
	}
	slices.SortFunc(s.rings[1:], func(a, b []step) int { return compare(a[0], b[0]) })
	size := box.hi.sub(box.lo)
	s.width, s.height = float64(size.x)*geom.Grid, float64(size.y)*geom.Grid
	return s
}

// A gridBox is a box on the grid.
type gridBox struct{ lo, hi step }

func boxOf(r geom.Ring) gridBox {
	s := steps(r)
	b := gridBox{s[0], s[0]}
	for _, q := range s {
		b.lo = step{min(b.lo.x, q.x), min(b.lo.y, q.y)}
		b.hi = step{max(b.hi.x, q.x), max(b.hi.y, q.y)}
	}
	return b
}

func compare(a, b step) int {
	switch {
	case a == b:
		return 0
	case a.x < b.x || a.x == b.x && a.y < b.y:
		return -1
	}
	return 1
}

// fromLeast returns r begun at its least corner.
func fromLeast(r []step) []step {
	k := 0
	for i := range r {
		if compare(r[i], r[k]) < 0 {
			k = i
		}
	}
	return append(slices.Clone(r[k:]), r[:k]...)
}
