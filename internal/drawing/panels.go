package drawing

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/units"
)

// panels draws each kind of panel of the form, one above the other, the base on top.
func panels(p *plan.Plan) Drawing {
	wide, high := 0.0, 0.0
	for _, x := range p.Form.Panels {
		wide, high = max(wide, x.Length.MM()), high+x.Width.MM()
	}
	n := len(p.Form.Panels)
	s := newSheet("panels", "Form panels, inside face up", "", wide, high, 4*n+2)
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	var bevels []string
	y := 0.0
	for _, x := range p.Form.Panels {
		l, w := x.Length.MM(), x.Width.MM()
		y -= w
		s.area(Board, 0, geom.Rect(0, y, l, y+w).Ring())
		text := []string{fmt.Sprintf("%s: cut %d", x.Name, x.Count), measure(x.Thickness) + " thick"}
		if x.Bevel != "" {
			bevels = append(bevels, x.Name+": bevel "+x.Bevel)
			inset := min(x.Thickness.MM(), l/4)
			s.line(Hidden, geom.Point{X: inset, Y: y}, geom.Point{X: inset, Y: y + w})
			s.line(Hidden, geom.Point{X: l - inset, Y: y}, geom.Point{X: l - inset, Y: y + w})
		}
		for i, t := range text {
			s.text(geom.Point{X: l / 2, Y: y + w/2 + (0.8*float64(len(text))-1.3-1.6*float64(i))*s.size}, "middle", t)
		}
		s.dim(geom.Point{X: 0, Y: y + w}, geom.Point{X: l, Y: y + w}, 1.2, measure(x.Length))
		s.dim(geom.Point{X: 0, Y: y}, geom.Point{X: 0, Y: y + w}, 1.2, measure(x.Width))
		y -= 4.6 * s.size
	}
	s.notes(0, append(bevels, "the sides stand outside the base and cover its edge", unitNote(p.Piece.Units))...)
	return s.done()
}
