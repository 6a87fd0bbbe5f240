package concrete

import (
	"math"

	"pourwright/internal/geom"
	"pourwright/internal/units"
)

// surfaces measures what concrete is cast against, by kind. Layers nest, so every
// floor is what a layer covers and the next deeper one does not.
func surfaces(in Input) Surfaces {
	plan := float64(in.Length) * float64(in.Width)
	s := Surfaces{Face: units.Area(plan), Wall: units.Area(2 * float64(in.Length+in.Width) * float64(in.Height))}
	for i, l := range in.Layers {
		area, deeper := l.Region.Area(), 0.0
		if i == 0 {
			s.Face = units.Area(math.Max(0, plan-area))
		}
		if i+1 < len(in.Layers) {
			deeper = in.Layers[i+1].Region.Area()
		}
		s.Floor += units.Area(area - deeper)
		onSide := onSides(l.Region.Shape(), in.Length.MM(), in.Width.MM())
		d := float64(l.To - l.From)
		s.Riser += units.Area((l.Region.Shape().Perimeter() - onSide) * d)
		s.Wall -= units.Area(onSide * d)
	}
	return s
}

const sideTol = 0.01 // mm from a side of the box that still counts as on it

// onSides returns how much of r's boundary lies on the sides of the box, mm.
func onSides(r geom.Region, length, width float64) float64 {
	sum := 0.0
	for _, ring := range r.Rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if onSide(a, b, length, width) {
				sum += b.Sub(a).Norm()
			}
		}
	}
	return sum
}
