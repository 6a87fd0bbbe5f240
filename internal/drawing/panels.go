package drawing

import (
	"fmt"
	"math"
	"strings"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/form"
	"pourwright/internal/units"
)

// panels draws each kind of panel of the form, one above the other, the base on top.
func panels(p *plan.Plan) Drawing {
	wide, high := 0.0, 0.0
	for _, x := range p.Form.Panels {
		wide, high = max(wide, x.Length.MM()), high+x.Width.MM()
	}
	n := len(p.Form.Panels) + 1
	s := newSheet("panels", "Form panels, inside face up", "", wide, high, 4*n+2)
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	var bevels []string
	y := 0.0
	for _, x := range p.Form.Panels {
		l, w := x.Length.MM(), x.Width.MM()
		y -= w
		shape := geom.Rect(0, 0, l, w).Ring()
		if len(x.Outline) > 0 {
			shape = x.Outline
		}
		s.area(Board, 0, shape.Map(func(q geom.Point) geom.Point { return geom.Point{X: q.X, Y: q.Y + y} }))
		s.screwLines(x, y)
		text := []string{strings.Join(x.Marks, ", "), fmt.Sprintf("%s: cut %d", x.Name, x.Count), measure(x.Thickness) + " thick"}
		if x.Bevel != "" {
			bevels = append(bevels, x.Name+": bevel "+x.Bevel)
			for i, a := range x.Tilts {
				if inset := min(x.Thickness.MM()*math.Tan(float64(a)*math.Pi/180), l/4); inset > 0 {
					at := []float64{inset, l - inset}[i]
					s.line(Hidden, geom.Point{X: at, Y: y}, geom.Point{X: at, Y: y + w})
				}
			}
		}
		for i, t := range text {
			s.text(geom.Point{X: l / 2, Y: y + w/2 + (0.8*float64(len(text))-1.3-1.6*float64(i))*s.size}, "middle", t)
		}
		s.dim(geom.Point{X: 0, Y: y + w}, geom.Point{X: l, Y: y + w}, 1.2, measure(x.Length))
		s.dim(geom.Point{X: 0, Y: y}, geom.Point{X: 0, Y: y + w}, 1.2, measure(x.Width))
		y -= 4.6 * s.size
	}
	s.notes(0, append(bevels, seatNote(p.Form.Seat), "crosses: screws from outside, the first 40 mm from a corner, pilot holes", unitNote(p.Piece.Units))...)
	return s.done()
}

// screwLines marks the screws of a panel drawn with its lower edge at y.
func (s *sheet) screwLines(x form.Panel, y float64) {
	for _, k := range x.Lines {
		a, b := geom.Point{X: k.X0.MM(), Y: k.Y0.MM() + y}, geom.Point{X: k.X1.MM(), Y: k.Y1.MM() + y}
		s.line(Centre, a, b)
		for i := range k.Count {
			at := a
			if k.Count > 1 {
				at = a.Add(b.Sub(a).Mul(float64(i) / float64(k.Count-1)))
			}
			r := 0.35 * s.size
			s.line(Thin, geom.Point{X: at.X - r, Y: at.Y - r}, geom.Point{X: at.X + r, Y: at.Y + r})
			s.line(Thin, geom.Point{X: at.X - r, Y: at.Y + r}, geom.Point{X: at.X + r, Y: at.Y - r})
		}
	}
}

// seatNote says where the sides stand.
func seatNote(seat string) string {
	if seat == "on" {
		return "the sides stand on the base"
	}
	return "the sides stand outside the base and cover its edge"
}
