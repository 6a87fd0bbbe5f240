package geom

import (
	"math"
	"slices"
)

// A Narrow is a place where a region is narrower than asked.
type Narrow struct {
	At    Point   // the middle of the narrowest place
	Width float64 // its width, mm; of a spur, half way out
	Box   Box     // the extent of what a disc of the asked width cannot reach
	Whole bool    // an entire polygon of the region is too narrow, not only a neck in it
	Joins int     // stretches on which it borders the wide rest: 2 or more is a neck, 1 a spur, 0 is Whole
	Reach float64 // of a spur: how far it juts out of the wide rest, mm
}

const (
	narrowTol = 0.05          // flattening of the discs, mm
	crumb     = narrowTol * 4 // stretches and pieces shorter than this are left by flattening
)

// NarrowPlaces returns where r is narrower than width mm: what opening r with a
// disc of that diameter removes, where that is a neck (it borders the rest on two
// stretches), a whole polygon, or a spur that juts out by more than width. Corners,
// which any opening rounds off, and short spurs are no narrow places: a corner of
// more than 39 degrees never counts. Ordered by position.
//
// The width of a neck is the least distance between the walls on its two sides; of a
// whole polygon the diameter of the largest disc in it; of a spur the least distance
// between the first and the last quarter of its wall.
func (r Region) NarrowPlaces(width float64) []Narrow {
	if len(r) == 0 || !(width > 0) {
		return nil
	}
	core := Offset(r, -width/2, narrowTol)
	opened := Intersect(Offset(core, width/2+2*narrowTol, narrowTol), r)
	walls, rest := NewLocator(r), NewLocator(opened)
	var out []Narrow
	for _, p := range Subtract(r, opened) {
		if box := p.Outer.Box(); box.Width() < crumb && box.Height() < crumb {
			continue
		}
		if n := narrow(p, walls, rest, width); n.Width < width {
			out = append(out, n)
		}
	}
	out = mergePlaces(out, pinches(r, walls, core, width))
	slices.SortFunc(out, func(a, b Narrow) int { return comparePoints(a.At, b.At) })
	return out
}

// narrow measures p, a piece that the opening removed; the width of what is no narrow
// place is +Inf.
func narrow(p Polygon, walls, rest *Locator, width float64) Narrow {
	sides := stretches(p, walls)
	n := Narrow{Box: p.Outer.Box(), Joins: joins(p, sides)}
	n.Whole = n.Joins == 0
	switch {
	case len(sides) == 0:
		n.Width = math.Inf(1) // no side of it lies on the region's: nothing is narrow here
	case len(sides)+len(p.Holes) >= 2 && n.Joins != 1:
		n.At, n.Width = gap(sides, p.Holes)
	case n.Joins == 1:
		n.Width = math.Inf(1)
		if math.Hypot(n.Box.Width(), n.Box.Height()) <= width {
			break // a corner, or a spur too short to count
		}
		if n.At, n.Reach = (Region{p}).DeepestOutside(rest, narrowTol); n.Reach > width {
			_, n.Width = gap(quarters(sides[0]), nil)
		}
	default:
		var radius float64
		n.At, radius = Region{p}.Pole(narrowTol)
		n.Width = 2 * radius
	}
	return n
}

// quarters returns the first and the last quarter of line by length.
func quarters(line Ring) []Ring {
	back := line.Reversed()
	length := 0.0
	for i := 1; i < len(line); i++ {
		length += line[i].Sub(line[i-1]).Norm()
	}
	return []Ring{begin(line, length/4), begin(back, length/4)}
}

// begin returns the first part of line, of that length.
func begin(line Ring, length float64) Ring {
	out := Ring{line[0]}
	for i := 1; i < len(line) && length > 0; i++ {
		v := line[i].Sub(line[i-1])
		n := v.Norm()
		out = append(out, line[i-1].Add(v.Mul(math.Min(1, length/math.Max(n, Grid)))))
		length -= n
	}
	return out
}

// joins returns the number of stretches between the walls: as many as walls, but
// that a ring all of wall has none.
func joins(p Polygon, walls []Ring) int {
	if len(walls) == 1 && len(walls[0]) > len(p.Outer) {
		return 0
	}
	return len(walls)
}

// stretches returns the walls of p: the runs of its outer ring that lie on the
// boundary l, as open lines. A ring all of wall is returned closed, its first point
// repeated.
func stretches(p Polygon, l *Locator) []Ring {
	n := len(p.Outer)
	wall := make([]bool, n)
	for i, a := range p.Outer {
		wall[i] = l.within(a.Add(p.Outer[(i+1)%n]).Mul(0.5), 1) <= 2*Grid
	}
	smooth(p.Outer, wall)
	start := slices.Index(wall, false)
	if start < 0 {
		return []Ring{append(slices.Clone(p.Outer), p.Outer[0])}
	}
	var out []Ring
	for k := 1; k <= n; k++ {
		i := (start + k) % n
		if !wall[i] {
			continue
		}
		if !wall[(i+n-1)%n] {
			out = append(out, Ring{p.Outer[i]})
		}
		out[len(out)-1] = append(out[len(out)-1], p.Outer[(i+1)%n])
	}
	return out
}

// smooth gives runs of sides shorter than a crumb to the runs around them.
func smooth(r Ring, wall []bool) {
	n := len(r)
	start := -1
	for i := range wall {
		if wall[i] != wall[(i+n-1)%n] {
			start = i
			break
		}
	}
	if start < 0 {
		return
	}
	for k := 0; k < n; {
		i := (start + k) % n
		length, m := 0.0, 0
		for ; k+m < n && wall[(i+m)%n] == wall[i]; m++ {
			length += r[(i+m+1)%n].Sub(r[(i+m)%n]).Norm()
		}
		if length < crumb {
			for j := range m {
				wall[(i+j)%n] = !wall[(i+j)%n]
			}
		}
		k += m
	}
}

// gap returns the least distance between two of the lines and rings, and the middle
// of that way.
func gap(lines, rings []Ring) (Point, float64) {
	for _, h := range rings {
		lines = append(lines, append(slices.Clone(h), h[0]))
	}
	best, at := math.Inf(1), lines[0][0]
	for i, a := range lines {
		for _, b := range lines[i+1:] {
			for _, e := range [2][2]Ring{{a, b}, {b, a}} {
				if p, d := nearest(e[0], e[1], best); d < best {
					best, at = d, p
				}
			}
		}
	}
	return at, best
}

// nearest returns the least distance, if under limit, from the points of a to the
// sides of b and the middle of that way.
func nearest(a, b Ring, limit float64) (Point, float64) {
	best, at := limit, Point{}
	box := b.Box()
	for _, p := range a {
		if p.X < box.Min.X-best || p.X > box.Max.X+best || p.Y < box.Min.Y-best || p.Y > box.Max.Y+best {
			continue
		}
		for i := 1; i < len(b); i++ {
			if q := nearestOn(p, b[i-1], b[i]); q.Sub(p).Norm() < best {
				best, at = q.Sub(p).Norm(), p.Add(q).Mul(0.5)
			}
		}
	}
	return at, best
}

// nearestOn returns the point of segment ab nearest to p.
func nearestOn(p, a, b Point) Point {
	v := b.Sub(a)
	t := v.Dot(v)
	if t > 0 {
		t = math.Max(0, math.Min(1, p.Sub(a).Dot(v)/t))
	}
	return a.Add(v.Mul(t))
}
