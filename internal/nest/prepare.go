package nest

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// prepare returns the shapes of the pieces, grown by d mm, and the things to lay.
func prepare(pieces []Piece, d, tol float64) (*catalog, []thing, error) {
	cat := &catalog{}
	var things []thing
	for i, p := range pieces {
		if why := flawed(p); why != "" {
			return nil, nil, fmt.Errorf("%w: piece %d (%s): %s", ErrProblem, i, p.Name, why)
		}
		things = append(things, newThing(cat, i, p, d, tol))
	}
	cat.seal()
	return cat, things, nil
}

func newThing(cat *catalog, i int, p Piece, d, tol float64) thing {
	t := thing{piece: i, size: p.Shape.Area()}
	seen := map[int]bool{}
	for _, deg := range p.turns() {
		g := turn(p.Shape, deg)
		if d > 0 {
			g = geom.Offset(geom.Region{g}, d+tol, tol).Simplify(tol)[0]
		}
		s, corner := newShape(g)
		k := cat.add(s)
		if !seen[k] {
			seen[k] = true
			t.poses = append(t.poses, pose{k, deg, corner.X, corner.Y})
		}
	}
	return t
}

// turns lists the turns of p in degrees.
func (p Piece) turns() []float64 {
	switch p.Turning {
	case TurnHalf:
		return []float64{0, 180}
	case TurnQuarter:
		return []float64{0, 90, 180, 270}
	case TurnListed:
		if len(p.TurnsDeg) > 0 {
			return p.TurnsDeg
		}
	case TurnAny:
		var out []float64
		for k := range 24 {
			out = append(out, float64(15*k))
		}
		return out
	}
	return []float64{0}
}

// flawed says what is wrong with a piece, or nothing.
func flawed(p Piece) string {
	rings := p.Shape.Rings()
	for _, r := range rings {
		for _, q := range r {
			if !(math.Abs(q.X) <= 1e5 && math.Abs(q.Y) <= 1e5) {
				return "a corner is not a finite number, or is further than 100 m out"
			}
		}
		if len(steps(r)) < 3 {
			return "an outline has fewer than three corners"
		}
		if at := r.SelfCrossings(1); len(at) > 0 {
			return fmt.Sprintf("its outline crosses itself at (%.1f, %.1f) mm", at[0].X, at[0].Y)
		}
	}
	for _, deg := range p.TurnsDeg {
		if math.IsNaN(deg) || math.IsInf(deg, 0) {
			return "a turn is not a finite number"
		}
	}
	return ""
}
