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
// the object and pass the dimension line, slashes at its ends, text above it, after
// the habits of ISO 129.
func (d Dimension) Lines(height float64) DimensionLines {
	v := d.B.Sub(d.A)
	if v.Norm() == 0 {
		return DimensionLines{At: d.A}
	}
	u := v.Mul(1 / v.Norm())
	n := geom.Point{X: -u.Y, Y: u.X}
	if d.Offset < 0 {
		n = n.Mul(-1)
	}
	off, gap := math.Abs(d.Offset), 0.3*height
	a, b := d.A.Add(n.Mul(off)), d.B.Add(n.Mul(off))
	slash := u.Add(n).Mul(0.35 * height)
	out := DimensionLines{Segments: [][2]geom.Point{
		{d.A.Add(n.Mul(gap)), a.Add(n.Mul(gap))}, {d.B.Add(n.Mul(gap)), b.Add(n.Mul(gap))}, {a, b},
		{a.Sub(slash), a.Add(slash)}, {b.Sub(slash), b.Add(slash)},
	}}
	out.Turn = math.Atan2(u.Y, u.X) * 180 / math.Pi
	if out.Turn > 90+1e-9 || out.Turn <= -90+1e-9 {
		out.Turn = math.Mod(out.Turn+180, 360)
		if out.Turn > 180 {
			out.Turn -= 360
		}
	}
	textUp := geom.Point{X: -math.Sin(out.Turn * math.Pi / 180), Y: math.Cos(out.Turn * math.Pi / 180)}
	out.At = a.Add(b).Mul(0.5).Add(textUp.Mul(0.3 * height))
	return out
}
