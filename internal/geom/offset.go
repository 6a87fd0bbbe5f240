package geom

import "math"

// Offset returns r grown by d mm with round joins (shrunk where d is negative):
// all points within d of r, or all points of r further than -d from its outside.
// Arcs are flattened to a chord error of tol mm, and with what is smoothed away first
// the boundary errs by 1.5 tol at most. Offset always from the original outline;
// chained offsets add their errors.
//
// A grown ring's winding number is that of the ring plus one for every side's swept
// rectangle and every convex corner's sector that covers the point, so the points of
// positive winding number are just the grown region; nothing is left over when a
// hole closes. Shrinking is growing the outside: of the rings turned round, grown, a
// point keeps a winding number below zero just where nothing reached it.
func Offset(r Region, d, tol float64) Region {
	switch {
	case len(r) == 0 || math.IsNaN(d) || math.IsInf(d, 0):
		return nil
	case d == 0:
		return Union(r)
	case d > 0:
		return sweepOut(r.Rings(), d, tol, func(w [operands]int32) bool { return w[0] > 0 })
	}
	var rings []Ring
	for _, p := range r {
		if b := p.Outer.Box(); math.Min(b.Width(), b.Height()) > -2*d { // else nothing of it is left
			for _, ring := range p.Rings() {
				rings = append(rings, ring.Reversed())
			}
		}
	}
	return sweepOut(rings, -d, tol, func(w [operands]int32) bool { return w[0] < 0 })
}

// sweepOut moves rings to their right by d and keeps what is in. Noise finer than
// the tolerance and pits too small for it are smoothed out of them first; else they
// make every side sweep across hundreds of others.
func sweepOut(rings []Ring, d, tol float64, in inRule) Region {
	var edges []edge
	for _, r := range rings {
		smooth := fillPits(tidy(r).Simplify(math.Min(tol, d)/4), d, tol)
		edges = addRing(edges, offsetRing(smooth, d, tol), 0)
	}
	return resolve(edges, in)
}

// fillPits drops corners at which r turns right where the chord across is so short
// that growing r by d fills the pit to within tol/4. Discs of radius d round the ends
// of a chord c leave of what the chord sweeps
//
//	d - sqrt(d^2 - c^2/4) ~ c^2/(8 d)
//
// Each step adds a triangle to r, in winding numbers too, whatever else lies in it.
func fillPits(r Ring, d, tol float64) Ring {
	longest := math.Sqrt(2 * d * math.Min(tol, d))
	out := make(Ring, 0, len(r))
	for _, p := range r {
		for n := len(out); n >= 2; n-- {
			a, b := out[n-2], out[n-1]
			if b.Sub(a).Cross(p.Sub(b)) >= 0 || p.Sub(a).Norm() > longest {
				break
			}
			out = out[:n-1]
		}
		out = append(out, p)
	}
	if len(out) < 3 {
		return r
	}
	return out
}

// tidy drops points that repeat their neighbour on the grid.
func tidy(r Ring) Ring {
	out := make(Ring, 0, len(r))
	for _, p := range r {
		if n := len(out); n == 0 || math.Abs(out[n-1].X-p.X) > Grid || math.Abs(out[n-1].Y-p.Y) > Grid {
			out = append(out, p)
		}
	}
	for len(out) > 1 && out[0].Sub(out[len(out)-1]).Norm() <= Grid {
		out = out[:len(out)-1]
	}
	return out
}

// offsetRing returns the raw curve: every side moved to its right by d, joined by
// arcs at corners that turn left. At a corner that turns right it goes by way of the
// corner, so that it bounds the rectangles both sides sweep; or, where they are long
// enough, straight to where the moved sides meet.
func offsetRing(r Ring, d, tol float64) Ring {
	if len(r) < 3 {
		return nil
	}
	n := len(r)
	normal, length := make([]Point, n), make([]float64, n)
	for i := range r {
		v := r[(i+1)%n].Sub(r[i])
		length[i] = v.Norm()
		normal[i] = Point{v.Y, -v.X}.Mul(1 / length[i])
	}
	step := arcStep(d, tol)
	out := make(Ring, 0, 3*n)
	for i, p := range r {
		h := (i + n - 1) % n
		a, b := normal[h], normal[i]
		switch s := a.Cross(b); {
		case s > 0 || (s == 0 && a.Dot(b) < 0):
			out = appendArc(out, p, a, b, d, step)
		case s == 0:
			out = append(out, p.Add(b.Mul(d)))
		case mitred(a, b, d, math.Min(length[h], length[i])):
			out = append(out, p.Add(a.Add(b).Mul(d/(1+a.Dot(b)))))
		default:
			out = append(out, p.Add(a.Mul(d)), p, p.Add(b.Mul(d)))
		}
	}
	return out
}

// mitred reports whether, at a corner that turns right from normal a to b by the angle
// t, each side of at least the given length covers what the other sweeps beyond the
// bisector, whatever is cut off at the far ends: t < 90 degrees, d sin t <= length/2.
func mitred(a, b Point, d, length float64) bool {
	return a.Dot(b) > 0 && -2*d*a.Cross(b) <= length
}

// arcStep returns the angle whose chord on radius d errs by tol, radians, at most an
// eighth of a turn.
func arcStep(d, tol float64) float64 {
	tol = math.Max(tol, Grid)
	if tol >= d {
		return math.Pi / 4
	}
	return math.Min(math.Pi/4, 2*math.Acos(1-tol/d))
}

// appendArc appends points round p from normal a to normal b, turning left.
func appendArc(out Ring, p, a, b Point, d, step float64) Ring {
	angle := math.Atan2(a.Cross(b), a.Dot(b))
	if angle < 0 {
		angle += 2 * math.Pi
	}
	n := int(math.Ceil(angle / step))
	out = append(out, p.Add(a.Mul(d)))
	for i := 1; i < n; i++ {
		sin, cos := math.Sincos(angle * float64(i) / float64(n))
		out = append(out, p.Add(Point{a.X*cos - a.Y*sin, a.X*sin + a.Y*cos}.Mul(d)))
	}
	return append(out, p.Add(b.Mul(d)))
}
