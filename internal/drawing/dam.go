package drawing

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/form"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// dams draws every dam's board with the opening on it, at full size in the drawing's
// millimetres: as it stands in use, seen from outside, and the same turned over, as
// the piece stands in the form.
func dams(p *plan.Plan) []Drawing {
	out := []Drawing{}
	for _, d := range p.Form.Dams {
		out = append(out, dam(p, d, view.Finished{}.Name()), dam(p, d, view.Form{}.Name()))
	}
	return out
}

func dam(p *plan.Plan, d form.Dam, viewName string) Drawing {
	side, rising := seenFromOutside(p, d.Side)
	l, h := d.Length.MM(), d.Height.MM()
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	text := func(v float64) string { return measure(units.Length(v)) }
	place := func(q geom.Point) geom.Point { // along the side and depth as negative height, to the board's corner
		x := q.X - d.From.MM()
		if !rising {
			x = side - q.X - (side - d.From.MM() - l)
		}
		out := geom.Point{X: x, Y: h - d.Top.MM() + q.Y}
		if viewName == (view.Form{}).Name() {
			out = geom.Point{X: l - out.X, Y: h - out.Y}
		}
		return out
	}
	lines := damLines(p, d)
	s := newSheet("dam-"+fileWord(d.Mark)+"-"+viewName, fmt.Sprintf("Dam %s for the mouth on the %s side, seen from outside", d.Mark, d.Side), viewName, l, h, len(lines))
	opening := geom.Ring(d.Profile).Map(place)
	s.area(Board, 0.3, geom.Rect(0, 0, l, h).Ring())
	s.edge(Hidden, opening)
	face := []geom.Point{place(geom.Point{X: d.From.MM()}), place(geom.Point{X: d.From.MM() + l})}
	s.line(Centre, face...)
	s.text(geom.Point{X: 0.5 * s.size, Y: face[0].Y + 0.4*s.size}, "start", "show face")
	box := opening.Box()
	s.inside(box, "opening", "seal all round it")
	s.dim(geom.Point{Y: h}, geom.Point{X: l, Y: h}, 3.4, text(l))
	s.dim(geom.Point{}, geom.Point{Y: h}, 3.4, text(h))
	s.chain(func(x float64) geom.Point { return geom.Point{X: x, Y: h} }, []float64{0, box.Min.X, box.Max.X, l}, 1.4, text)
	s.chain(func(y float64) geom.Point { return geom.Point{Y: y} }, []float64{0, box.Min.Y, box.Max.Y, h}, 1.4, text)
	s.notes(0, lines...)
	return s.done()
}

func damLines(p *plan.Plan, d form.Dam) []string {
	measure := func(v units.Length) string { return Measure(v, p.Piece.Units) }
	least := min(d.LapLeft, d.LapRight, d.LapFoot)
	return []string{
		fmt.Sprintf("board: %s; liner: %s", d.Board, d.Liner),
		fmt.Sprintf("laps the concrete by %s at least; seal of %s; %s", measure(least), measure(d.Seal), units.Count(d.Clamps, "clamp", "clamps")),
		fmt.Sprintf("the resin pushes with %.1f N, %.2f kPa at the deepest place", d.Force, float64(d.Pressure)),
		fmt.Sprintf("a slit of %s would lose %.0f ml until the resin gels", measure(d.Gap), d.Leak),
		fmt.Sprintf("water test: at most %.0f ml lost in %s; then dry the piece again", d.Water, units.FormatDuration(d.Test)),
		unitNote(p.Piece.Units),
	}
}
