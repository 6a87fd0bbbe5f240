package svg

import (
	"math"

	"pourwright/internal/geom"
)

// The kinds of segment and how many points each keeps.
type segment byte

const (
	line  segment = iota // end
	cubic                // two controls, end
	arc                  // centre, two conjugate half axes, (from, to) angles, end
)

var segmentPoints = [...]int{line: 1, cubic: 3, arc: 5}

// A subpath is one line without a lift of the pen.
//
// An arc is P(t) = centre + u cos t + v sin t, which any affine map keeps in form, so
// that circles and ellipses are never approximated before they become chords.
type subpath struct {
	start  geom.Point
	kinds  []segment
	points []geom.Point
	closed bool
}

func (s *subpath) end() geom.Point {
	if len(s.points) == 0 {
		return s.start
	}
	return s.points[len(s.points)-1]
}

func (s *subpath) add(k segment, p ...geom.Point) {
	s.kinds = append(s.kinds, k)
	s.points = append(s.points, p...)
}

// each calls f for each segment with its first point and its own points.
func (s *subpath) each(f func(k segment, from geom.Point, p []geom.Point)) {
	from, i := s.start, 0
	for _, k := range s.kinds {
		p := s.points[i : i+segmentPoints[k]]
		f(k, from, p)
		from, i = p[len(p)-1], i+len(p)
	}
}

// transformed returns s under m.
func (s *subpath) transformed(m matrix) subpath {
	out := subpath{start: m.point(s.start), kinds: s.kinds, closed: s.closed, points: make([]geom.Point, 0, len(s.points))}
	s.each(func(k segment, _ geom.Point, p []geom.Point) {
		if k == arc {
			out.points = append(out.points, m.point(p[0]), m.vector(p[1]), m.vector(p[2]), p[3], m.point(p[4]))
			return
		}
		for _, q := range p {
			out.points = append(out.points, m.point(q))
		}
	})
	return out
}

// straight reports whether s has no curve.
func (s *subpath) straight() bool {
	for _, k := range s.kinds {
		if k != line {
			return false
		}
	}
	return true
}

// finite reports whether every coordinate is a number within limit of the origin.
func (s *subpath) finite(limit float64) bool {
	ok := s.start.Norm() <= limit
	for _, p := range s.points {
		ok = ok && p.Norm() <= limit
	}
	return ok
}

// area returns the signed area between s and the straight line from its end to its
// start, in closed form: half the integral of x dy - y dx along it.
//
//	line   p x q / 2
//	cubic  (6 p0xp1 + 3 p0xp2 + p0xp3 + 3 p1xp2 + 3 p1xp3 + 6 p2xp3) / 20
//	arc    (c x (q - p) + (u x v)(t1 - t0)) / 2
//
// Source: [analytic] Green's theorem.
func (s *subpath) area() float64 {
	sum, o := 0.0, s.start
	s.each(func(k segment, from geom.Point, p []geom.Point) {
		a, b := from.Sub(o), p[len(p)-1].Sub(o)
		switch k {
		case line:
			sum += a.Cross(b) / 2
		case cubic:
			c, d := p[0].Sub(o), p[1].Sub(o)
			sum += (6*a.Cross(c) + 3*a.Cross(d) + a.Cross(b) + 3*c.Cross(d) + 3*c.Cross(b) + 6*d.Cross(b)) / 20
		case arc:
			sum += (p[0].Sub(o).Cross(b.Sub(a)) + p[1].Cross(p[2])*(p[3].Y-p[3].X)) / 2
		}
	})
	return sum
}

// box returns the exact extent of s.
func (s *subpath) box() geom.Box {
	b := geom.Box{Min: s.start, Max: s.start}
	grow := func(p geom.Point) {
		b.Min = geom.Point{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y)}
		b.Max = geom.Point{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y)}
	}
	s.each(func(k segment, from geom.Point, p []geom.Point) {
		grow(p[len(p)-1])
		switch k {
		case cubic:
			for _, t := range cubicExtrema(from, p) {
				grow(cubicAt(from, p, t))
			}
		case arc:
			for _, t := range arcExtrema(p) {
				grow(arcAt(p, t))
			}
		}
	})
	return b
}

func cubicAt(a geom.Point, p []geom.Point, t float64) geom.Point {
	u := 1 - t
	return a.Mul(u * u * u).Add(p[0].Mul(3 * u * u * t)).Add(p[1].Mul(3 * u * t * t)).Add(p[2].Mul(t * t * t))
}

func arcAt(p []geom.Point, t float64) geom.Point {
	sin, cos := math.Sincos(t)
	return p[0].Add(p[1].Mul(cos)).Add(p[2].Mul(sin))
}

// cubicExtrema returns the parameters inside the curve where x or y turns.
func cubicExtrema(a geom.Point, p []geom.Point) []float64 {
	out := turns(a.X, p[0].X, p[1].X, p[2].X)
	return append(out, turns(a.Y, p[0].Y, p[1].Y, p[2].Y)...)
}

// turns returns the zeros within (0, 1) of the derivative of a cubic in one coordinate.
func turns(p0, p1, p2, p3 float64) []float64 {
	a, b, c := -p0+3*p1-3*p2+p3, 2*(p0-2*p1+p2), p1-p0
	var out []float64
	keep := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	d := b*b - 4*a*c
	if d < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(d), b)) / 2 // avoids cancellation
	if a != 0 {
		keep(q / a)
	}
	if q != 0 {
		keep(c / q)
	}
	return out
}

// arcExtrema returns the angles inside the arc where x or y turns.
func arcExtrema(p []geom.Point) []float64 {
	lo, hi := min(p[3].X, p[3].Y), max(p[3].X, p[3].Y)
	var out []float64
	for _, t := range []float64{math.Atan2(p[2].X, p[1].X), math.Atan2(p[2].Y, p[1].Y)} {
		for t += math.Ceil((lo-t)/math.Pi) * math.Pi; t < hi; t += math.Pi {
			out = append(out, t)
		}
	}
	return out
}
