package nest

import (
	"math"

	"pourwright/internal/geom"
)

// A step is a place or a direction on the grid of geom.Grid mm.
type step struct{ x, y int64 }

func (a step) add(b step) step    { return step{a.x + b.x, a.y + b.y} }
func (a step) sub(b step) step    { return step{a.x - b.x, a.y - b.y} }
func (a step) cross(b step) int64 { return a.x*b.y - a.y*b.x }
func (a step) dot(b step) int64   { return a.x*b.x + a.y*b.y }

// steps puts a ring on the grid and drops corners that turn nothing.
func steps(r geom.Ring) []step {
	var out []step
	for _, p := range r {
		s := step{int64(math.Round(p.X / geom.Grid)), int64(math.Round(p.Y / geom.Grid))}
		if len(out) == 0 || out[len(out)-1] != s {
			out = append(out, s)
		}
	}
	for changed := true; changed && len(out) > 2; {
		changed = false
		for i := 0; i < len(out) && len(out) > 2; i++ {
			a, b, c := out[(i+len(out)-1)%len(out)], out[i], out[(i+1)%len(out)]
			if b.sub(a).cross(c.sub(b)) == 0 {
				out = append(out[:i], out[i+1:]...)
				changed = true
				i--
			}
		}
	}
	return out
}

func ringOf(s []step) geom.Ring {
	out := make(geom.Ring, len(s))
	for i, p := range s {
		out[i] = geom.Point{X: float64(p.x) * geom.Grid, Y: float64(p.y) * geom.Grid}
	}
	return out
}

func opposite(r []step) []step {
	out := make([]step, len(r))
	for i, p := range r {
		out[i] = step{-p.x, -p.y}
	}
	return out
}

func reversed(r []step) []step {
	out := make([]step, len(r))
	for i, p := range r {
		out[len(r)-1-i] = p
	}
	return out
}

// noFit returns the places of b's origin relative to a's at which b overlaps a.
//
// For two areas without holes it is where the winding number of their convolution is
// positive. A hole of one is taken out where the other fits into it; a hole that is no
// larger than the other piece is none.
func noFit(a, b *shape) geom.Region {
	out := geom.Build(rings(convolve(a.rings[0], opposite(b.rings[0]))), geom.Positive)
	for _, h := range a.rings[1:] {
		if fit := fits(h, b.rings[0]); fit != nil {
			out = geom.Subtract(out, fit)
		}
	}
	for _, h := range b.rings[1:] {
		if fit := fits(h, a.rings[0]); fit != nil {
			out = geom.Subtract(out, fit.Map(func(p geom.Point) geom.Point { return geom.Point{X: -p.X, Y: -p.Y} }, false))
		}
	}
	return out
}

// fits returns the places of an outer ring at which it lies within a hole, which turns
// clockwise.
func fits(hole, outer []step) geom.Region {
	hr, or := ringOf(hole), ringOf(outer)
	h, o := hr.Box(), or.Box()
	if h.Width() < o.Width() || h.Height() < o.Height() || -hr.Area() < or.Area() {
		return nil
	}
	cycles := convolve(hole, opposite(outer))
	for i := range cycles {
		cycles[i] = reversed(cycles[i])
	}
	return geom.Build(rings(cycles), geom.Positive)
}

func rings(cycles [][]step) []geom.Ring {
	out := make([]geom.Ring, len(cycles))
	for i, c := range cycles {
		out[i] = ringOf(c)
	}
	return out
}

// A stride is one directed side of a convolution.
type stride struct{ from, to step }

// convolve returns the closed lines of the convolution of two rings: every side of one
// at every corner of the other whose turn passes the side's direction, backwards at
// corners that turn right. Sides of a count as turned a little to the left of parallel
// sides of b, so that the lines close.
func convolve(a, b []step) [][]step {
	var all []stride
	for i, v := range b {
		in, out := v.sub(b[(i+len(b)-1)%len(b)]), b[(i+1)%len(b)].sub(v)
		all = sweepCorner(all, a, v, in, out, true)
	}
	for i, v := range a {
		in, out := v.sub(a[(i+len(a)-1)%len(a)]), a[(i+1)%len(a)].sub(v)
		all = sweepCorner(all, b, v, in, out, false)
	}
	return chain(all)
}

// sweepCorner appends the sides of r that the corner v passes when it turns from in to out;
// first tells whether a direction equal to the first one of the sweep counts, else the last.
func sweepCorner(all []stride, r []step, v, in, out step, first bool) []stride {
	left := in.cross(out) > 0
	lo, hi := in, out
	if !left {
		lo, hi = out, in
	}
	for i, p := range r {
		q := r[(i+1)%len(r)]
		if !passes(lo, hi, q.sub(p), first) {
			continue
		}
		s := stride{p.add(v), q.add(v)}
		if !left {
			s.from, s.to = s.to, s.from
		}
		all = append(all, s)
	}
	return all
}

// passes reports whether direction d lies in the sweep to the left from lo to hi, less
// than half a turn apart; of its ends only the first or only the last counts.
func passes(lo, hi, d step, first bool) bool {
	a, b := lo.cross(d), d.cross(hi)
	switch {
	case a > 0 && b > 0:
		return true
	case a == 0 && lo.dot(d) > 0:
		return first
	case b == 0 && hi.dot(d) > 0:
		return !first
	}
	return false
}

// chain joins strides to closed lines.
func chain(all []stride) [][]step {
	from := make(map[step][]int, len(all))
	for i := len(all) - 1; i >= 0; i-- {
		from[all[i].from] = append(from[all[i].from], i)
	}
	used := make([]bool, len(all))
	var out [][]step
	for i := range all {
		if used[i] {
			continue
		}
		var ring []step
		for k := i; k >= 0; {
			used[k] = true
			ring = append(ring, all[k].from)
			k = take(from, all[k].to, used)
		}
		out = append(out, ring)
	}
	return out
}

// take returns an unused stride from p, or -1.
func take(from map[step][]int, p step, used []bool) int {
	list := from[p]
	for len(list) > 0 {
		k := list[len(list)-1]
		list = list[:len(list)-1]
		if !used[k] {
			from[p] = list
			return k
		}
	}
	from[p] = list
	return -1
}
