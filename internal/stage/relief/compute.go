package relief

import (
	"fmt"

	"pourwright/internal/finding"
	"pourwright/internal/geom"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// Limits of what is worth a word.
const (
	sliverMM   = 0.02   // Chosen: a strip thinner than the grid and the chords leave
	bleedMM    = 10     // Chosen: outlines are drawn a few millimetres past the side they run off
	maxSought  = 40_000 // corners up to which narrow places are looked for
	simplifyMM = 0.1    // accuracy of narrow places
)

// Compute checks the steps against the box and each other and measures the layers.
// Steps without depth or area are left out with a finding. It does not change in.
func Compute(in Input) (Result, []finding.Finding) {
	c := &computer{in: in, box: geom.Rect(0, 0, in.Length.MM(), in.Width.MM())}
	r := Result{Layers: []Layer{}, Mouths: []Mouth{}, Fill: []FillPoint{}, Narrow: []Narrow{}}
	if !(in.Length > 0 && in.Width > 0) {
		return r, c.found
	}
	r.Layers = c.layers()
	if len(r.Layers) == 0 {
		return r, c.found
	}
	last := r.Layers[len(r.Layers)-1]
	r.Depth = last.To
	for _, l := range r.Layers {
		r.Volume += l.Volume
	}
	r.Fill = fill(r.Layers)
	r.Mouths = c.mouths(r.Layers)
	r.Narrow = c.narrow(r.Layers)
	if r.Depth+in.Shell >= in.Height {
		c.say(tooDeep.At(finding.Where{Element: last.Name}, "The basin is %.1f mm deep and the shell %.1f mm thick, and the piece is only %.1f mm high.", r.Depth, in.Shell, in.Height).
			Measured(float64(r.Depth+in.Shell), float64(in.Height), "mm"))
	}
	return r, c.found
}

type computer struct {
	in    Input
	box   geom.Box
	found []finding.Finding
}

func (c *computer) say(f finding.Finding) { c.found = append(c.found, f) }

func at(w finding.Where, p geom.Point) finding.Where {
	w.View, w.At = view.Finished{}.Name(), &[2]float64{p.X, p.Y}
	return w
}

// layers clips every step to the box and to the layer above.
func (c *computer) layers() []Layer {
	out := []Layer{}
	from := units.Length(0)
	box := view.Of[view.Finished](c.box.Region())
	above := box
	for i, s := range c.in.Steps {
		if !(s.Depth > 0) || s.Depth > 1e6 || s.Region.Empty() {
			c.say(noDepth.At(s.Where, "Step %d (%s) has %.2f mm of depth and %.0f mm2 of area, so it is left out.", i+1, s.Name, s.Depth, s.Region.Area()))
			continue
		}
		r := s.Region.Intersect(box)
		c.overrun(s, r)
		if r.Empty() {
			continue
		}
		if len(out) > 0 {
			c.undercut(s, r, out[len(out)-1])
			r = r.Intersect(above)
		}
		if r.Empty() {
			continue
		}
		l := Layer{Number: len(out) + 1, Name: s.Name, From: from, To: from + s.Depth, Region: r,
			Area: units.Area(r.Area()), Perimeter: units.Length(r.Shape().Perimeter())}
		l.Volume = l.Area.Times(s.Depth)
		for _, p := range r.Shape() {
			l.Islands += len(p.Holes)
		}
		if l.Name == "" {
			l.Name = fmt.Sprintf("layer %d", l.Number)
		}
		out, from, above = append(out, l), l.To, r
	}
	return out
}

// overrun says how far a step sticks out of the box.
func (c *computer) overrun(s Step, clipped view.Region[view.Finished]) {
	if clipped.Empty() {
		b := s.Region.Shape().Box()
		c.say(outside.At(at(s.Where, b.Center()), "The outline of step %s lies wholly outside the box, from x %.1f to %.1f, y %.1f to %.1f mm.", s.Name, b.Min.X, b.Max.X, b.Min.Y, b.Max.Y))
		return
	}
	b := s.Region.Shape().Box()
	far, p := 0.0, geom.Point{}
	for _, o := range []struct {
		by float64
		at geom.Point
	}{
		{-b.Min.X, geom.Point{X: 0, Y: b.Center().Y}}, {b.Max.X - c.box.Max.X, geom.Point{X: c.box.Max.X, Y: b.Center().Y}},
		{-b.Min.Y, geom.Point{X: b.Center().X, Y: 0}}, {b.Max.Y - c.box.Max.Y, geom.Point{X: b.Center().X, Y: c.box.Max.Y}},
	} {
		if o.by > far {
			far, p = o.by, o.at
		}
	}
	if far <= c.in.Tolerance.MM() {
		return
	}
	f := overrun.At(at(s.Where, p), "The outline of step %s runs %.1f mm past the side of the box and is cut off there.", s.Name, far).Measured(far, bleedMM, "mm")
	if far > bleedMM {
		f = f.As(finding.Caution).Do("Check the drawing's scale and place: an outline that runs off needs only a few millimetres of bleed.")
	}
	c.say(f)
}

// undercut says where r reaches out under the layer above.
func (c *computer) undercut(s Step, r view.Region[view.Finished], above Layer) {
	for _, p := range r.Subtract(above.Region).Shape() {
		area, rim := p.Area(), p.Outer.Perimeter()
		if area <= sliverMM*rim {
			continue
		}
		far, where := 0.0, p.Outer.Box().Center()
		for _, q := range p.Outer {
			if d := above.Region.Shape().Distance(q); d > far {
				far, where = d, q
			}
		}
		c.say(undercut.At(at(s.Where, where), "Step %s reaches out up to %.1f mm under %s, over %.0f mm2.", s.Name, far, above.Name, area).Measured(far, 0, "mm"))
	}
}

// fill returns the kinks of litres against depth, from the deepest floor up.
func fill(layers []Layer) []FillPoint {
	out := []FillPoint{{Area: layers[len(layers)-1].Area}}
	depth, volume := units.Length(0), units.Volume(0)
	for i := len(layers) - 1; i >= 0; i-- {
		l := layers[i]
		depth += l.To - l.From
		volume += l.Volume
		out = append(out, FillPoint{Depth: depth, Volume: volume, Area: l.Area})
	}
	return out
}
