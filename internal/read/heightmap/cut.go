package heightmap

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// A cut is the steps at one shift.
type cut struct {
	steps   []Step
	volume  float64 // mm3
	specks  int
	islands int
	dropped float64 // area of specks and islands, mm2
	empty   int     // first step that holds nothing, or -1
}

// cut makes the steps with levels shifted by s.
func (c *cutter) cut(s float64) cut {
	out := cut{steps: []Step{}, empty: -1}
	levels := c.levels(s)
	above := c.frame
	var from units.Length
	for i, region := range c.field.Contours(levels...) {
		t := c.opt.Thickness[i]
		region = out.clean(c.round(region), float64(c.opt.Speck))
		if i > 0 || c.padded {
			region = out.clean(geom.Intersect(region, above), float64(c.opt.Speck))
		}
		if len(region) == 0 {
			out.empty = i
			break
		}
		out.steps = append(out.steps, Step{From: from, To: from + t, Level: units.Length(levels[i]), Region: region})
		out.volume += region.Area() * float64(t)
		above, from = region, from+t
	}
	return out
}

// round rounds the outlines of r to the cutter radius: closing rounds the inner
// corners, opening the outer ones and takes away what is thinner than the cutter.
func (c *cutter) round(r geom.Region) geom.Region {
	radius, tol := float64(c.opt.Smooth), float64(c.opt.Tolerance)
	r = r.Simplify(tol / 2)
	if radius == 0 || len(r) == 0 {
		return r
	}
	r = geom.Offset(r, radius, tol/2)
	r = geom.Offset(r, -2*radius, tol/2)
	return geom.Offset(r, radius, tol/2)
}

// clean drops polygons and fills holes below area, and counts them.
func (c *cut) clean(r geom.Region, area float64) geom.Region {
	out := geom.Region{}
	for _, p := range r {
		if a := p.Area(); a < area {
			c.specks++
			c.dropped += a
			continue
		}
		q := geom.Polygon{Outer: p.Outer}
		for _, h := range p.Holes {
			if a := math.Abs(h.Area()); a < area {
				c.islands++
				c.dropped += a
				continue
			}
			q.Holes = append(q.Holes, h)
		}
		out = append(out, q)
	}
	return out
}

// findings says what the cut kept and dropped.
func (c *cutter) findings(where finding.Where, best cut, r Report) []finding.Finding {
	var found []finding.Finding
	var total units.Length
	for _, t := range c.opt.Thickness {
		total += t
	}
	if d := units.Length(c.depth); d > total*(1+1e-9) {
		found = append(found, tooDeep.At(where, "The map is %.1f mm deep, the steps %.1f mm: what lies deeper ends on the last step.", float64(d), float64(total)).
			Measured(float64(d), float64(total), "mm"))
	}
	if best.empty >= 0 {
		from, to := c.ends(best.empty)
		found = append(found, emptyStep.At(where, "Step %d, from %.1f to %.1f mm, holds nothing, nor does any below it: the map is %.1f mm deep.",
			best.empty+1, from, to, c.depth))
	}
	if r.Specks+r.Islands > 0 {
		found = append(found, speck.At(where, "%s below %.0f mm2 were dropped, %.0f mm2 in all.", spots(r), float64(c.opt.Speck), float64(r.Dropped)).
			Measured(float64(r.Dropped), float64(c.opt.Speck), "mm2"))
	}
	if c.target <= 0 {
		return append(found, flat.At(where, "The map holds no volume below the show face."))
	}
	return append(found, kept(where, r))
}

func (c *cutter) ends(step int) (from, to float64) {
	for _, t := range c.opt.Thickness[:step+1] {
		from, to = to, to+float64(t)
	}
	return from, to
}

func spots(r Report) string {
	switch {
	case r.Islands == 0:
		return units.Count(r.Specks, "spot", "spots")
	case r.Specks == 0:
		return units.Count(r.Islands, "island", "islands")
	}
	return units.Count(r.Specks, "spot", "spots") + " and " + units.Count(r.Islands, "island", "islands")
}

// kept says how well the volume is kept, as a caution beyond the limit.
func kept(where finding.Where, r Report) finding.Finding {
	percent := 100 * float64(r.Error)
	f := volume.At(where, "The steps hold %.3f l, the map %.3f l: %+.2f %%.", float64(r.StackVolume), float64(r.MapVolume), percent).
		Measured(percent, 100*keepLimit, "%")
	if math.Abs(float64(r.Error)) > keepLimit {
		return f.As(finding.Caution)
	}
	return f
}
