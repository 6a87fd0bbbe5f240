// Package geom holds plane geometry in millimetres: points, rings, regions with
// holes, and the operations on them that the work needs.
//
// Coordinates are right-handed: x to the right, y up. Outer rings turn
// counter-clockwise, holes clockwise, so a ring's signed area tells which it is.
// Operations snap to an integer grid of Grid mm and decide on it exactly.
package geom

import (
	"encoding/json"
	"math"
)

// Grid is the spacing of the integer grid that operations snap to, in mm.
const Grid = 1e-4

// A Point is a place in the plane, mm.
type Point struct{ X, Y float64 }

// MarshalJSON writes p as [x, y].
func (p Point) MarshalJSON() ([]byte, error) { return json.Marshal([2]float64{p.X, p.Y}) }

// UnmarshalJSON reads [x, y].
func (p *Point) UnmarshalJSON(b []byte) error {
	var v [2]float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	p.X, p.Y = v[0], v[1]
	return nil
}

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by k.
func (p Point) Mul(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product of p and q, mm2.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the z component of p x q, mm2: positive when q is to the left of p.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of p, mm.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// A Ring is a closed line through its points; the first point is not repeated.
type Ring []Point

// A Polygon is one connected area: an outer ring less its holes.
type Polygon struct {
	Outer Ring
	Holes []Ring
}

// A Region is a set of polygons whose insides are disjoint.
type Region []Polygon

// A Box is an axis-parallel rectangle, mm.
type Box struct {
	Min Point `json:"min"`
	Max Point `json:"max"`
}

// A FillRule says which points overlapping rings cover.
type FillRule int

// The fill rules. Source: [w3c-svg2] section 13.4.2.
const (
	NonZero FillRule = iota
	EvenOdd
	Positive // winding number above zero
)

// Empty reports whether b holds no point.
func (b Box) Empty() bool { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }

// Width returns the extent of b along x, mm.
func (b Box) Width() float64 { return b.Max.X - b.Min.X }

// Height returns the extent of b along y, mm.
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// Center returns the middle of b.
func (b Box) Center() Point { return Point{(b.Min.X + b.Max.X) / 2, (b.Min.Y + b.Max.Y) / 2} }

// Ring returns b as a counter-clockwise ring.
func (b Box) Ring() Ring {
	return Ring{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}}
}

// Region returns b as a region.
func (b Box) Region() Region { return Region{{Outer: b.Ring()}} }

// Union returns the smallest box that holds b and c.
func (b Box) Union(c Box) Box {
	if b.Empty() {
		return c
	}
	if c.Empty() {
		return b
	}
	return Box{
		Point{math.Min(b.Min.X, c.Min.X), math.Min(b.Min.Y, c.Min.Y)},
		Point{math.Max(b.Max.X, c.Max.X), math.Max(b.Max.Y, c.Max.Y)},
	}
}

// EmptyBox returns a box that holds no point.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// Rect returns the box from (x0, y0) to (x1, y1), mm.
func Rect(x0, y0, x1, y1 float64) Box { return Box{Point{x0, y0}, Point{x1, y1}} }

// Area returns the signed area of r, mm2: positive when counter-clockwise.
func (r Ring) Area() float64 {
	if len(r) < 3 {
		return 0
	}
	o, sum := r[0], 0.0
	for i := 1; i+1 < len(r); i++ {
		sum += r[i].Sub(o).Cross(r[i+1].Sub(o))
	}
	return sum / 2
}

// Perimeter returns the length of r including the closing side, mm.
func (r Ring) Perimeter() float64 {
	sum := 0.0
	for i, p := range r {
		sum += r[(i+1)%len(r)].Sub(p).Norm()
	}
	return sum
}

// Box returns the bounding box of r.
func (r Ring) Box() Box {
	b := EmptyBox()
	for _, p := range r {
		b = b.Union(Box{p, p})
	}
	return b
}

// Map returns r with f applied to every point, in the same order.
func (r Ring) Map(f func(Point) Point) Ring {
	out := make(Ring, len(r))
	for i, p := range r {
		out[i] = f(p)
	}
	return out
}

// Reversed returns r the other way round.
func (r Ring) Reversed() Ring {
	out := make(Ring, len(r))
	for i, p := range r {
		out[len(r)-1-i] = p
	}
	return out
}

// Rings returns the outer ring of p and its holes.
func (p Polygon) Rings() []Ring { return append([]Ring{p.Outer}, p.Holes...) }

// Area returns the area of p less its holes, mm2.
func (p Polygon) Area() float64 {
	sum := math.Abs(p.Outer.Area())
	for _, h := range p.Holes {
		sum -= math.Abs(h.Area())
	}
	return sum
}

// Rings returns all rings of r, each outer ring followed by its holes.
func (r Region) Rings() []Ring {
	var out []Ring
	for _, p := range r {
		out = append(out, p.Rings()...)
	}
	return out
}

// Area returns the area of r, mm2.
func (r Region) Area() float64 {
	sum := 0.0
	for _, p := range r {
		sum += p.Area()
	}
	return sum
}

// Perimeter returns the length of all rings of r, holes included, mm.
func (r Region) Perimeter() float64 {
	sum := 0.0
	for _, ring := range r.Rings() {
		sum += ring.Perimeter()
	}
	return sum
}

// Box returns the bounding box of r.
func (r Region) Box() Box {
	b := EmptyBox()
	for _, p := range r {
		b = b.Union(p.Outer.Box())
	}
	return b
}

// Map returns r with f applied to every point. If f mirrors, mirrored must be true,
// so that outer rings stay counter-clockwise.
func (r Region) Map(f func(Point) Point, mirrored bool) Region {
	turn := func(ring Ring) Ring {
		if out := ring.Map(f); !mirrored {
			return out
		} else {
			return out.Reversed()
		}
	}
	out := make(Region, len(r))
	for i, p := range r {
		out[i].Outer = turn(p.Outer)
		for _, h := range p.Holes {
			out[i].Holes = append(out[i].Holes, turn(h))
		}
	}
	return out
}
