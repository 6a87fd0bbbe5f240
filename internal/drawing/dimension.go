package drawing

import (
	"math"

	"pourwright/internal/geom"
)

// DimensionLines is a dimension worked out into lines and the place of its text.
type DimensionLines struct {
	Segments [][2]geom.Point
	At       geom.Point // of the text, middle, on its base line
	Turn     float64    // degrees counter-clockwise, readable from below or from the right
}

// Lines works d out for texts of the given height, mm: extension lines that stand off
// the object and pass the dimension line, oblique strokes at its ends, text above it,
// after the habits of ISO 129. A dimension of no length is its text alone.
func (d Dimension) Lines(height float64) DimensionLines {
	v := d.B.Sub(d.A)
	if !(v.Norm() > 0) {
		return DimensionLines{At: d.A}
	}
	u := v.Mul(1 / v.Norm())
	n := geom.Point{X: -u.Y, Y: u.X}
	if d.Offset < 0 {
		n = n.Mul(-1)
	}
	off, gap := math.Abs(d.Offset), 0.3*height
	a, b := d.A.Add(n.Mul(off)), d.B.Add(n.Mul(off))
	along, up, turn := readable(u)
	slash := along.Add(up).Mul(0.35 * height)
	past := u.Mul(0.4 * height)
	return DimensionLines{
		Segments: [][2]geom.Point{
			{d.A.Add(n.Mul(math.Min(gap, off))), a.Add(n.Mul(gap))}, {d.B.Add(n.Mul(math.Min(gap, off))), b.Add(n.Mul(gap))},
			{a.Sub(past), b.Add(past)},
			{a.Sub(slash), a.Add(slash)}, {b.Sub(slash), b.Add(slash)},
		},
		At:   a.Add(b).Mul(0.5).Add(up.Mul(0.3 * height)),
		Turn: turn,
	}
}

// readable returns the direction in which a text along u is read, from below or from
// the right, the direction above it, and its turn in degrees.
func readable(u geom.Point) (along, up geom.Point, turn float64) {
	const slack = 1e-9
	if u.X < -slack || math.Abs(u.X) <= slack && u.Y < 0 {
		u = u.Mul(-1)
	}
	return u, geom.Point{X: -u.Y, Y: u.X}, math.Atan2(u.Y, u.X) * 180 / math.Pi
}
