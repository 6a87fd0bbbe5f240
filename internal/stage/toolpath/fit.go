package toolpath

import (
	"math"

	"pourwright/internal/geom"
)

// Limits of arcs. Chosen.
const (
	leastRadiusMM = 0.05 // a smaller arc is a corner
	mostRadiusMM  = 5000 // a flatter arc is a line
	leastChordMM  = 0.05 // rounding must not turn a short arc into a full circle
	mostSweep     = 0.97 * math.Pi
	leastSweep    = 1e-4 // radians
	fewCorners    = 8    // a stretch of fewer that is too short for an arc may still grow into one
)

// fit turns a closed ring into lines and arcs that stay within tol mm of it. From
// each corner on it takes the longest line or arc that fits, found by doubling and
// halving the stretch.
func fit(r geom.Ring, tol float64) path {
	n := len(r)
	if n < 3 {
		return path{}
	}
	start := sharpest(r)
	pts := make(geom.Ring, n+1)
	for i := range pts {
		pts[i] = r[(start+i)%n]
	}
	var out []piece
	for i := 0; i < n; {
		line := reach(i, n, func(j int) bool { return lineFits(pts[i:j+1], tol) })
		var arc piece
		end := reach(i, n, func(j int) bool {
			a, ok := arcThrough(pts[i:j+1], tol)
			if ok {
				arc = a
			}
			return ok || (j-i < fewCorners && pts[j].Sub(pts[i]).Norm() < leastChordMM)
		})
		if end > line && end >= i+2 && arc.length > 0 && arc.to == pts[end] {
			out = append(out, arc)
			i = end
			continue
		}
		out = append(out, straight(pts[i], pts[line]))
		i = line
	}
	return newPath(out)
}

// sharpest returns the corner of r that turns most: a seam there splits no arc.
func sharpest(r geom.Ring) int {
	best, at := -1.0, 0
	for i, p := range r {
		a := p.Sub(r[(i+len(r)-1)%len(r)])
		b := r[(i+1)%len(r)].Sub(p)
		if t := math.Abs(math.Atan2(a.Cross(b), a.Dot(b))); t > best+1e-12 {
			best, at = t, i
		}
	}
	return at
}

// reach returns the furthest j in (i, n] it finds with ok(j): doubling, then halving.
// ok(i+1) is taken for granted.
func reach(i, n int, ok func(int) bool) int {
	good, step := i+1, 1
	for good+step <= n && ok(good+step) {
		good += step
		step *= 2
	}
	bad := min(good+step, n+1)
	for bad-good > 1 {
		mid := (good + bad) / 2
		if ok(mid) {
			good = mid
		} else {
			bad = mid
		}
	}
	return good
}

// lineFits reports whether the corners between the ends of pts lie within tol of the
// straight line, in order along it.
func lineFits(pts geom.Ring, tol float64) bool {
	a, b := pts[0], pts[len(pts)-1]
	d := b.Sub(a)
	length := d.Norm()
	if length == 0 {
		return false
	}
	d = d.Mul(1 / length)
	last := -tol
	for _, p := range pts[1 : len(pts)-1] {
		v := p.Sub(a)
		along := v.Dot(d)
		if math.Abs(d.Cross(v)) > tol || along < last-tol || along > length+tol {
			return false
		}
		last = math.Max(last, along)
	}
	return true
}

// arcThrough returns the arc from the first to the last of pts that lies nearest to
// those between, if it stays within tol of all their sides. With the ends at (-c, 0)
// and (c, 0) and the centre at (0, h), least squares of u^2 + v^2 - 2 v h - c^2 give
//
//	h = sum v (u^2 + v^2 - c^2) / (2 sum v^2)
func arcThrough(pts geom.Ring, tol float64) (piece, bool) {
	a, b := pts[0], pts[len(pts)-1]
	chord := b.Sub(a)
	length := chord.Norm()
	if len(pts) < 3 || length < leastChordMM {
		return piece{}, false
	}
	x := chord.Mul(1 / length)
	y := geom.Point{X: -x.Y, Y: x.X}
	mid, c := a.Add(b).Mul(0.5), length/2
	var num, den float64
	for _, p := range pts[1 : len(pts)-1] {
		d := p.Sub(mid)
		u, v := d.Dot(x), d.Dot(y)
		num += v * (u*u + v*v - c*c)
		den += v * v
	}
	if den == 0 {
		return piece{}, false
	}
	arc, ok := newArc(a, b, mid.Add(y.Mul(num/den/2)), pts)
	return arc, ok && arcFits(arc, pts, tol)
}

// newArc returns the arc from a to b round centre on the side on which pts lie.
func newArc(a, b, centre geom.Point, pts geom.Ring) (piece, bool) {
	va, vb, vm := a.Sub(centre), b.Sub(centre), pts[len(pts)/2].Sub(centre)
	radius := va.Norm()
	if !(radius > leastRadiusMM && radius < mostRadiusMM) {
		return piece{}, false
	}
	sweep := math.Atan2(va.Cross(vb), va.Dot(vb))
	half := math.Atan2(va.Cross(vm), va.Dot(vm))
	if half*sweep < 0 || math.Abs(half) > math.Abs(sweep) || math.Abs(sweep) > mostSweep || math.Abs(sweep) < leastSweep {
		return piece{}, false
	}
	return piece{from: a, to: b, centre: centre, sweep: sweep, length: radius * math.Abs(sweep)}, true
}

// arcFits reports whether every side of pts runs on round the centre and stays within
// tol of the circle. On a side, the circle is furthest off at an end or where the side
// comes nearest to the centre.
func arcFits(arc piece, pts geom.Ring, tol float64) bool {
	radius := arc.from.Sub(arc.centre).Norm()
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1].Sub(arc.centre), pts[i].Sub(arc.centre)
		if a.Cross(b)*arc.sweep <= 0 {
			return false
		}
		d := b.Sub(a)
		t := math.Max(0, math.Min(1, -a.Dot(d)/d.Dot(d)))
		if math.Abs(a.Add(d.Mul(t)).Norm()-radius) > tol || math.Abs(b.Norm()-radius) > tol {
			return false
		}
	}
	return true
}
