package knockout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// glue says how the parts go together: from the largest outline, which lies on the
// form's base, up; in a layer from the largest part down, each beside one that lies.
func (c *computer) glue() {
	for i, b := range c.blocks {
		m := GlueMap{Layer: b.course.layer.Number, Order: c.order(i), Checks: []Check{}}
		for n, j := range b.joints {
			m.Checks = append(m.Checks, c.check(i, n, j)...)
		}
		c.r.Maps = append(c.r.Maps, m)
		c.r.Glue = append(c.r.Glue, m.Order...)
	}
}

// order returns the parts of the i-th layer, the largest first and those beside one
// that lies already before others.
func (c *computer) order(i int) []string {
	end := len(c.r.Parts)
	if i+1 < len(c.first) {
		end = c.first[i+1]
	}
	left := slices.Clone(c.r.Parts[c.first[i]:end])
	slices.SortStableFunc(left, func(a, b Part) int { return cmp.Compare(b.Area, a.Area) })
	out := []string{}
	for len(left) > 0 {
		k := max(0, slices.IndexFunc(left, func(p Part) bool {
			return slices.ContainsFunc(p.Neighbours, func(n Neighbour) bool { return n.Where == "beside" && slices.Contains(out, n.Part) })
		}))
		out = append(out, left[k].ID)
		left = slices.Delete(left, k, k+1)
	}
	return out
}

// check returns the dimensions to measure across a joint: between the nearest dowel
// holes on both sides, where there are any, and over both parts at right angles to it.
func (c *computer) check(i, n int, j joint) []Check {
	l, r := c.r.Parts[c.first[i]+c.rank[i][j.left]], c.r.Parts[c.first[i]+c.rank[i][j.right]]
	name := fmt.Sprintf("L%d-S%d", c.blocks[i].course.layer.Number, n+1)
	out := []Check{}
	if a, b, ok := nearHoles(l, r, j); ok {
		out = append(out, measured(name+" holes", l, r, a, b))
	}
	u := j.b.Sub(j.a).Mul(1 / j.length())
	a, b := furthest(l, geom.Point{X: -u.Y, Y: u.X}), furthest(r, geom.Point{X: u.Y, Y: -u.X})
	return append(out, measured(name+" over all", l, r, a, b))
}

func measured(name string, l, r Part, a, b geom.Point) Check {
	return Check{Name: name, Parts: []string{l.ID, r.ID}, From: a, To: b, Length: units.Length(math.Round(b.Sub(a).Norm()*10) / 10)}
}

// nearHoles returns the dowel holes of both parts nearest to the joint.
func nearHoles(l, r Part, j joint) (a, b geom.Point, ok bool) {
	near := func(p Part) (best geom.Point, ok bool) {
		least := math.Inf(1)
		for _, d := range p.Dowels {
			at := geom.Point{X: d.X.MM(), Y: d.Y.MM()}
			if n := distanceTo(at, j.a, j.b); n < least {
				best, least = at, n
			}
		}
		return best, !math.IsInf(least, 1)
	}
	a, okA := near(l)
	b, okB := near(r)
	return a, b, okA && okB
}

// furthest returns the corner of p furthest along dir.
func furthest(p Part, dir geom.Point) geom.Point {
	best, most := geom.Point{}, math.Inf(-1)
	for _, q := range p.Outline.Shape().Rings()[0] {
		if d := q.Dot(dir); d > most {
			best, most = q, d
		}
	}
	return best
}
