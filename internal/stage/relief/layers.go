package relief

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// bleedMM is how far outlines are drawn past the side they run off without a doubt
// about the drawing's scale. Chosen.
const bleedMM = 10

// layers clips every step to the box and to the layer above.
func (c *computer) layers() []Layer {
	out := []Layer{}
	for i, s := range c.in.Steps {
		if !(s.Depth > 0 && s.Depth < maxMM) || s.Region.Empty() {
			c.say(noDepth.At(s.Where, "Step %d (%s) has %.2f mm of depth and %.0f mm2 of area, so it is left out.", i+1, s.Name, s.Depth, s.Region.Area()))
			continue
		}
		r := c.clip(s)
		if len(out) > 0 && !r.Empty() {
			r = c.under(s, r, out[len(out)-1])
		}
		if !r.Empty() {
			out = append(out, layer(s, r, out))
		}
	}
	return out
}

// layer measures r as the next layer under those above.
func layer(s Step, r view.Region[view.Finished], above []Layer) Layer {
	l := Layer{Number: len(above) + 1, Name: s.Name, Region: r, Area: units.Area(r.Area()), Perimeter: units.Length(r.Shape().Perimeter())}
	if n := len(above); n > 0 {
		l.From = above[n-1].To
	}
	l.To = l.From + s.Depth
	l.Volume = l.Area.Times(s.Depth)
	for _, p := range r.Shape() {
		l.Islands += len(p.Holes)
	}
	if l.Name == "" {
		l.Name = fmt.Sprintf("layer %d", l.Number)
	}
	return l
}

// clip cuts the step at the box and says how far it sticks out.
func (c *computer) clip(s Step) view.Region[view.Finished] {
	far, p := c.sticksOut(s.Region.Shape())
	if far <= 0 {
		return s.Region
	}
	r := s.Region.Intersect(view.Of[view.Finished](c.box.Region()))
	switch {
	case r.Empty():
		b := s.Region.Shape().Box()
		c.say(outside.At(at(s.Where, b.Center()), "The outline of step %s lies wholly outside the box, from x %.1f to %.1f, y %.1f to %.1f mm.", s.Name, b.Min.X, b.Max.X, b.Min.Y, b.Max.Y))
	case far > c.in.Tolerance.MM():
		f := overrun.At(at(s.Where, p), "The outline of step %s runs %.1f mm past the side of the box and is cut off there.", s.Name, far).Measured(far, bleedMM, "mm")
		if far > bleedMM {
			f = f.As(finding.Caution).Do("Check the drawing's scale and place: an outline that runs off needs only a few millimetres of bleed.")
		}
		c.say(f)
	}
	return r
}

// sticksOut returns how far r reaches past the sides of the box, mm, and the point of
// the side it passes there.
func (c *computer) sticksOut(r geom.Region) (float64, geom.Point) {
	far, at := 0.0, geom.Point{}
	for _, p := range r {
		for _, q := range p.Outer {
			on := geom.Point{X: min(max(q.X, 0), c.box.Max.X), Y: min(max(q.Y, 0), c.box.Max.Y)}
			if d := max(q.X-on.X, on.X-q.X, q.Y-on.Y, on.Y-q.Y); d > far {
				far, at = d, on
			}
		}
	}
	return far, at
}
