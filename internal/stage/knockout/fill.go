package knockout

import (
	"cmp"
	"math"
	"slices"

	"pourwright/internal/geom"
)

// fill lays what fits of left on b by the boxes of the parts, the first that fits at
// the lowest of the corners that those laid leave, and returns the rest.
func (c *computer) fill(b *bed, left []slip) []slip {
	var rest []slip
	var taken []geom.Box
	for _, s := range left {
		box, degrees, ok := c.corner(b, s, taken)
		if !ok {
			rest = append(rest, s)
			continue
		}
		taken = append(taken, box)
		c.place(b, s, degrees, box.Min)
	}
	return rest
}

// corner returns where the box of s fits.
func (c *computer) corner(b *bed, s slip, taken []geom.Box) (geom.Box, float64, bool) {
	part := c.r.Parts[s.part].Outline.Shape().Box()
	gap := c.gap().MM()
	frame := b.room.Box()
	ats := []geom.Point{frame.Min}
	for _, t := range taken {
		for _, u := range append(taken, geom.Box{Min: frame.Min, Max: frame.Min.Sub(geom.Point{X: gap, Y: gap})}) {
			ats = append(ats, geom.Point{X: t.Max.X + gap, Y: u.Max.Y + gap}, geom.Point{X: u.Max.X + gap, Y: t.Max.Y + gap}, geom.Point{X: t.Max.X + gap, Y: t.Min.Y}, geom.Point{X: t.Min.X, Y: t.Max.Y + gap})
		}
	}
	slices.SortStableFunc(ats, func(p, q geom.Point) int { return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) })
	for _, at := range slices.Compact(ats) {
		for _, degrees := range c.right() {
			w, h := part.Width(), part.Height()
			if degrees == 90 {
				w, h = h, w
			}
			box := geom.Rect(at.X, at.Y, at.X+w, at.Y+h)
			if clearOf(box, taken, gap-1e-9) && holds(b.room, frame, box) {
				return box, degrees, true
			}
		}
	}
	return geom.Box{}, 0, false
}

// right are the right-angled turns allowed that change a box.
func (c *computer) right() []float64 {
	if c.in.Making.Turns == anyTurn || c.in.Making.Turns == quarters {
		return []float64{0, 90}
	}
	return []float64{0}
}

func clearOf(b geom.Box, taken []geom.Box, gap float64) bool {
	return !slices.ContainsFunc(taken, func(t geom.Box) bool {
		return b.Min.X < t.Max.X+gap && t.Min.X < b.Max.X+gap && b.Min.Y < t.Max.Y+gap && t.Min.Y < b.Max.Y+gap
	})
}

// holds reports whether room, framed by frame, holds b.
func holds(room geom.Region, frame, b geom.Box) bool {
	if math.Min(b.Min.X-frame.Min.X, b.Min.Y-frame.Min.Y) < -reachMM || b.Max.X > frame.Max.X+reachMM || b.Max.Y > frame.Max.Y+reachMM {
		return false
	}
	if len(room) == 1 && len(room[0].Outer) == 4 && math.Abs(room.Area()-frame.Width()*frame.Height()) < 1e-6 {
		return true
	}
	return geom.Subtract(b.Region(), room).Area() < 1e-3
}
