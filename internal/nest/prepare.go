package nest

import (
	"fmt"
	"math"

	"pourwright/internal/geom"
)

// prepare returns the shapes of the pieces, each grown by half the spacing, and the things
// to lay. Pieces at fault are told of and left out.
func prepare(pieces []Piece, spacing float64) (cat *catalog, things []thing, bad []Unplaced) {
	cat = &catalog{}
	for i, p := range pieces {
		if why := flawed(p); why != "" {
			bad = append(bad, Unplaced{i, why})
			continue
		}
		things = append(things, newThing(cat, i, p, spacing/2))
	}
	return cat, things, bad
}

func newThing(cat *catalog, i int, p Piece, d float64) thing {
	t := thing{piece: i, size: p.Shape.Area()}
	type key struct{ shape, bare int }
	seen := map[key]bool{}
	for _, deg := range p.turns() {
		g := turn(leftTurning(p.Shape), deg)
		box := boxOf(g.Outer)
		bare := cat.add(newShape(g, box))
		k := key{bare, bare}
		if d > 0 {
			k.shape = cat.add(newShape(grown(g, d), box))
		}
		if !seen[k] {
			seen[k] = true
			t.poses = append(t.poses, pose{k.shape, k.bare, deg, float64(box.lo.x) * geom.Grid, float64(box.lo.y) * geom.Grid})
		}
	}
	return t
}

// leftTurning returns p with its outer ring turning left and its holes right.
func leftTurning(p geom.Polygon) geom.Polygon {
	out := geom.Polygon{Outer: p.Outer}
	if p.Outer.Area() < 0 {
		out.Outer = p.Outer.Reversed()
	}
	for _, h := range p.Holes {
		if h.Area() > 0 {
			h = h.Reversed()
		}
		out.Holes = append(out.Holes, h)
	}
	return out
}

// Chosen: a grown outline has at most so many corners, as long as it is not made larger
// for it by more than this share of its size. No-fit areas of wavy outlines with hundreds
// of corners take seconds.
const (
	mostCorners = 32
	mostGrowth  = 1.0 / 100
)

// grown returns p grown by at least d mm with few corners: by at most 2.75 times a
// tolerance more, which begins at a sixteenth of d or a two-thousandth of its size.
func grown(p geom.Polygon, d float64) geom.Polygon {
	b := p.Outer.Box()
	size := max(b.Width(), b.Height())
	tol := min(0.5, max(0.02, d/16, size/2000))
	for {
		r := geom.Offset(geom.Region{p}, d+1.5*tol, tol/2).Simplify(tol / 2)
		if len(r) != 1 {
			return p
		}
		if corners := len(r[0].Outer); corners <= mostCorners || 5.5*tol > size*mostGrowth {
			return r[0]
		}
		tol *= 2
	}
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
		for k := range 12 {
			out = append(out, float64(30*k))
		}
		return out
	}
	return []float64{0}
}

// flawed says what is wrong with a piece, or nothing.
func flawed(p Piece) string {
	for _, r := range p.Shape.Rings() {
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
