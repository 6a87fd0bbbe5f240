package nest

import "pourwright/internal/geom"

// Chosen: two pieces may share what half a grid step of rounding on each side of a common
// border makes, and as much may hang over the edge of the sheet.
const sliver = 2 * geom.Grid

// faults tells which things of a bin overlap an earlier one or hang over the edge of the
// sheet, by exact booleans of their outlines.
func (s *solver) faults(b *bin) []bool {
	out := make([]bool, len(b.things))
	placed := make([]geom.Region, len(b.things))
	g := &s.stock[b.kind]
	outline := s.p.Sheets[b.kind].Outline.Map(func(p geom.Point) geom.Point { return p.Sub(g.corner) }, false)
	for i, t := range b.things {
		p := t.poses[b.spread.pose[i]]
		placed[i] = s.cat.shapes[p.shape].region(b.spread.x[i], b.spread.y[i])
		bare := s.cat.shapes[p.bare].region(b.spread.x[i], b.spread.y[i])
		out[i] = geom.Subtract(bare, outline).Area() > sliver*bare.Perimeter()
		for j := 0; j < i && !out[i]; j++ {
			out[i] = !out[j] && overlap(placed[i], placed[j])
		}
	}
	return out
}

func overlap(a, b geom.Region) bool {
	p, q := a.Box(), b.Box()
	if p.Max.X <= q.Min.X || q.Max.X <= p.Min.X || p.Max.Y <= q.Min.Y || q.Max.Y <= p.Min.Y {
		return false
	}
	return geom.Intersect(a, b).Area() > sliver*min(a.Perimeter(), b.Perimeter())
}

// region returns the shape at a place.
func (s *shape) region(x, y float64) geom.Region {
	at := geom.Point{X: x, Y: y}
	p := geom.Polygon{}
	for i, r := range s.rings {
		ring := ringOf(r).Map(func(q geom.Point) geom.Point { return q.Add(at) })
		if i == 0 {
			p.Outer = ring
		} else {
			p.Holes = append(p.Holes, ring)
		}
	}
	return geom.Region{p}
}
