package drawing

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/base"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// basePlan draws carcass, supports and inserts as they stand under the piece.
func basePlan(p *plan.Plan) []Drawing {
	b := p.Base
	if !b.Wanted && len(b.Supports) == 0 && len(p.Form.Inserts) == 0 {
		return nil
	}
	return []Drawing{under(p, false), under(p, true)}
}

// under draws the supports in one view: FORM VIEW exchanges left and right.
func under(p *plan.Plan, formView bool) Drawing {
	l, w, t := p.Piece.Length.MM(), p.Piece.Width.MM(), p.Piece.Shell.MM()
	name, title := view.Finished{}.Name(), "Supports, base and inserts"
	if formView {
		name = view.Form{}.Name()
	}
	turn := func(q geom.Point) geom.Point {
		if formView {
			q.X = l - q.X
		}
		return q
	}
	rect := func(x0, y0, x1, y1 float64) geom.Ring { return geom.Rect(x0, y0, x1, y1).Ring().Map(turn) }
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	s := newSheet("under-"+name, title, name, l, w, 6+len(p.Form.Inserts)+2*len(p.Base.Supports))
	s.edge(Outline, rect(0, 0, l, w))
	s.edge(Thin, rect(t, t, l-t, w-t))
	if p.Base.Wanted {
		s.edge(Hidden, geom.Ring(p.Base.Feet).Map(turn))
	}
	var lines []string
	places := []float64{0}
	for _, x := range p.Base.Supports {
		half := x.Side.MM() / 2
		for _, at := range x.At {
			s.area(Board, 0.8, rect(at.MM()-half, (w-x.Length.MM())/2, at.MM()+half, (w+x.Length.MM())/2))
			places = append(places, turn(geom.Point{X: at.MM()}).X)
			for _, h := range x.Holes {
				if h.Face == "lower" {
					s.cross(turn(geom.Point{X: at.MM(), Y: (w-x.Length.MM())/2 + h.At.MM()}), h.Diameter.MM())
				}
			}
		}
		lines = append(lines, tubeLine(p, x))
	}
	for _, x := range p.Form.Inserts {
		at := turn(geom.Point{X: x.X.MM(), Y: x.Y.MM()})
		s.spot(Outline, at, x.Diameter.MM()/2, x.Name)
		lines = append(lines, fmt.Sprintf("%s (%s): x %s, y %s; form view x %s, y %s; cover %s, to the edge %s", x.Name, x.Kind, measure(x.X), measure(x.Y), measure(x.FormX), measure(x.FormY), measure(x.Cover), measure(x.EdgeCover)))
	}
	s.along(append(places, l), w, func(v float64) string { return measure(units.Length(v)) })
	if p.Base.Wanted {
		lines = append(lines, fmt.Sprintf("dashed: carcass %s x %s, %s high; the shell's foot hangs %s over the floor", measure(p.Base.Length), measure(p.Base.Width), measure(p.Base.Height), measure(p.Base.Reveal)))
	}
	s.notes(0, append(lines, unitNote(p.Piece.Units))...)
	return s.done()
}

// along measures the stretches between sorted places on the far side.
func (s *sheet) along(places []float64, y float64, text func(float64) string) {
	sorted := append([]float64{}, places...)
	for i := range sorted {
		for k := i; k > 0 && sorted[k] < sorted[k-1]; k-- {
			sorted[k], sorted[k-1] = sorted[k-1], sorted[k]
		}
	}
	s.chain(func(x float64) geom.Point { return geom.Point{X: x, Y: y} }, sorted, dimGap, text)
}

// cross marks a hole.
func (s *sheet) cross(at geom.Point, d float64) {
	r := max(d, 0.8*s.size)
	s.line(Outline, geom.Point{X: at.X - r, Y: at.Y}, geom.Point{X: at.X + r, Y: at.Y})
	s.line(Outline, geom.Point{X: at.X, Y: at.Y - r}, geom.Point{X: at.X, Y: at.Y + r})
}

func tubeLine(p *plan.Plan, x base.Tube) string {
	line := fmt.Sprintf("%d x %s, %s, %s long", x.Count, x.Name, x.Tube, Measure(x.Length, p.Piece.Units))
	if len(x.Holes) > 1 {
		line += fmt.Sprintf("; %s from each end: %s below (through), %s above (access)", Measure(x.Holes[0].At, p.Piece.Units), Measure(x.Holes[0].Diameter, p.Piece.Units), Measure(x.Holes[1].Diameter, p.Piece.Units))
	}
	return line
}
