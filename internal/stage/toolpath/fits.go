package toolpath

import (
	"math"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// Chosen.
const (
	slackMM     = 0.02 // what rounding and flattening may put over an edge
	strayMM2    = 0.05 // an overlap smaller than this is rounding
	channelsMax = 4    // said for one part
	cornerShare = 1.3  // times r^2: what a corner of 45 degrees leaves is 1.24 r^2
)

func lengthOf(mm float64) units.Length { return units.Length(mm) }

// partsFit reports whether every part has an outline, lies on the sheet, and is not
// cut into by its neighbours' paths.
func (c *computer) partsFit(s Sheet) bool {
	ok := true
	for _, p := range s.Parts {
		shape := p.Region.Shape()
		where := finding.Where{Element: p.ID}
		if len(shape) == 0 || !finite(shape) || !(shape.Area() > 0) {
			c.say(emptyPart.At(where, "Part %s on %s has no outline that can be cut.", p.ID, s.Name))
			ok = false
			continue
		}
		if over := c.over(s, shape); over > strayMM2 {
			c.say(offSheet.At(where, "%.0f mm2 of part %s lies off %s.", math.Max(1, over), p.ID, s.Name))
			ok = false
		}
	}
	return ok && c.apart(s)
}

// over returns the area of shape that lies off the sheet, mm2.
func (c *computer) over(s Sheet, shape geom.Region) float64 {
	if len(s.Outline) >= 3 {
		stock := geom.Build([]geom.Ring{s.Outline}, geom.NonZero)
		return geom.Subtract(shape, geom.Offset(stock, slackMM, slackMM/4)).Area()
	}
	b := shape.Box()
	if b.Min.X >= -slackMM && b.Min.Y >= -slackMM && b.Max.X <= s.SizeX.MM()+slackMM && b.Max.Y <= s.SizeY.MM()+slackMM {
		return 0
	}
	return geom.Subtract(shape, geom.Rect(0, 0, s.SizeX.MM(), s.SizeY.MM()).Region()).Area()
}

// apart reports whether the cutter, on its way round each part, leaves the others
// whole.
func (c *computer) apart(s Sheet) bool {
	ok := true
	d := c.m.Cutter.MM() - slackMM
	swept := make([]geom.Region, len(s.Parts))
	for i, p := range s.Parts {
		box := grown(p.Region.Shape().Box(), d)
		for j := range i {
			q := s.Parts[j]
			if !meet(box, q.Region.Shape().Box()) {
				continue
			}
			if swept[i] == nil {
				swept[i] = geom.Offset(p.Region.Shape(), d, flattenMM)
			}
			cut := geom.Intersect(swept[i], q.Region.Shape())
			if cut.Area() <= strayMM2 {
				continue
			}
			at := cut.Box().Center()
			c.say(tooClose.At(spot(p.ID, at), "Parts %s and %s on %s lie closer than the cutter is wide, %.2f mm: cutting one cuts into the other.",
				q.ID, p.ID, s.Name, c.m.Cutter))
			ok = false
		}
	}
	return ok
}

func grown(b geom.Box, d float64) geom.Box {
	return geom.Rect(b.Min.X-d, b.Min.Y-d, b.Max.X+d, b.Max.Y+d)
}

func meet(a, b geom.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

// spot is a place on the sheet.
func spot(element string, at geom.Point) finding.Where {
	return finding.Where{Element: element, View: "form", At: &[2]float64{at.X, at.Y}}
}

// reaches reports whether the machine reaches all of the program.
func (c *computer) reaches(s Sheet, loops []loop) bool {
	b, where := boxOf(loops), finding.Where{Element: s.Name}
	if b.Min.X < -slackMM || b.Min.Y < -slackMM {
		c.say(beside.At(where, "On %s the cutter's centre goes %.1f mm beyond the sheet's left edge and %.1f mm beyond its lower one.",
			s.Name, math.Max(0, -b.Min.X), math.Max(0, -b.Min.Y)))
	}
	w, h := b.Max.X-math.Min(0, b.Min.X), b.Max.Y-math.Min(0, b.Min.Y)
	if c.m.BedX > 0 && w > c.m.BedX.MM()+slackMM || c.m.BedY > 0 && h > c.m.BedY.MM()+slackMM {
		c.say(offBed.At(where, "The cutter needs %.1f x %.1f mm for %s and the bed gives %.1f x %.1f mm: no program is written.",
			w, h, s.Name, c.m.BedX, c.m.BedY).Measured(math.Max(w, h), math.Max(c.m.BedX.MM(), c.m.BedY.MM()), "mm"))
		return false
	}
	return true
}

func boxOf(loops []loop) geom.Box {
	b := geom.EmptyBox()
	for _, l := range loops {
		if l.drilled() {
			b = b.Union(geom.Box{Min: l.at, Max: l.at})
		} else {
			b = b.Union(l.path.box())
		}
	}
	return b
}

// sayChannels locates where a part keeps foam that the cutter cannot take away:
//
//	left = closing of the part by the cutter's radius, less the part
//
// Corners, of which a round cutter always leaves something, are not said.
func (c *computer) sayChannels(s Sheet) {
	r := c.m.Cutter.MM() / 2
	for _, p := range s.Parts {
		shape := p.Region.Shape()
		said, more, area := 0, 0, 0.0
		for _, q := range left(shape, r) {
			if said == channelsMax {
				more, area = more+1, area+q.Area()
				continue
			}
			said++
			at, wide := geom.Region{q}.Pole(0.05)
			c.say(channel.At(spot(p.ID, at), "The cutter, %.2f mm, does not enter a channel or hole of part %s on %s: %.0f mm2 of foam up to %.1f mm wide stay there.",
				c.m.Cutter, p.ID, s.Name, q.Area(), 2*wide).Measured(2*wide, c.m.Cutter.MM(), "mm"))
		}
		if more > 0 {
			c.say(channel.At(finding.Where{Element: p.ID}, "In %d more places of part %s foam stays, %.0f mm2 together.", more, p.ID, area))
		}
	}
}

// left returns the foam outside shape that a disc of radius r cannot reach, but for
// corners and for holes that are drilled.
func left(shape geom.Region, r float64) geom.Region {
	tol := math.Min(0.02, r/10)
	closed := geom.Offset(geom.Offset(shape, r, tol), -r, tol)
	var out geom.Region
	for _, q := range geom.Subtract(closed, shape) {
		if q.Area() <= cornerShare*r*r {
			continue
		}
		if _, wide := (geom.Region{q}).Pole(0.02); wide < r-drillMM/2 {
			out = append(out, q)
		}
	}
	return out
}
