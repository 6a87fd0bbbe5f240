package drawing

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/stage/knockout"
	"pourwright/internal/units"
)

// partLabel writes a part's id with its mark at at, and an arrow below it along the
// direction towards the near side of the form; room is how far the part reaches round
// the place, mm.
func (s *sheet) partLabel(at geom.Point, id, mark string, near geom.Point, room float64) {
	s.text(at.Add(geom.Point{Y: 0.1 * s.size}), "middle", id)
	if room > 2*s.size && mark != "" {
		s.text(at.Sub(geom.Point{Y: 1.2 * s.size}), "middle", mark)
	}
	if room < 1.6*s.size {
		return
	}
	from := at.Add(near.Mul(0.4 * s.size)).Add(geom.Point{X: s.widthOf(id)/2 + 0.9*s.size})
	s.arrow(from.Sub(near.Mul(1.1*s.size)), from.Add(near.Mul(0.7*s.size)))
}

// arrow draws an arrow from a to b.
func (s *sheet) arrow(a, b geom.Point) {
	v := b.Sub(a)
	u := v.Mul(1 / math.Max(v.Norm(), 1e-9))
	side := geom.Point{X: -u.Y, Y: u.X}
	head := 0.5 * s.size
	s.line(Outline, a, b)
	s.line(Outline, b.Sub(u.Mul(head)).Add(side.Mul(head/2)), b, b.Sub(u.Mul(head)).Sub(side.Mul(head/2)))
}

// nearSide is the direction to the near side of the form in form view.
var nearSide = geom.Point{Y: -1}

// turnedBy returns p turned by degrees counter-clockwise.
func turnedBy(p geom.Point, degrees float64) geom.Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return geom.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
}

// roomAt returns how far at lies inside r, mm.
func roomAt(r geom.Region, at geom.Point) float64 { return math.Max(0, -r.Distance(at)) }

// seamNames writes the ids of seams beside their upper ends, outside the foam.
func (s *sheet) seamNames(seams []knockout.Seam, layer int) {
	for _, m := range seams {
		if m.Layer != layer || len(m.Curve) < 2 {
			continue
		}
		a, b := m.Curve[0], m.Curve[len(m.Curve)-1]
		if b.Y > a.Y {
			a, b = b, a
		}
		u := a.Sub(b)
		u = u.Mul(1 / math.Max(u.Norm(), 1e-9))
		s.line(Thin, a, a.Add(u.Mul(1.6*s.size)))
		s.text(a.Add(u.Mul(1.9*s.size)), "middle", m.ID)
	}
}

// seamLines says each seam of a layer in one line of notes.
func seamLines(seams []knockout.Seam, layer int, measure func(units.Length) string) []string {
	var out []string
	for _, m := range seams {
		if m.Layer != layer {
			continue
		}
		line := fmt.Sprintf("%s  %s, %s long, %s shows", m.ID, m.Kind, measure(m.Length), measure(m.Visible))
		for _, g := range m.Staggers {
			line += fmt.Sprintf(", %s from layer %d's", measure(g.Distance), g.Layer)
		}
		out = append(out, line)
	}
	return out
}
