package drawing

import (
	"fmt"

	"pourwright/internal/geom"
	"pourwright/internal/plan"
	"pourwright/internal/stage/relief"
	"pourwright/internal/units"
	"pourwright/internal/view"
)

// mouths draws every mouth as its dam closes it, looking at the side from outside.
func mouths(p *plan.Plan) []Drawing {
	out := []Drawing{}
	seen := map[view.Side]int{}
	for _, m := range p.Relief.Mouths {
		if len(m.Profile) == 0 {
			continue
		}
		seen[m.Side]++
		name := "mouth-" + string(m.Side)
		if n := seen[m.Side]; n > 1 {
			name = fmt.Sprintf("%s-%d", name, n)
		}
		out = append(out, mouth(p, m, name))
	}
	return out
}

// seenFromOutside returns how long a side is and whether a place along it, counted
// from the lower coordinate, is to the right (true) or to the left of the next.
func seenFromOutside(p *plan.Plan, side view.Side) (length float64, rising bool) {
	switch side {
	case view.Left:
		return p.Piece.Width.MM(), false
	case view.Right:
		return p.Piece.Width.MM(), true
	case view.Far:
		return p.Piece.Length.MM(), false
	}
	return p.Piece.Length.MM(), true
}

func mouth(p *plan.Plan, m relief.Mouth, name string) Drawing {
	side, rising := seenFromOutside(p, m.Side)
	h := p.Piece.Height.MM()
	s := newSheet(name, fmt.Sprintf("Mouth on the %s side, seen from outside, the piece standing as in use", m.Side), view.Finished{}.Name(), side, h, 3)
	place := func(q geom.Point) geom.Point {
		if !rising {
			q.X = side - q.X
		}
		return geom.Point{X: q.X, Y: h + q.Y}
	}
	opening := geom.Ring(m.Profile).Map(place)
	s.area(Concrete, 0, geom.Rect(0, 0, side, h).Ring())
	s.area(Resin, 0.5, opening)
	box := opening.Box()
	text := func(d float64) string { return Measure(units.Length(d), p.Piece.Units) }
	s.chain(func(x float64) geom.Point { return geom.Point{X: x, Y: h} }, []float64{0, box.Min.X, box.Max.X, side}, 1.6, text)
	s.dim(geom.Point{X: side, Y: h}, geom.Point{X: side, Y: box.Min.Y}, 1.6, Measure(m.Depth, p.Piece.Units))
	s.dim(geom.Point{X: side}, geom.Point{}, 1.6, text(side))
	s.dim(geom.Point{}, geom.Point{Y: h}, 1.6, text(h))
	s.notes(0, fmt.Sprintf("opening %.0f cm2: a dam closes it while resin is poured", float64(m.Opening)/100), unitNote(p.Piece.Units))
	return s.done()
}
