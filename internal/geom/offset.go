package geom

import "math"

// Offset returns r grown by d mm with round joins (shrunk where d is negative):
// all points within d of r, or all points of r further than -d from its outside.
// Arcs are flattened to a chord error of tol mm. Offset always from the original
// outline; chained offsets add their errors.
//
// A grown ring's winding number is that of the ring plus one for every side's swept
// rectangle and every convex corner's sector that covers the point, so the points of
// positive winding number are just the grown region; nothing is left over when a
// hole closes. Shrinking is growing the outside.
func Offset(r Region, d, tol float64) Region {
	switch {
	case len(r) == 0 || math.IsNaN(d) || math.IsInf(d, 0):
		return nil
	case d == 0:
		return Union(r)
	case d > 0:
		return grow(r.Rings(), d, tol)
	}
	frame := r.Box()
	margin := -3*d + 1
	big := Rect(frame.Min.X-margin, frame.Min.Y-margin, frame.Max.X+margin, frame.Max.Y+margin)
	rings := []Ring{big.Ring()}
	for _, ring := range r.Rings() {
		rings = append(rings, ring.Reversed())
	}
	return Subtract(r, grow(rings, -d, tol))
}

// grow returns the points within d of the region that rings bound, inside left.
func grow(rings []Ring, d, tol float64) Region {
	raw := make([]Ring, len(rings))
	for i, r := range rings {
		raw[i] = offsetRing(tidy(r).Simplify(tol/4), d, tol) // else noise finer than tol makes every side sweep across hundreds of others
	}
	return Build(raw, Positive)
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
// arcs at corners that turn left and by way of the corner where they turn right.
func offsetRing(r Ring, d, tol float64) Ring {
	if len(r) < 3 {
		return nil
	}
	n := len(r)
	normal := make([]Point, n)
	for i := range r {
		v := r[(i+1)%n].Sub(r[i])
		k := 1 / v.Norm()
		normal[i] = Point{v.Y * k, -v.X * k}
	}
	step := arcStep(d, tol)
	out := make(Ring, 0, 3*n)
	for i, p := range r {
		a, b := normal[(i+n-1)%n], normal[i]
		switch s := a.Cross(b); {
		case s > 0 || (s == 0 && a.Dot(b) < 0):
			out = appendArc(out, p, a, b, d, step)
		case s == 0:
			out = append(out, p.Add(b.Mul(d)))
		default:
			out = append(out, p.Add(a.Mul(d)), p, p.Add(b.Mul(d)))
		}
	}
	return out
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
