package geom

import "slices"

// pinches returns the necks that an opening does not show: where walls pass each
// other so sharply that discs of the asked width on both sides overlap in between.
// They are the chords, straight across at both ends and shorter than width, that
// have core, the places where a disc fits, within half a width on both sides.
func pinches(r Region, walls *Locator, core Region, width float64) []Narrow {
	centres := NewLocator(core)
	var found []Narrow
	for _, ring := range r.Rings() {
		for i, v := range ring {
			a, b := v.Sub(ring[(i+len(ring)-1)%len(ring)]), ring[(i+1)%len(ring)].Sub(v)
			if a.Cross(b) >= 0 {
				continue // the region's corner is blunt: walls come no nearer here than beside it
			}
			if n, ok := chord(v, leftOf(a), leftOf(b), walls, width); ok && between(n, v, centres, width/2+3*narrowTol) {
				found = append(found, n)
			}
		}
	}
	return apart(found, width)
}

func leftOf(p Point) Point { return Point{-p.Y, p.X} }

// chord returns the shortest way from the corner v across to another side, leaving v
// between the normals from and to of its sides, if shorter than width and clear.
func chord(v, from, to Point, walls *Locator, width float64) (Narrow, bool) {
	best, at := width, Point{}
	walls.visit(v, width, func(s segment) {
		q := nearestOn(v, s.a, s.b)
		d := q.Sub(v)
		if n := d.Norm(); n > 10*Grid && n < best && from.Cross(d) <= 0 && d.Cross(to) <= 0 {
			best, at = n, q
		}
	})
	mid := v.Add(at).Mul(0.5)
	if best >= width || !walls.Inside(mid) || walls.within(mid, best) < 0.49*best {
		return Narrow{}, false
	}
	return Narrow{At: mid, Width: best, Box: Box{mid, mid}.Union(Box{v, v}).Union(Box{at, at}), Joins: 2}, true
}

// between reports whether centres has sides within reach of n on both sides of the
// chord from v.
func between(n Narrow, v Point, centres *Locator, reach float64) bool {
	across := leftOf(n.At.Sub(v))
	var left, right bool
	centres.visit(n.At, reach, func(s segment) {
		d := nearestOn(n.At, s.a, s.b).Sub(n.At)
		if d.Norm() <= reach {
			left = left || d.Dot(across) > 0
			right = right || d.Dot(across) < 0
		}
	})
	return left && right
}

// apart keeps the narrowest of places nearer to each other than width.
func apart(all []Narrow, width float64) []Narrow {
	slices.SortStableFunc(all, func(a, b Narrow) int {
		switch {
		case a.Width < b.Width:
			return -1
		case a.Width > b.Width:
			return 1
		}
		return comparePoints(a.At, b.At)
	})
	var out []Narrow
	for _, n := range all {
		if !slices.ContainsFunc(out, func(o Narrow) bool { return o.At.Sub(n.At).Norm() < width }) {
			out = append(out, n)
		}
	}
	return out
}

// visit calls f for the sides in the cells within reach of p, some of them twice.
func (l *Locator) visit(p Point, reach float64, f func(segment)) {
	if len(l.sides) == 0 || l.outside(p) > reach {
		return
	}
	x0, y0, x1, y1 := l.span(Box{Point{p.X - reach, p.Y - reach}, Point{p.X + reach, p.Y + reach}})
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			for _, k := range l.cells[y*l.nx+x] {
				f(l.sides[k])
			}
		}
	}
}

// covers reports whether b grown by margin holds p.
func (b Box) covers(p Point, margin float64) bool {
	return p.X >= b.Min.X-margin && p.X <= b.Max.X+margin && p.Y >= b.Min.Y-margin && p.Y <= b.Max.Y+margin
}

// mergePlaces adds those of more that do not lie in a place of all already.
func mergePlaces(all, more []Narrow) []Narrow {
	for _, n := range more {
		if !slices.ContainsFunc(all, func(o Narrow) bool { return o.Box.covers(n.At, crumb) }) {
			all = append(all, n)
		}
	}
	return all
}
