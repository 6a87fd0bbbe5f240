package knockout

import (
	"math"

	"pourwright/internal/geom"
)

// Chosen: a hollow smaller than this yields no foam worth the cutting.
const leastHollowMM = 60

// hollows returns what is cut from the middle of each part: what the layer above
// covers with the glue land to spare, as far from the part's own edges and from the
// seams above, its corners round for the cutter. The list runs beside the parts.
func (c *computer) hollows() []geom.Region {
	out := make([]geom.Region, len(c.r.Parts))
	if !c.in.Making.Hollow {
		return out
	}
	land := c.in.Making.Land.MM()
	for i, p := range c.r.Parts {
		n := c.index(p.Layer) + 1
		if n <= 0 || n >= len(c.blocks) {
			continue
		}
		h := geom.Intersect(geom.Offset(c.blocks[n].course.shape, -land, 0.1), geom.Offset(p.Outline.Shape(), -land, 0.1))
		for _, j := range c.blocks[n].joints {
			h = geom.Subtract(h, band(j.a, j.b, land/2))
		}
		r := math.Max(10, c.in.Machine.Cutter.MM())
		h = geom.Offset(geom.Offset(h, -math.Max(r, leastHollowMM/2), 0.1), math.Max(r, leastHollowMM/2), 0.1)
		for _, q := range h {
			if b := q.Outer.Box(); len(q.Holes) == 0 && math.Min(b.Width(), b.Height()) >= leastHollowMM {
				out[i] = append(out[i], q)
			}
		}
	}
	return out
}

// index returns the place of a layer by its number, -1 for none.
func (c *computer) index(number int) int {
	for i, b := range c.blocks {
		if b.course.layer.Number == number {
			return i
		}
	}
	return -1
}

// band returns the rectangle of half width w round ab.
func band(a, b geom.Point, w float64) geom.Region {
	u := b.Sub(a).Mul(w / math.Max(b.Sub(a).Norm(), geom.Grid))
	v := geom.Point{X: -u.Y, Y: u.X}
	return geom.Build([]geom.Ring{{a.Sub(u).Sub(v), b.Add(u).Sub(v), b.Add(u).Add(v), a.Sub(u).Add(v)}}, geom.NonZero)
}
