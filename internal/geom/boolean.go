package geom

// Build resolves rings that may cross, touch, nest or repeat into a region by
// rule: every point of the plane is in or out by its winding number. Points that
// are not finite, or further than 1e7 mm from the origin, are left out.
func Build(rings []Ring, rule FillRule) Region {
	var edges []edge
	for _, r := range rings {
		edges = addRing(edges, r, 0)
	}
	return resolve(edges, func(w [operands]int32) bool { return rule.covers(w[0]) })
}

// covers reports whether a point of winding number w is in by rule.
func (rule FillRule) covers(w int32) bool {
	switch rule {
	case EvenOdd:
		return w&1 != 0
	case Positive:
		return w > 0
	}
	return w != 0
}

func resolve(edges []edge, in inRule) Region {
	edges, _ = split(edges)
	return trace(sweep(edges, in))
}

// Union returns the points in any of rs.
func Union(rs ...Region) Region {
	var edges []edge
	for _, r := range rs {
		edges = addRegion(edges, r, 0)
	}
	return resolve(edges, func(w [operands]int32) bool { return w[0] > 0 })
}

func addRegion(edges []edge, r Region, k int) []edge {
	for _, p := range r {
		edges = addRing(edges, p.Outer, k)
		for _, h := range p.Holes {
			edges = addRing(edges, h, k)
		}
	}
	return edges
}

func combine(a, b Region, in inRule) Region {
	return resolve(addRegion(addRegion(nil, a, 0), b, 1), in)
}

// Intersect returns the points in both a and b.
func Intersect(a, b Region) Region {
	return combine(a, b, func(w [operands]int32) bool { return w[0] > 0 && w[1] > 0 })
}

// Subtract returns the points in a and not in b.
func Subtract(a, b Region) Region {
	return combine(a, b, func(w [operands]int32) bool { return w[0] > 0 && w[1] <= 0 })
}

// Xor returns the points in just one of a and b.
func Xor(a, b Region) Region {
	return combine(a, b, func(w [operands]int32) bool { return (w[0] > 0) != (w[1] > 0) })
}
