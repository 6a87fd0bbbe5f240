package svg

import (
	"math"

	"pourwright/internal/geom"
)

// A polyline is a subpath as chords.
type polyline struct {
	points geom.Ring
	closed bool
	bulge  float64  // exact area less the area of the chords, signed, mm2
	box    geom.Box // exact
}

// flatten returns s, in mm, as chords nowhere further than chordError mm from it. It
// takes them finer where they would otherwise change the enclosed area by more than
// areaTarget, down to minChordErrorMM: chords of length l and height e cut off at most
// 2/3 e l, so a ring of perimeter L loses at most 2/3 e L. It returns false once more
// than limit corners would be made.
func (s *subpath) flatten(chordError float64, limit int) (polyline, bool) {
	exact := s.area()
	out := polyline{closed: s.closed, box: s.box()}
	if s.straight() {
		out.points = clean(append(geom.Ring{s.start}, s.points...), s.closed)
		return out, len(out.points) <= limit
	}
	if length := s.controlLength(); length > 0 && s.closed {
		chordError = max(minChordErrorMM, min(chordError, 1.5*areaTarget*math.Abs(exact)/length))
	}
	ring := geom.Ring{s.start}
	s.each(func(k segment, from geom.Point, p []geom.Point) {
		if len(ring) > limit {
			return
		}
		switch k {
		case line:
			ring = append(ring, p[0])
		case cubic:
			ring = flattenCubic(ring, [4]geom.Point{from, p[0], p[1], p[2]}, chordError, limit)
		case arc:
			ring = flattenArc(ring, p, chordError, limit)
		}
	})
	out.points = clean(ring, s.closed)
	out.bulge = exact - out.points.Area()
	return out, len(ring) <= limit
}

// controlLength returns the length of the lines through all control points: no less
// than that of s for lines and cubics, and the arcs' own bound.
func (s *subpath) controlLength() float64 {
	sum := s.end().Sub(s.start).Norm()
	s.each(func(k segment, from geom.Point, p []geom.Point) {
		switch k {
		case line:
			sum += p[0].Sub(from).Norm()
		case cubic:
			sum += p[0].Sub(from).Norm() + p[1].Sub(p[0]).Norm() + p[2].Sub(p[1]).Norm()
		case arc:
			sum += majorAxis(p[1], p[2]) * math.Abs(p[3].Y-p[3].X)
		}
	})
	return sum
}

// flattenCubic adds the chords of c after its first point. With the second
// derivative at most 6 m, where m is the larger second difference of the controls, n
// equal steps of the parameter stay within 6m/(8n^2).
func flattenCubic(ring geom.Ring, c [4]geom.Point, e float64, limit int) geom.Ring {
	m := max(c[0].Sub(c[1].Mul(2)).Add(c[2]).Norm(), c[1].Sub(c[2].Mul(2)).Add(c[3]).Norm())
	n := math.Ceil(math.Sqrt(0.75 * m / e))
	if len(ring) > limit || n > float64(limit)*64 {
		return append(ring, make(geom.Ring, limit+1)...)
	}
	if n > 4 { // halves need not be equally fine
		left, right := halves(c)
		return flattenCubic(flattenCubic(ring, left, e, limit), right, e, limit)
	}
	for i := 1; i < int(n); i++ {
		ring = append(ring, cubicAt(c[0], c[1:], float64(i)/n))
	}
	return append(ring, c[3])
}

func halves(c [4]geom.Point) (left, right [4]geom.Point) {
	mid := func(p, q geom.Point) geom.Point { return p.Add(q).Mul(0.5) }
	ab, bc, cd := mid(c[0], c[1]), mid(c[1], c[2]), mid(c[2], c[3])
	abc, bcd := mid(ab, bc), mid(bc, cd)
	m := mid(abc, bcd)
	return [4]geom.Point{c[0], ab, abc, m}, [4]geom.Point{m, bcd, cd, c[3]}
}

// flattenArc adds the chords of an arc. With a the longer half axis, a step of h
// radians stays within a(1 - cos(h/2)).
func flattenArc(ring geom.Ring, p []geom.Point, e float64, limit int) geom.Ring {
	a, turn := majorAxis(p[1], p[2]), p[3].Y-p[3].X
	step := math.Pi / 2
	if a > e {
		step = min(step, 2*math.Acos(1-e/a))
	}
	n := math.Ceil(math.Abs(turn)/step - 1e-9)
	if n > float64(limit) {
		return append(ring, make(geom.Ring, limit+1)...)
	}
	for i := 1; i < int(n); i++ {
		ring = append(ring, arcAt(p, p[3].X+turn*float64(i)/n))
	}
	return append(ring, p[4])
}

// majorAxis returns the longest half axis of the ellipse with conjugate half axes u
// and v: the larger singular value of [u v].
func majorAxis(u, v geom.Point) float64 {
	s, d := u.Dot(u)+v.Dot(v), u.Cross(v)
	return math.Sqrt((s + math.Sqrt(max(0, s*s-4*d*d))) / 2)
}

// clean drops points that repeat the one before, and in a closed line a last point
// that repeats the first.
func clean(r geom.Ring, closed bool) geom.Ring {
	out := r[:0]
	for i, p := range r {
		if i == 0 || p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	const same = geom.Grid / 10 // arcs end where they began but for rounding
	for closed && len(out) > 1 && out[len(out)-1].Sub(out[0]).Norm() < same {
		out = out[:len(out)-1]
	}
	return out
}
